import { addressOf, type SheetDraft } from "./cells.ts";
import { justMore } from "./formulas.ts";
import {
  type Cells,
  calc,
  cellOf,
  every,
  greatest,
  never,
  partOf,
  rounded,
  size,
  smallest,
  some,
  stepsIn,
  total,
  totalWhere,
  type Worked,
  when,
} from "./worked.ts";

/** A value that is rounded together with others so that their total is kept. */
interface RoundedLine {
  readonly name: string;
  readonly exact: Worked;
  /** The step it is rounded to. */
  readonly division: Worked;
}

/** Values that are rounded so that their total is kept, as `roundKeepingTotal` does it. */
interface RoundedTogether {
  readonly title: string;
  readonly lines: readonly RoundedLine[];
  readonly least: "proportion" | "change";
  /** Most steps that differ. */
  readonly divisions: number;
}

/** Where the rounded values stand. */
interface RoundedCells {
  readonly rounded: readonly string[];
  /** Cells that are 1 where one value would have to give way further than is laid out here. */
  readonly beyond: readonly string[];
}

/** Steps that one value can give way by. With equal harm for equal changes one is enough: no more is ever missing. */
const mostSteps = { proportion: 10, change: 1 } as const;

const scalarNames = [
  "step of this round",
  "missing from the total",
  "values on this step",
  "goes on",
  "steps before",
  "steps wanted",
  "number of values",
  "few steps missing",
  "steps reached",
  "up or down",
  "steps to place",
  "harm of the last step",
  "steps of less harm",
  "laid out too short",
] as const;

/** Columns of cells side by side, a row for each value, below all that a sheet holds so far. */
class Block {
  readonly #sheet: SheetDraft;
  readonly #first: number;
  readonly #rows: number;

  constructor(sheet: SheetDraft, columns: readonly string[], lines: readonly RoundedLine[]) {
    this.#sheet = sheet;
    if (columns[0] !== "value") sheet.add();
    sheet.add({ role: "heading", value: "" }, ...columns.map((value) => ({ role: "column" as const, value })));
    this.#first = sheet.length;
    this.#rows = lines.length;
    for (const { name } of lines) sheet.add({ role: "text", value: name });
  }

