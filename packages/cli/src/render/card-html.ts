import { type Card, type CardRow, escapeMarkup } from "@noodlewright/core";
import { figuresHtml, listSection, page, sectionHtml } from "./html.ts";

/** Paper that a card is printed on. */
export type Paper = "a4" | "letter";

const sizes: Readonly<Record<Paper, string>> = { a4: "A4", letter: "letter" };

/** Most loads that have their boxes beside each other; more go into a further table. */
const loadsBeside = 4;

/** Prints a card as one page to hang by the machine: large weights, boxes to tick, room to write. */
export function renderCard(card: Card, paper: Paper): string {
  const chunks = chunk(card.weights.loads, loadsBeside);
  const body = [
    "<main>",
    header(card),
    figuresHtml(card.facts),
    ...chunks.map((loads) => weightsHtml(card, loads)),
    card.notes.length > 0 ? listSection("lots", "In several lots", card.notes) : "",
    ...card.sections.map(({ id, heading, blocks }) => sectionHtml(id, heading, blocks)),
    `<section id="allergens"><h2>Allergens</h2>${card.allergens.map((line) => `<p>${escapeMarkup(line)}</p>`).join("")}</section>`,
    listSection("cautions", "Cautions", card.cautions),
    "</main>",
  ];
  return page({ title: `${card.title}, ${card.date}`, style: cardStyle(paper), body: body.join("\n") });
}

function header({ title, date, checksum, said }: Card): string {
  const extra = said === "" ? "" : ` · with ${escapeMarkup(said)}`;
  return `<header><h1>${escapeMarkup(title)}</h1><p class="mark">${escapeMarkup(date)} · spec <b>${escapeMarkup(checksum)}</b>${extra}</p></header>`;
}

function weightsHtml(card: Card, loads: readonly number[]): string {
  const { unit, of, rows } = card.weights;
  const several = of > 1;
  const heads = loads.map((load) => `<th scope="col" class="tick">${several ? `load ${load}` : "done"}</th>`).join("");
  const lines = rows.map((row) => rowHtml(row, loads)).join("\n");
  const heading = several ? `Weigh for each of ${of} loads` : "Weigh";
  return `<section class="weights" id="weights-${loads[0] ?? 0}"><h2>${heading}</h2>
<table>
<thead><tr><th scope="col">ingredient</th><th scope="col" class="number">${escapeMarkup(unit)}</th>${heads}<th scope="col" class="lot">lot</th></tr></thead>
<tbody>
${lines}
</tbody>
</table>
<p class="hint">Tick the box when it is weighed, and write the true weight beside it.</p>
</section>`;
}

function rowHtml({ name, weight, scale, role }: CardRow, loads: readonly number[]): string {
  const boxes = loads
    .map((load) =>
      role === "total"
        ? '<td class="tick"></td>'
        : `<td class="tick"><span class="box" role="img" aria-label="box to tick, load ${load}"></span><span class="line"></span></td>`,
    )
    .join("");
  const lot = role === "total" ? "<td></td>" : '<td class="lot"><span class="line"></span></td>';
  const on = scale === "" ? "" : `<small>${escapeMarkup(scale)}</small>`;
  const mark = role === "item" ? "" : ` class="${role}"`;
  return `<tr${mark}><th scope="row">${escapeMarkup(name)}${on}</th><td class="number weight">${escapeMarkup(weight)}</td>${boxes}${lot}</tr>`;
}

function chunk<T>(list: readonly T[], size: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(list.length / size) }, (_, index) =>
    list.slice(index * size, (index + 1) * size),
  );
}

function cardStyle(paper: Paper): string {
  return `
@page { size: ${sizes[paper]}; margin: 12mm; }
body { max-width: 186mm; }
header { border-bottom: 4px solid #111; }
header h1 { font-size: 2.3rem; margin-bottom: .1rem; }
.mark { margin: 0 0 .4rem; }
.weights th[scope="row"] { font-size: 1.15rem; font-weight: 500; line-height: 1.15; }
.weights small { display: block; font-size: .75rem; font-weight: 400; }
.weights .weight { font-size: 1.7rem; font-weight: 700; line-height: 1.1; padding-right: 1rem; }
.weights tbody tr > * { border-bottom: 1px solid #999; }
.weights tr.total > * { border-top: 2px solid #111; }
.tick { white-space: nowrap; width: 1%; }
.lot { width: 1%; }
.box { display: inline-block; width: 1.1rem; height: 1.1rem; border: 2px solid #111; vertical-align: middle; }
.line { display: inline-block; width: 3.1rem; border-bottom: 1px solid #111; height: 1.1rem; margin-left: .3rem; vertical-align: middle; }
.lot .line { width: 4rem; margin-left: 0; }
.hint { font-size: .85rem; margin: 0; }
#allergens p { margin: .15rem 0; font-size: 1.1rem; }
#allergens p:first-of-type { font-weight: 700; }
#day p { margin: .1rem 0; }
#cautions ul { columns: 2; column-gap: 1.6rem; font-size: .78rem; line-height: 1.3; }
#loads td, #loads th { white-space: nowrap; }
#loads thead th { white-space: normal; vertical-align: bottom; }
tr, li, figure, #allergens, #day { break-inside: avoid; }
@media print {
  body { padding: 0; max-width: none; }
  h2 { margin-top: .8rem; }
  html { font-size: 14px; }
}
`;
}
