import { isDeepStrictEqual } from "node:util";
import { type Problem, told } from "@noodlewright/core";
import type { Path } from "@noodlewright/core/figure";
import type { WorkbookSheet } from "@noodlewright/core/render";
import { keyPathIn, readSpec } from "@noodlewright/core/spec";
import { strToU8 } from "fflate";
import { stringify } from "yaml";
import { parseFile } from "./document.ts";
import { isSection, type Put, valueAt, withValues } from "./put.ts";
import { largest, type TextFile } from "./read-file.ts";
import { type ReadSheet, sheetsOfWorkbook } from "./workbook-lines.ts";
import { writtenAnew } from "./written-values.ts";

type Data = Readonly<Record<string, unknown>>;

/** What was typed into an input of a workbook. */
export interface TypedInput {
  readonly cell: string;
  readonly label: string;
  /** Nothing where the cell is empty. */
  readonly text: string;
  /** What stood there when the workbook was written. */
  readonly before: string;
  readonly unit: string;
  /** Whether the workbook was worked out since: it says beside the cell that it was changed. */
  readonly seen: boolean;
}

/** A figure of a workbook that was written here. */
interface BookFigure {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  readonly typed?: TypedInput;
}

export type Book = ReadonlyMap<string, BookFigure>;

/** The spec of a workbook, and what was changed in its cells. */
export interface BookSpec {
  readonly data: Data;
  /** Its text before anything was typed. */
  readonly file: TextFile;
  /** What was typed, in words. */
  readonly changed: readonly string[];
  /** Cells with nothing in them, or with something that no spec takes. */
  readonly open: readonly string[];
  /** What the workbook shows, where it was worked out after the last of it was typed. */
  readonly shown: Book | undefined;
  /** What is found anew when the spec is read. */
  readonly sought: readonly string[];
}

const specSheetName = "Spec";

const about =
  "# The spec of this workbook as it was written. Reading the workbook back puts the changed cells into it.";
const withReturns = `${about} Its lines end with a return and a line feed.`;

/**
 * The sheet that keeps a spec as it was written, a line in each row, so that nothing of it is lost when it is read back.
 *
 * @param files - where it was written, with its comments: the spec, then the kitchen files that it takes in
 */
export function specSheet(data: unknown, ...files: readonly TextFile[]): WorkbookSheet {
  const text = textOf(data, files) ?? stringify(data, { lineWidth: 0, aliasDuplicateObjects: false });
  const lines = [/\r\n/u.test(text) ? withReturns : about, ...text.trimEnd().split(/\r?\n/u)];
  return { name: specSheetName, widths: [100], headings: 0, rows: lines.map((value) => [{ role: "text", value }]) };
}

