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
  htmx.ajax("POST", form.action, { values, target: "#main", select: "#main", swap: "outerHTML" });
}

document.addEventListener("htmx:load", ({ detail: { elt } }) => {
  elt.querySelectorAll("[data-order]").forEach(makeSortable);
});
