import { type Figure, found, given, worked } from "../figure/figure.ts";
import { answer, type Note, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { commonPractice, definition, fromSpec, massBalance } from "../figure/source.ts";
import type { FormulaLine } from "../formula/line.ts";
import { type Decimal, dec, decimalText, digitsText, roundToDivision, ZERO } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";
import { roundKeepingTotal } from "../number/rounding.ts";
import type { ScaleUnit } from "../number/units.ts";
import type { Spec } from "../spec/spec.ts";

/** Most that rounding to a scale may be off before a warning, %, unless the spec says otherwise. */
export const usualTolerance = "1";

/** The same as a figure. */
export function weighingTolerance({ weighingTolerance: stated }: Pick<Spec, "weighingTolerance">): Figure {
  return given(
    { id: "weighing.tolerance", label: "what a weight may be off", unit: "%", places: 1 },
    stated?.value ?? usualTolerance,
    stated === undefined ? "usual" : `spec, ${stated.text}`,
    stated === undefined ? commonPractice : fromSpec,
  );
}

/** A scale as it is used. Masses in g. */
export interface Scale {
  readonly name: string;
  readonly division: Decimal;
  readonly capacity?: Decimal;
  /** Least mass that its division is within the weighing tolerance of. */
  readonly showsFrom: Decimal;
  /** Unit it shows: `g`, `kg`, `oz` or `lb`. */
  readonly unit: ScaleUnit;
  readonly assumed: boolean;
  /** Its division, its capacity where that is stated, and the weighing tolerance: what it is chosen by. */
  readonly figures: readonly Figure[];
}

/** All the scales of a kitchen. */
export type Scales = readonly Scale[];

/** One ingredient of a load, as it is weighed. */
export interface WeighedLine {
  readonly line: FormulaLine;
  /** Exact mass in a load, g. */
  readonly exact: Figure;
  /** Mass to weigh for a load, g: a whole number of divisions. */
  readonly load: Figure;
  /** Mass for the whole batch, g: the loads added up. */
  readonly batch: Figure;
  readonly scale: string;
  /** Division of that scale, g. */
  readonly division: string;
  /** Unit that scale shows. */
  readonly unit: ScaleUnit;
  /** How often the scale must be filled for a load. */
  readonly lots: number;
  /** How far the weight as printed is from the exact one, % of that; below zero where it is less. */
  readonly off: Figure;
  /** Half a division, the nearest that the scale tells, % of the mass. */
  readonly nearest: Figure;
  /** The division as a figure, g. */
  readonly step: Figure;
}

/** What a scale shows where the spec names none. */
const usualDivision: Readonly<Record<"g" | "oz", Quantity>> = {
  g: { text: "1 g", dimension: "mass", value: "1", unit: "g" },
  oz: { text: "0.1 oz", dimension: "mass", value: "2.8349523125", unit: "oz" },
};

/** The scales of a spec, or one that shows whole grams (tenths of an ounce for US units) where it names none, which a note says. */
export function scalesOf(spec: Pick<Spec, "scales" | "weighingTolerance">, us: boolean): Outcome<Scales> {
  const tolerance = weighingTolerance(spec);
  const assumed = spec.scales === undefined;
  const stated: NonNullable<Spec["scales"]> = spec.scales ?? [{ division: usualDivision[us ? "oz" : "g"] }];
  const scales = stated.map(({ name, division: { text, value, unit }, capacity }, index): Scale => {
    const division = dec(value);
    const read = {
      name: name ?? `scale to ${text}`,
      division,
      showsFrom: division.times(100).div(tolerance.value),
      ...(capacity && { capacity: dec(capacity.value) }),
      unit: shownUnit(unit),
      assumed,
    };
    return withFigures(read, index, tolerance);
  });
  const tooCoarse = scales.findIndex(({ division, capacity }) => capacity?.lt(division));
  if (tooCoarse !== -1) {
    const { capacity, division } = stated[tooCoarse] ?? {};
    const facts = { capacity: capacity?.text ?? "", division: division?.text ?? "" };
    return refuse(problem("scales.capacity-below-division", ["scales", tooCoarse, "capacity"], facts));
  }
  const [other] = scales.filter(({ unit }) => unit !== scales[0]?.unit);
  if (other !== undefined) {
    const [grams = "", ounces = ""] = (["g", "oz"] as const).map(
      (unit) => scales.find((one) => one.unit === unit)?.name,
    );
    return refuse(problem("scales.mixed-systems", ["scales"], { grams, ounces }));
  }
  return answer(scales, assumed ? [note("scales.assumed", ["scales"], { us })] : boundlessNotes(scales));
}

/** Where the finest of several scales states no capacity, it weighs only what asks for it. */
function boundlessNotes(scales: Scales): readonly Note[] {
  const finest = scales.reduce(finer);
  const boundless = scales.length > 1 && finest.capacity === undefined;
  return boundless ? [note("scales.capacity-unknown", ["scales"], { name: finest.name })] : [];
}

function withFigures(scale: Omit<Scale, "figures">, index: number, tolerance: Figure): Scale {
  const { name, division, capacity, assumed } = scale;
  const figure = (what: "division" | "capacity", value: Decimal): Figure =>
    given(
      { id: `scale.${index + 1}.${what}`, label: `${what} of ${name}`, unit: "g", places: decimalPlaces(division) },
      value,
      assumed ? "assumed" : "spec",
      fromSpec,
    );
  const figures = [figure("division", division), ...(capacity ? [figure("capacity", capacity)] : []), tolerance];
  return { ...scale, figures };
}

/** Weights are shown in grams, or in ounces where the scales show ounces or pounds. */
export function shownUnit(unit: string): "g" | "oz" {
  return unit === "oz" || unit === "lb" ? "oz" : "g";
}

/** A scale, in how many lots it takes a mass, and how it was chosen. */
interface Choice {
  readonly scale: Scale;
  readonly lots: number;
  readonly by: string;
}

function finer(one: Scale, other: Scale): Scale {
  return other.division.lt(one.division) ? other : one;
}

function coarser(one: Scale, other: Scale): Scale {
  return other.division.gt(one.division) ? other : one;
}

/**
 * The finest scale that takes a mass at once; the one of the greatest capacity where none does. A scale of unknown capacity
 * may not take much: it weighs what none of known capacity takes and shows within the weighing tolerance, and of several the
 * coarsest that does is taken.
 */
export function chooseScale(mass: Decimal, scales: Scales): Choice {
  const holding = scales.filter(({ capacity }) => capacity?.gte(mass));
  const boundless = scales.filter(({ capacity }) => capacity === undefined);
  const shown = (some: Scales) => some.filter(({ showsFrom }) => mass.gte(showsFrom));
  const [held, open] = [shown(holding), shown(boundless)];
  if (held.length === 0 && open.length > 0) {
    return { scale: open.reduce(coarser), lots: 1, by: "the coarsest of unknown capacity that shows it well enough" };
  }
  const fitting = held.length > 0 ? held : [...holding, ...boundless];
  if (fitting.length > 0) return { scale: fitting.reduce(finer), lots: 1, by: "the finest scale that holds it" };
  const largest = scales.reduce((best, scale) => ((scale.capacity ?? ZERO).gt(best.capacity ?? ZERO) ? scale : best));
  const lots = largest.capacity === undefined ? 1 : mass.div(largest.capacity).ceil().toNumber();
  return { scale: largest, lots, by: "the scale that holds most" };
}

/**
 * Rounds the ingredients of a load to the divisions of the scales that weigh them, the total kept.
 *
 * @param flour - flour of one load, g
 * @param count - number of equal loads
 */
export function weighLoad(
  lines: readonly FormulaLine[],
  flour: Figure,
  count: Figure,
  scales: Scales,
): readonly WeighedLine[] {
  const picked = lines.map((line) => pick(line, flour, scales));
  const rounded = roundKeepingTotal(
    picked.map(({ exact, choice }) => ({ value: dec(exact.value), division: choice.scale.division })),
  );
  const on = [...picked.map(({ exact }) => exact), ...picked.map(({ step }) => step)];
  return picked.map((one, index) => weighedLine(one, rounded[index] ?? ZERO, count, on));
}

/** A line of a load before its mass is rounded, and the division that it is weighed to. */
interface Picked extends Pick<WeighedLine, "line" | "exact" | "step"> {
  readonly choice: Choice;
}

function pick(line: FormulaLine, flour: Figure, scales: Scales): Picked {
  const { id, name, parts } = line;
  const naming = { id: `${id}.exact`, label: `${name} in a load`, unit: "g", places: 2 };
  const exact = worked(naming, "parts * flour / 100", { parts, flour }, massBalance);
  const choice = chooseScale(dec(exact.value), scales);
  return { line, exact, choice, step: stepFigure(line, exact, choice, scales) };
}

/** The division that a line is weighed to: that of the only scale, or found by the weight where there are more. */
function stepFigure(line: FormulaLine, exact: Figure, { scale, by }: Choice, scales: Scales): Figure {
  const [only] = scale.figures;
  if (scales.length === 1 && only !== undefined) return only;
  const places = Math.max(2, decimalPlaces(scale.division));
  const naming = { id: `${line.id}.division`, label: `division of ${scale.name}`, unit: "g", places };
  const on = [exact, ...new Set(scales.flatMap(({ figures }) => figures))];
  return found(naming, scale.division, by, on, fromSpec);
}

function weighedLine(
  { line, exact, choice: { scale, lots }, step }: Picked,
  mass: Decimal,
  count: Figure,
  on: readonly Figure[],
): WeighedLine {
  const places = decimalPlaces(scale.division);
  const load = found(
    { id: `${line.id}.load`, label: `${line.name} in a load`, unit: "g", places },
    mass,
    `${digitsText(exact.value, 10)} g rounded to ${decimalText(scale.division)} g (${scale.name}), the total of the load kept`,
    on,
    definition,
  );
  const batchNaming = { id: `${line.id}.batch`, label: `${line.name} in the batch`, unit: "g", places };
  const batch = worked(batchNaming, "load * count", { load, count }, massBalance);
  return {
    line,
    exact,
    load,
    batch,
    scale: scale.name,
    division: decimalText(scale.division),
    unit: scale.unit,
    lots,
    ...errors(line, exact, load, step),
    step,
  };
}

function errors(line: FormulaLine, mass: Figure, load: Figure, division: Figure): Pick<WeighedLine, "off" | "nearest"> {
  const naming = (what: string, label: string) => ({ id: `${line.id}.${what}`, label, unit: "%", places: 1 });
  const off = naming("off", `change of ${line.name} by rounding`);
  const nearest = naming("nearest", `half a division, of ${line.name}`);
  if (dec(mass.value).isZero()) {
    const nothing = (of: typeof off) => found(of, 0, "nothing to weigh", undefined, definition);
    return { off: nothing(off), nearest: nothing(nearest) };
  }
  return {
    off: worked(off, "100 * (load - mass) / mass", { load, mass }, definition),
    nearest: worked(nearest, "100 * division / 2 / mass", { division, mass }, definition),
  };
}

/** Whether a weight as printed, or the scale that tells it, is further off than the kitchen allows. */
export function tooLittle({ exact, off, nearest }: WeighedLine, tolerance: Decimal): boolean {
  if (dec(exact.value).isZero()) return false;
  return dec(nearest.value).gt(tolerance) || dec(off.value).abs().gt(tolerance);
}

function decimalPlaces(value: Decimal): number {
  return Math.min(value.decimalPlaces(), 6);
}

/** Weighs something outside the dough, such as dusting starch. */
export function weighApart(line: FormulaLine, flour: Figure, count: Figure, scales: Scales): WeighedLine {
  const picked = pick(line, flour, scales);
  const { exact, choice, step } = picked;
  const mass = roundToDivision(dec(exact.value), choice.scale.division);
  return weighedLine(picked, mass, count, [exact, step]);
}
