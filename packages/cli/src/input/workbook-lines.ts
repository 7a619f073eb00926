import { strFromU8, unzipSync } from "fflate";

/** Most that a part of a workbook may hold unpacked, bytes. */
const largestPart = 20_000_000;
/** Most cells of a sheet that are read. */
const mostCells = 200_000;

/** What a cell holds as text, by its address. */
export type SheetCells = ReadonlyMap<string, string>;

/** A sheet of a workbook, read. */
export interface ReadSheet {
  readonly name: string;
  readonly cells: SheetCells;
  /** The formulas of cells. */
  readonly formulas: SheetCells;
  /** Whether a formula of it has no result. */
  readonly unworked: boolean;
}

/** Why a workbook cannot be read. */
export interface NoWorkbook {
  readonly why: "damaged" | "another" | "not worked out";
}

/**
 * The formula in a workbook of Office Open XML as lines with tabs between the cells: of a workbook that was written here the
 * weights of one load, of any other its first sheet.
 */
export function linesOfWorkbook(bytes: Uint8Array): string | NoWorkbook {
  const sheets = sheetsOfWorkbook(bytes, 1);
  if ("why" in sheets) return sheets;
  const [first] = sheets;
  if (first === undefined) return { why: "another" };
  if (first.unworked) return { why: "not worked out" };
  const rows = rowsOf(first.cells);
  return (weightsIn(rows) ?? rows).map((row) => row.join("\t").trimEnd()).join("\n");
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
    if (row >= mostCells || column >= 1000) continue;
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

/** Reads the sheets of a workbook. */
export function sheetsOfWorkbook(bytes: Uint8Array, most = 100): readonly ReadSheet[] | NoWorkbook {
  let parts: Readonly<Record<string, Uint8Array>>;
  try {
    parts = unzipSync(bytes, {
      filter: ({ name, originalSize }) => name.startsWith("xl/") && originalSize <= largestPart,
    });
  } catch {
    return { why: "damaged" };
  }
  const part = (name: string): string => (parts[name] === undefined ? "" : strFromU8(parts[name]));
  const targets = new Map(
    tags(part("xl/_rels/workbook.xml.rels")).flatMap(({ name, attributes }) =>
      name === "Relationship" ? [[attributes["Id"] ?? "", partName(attributes["Target"] ?? "")] as const] : [],
    ),
  );
  const strings = stringsOf(part("xl/sharedStrings.xml"));
  const shapes = shapesOf(part("xl/styles.xml"));
  const sheets = tags(part("xl/workbook.xml")).filter(({ name, closing }) => name === "sheet" && !closing);
  if (sheets.length === 0) return { why: "another" };
  return sheets.slice(0, most).map(({ attributes }) => ({
    name: attributes["name"] ?? "",
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

/** The tags of a part in their order, their names and those of attributes without prefixes. */
function tags(part: string): readonly Tag[] {
  const plain = part.replace(/<!--[\s\S]*?-->/gu, "").replace(/<[?!][^>]*>/gu, "");
  return [...plain.matchAll(/<(\/?)(?:[\w.-]+:)?([\w.-]+)([^<>]*?)(\/?)>([^<]*)/gu)].map(
    ([, closing = "", name = "", attributes = "", empty = "", text = ""]) => ({
      name,
      attributes: Object.fromEntries(
        [...attributes.matchAll(/(?:[\w.-]+:)?([\w.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/gu)].map(
          ([, key = "", double, single]) => [key, unescaped(double ?? single ?? "")],
        ),
      ),
      closing: closing !== "",
      empty: empty !== "",
      text: unescaped(text),
    }),
  );
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
function stringsOf(part: string): readonly string[] {
  const strings: string[] = [];
  let aid = false;
  for (const { name, closing, empty, text } of tags(part)) {
    if (name === "si" && !closing) strings.push("");
    if (name === "rPh") aid = !closing && !empty;
    if (name === "t" && !closing && !aid) strings.push(`${strings.pop() ?? ""}${text}`);
  }
  return strings;
}

/** How the number of a cell is written: in per cent, and what stands behind it. */
interface Shape {
  readonly percent: boolean;
  readonly behind: string;
}

function shapesOf(part: string): readonly Shape[] {
  const all = tags(part);
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
    return [{ percent: unquoted.includes("%"), behind: behind.trim() }];
  });
}

function cellsOf(part: string, strings: readonly string[], shapes: readonly Shape[]): Omit<ReadSheet, "name"> {
  const cells = new Map<string, string>();
  const formulas = new Map<string, string>();
  const results = new Set<string>();
  let address = "";
  let type = "n";
  let shape: Shape | undefined;
  for (const { name, attributes, closing, text } of tags(part)) {
    if (closing || cells.size >= mostCells) continue;
    if (name === "c") {
      address = attributes["r"] ?? "";
      type = attributes["t"] ?? "n";
      shape = shapes[Number(attributes["s"] ?? 0)];
    } else if (name === "f") {
      formulas.set(address, text);
    } else if (name === "v" && address !== "" && (type === "str" || text !== "")) {
      results.add(address);
      cells.set(address, type === "s" ? (strings[Number(text)] ?? "") : type === "n" ? numberText(text, shape) : text);
    } else if (name === "t" && type === "inlineStr") {
      cells.set(address, `${cells.get(address) ?? ""}${text}`);
    }
  }
  return { cells, formulas, unworked: [...formulas.keys()].some((one) => !results.has(one)) };
}

/** A number as its cell shows it, to the fifteen digits that a spreadsheet keeps. */
function numberText(text: string, shape: Shape | undefined): string {
  const number = Number(text) * (shape?.percent ? 100 : 1);
  if (!Number.isFinite(number)) return text;
  const plain = String(Number(number.toPrecision(15)));
  const behind = shape?.percent ? "%" : (shape?.behind ?? "");
  return behind === "" ? plain : `${plain} ${behind}`;
}
