import { runInNewContext } from "node:vm";
import { escapeMarkup } from "@noodlewright/core/render";

/** What a script draws into an empty element of a document, as markup. @param texts - of the elements that it reads, by id */
export function drawnBy(script: string, id: string, texts: Readonly<Record<string, string>>): string {
  const root = new Drawn("");
  const document = {
    getElementById: (asked: string) => (asked === id ? root : { textContent: texts[asked] }),
    createElementNS: (_: string, name: string) => new Drawn(name),
    createTextNode: (text: string) => new Drawn("", text),
  };
  // Nothing is to happen once it is drawn, so what waits for a frame waits for ever.
  const requestAnimationFrame = (): void => undefined;
  runInNewContext(script, {
    document,
    location: { hash: "" },
    navigator: {},
    requestAnimationFrame,
    setTimeout: requestAnimationFrame,
  });
  return root.markup();
}

/** An element without a browser, or a text, where it has no name. */
class Drawn {
  readonly childNodes: Drawn[] = [];
  readonly attributes = new Map<string, string>();
  readonly localName: string;
  parentNode: Drawn | undefined;
  data: string;

  constructor(name: string, text = "") {
    this.localName = name;
    this.data = text;
  }

  get firstChild(): Drawn | null {
    return this.childNodes[0] ?? null;
  }

  get nextSibling(): Drawn | null {
    const beside = this.parentNode?.childNodes ?? [];
    return beside[beside.indexOf(this) + 1] ?? null;
  }

  setAttribute(name: string, value: unknown): void {
    this.attributes.set(name, value === true ? "" : String(value));
  }

  insertBefore(node: Drawn, before: Drawn | null): void {
    this.childNodes.splice(before === null ? this.childNodes.length : this.childNodes.indexOf(before), 0, node);
    node.parentNode = this;
  }

  removeAttribute(name: string): void {
    this.attributes.delete(name);
  }

  addEventListener(): void {}

  markup(): string {
    const inside = escapeMarkup(this.data) + this.childNodes.map((node) => node.markup()).join("");
    if (this.localName === "") return inside;
    const attributes = [...this.attributes].map(([name, value]) => ` ${name}="${escapeMarkup(value)}"`).join("");
    return `<${this.localName}${attributes}>${inside}${this.localName === "input" ? "" : `</${this.localName}>`}`;
  }
}
