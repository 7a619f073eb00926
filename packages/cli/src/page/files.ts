import { elements } from "./page-data.ts";

/** Hands a file to the browser, which saves it where its user wants it. */
export function saveFile(name: string, type: string, text: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

const fileOf = (name: string, text: string): File => new File([text], name, { type: "application/json" });

/** Whether this device hands files to other programs. */
export function canShare(): boolean {
  return typeof navigator.canShare === "function" && navigator.canShare({ files: [fileOf("noodle.json", "{}")] });
}

/** Hands a file to another program of the device; somebody who thinks better of it is left alone. */
export function shareFile(name: string, text: string): void {
  navigator.share({ files: [fileOf(name, text)] }).catch(() => undefined);
}

/**
 * Shows another page of ours in the place of this one while it is printed, so that it prints as it would by itself. Its
 * markup is read as data: nothing in it runs.
 */
export function printPage(html: string): void {
  const sheet = new CSSStyleSheet();
  // A style element would be one that the policy of this page does not let in.
  const [element = "", style = ""] = /<style>([^<]*)<\/style>/u.exec(html) ?? [];
  sheet.replaceSync(style);
  const other = new DOMParser().parseFromString(html.replace(element, ""), "text/html");
  const shown = document.createElement("div");
  shown.append(...[...other.body.children].map((node) => document.importNode(node, true)));
  const { title } = document;
  const bench = document.getElementById(elements.bench);
  const own = document.styleSheets[0];
  if (bench === null || own === undefined) return;
  bench.hidden = true;
  own.disabled = true;
  document.adoptedStyleSheets = [sheet];
  document.title = other.title;
  document.body.append(shown);
  const back = (): void => {
    shown.remove();
    document.title = title;
    document.adoptedStyleSheets = [];
    own.disabled = false;
    bench.hidden = false;
  };
  addEventListener("afterprint", back, { once: true });
  print();
}
