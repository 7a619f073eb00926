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
