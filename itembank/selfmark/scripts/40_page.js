// The page itself: what is shown, and when. All text goes in as text, never as markup.
const byId = (id) => document.getElementById(id);
function element(name, text, className) {
  const made_ = document.createElement(name);
  if (text) made_.textContent = text;
  if (className) made_.className = className;
  return made_;
}
// The answers are not written plainly, so that an honest pupil does not see one by accident.
function unveiled(text) {
  const raw = atob(text.replace(/\s+/g, "")), bytes = new Uint8Array(raw.length);
  for (let i = 0, veil = 1; i < raw.length; i++) {
    veil = ((i % 1024 ? veil : 1) * 75 + 74) % 65537;
    bytes[i] = raw.charCodeAt(i) ^ (veil & 255);
  }
  let escapedText = "";
  for (let i = 0; i < bytes.length; i++) escapedText += String.fromCharCode(bytes[i]);
  return JSON.parse(escapedText);
}
const WORDS_FOR = {
  [RIGHT]: ["right", "✓ Right."],
  [WRONG_FORM]: ["think", "Nearly there."],
  [KNOWN]: ["think", "Not yet. Think about this:"],
  [WRONG]: ["think", "Not yet."],
  [UNREADABLE]: ["think", "This page cannot read that."],
  [UNDECIDED]: ["", "This page cannot tell. Your teacher will look at this one."],
  empty: ["", "There is no answer here yet."],
};
const OUTCOME_FOR = { [RIGHT]: "r", [UNDECIDED]: "t", empty: "e" };

// One question on the page: its box, what is said below it, and how it went the first time.
class Box {
  constructor(root, data) {
    this.root = root;
    this.data = data;
    this.worth = data.marks;
    this.box = root.querySelector("textarea");
    this.said = root.querySelector(".said");
    this.button = root.querySelector("button.check");
    this.first = null;
    this.question = null;
  }
  // A drawing is on paper: there is no box for it, and the teacher looks at it.
  get answer() { return this.box && this.box.value.trim() ? this.box.value.replace(/\r\n?/g, "\n") : ""; }
  look() {
    if (!this.box) return verdict(UNDECIDED);
    if (!this.answer) return verdict("empty");
    return mark(() => this.question || (this.question = question(this.data)), this.answer.trim());
  }
  tell(found) {
    const [sort, head] = WORDS_FOR[found.verdict];
    this.said.textContent = "";
    const line_ = element("p");
    line_.appendChild(element("strong", head));
    if (found.says) line_.appendChild(document.createTextNode(` ${found.says}`));
    this.said.appendChild(line_);
    this.said.className = `said ${sort}`;
    this.said.hidden = false;
  }
  settle(found) { if (this.first === null) this.first = OUTCOME_FOR[found.verdict] || "n"; }
}

