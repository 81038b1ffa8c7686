// The board without a mouse: by keyboard, presenter remote or touch. Nothing moves or flashes;
// the timer says that time is up in words.
const root = document.documentElement;
const body = document.body;
root.classList.add("js");
const asked = [...document.querySelectorAll(".asked > li")];
const button = (what) => document.querySelector(`[data-do="${what}"]`);
const shown = () => asked.filter((item) => item.classList.contains("shown")).length;

function stage(name) {
  body.dataset.stage = name;
  fit();
}
function reveal(count) {
  asked.forEach((item, place) => item.classList.toggle("shown", place < count));
  body.classList.toggle("all", count >= asked.length);
  if (body.dataset.stage !== "questions") stage("questions");
}
// Pictures that one screen has no room for take several, as they take several slides: forward
// leads through the questions first, and then through the answers from the first screen on.
let screens = [asked], screen = 0;
function turn(to) {
  if (to === screen) return;
  screen = to;
  anew();
}
const screenOf = (item) => screens.findIndex((items) => items.includes(item));
function forward() {
  const last = screen >= screens.length - 1;
  if (body.dataset.stage === "next") return;
  if (body.dataset.stage === "answers" || shown() >= asked.length || (!shown() && !last)) {
    if (last) stage("next");
    else turn(screen + 1);
    return;
  }
  reveal(shown() + 1);
  turn(screenOf(asked[shown() - 1]));
}
function back() {
  if (body.dataset.stage === "next") {
    reveal(asked.length);
    turn(screens.length - 1);
  } else if (body.dataset.stage === "answers" || !shown()) {
    if (screen) turn(screen - 1);
    else if (body.dataset.stage === "answers") reveal(asked.length);
  } else {
    reveal(shown() - 1);
    turn(shown() ? screenOf(asked[shown() - 1]) : screens.length - 1);
  }
}
// The working of the answer that was shown last; pressed again, it goes.
function working() {
  const open = document.querySelector(".working:not([hidden])");
  if (open) open.hidden = true;
  else if (shown()) asked[shown() - 1].querySelector(".working").hidden = false;
  fit();
}

// Letters as large as leaves everything on the screen. The answers' places are kept from the
// beginning, so that nothing jumps when they come, and so are the columns.
const main = document.getElementById("board");
const columns = document.querySelector(".columns");
const left = document.querySelector(".asked");
const right = left.cloneNode(false);
const small = window.matchMedia("(max-width: 45rem)");
const LARGEST = 3.3; // of a hundredth of the screen's width: 32 where the screen is 540 high
function fits(size) {
  root.style.setProperty("--size", size);
  const wide = (box) => box.scrollWidth > box.clientWidth + 1;
  const tight = (item) => wide(item) || wide(item.querySelector(".prompt"));
  // Not a pixel over: a browser stops at what can be scrolled on the way to the buttons.
  return main.scrollHeight <= main.clientHeight && main.scrollWidth <= main.clientWidth
    && (body.dataset.stage === "next" || !screens[screen].some(tight));
}
function largest(low, high) {
  for (let turn = 0; turn < 7; turn += 1) {
    const middle = (low + high) / 2;
    if (fits(middle)) low = middle;
    else high = middle;
  }
  return low;
}
function arrange([first, share]) {
  const here = screens[screen];
  for (const item of asked) item.hidden = !here.includes(item);
  left.append(...asked.filter((item) => item.hidden), ...here.slice(0, first));
  right.append(...here.slice(first));
  columns.style.setProperty("--columns", share === 1 ? "minmax(0, 1fr) 0" : `minmax(0, ${share}fr) minmax(0, ${1 - share}fr)`);
}
// The parting of the questions in two columns that leaves the letters largest.
function settle() {
  const many = screens[screen].length;
  columns.append(right);
  const half = Math.ceil(many / 2);
  if (many < 4 && screens.length === 1 && !pictures) {
    right.remove();
    return;
  }
  if (many < 2) {
    arrange([many, 1]);
    return;
  }
  let best = [half, 0.5];
  arrange(best);
  let size = largest(1, LARGEST);
  for (const first of [half, half + 1, half - 1].filter((n) => n > 0 && n < many))
    for (const share of [0.5, 0.46, 0.54, 0.42, 0.58]) {
      // Even columns read best: what departs from them has to be worth it.
      const worth = size * (first === half ? 1.02 : 1.04);
      arrange([first, share]);
      if (worth > LARGEST || !fits(worth)) continue;
      best = [first, share];
      size = largest(worth, LARGEST);
    }
  // Few wide pictures have more room under each other.
  if (pictures && many < 4) {
    arrange([many, 1]);
    if (1.04 * size < LARGEST && fits(1.04 * size)) best = [many, 1];
  }
  arrange(best);
}
// As few screens as leave the letters, and with them those of the pictures, legible at 8 m.
const pictures = document.querySelector(".asked svg.figure") !== null;
const LEGIBLE = 2.52; // 24 where the screen is 540 high
function part() {
  if (!pictures || small.matches) return;
  const place = screen;
  for (let count = 1; count <= asked.length; count += 1) {
    const many = asked.length / count; // not rounded, so that no screen has two more than another
    const parted = Array.from({ length: count }, (_, n) =>
      asked.slice(Math.round(n * many), Math.round((n + 1) * many)));
    screens = parted;
    const legible = parted.every((_, n) => {
      screen = n;
      settle();
      return fits(LEGIBLE);
    });
    if (legible) break;
  }
  screen = Math.min(place, screens.length - 1);
}
function tellScreen() {
  const several = screens.length > 1, here = screens[screen];
  document.querySelector(".screens").hidden = !several;
  if (!several) return;
  const [first, last] = [asked.indexOf(here[0]) + 1, asked.indexOf(here[here.length - 1]) + 1];
  document.getElementById("screen").textContent =
    `${first === last ? first : `${first}–${last}`} of ${asked.length}`;
}
function fit() {
  if (!small.matches) fits(largest(1, LARGEST));
}
function anew() {
  const stage = body.dataset.stage;
  body.dataset.stage = "questions";
  if (!small.matches) settle();
  body.dataset.stage = stage;
  fit();
  tellScreen();
}
function resized() {
  const stage = body.dataset.stage;
  body.dataset.stage = "questions";
  if (small.matches) {
    screens = [asked];
    screen = 0;
    for (const item of asked) item.hidden = false;
  } else part();
  body.dataset.stage = stage;
  anew();
}