/** A spec as it was written, with the kitchen files behind it; nothing where they cannot be put together so. */
function textOf(data: unknown, [file, ...kitchens]: readonly TextFile[]): string | undefined {
  if (file === undefined || !isSection(data)) return undefined;
  const was = parseFile(file);
  const own = was.ok && isSection(was.parsed.data) ? was.parsed.data : {};
  const taken = ["materials", "machines"].filter((key) => !(key in own));
  const bare = writtenAnew(file, Object.fromEntries(Object.entries(data).filter(([key]) => !taken.includes(key))));
  const lineEnd = file.text.includes("\r\n") ? "\r\n" : "\n";
  const behind = kitchens.map(({ text }) =>
    text.replace(/^# yaml-language-server:.*\r?\n/gmu, "").replace(/\r?\n/gu, lineEnd),
  );
  const text = bare && [bare.trimEnd(), ...behind].join(`${lineEnd}${lineEnd}`);
  const parsing = text === undefined ? undefined : parseFile({ ...file, text, bytes: strToU8(text) });
  const whole =
    parsing?.ok === true && parsing.parsed.duplicates.length === 0 && isDeepStrictEqual(parsing.parsed.data, data);
  return whole ? text : writtenAnew(file, data);
}

/** The spec behind a workbook that was written here, with what was typed into its cells; undefined of another workbook. */
export function specOfWorkbook(bytes: Uint8Array): BookSpec | undefined {
  const sheets = sheetsOfWorkbook(bytes);
  const book = "why" in sheets ? undefined : bookIn(sheets);
  const file = "why" in sheets ? undefined : specIn(sheets);
  const parsing = file && parseFile(file);
  const data = parsing?.ok === true ? parsing.parsed.data : undefined;
  return book === undefined || file === undefined || !isSection(data) ? undefined : changedSpec(data, book, file);
}

/** The text of the sheet of the spec, without what was put above it. */
function specIn(sheets: readonly ReadSheet[]): TextFile | undefined {
  const lines: string[] = [];
  const cells = sheets.find(({ cells: at }) => at.get("A1")?.startsWith(about))?.cells;
  for (const [address, line] of cells ?? []) {
    const row = Number(/^A(\d{1,6})$/u.exec(address)?.[1] ?? 0);
    // Other programs leave empty rows out.
    while (lines.length + 1 < row) lines.push("");
    if (row > 1) lines[row - 1] = line;
  }
  const plain = `${lines.join("\n").replace(/^\n+|\n+$/gu, "")}\n`;
  const text = cells?.get("A1") === withReturns ? plain.replaceAll("\n", "\r\n") : plain;
  return text.length > largest ? undefined : { name: specSheetName, text, bytes: strToU8(text) };
}

/** The figures of a workbook by their ids, with what was typed for those that may be changed; whatever its sheets are called. */
export function bookIn(sheets: readonly ReadSheet[]): Book | undefined {
  const figures = sheets.find(({ cells: at }) => at.get("A3") === "figure" && at.get("F3") === "name");
  const [use] = sheets.flatMap((one) => ([...one.cells.values()].includes("change here") ? [one] : []));
  if (use === undefined || figures === undefined) return undefined;
  const { cells, formulas } = figures;
  const at = (column: string, row: string): string => cells.get(column + row) ?? "";
  return new Map(
    [...cells].flatMap(([address, id]) => {
      const row = /^F(\d+)$/u.exec(address)?.[1];
      if (row === undefined) return [];
      const [, quoted, plain, line = ""] =
        /^(?:'((?:[^']|'')+)'|([^'!]+))!\$?B\$?(\d+)(?!\d)/u.exec(formulas.get(`B${row}`) ?? "") ?? [];
      const input = (quoted?.replaceAll("''", "'") ?? plain) === use.name ? line : undefined;
      const typed = input !== undefined && {
        typed: {
          cell: `B${input}`,
          label: use.cells.get(`A${input}`) ?? "",
          text: use.cells.get(`B${input}`) ?? "",
          before: use.cells.get(`D${input}`) ?? "",
          unit: use.cells.get(`C${input}`) ?? "",
          seen: use.cells.get(`E${input}`) === "changed",
        },
      };
      return [[id, { label: at("A", row), value: at("B", row), unit: at("C", row), ...typed }] as const];
    }),
  );
}

/** A spec with what was typed into its workbook, and where in it each of that went. */
export function withTyped(before: Data, book: Book) {
  const placed = [...book]
    .flatMap(([id, { typed }]) =>
      typed === undefined || typed.text === typed.before ? [] : [{ ...typed, puts: placesOf(id, before, book) }],
    )
    .toSorted((one, other) => Number(one.cell.slice(1)) - Number(other.cell.slice(1)));
  const changed = withValues(
    before,
    placed.flatMap(({ puts }) => puts),
  );
  return { data: isSection(changed) ? changed : before, placed };
}

function changedSpec(before: Data, book: Book, file: TextFile): BookSpec {
  const { data, placed } = withTyped(before, book);
  const reading = readSpec(data);
  const problems = reading.ok ? [] : reading.problems;
  const isOf = (one: Problem, { puts }: (typeof placed)[number]): boolean =>
    puts.some(({ path }) => path.every((step, at) => one.path[at] === step));
  const isOpen = (typed: (typeof placed)[number]): boolean =>
    !isNumber(typed.text) || problems.some((one) => isOf(one, typed));
  // What somebody changed in the spec of the workbook itself; what is to be found is no fault.
  const others = problems.filter(
    (one) => !placed.some((typed) => isOf(one, typed)) && soughtIn(valueAt(data, one.path)).length === 0,
  );
  return {
    data,
    file,
    changed: placed
      .filter((one) => !isOpen(one))
      .map(
        ({ cell, label, text, unit, before: was }) =>
          `${cell}, ${label}: ${`${text} ${unit}`.trim()}, where the spec had ${withUnit(was, unit)}`,
      ),
    sought: placed.length > 0 ? soughtIn(data) : [],
    shown: placed.length > 0 && placed.every(({ seen }) => seen) ? book : undefined,
    open: [
      ...placed.filter(isOpen).map(({ cell, label, text, unit, before: was }) => {
        const why =
          text === "" ? "the cell is empty" : isNumber(text) ? `${text} is not taken` : `"${text}" is no number`;
        return `${cell}, ${label}: ${why}; the spec had ${withUnit(was, unit)}`;
      }),
      ...others.map(
        (one) =>
          `sheet ${specSheetName}, ${one.path.join(".")}: ${told(one).found}; right would be ${told(one).expected}`,
      ),
    ],
  };
}

