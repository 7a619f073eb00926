import { columnLetters, type SheetDraft } from "./cells.ts";
import { justMore, stepsOf } from "./formulas.ts";

/** A value that is rounded together with others so that their total is kept. */
interface RoundedLine {
  readonly name: string;
  /** Formula of the exact value. */
  readonly exact: string;
  /** Formula of the step it is rounded to. */
  readonly division: string;
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

/** Stands for the harm of a change that cannot be made. */
const never = "1000000000";

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
  readonly #last: number;

  constructor(sheet: SheetDraft, columns: readonly string[], lines: readonly RoundedLine[]) {
    this.#sheet = sheet;
    sheet.add({ role: "heading", value: "" }, ...columns.map((value) => ({ role: "column" as const, value })));
    this.#first = sheet.length + 1;
    for (const { name } of lines) sheet.add({ role: "text", value: name });
    this.#last = sheet.length;
  }

  /** The address of a cell. */
  at(column: number, index: number): string {
    return `$${columnLetters(column)}$${this.#first + index}`;
  }

  /** The address of columns from top to bottom. */
  all(column: number, to = column): string {
    return `$${columnLetters(column)}$${this.#first}:$${columnLetters(to)}$${this.#last}`;
  }

  put(column: number, index: number, formula: string): void {
    this.#sheet.put(this.#first - 1 + index, column, { role: "number", formula });
  }
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
  const exact = (index: number): string => asked.at(1, index);
  const division = (index: number): string => asked.at(2, index);
  for (const [index, line] of lines.entries()) {
    asked.put(1, index, line.exact);
    asked.put(2, index, line.division);
    asked.put(3, index, `${stepsOf(exact(index), division(index))}*${division(index)}`);
  }
  const beyond: string[] = [];
  let [before, beforeColumn] = [asked, 3];
  let previous: { readonly step: string; readonly on: string } | undefined;
  for (let round = 0; round < divisions; round += 1) {
    const top = sheet.length + 1;
    const at = (name: (typeof scalarNames)[number]): string => `$B$${top + scalarNames.indexOf(name)}`;
    for (const value of scalarNames) sheet.add({ role: "text", value });
    const [smaller, member, share, reached, harm] = [1, 2, 3, 4, 5];
    const [below, tie, taken, after] = [harm + steps, harm + steps + 1, harm + steps + 2, harm + steps + 3];
    const headings = ["smaller steps", "on this step", "share", "nearest", ...Array<string>(steps).fill("harm")];
    const block = new Block(sheet, [...headings, "less harm", "as much", "steps", "after"], lines);
    const [step, on, wanted, way, place, end] = [
      at("step of this round"),
      at("goes on"),
      at("steps wanted"),
      at("up or down"),
      at("steps to place"),
      at("harm of the last step"),
    ];
    const few = `ABS(${wanted}-${at("steps before")})<=${at("number of values")}`;
    const going =
      previous === undefined
        ? `${step}>0`
        : `AND(${previous.on}=1,${step}>0,ABS(${at("missing from the total")})<=${at("values on this step")}*0.001*${justMore})`;
    const changes = `${on}=1,${at("values on this step")}>0,${wanted}>=0`;
    const missing = `${asked.all(1)})-SUM(${before.all(beforeColumn)}`;
    const scalars: Readonly<Record<(typeof scalarNames)[number], string>> = {
      "step of this round": `MAX(${block.all(smaller)})`,
      "missing from the total": `ROUND(SUM(${missing}),9)`,
      "values on this step": `SUMIF(${block.all(member)},1,${asked.all(1)})`,
      "goes on": `IF(${going},1,0)`,
      "steps before": `IF(${step}>0,ROUND(SUMIF(${block.all(member)},1,${before.all(beforeColumn)})/${step},0),0)`,
      "steps wanted": `IF(${step}>0,${stepsOf(`${at("steps before")}*${step}+${at("missing from the total")}`, step)},0)`,
      "number of values": `SUM(${block.all(member)})`,
      "few steps missing": `IF(${few},1,0)`,
      "steps reached": `SUM(${block.all(reached)})`,
      "up or down": `IF(${wanted}>${at("steps reached")},1,-1)`,
      "steps to place": `IF(AND(${changes}),ABS(${wanted}-${at("steps reached")}),0)`,
      "harm of the last step": `IF(${place}=0,0,SMALL(${block.all(harm, harm + steps - 1)},${place}))`,
      "steps of less harm": `SUM(${block.all(below)})`,
      "laid out too short": mayBeShort ? `IF(MAX(${block.all(taken)})>=${steps},1,0)` : "0",
    };
    for (const [index, name] of scalarNames.entries()) {
      sheet.put(top - 1 + index, 1, { role: "number", formula: scalars[name] });
    }
    for (let index = 0; index < lines.length; index += 1) {
      const here = (column: number): string => block.at(column, index);
      const isMember = `${here(member)}=1`;
      const smallerStep = previous && `IF(${division(index)}<${previous.step}*0.999999999,${division(index)},0)`;
      block.put(smaller, index, smallerStep ?? division(index));
      block.put(member, index, `IF(AND(${step}>0,ABS(${division(index)}-${step})<=${step}*0.000000001),1,0)`);
      const inProportion = `${exact(index)}*${wanted}*${step}/${at("values on this step")}`;
      block.put(share, index, `IF(${isMember},IF(${at("few steps missing")}=1,${exact(index)},${inProportion}),0)`);
      block.put(reached, index, `IF(${isMember},${stepsOf(here(share), step)},0)`);
      const harms = Array.from({ length: steps }, (_, count) => {
        const moved = `${here(reached)}+${way}*${count + 1}`;
        const harmOf =
          least === "proportion"
            ? `ROUND(ABS((${moved})*${step}/${here(share)}-1),12)`
            : `ROUND(ABS(${moved}-${here(share)}/${step}),9)`;
        block.put(
          harm + count,
          index,
          `IF(${isMember},IF(${here(share)}>0,IF(${moved}>=0,${harmOf},${never}),${never}),${never})`,
        );
        return here(harm + count);
      });
      block.put(below, index, `IF(${place}=0,0,${harms.map((one) => `IF(${one}<${end},1,0)`).join("+")})`);
      const asMuch = `IF(OR(${harms.map((one) => `${one}=${end}`).join(",")}),1,0)`;
      block.put(tie, index, `IF(AND(${place}>0,${end}<${never}),${asMuch},0)`);
      const tiesAbove = `SUM(${block.at(tie, 0)}:${here(tie)})-${here(tie)}`;
      const tiesBelow = `SUM(${here(tie)}:${block.at(tie, lines.length - 1)})-${here(tie)}`;
      const inTime = `IF(${way}=1,${tiesAbove},${tiesBelow})<${place}-${at("steps of less harm")}`;
      block.put(taken, index, `${here(below)}+IF(${here(tie)}=1,IF(${inTime},1,0),0)`);
      const given = `ROUND((${here(reached)}+${way}*${here(taken)})*${step},12)`;
      block.put(after, index, `IF(AND(${changes},${isMember}),${given},${before.at(beforeColumn, index)})`);
    }
    beyond.push(`${sheet.name}!${at("laid out too short")}`);
    [before, beforeColumn] = [block, after];
    previous = { step, on };
  }
  const rounded = lines.map((_, index) => `${sheet.name}!${before.at(beforeColumn, index)}`);
  return { rounded, beyond: mayBeShort ? beyond : [] };
}