// The buttons go out of the way when nothing points at them for a while.
let rest = 0;
function wake() {
  root.classList.remove("idle");
  clearTimeout(rest);
  rest = setTimeout(() => root.classList.add("idle"), 4000);
}
document.addEventListener("pointermove", (event) => {
  if (event.pointerType === "mouse" && (event.movementX || event.movementY)) wake();
});
document.querySelector(".strip").addEventListener("pointerdown", wake);
// They lie over the bands, so they neither begin there nor stay where a key or a remote brought
// the bands: only the mouse, a finger or the Tab key fetches them.
const rests = () => root.classList.add("idle");
if (body.dataset.stage === "questions") wake();
else rests();

let minutes = Number(body.dataset.minutes);
let ends = null;
let remaining = minutes * 60;
const clock = document.getElementById("clock");
function tell() {
  const seconds = Math.max(0, Math.ceil(remaining));
  clock.textContent = seconds ? `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}` : "Time";
  button("clock").textContent = ends ? "Pause" : "Start";
}
function tick() {
  if (ends) remaining = (ends - Date.now()) / 1000;
  if (remaining <= 0) ends = null;
  tell();
}
function startOrPause() {
  if (ends) ends = null;
  else ends = Date.now() + (remaining > 0 ? remaining : (remaining = minutes * 60)) * 1000;
  tell();
}
function change(by) {
  minutes = Math.min(60, Math.max(1, minutes + by));
  remaining = Math.min(3600, Math.max(0, remaining + 60 * by));
  if (ends) ends = Date.now() + remaining * 1000;
  tell();
}
setInterval(tick, 250);

function dark() {
  const on = root.classList.toggle("dark");
  button("dark").setAttribute("aria-pressed", String(on));
}
// Nothing on the screen, while the teacher speaks: whatever is done next brings it back.
function blank(on) {
  root.classList.toggle("blank", on);
  button("blank").setAttribute("aria-pressed", String(on));
}
function full() {
  if (document.fullscreenElement) document.exitFullscreen();
  else root.requestFullscreen().catch(() => {});
}
const doing = {
  next: forward, back, working, dark, full, clock: startOrPause,
  blank: () => blank(true),
  start: () => { if (!document.fullscreenElement) full(); },
  questions: () => { reveal(0); stage("questions"); turn(0); },
  answers: () => { reveal(asked.length); turn(0); },
  before: () => turn(Math.max(0, screen - 1)),
  after: () => turn(Math.min(screens.length - 1, screen + 1)),
  tasks: () => stage("next"),
  less: () => change(-1), more: () => change(1),
  count: () => { window.location.href = button("count").href; },
};
function act(name) {
  // What would go on unseen only shows where it was left.
  const seen = !root.classList.contains("blank");
  blank(false);
  if (seen || !["blank", "next", "back"].includes(name)) doing[name]();
}
document.querySelector(".controls").addEventListener("click", (event) => {
  wake();
  const found = event.target.closest("[data-do]");
  if (!found || found.dataset.do === "count") return;
  event.preventDefault();
  act(found.dataset.do);
});
// A remote sends the keys of its make for forward and back, arrows or pages; most have a button
// that starts, which is F5, and one that blanks the screen, which is a full stop or b.
const keys = {
  ArrowRight: "next", PageDown: "next", ArrowDown: "next", ArrowLeft: "back", PageUp: "back", ArrowUp: "back",
  q: "questions", a: "answers", w: "working", n: "tasks", t: "clock", d: "dark", f: "full", c: "count",
  "+": "more", "=": "more", "-": "less", b: "blank", ".": "blank", F5: "start",
};
document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey) return;
  const name = event.key === " " && !event.target.closest("button, a") ? "next" : keys[event.key] || keys[event.key.toLowerCase()];
  if (!name) return;
  event.preventDefault();
  rests();
  act(name);
});
document.querySelector("main").addEventListener("click", (event) => {
  const blanked = root.classList.contains("blank");
  if (blanked || event.target.closest(".starter") && !event.target.closest("a, button")) act("next");
});
window.addEventListener("resize", resized);
tell();
resized();
document.fonts.ready.then(resized);
