// Parts of an organ put in order by drag; the buttons up and down do the same without it.
const still = matchMedia("(prefers-reduced-motion: reduce)");

function makeSortable(list) {
  list.classList.add("sortable");
  Sortable.create(list, {
    handle: ".grip",
    draggable: "li",
    ghostClass: "dragged",
    forceFallback: true,
    animation: still.matches ? 0 : 120,
    onEnd(event) {
      if (event.oldIndex !== event.newIndex) send(list);
    },
  });
}

function send(list) {
  const form = document.getElementById("order");
  const values = {
    kind: list.dataset.order,
    part: [...list.children].map((item) => item.dataset.part),
    csrfmiddlewaretoken: form.elements.csrfmiddlewaretoken.value,
  };
  const place = { target: list, select: `#${list.id}`, swap: "outerHTML" };
  htmx.ajax("POST", form.action, { values, ...place });
}

document.addEventListener("htmx:load", ({ detail: { elt } }) => {
  if (elt.matches("[data-order]")) makeSortable(elt);
  else elt.querySelectorAll("[data-order]").forEach(makeSortable);
});

// The list was changed elsewhere meanwhile: the page shows how, and says so.
document.addEventListener("htmx:responseError", () => location.reload());
