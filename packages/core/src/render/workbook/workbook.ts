import type { Graph, PlainFigure } from "../../figure/graph.ts";
import { citation } from "../../figure/source.ts";
import { writtenWorking } from "../../figure/written-working.ts";
import { dec } from "../../number/decimal.ts";
import { findUnit } from "../../number/units.ts";
import { printable } from "../printable.ts";
import { type DefinedName, SheetDraft, type Workbook, type WorkbookCell } from "./cells.ts";
import { cellFormula, literal } from "./formulas.ts";
import { layRounding } from "./rounding-sheet.ts";

/** A figure as a sheet shows it: in which unit of its dimension, and with how many places. */
export interface ShownFigure {
  readonly id: string;
  readonly unit: string;
  readonly places: number;
}

/** A figure that may be changed, where it is typed in another way than it is told. */
export interface InputFigure extends ShownFigure {
  readonly label?: string;
  /** What the typed number is multiplied with. */
  readonly factor?: (cell: CellOf) => string;
}

/** Figures that may be changed, under one heading. */
export interface InputGroup {
  readonly heading: string;
  readonly figures: readonly InputFigure[];
}

/** A row of results: the figure in each column, or words that a formula chooses. */
export interface ResultRow {
  readonly label: string;
  readonly figures: readonly (ShownFigure | undefined)[];
  readonly words?: { readonly text: string; readonly formula: (cell: CellOf) => string };
}

/** Results under one heading. */
export interface ResultGroup {
  readonly heading: string;
  readonly columns: readonly string[];
  readonly rows: readonly ResultRow[];
}

/** The cell of a figure, for formulas. */
export type CellOf = (id: string) => string;

/** Figures that are rounded together so that their total is kept. */
export interface RoundedFigures {
  readonly title: string;
  readonly least: "proportion" | "change";
  readonly divisions: number;
  readonly lines: readonly {
    readonly name: string;
    readonly exact: string;
    readonly rounded: string;
    /** The figure of its step, or the step. */
    readonly division: string | { readonly step: string };
  }[];
}

/** Something that has to hold for the answers to hold. */
export interface WorkbookCheck {
  /** What is looked at. */
  readonly of: string;
  /** What is said where it does not hold. */
  readonly text: string;
  /** What is said of the spec as it is written, where it does not hold there already. */
  readonly asWritten?: string | undefined;
  /** @param changed - whether any input is another than that of the spec */
  readonly fails: (cell: CellOf, changed: string) => string;
}

