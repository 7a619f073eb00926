import { type CommaUse, commaUse } from "./amounts.ts";
import type { WrittenLine } from "./characters.ts";
import {
  type Column,
  columnsOf,
  isBare,
  isEmpty,
  isHead,
  isMoney,
  isOfBowls,
  isOfDusting,
  isOfKind,
  isOfNames,
  pricedMass,
  priceOf,
} from "./heads.ts";
import { measureOf } from "./measures.ts";

/** A text whose tables are lines of a name and its amounts, and what else stood in their columns. */
export interface WithoutTables {
  readonly lines: readonly WrittenLine[];
  /** Cells that are kept beside the formula. */
  readonly notes: readonly WrittenLine[];
  /** Rows that name nothing, or have an amount that is none. */
  readonly leftOut: readonly { readonly line: number; readonly text: string; readonly why: string }[];
  /** Prices as a spec has them, by the line of what they are of. */
  readonly prices: ReadonlyMap<number, string>;
  /** What was taken of each column, where that is not plain. */
  readonly remarks: readonly string[];
  readonly comma: CommaUse;
}

interface Row {
  readonly line: WrittenLine;
  readonly cells: readonly string[];
}

/** A table below its head, from its first column on. */
interface Table {
  readonly head: readonly string[];
  readonly rows: readonly Row[];
}

/** A cell with a name and its amount: a row of several such is no row of a table, but several ingredients. */
const ofItsOwn = /(?:\p{L}{3,}.*\d ?(?:k?g|ml|l|oz|lb)$|^\d[\d.,/ ]*(?:k?g|ml|l|oz|lb) ?\p{L}{3,})/iu;

/** What a spreadsheet puts above a table to tell what parts its cells. */
const partedBy = /^"?sep=(.)"?$/iu;

/**
 * Turns the rows of tables, with commas, semicolons, tabs or upright lines between the cells, into lines of a name and
 * amounts. The heads tell what a column holds: units go to the numbers below them; of batches side by side the first is
 * read; prices, notes and what is of no use go apart.
 */
export function withoutTables(all: readonly WrittenLine[]): WithoutTables {
  const stated =
    partedBy.exec(all[0]?.text ?? "")?.[1] ?? (/^"?sep=\t?"?$/iu.test(all[0]?.text ?? "") ? "\t" : undefined);
  const lines = stated === undefined ? all : all.slice(1);
  const mark = stated ?? markOf(lines);
  const plain = (line: WrittenLine): WrittenLine => ({ ...line, text: line.text.trim() });
  if (mark === undefined) {
    const trimmed = lines.map(plain);
    return { ...nothing, lines: trimmed, comma: commaUse(trimmed.map(({ text }) => text).join("\n")) };
  }
  const comma = commaUse(lines.map(({ text }) => cellsOf(text, mark).join("\t")).join("\n"));
  const found: WithoutTables[] = [];
  let head: readonly string[] | undefined;
  let rows: Row[] = [];
  let tables = 0;
  const close = (): void => {
    for (const table of head === undefined ? [] : sideBySide(head, rows)) {
      tables += 1;
      found.push(readTable(table, tables, comma));
    }
    rows = [];
  };
  let before = 0;
  for (const line of lines) {
    const cells = cellsOf(line.text, mark);
    const filled = cells.filter((cell) => cell !== "");
    const gap = line.number > before + 1;
    before = line.number;
    if (filled.every((cell) => /^:?-*:?$/u.test(cell))) continue;
    const own = filled.length < 2 || cells.filter((cell) => ofItsOwn.test(cell)).length > 1;
    if (isHead(cells, head === undefined || rows.length === 0 || gap)) {
      if (rows.length > 0 || head === undefined) {
        close();
        head = cells;
      } else head = together(head, cells);
    } else if (head !== undefined && (!own || filled.length === 1)) rows.push({ line, cells });
    else found.push({ ...nothing, ...(own ? { lines: [plain(line)] } : headless(line, cells)) });
  }
  close();
  const priced = found.flatMap(({ prices }) => [...prices]);
  return {
    lines: found.flatMap((one) => one.lines).toSorted((one, other) => one.number - other.number),
    notes: found.flatMap(({ notes }) => notes),
    leftOut: found.flatMap(({ leftOut }) => leftOut),
    prices: new Map(priced),
    remarks: [...new Set(found.flatMap(({ remarks }) => remarks))],
    comma,
  };
}

