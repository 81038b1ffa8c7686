// One tap, one hand; the total says when the whole class is counted.
document.documentElement.classList.add("js");
const fields = [...document.querySelectorAll(".counter input")];
const total = document.getElementById("total");
const value = (field) => Math.max(0, parseInt(field.value, 10) || 0);
function tell() {
  total.textContent = `${fields.reduce((sum, field) => sum + value(field), 0)} counted`;
}
document.querySelector(".counting").addEventListener("click", (event) => {
  const by = Number(event.target.dataset.by);
  if (!by) return;
  const field = event.target.closest(".taps").querySelector("input");
  field.value = Math.max(0, value(field) + by);
  tell();
});
fields.forEach((field) => field.addEventListener("input", tell));
tell();