function begin() {
  const pack = unveiled(byId("answers").textContent), root = document.documentElement;
  if (!mathmlWorks()) root.classList.add("no-mathml");
  const eachQuestion = pack.check === "question by question";
  const sections = Array.from(document.querySelectorAll("section.version"));
  const starters = sections.map((section, v) => boxesIn(section, pack.versions[v].questions));
  const followUps = Array.from(document.querySelectorAll("section.follow-up"));
  let version = 0, warned = false, finished = false;
  const boxes = () => starters[version];
  const choices = Array.from(document.querySelectorAll("input[name=version]"));
  choices.forEach((choice, v) => choice.addEventListener("change", () => {
    version = v;
    sections.forEach((section, i) => { section.hidden = i !== v; });
  }));
  for (const box of [].concat(...starters).filter((one) => one.button)) {
    box.button.hidden = !eachQuestion;
    box.button.addEventListener("click", () => {
      const found = box.look();
      box.tell(found);
      // What cannot be read, and what is not there, may be put right before it counts.
      if (found.verdict !== "empty" && found.verdict !== UNREADABLE) box.settle(found);
    });
  }
  followUps.forEach((section) => {
    const tier = section.getAttribute("data-tier");
    for (const box of boxesIn(section, pack.sheets[tier]).filter((one) => one.button)) {
      box.button.addEventListener("click", () => box.tell(box.look()));
    }
  });
  addSigns();
  byId("work").hidden = false;
  byId("finish").addEventListener("click", () => {
    const found = boxes().map((box) => box.look()), notice = byId("notice");
    const open = found.map((one, i) => [one.verdict, i + 1])
      .filter(([kind, n]) => (kind === "empty" || kind === UNREADABLE) && boxes()[n - 1].first === null);
    if (open.length && !warned && !finished) {
      warned = true;
      const said_ = (kind) => listed(open.filter(([one]) => one === kind).map(([, n]) => n));
      const empty = said_("empty"), unread = said_(UNREADABLE);
      notice.textContent = [
        empty && `There is no answer to ${empty} yet.`,
        unread && `This page cannot read the answer to ${unread}: write it in another way.`,
        "Put that right, or press the button again to finish as it is.",
      ].filter(Boolean).join(" ");
      notice.hidden = false;
      open.forEach(([kind, n]) => { if (kind === UNREADABLE) boxes()[n - 1].tell(found[n - 1]); });
      notice.focus();
      return;
    }
    notice.hidden = true;
    boxes().forEach((box, i) => {
      if (!eachQuestion || box.first === null || found[i].verdict !== "empty") box.tell(found[i]);
      box.settle(found[i]);
      if (box.button) box.button.hidden = false;
    });
    if (!finished) choices.forEach((choice) => { choice.disabled = true; });
    finished = true;
    showResult(pack, boxes(), pack.versions[version].letter);
  });
  const changed = () => Array.from(document.querySelectorAll("textarea")).some((box) => box.value.trim());
  window.addEventListener("beforeunload", (event) => {
    if (changed() && !document.body.classList.contains("with-slip")) { event.preventDefault(); event.returnValue = ""; }
  });
}
function boxesIn(section, data) {
  return Array.from(section.querySelectorAll(".question")).map((root, i) => new Box(root, data[i]));
}
function listed(numbers) {
  if (!numbers.length) return "";
  const head = numbers.length === 1 ? "question " : "questions ";
  return head + (numbers.length === 1 ? numbers[0] : `${numbers.slice(0, -1).join(", ")} and ${numbers[numbers.length - 1]}`);
}
function showResult(pack, boxes, letter) {
  const score = boxes.reduce((sum, box) => sum + (box.first === "r" ? box.worth : 0), 0);
  const outOf = boxes.reduce((sum, box) => sum + box.worth, 0);
  const outcomes = boxes.map((box) => box.first).join("");
  const left = boxes.map((box, i) => (box.first === "t" ? i + 1 : 0)).filter(Boolean);
  byId("score").textContent = `You got ${score} out of ${outOf}.`;
  byId("left").textContent = left.length ? `Your teacher will look at ${listed(left)}, so your score may go up.` : "";
  byId("left").hidden = !left.length;
  const band = pack.bands.find((one) => one.lowest <= score && score <= one.highest) || pack.bands[0];
  Array.from(document.querySelectorAll(".band-part")).forEach((part) => {
    part.hidden = part.getAttribute("data-band") !== band.letter;
  });
  Array.from(document.querySelectorAll("section.follow-up")).forEach((part) => {
    part.hidden = part.getAttribute("data-tier") !== band.tier;
  });
  byId("result").hidden = false;
  const make_ = () => {
    const seat = byId("seat").value.trim().toUpperCase();
    byId("seat-fault").hidden = isSeat(seat);
    byId("seat").setAttribute("aria-invalid", isSeat(seat) ? "false" : "true");
    if (!isSeat(seat)) { byId("seat").focus(); return; }
    const text = slipText(pack.key, seat, pack.versions.length > 1 ? letter : "", score, outOf, outcomes);
    byId("slip-seat").textContent = `Seat ${seat}: ${score} out of ${outOf}`;
    byId("slip-code").textContent = text;
    drawCode(byId("slip-picture"), qrCode(text));
    byId("slip").hidden = false;
    document.body.classList.add("with-slip");
    byId("slip").focus();
  };
  byId("make-slip").onclick = make_;
  byId("result-heading").focus();
}
function drawCode(svg, grid) {
  const size = grid.length + 8;
  let path = "";
  grid.forEach((row_, y) => row_.forEach((dark, x) => { if (dark) path += `M${x + 4} ${y + 4}h1v1h-1z`; }));
  svg.setAttribute("viewBox", `0 0 ${size} ${size}`);
  svg.querySelector("path").setAttribute("d", path);
}
// Signs that a tablet's keys do not have; they go where the pupil typed last.
function addSigns() {
  const bar = byId("signs");
  Array.from(document.querySelectorAll("textarea")).forEach((box) => {
    box.addEventListener("focus", () => {
      box.parentNode.insertBefore(bar, box.nextSibling);
      bar.hidden = false;
      bar.box = box;
    });
    const grow = () => { box.rows = Math.min(8, Math.max(1, box.value.split("\n").length)); };
    box.addEventListener("input", grow);
  });
  Array.from(bar.querySelectorAll("button")).forEach((button) => button.addEventListener("click", () => {
    const box = bar.box, at = box.selectionStart, text = button.getAttribute("data-sign");
    box.value = box.value.slice(0, at) + text + box.value.slice(box.selectionEnd);
    box.focus();
    box.selectionStart = box.selectionEnd = at + text.length;
  }));
}
function mathmlWorks() {
  const holder = element("div"), maths = document.createElementNS("http://www.w3.org/1998/Math/MathML", "math");
  const space = document.createElementNS("http://www.w3.org/1998/Math/MathML", "mspace");
  space.setAttribute("width", "77px");
  maths.appendChild(space);
  holder.appendChild(maths);
  document.body.appendChild(holder);
  const works = maths.getBoundingClientRect().width >= 60;
  document.body.removeChild(holder);
  return works;
}
