import { addressOf } from "@noodlewright/core/render";
import { strFromU8 } from "fflate";
import type { NoWorkbook } from "../render/problem-texts.ts";
import { partsIn } from "./packed-parts.ts";
import { largest } from "./read-file.ts";

/** Most that the parts of a workbook that are read may hold unpacked, bytes. */
const mostBytes = 40_000_000;
/** Most tags of the parts that are read: several times what the largest workbook has that is written here. */
const mostTags = 600_000;
/** Most characters of a cell, as the format has it. */
const longestText = 32_767;

/** What a cell holds as text, by its address. */
export type SheetCells = ReadonlyMap<string, string>;

/** A sheet of a workbook, read. */
export interface ReadSheet {
  readonly name: string;
  /** Whether the spreadsheet does not show it. */
  readonly hidden: boolean;
  readonly cells: SheetCells;
  /** Which of them are numbers. */
  readonly numbers: ReadonlySet<string>;
  /** The formulas of cells. */
  readonly formulas: SheetCells;
  /** The first of its formulas that has no result. */
  readonly unworked: string | undefined;
  /** Cells of rows and columns that the spreadsheet does not show. */
  readonly unseen: ReadonlySet<string>;
}

/** A formula as it stands in a workbook, and where. */
export interface WorkbookLines {
  readonly text: string;
  /** What was left out: sheets, what is hidden, errors. */
  readonly remarks: readonly string[];
}

/**
 * The formula in a workbook of Office Open XML as lines with tabs between the cells: of a workbook that was written here the
 * weights of one load, of any other the first sheet with two rows of words and numbers.
 */
export function linesOfWorkbook(bytes: Uint8Array): WorkbookLines | NoWorkbook {
  const sheets = sheetsOfWorkbook(bytes);
  if ("why" in sheets) return sheets;
  const all = sheets.map((sheet) => ({ ...sheet, rows: rowsOf(sheet) }));
  const seen = all.filter(({ hidden }) => !hidden);
  const first =
    seen.find(({ rows }) => amountsIn(rows) >= 2) ?? seen.find(({ rows }) => amountsIn(rows) > 0) ?? seen[0] ?? all[0];
  if (first === undefined) return { why: "another" };
  if (first.unworked !== undefined) return { why: "not worked out", at: first.unworked };
  const weights = weightsIn(first.rows);
  const text = (weights ?? first.rows).map((row) => row.join("\t").trimEnd()).join("\n");
  if (text.length > largest) return { why: "too large" };
  const left = weights === undefined ? all.filter((one) => one !== first && one.cells.size > 0) : [];
  const unread = left.map(({ name }) => `"${name}"`).join(", ");
  return {
    text,
    remarks: [
      ...(unread === "" ? [] : [`read from the sheet "${first.name}"; not read: ${unread}`]),
      ...(weights === undefined ? oddCells(first) : []),
    ],
  };
}

/** Most cells of a kind that are told. */
const mostTold = 12;

