import type { WrittenLine } from "./characters.ts";

/** Heads of columns that tell a unit. */
const units: readonly (readonly [unit: string, head: RegExp])[] = [
  ["kg", /(?<!\p{L})kg(?!\p{L})|kilo/iu],
  ["g", /(?<!\p{L})g(?:r|rams?)?(?!\p{L})|gramm/iu],
  ["oz", /(?<!\p{L})oz(?!\p{L})|ounces?/iu],
  ["lb", /(?<!\p{L})lbs?(?!\p{L})|pounds?/iu],
  ["%", /%|per ?cent/iu],
];
const heads =
  /^(?:ingredients?|item|name|material|zutat(?:en)?|what|amount|quantity|weight|unit|menge|材料|分量)(?!\p{L})/iu;

/** A cell with a name and its amount: a row of several such is no row of a table, but several ingredients. */
const ofItsOwn = /(?:\p{L}{3,}.*\d ?(?:k?g|ml|l|oz|lb)$|^\d[\d.,/ ]*(?:k?g|ml|l|oz|lb) ?\p{L}{3,})/iu;

/**
 * Turns the rows of a table, with commas, semicolons, tabs or upright lines between the cells, into lines of a name and
 * amounts; the units of its heads go to the bare numbers below them.
 */
export function withoutColumns(lines: readonly WrittenLine[]): readonly WrittenLine[] {
  const mark = markOf(lines);
  if (mark === undefined) return lines;
  let columns: readonly (string | undefined)[] = [];
  return lines.flatMap((line) => {
    const cells = cellsOf(line.text, mark);
    if (cells.length < 2 || cells.filter((cell) => ofItsOwn.test(cell)).length > 1) return [line];
    if (cells.every((cell) => /^:?-*:?$/u.test(cell))) return [];
    if (!cells.some((cell) => /\d/u.test(cell)) && cells.some((cell) => heads.test(cell))) {
      columns = cells.map((cell) => units.find(([, head]) => head.test(cell))?.[0]);
      return [];
    }
    const weighed = cells.some((cell) => /^[\d.,/ ]+(?:k?g|oz|lb)$/iu.test(cell));
    const filled = cells.map((cell, index) => {
      const beside = weighed && cells.slice(0, index).some((one) => /\p{L}{2}/u.test(one)) ? "%" : undefined;
      const unit = columns[index] ?? beside;
      return unit !== undefined && /^[\d.,/ ]*\d$/u.test(cell) ? `${cell} ${unit}` : cell;
    });
    return [{ ...line, text: joined(filled) }];
  });
}

/** A unit in a cell of its own goes to the number before it. */
function joined(cells: readonly string[]): string {
  return cells.reduce((text, cell) => {
    if (cell === "") return text;
    const unit = /\d$/u.test(text) && /^(?:\p{L}{1,10}|%)$/u.test(cell);
    return text === "" ? cell : `${text}${unit ? " " : "\t"}${cell}`;
  }, "");
}

function markOf(lines: readonly WrittenLine[]): string | undefined {
  const rows = lines.filter(({ text }) => /\d/u.test(text));
  const most = (mark: string): boolean => rows.filter(({ text }) => text.includes(mark)).length * 2 > rows.length;
  for (const mark of ["\t", "|", ";"]) if (most(mark)) return mark;
  const row = /^(?:"[^"]*"|[^,"]*\p{L}[^,"]*(?<!\d)),\s*"?\d[\d.]*\s*[\p{L}%]*"?\s*(?:,.*)?$/u;
  const table = rows.filter(({ text }) => row.test(text)).length;
  return table >= 2 && table * 2 > rows.length ? "," : undefined;
}

function cellsOf(text: string, mark: string): readonly string[] {
  const cells: string[] = [""];
  let quoted = false;
  for (const letter of text.replace(/^\||\|$/gu, "")) {
    if (letter === '"') quoted = !quoted;
    else if (letter === mark && !quoted) cells.push("");
    else cells.push(`${cells.pop() ?? ""}${letter}`);
  }
  return cells.map((cell) => cell.trim());
}
