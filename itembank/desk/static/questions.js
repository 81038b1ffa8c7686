// Where keys are still being looked at, the list comes again by itself, a few times at most.
// Without this script a link on the page does the same.
let left = 20;
async function again() {
  const found = document.getElementById("found");
  if (!found || !("waiting" in found.dataset) || left-- <= 0) return;
  const answer = await fetch(location.href);
  if (!answer.ok) return;
  const next = new DOMParser().parseFromString(await answer.text(), "text/html");
  const now = next.getElementById("found");
  // What somebody is about to press stays where it is.
  if (now && !found.contains(document.activeElement)) found.replaceWith(now);
  setTimeout(again, 2000);
}
setTimeout(again, 1500);
