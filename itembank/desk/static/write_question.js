// While somebody types, the desk is asked what comes of it, and its answer stands beside the form.
// Without this script the button "Try it" does the same.
const form = document.getElementById("write");
const tried = document.getElementById("tried");
const PAUSE = 500;
let timer = 0;
let asked = 0;

async function look() {
  const mine = ++asked;
  tried.classList.add("busy");
  try {
    const answer = await fetch(form.dataset.try, { method: "POST", body: new FormData(form) });
    const text = await answer.text();
    if (mine !== asked || !answer.ok) return;
    const found = new DOMParser().parseFromString(text, "text/html");
    const faults = beside(found);
    // Said aloud in short, where a screen reader reads the page.
    const state = found.querySelector(".states");
    const words = [state ? state.textContent.trim() : "", faults ? `Faults: ${faults}` : ""];
    document.getElementById("verdict").textContent = words.filter(Boolean).join(". ");
    tried.replaceChildren(...found.body.childNodes);
  } catch {
    // The desk does not answer: what was typed stays, and saving will say so.
  } finally {
    if (mine === asked) tried.classList.remove("busy");
  }
}

// Faults go beside their fields, where there is a field of that name.
function beside(found) {
  form.querySelectorAll(".writing .beside").forEach((old) => old.remove());
  form.querySelectorAll("[aria-invalid]").forEach((field) => {
    field.removeAttribute("aria-invalid");
    field.removeAttribute("aria-describedby");
  });
  const faults = found.querySelectorAll("[data-field]");
  faults.forEach((fault, place) => {
    const field = document.getElementById(fault.dataset.field);
    if (!field || !form.contains(field)) return;
    fault.id = `fault-now-${place}`;
    fault.classList.add("beside");
    field.setAttribute("aria-invalid", "true");
    field.setAttribute("aria-describedby", fault.id);
    field.after(fault);
  });
  return faults.length;
}

form.addEventListener("input", () => {
  clearTimeout(timer);
  timer = setTimeout(look, PAUSE);
});
