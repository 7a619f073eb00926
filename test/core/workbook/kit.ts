import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { askBatch, askCost, askWorkbook, type Noodle, readNoodleData, type UnitSystem } from "@noodlewright/core";
import type { Graph } from "@noodlewright/core/figure";
import type { Workbook, WorkbookCell } from "@noodlewright/core/render";
import { type Kitchen, readKitchenFile } from "@noodlewright/core/spec";
import { HyperFormula } from "hyperformula";
import { parse } from "yaml";

/** Examples that are whole specs. */
export const examples = [
  "barley-egg-noodle",
  "barley-out-of-reach",
  "evening-class",
  "friday-noodle",
  "new-lot",
  "one-bottle",
  "pin-and-sticks",
  "school-barley-noodle",
  "school-noodle",
  "written-in-grams",
] as const;

export type Data = Readonly<Record<string, unknown>>;

function parsed(name: string): Data {
  const data: unknown = parse(
    readFileSync(fileURLToPath(new URL(`../../../examples/${name}.yaml`, import.meta.url)), "utf8"),
  );
  if (!isData(data)) throw new Error(`${name} is no spec`);
  return data;
}

export function isData(value: unknown): value is Data {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** An example as plain data. */
export function exampleData(name: string): Data {
  const { include: _include, ...data } = parsed(name);
  return data;
}

let read: ReturnType<typeof readKitchenFile> | undefined;

function store(): Kitchen {
  read ??= readKitchenFile(parsed("harbour-store"));
  if (!read.ok) throw new Error("the kitchen file of the examples cannot be read");
  return read.value;
}

/** The noodle of a spec, with the kitchen of the examples; undefined where it is refused. */
export function noodleOf(data: Data, units: UnitSystem = "metric"): Noodle | undefined {
  const reading = readNoodleData(data, { kitchens: [store()], units });
  return reading.ok ? reading.value : undefined;
}

/** The workbook of a noodle. */
export function workbookFor(noodle: Noodle): Workbook {
  const workbook = askWorkbook(noodle);
  if (!workbook.ok) throw new Error(`no workbook: ${workbook.problems.map(({ code }) => code).join(", ")}`);
  return workbook.value;
}

/** Every figure that the commands answer with; undefined where they refuse. */
export function commandGraph(noodle: Noodle): Graph | undefined {
  const batch = askBatch(noodle);
  if (!batch.ok) return undefined;
  const cost = askCost(noodle);
  return { ...noodle.formula.graph, ...batch.value.graph, ...(cost.ok && cost.value.graph) };
}

/** A place in a workbook. */
export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

/** Every cell of a workbook with its place. */
export function cellsOf(workbook: Workbook): readonly (Place & { readonly cell: WorkbookCell })[] {
  return workbook.sheets.flatMap(({ name, rows }) =>
    rows.flatMap((cells, row) =>
      cells.flatMap((cell, column) => (cell === null ? [] : [{ sheet: name, row, column, cell }])),
    ),
  );
}

/** Where the value of each figure stands, by its id. */
export function figurePlaces(workbook: Workbook): ReadonlyMap<string, Place & { readonly cell: WorkbookCell }> {
  const rows = workbook.sheets.find(({ name }) => name === "Figures")?.rows ?? [];
  return new Map(
    rows.flatMap((cells, row) => {
      const [value, id] = [cells[1], cells[5]?.value];
      return !value || typeof id !== "string" ? [] : [[id, { sheet: "Figures", row, column: 1, cell: value }] as const];
    }),
  );
}

/** Where an input is typed, what stands there and in which unit, and the figure behind it. */
export interface Input {
  readonly id: string;
  readonly place: Place;
  readonly before: number;
  readonly unit: string;
  readonly takes: NonNullable<WorkbookCell["takes"]>;
}

/** Everything that may be changed: the cells that the formulas of figures name. */
export function inputsOf(workbook: Workbook): readonly Input[] {
  const rows = workbook.sheets.find(({ name }) => name === "Noodle")?.rows ?? [];
  return [...figurePlaces(workbook)].flatMap(([id, { cell }]) => {
    const row = Number(/^Noodle!\$B\$(\d+)/u.exec(cell.formula ?? "")?.[1] ?? 0) - 1;
    const [, input, unit] = rows[row] ?? [];
    if (input?.role !== "input") return [];
    const { value, takes = {} } = input;
    const place = { sheet: "Noodle", row, column: 1 };
    return [{ id, place, before: Number(value ?? 0), unit: String(unit?.value), takes }];
  });
}

/** A number as it is typed into a workbook, in the unit that stands beside it. */
export interface Typed {
  readonly value: number;
  readonly unit: string;
}

/** An input changed by so many per cent, to four digits; where it was nothing, to a little. */
export function changedBy(percent: number, { id, before, unit }: Input): Typed {
  if (before === 0) return { value: Math.abs(percent) / 50, unit };
  const value = Number((before * (1 + percent / 100)).toPrecision(4));
  return { value: id === "batch.bowls" ? Math.round(value) : value, unit };
}

/** A workbook in an engine that is not ours, which works out every formula. */
export class Engine {
  readonly #engine: HyperFormula;

  constructor({ sheets }: Workbook) {
    const contents = sheets.map(({ name, rows }, at) => {
      // No formula reads words of the other sheets.
      const held = (cell: WorkbookCell | null) =>
        at > 0 && cell?.role === "text" && cell.formula === undefined ? null : content(cell);
      return [name, rows.map((row) => Array.from(row, held))] as const;
    });
    this.#engine = HyperFormula.buildFromSheets(Object.fromEntries(contents), {
      licenseKey: "gpl-v3",
      smartRounding: false,
    });
  }

  #address({ sheet, row, column }: Place) {
    return { sheet: this.#engine.getSheetId(sheet) ?? -1, row, col: column };
  }

  /** What a cell comes to; an error as its sign. */
  value(place: Place): string | number {
    const value = this.#engine.getCellValue(this.#address(place));
    if (typeof value === "number" || typeof value === "string") return value;
    return value === null ? "" : typeof value === "boolean" ? String(value) : value.value;
  }

  /** Types into cells, texts with an apostrophe in front; nothing empties one. */
  type(values: readonly (readonly [Place, number | string | null])[]): void {
    this.#engine.batch(() => {
      for (const [place, value] of values) this.#engine.setCellContents(this.#address(place), value);
    });
  }
}

function content(cell: WorkbookCell | null): string | number | null {
  if (cell?.formula !== undefined) return `=${cell.formula}`;
  return typeof cell?.value === "string" ? `'${cell.value}` : (cell?.value ?? null);
}

/** Whether two numbers are one but for the noise of doubles. */
export function same(a: string | number, b: string | number): boolean {
  if (typeof a !== "number" || typeof b !== "number") return a === b;
  return Math.abs(a - b) <= 1e-11 * Math.max(Math.abs(a), Math.abs(b)) || Math.abs(a - b) <= 1e-11;
}
