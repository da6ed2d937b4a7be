// Shows what sounds while the fold is open, anew after each move; a closed fold asks for nothing.
const fold = document.getElementById("fold");

function look() {
  if (fold.open) htmx.trigger("#pictures", "look");
}

fold.addEventListener("toggle", look);
document.body.addEventListener("htmx:load", (event) => {
  if (event.target.id === "editor") look();
});
