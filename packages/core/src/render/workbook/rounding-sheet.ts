import { columnLetters, type SheetDraft } from "./cells.ts";
import { justMore, stepsOf } from "./formulas.ts";

/** A value that is rounded together with others so that their total is kept. */
export interface RoundedLine {
  readonly name: string;
  /** Formula of the exact value. */
  readonly exact: string;
  /** Formula of the step it is rounded to. */
  readonly division: string;
}

/** Values that are rounded so that their total is kept, as `roundKeepingTotal` does it. */
export interface RoundedTogether {
  readonly title: string;
  readonly lines: readonly RoundedLine[];
  readonly least: "proportion" | "change";
  /** Most steps that differ. */
  readonly divisions: number;
}

/** Where the rounded values stand. */
export interface RoundedCells {
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

/**
 * Lays out a rounding that keeps its total, in plain formulas without arrays: each value to its nearest step, then for each
 * step from the coarsest on, what is missing is placed where it does least harm, ties in the order given.
 */
export function layRounding(sheet: SheetDraft, { title, lines, least, divisions }: RoundedTogether): RoundedCells {
  const top = sheet.length === 0 ? 0 : sheet.length + 1;
  const first = top + scalarNames.length + 2;
  const steps = Math.min(lines.length, mostSteps[least]);
  const width = steps + 8;
  const line = (column: number, index: number): string => `$${columnLetters(column)}$${first + index + 1}`;
  const column = (at: number): string => `${line(at, 0)}:${line(at, lines.length - 1)}`;
  const [exact, division] = [1, 2];
  sheet.put(top, 0, { role: "heading", value: title });
  for (const [index, name] of scalarNames.entries()) sheet.put(top + 1 + index, 0, { role: "text", value: name });
  for (const [index, name] of ["value", "step", "nearest"].entries()) {
    sheet.put(first - 1, index + 1, { role: "heading", value: name });
  }
  for (const [index, one] of lines.entries()) {
    sheet.put(first + index, 0, { role: "text", value: one.name });
    sheet.put(first + index, exact, { role: "number", formula: one.exact });
    sheet.put(first + index, division, { role: "number", formula: one.division });
    sheet.put(first + index, 3, {
      role: "number",
      formula: `${stepsOf(line(exact, index), line(division, index))}*${line(division, index)}`,
    });
  }
  const mayBeShort = least === "proportion" && steps < lines.length;
  const beyond: string[] = [];
  let before = 3;
  let previous: { readonly step: string; readonly on: string } | undefined;
  for (let round = 0; round < divisions; round += 1) {
    const left = 4 + round * width;
    const [smaller, member, share, reached, harm] = [left, left + 1, left + 2, left + 3, left + 4];
    const [below, tie, taken, after] = [harm + steps, harm + steps + 1, harm + steps + 2, harm + steps + 3];
    const headings = ["smaller steps", "on this step", "share", "nearest", ...Array<string>(steps).fill("harm")];
    for (const [index, name] of [...headings, "less harm", "as much", "steps", "after"].entries()) {
      sheet.put(first - 1, left + index, { role: "heading", value: name });
    }
    const at = (name: (typeof scalarNames)[number]): string =>
      `$${columnLetters(left)}$${top + 2 + scalarNames.indexOf(name)}`;
    const [step, on, wanted, way, place, end] = [
      at("step of this round"),
      at("goes on"),
      at("steps wanted"),
      at("up or down"),
      at("steps to place"),
      at("harm of the last step"),
    ];
    const few = `ABS(${wanted}-${at("steps before")})<=${at("number of values")}`;
    const short = mayBeShort ? `IF(MAX(${column(taken)})>=${steps},1,0)` : "0";
    const going =
      previous === undefined
        ? `${step}>0`
        : `AND(${previous.on}=1,${step}>0,ABS(${at("missing from the total")})<=${at("values on this step")}*0.001*${justMore})`;
    const scalars: Readonly<Record<(typeof scalarNames)[number], string>> = {
      "step of this round": `MAX(${column(smaller)})`,
      "missing from the total": `ROUND(SUM(${column(exact)})-SUM(${column(before)}),9)`,
      "values on this step": `SUMIF(${column(member)},1,${column(exact)})`,
      "goes on": `IF(${going},1,0)`,
      "steps before": `IF(${step}>0,ROUND(SUMIF(${column(member)},1,${column(before)})/${step},0),0)`,
      "steps wanted": `IF(${step}>0,${stepsOf(`${at("steps before")}*${step}+${at("missing from the total")}`, step)},0)`,
      "number of values": `SUM(${column(member)})`,
      "few steps missing": `IF(${few},1,0)`,
      "steps reached": `SUM(${column(reached)})`,
      "up or down": `IF(${wanted}>${at("steps reached")},1,-1)`,
      "steps to place": `IF(AND(${on}=1,${at("values on this step")}>0,${wanted}>=0),ABS(${wanted}-${at("steps reached")}),0)`,
      "harm of the last step": `IF(${place}=0,0,SMALL(${line(harm, 0)}:${line(harm + steps - 1, lines.length - 1)},${place}))`,
      "steps of less harm": `SUM(${column(below)})`,
      "laid out too short": short,
    };
    for (const [index, name] of scalarNames.entries()) {
      sheet.put(top + 1 + index, left, { role: "number", formula: scalars[name] });
    }
    for (let index = 0; index < lines.length; index += 1) {
      const here = (column_: number): string => line(column_, index);
      const put = (column_: number, formula: string): void => {
        sheet.put(first + index, column_, { role: "number", formula });
      };
      const isMember = `${here(member)}=1`;
      put(
        smaller,
        previous === undefined
          ? here(division)
          : `IF(${here(division)}<${previous.step}*0.999999999,${here(division)},0)`,
      );
      put(member, `IF(AND(${step}>0,ABS(${here(division)}-${step})<=${step}*0.000000001),1,0)`);
      put(
        share,
        `IF(${isMember},IF(${at("few steps missing")}=1,${here(exact)},${here(exact)}*${wanted}*${step}/${at("values on this step")}),0)`,
      );
      put(reached, `IF(${isMember},${stepsOf(here(share), step)},0)`);
      const harms = Array.from({ length: steps }, (_, count) => {
        const moved = `${here(reached)}+${way}*${count + 1}`;
        const harmOf =
          least === "proportion"
            ? `ROUND(ABS((${moved})*${step}/${here(share)}-1),12)`
            : `ROUND(ABS(${moved}-${here(share)}/${step}),9)`;
        put(harm + count, `IF(${isMember},IF(${here(share)}>0,IF(${moved}>=0,${harmOf},${never}),${never}),${never})`);
        return here(harm + count);
      });
      put(below, `IF(${place}=0,0,${harms.map((one) => `IF(${one}<${end},1,0)`).join("+")})`);
      put(tie, `IF(AND(${place}>0,${end}<${never}),IF(OR(${harms.map((one) => `${one}=${end}`).join(",")}),1,0),0)`);
      const tiesAbove = `SUM(${line(tie, 0)}:${here(tie)})-${here(tie)}`;
      const tiesBelow = `SUM(${here(tie)}:${line(tie, lines.length - 1)})-${here(tie)}`;
      const inTime = `IF(${way}=1,${tiesAbove},${tiesBelow})<${place}-${at("steps of less harm")}`;
      put(taken, `${here(below)}+IF(${here(tie)}=1,IF(${inTime},1,0),0)`);
      const changes = `AND(${on}=1,${at("values on this step")}>0,${wanted}>=0,${isMember})`;
      put(after, `IF(${changes},ROUND((${here(reached)}+${way}*${here(taken)})*${step},12),${here(before)})`);
    }
    beyond.push(`${sheet.name}!${at("laid out too short")}`);
    before = after;
    previous = { step, on };
  }
  const rounded = lines.map((_, index) => `${sheet.name}!${line(before, index)}`);
  return { rounded, beyond: mayBeShort ? beyond : [] };
}
