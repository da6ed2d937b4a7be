// Controls moved about the map of a console by drag; the table beside it is what is sent.
function put(knob, { dataset }) {
  for (const word of ["panel", "column", "row"]) {
    document.getElementById(`id_${word}:${knob.dataset.control}`).value = dataset[word] ?? "";
  }
}

function placed({ item, from, to }) {
  const other = [...to.children].find((knob) => knob !== item);
  if (other && to.dataset.panel) {
    from.append(other);
    put(other, from);
  }
  put(item, to);
  document.getElementById("places").requestSubmit();
}

document.addEventListener("htmx:load", ({ detail: { elt } }) => {
  for (const cell of elt.querySelectorAll("[data-panel]")) {
    Sortable.create(cell, {
      group: "jamb",
      draggable: ".knob",
      sort: false,
      forceFallback: true,
      delay: 150,
      delayOnTouchOnly: true,
      onAdd: placed,
    });
  }
});
