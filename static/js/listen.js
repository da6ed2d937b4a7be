// Plays the partials that the server worked out: a sketch of the pitches, not the sound of the
// organ. Where this cannot run, the same links lead to a sound file.
const FADE = 0.05;
let context;
let master;
let playing;

document.documentElement.classList.add("can-listen");

document.addEventListener("click", async (event) => {
  const link = event.target.closest("a[data-partials]");
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey) return;
  event.preventDefault();
  if (stop() === link) return;
  if (!context) open();
  try {
    const answer = await fetch(link.dataset.partials);
    if (!answer.ok) throw new Error(answer.statusText);
    await context.resume();
    play(await answer.json(), link);
  } catch {
    window.location = link.href;
  }
});

document.addEventListener("input", (event) => {
  if (context && event.target.id === "loudness") master.gain.value = loudness();
});

function open() {
  context = new AudioContext();
  master = context.createGain();
  master.gain.value = loudness();
  master.connect(context.destination);
}

function play({ plays, seconds, partials }, link) {
  stop();
  const start = context.currentTime + 0.02;
  const end = start + seconds;
  const fade = context.createGain();
  fade.gain.setValueAtTime(0, start);
  fade.gain.linearRampToValueAtTime(1, start + FADE);
  fade.gain.setValueAtTime(1, end - FADE);
  fade.gain.linearRampToValueAtTime(0, end);
  fade.connect(master);
  const sines = partials.map(([hertz, amplitude]) => sine(hertz, amplitude, fade, start, end));
  playing = { link, sines, fade };
  say(plays);
  sines[0].addEventListener("ended", () => {
    if (playing?.fade === fade) finish();
  });
}

function sine(hertz, amplitude, into, start, end) {
  const level = context.createGain();
  level.gain.value = amplitude;
  level.connect(into);
  const pipe = context.createOscillator();
  pipe.frequency.value = hertz;
  pipe.connect(level);
  pipe.start(start);
  pipe.stop(end);
  return pipe;
}

// Stops what plays; gives its link, if anything played.
function stop() {
  if (!playing) return null;
  const { link, sines, fade } = playing;
  const now = context.currentTime;
  fade.gain.cancelScheduledValues(now);
  fade.gain.setTargetAtTime(0, now, FADE / 3);
  for (const pipe of sines) pipe.stop(now + 2 * FADE);
  finish();
  return link;
}

function finish() {
  playing = null;
  say("");
}

function say(plays) {
  document.getElementById("plays").textContent = plays;
}

// Loudness is heard by ratios: the square keeps the lower half of the slider soft.
function loudness() {
  return (document.getElementById("loudness").value / 100) ** 2;
}
