import type { FoundBlend } from "../blend/blend-question.ts";
import type { BlendWater } from "../blend/blend-water.ts";
import { shelfEntry } from "../blend/flour-shelf.ts";
import type { ReplacedIngredient } from "../blend/spec-product.ts";
import { doughNow } from "../blend/spec-question.ts";
import { lotMaterial, lotStated } from "../blend/spec-substitute.ts";
import type { Substitution } from "../blend/substitute.ts";
import type { Weighed } from "../chemistry/carried.ts";
import { type Figure, shown } from "../figure/figure.ts";
import { answer, type Outcome, type Path, type Problem, pathText, problem, refuse } from "../figure/problem.ts";
import { nearestMaterials } from "../materials/catalogue.ts";
import { assumedMoisture } from "../materials/doubt.ts";
import { writtenFigures } from "../materials/fields.ts";
import { plainName } from "../materials/nearest.ts";
import { type Decimal, type DecimalText, dec, decimalText, HUNDRED, ONE, sum } from "../number/decimal.ts";
import type { BlendFragment } from "../report/blend-blocks.ts";
import type { Lot } from "../spec/blend-schema.ts";
import type { Spec } from "../spec/spec.ts";
import type { Noodle } from "./noodle.ts";

/**
 * A change to what a spec says: a value at a key, or at the end of a list; without a value, what stands there goes. Of
 * several, each is made in what the one before left.
 */
export interface SpecChange {
  readonly path: Path;
  readonly value?: unknown;
  /** The value goes in before the entry of a list that stands there. */
  readonly before?: true;
}

/**
 * The changes that make the new lot of a spec the flour that is in use: its figures beside the name, and the blend and the
 * water for it.
 */
export function lotChanges(noodle: Noodle, { rows }: Substitution): readonly SpecChange[] {
  const [row] = rows;
  const { lot, flours } = noodle.spec;
  if (row === undefined || lot === undefined) return [];
  const flour = flourOf(noodle.spec, lot);
  const place = ["flours", flour === undefined ? -1 : flours.indexOf(flour), "figures"];
  const [before, after] = [writtenFigures(flour?.figures ?? {}), lotFigures(noodle, lot)];
  const figures =
    flour?.figures === undefined
      ? [{ path: place, value: after }]
      : [...new Set([...Object.keys(after), ...Object.keys(before)])]
          .filter((key) => JSON.stringify(before[key]) !== JSON.stringify(after[key]))
          .map((key): SpecChange => ({ path: [...place, key], ...(key in after && { value: after[key] }) }));
  return [...figures, ...blendChanges(noodle, row.blend, row.water)];
}

/**
 * The changes that put another ingredient in the place of one that is missing, and the tap water for it where the spec states
 * that.
 */
export function ingredientChanges(
  noodle: Noodle,
  { old, by, amount, tapChange }: ReplacedIngredient,
): readonly SpecChange[] {
  return inPlace(noodle, old.path, [{ name: by, parts: dec(amount.value) }], dec(tapChange.value));
}

/** An alkaline product of a noodle, on the flour of its spec, and where the spec has it. */
export interface StandingDose {
  readonly path: Path;
  readonly product: Weighed & { readonly mass: DecimalText };
  /** Water and salt that the dough has beside it, g. */
  readonly doughWater: DecimalText;
  readonly doughSalt: DecimalText;
  /** Flour that all this is on, g, where the spec writes it as weights; else it is on 100 g. */
  readonly flour?: DecimalText;
}

