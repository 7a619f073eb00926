import { type Figure, feedsOf } from "../../figure/figure.ts";
import { figureIn, type Graph, graphOf } from "../../figure/graph.ts";
import { printable } from "../../figure/printable.ts";
import { citation } from "../../figure/source.ts";
import { writtenWorking } from "../../figure/written-working.ts";
import { dec, digitsText } from "../../number/decimal.ts";
import { findUnit } from "../../number/units.ts";
import {
  addressOf,
  type CellRole,
  type DefinedName,
  type InputLimits,
  SheetDraft,
  type Workbook,
  type WorkbookCell,
} from "./cells.ts";
import { cellFormula, joined, literal, textIn } from "./formulas.ts";
import { layRounding, placed } from "./rounding-sheet.ts";
import { partOf, type Worked } from "./worked.ts";

/** A figure as a sheet shows it: in which unit of its dimension, and with how many places. */
export interface ShownFigure {
  readonly id: string;
  readonly unit: string;
  readonly places: number;
}

/** A figure that may be changed, where it is typed in another way than it is told. */
export interface InputFigure extends ShownFigure {
  readonly label?: string;
  readonly takes: InputLimits;
  /** Where its number is from, where the spec does not say it. */
  readonly from?: string | undefined;
  /** What the typed number is multiplied with. */
  readonly factor?: (cell: CellOf) => string;
}

/** Figures that may be changed, under one heading. */
export interface InputGroup {
  readonly heading: string;
  readonly figures: readonly InputFigure[];
}

/** Words beside results, which a formula may choose. */
export interface ResultWords {
  readonly words: string;
  readonly formula?: Rule | undefined;
  /** Whether they go on over the columns that follow, where nothing else stands. */
  readonly across?: true;
}

/** A row of results: in each column a figure or words. */
export interface ResultRow {
  readonly label: string;
  readonly cells: readonly (ShownFigure | ResultWords | undefined)[];
}

/** Results under one heading. */
export interface ResultGroup {
  readonly heading: string;
  /** Headings of the columns. */
  readonly columns: readonly string[];
  readonly rows: readonly ResultRow[];
  /** The figures that decided them, where no formula does: they hold as long as no input behind these is changed. */
  readonly decidedBy?: readonly string[];
}

/** The cell of a figure, for formulas. */
export type CellOf = (id: string) => string;

/** What was typed, for formulas. */
export interface Typed {
  /** Whether any input is another than that of the spec; or, of some figures, any that lies behind them. */
  readonly changed: (figures?: readonly string[]) => string;
  /** Whether an input behind some figures that may be empty is so; nothing where there is none. */
  readonly open: (figures: readonly string[]) => string | undefined;
}

/** A formula over the cells of figures and what was typed. */
export type Rule = (cell: CellOf, typed: Typed) => string;

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

/** Weights that are tried one after the other, each leaving unused of a limit what the ones before took too much of it. */
export interface Tries {
  /** The figures of each. */
  readonly graphs: readonly Graph[];
  /** What is left unused, and how far the weights of a try go beyond the limit. */
  readonly left: readonly { readonly id: string; readonly over: Rule }[];
}

/** Something that has to hold for the answers to hold. */
export interface WorkbookCheck {
  /** What is looked at. */
  readonly of: string;
  /** What is said where it does not hold. */
  readonly text: string;
  /** Whether it does not hold for the spec as it is written. */
  readonly failing?: boolean;
  /** Whether there is no answer where it does not hold; otherwise the answers stand, and this is said of them. */
  readonly refuses?: boolean;
  readonly fails: Rule;
}

/** All that a workbook is made of. */
interface WorkbookParts {
  readonly title: string;
  readonly paper: Workbook["paper"];
  readonly about: readonly string[];
  readonly graph: Graph;
  readonly inputs: readonly InputGroup[];
  readonly results: readonly ResultGroup[];
  /** Formulas of figures that their working does not give, by id. */
  readonly rules: Readonly<Record<string, Rule>>;
  readonly roundings: readonly RoundedFigures[];
  readonly tries: Tries;
  readonly checks: readonly WorkbookCheck[];
  readonly notes: readonly string[];
  /** What figures may be, and what is published for their style. */
  readonly ranges: readonly string[];
  readonly cautions: readonly string[];
}

const names = { use: "Noodle", figures: "Figures", rounding: "Rounding", sources: "Sources and cautions" } as const;

