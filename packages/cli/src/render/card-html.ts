import { type Card, type CardRow, type CardWeights, escapeMarkup, type Section } from "@noodlewright/core";
import { cardStyle, type Paper } from "./card-style.ts";
import { figuresHtml, listSection, page, sectionHtml } from "./html.ts";

/** Most loads that have their boxes beside each other; more go into a further table. */
const loadsBeside = 4;

/** Prints a card as one page to hang by the machine: large weights, boxes to tick, room to write. */
export function renderCard(card: Card, paper: Paper): string {
  const { title, date, weights, makeUp, allergens, notes, cautions } = card;
  const each = weights.of > 1 ? ` for each of ${weights.of} loads` : "";
  const body = [
    "<main>",
    header(card),
    figuresHtml(card.facts),
    ...weightTables(`Weigh${each}`, weights),
    makeUp ? sectionOf(makeUp) : "",
    ...card.bench.map(sectionOf),
    `<section id="allergens"><h2>Allergens</h2>${allergens.map(paragraph).join("")}</section>`,
    ...card.machine.map(sectionOf),
    notes.length > 0 ? listSection("notes", "Notes", notes) : "",
    listSection("cautions", "Cautions", cautions),
    filesHtml(card),
    "</main>",
  ];
  const mark = `${title}, ${date}, spec ${checksumOf(card)}`;
  return page({ title: `${title}, ${date}`, style: cardStyle(paper, mark), body: body.join("\n") });
}

/** The checksum of the spec itself. */
export function checksumOf({ files }: Card): string {
  return files[0]?.checksum ?? "";
}

function header(card: Card): string {
  const said = card.said === "" ? "" : ` · with ${escapeMarkup(card.said)}`;
  const about = card.about.map((line) => `<p class="about">${escapeMarkup(line)}</p>`).join("");
  return `<header><h1>${escapeMarkup(card.title)}</h1><p class="mark">${escapeMarkup(card.date)} · spec <b>${escapeMarkup(checksumOf(card))}</b>${said}</p>${about}</header>`;
}

function filesHtml({ files }: Card): string {
  const named = files.map(({ name, checksum }) => `${escapeMarkup(name)} <b>${escapeMarkup(checksum)}</b>`).join(", ");
  return `<footer><p>Paper and file belong together while what <code>sha256sum</code> prints for the file begins so: ${named}.</p></footer>`;
}

function weightTables(heading: string, weights: CardWeights): readonly string[] {
  return chunk(weights.loads, loadsBeside).map((loads, index) =>
    weightsHtml(`weights-${loads[0] ?? 0}`, index === 0 ? heading : `${heading}, further loads`, weights, loads),
  );
}

function weightsHtml(id: string, heading: string, weights: CardWeights, loads: readonly number[]): string {
  const several = weights.of > 1;
  const heads = loads.map((load) => `<th scope="col" class="tick">${several ? `load ${load}` : "true weight"}</th>`);
  const lines = weights.rows.map((row) => rowHtml(row, loads)).join("\n");
  return `<section class="weights" id="${id}"><h2>${escapeMarkup(heading)}</h2>
<table class="beside-${loads.length}">
<thead><tr><th scope="col">ingredient</th><th scope="col" class="number weight">${escapeMarkup(weights.unit)}</th>${heads.join("")}<th scope="col" class="lot">lot</th></tr></thead>
<tbody>
${lines}
</tbody>
</table>
<p class="hint">Tick the box when it is weighed, and write the true weight beside it.</p>
</section>`;
}

function rowHtml({ name, weight, scale, role }: CardRow, loads: readonly number[]): string {
  const boxes = loads.map((load) => `<td class="tick">${role === "total" ? "" : checkHtml(load)}</td>`).join("");
  const lot = `<td class="lot">${role === "total" ? "" : '<span class="check"><span class="line"></span></span>'}</td>`;
  const on = scale === "" ? "" : `<small>${escapeMarkup(scale)}</small>`;
  const mark = role === "item" ? "" : ` class="${role}"`;
  return `<tr${mark}><th scope="row">${escapeMarkup(name)}${on}</th><td class="number weight">${escapeMarkup(weight)}</td>${boxes}${lot}</tr>`;
}

function checkHtml(load: number): string {
  return `<span class="check"><span class="box" role="img" aria-label="box to tick, load ${load}"></span><span class="line"></span></span>`;
}

function sectionOf({ id, heading, blocks }: Section): string {
  return sectionHtml(id, heading, blocks);
}

function paragraph(line: string): string {
  return `<p>${escapeMarkup(line)}</p>`;
}

function chunk<T>(list: readonly T[], size: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(list.length / size) }, (_, index) =>
    list.slice(index * size, (index + 1) * size),
  );
}
