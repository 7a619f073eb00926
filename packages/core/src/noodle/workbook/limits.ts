import { plannedLeaving } from "../../batch/batch.ts";
import { type LeftUnused, linesOf } from "../../batch/dough-size.ts";
import type { WeighedLine } from "../../batch/weighing.ts";
import { published } from "../../figure/graph.ts";
import { ZERO } from "../../number/decimal.ts";
import { joined, justMore } from "../../render/workbook/formulas.ts";
import type { CellOf, Tries } from "../../render/workbook/workbook.ts";
import type { Noodle } from "../noodle.ts";
import { weighedBatch } from "../planned-batch.ts";
import type { Made } from "./made.ts";

/** A limit that the weights stay within. */
interface Limit {
  readonly id: "batch.have" | "mixer.largest";
  /** What is weighed of it. */
  readonly weighed: (cell: CellOf) => string;
  readonly lines: readonly WeighedLine[];
  /** The loads that it is for. */
  readonly loads?: string;
}

/** Whether the weights go beyond a limit. */
export function beyondRule({ id, weighed }: Limit): (cell: CellOf) => string {
  return (cell) => `${weighed(cell)}>${cell(id)}*${justMore}`;
}

/** The limits of a batch. */
export function limitsOf({ noodle: { spec, formula }, batch: { lines, rework }, weighed }: Made): readonly Limit[] {
  const { batch: { have } = {}, mixer } = spec;
  const short = new Set(have === undefined ? [] : linesOf(have.name, formula).map(({ id }) => id));
  const taken = weighed.filter(({ line }) => short.has(line.id));
  const flours = lines.filter(({ line }) => line.role === "flour");
  const flour = (cell: CellOf): string =>
    [
      ...flours.map(({ load }) => cell(load.id)),
      ...(rework ? [`${cell(rework.mass.id)}*100/${cell("dough.parts")}`] : []),
    ].join("+");
  const all = (cell: CellOf): string => cell("load.total");
  const inAll = (cell: CellOf): string => taken.map(({ batch }) => cell(batch.id)).join("+");
  return [
    ...(have ? [{ id: "batch.have" as const, weighed: inAll, lines: taken, loads: "loads.count" }] : []),
    ...(mixer ? [{ id: "mixer.largest" as const, weighed: mixer.of === "flour" ? flour : all, lines }] : []),
  ];
}

/** Tries that come to the next whole division below any limit. */
const usualTries = 3;

/** The batch of a noodle, and what was tried before: of what its size is stated by, what is left unused is a figure, if nothing. */
export function batchWithTries(noodle: Noodle) {
  const { spec, formula, units } = noodle;
  const plain = weighedBatch(noodle);
  const largest =
    spec.batch?.load === "largest" || (plain.ok && plain.value.graph["mixer.largest-unused"] !== undefined);
  const from: LeftUnused = { have: spec.batch?.have && ZERO, mixer: largest ? ZERO : undefined };
  return plannedLeaving(from, spec, formula, units === "us");
}

/** How the weights of a batch come to stay within its limits, as `planBatch` finds it. */
export function triesOf(made: Made, tried: ReturnType<typeof plannedLeaving>["tries"]): Tries {
  const left = Object.keys(made.graph).flatMap((unused) => {
    const limit = limitsOf(made).find(({ id }) => unused.endsWith("-unused") && unused.startsWith(id.slice(0, 5)));
    if (limit === undefined) return [];
    const { weighed, lines, loads } = limit;
    const over = (cell: CellOf): string => {
      const half = `${joined(
        "MAX",
        lines.map(({ step }) => cell(step.id)),
      )}/2${loads === undefined ? "" : `*${cell(loads)}`}`;
      return `IF(${beyondRule(limit)(cell)},MAX(${weighed(cell)}-${cell(limit.id)},${half}),0)`;
    };
    return [{ id: unused, over }];
  });
  const graphs = left.length === 0 ? [] : tried.map((weights) => published(weights, made.noodle.formula.graph).graph);
  const more = left.length === 0 ? 0 : Math.max(0, usualTries - graphs.length);
  return { graphs: [...graphs, ...Array.from({ length: more }, () => made.graph)], left };
}
