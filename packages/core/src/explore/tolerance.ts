import { rangeOf } from "../figure/corners.ts";
import { type Figure, found } from "../figure/figure.ts";
import { figureIn, type Graph, graphOf, inputsOf } from "../figure/graph.ts";
import { fastGraph } from "../figure/recalculate.ts";
import { dec } from "../number/decimal.ts";
import { type Cause, causeWords, type Output } from "./cause.ts";
import { type Simulated, simulate } from "./simulate.ts";

/** A question to `tolerance`. */
export interface ToleranceQuestion {
  /** The figures; each of the outputs must rise or fall steadily in each cause, as sums, products and quotients do. */
  readonly graph: Graph;
  readonly causes: readonly Cause[];
  readonly outputs: readonly Output[];
  /** 1 to 2147483646; 1 unless given. */
  readonly seed?: number | undefined;
  /** Random trials; 2000 unless given, 100 to 100000. */
  readonly draws?: number | undefined;
}

/** One output with its exact range, the trials beside it and the share of each cause. */
export interface Tolerance {
  /** The name of the output. */
  readonly id: string;
  /** The figure as it is, and its exact range. */
  readonly figure: Figure;
  readonly simulated: Simulated;
  /** Standard deviation by the slopes of the graph. */
  readonly deviation: Figure;
  /** Largest first. */
  readonly shares: readonly CauseShare[];
}

/** How much of the spread of an output one cause makes. */
export interface CauseShare {
  readonly cause: Cause;
  /** % of the variance. */
  readonly share: Figure;
  /** How far this cause alone moves the output, up or down: its error times the slope. */
  readonly reach: Figure;
}

/**
 * Tells what errors of some figures of a graph do to others: the exact range, a seeded simulation beside it, and the share
 * of each cause. The graph is worked out again for each: in doubles for the trials and the slopes, exactly for the range.
 *
 * Source: rectangular distributions and propagation after JCGM 100:2008, 4.3.7 and 5.1.2, from memory.
 *
 * @throws {RangeError} on a figure that the graph does not know: a bug of the caller.
 */
export function tolerance(question: ToleranceQuestion): readonly Tolerance[] {
  const { graph, causes, outputs, seed = 1, draws = 2000 } = question;
  const fast = fastGraph(
    graph,
    causes.map(({ id }) => id),
    outputs.map(({ figure }) => figure),
  );
  const inputs = causes.map(({ value, plusMinus }) => ({ middle: Number(value), error: Number(plusMinus) }));
  const slopes = fast.slopesAt(inputs.map(({ middle }) => middle));
  const figures = outputs.map(({ figure, label }) => ({ ...figureIn(figure, graph), label }));
  const trials = simulate(fast, causes, figures, seed, draws);
  return outputs.flatMap(({ id }, index) => {
    const figure = figures[index];
    const simulated = trials[index];
    if (figure === undefined || simulated === undefined) return [];
    const range = { ...rangeOf(graph, figure.id, causes), why: "every cause at its worst, exactly" };
    const least = noise * Math.abs(Number(figure.value));
    const reaches = inputs.map(({ error }, input) => {
      const reach = Math.abs(error * (slopes[index]?.[input] ?? 0));
      return reach > least ? reach : 0;
    });
    const erring = causes.map((cause) => figureIn(cause.id, graph));
    const looked = [...new Set([...erring, ...inputsOf(graphOf([figure], graph))])];
    const spread = spreadOf(id, figure, looked, sharesOf(causes, reaches));
    return [{ id, figure: { ...figure, range }, simulated, ...spread }];
  });
}

/** A reach of less than this part of the value is the rounding of doubles. */
const noise = 1e-13;

/** Adds up the variance of independent causes, each evenly spread: the square of its reach, by 3. */
function sharesOf(causes: readonly Cause[], reaches: readonly number[]) {
  const squares = reaches.reduce((sum, reach) => sum + reach * reach, 0);
  return {
    deviation: Math.sqrt(squares / 3),
    causes: causes.map((cause, index) => {
      const reach = reaches[index] ?? 0;
      return { cause, reach, percent: squares === 0 ? 0 : (100 * reach * reach) / squares };
    }),
  };
}

/** Digits that doubles are good to. */
const goodDigits = 12;

function spreadOf(
  output: string,
  { label, unit, places }: Figure,
  looked: readonly Figure[],
  { deviation, causes }: ReturnType<typeof sharesOf>,
): Pick<Tolerance, "deviation" | "shares"> {
  const by = "slopes of the formulas, rectangular distributions";
  const bySlope = (id: string, label: string, unit: string, places: number, value: number): Figure =>
    found(
      { id: `tolerance.${output}.${id}`, label, unit, places },
      dec(value).toSignificantDigits(goodDigits),
      by,
      looked,
    );
  return {
    deviation: bySlope("deviation", `standard deviation of ${label}`, unit, places + 1, deviation),
    shares: causes
      .toSorted((a, b) => b.percent - a.percent)
      .map(({ cause, percent, reach }) => ({
        cause,
        share: bySlope(`${cause.id}.share`, `share of ${causeWords(cause)}`, "%", 1, percent),
        reach: bySlope(`${cause.id}.reach`, `${causeWords(cause)} alone`, unit, places + 1, reach),
      })),
  };
}
