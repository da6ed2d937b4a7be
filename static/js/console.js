// Steps through a service by the keys that page-turner pedals send.
const ON = new Set(["PageDown", "ArrowRight", "ArrowDown", " "]);
const BACK = new Set(["PageUp", "ArrowLeft", "ArrowUp", "Backspace"]);
let lastTurn = -Infinity;

document.addEventListener("keydown", (event) => {
  if (event.repeat || event.ctrlKey || event.altKey || event.metaKey) return;
  if (event.target.closest("input, textarea, select, button")) return;
  const back = BACK.has(event.key) || (event.key === " " && event.shiftKey);
  if (!back && !ON.has(event.key)) return;
  if (event.target.closest("a") && event.key === " ") return;
  event.preventDefault();
  if (event.timeStamp - lastTurn < 250) return;
  lastTurn = event.timeStamp;
  document.getElementById(back ? "step-back" : "step-on")?.click();
});
