// The only thing a form needs that the browser does not do by itself: to say that it is at work,
// and not to be sent twice. Without this script every form works all the same.
document.addEventListener("submit", (event) => {
  const form = event.target;
  const words = form.dataset.busy;
  if (!words || event.defaultPrevented) return;
  if (form.dataset.sent) {
    event.preventDefault();
    return;
  }
  form.dataset.sent = "yes";
  const button = event.submitter || form.querySelector("button");
  const note = document.createElement("span");
  note.setAttribute("role", "status");
  note.textContent = words;
  form.append(note);
  button.classList.add("busy");
});
// A page that comes back from the browser's memory may be sent again.
window.addEventListener("pageshow", (event) => {
  if (event.persisted) window.location.reload();
});
