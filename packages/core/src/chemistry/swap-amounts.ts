import { exact, type Feed, type Figure, found, given, worked } from "../figure/figure.ts";
import { definition, massBalance } from "../figure/source.ts";
import { type Decimal, type DecimalInput, type DecimalText, dec } from "../number/decimal.ts";
import { cationsOf, type Product, type Weighed } from "./carried.ts";
import { isChloride, sharesOf } from "./composition.ts";
import { grams, percent } from "./named.ts";
import { perGram, type SaltShare } from "./salt-content.ts";
import type { SpeciesName } from "./species.ts";

/** What a swap holds: the mass of anhydrous salts, alkalinity M or P, or the moles of sodium and potassium together. */
export type Held = "anhydrous" | "M" | "P" | "cations";

/** A dose, what takes its place, and what stays the same. */
export interface Swap {
  readonly from: Weighed;
  /** One product, or a pair, which holds both alkalinities where it can, or else the ratio of sodium to potassium as well. */
  readonly to: readonly [Product] | readonly [Product, Product];
  readonly hold: Held;
  /** Flour that the dose is for, g, where it is known. */
  readonly flour?: DecimalText | undefined;
  /** g of all water in the dough but the flour's own: with it, the pH of the mixing water is estimated. */
  readonly doughWater?: DecimalInput;
  /** g of sodium chloride in that water beside what the products bring; it lowers the pH. */
  readonly doughSalt?: DecimalInput;
  /** °C of that water; 25 where nothing is stated. */
  readonly temperature?: DecimalInput;
}

/** A product by what its figures bear: its place among the new ones, from 1, or `old`. */
type Keyed = Product & { readonly key: string };

export const heldNames: Readonly<Record<Held, string>> = {
  anhydrous: "anhydrous salts",
  M: "alkalinity M",
  P: "alkalinity P",
  cations: "sodium and potassium",
};

const contentUnits: Readonly<Record<Held, string>> = { anhydrous: "g/g", M: "meq/g", P: "meq/g", cations: "mmol/g" };

/** Below this a mass is rounding, g. */
const NOTHING = dec("1e-18");

/** g of each new product: exact in what is held; a pair also in the other alkalinity or the ratio, where it can. @example amountsFor({ from: { name: "soda", composition: pure("Na2CO3"), mass: 10 }, to: [{ name: "soda", composition: pure("Na2CO3") }], hold: "M" })[0]?.value // => "10" */
export function amountsFor(swap: Swap): readonly Figure[] {
  const { to, hold } = swap;
  const from = { ...underOtherName(swap), key: "old" };
  const dose = doseOf(swap.from);
  const per = (product: Keyed): Feed => contentFigure(product, hold);
  const [first, second] = [{ ...to[0], key: "1" }, to[1] && { ...to[1], key: "2" }];
  const alone = (product: Keyed): Figure =>
    amount(product, "dose * old / new", { dose, old: per(from), new: per(product) });
  if (second === undefined) return [alone(first)];
  const [one, other] = [contentOf(first, hold), contentOf(second, hold)];
  for (const { old, of } of secondConditions(from, hold)) {
    const [pull, counter] = [of(first), of(second)];
    const whole = one.times(counter.value).minus(other.times(pull.value));
    if (whole.abs().lte(NOTHING)) continue;
    const feed = { dose, old: per(from), one: per(first), other: per(second), pull, counter };
    const more = old === undefined ? feed : { ...feed, more: old };
    const [plus, minus] = old === undefined ? ["", "0 - "] : [" - other * more", "one * more - "];
    const both = [
      amount(first, `dose * (old * counter${plus}) / (one * counter - other * pull)`, more),
      amount(second, `dose * (${minus}old * pull) / (one * counter - other * pull)`, more),
    ] as const;
    if (both.every(({ value }) => dec(value).gt(NOTHING.negated()))) return both.map(withoutRounding);
  }
  const nearer = nearerInRatio(first, second, swap);
  return [first, second].map((product) => (product === nearer ? alone(product) : nothingOf(product)));
}

/** What a pair can hold beside what is asked for: so much of it in a gram of a product, and of the old one where it is not nothing. */
interface SecondCondition {
  readonly old?: Figure;
  readonly of: (product: Keyed) => Figure;
}

/** The other alkalinity first, for it makes the dough; then the ratio of sodium to potassium. */
function secondConditions(from: Keyed, hold: Held): readonly SecondCondition[] {
  const others: Readonly<Partial<Record<Held, Held>>> = { M: "P", P: "M" };
  const other = others[hold];
  const ratio: SecondCondition = { of: (product) => pullFigure(product, from) };
  if (other === undefined) return [ratio];
  return [{ old: contentFigure(from, other), of: (product) => contentFigure(product, other) }, ratio];
}

