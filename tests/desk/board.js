// How the questions of the board stand on the screen: the size of their letters, as a part of a
// screen 540 high, and what is wrong with their lines.
() => {
  const faults = [];
  const main = document.getElementById("board");
  if (main.scrollHeight > main.clientHeight + 1 || document.documentElement.scrollHeight > innerHeight)
    faults.push(`scrolls: ${main.scrollHeight} in ${main.clientHeight}`);
  if (main.scrollWidth > main.clientWidth + 1) faults.push("scrolls sideways");
  const boxes = [...document.querySelectorAll(".asked > li:not([hidden])")].map((item) => {
    const words = item.querySelector(".words"), answer = item.querySelector(".answer");
    const box = words.getBoundingClientRect(), key = answer.getBoundingClientRect();
    if (key.left < box.right - 1 && key.top < box.bottom - 1 && key.bottom > box.top + 1) faults.push(`${item.id}: the answer lies on the question`);
    if (key.right > innerWidth) faults.push(`${item.id}: the answer leaves the screen`);
    // Lines as the eye has them: pieces whose middles stand at about one height.
    const pieces = [];
    const walker = document.createTreeWalker(words, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      if (node.parentElement.closest("math")) continue;
      for (const part of node.data.matchAll(/\S+/g)) {
        const range = document.createRange();
        range.setStart(node, part.index);
        range.setEnd(node, part.index + part[0].length);
        for (const rect of range.getClientRects()) pieces.push({ text: part[0], rect });
      }
    }
    for (const formula of words.querySelectorAll("math")) pieces.push({ text: formula.textContent, rect: formula.getBoundingClientRect(), maths: true });
    pieces.sort((a, b) => a.rect.top + a.rect.bottom - b.rect.top - b.rect.bottom);
    const size = parseFloat(getComputedStyle(words).fontSize);
    const lines = [];
    for (const piece of pieces) {
      const middle = (piece.rect.top + piece.rect.bottom) / 2;
      const line = lines.at(-1);
      if (line && middle - line.middle < 0.6 * size) line.pieces.push(piece);
      else lines.push({ middle, pieces: [piece] });
    }
    for (const line of lines) line.pieces.sort((a, b) => a.rect.left - b.rect.left);
    const last = lines.at(-1).pieces;
    if (lines.length > 1 && last.length === 1 && !last[0].maths && last[0].text.length < 6)
      faults.push(`${item.id}: a last line of one word, ‘${last[0].text}’`);
    lines.slice(0, -1).forEach((line, place) => {
      const before = line.pieces.at(-1).text, after = lines[place + 1].pieces[0].text;
      if (/^[0-9.,]+$/.test(before) && /^(mm|cm|m|km|g|kg|ml|l|p|s|h|min|°|%)\b/.test(after)) faults.push(`${item.id}: ‘${before}’ is parted from ‘${after}’`);
    });
    return { id: item.id, top: Math.min(box.top, key.top), bottom: Math.max(box.bottom, key.bottom), left: box.left, right: key.right };
  });
  boxes.forEach((one, place) => boxes.slice(place + 1).forEach((other) => {
    if (Math.min(one.right, other.right) - Math.max(one.left, other.left) > 1 && Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 1)
      faults.push(`${one.id} and ${other.id} lie over each other`);
  }));
  const size = parseFloat(getComputedStyle(document.querySelector(".asked > li:not([hidden]) .words")).fontSize);
  return { size: (540 * size) / innerHeight, faults };
}