  /** Puts a formula into each row of a column, made from the cells of others in the row. */
  put(column: number, made: (here: (other: Cells) => Worked, index: number) => Worked): Cells {
    return Array.from({ length: this.#rows }, (_, index) => {
      const here = (other: Cells): Worked => other[index] ?? never;
      return placed(this.#sheet, this.#first + index, column, made(here, index));
    });
  }
}

/** Puts a formula into a cell; gives the cell for formulas. */
export function placed(sheet: SheetDraft, row: number, column: number, formula: Worked): Worked {
  sheet.put(row, column, cellOf(formula));
  return { text: addressOf(row, column).replace(/([A-Z]+)/u, "$$$1$$"), value: formula.value };
}

/**
 * Lays out a rounding that keeps its total, in plain formulas without arrays: each value to its nearest step, then for each
 * step from the coarsest on, what is missing is placed where it does least harm, ties in the order given.
 */
export function layRounding(sheet: SheetDraft, { title, lines, least, divisions }: RoundedTogether): RoundedCells {
  const steps = Math.min(lines.length, mostSteps[least]);
  const mayBeShort = least === "proportion" && steps < lines.length;
  if (sheet.length > 0) sheet.add();
  sheet.add({ role: "heading", value: title });
  const asked = new Block(sheet, ["value", "step", "nearest"], lines);
  const exact = asked.put(1, (_, index) => lines[index]?.exact ?? never);
  const division = asked.put(2, (_, index) => lines[index]?.division ?? never);
  let before = asked.put(3, (here) => calc(stepsIn(here(exact), here(division)), "*", here(division)));
  const beyond: string[] = [];
  let previous: { readonly step: Worked; readonly on: Worked } | undefined;
  for (let round = 0; round < divisions; round += 1) {
    sheet.add();
    const top = sheet.length;
    for (const value of scalarNames) sheet.add({ role: "text", value });
    const put = (name: (typeof scalarNames)[number], formula: Worked): Worked =>
      placed(sheet, top + scalarNames.indexOf(name), 1, formula);
    const headings = ["smaller steps", "on this step", "share", "nearest", ...Array<string>(steps).fill("harm")];
    const block = new Block(sheet, [...headings, "less harm", "as much", "steps", "after"], lines);
    const last = previous;
    const smaller = block.put(1, (here) =>
      last === undefined
        ? here(division)
        : when(calc(here(division), "<", calc(last.step, "*", 0.999999999)), here(division), 0),
    );
    const step = put("step of this round", greatest(smaller));
    const any = calc(step, ">", 0);
    const member = block.put(2, (here) =>
      when(every(any, calc(size(calc(here(division), "-", step)), "<=", calc(step, "*", 0.000000001))), 1, 0),
    );
    const missing = put("missing from the total", rounded(calc(total(exact), "-", total(before)), 9));
    const weight = put("values on this step", totalWhere(member, exact));
    const most = calc(calc(weight, "*", 0.001), "*", Number(justMore));
    const goes = last === undefined ? any : every(calc(last.on, "=", 1), any, calc(size(missing), "<=", most));
    const on = put("goes on", when(goes, 1, 0));
    const had = put("steps before", when(any, rounded(calc(totalWhere(member, before), "/", step), 0), 0));
    const wanted = put("steps wanted", when(any, stepsIn(calc(calc(had, "*", step), "+", missing), step), 0));
    const count = put("number of values", total(member));
    const few = put("few steps missing", when(calc(size(calc(wanted, "-", had)), "<=", count), 1, 0));
    const isMember = (here: (other: Cells) => Worked): Worked => calc(here(member), "=", 1);
    const share = block.put(3, (here) => {
      const inProportion = calc(calc(calc(here(exact), "*", wanted), "*", step), "/", weight);
      return when(isMember(here), when(calc(few, "=", 1), here(exact), inProportion), 0);
    });
    const reached = block.put(4, (here) => when(isMember(here), stepsIn(here(share), step), 0));
    const came = put("steps reached", total(reached));
    const way = put("up or down", when(calc(wanted, ">", came), 1, -1));
    const changes = every(calc(on, "=", 1), calc(weight, ">", 0), calc(wanted, ">=", 0));
    const place = put("steps to place", when(changes, size(calc(wanted, "-", came)), 0));
    const harms = Array.from({ length: steps }, (_, number) =>
      block.put(5 + number, (here) => {
        const moved = calc(here(reached), "+", calc(way, "*", number + 1));
        const harm =
          least === "proportion"
            ? rounded(size(calc(calc(calc(moved, "*", step), "/", here(share)), "-", 1)), 12)
            : rounded(size(calc(moved, "-", calc(here(share), "/", step))), 9);
        return when(every(isMember(here), calc(here(share), ">", 0), calc(moved, ">=", 0)), harm, never);
      }),
    );
    const none = calc(place, "=", 0);
    const end = put("harm of the last step", when(none, 0, smallest(harms.flat(), place)));
    const less = block.put(5 + steps, (here) =>
      when(
        none,
        0,
        harms.map((one) => when(calc(here(one), "<", end), 1, 0)).reduce((sum, one) => calc(sum, "+", one)),
      ),
    );
    const isEnd: Worked = { text: `ISNUMBER(${end.text})`, value: Number(end.value !== never.value) };
    const tie = block.put(6 + steps, (here) =>
      when(every(calc(place, ">", 0), isEnd, some(harms.map((one) => calc(here(one), "=", end)))), 1, 0),
    );
    const lessInAll = put("steps of less harm", total(less));
    const taken = block.put(7 + steps, (here, index) => {
      const ties = when(calc(way, "=", 1), total(tie.slice(0, index + 1)), total(tie.slice(index)));
      const inTime = calc(calc(ties, "-", here(tie)), "<", calc(place, "-", lessInAll));
      return calc(here(less), "+", when(every(calc(here(tie), "=", 1), inTime), 1, 0));
    });
    const after = block.put(8 + steps, (here) => {
      const given = rounded(calc(calc(here(reached), "+", calc(way, "*", here(taken))), "*", step), 12);
      return when(every(changes, isMember(here)), given, here(before));
    });
    const short = mayBeShort ? when(calc(greatest(taken), ">=", steps), 1, 0) : partOf(0);
    beyond.push(`${sheet.name}!${put("laid out too short", short).text}`);
    [before, previous] = [after, { step, on }];
  }
  return { rounded: before.map(({ text }) => `${sheet.name}!${text}`), beyond: mayBeShort ? beyond : [] };
}
