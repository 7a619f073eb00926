import { isFoundByWants } from "../../explore/found-figures.ts";
import type { HeldWant } from "../../explore/wanted-checks.ts";
import type { Want } from "../../explore/wanted-figures.ts";
import { type Figure, feedsOf } from "../../figure/figure.ts";
import { figureIn, graphOf } from "../../figure/graph.ts";
import { everyLine } from "../../formula/line.ts";
import { dec } from "../../number/decimal.ts";
import { ceilOf, floorOf, joined, literal, stepsOf } from "../../render/workbook/formulas.ts";
import type { CellOf, WorkbookCheck } from "../../render/workbook/workbook.ts";
import type { Made } from "./made.ts";

/** Whether what is reached does not meet what is wanted, as the command holds it: as shown, or exactly. */
export function missedRule({ reached, least, most, asShown }: Omit<Want, "label">): (cell: CellOf) => string {
  const step = literal(dec(10).pow(-(reached?.places ?? 0)));
  return (cell) => {
    const beyond = (end: Figure | undefined, way: "below" | "above"): readonly string[] => {
      if (reached === undefined || end === undefined) return [];
      const [at, limit] = [cell(reached.id), cell(end.id)];
      if (!asShown) return [way === "below" ? `${limit}-${at}>0.000000001` : `${at}-${limit}>0.000000001`];
      const steps = `(${limit})/${step}`;
      return [way === "below" ? `${stepsOf(at, step)}<${floorOf(steps)}` : `${stepsOf(at, step)}>${ceilOf(steps)}`];
    };
    return `OR(${[...beyond(least, "below"), ...beyond(most, "above")].join(",")})`;
  };
}

/** What is wanted, the two ends of one thing together. */
export function wantsInOne(held: readonly HeldWant[]): readonly HeldWant[] {
  const rows: HeldWant[] = [];
  for (const one of held) {
    const { check, want } = one;
    const last = rows.at(-1);
    const isOther = want.reached !== undefined && last?.want.reached?.id === want.reached.id;
    if (!isOther || want.least !== undefined || last.want.most !== undefined) rows.push(one);
    else {
      const both = { ...last.check, holds: last.check.holds && check.holds };
      rows[rows.length - 1] = { check: both, want: { ...last.want, most: want.most } };
    }
  }
  return rows;
}

/** Said where a price is not missed as far as there are prices. */
export const untoldPrice = "cannot be told: prices are missing";

/** The prices of what has none. */
export function unpricedFigures({ noodle: { formula }, unpriced, graph }: Made): readonly string[] {
  return everyLine(formula).flatMap(({ id, name }) => {
    const price = `${id}.price`;
    return unpriced.includes(name) && graph[price] !== undefined ? [price] : [];
  });
}

/** Whether a figure rests on a price that nobody has stated. */
export function restsOnPrices(figure: Figure, made: Made): boolean {
  const behind = graphOf([figure], made.graph);
  return unpricedFigures(made).some((id) => behind[id] !== undefined);
}

/** That all that is wanted is met, can be told, and can be at all. */
export function wantedChecks(made: Made): readonly WorkbookCheck[] {
  const { noodle, wants, untold, graph } = made;
  const told = wants.flatMap(({ want }) => (want.reached === undefined ? [] : [want.reached.id]));
  const ranges = Object.keys(graph).filter((id) => {
    const most = id.startsWith("wanted.") && id.endsWith(".least") ? graph[id.replace(/least$/u, "most")] : undefined;
    return most?.working.kind === "given";
  });
  const found = noodle.settled?.found.map(({ name }) => name) ?? [];
  const amounts = Object.values(graph).filter(isFoundByWants);
  const looked = new Set(amounts.flatMap((figure) => [figure.id, ...feedsOf(figure)]));
  const all: readonly (WorkbookCheck | false)[] = [
    ranges.length > 0 && {
      of: "ranges that are wanted",
      refuses: true,
      text: "the least that is wanted is above the most",
      fails: (cell) => `OR(${ranges.map((id) => `${cell(id)}>${cell(id.replace(/least$/u, "most"))}`).join(",")})`,
    },
    wants.length + untold.length > 0 && {
      of: "what is wanted",
      text: "not all of it is met, or can be told: see Wanted beside the inputs",
      failing:
        untold.length > 0 ||
        wants.some(({ check, want: { reached } }) => !check.holds || (reached && restsOnPrices(reached, made))),
      fails: (cell, { changed, open }) =>
        `OR(${[
          ...wants.map(({ want }) => (want.reached === undefined ? changed() : missedRule(want)(cell))),
          open(told) ?? "1=0",
          ...(untold.length > 0 ? ["1=1"] : []),
        ].join(",")})`,
    },
    found.length > 0 && {
      of: "amounts that were found",
      text: `found for the spec as it is written: ${found.join(", ")}; make the workbook anew`,
      fails: (cell) =>
        joined(
          "OR",
          [...looked].map((id) => {
            const before = literal(figureIn(id, graph).value);
            return `ABS(${cell(id)}-${before})>0.000000001*${before}`;
          }),
        ),
    },
  ];
  return all.filter((one) => one !== false);
}
