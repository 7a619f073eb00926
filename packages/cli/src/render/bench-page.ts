import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { inflateSync } from "node:zlib";
import { escapeMarkup, ownMark, printable } from "@noodlewright/core/render";
import type { First } from "../page/answers.ts";
import { elements, type PageData } from "../page/page-data.ts";
import { words } from "../page/words.ts";
import { drawnBy } from "./drawn.ts";

/**
 * One file that holds a noodle and works it out: nothing in it loads, and only its own script runs. The core is compressed.
 * What the script draws first stands there drawn, so that a slow phone shows it before it has read the script.
 */
export function renderBenchPage(title: string, data: PageData, first: First): string {
  const script = built("page.js", /<\/script|<!--/iu);
  const core = readFileSync(new URL("page-core.deflate", import.meta.url));
  const style = built("page-style.css", /<\/style/iu);
  const texts = { [elements.data]: JSON.stringify(data), [elements.first]: JSON.stringify(first) };
  const policy = `default-src 'none'; script-src ${hashOf(script)} ${hashOf(inflateSync(core))}; worker-src blob:; style-src ${hashOf(style)}; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
${ownMark}
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${escapeMarkup(printable(title))}</title>
<style>${style}</style>
</head>
<body>
<noscript>${escapeMarkup(words.noScript)}</noscript>
<div id="${elements.bench}">${drawnBy(script, elements.bench, texts)}</div>
${block(elements.data, texts[elements.data])}
${block(elements.first, texts[elements.first])}
<script type="text/plain" id="${elements.core}">${core.toString("base64")}</script>
<script>${script}</script>
</body>
</html>
`;
}

/** Data for the scripts. It is no script itself; its one way out would be a closing tag. */
function block(id: string, text: string): string {
  return `<script type="application/json" id="${id}">${text.replaceAll("<", "\\u003c")}</script>`;
}

/** A part that the build lays beside the command. */
function built(name: string, end?: RegExp): string {
  const text = readFileSync(new URL(name, import.meta.url), "utf8");
  if (end?.test(text)) throw new Error(`${name} would end its own element`);
  return text;
}

function hashOf(text: string | Buffer): string {
  return `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
}