/** All that a workbook is made of. */
export interface WorkbookParts {
  readonly title: string;
  readonly about: readonly string[];
  readonly graph: Graph;
  readonly inputs: readonly InputGroup[];
  readonly results: readonly ResultGroup[];
  /** Formulas of figures that their working does not give, by id. */
  readonly rules: Readonly<Record<string, (cell: CellOf) => string>>;
  readonly roundings: readonly RoundedFigures[];
  readonly checks: readonly WorkbookCheck[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

const names = { use: "Noodle", figures: "Figures", rounding: "Rounding", sources: "Sources" } as const;

/** Rows above the figures on their sheet. */
const figureHeadings = 3;
/** Columns of the first sheet. */
const columns = { label: 0, input: 1, unit: 2, spec: 3, changed: 4, result: 6, value: 7 } as const;

const fine = "fine";

/**
 * Lays a graph of figures out as a workbook that works itself out: a sheet with what may be changed and what comes of it, a
 * sheet with every figure as a formula over the cells it rests on, the rounding that keeps totals, and what it all stands on.
 */
export function workbookOf(parts: WorkbookParts): Workbook {
  const ids = new Map(Object.keys(parts.graph).map((id, index) => [id, index] as const));
  const local: CellOf = (id) => `$B$${rowOf(id) + 1}`;
  const rowOf = (id: string): number => {
    const index = ids.get(id);
    if (index === undefined) throw new RangeError(`the graph does not know the figure "${id}"`);
    return figureHeadings + index;
  };
  const cellOf: CellOf = (id) => `${names.figures}!${local(id)}`;
  const rounding = new SheetDraft(names.rounding);
  const rules = new Map(Object.entries(parts.rules).map(([id, rule]) => [id, rule(local)]));
  const beyond = roundingRules(parts, rounding, cellOf, rules);
  const use = new UseSheet(parts, cellOf, local);
  for (const [id, formula] of use.inputFormulas) rules.set(id, formula);
  const decided = Object.values(parts.graph).filter(
    ({ id, working }) => working.kind === "procedure" && !rules.has(id),
  );
  use.putChecks([
    ...parts.checks,
    ...(beyond.length > 0
      ? [
          {
            of: "room for the rounding",
            text: "a weight gives way further than this workbook lays out: ask noodlewright",
            fails: () => `MAX(${beyond.join(",")})>0`,
          },
        ]
      : []),
    ...(decided.length > 0
      ? [
          {
            of: "what noodlewright decided",
            text: `noodlewright decided ${decided.length === 1 ? "one figure" : `${decided.length} figures`} for the inputs of the spec (see the sheet ${names.sources}): ask it again`,
            fails: (_: CellOf, changed: string) => changed,
          },
        ]
      : []),
  ]);
  return {
    title: parts.title,
    sheets: [
      use.done(),
      figureSheet(parts, local, rules),
      ...(rounding.length > 0 ? [rounding.done([30, 12, 12, 12], 0)] : []),
      sourceSheet(parts, decided),
    ],
    names: use.names,
  };
}

/** Lays out the roundings; gives the cells that tell where one is too long for its layout. */
function roundingRules(
  { roundings }: WorkbookParts,
  sheet: SheetDraft,
  cellOf: CellOf,
  rules: Map<string, string>,
): readonly string[] {
  return roundings.flatMap(({ title, least, divisions, lines }) => {
    const laid = layRounding(sheet, {
      title,
      least,
      divisions,
      lines: lines.map(({ name, exact, division }) => ({
        name,
        exact: cellOf(exact),
        division: typeof division === "string" ? cellOf(division) : literal(division.step),
      })),
    });
    for (const [index, { rounded }] of lines.entries()) rules.set(rounded, laid.rounded[index] ?? "");
    return laid.beyond;
  });
}

/** The sheet that people use. */
class UseSheet {
  readonly #parts: WorkbookParts;
  readonly #cellOf: CellOf;
  /** The cell of a figure for formulas that stand beside it. */
  readonly #local: CellOf;
  readonly #sheet = new SheetDraft(names.use);
  readonly #taken = new Set<string>();
  readonly #names: DefinedName[] = [];
  /** For each input the formula of its figure, in the unit of the figure. */
  readonly inputFormulas: readonly (readonly [id: string, formula: string])[];
  readonly #checksAt: number;
  readonly #lastInput: number;

  constructor(parts: WorkbookParts, cellOf: CellOf, local: CellOf) {
    this.#local = local;
    this.#parts = parts;
    this.#cellOf = cellOf;
    const about = [parts.title, ...parts.about];
    for (const [index, text] of about.entries()) this.#sheet.add({ role: index === 0 ? "title" : "note", value: text });
    this.#sheet.add();
    const top = this.#sheet.length;
    this.inputFormulas = this.#putInputs(top);
    this.#lastInput = this.#sheet.length;
    this.#checksAt = this.#putResults(top) + 1;
  }

  get names(): readonly DefinedName[] {
    return this.#names;
  }

  /** Whether any input is another than that of the spec. */
  get #anyChange(): string {
    return `COUNTIF(${names.use}!$E$1:$E$${this.#lastInput},"changed")>0`;
  }

  #putInputs(top: number): readonly (readonly [string, string])[] {
    const formulas: (readonly [string, string])[] = [];
    let row = top;
    for (const { heading, figures } of this.#parts.inputs) {
      const headings = [heading, "change here", "unit", "in the spec", ""];
      for (const [column, value] of headings.entries()) this.#sheet.put(row, column, { role: "heading", value });
      row += 1;
      for (const shown of figures) {
        const figure = figureIn(this.#parts.graph, shown.id);
        const value = shownValue(figure, shown.unit);
        const { places, label = figure.label } = shown;
        this.#sheet.put(row, columns.label, { role: "text", value: printable(label) });
        const address = this.#sheet.put(row, columns.input, { role: "input", value, places, least: 0 });
        this.#sheet.put(row, columns.unit, { role: "text", value: shown.unit });
        this.#sheet.put(row, columns.spec, { role: "number", value, places });
        const changed = `IF(B${row + 1}=D${row + 1},"","changed")`;
        this.#sheet.put(row, columns.changed, { role: "check", value: "", formula: changed });
        const absolute = address.replace(/([A-Z]+)(\d+)/u, "$$$1$$$2");
        const factor = shown.factor === undefined ? "" : `*${shown.factor(this.#local)}`;
        formulas.push([shown.id, `${names.use}!${absolute}${timesFactor(figure.unit, shown.unit)}${factor}`]);
        this.#name(label, shown.unit, absolute);
        row += 1;
      }
      row += 1;
    }
    return formulas;
  }

  #putResults(top: number): number {
    let row = top;
    for (const { heading, columns: titles, rows } of this.#parts.results) {
      for (const [index, value] of [heading, ...titles].entries()) {
        this.#sheet.put(row, columns.result + index, { role: "heading", value });
      }
      row += 1;
      for (const { label, figures, words } of rows) {
        this.#sheet.put(row, columns.result, { role: "text", value: printable(label) });
        for (const [index, shown] of figures.entries()) {
          if (shown !== undefined) this.#putResult(row, columns.value + index, shown, index === 0 ? label : undefined);
        }
        if (words !== undefined) {
          const formula = words.formula(this.#cellOf);
          this.#sheet.put(row, columns.value + figures.length, { role: "text", value: words.text, formula });
        }
        row += 1;
      }
      row += 1;
    }
    return row;
  }

  #putResult(row: number, column: number, { id, unit, places }: ShownFigure, label: string | undefined): void {
    const figure = figureIn(this.#parts.graph, id);
    const value = shownValue(figure, unit);
    const formula = `${this.#cellOf(id)}${overFactor(figure.unit, unit)}`;
    const address = this.#sheet.put(row, column, { role: "result", value, formula, places });
    const absolute = address.replace(/([A-Z]+)(\d+)/u, "$$$1$$$2");
    if (label !== undefined) this.#name(label, unit, absolute);
  }

  putChecks(checks: readonly WorkbookCheck[]): void {
    let row = this.#checksAt;
    const first = row + 1;
    this.#sheet.put(row, columns.result, { role: "heading", value: "Checks" });
    for (const { of, text, asWritten, fails } of checks) {
      row += 1;
      const now = `IF(${fails(this.#cellOf, this.#anyChange)},${textIn(text)},"${fine}")`;
      const formula = asWritten === undefined ? now : `IF(${this.#anyChange},${now},${textIn(asWritten)})`;
      this.#sheet.put(row, columns.result, { role: "text", value: of });
      this.#sheet.put(row, columns.value, { role: "check", value: asWritten ?? fine, formula });
    }
    const range = `$H$${first + 1}:$H$${row + 1}`;
    const [good, bad] = [`Every check is ${fine}.`, "See the checks below."];
    const verdict = `IF(COUNTIF(${range},"${fine}")=ROWS(${range}),"${good}","${bad}")`;
    this.#sheet.put(this.#parts.about.length + 1, columns.result, {
      role: "check",
      value: checks.every(({ asWritten }) => asWritten === undefined) ? good : bad,
      formula: verdict,
    });
  }

  #name(label: string, unit: string, address: string): void {
    const name = freeName(label, unit, this.#taken);
    this.#names.push({ name, refersTo: `${names.use}!${address}` });
  }

  done() {
    return this.#sheet.done([56, 12, 22, 12, 9, 3, 42, 14, 22, 18], 1);
  }
}

