// What is wrong with how a page stands on the screen, as sentences; none where all is well.
() => {
  const faults = [];
  const root = document.documentElement;
  const name = (element) => {
    const words = (element.textContent || element.value || element.name || "").trim().replace(/\s+/g, " ");
    return `<${element.localName}${element.className && typeof element.className === "string" ? "." + element.className : ""}> ‘${words.slice(0, 40)}’`;
  };
  // What stays at the edge of the screen while the rest moves has the rest under it.
  const floats = (element) => {
    for (let each = element; each; each = each.parentElement)
      if (["sticky", "fixed"].includes(getComputedStyle(each).position)) return true;
    return false;
  };
  // What is for a screen reader alone is clipped away to nothing.
  const clipped = (element) => {
    for (let each = element; each; each = each.parentElement)
      if (getComputedStyle(each).clipPath === "inset(50%)") return true;
    return false;
  };
  const seen = (element) => element.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true })
    && !element.closest(".skip, [aria-hidden='true']") && !clipped(element);
  if (root.scrollWidth > root.clientWidth)
    faults.push(`scrolls sideways: ${root.scrollWidth} in ${root.clientWidth}`);

  const pieces = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const holder = node.parentElement;
    if (!node.data.trim() || !seen(holder) || holder.closest("script, option, style")) continue;
    const size = parseFloat(getComputedStyle(holder).fontSize);
    if (size < 12) faults.push(`${size} px: ${name(holder)}`);
    if (holder.closest("math, svg")) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) pieces.push({ holder, box });
  }
  for (const formula of document.querySelectorAll("math, main img, main svg"))
    if (seen(formula)) pieces.push({ holder: formula, box: formula.getBoundingClientRect() });
  // A line's box is taller than its letters, so a little of each may meet.
  const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2
    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 0.35 * Math.min(a.height, b.height);
  pieces.splice(0, pieces.length, ...pieces.filter((piece) => !floats(piece.holder)
    // What is left of the screen is there for screen readers alone.
    && piece.box.right > 0));
  pieces.sort((a, b) => a.box.top - b.box.top);
  pieces.forEach((one, place) => {
    for (let next = place + 1; next < pieces.length; next += 1) {
      const other = pieces[next];
      if (other.box.top > one.box.bottom) break;
      if (one.holder !== other.holder && !one.holder.contains(other.holder) && !other.holder.contains(one.holder) && meet(one.box, other.box))
        faults.push(`${name(one.holder)} is under ${name(other.holder)}`);
    }
    if (one.box.right > root.clientWidth + 1 && !one.holder.closest("[tabindex='0']"))
      faults.push(`${name(one.holder)} ends beyond the screen`);
  });

  const targets = [...document.querySelectorAll("a[href], button, input:not([type='hidden']), select, textarea, summary")].filter(seen);
  for (const target of targets) {
    const box = target.getBoundingClientRect();
    // A link within a sentence is as high as its line (WCAG 2.2, 2.5.8, exception “inline”).
    const inline = target.localName === "a" && getComputedStyle(target).display === "inline"
      && target.parentElement.textContent.trim().length > target.textContent.trim().length;
    if (!inline && (box.width < 24 || box.height < 24))
      faults.push(`target of ${Math.round(box.width)} × ${Math.round(box.height)} px: ${name(target)}`);
  }
  const still = targets.filter((target) => !floats(target));
  still.forEach((one, place) => {
    const a = one.getBoundingClientRect();
    for (const other of still.slice(place + 1)) {
      if (one.contains(other) || other.contains(one)) continue;
      const b = other.getBoundingClientRect();
      if (Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1)
        faults.push(`${name(one)} and ${name(other)} lie over each other`);
    }
  });
  return [...new Set(faults)];
}
