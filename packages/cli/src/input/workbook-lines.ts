import { strFromU8, unzipSync } from "fflate";
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
  /** The formulas of cells. */
  readonly formulas: SheetCells;
  /** Whether a formula of it has no result. */
  readonly unworked: boolean;
}

/** Why a workbook cannot be read. */
export interface NoWorkbook {
  readonly why: "damaged" | "another" | "too large" | "not worked out";
}

/** A formula as it stands in a workbook, and where. */
export interface WorkbookLines {
  readonly text: string;
  readonly sheet: string;
  /** Sheets that were left out. */
  readonly unread: readonly string[];
}

/**
 * The formula in a workbook of Office Open XML as lines with tabs between the cells: of a workbook that was written here the
 * weights of one load, of any other the first sheet with two rows of words and numbers.
 */
export function linesOfWorkbook(bytes: Uint8Array): WorkbookLines | NoWorkbook {
  const sheets = sheetsOfWorkbook(bytes);
  if ("why" in sheets) return sheets;
  const all = sheets.map((sheet) => ({ ...sheet, rows: rowsOf(sheet.cells) }));
  const seen = all.filter(({ hidden }) => !hidden);
  const first =
    seen.find(({ rows }) => amountsIn(rows) >= 2) ?? seen.find(({ rows }) => amountsIn(rows) > 0) ?? seen[0] ?? all[0];
  if (first === undefined) return { why: "another" };
  if (first.unworked) return { why: "not worked out" };
  const weights = weightsIn(first.rows);
  const text = (weights ?? first.rows).map((row) => row.join("\t").trimEnd()).join("\n");
  if (text.length > largest) return { why: "too large" };
  const left = weights === undefined ? all.filter((one) => one !== first && one.cells.size > 0) : [];
  return { text, sheet: first.name, unread: left.map(({ name }) => name) };
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

/** The cells of a sheet as rows, those that are empty as nothing. */
function rowsOf(cells: SheetCells): readonly (readonly string[])[] {
  const rows: string[][] = [];
  for (const [address, text] of cells) {
    const [row, column] = placeOf(address);
    if (row >= 100_000 || column >= 1000) continue;
    while (rows.length <= row) rows.push([]);
    const line = rows[row] ?? [];
    while (line.length < column) line.push("");
    line[column] = text.replace(/\s+/gu, " ").trim();
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
  readonly why: NoWorkbook["why"];

  constructor(why: NoWorkbook["why"]) {
    super(why);
    this.why = why;
  }
}

/** Reads the sheets of a workbook. */
export function sheetsOfWorkbook(bytes: Uint8Array): readonly ReadSheet[] | NoWorkbook {
  const sheets = read.get(bytes) ?? sheetsIn(bytes);
  read.set(bytes, sheets);
  return sheets;
}

/** What was read, by the bytes of the file: one that is looked at twice is read once. */
const read = new WeakMap<Uint8Array, readonly ReadSheet[] | NoWorkbook>();

function sheetsIn(bytes: Uint8Array): readonly ReadSheet[] | NoWorkbook {
  try {
    return readSheets(bytes);
  } catch (error) {
    return { why: error instanceof Refused ? error.why : "damaged" };
  }
}

function readSheets(bytes: Uint8Array): readonly ReadSheet[] | NoWorkbook {
  let size = 0;
  const parts = unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      const wanted = /^xl\/(?:(?:workbook|sharedStrings|styles)\.xml|_rels\/|worksheets\/)/u.test(name);
      size += wanted ? originalSize : 0;
      if (size > mostBytes) throw new Refused("too large");
      return wanted;
    },
  });
  const room = { tags: mostTags };
  const part = (name: string): Iterable<Tag> => tags(parts[name] === undefined ? "" : strFromU8(parts[name]), room);
  const targets = new Map(
    [...part("xl/_rels/workbook.xml.rels")].flatMap(({ name, attributes }) =>
      name === "Relationship" ? [[attributes["Id"] ?? "", partName(attributes["Target"] ?? "")] as const] : [],
    ),
  );
  const strings = stringsOf(part("xl/sharedStrings.xml"));
  const shapes = shapesOf([...part("xl/styles.xml")]);
  const sheets = [...part("xl/workbook.xml")].filter(({ name, closing }) => name === "sheet" && !closing);
  if (sheets.length === 0) return { why: "another" };
  return sheets.map(({ attributes }) => ({
    name: attributes["name"] ?? "",
    hidden: /^(?:hidden|veryHidden)$/u.test(attributes["state"] ?? ""),
    ...cellsOf(part(targets.get(attributes["id"] ?? "") ?? ""), strings, shapes),
  }));
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
function stringsOf(part: Iterable<Tag>): readonly string[] {
  const strings: string[] = [];
  let aid = false;
  for (const { name, closing, empty, text } of part) {
    if (name === "si" && !closing) strings.push("");
    if (name === "rPh") aid = !closing && !empty;
    if (name === "t" && !closing && !aid) strings.push(longer(strings.pop() ?? "", text));
  }
  return strings;
}

/** How the number of a cell is written: as a day, in per cent, and what stands behind it. */
interface Shape {
  readonly day: boolean;
  readonly percent: boolean;
  readonly behind: string;
}

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
    const unquoted = code.replace(/"[^"]*"/gu, "");
    const behind = /[0#?]\s*"([^"]*)"\s*$/u.exec(code)?.[1] ?? "";
    const day = /^(?:1[4-7]|22)$/u.test(id) || /[dy]/iu.test(unquoted.replace(/\[[^\]]*\]|\\./gu, ""));
    return [{ day, percent: unquoted.includes("%"), behind: behind.trim() }];
  });
}

function cellsOf(
  part: Iterable<Tag>,
  strings: readonly string[],
  shapes: readonly Shape[],
): Omit<ReadSheet, "name" | "hidden"> {
  const cells = new Map<string, string>();
  const formulas = new Map<string, string>();
  const results = new Set<string>();
  let address = "";
  let type = "n";
  let shape: Shape | undefined;
  for (const { name, attributes, closing, text } of part) {
    if (closing) continue;
    if (name === "c") {
      address = attributes["r"] ?? "";
      type = attributes["t"] ?? "n";
      shape = shapes[Number(attributes["s"] ?? 0)];
    } else if (name === "f") {
      formulas.set(address, text);
    } else if (name === "v" && address !== "" && (type === "str" || text !== "")) {
      results.add(address);
      cells.set(
        address,
        type === "s" ? (strings[Number(text)] ?? "") : type === "n" ? numberText(text, shape) : longer("", text),
      );
    } else if (name === "t" && type === "inlineStr") {
      cells.set(address, longer(cells.get(address) ?? "", text));
    }
  }
  return { cells, formulas, unworked: [...formulas.keys()].some((one) => !results.has(one)) };
}

/** Days that a spreadsheet has counted before 1970. */
const daysBefore1970 = 25_569;

/** A number as its cell shows it, to the fifteen digits that a spreadsheet keeps. */
function numberText(text: string, shape: Shape | undefined): string {
  const days = Number(text) - daysBefore1970;
  if (shape?.day && Math.abs(days) < 1_000_000) return new Date(days * 86_400_000).toISOString().slice(0, 10);
  const number = Number(text) * (shape?.percent ? 100 : 1);
  if (!Number.isFinite(number)) return text;
  const plain = String(Number(number.toPrecision(15)));
  const behind = shape?.percent ? "%" : (shape?.behind ?? "");
  return behind === "" ? plain : `${plain} ${behind}`;
}