function withUnit(text: string, unit: string): string {
  return text === "" ? "none" : isNumber(text) ? `${text} ${unit}`.trim() : text;
}

/** What a spec leaves to be found: the name of an ingredient, or the key that says it. */
function soughtIn(value: unknown, name = ""): readonly string[] {
  if (typeof value === "string") return value.trim() === "find" ? [name] : [];
  if (typeof value !== "object" || value === null) return [];
  const own = isSection(value) && typeof value["name"] === "string" ? value["name"] : undefined;
  return Object.entries(value).flatMap(([key, one]) =>
    soughtIn(one, (key === "amount" ? own : undefined) ?? (name === "water" ? `${key} water` : key)),
  );
}

function isNumber(text: string): boolean {
  return text !== "" && Number.isFinite(Number(text));
}

/** Masses that packs are told in, g. */
const grams: Readonly<Record<string, number>> = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 };

const places: Readonly<Record<string, Path>> = {
  "batch.bowls": ["batch", "bowls"],
  "bowl.raw": ["batch", "rawWeight"],
  "bowl.cooked": ["batch", "cookedWeight"],
  "bowl.cook-gain": ["batch", "cookGain"],
  "batch.dough": ["batch", "dough"],
  "batch.flour-stated": ["batch", "flour"],
  "batch.have": ["batch", "have", "amount"],
  "mixer.largest": ["mixer", "largest"],
  "mixer.smallest": ["mixer", "smallest"],
  "rework.stated": ["rework", "amount"],
  "flour.reference-moisture": ["water", "onFlourMoisture"],
  "dusting.parts": ["dusting", "amount"],
  "dusting.stated": ["dusting", "amount"],
  "salt.parts": ["salt"],
  "salt.stated": ["salt"],
  "weighing.tolerance": ["weighingTolerance"],
};

const lists: Readonly<Record<string, string>> = { flour: "flours", alkali: "alkali", ingredient: "ingredients" };