/** A text within a formula, in pieces of what a program takes as one. */
function textIn(text: string): string {
  const pieces = text.match(/.{1,200}/gsu) ?? [""];
  return pieces.map((piece) => `"${piece.replaceAll('"', '""')}"`).join("&");
}

/** Every figure, its formula over the cells it rests on, in words, and where it comes from. */
function figureSheet({ graph, title }: WorkbookParts, local: CellOf, rules: ReadonlyMap<string, string>) {
  const sheet = new SheetDraft(names.figures);
  sheet.add({ role: "title", value: `${title}: every figure` });
  sheet.add({ role: "note", value: "Each value is worked out by its formula from the cells it rests on." });
  sheet.add(
    ...["figure", "value", "unit", "how it comes about", "source", "name"].map(
      (value): WorkbookCell => ({ role: "heading", value }),
    ),
  );
  for (const figure of Object.values(graph)) {
    const { id, label, value, unit, places, working, sources } = figure;
    const formula = rules.get(id) ?? cellFormula(figure, local);
    const how = working.kind === "formula" ? (writtenWorking(figure, graph)?.names ?? "") : working.by;
    sheet.add(
      { role: "text", value: printable(label) },
      { role: "number", value: Number(value), places: places + 2, ...(formula !== undefined && { formula }) },
      { role: "text", value: unit },
      { role: "text", value: printable(how) },
      { role: "text", value: printable([...new Set(sources.map(citation))].join("; ")) },
      { role: "text", value: id },
    );
  }
  return sheet.done([44, 16, 20, 60, 60, 30], figureHeadings);
}