/** Rows above the figures on their sheet. */
const figureHeadings = 3;
/** Columns of the first sheet. */
const columns = { label: 0, input: 1, unit: 2, spec: 3, changed: 4, result: 6, value: 7 } as const;

/** Characters that words are set in by. */
const setIn = 2;
/** How many numbers stand before the words about them. */
const wordsFrom = 2;

const fine = "fine";
/** What is to be done where only the command knows. */
export const again = "make the workbook anew";
/** What stands beside an input. */
const beside = { changed: "changed", none: "no number", beyond: "not taken" } as const;
/** What the cell that sums the checks up says. */
const verdicts = { some: "see the checks below", none: "no answer: see the checks below" } as const;

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
  const use = new UseSheet(parts, cellOf, local);
  const rules = new Map(Object.entries(parts.rules).map(([id, rule]) => [id, rule(local, use.typed)]));
  const beyond = roundingRules(parts, rounding, cellOf, use.typed, rules);
  for (const [id, formula] of use.inputFormulas) rules.set(id, formula);
  const decided = Object.values(parts.graph).filter(
    ({ id, working }) => working.kind === "procedure" && !rules.has(id),
  );
  const room: WorkbookCheck = {
    of: "room for the rounding",
    text: "a weight gives way further than this workbook lays out: make the workbook anew",
    fails: () => `MAX(${beyond.join(",")})>0`,
  };
  const choices: WorkbookCheck = {
    of: "what was decided",
    text: `decided for the inputs of the spec: ${namesOf(decided)} (see the sheet ${names.sources}); make the workbook anew`,
    fails: (_, { changed }) => changed(decided.map(({ id }) => id)),
  };
  use.putChecks([...parts.checks, ...(beyond.length > 0 ? [room] : []), ...(decided.length > 0 ? [choices] : [])]);
  return {
    title: parts.title,
    paper: parts.paper,
    sheets: [
      use.done(),
      figureSheet(parts, local, rules, use.changedCells),
      ...(rounding.length > 0 ? [rounding.done([30], 0)] : []),
      sourceSheet(parts, decided),
    ],
    names: use.names,
  };
}

/** Lays out the tries and the roundings; gives the cells that tell where a rounding is too long for its layout. */
function roundingRules(
  { roundings, tries, graph, rules: own }: WorkbookParts,
  sheet: SheetDraft,
  cellOf: CellOf,
  typed: Typed,
  rules: Map<string, string>,
): readonly string[] {
  const beyond: string[] = [];
  const numberOf = (id: string, known: Graph): number => Number(figureIn(id, known).value);
  const told = (id: string): Worked => ({ text: cellOf(id), value: numberOf(id, graph) });
  /** Lays out one rounding; gives the cell of each rounded figure. */
  const lay = ({ title, least, divisions, lines }: RoundedFigures, at: (id: string) => Worked) => {
    const laid = layRounding(sheet, {
      title,
      least,
      divisions,
      lines: lines.map(({ name, exact, division }) => ({
        name,
        exact: at(exact),
        division: typeof division === "string" ? at(division) : { text: division.step, value: Number(division.step) },
      })),
    });
    beyond.push(...laid.beyond);
    return lines.map(({ rounded }, index) => [rounded, laid.rounded[index] ?? ""] as const);
  };
  const put = (label: string, formula: Worked): Worked => {
    const { text, value } = placed(sheet, sheet.add({ role: "text", value: printable(label) }), 1, formula);
    return { text: `${sheet.name}!${text}`, value };
  };
  const moved = new Set(tries.left.map(({ id }) => id));
  for (const figure of Object.values(graph)) if (feedsOf(figure).some((id) => moved.has(id))) moved.add(figure.id);
  let left = tries.left.map(({ id }): readonly [string, Worked] => [id, partOf(0)]);
  for (const [index, known] of tries.graphs.entries()) {
    const here = new Map(left);
    const at = (id: string): Worked => {
      const there = moved.has(id) ? here.get(id) : told(id);
      if (there !== undefined) return there;
      const together = roundings.find(({ lines }) => lines.some(({ rounded }) => rounded === id));
      if (together !== undefined) {
        const title = `${together.title}, try ${index + 1} to stay within what there is`;
        for (const [one, text] of lay({ ...together, title }, at)) here.set(one, { text, value: numberOf(one, known) });
        return at(id);
      }
      const figure = figureIn(id, graph);
      const text = own[id]?.(cell, typed) ?? cellFormula(figure, cell) ?? literal(figure.value);
      const one = put(figure.label, { text, value: numberOf(id, known) });
      here.set(id, one);
      return one;
    };
    const cell: CellOf = (id) => at(id).text;
    const next = tries.graphs[index + 1] ?? graph;
    left = tries.left.map(({ id, over }) => {
      const text = `${cell(id)}+${over(cell, typed)}`;
      return [id, put(figureIn(id, graph).label, { text, value: numberOf(id, next) })];
    });
  }
  for (const [id, { text }] of left) rules.set(id, text);
  for (const rounding of roundings) for (const [id, text] of lay(rounding, told)) rules.set(id, text);
  return beyond;
}