/** The cells of a sheet that are hidden, or hold errors. */
function oddCells({ cells, unseen }: ReadSheet): readonly string[] {
  const told = (some: readonly (readonly [string, string])[]): string =>
    `${some
      .slice(0, mostTold)
      .map(([at, text]) => `${at} (${text})`)
      .join(", ")}${some.length > mostTold ? ` and ${some.length - mostTold} more` : ""}`;
  const hidden = [...cells].filter(([at, text]) => unseen.has(at) && text !== "");
  const errors = [...cells].filter(([at, text]) => !unseen.has(at) && /^#(?:[A-Z]{3,5}[!?]|N\/A|DIV\/0!)$/u.test(text));
  return [
    ...(hidden.length > 0 ? [`hidden rows and columns are left out: ${told(hidden)}`] : []),
    ...(errors.length > 0 ? [`errors stand in the cells ${told(errors)}`] : []),
  ];
}

/** Rows with words and a number. */
function amountsIn(rows: readonly (readonly string[])[]): number {
  const any = (row: readonly string[], form: RegExp): boolean => row.some((cell) => form.test(cell));
  return rows.filter((row) => any(row, /\p{L}/u) && any(row, /\d/u)).length;
}

/** The weights of one load in a sheet that was written here, below its title. */
function weightsIn(rows: readonly (readonly string[])[]): readonly (readonly string[])[] | undefined {
  const top = rows.findIndex((row) => row.some((cell, column) => isWeights(row, cell, column)));
  const column = rows[top]?.findIndex((cell, at) => isWeights(rows[top] ?? [], cell, at)) ?? -1;
  const unit = /^one load, (g|oz)$/u.exec(rows[top]?.[column + 1] ?? "")?.[1];
  if (unit === undefined) return undefined;
  const below = rows.slice(top + 1);
  const end = below.findIndex((row) => row[column] === "dough");
  if (end < 0) return undefined;
  const lines = below.slice(0, end).map((row) => [row[column] ?? "", `${row[column + 1] ?? ""} ${unit}`]);
  return [[rows[0]?.[0] ?? ""], ...lines];
}

function isWeights(row: readonly string[], cell: string, column: number): boolean {
  return cell === "Weights" && (row[column + 1] ?? "").startsWith("one load, ");
}

/** The cells of a sheet that are shown as rows, those that are empty as nothing. */
function rowsOf({ cells, numbers, unseen }: ReadSheet): readonly (readonly string[])[] {
  const rows: string[][] = [];
  for (const [address, text] of cells) {
    if (unseen.has(address)) continue;
    const [row, column] = placeOf(address);
    if (row >= 100_000 || column >= 1000) continue;
    while (rows.length <= row) rows.push([]);
    const line = rows[row] ?? [];
    while (line.length < column) line.push("");
    // A point before three digits parts no thousands here: a nought behind them says so.
    const exact = numbers.has(address) ? text.replace(/(?<![\d.,])[1-9]\d{0,2}\.\d{3}(?!\d)/u, "$&0") : text;
    line[column] = exact.replace(/\s+/gu, " ").trim();
  }
  return rows;
}

function placeOf(address: string): readonly [row: number, column: number] {
  const [, letters = "A", digits = "1"] = /^([A-Z]+)(\d+)$/u.exec(address) ?? [];
  const column = [...letters].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return [Number(digits) - 1, column];
}

/** What is wrong with a workbook, thrown where it is seen. */
class Refused extends Error {
  readonly problem: NoWorkbook;

  constructor(why: NoWorkbook["why"], at?: string) {
    super(why);
    this.problem = { why, ...(at !== undefined && { at }) };
  }
}

/** Reads the sheets of a workbook. */
export function sheetsOfWorkbook(bytes: Uint8Array): readonly ReadSheet[] | NoWorkbook {
  let sheets = read.get(bytes);
  try {
    sheets ??= readSheets(bytes);
  } catch (error) {
    sheets = error instanceof Refused ? error.problem : { why: "damaged" };
  }
  read.set(bytes, sheets);
  return sheets;
}

/** What was read, by the bytes of the file: one that is looked at twice is read once. */
const read = new WeakMap<Uint8Array, readonly ReadSheet[] | NoWorkbook>();

function readSheets(bytes: Uint8Array): readonly ReadSheet[] | NoWorkbook {
  let size = 0;
  const room = { tags: mostTags };
  const unpacked = (wanted: (name: string) => boolean): ((name: string) => Iterable<Tag> | undefined) => {
    const parts = partsIn(bytes, (name, unpackedSize) => {
      size += wanted(name.toLowerCase()) ? unpackedSize : 0;
      if (size > mostBytes) throw new Refused("too large");
      return wanted(name.toLowerCase());
    });
    const named = new Map(Object.entries(parts).map(([name, part]) => [name.toLowerCase(), part]));
    return (name) => {
      const part = named.get(name.toLowerCase());
      return part && tags(strFromU8(part), room);
    };
  };
  const part = unpacked((name) =>
    /^xl\/(?:workbook|sharedstrings|styles)\.xml$|^xl\/_rels\/workbook\.xml\.rels$/u.test(name),
  );
  const book = [...(part("xl/workbook.xml") ?? [])];
  const named = book.filter(({ name, closing }) => name === "sheet" && !closing);
  if (named.length === 0) return { why: "another" };
  const links = part("xl/_rels/workbook.xml.rels");
  if (links === undefined) return { why: "part missing", at: "xl/_rels/workbook.xml.rels" };
  const targets = new Map(
    [...links].flatMap(({ name, attributes }) =>
      name === "Relationship" ? [[attributes["Id"] ?? "", partName(attributes["Target"] ?? "")] as const] : [],
    ),
  );
  const sheets = named
    .map(({ attributes }) => ({
      attributes,
      target: targets.get(attributes["id"] ?? "") ?? `xl/worksheets/ of "${attributes["name"]}"`,
    }))
    .filter(({ target }) => !/\/(?:chart|dialog|macro)sheets\//u.test(target));
  const wanted = new Set(sheets.map(({ target }) => target.toLowerCase()));
  const sheetPart = unpacked((name) => wanted.has(name));
  const look: Look = {
    strings: stringsOf(part("xl/sharedStrings.xml")),
    shapes: shapesOf([...(part("xl/styles.xml") ?? [])]),
    // Days are counted from 1904 in some workbooks, 1462 days later.
    daysBefore1970: book.some(
      ({ name, attributes }) => name === "workbookPr" && /^(?:1|true)$/u.test(attributes["date1904"] ?? ""),
    )
      ? 24_107
      : 25_569,
  };
  return sheets.map(({ attributes, target }) => {
    const tagsOfSheet = sheetPart(target);
    if (tagsOfSheet === undefined) throw new Refused("part missing", target);
    return {
      name: attributes["name"] ?? "",
      hidden: /^(?:hidden|veryHidden)$/u.test(attributes["state"] ?? ""),
      ...cellsOf(tagsOfSheet, look),
    };
  });
}

/** What the cells of a workbook share. */
interface Look {
  /** Nothing where the workbook has no such part. */
  readonly strings: readonly string[] | undefined;
  readonly shapes: readonly Shape[];
  readonly daysBefore1970: number;
}

function partName(target: string): string {
  return target.startsWith("/") ? target.slice(1) : `xl/${target}`;
}

interface Tag {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly closing: boolean;
  readonly empty: boolean;
  /** What follows, up to the next tag. */
  readonly text: string;
}

/**
 * The tags of a part in their order, their names and those of attributes without prefixes. Whatever stands in it, the work
 * grows with its length.
 */
function* tags(part: string, room: { tags: number }): Generator<Tag> {
  let at = part.indexOf("<");
  while (at >= 0) {
    const comment = part.startsWith("<!--", at);
    const end = part.indexOf(comment ? "-->" : ">", at);
    const inner = part.indexOf("<", at + 1);
    if (end < 0 || (!comment && inner >= 0 && inner < end)) throw new Refused("damaged");
    if (room.tags === 0) throw new Refused("too large");
    room.tags -= 1;
    const next = part.indexOf("<", end);
    const match = /^<(\/?)(?:[\w.-]+:)?([\w.-]+)([^<>]*?)(\/?)>$/u.exec(part.slice(at, end + 1));
    if (match !== null) {
      const [, closing = "", name = "", attributes = "", empty = ""] = match;
      yield {
        name,
        attributes: Object.fromEntries(
          [...attributes.matchAll(/(?<![\w.:-])(?:[\w.-]+:)?([\w.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/gu)].map(
            ([, key = "", double, single]) => [key, unescaped(double ?? single ?? "")],
          ),
        ),
        closing: closing !== "",
        empty: empty !== "",
        text: next < 0 ? "" : unescaped(part.slice(end + 1, next)),
      };
    }
    at = next;
  }
}

/** A text with more at its end, as long as a cell may hold it. */
function longer(text: string, more: string): string {
  if (text.length + more.length > longestText) throw new Refused("too large");
  return text + more;
}

const entities: Readonly<Record<string, string>> = { lt: "<", gt: ">", amp: "&", quot: '"', apos: "'" };

function unescaped(text: string): string {
  return text
    .replace(/&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(\w+));/giu, (whole, hex?: string, digits?: string, name?: string) => {
      if (name !== undefined) return entities[name] ?? whole;
      const code = hex === undefined ? Number(digits) : Number.parseInt(hex, 16);
      return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
    })
    .replace(/_x([0-9A-Fa-f]{4})_/gu, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
}

/** The texts that cells share, those of their reading aids left out. */
function stringsOf(part: Iterable<Tag> | undefined): readonly string[] | undefined {
  if (part === undefined) return undefined;
  const strings: string[] = [];
  let aid = false;
  for (const { name, closing, empty, text } of part) {
    if (name === "si" && !closing) strings.push("");
    if (name === "rPh") aid = !closing && !empty;
    if (name === "t" && !closing && !aid) strings.push(longer(strings.pop() ?? "", text));
  }
  return strings;
}

/** How the number of a cell is written: as a day, a time, in per cent or by the thousand, and what stands before and behind. */
interface Shape {
  readonly day: boolean;
  readonly time: boolean;
  readonly percent: boolean;
  /** Whether its words stand beside a text as well. */
  readonly text: boolean;
  readonly thousands: number;
  readonly before: string;
  readonly behind: string;
}

/** Formats of money that a workbook names by number alone, in the money of the place where it is opened. */
const localMoney = /^(?:[5-8]|42|44)$/u;

function shapesOf(all: readonly Tag[]): readonly Shape[] {
  const codes = new Map(
    all.flatMap(({ name, attributes }) =>
      name === "numFmt" ? [[attributes["numFmtId"] ?? "", attributes["formatCode"] ?? ""] as const] : [],
    ),
  );
  const from = all.findIndex(({ name, closing }) => name === "cellXfs" && !closing);
  const to = all.findIndex(({ name, closing }) => name === "cellXfs" && closing);
  return all.slice(from, to).flatMap(({ name, closing, attributes }) => {
    if (name !== "xf" || closing) return [];
    const id = attributes["numFmtId"] ?? "0";
    const [code = ""] = (codes.get(id) ?? (id === "9" || id === "10" ? "0%" : "")).split(";");
    const tokens: readonly string[] = code.match(/"[^"]*"|\[[^\]]*\]|[\\_*].|General|./giu) ?? [];
    const bare = tokens.filter((token) => token.length === 1).join("");
    const isValue = (token: string): boolean => /^(?:[0#?@]|General)$/iu.test(token);
    const [first, last] = [tokens.findIndex(isValue), tokens.findLastIndex(isValue)];
    const back = tokens.slice(last + 1);
    const commas = back.findIndex((token) => token !== ",");
    return [
      {
        day: /^(?:1[4-7]|22)$/u.test(id) || /[dy]/iu.test(bare),
        time: /^(?:1[89]|2[01]|4[567])$/u.test(id) || /[hs]/iu.test(bare) || /\[[hms]+\]/iu.test(code),
        percent: bare.includes("%"),
        text: bare.includes("@"),
        thousands: commas < 0 ? back.length : commas,
        before: localMoney.test(id) ? "$" : wordsIn(tokens.slice(0, Math.max(first, 0))),
        behind: wordsIn(first < 0 ? [] : back.slice(commas < 0 ? back.length : commas)),
      },
    ];
  });
}

/** What a format of numbers writes beside them: texts in quotes, signs behind a stroke, money in brackets. */
function wordsIn(tokens: readonly string[]): string {
  return tokens
    .map((token) => {
      if (token.startsWith("[")) return /^\[\$([^\]-]*)/u.exec(token)?.[1] ?? "";
      return token.startsWith("\\") ? token.slice(1) : /^[_*%]/u.test(token) ? " " : token.replaceAll('"', "");
    })
    .join("")
    .trim();
}

function cellsOf(part: Iterable<Tag>, look: Look): Omit<ReadSheet, "name" | "hidden"> {
  const cells = new Map<string, string>();
  const formulas = new Map<string, string>();
  const results = new Set<string>();
  const numbers = new Set<string>();
  const unseen = new Set<string>();
  const unseenColumns: (readonly [from: number, to: number])[] = [];
  let rowUnseen = false;
  let [row, column] = [0, 0];
  let address = "";
  let type = "n";
  let shape: Shape | undefined;
  for (const { name, attributes, closing, text } of part) {
    const words = cells.get(address);
    if (closing && name === "c" && type !== "n" && shape?.text && words !== undefined)
      cells.set(address, longer("", withWords(words, shape)));
    if (closing) continue;
    if (name === "row") {
      row = Number(attributes["r"] ?? row + 1);
      column = 0;
      rowUnseen = isSet(attributes["hidden"]);
    }
    if (name === "col" && isSet(attributes["hidden"]))
      unseenColumns.push([Number(attributes["min"]), Number(attributes["max"])]);
    if (name === "c") {
      // Some programs leave out where a cell stands: it is behind the one before.
      column = attributes["r"] === undefined ? column + 1 : placeOf(attributes["r"])[1] + 1;
      address = attributes["r"] ?? addressOf(row - 1, column - 1);
      type = attributes["t"] ?? "n";
      shape = look.shapes[Number(attributes["s"] ?? 0)];
      const at = column;
      if (rowUnseen || unseenColumns.some(([from, to]) => from <= at && at <= to)) unseen.add(address);
    } else if (name === "f") {
      formulas.set(address, text);
    } else if (name === "v" && address !== "" && (type === "str" || text !== "")) {
      results.add(address);
      if (type === "n") numbers.add(address);
      if (type === "s" && look.strings === undefined) throw new Refused("part missing", "xl/sharedStrings.xml");
      cells.set(address, type === "n" ? numberText(text, shape, look) : longer("", otherText(type, text, look)));
    } else if (name === "t" && type === "inlineStr") {
      cells.set(address, longer(cells.get(address) ?? "", text));
    }
  }
  return { cells, numbers, formulas, unworked: [...formulas.keys()].find((one) => !results.has(one)), unseen };
}

/** What a cell that is no number shows. */
function otherText(type: string, text: string, { strings }: Look): string {
  return type === "s" ? (strings?.[Number(text)] ?? "") : type === "b" ? (text === "1" ? "TRUE" : "FALSE") : text;
}

function isSet(flag: string | undefined): boolean {
  return flag === "1" || flag === "true";
}

/** A number as its cell shows it, to the fifteen digits that a spreadsheet keeps. */
function numberText(text: string, shape: Shape | undefined, { daysBefore1970 }: Look): string {
  const number = Number(text) * (shape?.percent ? 100 : 1) * 1000 ** -(shape?.thousands ?? 0);
  if (!Number.isFinite(number)) return text;
  const days = Number(text) - daysBefore1970;
  if (shape?.day && Math.abs(days) < 1_000_000) return new Date(days * 86_400_000).toISOString().slice(0, 10);
  if (shape?.time)
    return `${Math.floor(Number(text) * 24)}:${String(Math.round(Number(text) * 1440) % 60).padStart(2, "0")} h`;
  const digits = Number(number.toPrecision(15));
  const plain = Math.abs(digits) < 1e-6 ? digits.toFixed(20).replace(/\.?0+$/u, "") : String(digits);
  const behind = shape?.percent ? "%" : (shape?.behind ?? "");
  return withWords(plain, { before: shape?.before ?? "", behind });
}

function withWords(text: string, { before, behind }: Pick<Shape, "before" | "behind">): string {
  return [before, text, behind].filter((one) => one !== "").join(" ");
}
