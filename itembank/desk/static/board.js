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
function forward() {
  if (body.dataset.stage === "next") return;
  if (body.dataset.stage === "answers" || shown() >= asked.length) stage("next");
  else reveal(shown() + 1);
}
function back() {
  if (body.dataset.stage !== "questions") reveal(asked.length);
  else reveal(Math.max(0, shown() - 1));
}
// The working of the answer that was shown last; pressed again, it goes.
function working() {
  const open = document.querySelector(".working:not([hidden])");
  if (open) open.hidden = true;
  else if (shown()) asked[shown() - 1].querySelector(".working").hidden = false;
  fit();
}

// Letters as large as leaves everything on the screen: the answers' places are kept from the
// beginning, so that nothing jumps when they come.
function fit() {
  const main = document.getElementById("board");
  if (window.matchMedia("(max-width: 45rem)").matches) return;
  let low = 1.2, high = 4.2;
  for (let turn = 0; turn < 9; turn += 1) {
    const middle = (low + high) / 2;
    root.style.setProperty("--size", middle);
    if (main.scrollHeight <= main.clientHeight + 1 && main.scrollWidth <= main.clientWidth + 1) low = middle;
    else high = middle;
  }
  root.style.setProperty("--size", low);
}

let minutes = Number(body.dataset.minutes);
let ends = null;
let left = minutes * 60;
const clock = document.getElementById("clock");
function tell() {
  const seconds = Math.max(0, Math.ceil(left));
  clock.textContent = seconds ? `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}` : "Time";
  button("clock").textContent = ends ? "Pause" : "Start";
}
function tick() {
  if (ends) left = (ends - Date.now()) / 1000;
  if (left <= 0) ends = null;
  tell();
}
function startOrPause() {
  if (ends) ends = null;
  else ends = Date.now() + (left > 0 ? left : (left = minutes * 60)) * 1000;
  tell();
}
function change(by) {
  minutes = Math.min(60, Math.max(1, minutes + by));
  left = Math.min(3600, Math.max(0, left + 60 * by));
  if (ends) ends = Date.now() + left * 1000;
  tell();
}
setInterval(tick, 250);

function dark() {
  const on = root.classList.toggle("dark");
  button("dark").setAttribute("aria-pressed", String(on));
}
function full() {
  if (document.fullscreenElement) document.exitFullscreen();
  else root.requestFullscreen().catch(() => {});
}
const doing = {
  next: forward, back, working, dark, full, clock: startOrPause,
  questions: () => { reveal(0); stage("questions"); },
  answers: () => { reveal(asked.length); },
  tasks: () => stage("next"),
  less: () => change(-1), more: () => change(1),
  count: () => { window.location.href = button("count").href; },
};
document.querySelector(".controls").addEventListener("click", (event) => {
  const found = event.target.closest("[data-do]");
  if (!found || found.dataset.do === "count") return;
  event.preventDefault();
  doing[found.dataset.do]();
});
// A remote sends the keys of its make for forward and back: arrows or pages.
const keys = {
  ArrowRight: "next", PageDown: "next", ArrowDown: "next", ArrowLeft: "back", PageUp: "back", ArrowUp: "back",
  q: "questions", a: "answers", w: "working", n: "tasks", t: "clock", d: "dark", f: "full", c: "count",
  "+": "more", "=": "more", "-": "less",
};
document.addEventListener("keydown", (event) => {
  if (event.ctrlKey || event.altKey || event.metaKey) return;
  const name = event.key === " " && !event.target.closest("button, a") ? "next" : keys[event.key] || keys[event.key.toLowerCase()];
  if (!name) return;
  event.preventDefault();
  doing[name]();
});
document.querySelector(".starter").addEventListener("click", (event) => {
  if (!event.target.closest("a, button")) forward();
});
window.addEventListener("resize", fit);
tell();
fit();
document.fonts.ready.then(fit);
