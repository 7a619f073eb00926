import { type Decimal, dec, HUNDRED, ONE } from "../../number/decimal.ts";

/** Room for a limit that has no finite decimal, such as one third: a pass of exactly one third keeps to "33.333…". */
const SLACK = dec("1e-12");

/** What a pass takes off, as a share of the thickness before. */
export function reductionOf(before: Decimal, after: Decimal): Decimal {
  return ONE.minus(after.div(before));
}

/** Whether a pass keeps to the largest reduction, given in %. */
export function keepsTo(largestReduction: Decimal, before: Decimal, after: Decimal): boolean {
  return reductionOf(before, after).lte(largestReduction.div(HUNDRED).plus(SLACK));
}

/** The least thickness that one pass may leave. */
export function thinnestAfter(before: Decimal, largestReduction: Decimal): Decimal {
  return before.times(ONE.minus(largestReduction.div(HUNDRED)));
}

/** The fewest passes of one and the same ratio that take a sheet from one thickness to another within the largest reduction. */
export function fewestPasses(first: Decimal, final: Decimal, largestReduction: Decimal): number {
  const [wanted, least] = [final.div(first), thinnestAfter(ONE, largestReduction).minus(SLACK)];
  let passes = 1;
  for (let thinnest = least; wanted.lt(thinnest); thinnest = thinnest.times(least)) passes += 1;
  return passes;
}

/** A thickness that a fixed setting gives. */
export interface Stop {
  readonly name: string;
  readonly gap: Decimal;
  readonly thickness: Decimal;
}

interface Way {
  readonly stops: readonly Stop[];
  /** Reductions of the passes, largest first. */
  readonly reductions: readonly Decimal[];
}

/**
 * Finds the best way through fixed stops: every pass within the limit, the fewest passes, then the smallest largest
 * reduction, then the smallest second largest and so on; of equal ways the one that keeps the sheet thicker for longer.
 *
 * It goes pass by pass and keeps the best way to each stop. That is exact: two ways to one stop with equally many passes
 * stay in the same order whatever passes follow.
 *
 * @param stops - from thick to thin, all thinner than `first`; the last one is where the sheet has to end
 */
export function bestWay(
  first: Decimal,
  stops: readonly Stop[],
  largestReduction: Decimal,
): readonly Stop[] | undefined {
  const end = stops.at(-1);
  if (end === undefined) return undefined;
  let reached = new Map<Stop | undefined, Way>([[undefined, { stops: [], reductions: [] }]]);
  for (let passes = 1; passes <= stops.length; passes += 1) {
    const next = new Map<Stop | undefined, Way>();
    for (const [from, way] of reached) {
      const before = from?.thickness ?? first;
      for (const stop of stops) {
        if (!stop.thickness.lt(before) || !keepsTo(largestReduction, before, stop.thickness)) continue;
        const longer = extended(way, stop, reductionOf(before, stop.thickness));
        const known = next.get(stop);
        if (known === undefined || isBetter(longer, known)) next.set(stop, longer);
      }
    }
    const arrived = next.get(end);
    if (arrived !== undefined) return arrived.stops;
    reached = next;
  }
  return undefined;
}

function extended(way: Way, stop: Stop, reduction: Decimal): Way {
  const reductions = [...way.reductions, reduction].sort((a, b) => b.comparedTo(a));
  return { stops: [...way.stops, stop], reductions };
}

function isBetter(one: Way, other: Way): boolean {
  const byReduction = firstDifference(one.reductions, other.reductions);
  if (byReduction !== 0) return byReduction < 0;
  const thickness = (way: Way) => way.stops.map((stop) => stop.thickness);
  return firstDifference(thickness(one), thickness(other)) > 0;
}

function firstDifference(one: readonly Decimal[], other: readonly Decimal[]): number {
  for (const [index, value] of one.entries()) {
    const difference = value.comparedTo(other[index] ?? value);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** A pass between neighbouring stops that takes off too much: no way can avoid it. */
export interface TooBigStep {
  readonly from: Stop | undefined;
  readonly before: Decimal;
  readonly to: Stop;
}

/** Finds the steps that no choice of stops can make small enough. */
export function tooBigSteps(first: Decimal, stops: readonly Stop[], largestReduction: Decimal): readonly TooBigStep[] {
  return stops.flatMap((to, index) => {
    const from = stops[index - 1];
    const before = from?.thickness ?? first;
    return keepsTo(largestReduction, before, to.thickness) ? [] : [{ from, before, to }];
  });
}
