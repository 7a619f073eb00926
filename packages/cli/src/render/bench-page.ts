import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { escapeMarkup, ownMark } from "@noodlewright/core/render";
import { dataElement, type PageData } from "../page/page-data.ts";
import { words } from "../page/words.ts";

/** One file that holds a noodle and works it out: nothing in it loads, and only its own script runs. */
export function renderBenchPage(title: string, data: PageData): string {
  const script = built("page.js", /<\/script|<!--/iu);
  const style = built("page-style.css", /<\/style/iu);
  // A data block is no script; its one way out would be a closing tag.
  const block = JSON.stringify(data).replaceAll("<", "\\u003c");
  const policy = `default-src 'none'; script-src ${hashOf(script)}; style-src ${hashOf(style)}; base-uri 'none'; form-action 'none'`;
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
${ownMark}
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${escapeMarkup(title)}</title>
<style>${style}</style>
</head>
<body>
<div id="bench"><noscript>${escapeMarkup(words.noScript)}</noscript></div>
<script type="application/json" id="${dataElement}">${block}</script>
<script>${script}</script>
</body>
</html>
`;
}

/** A part that the build lays beside the command. */
function built(name: string, end: RegExp): string {
  const text = readFileSync(new URL(name, import.meta.url), "utf8");
  if (end.test(text)) throw new Error(`${name} would end its own element`);
  return text;
}

function hashOf(text: string): string {
  return `'sha256-${createHash("sha256").update(text).digest("base64")}'`;
}
