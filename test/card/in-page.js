/* Runs in the page: it is read as text and evaluated there. */

/** What reaches over the edge of the paper, or out of its cell. */
function overflowing() {
  const width = document.documentElement.clientWidth;
  const all = [...document.querySelectorAll("body *")];
  const over = all
    .filter((element) => element.getBoundingClientRect().right > width + 0.5)
    .map((element) => `over the edge: ${element.tagName} ${element.textContent}`);
  const cells = all
    .filter((element) => element.matches("th, td, dd, dt, li, p, h1, h2"))
    .filter((cell) => {
      const range = document.createRange();
      range.selectNodeContents(cell);
      const text = range.getBoundingClientRect();
      const frame = cell.getBoundingClientRect();
      return text.width > 0 && (text.right > frame.right + 1 || text.left < frame.left - 1);
    })
    .map((cell) => `out of its cell: ${cell.textContent}`);
  const wide = document.documentElement.scrollWidth > width ? ["the page scrolls sideways"] : [];
  return [...wide, ...over, ...cells];
}

/** What is wrong with the pictures of the page. */
function pictureFaults() {
  const pictures = [...document.querySelectorAll("svg")];
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
