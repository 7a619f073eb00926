/** A picture as one SVG text, with its title and description for those who do not see it. */
export interface Picture {
  readonly id: string;
  readonly title: string;
  readonly description: string;
  readonly svg: string;
}

/** Keeps a text from being read as markup. @example escapeMarkup("a < b") // => "a &lt; b" */
export function escapeMarkup(text: string): string {
  return text
    .replace(/[\p{Cc}\u2028\u2029]/gu, " ")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}

type Attributes = Readonly<Record<string, string | number>>;

/** Writes an element. Numbers are written to two decimals; children are markup already. */
export function element(name: string, attributes: Attributes, ...children: readonly string[]): string {
  const written = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${typeof value === "number" ? coordinate(value) : escapeMarkup(value)}"`)
    .join("");
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join("")}</${name}>`;
}

function coordinate(value: number): string {
  return String(Math.round(value * 100) / 100);
}

/** A line of text. */
export function label(x: number, y: number, words: string, more: Attributes = {}): string {
  return element("text", { x, y, ...more }, escapeMarkup(words));
}

/** Puts a picture together. The size is in px at 96 to the inch; the picture scales with its frame. */
export function picture(
  about: Pick<Picture, "id" | "title" | "description">,
  size: { readonly width: number; readonly height: number },
  ...children: readonly string[]
): Picture {
  const { id, title, description } = about;
  const svg = element(
    "svg",
    {
      xmlns: "http://www.w3.org/2000/svg",
      viewBox: `0 0 ${coordinate(size.width)} ${coordinate(size.height)}`,
      width: size.width,
      height: size.height,
      role: "img",
      "aria-labelledby": `${id}-title ${id}-description`,
      "font-family": "system-ui, sans-serif",
      "font-size": 14,
      fill: "#111",
    },
    element("title", { id: `${id}-title` }, escapeMarkup(title)),
    element("desc", { id: `${id}-description` }, escapeMarkup(description)),
    ...children,
  );
  return { id, title, description, svg };
}

/** Fills that are told apart without colour, in the order in which they are used. */
const fillMarks: readonly string[] = [
  "",
  '<path d="M-2 2l4-4M0 8l8-8M6 10l4-4" stroke="#111" stroke-width="1.6"/>',
  '<circle cx="4" cy="4" r="1.5" fill="#111"/>',
  '<path d="M4 0v8" stroke="#111" stroke-width="1.6"/>',
  '<path d="M0 4h8M4 0v8" stroke="#111" stroke-width="1"/>',
  '<path d="M-2 6l4 4M0 0l8 8M6-2l4 4" stroke="#111" stroke-width="1.6"/>',
];

/** The patterns of a picture; ids carry the picture's own, so that several may share a page. */
export function patterns(id: string): string {
  const defined = fillMarks.map((mark, index) =>
    index === 0
      ? ""
      : `<pattern id="${escapeMarkup(id)}-fill-${index}" width="8" height="8" patternUnits="userSpaceOnUse"><rect width="8" height="8" fill="#fff"/>${mark}</pattern>`,
  );
  return element("defs", {}, defined.join(""));
}

/** The fill of the part with a number: black, then the patterns, then round again. */
export function fillOf(id: string, index: number): string {
  const place = index % fillMarks.length;
  return place === 0 ? "#111" : `url(#${id}-fill-${place})`;
}
