import { type Figure, given, standing, worked } from "../figure/figure.ts";
import { measure } from "../figure/in-system.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { type Decimal, dec, ONE } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import { lessUnused, mixerLimit } from "./stated-mass.ts";

/** A batch split into equal mixer loads. */
export interface Loads {
  readonly count: Figure;
  /** Dough of one load, g. */
  readonly dough: Figure;
  /** Flour of one load, g. */
  readonly flour: Figure;
}

/**
 * Splits a batch into equal loads, as few as the mixer allows.
 *
 * @param left - of the largest load, g: left unused so that the weights, rounded to the scale, stay within it
 * Problems: `mixer.limits` (input); `mixer.no-equal-loads` (no answer), with the nearest batches that would fit.
 */
export function splitLoads(dough: Figure, doughParts: Figure, mixer: Spec["mixer"], left?: Decimal): Outcome<Loads> {
  if (mixer === undefined) return answer(equalLoads({ dough, parts: doughParts }, countFigure("1", "no mixer stated")));
  const largest = dec(mixer.largest.value);
  const smallest = mixer.smallest === undefined ? undefined : dec(mixer.smallest.value);
  if (mixer.smallest !== undefined && smallest?.gt(largest)) {
    const facts = { smallest: mixer.smallest.text, largest: mixer.largest.text, meant: mixer.smallest.text };
    return refuse(problem("mixer.limits", ["mixer", "largest"], facts));
  }
  const limit = mixerLimit("largest", mixer.largest, mixer.of);
  const weighed = mixer.of === "flour" ? "dough * 100 / parts" : "dough";
  const naming = { id: "loads.count", label: "loads", unit: "", places: 0 };
  const count = worked(naming, `ceil(${weighed} / limit)`, { dough, parts: doughParts, limit }, massBalance);
  const loads = equalLoads({ dough, parts: doughParts }, count, {
    used: left && lessUnused(limit, left),
    least: leastDough(mixer, doughParts),
    flour: mixer.of === "flour",
  });
  const each = dec(mixer.of === "flour" ? loads.flour.value : loads.dough.value);
  if (mixer.smallest !== undefined && smallest?.gt(each)) {
    const before = dec(count.value).minus(1);
    return refuse(
      problem("mixer.no-equal-loads", ["mixer"], {
        each: measure(each, "g", 0),
        of: mixer.of ?? "dough",
        loads: count.value,
        smallest: mixer.smallest.text,
        largest: mixer.largest.text,
        enough: measure(smallest.times(count.value), "g", 0),
        ...(before.gt(0) && { fewer: measure(largest.times(before), "g", 0) }),
      }),
    );
  }
  return answer(loads);
}

/** The dough of the smallest load, where the spec states that. */
function leastDough({ smallest, of }: NonNullable<Spec["mixer"]>, parts: Figure): Figure | undefined {
  const limit = smallest && mixerLimit("smallest", smallest, of);
  if (limit === undefined || of !== "flour") return limit;
  const naming = { id: "mixer.smallest-dough", label: "dough of the smallest load", unit: "g", places: 0 };
  return worked(naming, "flour * parts / 100", { flour: limit, parts }, massBalance);
}

function countFigure(value: string, by: string): Figure {
  return given({ id: "loads.count", label: "loads", unit: "", places: 0 }, ONE.times(value), by, fromSpec);
}

interface Limit {
  /** What may be used of it, where that is not all. */
  readonly used: Figure | undefined;
  /** The dough that the mixer takes at least. */
  readonly least: Figure | undefined;
  /** The limit is one of flour. */
  readonly flour: boolean;
}

function equalLoads(
  { dough, parts }: { readonly dough: Figure; readonly parts: Figure },
  count: Figure,
  most?: Limit,
): Loads {
  const naming = { id: "load.dough", label: "dough of one load", unit: "g", places: 1 };
  const equal =
    most?.used === undefined
      ? worked(naming, "dough / count", { dough, count }, massBalance)
      : worked(
          naming,
          `min(dough / count, ${most.flour ? "used * parts / 100" : "used"})`,
          { dough, count, used: most.used, ...(most.flour && { parts }) },
          massBalance,
        );
  const load = most?.least === undefined ? equal : standing(equal, { least: most.least });
  const flourNaming = { id: "load.flour", label: "flour of one load", unit: "g", places: 1 };
  const flour = worked(flourNaming, "100 * load / parts", { load, parts }, massBalance);
  return { count, dough: load, flour };
}