/** Sources, notes and cautions, and what no formula stands behind. */
function sourceSheet({ title, graph, notes, cautions }: WorkbookParts, decided: readonly PlainFigure[]) {
  const sheet = new SheetDraft(names.sources);
  sheet.add({ role: "title", value: `${title}: what the figures stand on` });
  const list = (heading: string, lines: readonly string[]): void => {
    if (lines.length === 0) return;
    sheet.add();
    sheet.add({ role: "heading", value: heading });
    for (const line of lines) sheet.add({ role: "text", value: printable(line) });
  };
  list("Cautions", cautions);
  list("Notes", notes);
  if (decided.length > 0) {
    sheet.add();
    const headings = ["Decided by noodlewright for the inputs of the spec", "value", "unit", "how"];
    sheet.add(...headings.map((value): WorkbookCell => ({ role: "heading", value })));
    for (const { label, value, unit, places, working } of decided) {
      sheet.add(
        { role: "text", value: printable(label) },
        { role: "number", value: Number(value), places },
        { role: "text", value: unit },
        { role: "text", value: printable(working.kind === "procedure" ? working.by : "") },
      );
    }
  }
  const cited = Object.values(graph).flatMap(({ sources }) => sources.map(citation));
  list("Sources", [...new Set(cited)].sort());
  return sheet.done([110, 14, 18, 60], 1);
}

function figureIn(graph: Graph, id: string): PlainFigure {
  const figure = Object.hasOwn(graph, id) ? graph[id] : undefined;
  if (figure === undefined) throw new RangeError(`the graph does not know the figure "${id}"`);
  return figure;
}

/** How many of the unit of a figure are in one of another; nothing where it is shown as it is. */
function factorOf(unit: string, shownIn: string): string | undefined {
  if (unit === shownIn) return undefined;
  const [from, to] = [findUnit(unit), findUnit(shownIn)];
  if (from === undefined || to?.dimension !== from.dimension) return undefined;
  return literal(dec(to.factor).div(from.factor));
}

function timesFactor(unit: string, shownIn: string): string {
  const factor = factorOf(unit, shownIn);
  return factor === undefined ? "" : `*${factor}`;
}

function overFactor(unit: string, shownIn: string): string {
  const factor = factorOf(unit, shownIn);
  return factor === undefined ? "" : `/${factor}`;
}

function shownValue({ value, unit }: PlainFigure, shownIn: string): number {
  const factor = factorOf(unit, shownIn);
  return factor === undefined ? Number(value) : dec(value).div(factor).toNumber();
}

/** A name for a cell in the words of its label: letters, digits and underscores, not like the address of a cell. */
function freeName(label: string, unit: string, taken: Set<string>): string {
  const plain = (text: string): string => text.replace(/[^\p{L}\p{N}]+/gu, "_").replace(/^_+|_+$/gu, "");
  const base = plain(printable(label)) || "value";
  const safe = /^(?:\p{N}|[A-Za-z]{1,3}\d+$|[RrCc]\d*(?:[CcRr]\d*)?$)/u.test(base) ? `_${base}` : base;
  const candidates = [safe, `${safe}_${plain(unit.replace("%", "percent"))}`];
  const free = candidates.find((name) => !taken.has(name.toLowerCase()));
  const name = (free ?? `${safe}_${taken.size + 1}`).slice(0, 200);
  taken.add(name.toLowerCase());
  return name;
}