const nothing: WithoutTables = { lines: [], notes: [], leftOut: [], prices: new Map(), remarks: [], comma: undefined };

/** Two rows of heads as one: what stands above several columns stands above each. */
function together(above: readonly string[], below: readonly string[]): readonly string[] {
  let last = "";
  return Array.from({ length: Math.max(above.length, below.length) }, (_, at) => {
    const [one = "", other = ""] = [above[at], below[at]];
    last = one === "" ? last : one;
    return `${one === "" && other !== "" ? last : one} ${other}`.trim();
  });
}

/** Tables beside one another: each begins where a column of names does. */
function sideBySide(head: readonly string[], rows: readonly Row[]): readonly Table[] {
  const columns = columnsOf(
    head,
    rows.map(({ cells }) => cells),
  );
  const starts = columns.flatMap(({ is, at }) =>
    is === "name" || (is === "note" && isOfNames(head[at] ?? "") && isHead([head[at] ?? "", head[at + 1] ?? ""], false))
      ? [at]
      : [],
  );
  if (starts.length < 2) return [{ head, rows }];
  return starts.map((start, index) => {
    const [from, to] = [index === 0 ? 0 : start, starts[index + 1]];
    return {
      head: head.slice(from, to),
      rows: rows
        .map(({ line, cells }) => ({ line, cells: cells.slice(from, to) }))
        .filter(({ cells }) => cells.some((cell) => cell !== "")),
    };
  });
}

/** `2 lb` and `3 oz` in cells beside one another are one weight. */
function poundsAndOunces(amounts: readonly string[]): readonly string[] {
  const [pounds = "", ounces = "", ...more] = amounts;
  const one = pounds.endsWith(" lb") && /^(?:\d|1[0-5])(?:[.,]\d+)? oz$/u.test(ounces);
  return one ? [`${pounds} ${ounces}`, ...more] : amounts;
}

/** The columns of one batch, and what is said of those that are left. */
function chosenOf(columns: readonly Column[], rows: readonly Row[]) {
  const used = columns.filter(({ at }) => rows.some(({ cells }) => !isEmpty(cells[at] ?? "")));
  const amounts = used.flatMap((one) => (one.is === "amount" ? [one] : []));
  const masses = amounts.filter(({ unit }) => unit !== "%");
  const label = masses[0]?.label;
  const batch = masses.filter(
    (one, index) =>
      one.label === label && !masses.slice(0, index).some((other) => other.label === label && other.unit === one.unit),
  );
  const shares = amounts.filter(({ unit }) => unit === "%");
  const share = batch.length === 0 ? shares[0] : shares.find((one) => one.label === label || one.label === "");
  const chosen = [...batch, ...(share ? [share] : [])];
  const left = amounts.filter((one) => !chosen.includes(one));
  const name = ({ head, at }: Column): string => (head === "" ? `column ${at + 1}` : `"${head}"`);
  const only = `${chosen.map(name).join(", ")} ${chosen.length === 1 ? "is" : "are"}`;
  const remark = `of the columns ${amounts.map(name).join(", ")} only ${only} read: a formula is of one batch`;
  const others = used.flatMap((one) => {
    if (one.is === "note") return [`the column ${name(one)} is kept as notes`];
    if (one.is === "unknown") return [`the column ${name(one)} is left out: its head does not say what it counts`];
    return [];
  });
  return { chosen, remarks: [...(left.length === 0 ? [] : [remark]), ...others] };
}

function readTable({ head, rows }: Table, number: number, comma: CommaUse): WithoutTables {
  const columns = columnsOf(
    head,
    rows.map(({ cells }) => cells),
  );
  const { chosen, remarks } = chosenOf(columns, rows);
  if (chosen.length === 0 && rows.length > 0) {
    const notes = rows.map(({ line, cells }) => ({ ...line, text: cells.filter((cell) => cell !== "").join(" ") }));
    const heads = head.filter((one) => one !== "").map((one) => `"${one}"`);
    const remark = `the rows below ${heads.join(", ")} have no amounts: they are kept as notes`;
    return { ...nothing, notes, remarks: [remark] };
  }
  const nameAt = columns.find(({ is }) => is === "name")?.at;
  const prices = pricesOf(columns, rows, nameAt, comma);
  const read = rows.map((row, at) => readRow(opensRows(row, rows[at + 1]), { columns, chosen, nameAt, number }));
  const [first] = rows;
  const heading = first && isOfDusting(head[nameAt ?? 0] ?? "") ? [{ ...first.line, text: "For dusting:" }] : [];
  return {
    lines: [...heading, ...read.flatMap(({ lines }) => lines)],
    notes: read.flatMap(({ notes }) => notes),
    leftOut: read.flatMap(({ leftOut }) => leftOut),
    prices: prices.prices,
    remarks: [...remarks, ...prices.remarks],
    comma,
  };
}