/** The old product, under another name where a new one has its name but not its make-up. */
function underOtherName({ from, to }: Swap): Weighed {
  return to.some(({ name }) => name === from.name) ? { ...from, name: `the old ${from.name}` } : from;
}

/** Potassium above what the ratio of the old product asks for: amounts are right when these cancel. */
function pullFigure(product: Keyed, from: Keyed): Figure {
  const label = `potassium above the old ratio in 1 g of ${product.name}`;
  const naming = { id: `convert.pull.${product.key}`, label, unit: "mmol/g", places: 4 };
  const feeds = {
    sodium: cationFigure(product, "sodium"),
    potassium: cationFigure(product, "potassium"),
    oldSodium: cationFigure(from, "sodium"),
    oldPotassium: cationFigure(from, "potassium"),
  };
  const formula = "(potassium * oldSodium - sodium * oldPotassium) / (oldSodium + oldPotassium)";
  return worked(naming, formula, feeds, massBalance);
}

/** Sodium or potassium of the alkaline salts of a product. */
function cationFigure(product: Keyed, what: "sodium" | "potassium"): Figure {
  const label = `${what} of the alkaline salts in 1 g of ${product.name}`;
  const naming = { id: `convert.${what}.${product.key}`, label, unit: "mmol/g", places: 4 };
  return perGram(naming, what, saltsOf(product), massBalance);
}

/** The salts of a product as figures. */
export function saltsOf({ composition, key, name, salts }: Keyed): readonly SaltShare[] {
  const own = ([salt, share]: readonly [SpeciesName, Decimal]): SaltShare => {
    return [
      salt,
      given(percent(`convert.salt.${key}.${salt}`, `${salt} in ${name}`), share, "the composition", massBalance),
    ];
  };
  return salts ?? sharesOf(composition).map(own);
}

function nearerInRatio(first: Keyed, second: Keyed, { from, hold }: Swap): Keyed {
  const usable = [first, second].filter((product) => contentOf(product, hold).gt(0));
  const share = (product: Product): Decimal => {
    const { sodium, potassium } = cationsOf(product.composition);
    return potassium.div(sodium.plus(potassium));
  };
  const off = (product: Product): Decimal => share(product).minus(share(from)).abs();
  return usable.reduce((best, product) => (off(product).lt(off(best)) ? product : best), usable[0] ?? first);
}

function contentFigure(product: Keyed, hold: Held): Figure {
  const naming = {
    id: `convert.content.${hold.toLowerCase()}.${product.key}`,
    label: `${heldNames[hold]} in 1 g of ${product.name}`,
    unit: contentUnits[hold],
    places: 4,
  };
  const salts = saltsOf(product);
  if (hold === "M" || hold === "P") return perGram(naming, `equivalents${hold}`, salts, massBalance);
  if (hold === "cations") {
    const [sodium, potassium] = [cationFigure(product, "sodium"), cationFigure(product, "potassium")];
    return worked(naming, "sodium + potassium", { sodium, potassium }, massBalance);
  }
  const shares = salts.flatMap(([salt, share]) => (isChloride(salt) ? [] : [share]));
  return worked(naming, "sum(shares) / 100", { shares }, massBalance);
}

function amount(product: Keyed, formula: string, from: Readonly<Record<string, Feed>>): Figure {
  return worked(grams(`convert.amount.${product.key}`, product.name), formula, from, massBalance);
}

function nothingOf(product: Keyed): Figure {
  const naming = grams(`convert.amount.${product.key}`, product.name);
  return found(naming, 0, "the other product alone comes nearest in ratio", undefined, massBalance);
}

function withoutRounding(figure: Figure): Figure {
  return dec(figure.value).abs().lt(NOTHING) ? { ...figure, value: "0" } : figure;
}

/** What one gram of a product brings of the thing that is held. @example contentOf({ name: "potash", composition: pure("K2CO3") }, "anhydrous").toString() // => "1" */
export function contentOf(product: Product, held: Held): Decimal {
  return exact(contentFigure({ ...product, key: "" }, held));
}

/** The dose that is replaced, g. */
export function doseOf({ name, mass }: Weighed): Figure {
  return given(grams("convert.dose", name), mass, "the dose asked for", definition);
}

/** The dose and what takes its place, on the flour that it is for. */
export function sharesOfFlour(masses: readonly Figure[], flour: DecimalText): readonly Figure[] {
  const weight = { id: "convert.flour", label: "flour", unit: "g", places: 0 };
  const flourFigure = given(weight, flour, "the flour the dose is for", definition);
  return masses.map((mass, index) => {
    const naming = { id: `convert.share.${index}`, label: `${mass.label}, on flour`, unit: "% of flour", places: 3 };
    return worked(naming, "100 * mass / flour", { mass, flour: flourFigure }, definition);
  });
}
