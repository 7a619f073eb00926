import type { Figure } from "../figure/figure.ts";
import { shownGrouped } from "../figure/in-system.ts";
import { escapeMarkup } from "../report/pictures/svg.ts";
import type { Block, Report, Table } from "../report/schema.ts";
import { byLoudness } from "./loud.ts";
import { ownMark } from "./own-mark.ts";
import { printableReport } from "./printable.ts";
import { type FigureWorking, workings } from "./working.ts";

/**
 * What every page of ours shares: one file, no script, nothing from the network.
 *
 * @example page({ title: "Cards", style: "", body: "" }).slice(0, 15) // => "<!doctype html>"
 */
export function page(parts: { readonly title: string; readonly style: string; readonly body: string }): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
${ownMark}
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>${escapeMarkup(parts.title)}</title>
<style>${baseStyle}${parts.style}</style>
</head>
<body>
${parts.body}
</body>
</html>
`;
}

const baseStyle = `
:root { color-scheme: light dark; --ink: #111; --paper: #fff; color: var(--ink); background: var(--paper); font-family: system-ui, "Helvetica Neue", Arial, sans-serif; line-height: 1.4; }
body { margin: 0 auto; max-width: 60rem; padding: 1.5rem; }
h1 { font-size: 2rem; line-height: 1.15; margin: 0 0 .5rem; overflow-wrap: anywhere; }
h2 { font-size: 1.15rem; margin: 1.6rem 0 .4rem; border-bottom: 2px solid var(--ink); padding-bottom: .15rem; break-after: avoid; }
table { border-collapse: collapse; width: 100%; margin: .4rem 0 .8rem; font-variant-numeric: tabular-nums; }
th, td { padding: .2rem .6rem .2rem 0; text-align: left; vertical-align: baseline; overflow-wrap: break-word; }
tbody th { font-weight: 500; }
.long { overflow-wrap: anywhere; }
thead th, thead td { border-bottom: 1px solid var(--ink); font-weight: 600; }
.number { text-align: right; white-space: nowrap; }
tr.total > * { border-top: 1px solid var(--ink); font-weight: 700; }
tr.aside > * { font-style: italic; }
thead th.number { white-space: normal; vertical-align: bottom; }
svg { max-width: 100%; height: auto; }
.bar { display: inline-block; height: 0; padding: 0; background: none; border-top: .9em solid var(--ink); vertical-align: middle; }
figure { margin: .6rem 0; break-inside: avoid; }
section > p { margin: .2rem 0; white-space: pre-wrap; }
ul { margin: .3rem 0; padding-left: 1.2rem; }
.figures { display: flex; flex-wrap: wrap; gap: .3rem 1.8rem; margin: .5rem 0; }
.figures dt { font-size: .85rem; }
.figures dd { margin: 0; font-size: 1.15rem; font-weight: 700; font-variant-numeric: tabular-nums; }
.working p { margin: .1rem 0 .1rem 1.2rem; }
.working h3 { font-size: 1rem; margin: .8rem 0 .1rem; }
@media screen and (prefers-color-scheme: dark) {
  :root { --ink: #eee; --paper: #161616; }
  svg { background: #fff; padding: .4rem; box-sizing: border-box; }
}
@media screen and (max-width: 40rem) {
  body { padding: .8rem; }
  table, tbody, tr, tbody th, td { display: block; width: auto; }
  thead { display: none; }
  tbody tr { border-bottom: 1px solid var(--ink); padding: .3rem 0; }
  tbody tr > :first-child { font-weight: 600; }
  td[data-label] { display: flex; justify-content: space-between; gap: 1rem; white-space: normal; text-align: right; }
  td[data-label]::before { content: attr(data-label); font-weight: 400; font-style: normal; text-align: left; }
  td:empty { display: none; }
}
`;

/**
 * Prints a report as one page.
 *
 * @example renderHtml(askFormula(example("school-noodle")).report()).includes("<h1>School noodle</h1>") // => true
 */
export function renderHtml(whole: Report): string {
  const report = printableReport(whole);
  const sections = report.sections.map(({ id, heading, blocks }) => sectionHtml(id, heading, blocks));
  const { heads, quiet } = byLoudness(report);
  const first = heads.map(({ id, heading, lines }) => listSection(id, heading, lines)).join("");
  const notes = quiet.length === 0 ? "" : listSection("notes", "Notes", quiet);
  const cautions = report.cautions.length === 0 ? "" : listSection("cautions", "Cautions", report.cautions);
  const body = `<main>\n<h1>${escapeMarkup(report.title)}</h1>\n${first}${sections.join("\n")}\n${notes}${cautions}</main>`;
  return page({ title: report.title, style: "", body });
}

/** A section with its heading. */
export function sectionHtml(id: string, heading: string, blocks: readonly Block[]): string {
  return `<section id="${escapeMarkup(id)}">\n<h2>${escapeMarkup(heading)}</h2>\n${blocks.map(blockHtml).join("\n")}\n</section>`;
}

/** A section that is a list. */
export function listSection(id: string, heading: string, lines: readonly string[]): string {
  const items = lines.map((line) => `<li>${escapeMarkup(line)}</li>`).join("\n");
  return `<section id="${id}">\n<h2>${escapeMarkup(heading)}</h2>\n<ul>\n${items}\n</ul>\n</section>\n`;
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case "table":
      return tableHtml(block);
    case "figures":
      return figuresHtml(block.figures.map((figure) => ({ label: figure.label, value: valueText(figure) })));
    case "text":
      return block.lines.map((line) => `<p>${escapeMarkup(line)}</p>`).join("\n");
    case "picture":
      return `<figure>${block.svg}</figure>`;
    case "working":
      return workings(block.figures).map(workingHtml).join("\n");
  }
}

function valueText(figure: Figure): string {
  return `${shownGrouped(figure)} ${figure.unit}`.trim();
}

function workingHtml({ label, lines }: FigureWorking): string {
  const steps = lines.map((line) => `<p>${escapeMarkup(line)}</p>`).join("");
  return `<div class="working"><h3>${escapeMarkup(label)}</h3>${steps}</div>`;
}

/** Figures side by side, each under its words. */
export function figuresHtml(figures: readonly { readonly label: string; readonly value: string }[]): string {
  const items = figures.map(
    ({ label, value }) => `<div><dt>${escapeMarkup(label)}</dt><dd>${escapeMarkup(value)}</dd></div>`,
  );
  return `<dl class="figures">${items.join("")}</dl>`;
}

/** A bar of block signs is drawn: a font leaves seams between the signs. */
function cellHtml(text: string): string {
  if (!/^█+$/u.test(text)) return escapeMarkup(text);
  return `<svg class="bar" aria-hidden="true" width="${(text.length * 0.45).toFixed(2)}em"></svg>`;
}

/** Words that are longer than a line may break anywhere; short ones only at spaces. */
const longWord = /\S{25}/u;

/** Columns that paper prints large. */
const large: ReadonlySet<string> = new Set(["setting", "gap"]);

function tableHtml(table: Table): string {
  const classOf = (column: number): string => {
    const { id = "", align } = table.columns[column] ?? {};
    const names = [...(align === "right" ? ["number"] : []), ...(large.has(id) ? [id] : [])];
    return names.length === 0 ? "" : ` class="${names.join(" ")}"`;
  };
  const head = table.columns.map(({ label }, column) =>
    label === "" ? "<td></td>" : `<th scope="col"${classOf(column)}>${escapeMarkup(label)}</th>`,
  );
  const rows = table.rows.map(({ role, cells }) => {
    const written = cells.map(({ text }, column) =>
      column === 0 && text !== ""
        ? `<th scope="row"${longWord.test(text) ? ' class="long"' : ""}>${escapeMarkup(text)}</th>`
        : `<td${classOf(column)} data-label="${escapeMarkup(table.columns[column]?.label ?? "")}">${cellHtml(text)}</td>`,
    );
    return `<tr${role === "item" ? "" : ` class="${role}"`}>${written.join("")}</tr>`;
  });
  return `<table>\n<thead><tr>${head.join("")}</tr></thead>\n<tbody>\n${rows.join("\n")}\n</tbody>\n</table>`;
}