/** The sheet that people use: what may be changed on the left, what comes of it on the right, what has to hold below. */
class UseSheet {
  readonly #parts: WorkbookParts;
  readonly #cellOf: CellOf;
  /** The cell of a figure for formulas that stand beside it. */
  readonly #local: CellOf;
  readonly #sheet = new SheetDraft(names.use);
  readonly #taken = new Set<string>();
  readonly names: DefinedName[] = [];
  /** For each input the formula of its figure, in the unit of the figure. */
  readonly inputFormulas: (readonly [id: string, formula: string])[] = [];
  readonly typed: Typed;
  /** For each input the cell of the word beside it. */
  readonly changedCells = new Map<string, string>();
  /** For each input that may be empty its cell. */
  readonly #openCells = new Map<string, string>();
  /** How many inputs have a word beside them. */
  readonly #said: (word: string) => string;
  /** Where the checks are summed up. */
  readonly #verdict = `$${addressOf(0, columns.value).replace("1", "$1")}`;

  constructor(parts: WorkbookParts, cellOf: CellOf, local: CellOf) {
    this.#local = local;
    this.#parts = parts;
    this.#cellOf = cellOf;
    for (const [index, value] of [parts.title, ...parts.about].entries()) {
      this.#sheet.add({ role: index === 0 ? "title" : "note", value });
    }
    const top = this.#sheet.length + 1;
    const [inputTops = [], resultTops = []] = topsInBands(top, [
      parts.inputs.map(({ figures }) => figures.length + 2),
      parts.results.map(({ rows }) => rows.length + 2),
    ]);
    const end = this.#putInputs(inputTops);
    this.#said = (word) => `COUNTIF(${names.use}!$E$${top + 1}:$E$${end},"${word}")`;
    const { graph } = parts;
    const inSome = (cells: ReadonlyMap<string, string>, figures: readonly string[]): readonly string[] => {
      const asked = figures.map((id) => figureIn(id, graph));
      const behind = graphOf(asked, graph);
      return [...cells].flatMap(([id, cell]) => (Object.hasOwn(behind, id) ? [cell] : []));
    };
    this.typed = {
      changed: (figures) => {
        if (figures === undefined) return `${this.#said(beside.changed)}>0`;
        const cells = inSome(this.changedCells, figures);
        if (cells.length === this.changedCells.size) return this.typed.changed();
        const tests = cells.map((cell) => `${cell}="${beside.changed}"`);
        return tests.length === 0 ? "1=0" : joined("OR", tests);
      },
      open: (figures) => {
        const cells = inSome(this.#openCells, figures);
        return cells.length === 0 ? undefined : `${joined("COUNT", cells)}<${cells.length}`;
      },
    };
    this.#putResults(resultTops);
  }

  #putInputs(tops: readonly number[]): number {
    let row = 0;
    for (const [index, { heading, figures }] of this.#parts.inputs.entries()) {
      row = tops[index] ?? row;
      const headings = ["heading", "column", "heading", "column", "heading"] as const;
      for (const [column, value] of [heading, "change here", "unit", "as written", ""].entries()) {
        this.#sheet.put(row, column, { role: headings[column] ?? "heading", value });
      }
      row += 1;
      for (const shown of figures) {
        const figure = figureIn(shown.id, this.#parts.graph);
        const { places, takes, label = figure.label, from = "" } = shown;
        const value = takes.optional ? undefined : shownValue(figure, shown.unit);
        this.#sheet.put(row, columns.label, { role: "text", value: printable(label) });
        const given = value === undefined ? {} : { value };
        const input = this.#sheet.put(row, columns.input, { role: "input", places, takes, ...given });
        this.#sheet.put(row, columns.unit, { role: "unit", value: shown.unit });
        this.#sheet.put(row, columns.spec, { role: "number", places, ...given });
        const word = { value: from, formula: wordBeside(row, takes, from) };
        const at = this.#sheet.put(row, columns.changed, { role: "unit", ...word });
        this.changedCells.set(shown.id, `${names.use}!${absolute(at)}`);
        if (takes.optional) this.#openCells.set(shown.id, `${names.use}!${absolute(input)}`);
        const factor = shown.factor === undefined ? "" : `*${shown.factor(this.#local)}`;
        const typed = this.#name(label, shown.unit, input);
        const times = byFactor("*", figure.unit, shown.unit) + factor;
        // Nothing typed is zero in a sum.
        this.inputFormulas.push([shown.id, `${typed}${times}${takes.optional ? "+0" : ""}`]);
        row += 1;
      }
    }
    return row;
  }

  #putResults(tops: readonly number[]): void {
    const width = Math.max(...this.#parts.results.map((group) => group.columns.length));
    for (const [at, { heading, columns: titles, rows, decidedBy }] of this.#parts.results.entries()) {
      let row = tops[at] ?? 0;
      this.#sheet.put(row, columns.result, { role: "heading", value: heading });
      for (let index = 0; index < width; index += 1) {
        const [title = "", isWords] = [titles[index], rows.some(({ cells }) => cells[index] && !isShown(cells[index]))];
        this.#sheet.put(row, columns.value + index, { role: isWords || !title ? "heading" : "column", value: title });
      }
      row += 1;
      for (const { label, cells } of rows) {
        this.#sheet.put(row, columns.result, { role: "text", value: printable(label) });
        for (const [index, cell] of cells.entries()) {
          const column = columns.value + index;
          if (isShown(cell)) {
            const address = this.#putResult(row, column, cell, decidedBy);
            if (index === 0 && !decidedBy) this.#name(label, cell.unit, address);
          } else if (cell !== undefined) this.#putWords(row, column, cell);
        }
        row += 1;
      }
    }
  }

  #putWords(row: number, column: number, { words, formula: made, across }: ResultWords): void {
    const formula = made && { formula: this.#answered(made(this.#cellOf, this.typed)) };
    this.#sheet.put(row, column, { role: across ? "words" : "unit", value: printable(words), ...formula });
  }

  #putResult(
    row: number,
    column: number,
    { id, unit, places }: ShownFigure,
    decidedBy: ResultGroup["decidedBy"],
  ): string {
    const figure = figureIn(id, this.#parts.graph);
    const value = shownValue(figure, unit);
    const now = `${this.#cellOf(id)}${byFactor("/", figure.unit, unit)}`;
    const formula = this.#answered(decidedBy ? `IF(${this.typed.changed(decidedBy)},"${again}",${now})` : now);
    return this.#sheet.put(row, column, { role: "result", value, formula, places });
  }

  /** A formula that answers nothing where a check refuses what was typed, and is none where it divides by nothing. */
  #answered(formula: string): string {
    return `IF(${this.#verdict}="${verdicts.none}","",IFERROR(${formula},"none"))`;
  }

