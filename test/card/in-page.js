/* Runs in the page: it is read as text and evaluated there. */

/** Where the words of an element stand. The space at which a line breaks hangs over its end and is not ink. */
function wordsOf(element) {
  const texts = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
  const rects = [];
  while (texts.nextNode()) {
    for (const { index, 0: word } of texts.currentNode.data.matchAll(/\S+/gu)) {
      const range = document.createRange();
      range.setStart(texts.currentNode, index);
      range.setEnd(texts.currentNode, index + word.length);
      rects.push(range.getBoundingClientRect());
    }
  }
  return rects;
}

/** What reaches over the edge of the paper, or out of its cell. */
function overflowing() {
  const width = document.documentElement.clientWidth;
  const all = [...document.querySelectorAll("body *")];
  const over = all
    .filter((element) => {
      const inline = getComputedStyle(element).display === "inline";
      const parts = inline ? wordsOf(element) : [element.getBoundingClientRect()];
      return parts.some(({ right }) => right > width + 0.5);
    })
    .map((element) => `over the edge: ${element.tagName} ${element.textContent}`);
  const cells = all
    .filter((element) => element.matches("th, td, dd, dt, li, p, h1, h2"))
    .filter((cell) => {
      const frame = cell.getBoundingClientRect();
      return wordsOf(cell).some(
        (word) => word.width > 0 && (word.right > frame.right + 1 || word.left < frame.left - 1),
      );
    })
    .map((cell) => `out of its cell: ${cell.textContent}`);
  const wide = document.documentElement.scrollWidth > width ? ["the page scrolls sideways"] : [];
  return [...wide, ...over, ...cells];
}

/** What is wrong with the pictures of the page. */
function pictureFaults() {
  // A bar that is hidden from screen readers repeats the figure beside it.
  const pictures = [...document.querySelectorAll("svg:not([aria-hidden=true])")];
  const ids = [...document.querySelectorAll("[id]")].map(({ id }) => id);
  const faults = ids.filter((id, index) => ids.indexOf(id) !== index).map((id) => `id twice: ${id}`);
  for (const picture of pictures) {
    const xml = new DOMParser().parseFromString(picture.outerHTML, "image/svg+xml");
    if (xml.querySelector("parsererror")) faults.push("not well-formed");
    const words = (picture.getAttribute("aria-labelledby") ?? "").split(" ").map((id) => document.getElementById(id));
    if (words.length !== 2 || words.some((one) => !one?.textContent)) faults.push("no title or description");
    for (const text of picture.querySelectorAll("text")) {
      const { x, width } = text.getBBox();
      if (x < -0.5 || x + width > picture.viewBox.baseVal.width + 0.5) faults.push(`cut off: ${text.textContent}`);
    }
  }
  return faults;
}

/** Anything that could run or load. */
function livelyParts() {
  return [
    ...document.querySelectorAll("script, img, iframe, object, embed, link, form, base, [onerror], [onload]"),
  ].map(({ outerHTML }) => outerHTML);
}

void [overflowing, pictureFaults, livelyParts];