/** A row of the name of a kind alone, with filled rows below it, is a heading. */
function opensRows(row: Row, next: Row | undefined): Row {
  const filled = row.cells.filter((cell) => cell !== "");
  const below = next?.cells.filter((cell) => !isEmpty(cell)) ?? [];
  if (filled.length !== 1 || below.length < 2 || !isOfKind(filled[0] ?? "")) return row;
  return { ...row, cells: row.cells.map((cell) => (cell === "" ? cell : `${cell.replace(/\s*:$/u, "")}:`)) };
}

interface HowToRead {
  readonly columns: readonly Column[];
  readonly chosen: readonly Extract<Column, { readonly is: "amount" }>[];
  readonly nameAt: number | undefined;
  readonly number: number;
}

function readRow({ line, cells }: Row, { columns, chosen, nameAt, number }: HowToRead) {
  const filled = cells.filter((cell) => !isEmpty(cell));
  const text = filled.join(" ");
  const read = (lines: readonly string[], notes: readonly WrittenLine[], why?: string) => ({
    lines: lines.map((one) => ({ ...line, text: one, table: number })),
    notes,
    leftOut: why === undefined ? [] : [{ line: line.number, text, why }],
  });
  const cell = (at: number | undefined): string => (at === undefined ? "" : (cells[at] ?? ""));
  const name = cell(nameAt);
  const amounts = chosen.flatMap((one) => {
    const written = cell(one.at);
    if (isEmpty(written)) return [];
    const beside = columns.find(({ is, at }) => is === "unit" && Math.abs(at - one.at) === 1);
    const unit = cell(beside?.at) || one.unit;
    return [isBare(written) && unit !== undefined && !isOfBowls(name) ? `${written} ${unit}` : written];
  });
  const some = poundsAndOunces(amounts).filter((one) => !/^[0.,]+(?: |$)/u.test(one) || /[1-9]/u.test(one));
  const noted = columns
    .filter(({ is }) => is === "note")
    .map(({ at }) => cell(at))
    .filter((one) => one !== "");
  if (filled.length === 1 && (noted.length > 0 || name !== "")) return read([filled[0] ?? ""], []);
  const notes = noted.map((one) => ({ ...line, text: name === "" ? one : `${name}: ${one}` }));
  if (name === "" && amounts.length > 0) return read([], notes, "numbers without a name: write what they are of");
  const below = amounts.find((one) => /^[-–] ?\d|^\(\d[\d.,]*\)/u.test(one));
  if (below !== undefined) return read([], notes, `"${below}" is below nothing: write what is weighed`);
  const told = columns.flatMap((one) => {
    const figure = one.is === "figure" ? cell(one.at) : "";
    return /^[\d.,]+ ?%?$/u.test(figure) && one.is === "figure" ? [`(${one.of} ${figure.replace(/ ?%$/u, "")} %)`] : [];
  });
  const whole = [[name, ...told].join(" "), ...(some.length > 0 ? some : amounts)].join("\t");
  return read(name === "" ? [] : [whole], notes);
}