/** What a typed figure is in a spec, and where. */
function placesOf(id: string, spec: Data, book: Book): readonly Put[] {
  const text = (of: string): string => book.get(of)?.typed?.text ?? book.get(of)?.value ?? "";
  const unit = (of: string): string => book.get(of)?.typed?.unit ?? book.get(of)?.unit ?? "";
  const said = (of: string): string | number => {
    const short = unit(of).replace(/ of .*$|\/100 g flour$/u, "");
    const number = isNumber(text(of)) ? text(of) : text(of) || "?";
    return short === "" && isNumber(number) ? Number(number) : `${number} ${short}`.trim();
  };
  const put = (...path: Path): readonly Put[] => [{ path, value: said(id) }];
  const [room = "", what = ""] = id.split(".");
  const last = id.slice(id.lastIndexOf(".") + 1);
  if (places[id] !== undefined) return put(...places[id]);
  if (room === "loss") return put("losses", what);
  if (room === "wanted") return wantedPlace(id, spec, book, said);
  if (last === "price" || room === "shopping") {
    const line = id.slice(room === "shopping" ? room.length + 1 : 0, -last.length - 1);
    const [price, pack] = [`${line}.price`, `shopping.${line}.pack`];
    const label = book.get(id)?.label ?? "";
    const name = label.replace(/^(?:price|pack) of | on hand$/gu, "");
    const section = last === "on-hand" ? "stock" : "prices";
    const known = keyPathIn(spec, [section, name]);
    const path = known.ok ? known.value : [section, name];
    if (section === "stock") return [{ path, value: said(id) }];
    if (!book.has(pack)) return [{ path, value: said(price) }];
    const each =
      (Number(text(price)) * Number(text(pack)) * (grams[unit(pack)] ?? 1)) / (grams[unit(price).slice(4)] ?? 1);
    const value = isNumber(text(price)) && isNumber(text(pack)) ? Number(each.toPrecision(12)) : "?";
    return [{ path, value: `${value} ${unit(price).slice(0, 3)} per ${said(pack)}` }];
  }
  if (room === "water") return put("water", what.split("-")[0] ?? "");
  if (room === "scale") return put("scales", Number(what) - 1, last);
  const [line, place] = [`${room}.${what}`, [lists[room] ?? "", Number(what) - 1] as const];
  const stands = (key: string): boolean => valueAt(spec, [...place, "figures", key]) !== undefined;
  if (["parts", "written", "stated"].includes(last)) return put(...place, "amount");
  if (room === "alkali") {
    const salts = [...book.keys()].filter(
      (one) => /^[A-Z]\w+$/u.test(one.slice(line.length + 1)) && one.startsWith(`${line}.`),
    );
    const parts = salts.flatMap((one) => (Number(text(one)) === 0 ? [] : [[one.slice(line.length + 1), said(one)]]));
    // A salt that drew water is told by its moisture, and a product whose water is the rest by its other parts.
    if ([...book.keys()].some((one) => one.startsWith(`${line}.`) && one.endsWith("-stated")))
      return put(...place, "figures", "moisture");
    const [inert, moisture] = [`${line}.inert`, `${line}.moisture`];
    const others = book.has(inert)
      ? { ...(Number(text(inert)) !== 0 && { inert: said(inert) }), water: "rest" }
      : book.has(moisture)
        ? { water: said(moisture), inert: "rest" }
        : { water: "rest" };
    const ways = ["solution", "certificate", "assay"].filter((way) => stands(way));
    return [
      { path: [...place, "figures", "composition"], value: { ...Object.fromEntries(parts), ...others } },
      ...ways.map((way) => ({ path: [...place, "figures", way], value: undefined })),
    ];
  }
  if (last === "moisture") return put(...place, "figures", "moisture");
  // A figure goes with its basis, and a protein with the factor that it was counted with.
  const main = /protein|factor/u.test(last) ? "protein" : "ash";
  const asIs = `${line}.${main}`;
  const table = / at (\S+) % mb$/u.exec(book.get(asIs)?.typed?.label ?? "")?.[1];
  const [stated, factor] = [book.has(`${asIs}-stated`) ? `${asIs}-stated` : asIs, `${line}.nitrogen-factor`];
  const basis = stated === asIs ? (table === undefined ? "as is" : `${table} % mb`) : `${said(`${asIs}-basis`)} mb`;
  const figures = {
    [main]: said(stated),
    [`${main}Basis`]: basis,
    ...(main === "protein" && { label: undefined, ...(book.has(factor) && { nitrogenFactor: said(factor) }) }),
  };
  return Object.entries(figures)
    .filter(([key, value]) => value !== undefined || stands(key))
    .map(([key, value]) => ({ path: [...place, "figures", key], value }));
}

/** What is wanted, written as the value, the range or the end of one that it was. */
function wantedPlace(id: string, spec: Data, book: Book, said: (of: string) => string | number): readonly Put[] {
  const [, name = "", number] = id.split(".");
  const key = name.replace(/-./gu, (letter) => letter.slice(1).toUpperCase());
  const last = id.slice(id.lastIndexOf(".") + 1);
  if (key === "flour") return [{ path: ["flours", Number(number) - 1, last], value: said(id) }];
  const base = `wanted.${name}`;
  const [value, within, least, most] = [base, `${base}.within`, `${base}.least`, `${base}.most`].map((one) =>
    book.get(one)?.typed === undefined ? undefined : said(one),
  );
  const path = ["wanted", key];
  if (["glutenProtein", "sodium", "price", "bowlPrice", "batchPrice"].includes(key)) return [{ path, value: said(id) }];
  if (value !== undefined) {
    if (last === "within" && valueAt(spec, ["wanted", "within"]) !== undefined)
      return [{ path: ["wanted", "within"], value: said(id) }];
    const near = within === undefined || valueAt(spec, ["wanted", "within"]) !== undefined ? "" : ` ± ${within}`;
    return [{ path, value: `${value}${near}` }];
  }
  const range = least !== undefined && most !== undefined;
  return [
    { path, value: range ? `${least} to ${most}` : least === undefined ? `at most ${most}` : `at least ${least}` },
  ];
}