/** A standing dose and what its conversion changes in the spec of its noodle; or what stands in the way. */
export type StandingDoseAnswer =
  | {
      readonly ok: true;
      readonly value: StandingDose;
      /**
       * The changes that put other products, by name, in the place of the old one, and the tap water for them where the spec
       * states that.
       *
       * @param swapped - for the dose on 100 g of flour
       */
      readonly changes: (names: readonly string[], swapped: Swapped) => readonly SpecChange[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What products other than the standing one come to, g, and how much less water has to be added for them. */
export interface Swapped {
  readonly amounts: readonly Pick<Figure, "value">[];
  readonly waterOff: Pick<Figure, "value">;
}

/**
 * The dose of an alkaline product as the spec states it, to be converted. One that the spec itself replaces is none.
 *
 * @param name - of the product, or its place, such as `alkali[1]`, where several lines have one name
 * Problems: `convert.not-there`, `convert.several`.
 * @example standingDose(example("school-noodle"), "sodium carbonate").value.product.mass // => "0.6"
 * @example standingDose(example("school-noodle"), "sodium carbonate").changes(["washing soda"], { amounts: [{ value: "1.619" }], waterOff: { value: "1.02" } })[0].value // => "washing soda"
 */
export function standingDose(noodle: Noodle, name: string): StandingDoseAnswer {
  const dose = doseThere(noodle, name);
  if (!dose.ok) return dose;
  const { value } = dose;
  return {
    ok: true,
    value,
    changes: (names, { amounts, waterOff }) => {
      const onHundred = (amount: DecimalText): Decimal =>
        dec(amount)
          .times(100)
          .div(value.flour ?? 100);
      const fresh = names.map((called, index) => ({ name: called, parts: onHundred(amounts[index]?.value ?? "0") }));
      const taken = fresh.filter(({ parts }) => !parts.isZero());
      return inPlace(noodle, value.path, taken, onHundred(waterOff.value).negated());
    },
  };
}

function doseThere({ spec, formula }: Noodle, name: string): Outcome<StandingDose> {
  const lines = formula.lines.filter(
    ({ role, path }) => role === "alkali" && spec.alkali?.[Number(path[1])]?.replaceWith === undefined,
  );
  const named = lines.filter((one) => plainName(one.name) === plainName(name) || pathText(one.path) === name.trim());
  const [line, another] = named;
  if (another !== undefined) {
    const places = named.map(({ path, parts }) => `${pathText(path)} (${shown(parts)})`);
    return refuse(problem("convert.several", ["from"], { name, places }));
  }
  const composition = line?.material.composition;
  if (line === undefined || composition === undefined) {
    const names = lines.map((one) => one.name);
    return refuse(problem("convert.not-there", ["from"], { name, names, nearest: nearestMaterials(name, names, 1) }));
  }
  const flour = massesOf(spec);
  const onFlour = (parts: DecimalText): DecimalText =>
    flour.isZero() ? parts : decimalText(dec(parts).times(flour).div(100));
  return answer({
    path: line.path,
    product: { name: line.name, composition, mass: onFlour(line.parts.value) },
    doughWater: onFlour(formula.water.added.value),
    doughSalt: onFlour(formula.salt.value),
    ...(!flour.isZero() && { flour: decimalText(flour) }),
  });
}

/** Places of the amounts that the spec left to be found. */
export function foundPaths({ settled }: Noodle): readonly Path[] {
  return settled?.found.map(({ path }) => path) ?? [];
}

/** An amount in % of flour as the spec writes its amounts: in g where its flours are in g. */
function amountIn({ spec, formula }: Noodle, parts: Decimal): string {
  return written(spec, parts.div(formula.referenceFactor?.value ?? 1), fewDigits);
}

/** A share of the flour that the spec states, as it writes its amounts. */
function written(spec: Spec, percent: Decimal, digits = 28): string {
  const masses = massesOf(spec);
  const amount = masses.isZero() ? percent : percent.times(masses).div(100);
  return `${decimalText(amount.toSignificantDigits(digits))} ${masses.isZero() ? "%" : "g"}`;
}

/** All flour that a spec states in g. */
function massesOf({ flours }: Spec): Decimal {
  return sum(
    flours.flatMap(({ amount }) => (amount !== "rest" && amount.dimension === "mass" ? [dec(amount.value)] : [])),
  );
}

/** Digits of an amount that was worked out: off by at most 0.05 % of it, less than a scale is. */
const fewDigits = 4;
/** Digits of an amount of water, so that the hundredth of a per cent of flour that it is told to stays. */
const waterDigits = 6;

/**
 * The changes that put a blend that was found into a spec: its flours at their shares, those from the shelf with their figures,
 * and the water that follows; what is missing, or has no share any more, goes. None where no blend was found.
 */
export function blendChanges(
  noodle: Noodle,
  blend: FoundBlend | undefined,
  water: BlendWater | undefined,
  missing = "",
): readonly SpecChange[] {
  if (blend === undefined) return [];
  const { shares } = blend;
  const { spec, formula } = noodle;
  const { flours } = spec;
  const moved: SpecChange[] = [];
  const taken: SpecChange[] = [];
  const found = foundPaths(noodle).map(pathText);
  for (const [index, { name }] of flours.entries()) {
    const path: Path = ["flours", index, "amount"];
    const share = shares.find((one) => one.name === name)?.share.value ?? "0";
    const before = formula.lines.find(({ path }) => path[0] === "flours" && path[1] === index)?.parts.value ?? "0";
    const isGone = dec(share).isZero() && (!dec(before).isZero() || plainName(name) === plainName(missing));
    // the last first, so that the places of the others hold
    if (isGone) taken.unshift({ path: ["flours", index] });
    else if (!dec(before).eq(share) || found.includes(pathText(path)))
      moved.push({ path, value: written(spec, dec(share)) });
  }
  const fresh = shares.filter(({ name }) => !flours.some((flour) => flour.name === name));
  const added = fresh.map(({ name, share }, index): SpecChange => {
    const figures = shelfEntry(spec, name)?.figures;
    const entry = { name, amount: written(spec, dec(share.value)) };
    return {
      path: ["flours", flours.length + index],
      value: { ...entry, ...(figures && { figures: writtenFigures(figures) }) },
    };
  });
  return [...moved, ...added, ...blendWaterChanges(noodle, blend, water), ...taken];
}

function blendWaterChanges(
  noodle: Noodle,
  { figures }: FoundBlend,
  blendWater: BlendWater | undefined,
): readonly SpecChange[] {
  if (blendWater === undefined) return [];
  const { added, before } = blendWater;
  const { referenceFactor, water } = noodle.formula;
  const dry = (moisture: string): Decimal => HUNDRED.minus(moisture);
  const now = figures.find(({ id }) => id.endsWith("blend.moisture"))?.value ?? water.flour.value;
  const drier = referenceFactor && dry(now).div(dry(water.flour.value));
  return waterChanges(noodle, dec(added.value).minus(before.value), ["added", "tap"], drier);
}

/** The flours of a blend, that of a new lot with its figures, and the water where it changes, as they are written into the spec. */
export function blendFragment(
  noodle: Noodle,
  blend: FoundBlend,
  water: BlendWater | undefined,
  lot?: Lot,
): BlendFragment {
  const { spec } = noodle;
  const [change] = blendWaterChanges(noodle, blend, water);
  return {
    flours: blend.shares.map(({ name, share }) => ({
      name,
      amount: written(spec, dec(share.value)),
      ...(lot && plainName(lot.of) === plainName(name) && { figures: lotFigures(noodle, lot) }),
    })),
    ...(change && { water: { [String(change.path[1])]: change.value } }),
  };
}

/**
 * Entries in the place of one, whose own words stay where they can, and more or less tap water where the spec states that.
 * What the list has already becomes more there, so that nothing stands twice.
 */
function inPlace(
  noodle: Noodle,
  [list = "", index = 0]: Path,
  fresh: readonly { readonly name: string; readonly parts: Decimal }[],
  moreTap: Decimal,
): readonly SpecChange[] {
  const { spec, formula } = noodle;
  const entries: readonly { readonly name: string; readonly replaceWith?: unknown }[] =
    (list === "alkali" ? spec.alkali : spec.ingredients) ?? [];
  const more: SpecChange[] = [];
  const left = fresh.filter(({ name, parts }) => {
    const at = entries.findIndex(
      (entry, one) => one !== index && entry.replaceWith === undefined && plainName(entry.name) === plainName(name),
    );
    const there = formula.lines.find(({ path }) => path[0] === list && path[1] === at)?.parts.value;
    if (there === undefined) return true;
    more.push({ path: [list, at, "amount"], value: amountIn(noodle, parts.plus(there)) });
    return false;
  });
  const [first, ...others] = left.map(({ name, parts }) => ({ name, amount: amountIn(noodle, parts) }));
  const { name = "", amount } = first ?? {};
  const own = Object.keys(entries[Number(index)] ?? {}).filter((key) => key !== "name" && key !== "amount");
  const place = [list, index];
  const instead: readonly SpecChange[] =
    first === undefined
      ? [{ path: place }]
      : [
          { path: [...place, "name"], value: name },
          { path: [...place, "amount"], value: amount },
          ...own.map((key) => ({ path: [...place, key] })),
        ];
  const added = others.map((value, at): SpecChange => {
    const next = Number(index) + 1 + at;
    return { path: [list, next], value, ...(next < entries.length + at && { before: true }) };
  });
  return [...more, ...added, ...instead, ...waterChanges(noodle, moreTap, ["tap"])];
}

/**
 * More or less water, where the spec states it in one of these ways.
 *
 * @param drier - dry matter of the flours to that before, where the water and all else are stated on flour of a moisture
 */
function waterChanges(
  noodle: Noodle,
  more: Decimal,
  ways: readonly ("added" | "tap")[],
  drier: Decimal = ONE,
): readonly SpecChange[] {
  const { spec, formula } = noodle;
  const way = ways.find((one) => spec.water[one] !== undefined);
  const stated = way && spec.water[way];
  if (way === undefined || stated === undefined) return [];
  const found = foundPaths(noodle);
  const isFound = found.some(([key]) => key === "water");
  // what was found for what is wanted is found again
  if (isFound && doughNow(spec, formula, found).held !== undefined) return [];
  const masses = massesOf(spec);
  const percent = stated.dimension === "mass" ? dec(stated.value).times(100).div(masses) : dec(stated.value);
  const before = dec(formula.referenceFactor?.value ?? 1);
  const after = before.times(drier);
  const onFlour = (factor: Decimal): Decimal => percent.plus(100).times(factor).minus(100);
  const told = ways.includes("added") ? dec(formula.water.added.value) : onFlour(before);
  // what other ingredients bring
  const beside = told.minus(onFlour(before)).times(drier);
  const now = told.plus(more).toDecimalPlaces(2);
  if (!isFound && now.eq(onFlour(after).plus(beside).toDecimalPlaces(2))) return [];
  const percentNow = now.minus(beside).plus(100).div(after).minus(100);
  return [{ path: ["water", way], value: written(spec, percentNow, waterDigits) }];
}

/** Figures that belong together: where one of a row is stated anew, those of the old lot in that row no longer hold. */
const together = [
  ["protein", "label", "proteinBasis", "proteinUncertainty", "nitrogenFactor"],
  ["ash", "ashBasis", "ashUncertainty"],
  ["moisture", "moistureUncertainty"],
  ["absorption", "absorptionUncertainty"],
] as const;

/**
 * The figures that stand beside a flour once its new lot is in use: those of the certificate, and of the old ones those that
 * still hold. What they say as is, at the old moisture, is said so that it holds at the new one.
 */
function lotFigures({ spec, kitchen }: Noodle, lot: Lot): Readonly<Record<string, unknown>> {
  const name = flourOf(spec, lot)?.name ?? lot.of;
  const { figures } = lotStated(spec, name, lot.figures, kitchen.materials);
  const fresh = writtenFigures(figures);
  const old = flourOf(spec, lot)?.figures;
  const [material, before] = [[figures, old], [old]].map((layers) =>
    lotMaterial(spec, name, layers, kitchen.materials),
  );
  if (old === undefined || !material?.ok || !before?.ok) return fresh;
  const stale = ["source", ...together.filter((row) => row.some((key) => key in fresh)).flat()];
  const kept = Object.fromEntries(Object.entries(writtenFigures(old)).filter(([key]) => !stale.includes(key)));
  const { moisture, by, absorption } = { ...before.value, absorption: material.value.absorption };
  if (!("moisture" in fresh) || by?.moisture === assumedMoisture.by) return { ...kept, ...fresh };
  const at = (key: string) => kept[key] === "as is" && { [key]: `${moisture} % mb` };
  const few = (value: string) => `${decimalText(dec(value).toSignificantDigits(fewDigits))} %`;
  return {
    ...kept,
    ...at("proteinBasis"),
    ...at("ashBasis"),
    ...("absorption" in kept && absorption && { absorption: few(absorption.percent) }),
    ...fresh,
  };
}

function flourOf({ flours }: Spec, { of }: Lot): Spec["flours"][number] | undefined {
  return flours.find(({ name }) => plainName(name) === plainName(of));
}