  putChecks(checks: readonly WorkbookCheck[]): void {
    this.#sheet.add();
    const heading = this.#sheet.add({ role: "heading", value: "Checks" }, { role: "heading", value: "" });
    const numbers: WorkbookCheck = {
      of: "numbers that were typed",
      text: "a number is missing, or is none that can be taken: see beside the inputs",
      refuses: true,
      fails: () => `${this.#said(beside.none)}+${this.#said(beside.beyond)}>0`,
    };
    const refusing = [numbers, ...checks.filter(({ refuses }) => refuses)];
    const all = [...refusing, ...checks.filter((check) => !refusing.includes(check))];
    for (const { of, text, failing = false, fails } of all) {
      const formula = `IF(${fails(this.#cellOf, this.typed)},${textIn(text)},"${fine}")`;
      const whole = `IFERROR(${formula},"waits for other numbers")`;
      this.#sheet.add({ role: "text", value: of }, { role: "check", value: failing ? text : fine, formula: whole });
    }
    const fails = (count: number): string => {
      const range = `$B$${heading + 2}:$B$${heading + 1 + count}`;
      return `COUNTIF(${range},"${fine}")<ROWS(${range})`;
    };
    this.#sheet.put(0, columns.result, { role: "text", value: "what has to hold" });
    this.#sheet.put(0, columns.value, {
      role: "check",
      value: checks.some(({ failing }) => failing) ? verdicts.some : fine,
      formula: `IF(${fails(refusing.length)},"${verdicts.none}",IF(${fails(all.length)},"${verdicts.some}","${fine}"))`,
    });
    this.#sheet.add();
    this.#sheet.add({ role: "heading", value: "Cautions" });
    for (const value of this.#parts.cautions) this.#sheet.add({ role: "note", value });
  }

  /** Names a cell; gives its address from any sheet. */
  #name(label: string, unit: string, address: string): string {
    const refersTo = `${names.use}!${absolute(address)}`;
    this.names.push({ name: freeName(label, unit, this.#taken), refersTo });
    return refersTo;
  }

  done() {
    const fitting = (column: number, role: CellRole, least: number, most: number): number =>
      Math.min(most, Math.max(least, this.#sheet.longest(column, role) + setIn));
    const text = (column: number): number => fitting(column, "text", 24, 44);
    const last = Math.max(...this.#parts.results.map((group) => group.columns.length)) - 1;
    const results = Array.from({ length: last }, (_, index) => fitting(columns.value + index, "unit", 12, 24));
    // Words that go on over several columns get together what the longest of them takes.
    const begun = results.slice(wordsFrom).reduce((sum, one) => sum + one, 0);
    const words = fitting(columns.value + wordsFrom, "words", 14, 48) - begun;
    const end = Math.max(words, fitting(columns.value + last, "unit", 12, 40));
    const inputs = [text(columns.label), 12, fitting(columns.unit, "unit", 12, 24), 11, 11, 1];
    return this.#sheet.done([...inputs, text(columns.result), ...results, end], 1);
  }
}

/** Rows of a band, which a page across holds. */
const bandRows = 44;

/** Where tables of two sides begin that stand in bands side by side: none goes on from one band into the next. */
function topsInBands(first: number, sides: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const tops = sides.map((): number[] => []);
  // The words above the tables stand on the page of the first band.
  for (let [top, from] = [first, 0]; tops.some((own, side) => own.length < (sides[side]?.length ?? 0)); ) {
    const ends = tops.map((own, side) => {
      let row = top;
      for (const height of sides[side]?.slice(own.length) ?? []) {
        if (row > top && row + height > from + bandRows) break;
        own.push(row);
        row += height;
      }
      return row;
    });
    top = from = Math.max(...ends);
  }
  return tops;
}

function isShown(cell: ResultRow["cells"][number]): cell is ShownFigure {
  return cell !== undefined && "id" in cell;
}

function absolute(address: string): string {
  return address.replace(/([A-Z]+)(\d+)/u, "$$$1$$$2");
}

/** Names for people: the first ones, and how many more. */
function namesOf(figures: readonly Figure[]): string {
  const labels = figures.map(({ label }) => label);
  return labels.length <= 3 ? labels.join(", ") : `${labels.slice(0, 2).join(", ")} and ${labels.length - 2} more`;
}

/** The word beside an input: where it is from, whether it was changed, and whether it has a number that it takes. */
function wordBeside(row: number, { least = 0, above, most, whole, optional }: InputLimits, from: string): string {
  const cell = `B${row + 1}`;
  const beyond = [
    above === undefined ? `${cell}<${least}` : `${cell}<=${above}`,
    ...(most === undefined ? [] : [`${cell}>${most}`]),
    ...(whole ? [`${cell}<>ROUND(${cell},0)`] : []),
  ];
  const changed = `IF(${cell}=D${row + 1},${textIn(from)},"${beside.changed}")`;
  const none = optional ? `IF(${cell}="",${textIn(from)},"${beside.none}")` : `"${beside.none}"`;
  const isChanged = optional ? `"${beside.changed}"` : changed;
  return `IF(ISNUMBER(${cell}),IF(${joined("OR", beyond)},"${beside.beyond}",${isChanged}),${none})`;
}

/** Every figure, its formula over the cells it rests on, in words, and where it comes from. */
function figureSheet(
  { graph, title }: WorkbookParts,
  local: CellOf,
  rules: ReadonlyMap<string, string>,
  changed: ReadonlyMap<string, string>,
) {
  const sheet = new SheetDraft(names.figures);
  sheet.add({ role: "title", value: `${title}: every figure` });
  sheet.add({ role: "note", value: "Each value is worked out by its formula from the cells it rests on." });
  sheet.add(
    ...["figure", "value", "unit", "how it comes about", "source", "name"].map(
      (value, index): WorkbookCell => ({ role: index === 1 ? "column" : "heading", value }),
    ),
  );
  /** Words about a figure, which are others once another number was typed. */
  const word = (id: string, text: string, typed: string): WorkbookCell => {
    const [value, cell] = [printable(text), changed.get(id)];
    const formula = `IF(${cell}="${beside.changed}","${typed}",${textIn(value)})`;
    return { role: "text", value, ...(cell !== undefined && { formula }) };
  };
  for (const figure of Object.values(graph)) {
    const { id, label, value, unit, places, working, sources } = figure;
    const formula = rules.get(id) ?? cellFormula(figure, local);
    const how = working.kind === "formula" ? (writtenWorking(figure, graph)?.names ?? "") : working.by;
    sheet.add(
      { role: "text", value: printable(label) },
      { role: "number", value: Number(value), places: places + 2, ...(formula !== undefined && { formula }) },
      { role: "text", value: unit },
      word(id, how, "typed here"),
      word(id, [...new Set(sources.map(citation))].join("; "), "whoever typed it"),
      { role: "text", value: id },
    );
  }
  return sheet.done([44, 16, 20, 60, 60, 30], figureHeadings);
}

/** Sources, notes and cautions, and what no formula stands behind. */
function sourceSheet({ title, graph, notes, ranges, cautions }: WorkbookParts, decided: readonly Figure[]) {
  const sheet = new SheetDraft(names.sources);
  sheet.add({ role: "title", value: `${title}: what the figures stand on` });
  const list = (heading: string, lines: readonly string[]): void => {
    if (lines.length === 0) return;
    sheet.add();
    sheet.add({ role: "heading", value: heading });
    for (const line of lines) sheet.add({ role: "text", value: printable(line) });
  };
  list("Cautions", cautions);
  list("Notes, as they were when the workbook was written", notes);
  list("Ranges, as they were when the workbook was written", ranges);
  if (decided.length > 0) {
    sheet.add();
    const headings = ["Decided for the inputs of the spec", "value", "unit", "how"];
    sheet.add(...headings.map((value, index): WorkbookCell => ({ role: index === 1 ? "column" : "heading", value })));
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
  return sheet.done(decided.length > 0 ? [80, 12, 16, 50] : [100], 1);
}

/** How many of the unit of a figure are in one of another; nothing where it is shown as it is. */
function factorOf(unit: string, shownIn: string): string | undefined {
  if (unit === shownIn) return undefined;
  const isPrice = /^[A-Z]{3}\//u.test(unit);
  const [from, to] = [unit, shownIn].map((one) => findUnit(isPrice ? one.slice(4) : one));
  if (from === undefined || to?.dimension !== from.dimension) return undefined;
  return literal(isPrice ? dec(from.factor).div(to.factor) : dec(to.factor).div(from.factor));
}

/** What makes a number in the one unit of a number in the other, behind its formula. */
function byFactor(sign: "*" | "/", unit: string, shownIn: string): string {
  const factor = factorOf(unit, shownIn);
  return factor === undefined ? "" : `${sign}${factor}`;
}

/** Digits that a cell holds; its factor is written in no more. */
const doubleDigits = 15;

function shownValue({ value, unit }: Figure, shownIn: string): number {
  const factor = factorOf(unit, shownIn);
  return factor === undefined ? Number(value) : Number(digitsText(dec(value).div(factor), doubleDigits));
}

/** A name for a cell in the words of its label: letters, digits and underscores, not like a value or the address of a cell. */
function freeName(label: string, unit: string, taken: Set<string>): string {
  const plain = (text: string): string => text.replace(/[^\p{L}\p{Nd}]+/gu, "_").replace(/^_+|_+$/gu, "");
  const base = plain(label) || "value";
  const safe = /^(?:\p{Nd}|[a-z]{1,3}\d+$|[rc]\d*(?:[cr]\d*)?$|true$|false$)/iu.test(base) ? `_${base}` : base;
  const inUnit = `${safe}_${plain(unit.replace("%", "percent"))}`;
  let name = safe;
  for (let count = 1; taken.has(name.toLowerCase()); count += 1) name = count === 1 ? inUnit : `${safe}_${count}`;
  taken.add(name.toLowerCase());
  return name;
}
