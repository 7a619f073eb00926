import { element } from "./svg.ts";

/** Marks of the patterns on a tile of 8 by 8; the first fill is plain black, the second plain white. */
const marks: readonly string[] = [
  '<path d="M-2 2l4-4M0 8l8-8M6 10l4-4" stroke="#111" stroke-width="1.6"/>',
  '<circle cx="4" cy="4" r="1.5" fill="#111"/>',
  '<path d="M4 0v8" stroke="#111" stroke-width="1.6"/>',
  '<path d="M0 4h8M4 0v8" stroke="#111" stroke-width="1"/>',
  '<path d="M-2 6l4 4M0 0l8 8M6-2l4 4" stroke="#111" stroke-width="1.6"/>',
  '<path d="M0 4h8" stroke="#111" stroke-width="1.6"/>',
  '<circle cx="4" cy="4" r="3" fill="#111"/>',
  '<path d="M0 0l8 8M8 0l-8 8" stroke="#111" stroke-width="1"/>',
];

const plain = ["#111", "#fff"];
const kinds = plain.length + marks.length;

/** The patterns of a picture with so many parts; ids carry the picture's own, so that several may share a page. */
export function patterns(id: string, parts: number): string {
  const used = marks.slice(0, Math.max(0, parts - plain.length));
  if (used.length === 0) return "";
  const ground = element("rect", { width: 8, height: 8, fill: "#fff" });
  const tile = { width: 8, height: 8, patternUnits: "userSpaceOnUse" };
  const defined = used.map((mark, index) =>
    element("pattern", { id: patternId(id, index), ...tile }, `${ground}${mark}`),
  );
  return element("defs", {}, ...defined);
}

/** The fill of the part with a number: black, white, then the patterns, then round again; no colour is used. */
export function fillOf(id: string, index: number): string {
  const kind = index % kinds;
  return plain[kind] ?? `url(#${patternId(id, kind - plain.length)})`;
}

function patternId(id: string, index: number): string {
  return `${id}-fill-${index}`;
}
