import { type Decimal, type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { type FlourClass, flourClassList, type Grain, type Limit, type Span } from "./flour-class-list.ts";
import type { Material, Protein } from "./material.ts";
import { onMoisture } from "./moisture.ts";
import { flourFactor, labelFactor, onFactor } from "./nitrogen.ts";

/** A flour as a table or a certificate describes it, % as is. */
interface ClassedFlour {
  readonly grain: Grain;
  /** Left out, both whole and sifted flours are compared. */
  readonly wholegrain?: boolean;
  /** From 0 to below 100. */
  readonly moisture: DecimalText;
  readonly ash?: DecimalText;
  readonly protein?: Protein;
}

/** How one measured value stands to the limit of a class. */
interface LimitFit {
  readonly what: "ash" | "protein" | "moisture";
  /** The value on the basis and the factor of the class; a range where the nitrogen factor is unknown, %. */
  readonly value: { readonly low: DecimalText; readonly high: DecimalText };
  readonly limit: Span;
  /** `some` when only some of the sources, or only some of the possible values, are within. */
  readonly within: "all" | "some" | "none";
}

/** How a flour stands to a class. */
export interface ClassFit {
  readonly flourClass: FlourClass;
  /** The worst of its limits; `unknown` when none of them could be compared. */
  readonly within: "all" | "some" | "none" | "unknown";
  readonly limits: readonly LimitFit[];
  /** What the class also limits and the flour does not state. */
  readonly missing: readonly LimitFit["what"][];
}

/**
 * How a flour stands to each class of its grain. Bands overlap and sources disagree, so that there is never one answer:
 * every class is listed with how well it fits, the best first.
 *
 * @param flour - % as is
 * @example flourClasses({ grain: "wheat", moisture: "12.51", ash: "0.39" })[0]?.flourClass.type // => "405"
 */
export function flourClasses(flour: ClassedFlour): readonly ClassFit[] {
  const order = ["all", "some", "unknown", "none"];
  return flourClassList
    .filter(({ grain, wholegrain = false }) => grain === flour.grain && (!wholegrain || flour.wholegrain !== false))
    .map((flourClass) => fitOf(flour, flourClass))
    .toSorted((a, b) => order.indexOf(a.within) - order.indexOf(b.within));
}

/** Other wheats, which no class here is for, are told by their names. */
const grainsByName: readonly (readonly [RegExp, Grain | undefined])[] = [
  [/durum|semolina/iu, "durum"],
  [/spelt/iu, "spelt"],
  [/emmer|einkorn|khorasan|kamut|triticale/iu, undefined],
];

/** What a material is ground from, where classes are known for that: by its kind, its allergens and its names. @example grainOf(findMaterial("bread flour").material) // => "wheat" */
export function grainOf(
  material: Pick<Material, "kind" | "name" | "published" | "aliases" | "allergens">,
): Grain | undefined {
  const { kind, allergens, name, published = "", aliases } = material;
  if (kind === "gluten") return allergens.includes("wheat") ? "gluten" : undefined;
  if (kind !== "flour") return undefined;
  const [only, other] = allergens;
  if (other !== undefined || (only !== "wheat" && only !== "rye")) return undefined;
  const named = grainsByName.find(([words]) => words.test([name, published, ...aliases].join(" ")));
  return named === undefined ? only : named[1];
}

/** The classes that a flour falls in with all that they limit; nothing where its ash or protein is not stated, or fits none. */
export function classesIn(flour: ClassedFlour): readonly ClassFit[] {
  return flourClasses(flour).filter(
    ({ within, limits, missing }) =>
      within === "all" && missing.length === 0 && limits.some(({ what }) => what !== "moisture"),
  );
}

function fitOf(flour: ClassedFlour, flourClass: FlourClass): ClassFit {
  const checks = [ashFit(flour, flourClass), proteinFit(flour, flourClass), moistureFit(flour, flourClass)];
  const limits = checks.filter((check): check is LimitFit => typeof check === "object");
  const missing = checks.filter((check): check is LimitFit["what"] => typeof check === "string");
  const worst = (["none", "some", "all"] as const).find((level) => limits.some(({ within }) => within === level));
  return { flourClass, within: worst ?? "unknown", limits, missing };
}

/** A fit, the name of what is missing, or nothing where the class sets no limit. */
type Check = LimitFit | LimitFit["what"] | undefined;

function ashFit(flour: ClassedFlour, flourClass: FlourClass): Check {
  const limit = flourClass.ash ?? ashLimitByProtein(flour, flourClass);
  if (limit === undefined) return undefined;
  if (flour.ash === undefined || limit === "missing") return "ash";
  const exact = onBasisOf(flourClass, flour.ash, flour.moisture);
  const value = flourClass.ashPlaces === undefined ? exact : exact.toDecimalPlaces(flourClass.ashPlaces);
  return compare("ash", value, value, limit);
}

function ashLimitByProtein(flour: ClassedFlour, flourClass: FlourClass): Limit | "missing" | undefined {
  if (flourClass.ashByProtein === undefined) return undefined;
  if (flour.protein === undefined) return "missing";
  const { base, perProtein } = flourClass.ashByProtein;
  const protein = onBasisOf(flourClass, flour.protein.value, flour.moisture);
  return { core: { high: decimalText(protein.times(perProtein).plus(base)) } };
}

function proteinFit(flour: ClassedFlour, flourClass: FlourClass): Check {
  if (flourClass.protein === undefined) return undefined;
  if (flour.protein === undefined) return "protein";
  const value = onBasisOf(flourClass, flour.protein.value, flour.moisture);
  const wanted = flourClass.nitrogenFactor;
  if (wanted === undefined) return compare("protein", value, value, flourClass.protein);
  const own = flour.protein.nitrogenFactor;
  const [low, high] = (own === undefined ? [labelFactor, flourFactor] : [own, own]).map((factor) =>
    onFactor(value, dec(factor), dec(wanted)),
  );
  return compare("protein", low ?? value, high ?? value, flourClass.protein);
}

function moistureFit(flour: ClassedFlour, { moistureMost }: FlourClass): Check {
  if (moistureMost === undefined) return undefined;
  const moisture = dec(flour.moisture);
  return compare("moisture", moisture, moisture, { core: { high: moistureMost } });
}

function onBasisOf({ basis }: FlourClass, value: DecimalText, moisture: DecimalText): Decimal {
  return basis === "dry" ? onMoisture(dec(value), moisture, 0) : dec(value);
}

function compare(what: LimitFit["what"], low: Decimal, high: Decimal, { core, wide = core }: Limit): LimitFit {
  const allIn = low.gte(core.low ?? low) && high.lte(core.high ?? high);
  const someIn = high.gte(wide.low ?? high) && low.lte(wide.high ?? low);
  const within = allIn ? "all" : someIn ? "some" : "none";
  return { what, value: { low: decimalText(low), high: decimalText(high) }, limit: wide, within };
}
