import { type Figure, given, shown, summed, worked } from "../figure/figure.ts";
import { answer, type Outcome, type Path, type Problem, problem, refuse } from "../figure/problem.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import { ceilToDivision, dec, decimalText } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";
import { type Spec, waterWays } from "../spec/spec.ts";
import type { FormulaLine } from "./line.ts";
import type { StatedLines } from "./lines.ts";
import { moistureFigure } from "./made-of.ts";
import { ofDough, ofFlour } from "./naming.ts";
import { sumRange } from "./ranges.ts";

/** Where the water of the dough comes from. Unless said otherwise in % of flour. */
export interface WaterBalance {
  /** To pour. */
  readonly tap: Figure;
  /** Water that eggs, solutions, crystals and other ingredients bring. */
  readonly carried: Figure;
  /** Tap and carried water. */
  readonly added: Figure;
  /** The flour's own. */
  readonly flour: Figure;
  /** Dough on 100 of flour. */
  readonly dough: Figure;
  /** All water, % of the dough. */
  readonly doughWater: Figure;
  readonly figures: readonly Figure[];
}

/** A line's own water, % of flour. */
export function carriedWater(line: FormulaLine): Figure {
  return worked(
    ofFlour(`${line.id}.water`, `water in ${line.name}`),
    "parts * moisture / 100",
    { parts: line.parts, moisture: moistureFigure(line) },
    massBalance,
  );
}

/**
 * Finds the tap water that meets the stated water once every other source is counted.
 *
 * Problems: `water.not-stated`, `water.stated-twice`, `water.below-carried`, `water.below-own`,
 * `water.mass-without-flour-mass`.
 */
export function balanceWater(lines: StatedLines, water: Spec["water"]): Outcome<WaterBalance> {
  const ways = waterWays.filter((way) => water[way] !== undefined);
  const [way] = ways;
  const amount = way && water[way];
  if (way === undefined || amount === undefined) return refuse(problem("water.not-stated", ["water"], {}));
  if (ways.length > 1) return refuse(problem("water.stated-twice", ["water"], { ways }));
  const known = waterBefore(lines);
  const tap = tapWater(way, amount, lines, known);
  return tap.ok ? answer(summary(tap.value, known)) : tap;
}

/** The water of a dough whose tap water is known: of `others`, all that is neither flour nor tap water. */
export function waterWith(tap: Figure, lines: Pick<StatedLines, "flours" | "others">): WaterBalance {
  return summary(tap, waterBefore(lines));
}

/** What there is of water, and of all else, before any is poured. */
function waterBefore(lines: Pick<StatedLines, "flours" | "others">): Known {
  const carried = summed(
    ofFlour("water.carried", "water carried by other ingredients"),
    { water: lines.others.map(carriedWater) },
    massBalance,
  );
  const flour = sumRange(
    summed(ofFlour("water.flour", "water in the flour"), { water: lines.flours.map(carriedWater) }, massBalance),
    lines.flours.map((line) => ({ weight: () => dec(line.parts.value).div(100), figure: moistureFigure(line) })),
    "moisture of the flours",
  );
  const others = summed(
    ofFlour("dough.others", "all but flour and tap water"),
    { parts: lines.others.map((line) => line.parts) },
    massBalance,
  );
  return { carried, flour, others };
}

interface Known {
  readonly carried: Figure;
  readonly flour: Figure;
  readonly others: Figure;
}

const tapNaming = { id: "water.tap", label: "tap water", unit: "% of flour", places: 2, bounds: { least: "0" } };

function tapWater(way: "added" | "tap" | "dough", amount: Quantity, lines: StatedLines, known: Known): Outcome<Figure> {
  const path: Path = ["water", way];
  if (way === "dough") {
    const stated = given(
      ofDough("water.dough-stated", "stated dough water"),
      amount.value,
      `spec, ${amount.text}`,
      fromSpec,
    );
    const tap = worked(
      tapNaming,
      "(dough * (100 + others) - 100 * (flour + carried)) / (100 - dough)",
      { dough: stated, ...known },
      massBalance,
    );
    return dec(tap.value).isNegative() ? refuse(belowOwn(path, amount.text, known)) : answer(tap);
  }
  const stated = statedWater(way, lines, amount, path);
  if (!stated.ok) return stated;
  if (way === "tap") return poured(stated.value, lines, path, known);
  const tap = worked(tapNaming, "added - carried", { added: stated.value, carried: known.carried }, massBalance);
  return dec(tap.value).isNegative() ? refuse(belowCarried(path, amount.text, tap, known)) : answer(tap);
}

