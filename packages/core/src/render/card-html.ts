import type { Card } from "../card/card.ts";
import type { CardRow, CardWeights } from "../card/card-weights.ts";
import { shownGrouped } from "../figure/in-system.ts";
import { escapeMarkup } from "../report/pictures/svg.ts";
import type { Section } from "../report/schema.ts";
import { cardStyle, type Paper } from "./card-style.ts";
import { figuresHtml, listSection, page, sectionHtml } from "./html.ts";

/** Most loads that have their boxes beside each other; more go into a further table. */
const loadsBeside = 4;

/**
 * Prints a card as one page to hang by the machine: large weights, boxes to tick, room to write.
 *
 * @example renderCard(askCard(example("school-noodle"), { date: "2026-11-25" }).value.card, "a4").slice(0, 15) // => "<!doctype html>"
 */
export function renderCard(card: Card, paper: Paper): string {
  const { title, date, weights, makeUp, allergens, notes, cautions } = card;
  const each = weights.of > 1 ? ` for each of ${weights.of} loads` : "";
  const [water, day] = parted(card.bench, "water");
  const [passes, sheets] = parted(card.machine, "passes");
  const body = [
    "<main>",
    header(card),
    `<section id="allergens"><h2>Allergens</h2>${allergens.map((line) => `<p>${escapeMarkup(line)}</p>`).join("")}</section>`,
    ...weightTables(`Weigh${each}`, weights),
    makeUp ? sectionOf(makeUp) : "",
    ...water.map(waterHtml),
    besides([...day, ...passes].map(sectionOf)),
    ...sheets.map(sectionOf),
    notes.length > 0 ? listSection("notes", "Notes", notes) : "",
    listSection("cautions", "Cautions", cautions),
    filesHtml(card),
    "</main>",
  ];
  const mark = `${shortened(title)}, ${date}, spec ${checksumOf(card)}`;
  return page({ title: `${title}, ${date}`, style: cardStyle(paper, mark), body: body.join("\n") });
}

/** The section of an id, and the others. */
function parted(sections: readonly Section[], id: string): readonly [readonly Section[], readonly Section[]] {
  return [sections.filter((one) => one.id === id), sections.filter((one) => one.id !== id)];
}

/** Puts sections beside each other where the width allows it. */
function besides(sections: readonly string[]): string {
  return sections.length < 2 ? sections.join("") : `<div class="besides">\n${sections.join("\n")}\n</div>`;
}

/** Most letters of a name at the foot, where the number of the page needs its room too. */
const longestMark = 40;

function shortened(text: string): string {
  return text.length > longestMark ? `${text.slice(0, longestMark - 1)}…` : text;
}

/**
 * The checksum of the spec itself.
 *
 * @example checksumOf(askCard(example("school-noodle"), { date: "2026-11-25" }).value.card) // => ""
 */
export function checksumOf({ files }: Card): string {
  return files[0]?.checksum ?? "";
}

function header(card: Card): string {
  const said = card.said === "" ? "" : ` · changed: ${escapeMarkup(card.said)}`;
  const about = card.about.map((line) => `<p class="about">${escapeMarkup(line)}</p>`).join("");
  return `<header><div class="head"><h1>${escapeMarkup(card.title)}</h1>${figuresHtml(card.facts)}</div><p class="mark">${escapeMarkup(card.date)} · spec <b>${escapeMarkup(checksumOf(card))}</b>${said}</p>${about}</header>`;
}

function filesHtml({ files }: Card): string {
  const named = files.map(({ name, checksum }) => `${escapeMarkup(name)} <b>${escapeMarkup(checksum)}</b>`).join(", ");
  return `<footer><p>Belongs to the files (with the first digits of their SHA-256): ${named}.</p></footer>`;
}

function weightTables(heading: string, weights: CardWeights): readonly string[] {
  return chunk(weights.loads, loadsBeside).map((loads, index) =>
    weightsHtml(`weights-${loads[0] ?? 0}`, index === 0 ? heading : `${heading}, further loads`, weights, loads),
  );
}

function weightsHtml(id: string, heading: string, weights: CardWeights, loads: readonly number[]): string {
  const names = loads.map((load) => (weights.of > 1 ? `load ${load}` : "true weight and lot"));
  const heads = names.map((name) => `<th scope="col" class="tick">${name}</th>`);
  const lines = weights.rows.map((row) => rowHtml(row, names)).join("\n");
  return `<section class="weights" id="${id}"><h2>${escapeMarkup(heading)}</h2>
<table class="beside-${loads.length}">
<thead><tr><th scope="col">ingredient</th><th scope="col" class="number weight">weight</th>${heads.join("")}</tr></thead>
<tbody>
${lines}
${signHtml(names)}
</tbody>
</table>
${weights.of > 1 ? hint : ""}</section>`;
}

const hint =
  '<p class="hint">Tick the box when it is weighed; write the true weight beside it and the lot below.</p>\n';

function rowHtml({ name, weight, unit, scale, role }: CardRow, loads: readonly string[]): string {
  const boxes = loads.map(
    (load) => `<td class="tick" data-label="${load}">${role === "total" ? "" : checkHtml(load)}</td>`,
  );
  const on = scale === "" ? "" : `<small>${escapeMarkup(scale)}</small>`;
  const mark = role === "item" ? "" : ` class="${role}"`;
  const written = `${escapeMarkup(weight)}<span class="unit"> ${escapeMarkup(unit)}</span>`;
  return `<tr${mark}><th scope="row">${escapeMarkup(name)}${on}</th><td class="number weight">${written}</td>${boxes.join("")}</tr>`;
}

function checkHtml(load: string): string {
  const box = `<span class="box" role="img" aria-label="box to tick, ${load}"></span>`;
  return `<span class="check">${box}<span class="line"></span></span><span class="check"><small>lot</small><span class="line"></span></span>`;
}

/** Room for who weighed a load, and when. */
function signHtml(loads: readonly string[]): string {
  const line = '<span class="check"><span class="line"></span></span>';
  const cells = loads.map((load) => `<td class="tick" data-label="${load}">${line}${line}</td>`);
  return `<tr class="sign"><th scope="row">initials, time</th><td></td>${cells.join("")}</tr>`;
}

/** The water, and beside each temperature that it was found by, room for the measured one. */
function waterHtml({ id, heading, blocks }: Section): string {
  const [last] = blocks.slice(-1);
  const assumed = last?.kind === "figures" ? last.figures : [];
  const tap = assumed.some((figure) => figure.id === "tap.temperature") ? [] : [measured("tap water")];
  const lines = assumed.map((figure) =>
    measured(`${escapeMarkup(figure.label.replace(" temperature", ""))} <b>${shownGrouped(figure)} ${figure.unit}</b>`),
  );
  const room = `<p class="measured">${[...lines, ...tap].join(" ")}</p>\n</section>`;
  return sectionHtml(id, heading, blocks.slice(0, -1)).replace(/<\/section>$/u, room);
}

function measured(markup: string): string {
  return `<span class="check"><span>${markup}</span><span class="line"></span></span>`;
}

function sectionOf({ id, heading, blocks }: Section): string {
  return sectionHtml(id, heading, blocks);
}

function chunk<T>(list: readonly T[], size: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(list.length / size) }, (_, index) =>
    list.slice(index * size, (index + 1) * size),
  );
}