/** The prices of a table as a spec has them; of a column that does not tell for how much, or in what, the reason. */
function pricesOf(columns: readonly Column[], rows: readonly Row[], nameAt: number | undefined, comma: CommaUse) {
  const priced = columns.flatMap((one) => (one.is === "price" ? [one] : []));
  const pack = columns.find(({ is }) => is === "pack");
  const taken = priced.map(({ at, head, currency, per }) => {
    const prices = rows.flatMap(({ line, cells }): readonly (readonly [number, string])[] => {
      const cell = cells[at] ?? "";
      const bag = pack?.is === "pack" ? (cells[pack.at] ?? "") : "";
      const bagMass = pack?.is === "pack" && isBare(bag) ? `${bag.replace(",", ".")} ${pack.unit}` : pricedMass(bag);
      const price = priceOf(cell, comma, per === "pack" ? bagMass : per, currency);
      return price === undefined || (cells[nameAt ?? 0] ?? "") === "" ? [] : [[line.number, price]];
    });
    const unread = rows.filter(
      ({ line, cells }) => /[1-9]/u.test(cells[at] ?? "") && !prices.some(([number]) => number === line.number),
    );
    return { head, per, prices, unread: unread.map(({ line }) => line.number) };
  });
  const best = taken.find(({ prices }) => prices.length > 0);
  const remarks = taken.map((one) => {
    if (one === best) {
      const lines = `${one.unread.length === 1 ? "line" : "lines"} ${one.unread.join(", ")}`;
      const unread = one.unread.length > 0 ? `, but for ${lines}: write them like 0.92 EUR/kg` : "";
      return `the prices are taken from the column "${one.head}"${unread}`;
    }
    const why =
      one.prices.length > 0
        ? "another has the prices"
        : one.per === undefined
          ? "it does not say for how much a price is, as EUR/kg would"
          : "it does not say in which currency, as EUR/kg would";
    return `the column "${one.head}" is left out: ${why}`;
  });
  return { prices: new Map(best?.prices), remarks };
}

/** A row of a table without a head: money and words behind the amount stay out of it, and a number beside a weight is a share. */
function headless(line: WrittenLine, cells: readonly string[]): Partial<WithoutTables> {
  const weighed = cells.some((cell) => /^[\d.,/ ]+(?:k?g|oz|lb)$/iu.test(cell));
  const wordy = (cell: string): boolean => /\p{L}{2}/u.test(cell) && !/\d/u.test(cell);
  const name = cells.find((cell) => /\p{L}{2}/u.test(cell)) ?? "";
  const noted = cells.filter(
    (cell, at) =>
      wordy(cell) &&
      cell !== name &&
      measureOf(cell) === undefined &&
      cells.slice(0, at).some((one) => /^\d/u.test(one)),
  );
  const left = cells.flatMap((cell, at) => {
    if (isMoney(cell) || noted.includes(cell) || (isEmpty(cell) && at > 0)) return [];
    return [weighed && isBare(cell) && cells.slice(0, at).some((one) => /\p{L}{2}/u.test(one)) ? `${cell} %` : cell];
  });
  return {
    lines: [{ ...line, text: joined(left), table: 0 }],
    notes: noted.map((one) => ({ ...line, text: `${name}: ${one}` })),
    ...(cells.some(isMoney) && { remarks: ["money in the rows is left out: write it under a head such as EUR/kg"] }),
  };
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
  const rows = lines.map(({ text }) => text.trim()).filter((text) => /\d/u.test(text));
  const most = (mark: string): boolean => rows.filter((text) => text.includes(mark)).length * 2 > rows.length;
  for (const mark of ["\t", "|", ";"]) if (most(mark)) return mark;
  const row = /^(?:"[^"]*"|[^,"]*\p{L}[^,"]*(?<!\d)),\s*"?\d[\d.]*\s*[\p{L}%]*"?\s*(?:,.*)?$/u;
  const amountFirst = /^(?:\d[\d.]*|"\d[\d.,]*")\s*[\p{L}%]{0,5},(?:.*,)?\s*"?\p{L}/u;
  const headed = lines.some(({ text }) => text.includes(",") && isHead(cellsOf(text, ","), true));
  const table = rows.filter((text) => row.test(text) || (headed && amountFirst.test(text))).length;
  return table >= 2 && table * 2 > rows.length ? "," : undefined;
}

/** The cells of a row; what parts them may stand within quotes, where two quotes are one. */
function cellsOf(text: string, mark: string): readonly string[] {
  const letters = mark === "|" ? text.replace(/^\s*\||\|\s*$/gu, "") : text;
  const cells: string[] = [""];
  let quoted = false;
  for (let at = 0; at < letters.length; at += 1) {
    const letter = letters[at] ?? "";
    const doubled = quoted && letter === '"' && letters[at + 1] === '"';
    if (letter === '"' && !doubled) quoted = !quoted;
    else if (letter === mark && !quoted) cells.push("");
    else cells.push(`${cells.pop() ?? ""}${letter}`);
    at += doubled ? 1 : 0;
  }
  return cells.map((cell) => cell.trim());
}