/** Water as it is poured; what products bring that take the place of others is taken off, so that the dough's water stays. */
function poured(stated: Figure, { replacements }: StatedLines, path: Path, known: Known): Outcome<Figure> {
  if (replacements.length === 0) return answer({ ...stated, ...tapNaming });
  const olds = replacements.map(({ old }) => old);
  const before = olds.map(carriedWater);
  const after = replacements.flatMap(({ lines }) => lines.map(carriedWater));
  const tap = worked(tapNaming, "stated + sum(before) - sum(after)", { stated, before, after }, massBalance);
  return dec(tap.value).isNegative() ? refuse(belowCarried(path, shown(stated), tap, known)) : answer(tap);
}

/**
 * Water stated on flour, brought to 100 of the flour at hand. On another flour moisture, the dough keeps its dry matter
 * and its water: what the flour at hand has more or less of its own is taken off the water or added to it.
 */
function statedWater(way: "added" | "tap", lines: StatedLines, amount: Quantity, path: Path): Outcome<Figure> {
  const naming = ofFlour(`water.${way}-stated`, `stated ${way} water`);
  const factor = lines.referenceFactor;
  if (amount.dimension === "mass" && lines.writtenFlour === undefined) {
    return refuse(problem("water.mass-without-flour-mass", path, { amount: amount.text }));
  }
  const share = amount.dimension === "mass" ? "100 * stated / flour" : "stated";
  const flour = lines.writtenFlour;
  const inSpec = (of: typeof naming) => given(of, amount.value, `spec, ${amount.text}`, fromSpec);
  if (factor === undefined && share === "stated") return answer(inSpec(naming));
  const unit = amount.dimension === "mass" ? "g" : naming.unit;
  const asWritten = inSpec({ ...naming, id: `water.${way}-written`, label: `${way} water as written`, unit });
  const base = { stated: asWritten, ...(amount.dimension === "mass" && flour && { flour }) };
  if (factor === undefined) return answer(worked(naming, share, base, massBalance));
  const formula = `factor * (100 + ${share}) - 100`;
  const moved = worked(naming, formula, { ...base, factor }, massBalance);
  if (!dec(moved.value).isNegative()) return answer(moved);
  return refuse(problem("water.below-flour", path, { amount: amount.text }));
}

function summary(tap: Figure, { carried, flour, others }: Known): WaterBalance {
  const added = worked(ofFlour("water.added", "added water"), "tap + carried", { tap, carried }, massBalance);
  const dough = worked(
    ofFlour("dough.parts", "dough on 100 of flour"),
    "100 + tap + others",
    { tap, others },
    massBalance,
  );
  const doughWater = worked(
    ofDough("dough.water", "dough water"),
    "100 * (flour + added) / dough",
    { flour, added, dough },
    massBalance,
  );
  // The water is poured as worked out; what the flour has more or less of its own is in the dough.
  const open = [{ weight: () => dec(100).div(dough.value), figure: flour }];
  const ranged = sumRange(doughWater, open, "moisture of the flours");
  const figures = [tap, carried, added, flour, dough, ranged];
  return { tap, carried, added, flour, dough, doughWater: ranged, figures };
}

/** Less dough water than the dough has before any is poured, % of the dough. */
function belowOwn(path: Path, written: string, { flour, carried, others }: Known): Problem {
  const own = dec(flour.value).plus(carried.value).times(100).div(dec(others.value).plus(100));
  const from = dec(carried.value).lt("0.005") ? "flours" : "all";
  return problem("water.below-own", path, { written, own: decimalText(ceilToDivision(own, dec("0.01"))), from });
}

function belowCarried(path: Path, text: string, tap: Figure, known: Known): Problem {
  const short = decimalText(dec(tap.value).negated().toDecimalPlaces(2));
  const carried = decimalText(dec(known.carried.value).toDecimalPlaces(2));
  return problem("water.below-carried", path, { written: text, carried, short });
}
