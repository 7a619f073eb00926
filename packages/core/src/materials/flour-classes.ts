import { type Decimal, type DecimalText, dec, decimalText, ZERO } from "../number/decimal.ts";
import { type FlourClass, flourClassList, type Grain, type Span } from "./flour-class-list.ts";
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

/** A value that a class limits. */
interface LimitFit {
  readonly what: "ash" | "protein" | "moisture";
  /** On the basis and the factor of the class, %; a range where the nitrogen factor is unknown, nothing where the flour does not state it. */
  readonly value?: { readonly low: DecimalText; readonly high: DecimalText };
  readonly within: boolean;
}

/** A class, and what of the flour it limits. */
export interface ClassFit {
  readonly flourClass: FlourClass;
  readonly limits: readonly LimitFit[];
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

/**
 * The classes that a flour falls in with all that they limit; none where its ash or protein is not stated.
 *
 * @example classesIn({ grain: "wheat", moisture: "12.51", ash: "0.39" })[0]?.flourClass.type // => "405"
 */
export function classesIn(flour: ClassedFlour): readonly ClassFit[] {
  return flourClassList
    .filter(({ grain, wholegrain = false }) => grain === flour.grain && (!wholegrain || flour.wholegrain !== false))
    .map((flourClass) => ({ flourClass, limits: limitsOf(flour, flourClass) }))
    .filter(({ limits }) => limits.every(({ within }) => within) && limits.some(({ what }) => what !== "moisture"));
}

/** A flour held against what a class limits. */
export function limitsOf(flour: ClassedFlour, flourClass: FlourClass): readonly LimitFit[] {
  const { ash, ashByProtein, ashPlaces, protein, moistureMost } = flourClass;
  const onBasis = (value: DecimalText): Decimal =>
    flourClass.basis === "dry" ? onMoisture(dec(value), flour.moisture, 0) : dec(value);
  const ownAsh = flour.ash === undefined ? [] : [onBasis(flour.ash)];
  const ownProtein = flour.protein === undefined ? [] : [onBasis(flour.protein.value)];
  const byProtein = ashByProtein && ownProtein.map((one) => one.times(ashByProtein.perProtein).plus(ashByProtein.base));
  const ashLimit = ash ?? (byProtein && { high: decimalText(byProtein[0] ?? ZERO) });
  const own = flour.protein?.nitrogenFactor;
  const factors = own === undefined ? [labelFactor, flourFactor] : [own, own];
  const onFactors = ownProtein.flatMap((one) =>
    factors.map((factor) => onFactor(one, dec(factor), dec(flourClass.nitrogenFactor ?? factor))),
  );
  const rounded = ashPlaces === undefined ? ownAsh : ownAsh.map((one) => one.toDecimalPlaces(ashPlaces));
  return [
    ...(ashLimit ? [held("ash", byProtein?.length === 0 ? [] : rounded, ashLimit)] : []),
    ...(protein ? [held("protein", onFactors, protein)] : []),
    ...(moistureMost === undefined ? [] : [held("moisture", [dec(flour.moisture)], { high: moistureMost })]),
  ];
}

function held(what: LimitFit["what"], [low, high = low]: readonly Decimal[], limit: Span): LimitFit {
  if (low === undefined || high === undefined) return { what, within: false };
  const within = low.gte(limit.low ?? low) && high.lte(limit.high ?? high);
  return { what, value: { low: decimalText(low), high: decimalText(high) }, within };
}
