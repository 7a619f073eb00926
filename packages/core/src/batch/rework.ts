import { type Figure, found, given, type Naming, worked } from "../figure/figure.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { definition, fromSpec, massBalance } from "../figure/source.ts";
import { dec, decimalText, digitsText, floorToDivision, roundToDivision } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import type { Loads } from "./loads.ts";
import type { ScaledMass } from "./remedy.ts";
import { chooseScale, type Scales } from "./weighing.ts";

/** Trimmings of the same dough that go into each load beside the new dough. */
export interface Rework extends ScaledMass {
  /** In the whole batch, g. */
  readonly batch: Figure;
  /** % of the dough in the mixer. */
  readonly share: Figure;
}

/** What the spec states of rework, as a figure: % of the dough in the mixer, or g in the whole batch. */
export function statedRework(rework: NonNullable<Spec["rework"]>): Figure {
  const { value, text, dimension } = rework.amount;
  const share = dimension === "share";
  const naming = { id: "rework.stated", label: "rework stated", unit: share ? "% of dough" : "g", places: 1 };
  return given(naming, value, `spec, ${text}`, fromSpec);
}

/** The dough in the mixer for so much new dough. */
export function doughWithRework(naming: Naming, fresh: Figure, stated: Figure) {
  const formula = stated.unit === "g" ? "fresh + rework" : "fresh * 100 / (100 - rework)";
  return worked(naming, formula, { fresh, rework: stated }, massBalance);
}

/**
 * Parts each load into rework and new dough. Rework is the same dough: the new dough keeps the formula, and only less of it
 * is weighed.
 *
 * Problems: `rework.no-new-dough`, `rework.beyond-own-limit`.
 */
export function withRework(
  loads: Loads,
  parts: Figure,
  spec: Spec,
  scales: Scales,
): Outcome<{ readonly loads: Loads; readonly rework?: Rework }> {
  if (spec.rework === undefined || dec(spec.rework.amount.value).isZero()) return answer({ loads });
  const { count, dough } = loads;
  const stated = statedRework(spec.rework);
  const grams = { unit: "g", places: 1 };
  const exact = worked(
    { id: "rework.exact", label: "rework in a load", ...grams },
    stated.unit === "g" ? "rework / count" : "rework * dough / 100",
    stated.unit === "g" ? { rework: stated, count } : { rework: stated, dough },
    massBalance,
  );
  const shareNaming = { id: "rework.share", label: "rework", unit: "% of dough", places: 1 };
  const share = worked(shareNaming, "100 * rework / dough", { rework: exact, dough }, massBalance);
  const { amount, most } = spec.rework;
  if (dec(share.value).gte(100)) {
    return refuse(problem("rework.no-new-dough", ["rework", "amount"], { amount: amount.text }));
  }
  if (most !== undefined && dec(share.value).gt(most.value)) {
    const facts = { share: decimalText(dec(share.value).toSignificantDigits(4)), most: most.text };
    return refuse(problem("rework.beyond-own-limit", ["rework", "amount"], facts));
  }
  const freshNaming = { id: "load.fresh", label: "new dough of one load", ...grams };
  const fresh = worked(freshNaming, "dough - rework", { dough, rework: exact }, massBalance);
  const flourNaming = { id: "load.flour", label: "flour of one load", ...grams };
  const flour = worked(flourNaming, "100 * fresh / parts", { fresh, parts }, massBalance);
  const { scale } = chooseScale(dec(exact.value), scales);
  const places = Math.min(scale.division.decimalPlaces(), 6);
  // A mass is what there is of it: no more than that goes in.
  const rounded = stated.unit === "g" ? floorToDivision : roundToDivision;
  const by = `${digitsText(exact.value, 10)} g rounded to ${decimalText(scale.division)} g (${scale.name})`;
  const on = [exact, ...scales.flatMap(({ figures }) => figures)];
  const loadNaming = { id: "rework.load", label: "rework in a load", unit: "g", places };
  const mass = found(loadNaming, rounded(dec(exact.value), scale.division), by, on, definition);
  const batchNaming = { id: "rework.batch", label: "rework in the batch", unit: "g", places };
  const batch = worked(batchNaming, "rework * count", { rework: mass, count }, massBalance);
  const onScale = { division: decimalText(scale.division), unit: scale.unit, scale: scale.name };
  return answer({
    loads: { ...loads, flour },
    rework: { name: "rework (the same dough)", mass, ...onScale, batch, share },
  });
}
