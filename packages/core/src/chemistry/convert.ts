import { type Feed, type Figure, found, renamed, worked } from "../figure/figure.ts";
import { answer, type Note, noAnswer, type Outcome, type Problem, refuse } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import { type Decimal, type DecimalInput, dec, fixedText, HUNDRED } from "../number/decimal.ts";
import { type Carried, carriedBy, cationsOf, type Product, phInWater, type Weighed } from "./carried.ts";
import { alkalinityM, alkalinityP, anhydrousShare, type Composition, pure } from "./composition.ts";
import { named } from "./named.ts";
import { whatIsNotKept } from "./not-kept.ts";

/** What a swap holds: the mass of anhydrous salts, M or P alkalinity, or the moles of sodium and potassium together. */
export type Held = "anhydrous" | "M" | "P" | "cations";

export interface Swap {
  readonly from: Weighed;
  /** One product, or a pair, which holds the ratio of sodium to potassium as well. */
  readonly to: readonly [Product] | readonly [Product, Product];
  readonly hold: Held;
  /** g of all water in the dough but the flour's own: with it, the pH of the mixing water is estimated. */
  readonly doughWater?: DecimalInput;
  /** g of sodium chloride in that water beside what the products bring; it lowers the pH. */
  readonly doughSalt?: DecimalInput;
  /** °C of that water; 25 where nothing is stated. */
  readonly temperature?: DecimalInput;
}

export interface Swapped {
  /** g of each new product, in the order asked for. */
  readonly amounts: readonly Figure[];
  readonly before: Carried;
  readonly after: Carried;
  /** g to take off the tap water so that the dough's water stays; below zero: to add. */
  readonly waterOff: Figure;
  /** How far the share of potassium is off, in mol % points; zero where the ratio is met. */
  readonly ratioOff: Figure;
}

const heldNames: Readonly<Record<Held, string>> = {
  anhydrous: "anhydrous salts",
  M: "M alkalinity",
  P: "P alkalinity",
  cations: "sodium and potassium",
};

const contentUnits: Readonly<Record<Held, string>> = { anhydrous: "g/g", M: "meq/g", P: "meq/g", cations: "mmol/g" };

/** Below this a mass is rounding, g. */
const NOTHING = dec("1e-18");

/**
 * Swaps a dose of one alkaline product for another or for a pair.
 *
 * One product holds the one thing asked for. A pair holds the ratio of sodium to potassium as well; where no amounts of
 * zero or more do that, the one product that comes nearer in ratio is taken, what is held stays exact, and a note says
 * by how much the ratio is off.
 *
 * Problems: `convert.dose`, `convert.nothing-held`, `convert.cannot-hold`.
 * @example convert({ from: { name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 10 }, to: [{ name: "crystals", composition: { species: { Na2CO3: "37" }, water: "63", inert: "0" } }], hold: "M" }).ok // => true
 */
export function convert(swap: Swap): Outcome<Swapped> {
  const problem = problemWith(swap);
  if (problem !== undefined) return refuse(problem);
  const amounts = amountsFor(swap);
  const weighed = swap.to.map((product, index): Weighed => ({ ...product, mass: amounts[index]?.value ?? "0" }));
  const before = carriedWithPh([swap.from], "before", swap);
  const after = carriedWithPh(weighed, "after", swap);
  const waterOff = worked({
    id: "convert.water-off",
    label: "to take off the tap water",
    unit: "g",
    places: 2,
    formula: "after - before",
    from: { after: then(after.carried.water, "after"), before: then(before.carried.water, "before") },
    sources: [massBalance],
  });
  const ratioOff = worked({
    id: "convert.ratio-off",
    label: "potassium share, after less before",
    unit: "mol % points",
    places: 2,
    formula: "after - before",
    from: { after: then(ratio(after.carried), "after"), before: then(ratio(before.carried), "before") },
    sources: [massBalance],
  });
  const result = { amounts, before: before.carried, after: after.carried, waterOff, ratioOff };
  const notes = [...before.notes, ...after.notes].filter(
    (note, index, all) => all.findIndex(({ text }) => text === note.text) === index,
  );
  return answer(result, [...ratioNote(swap, ratioOff), ...whatIsNotKept(result.before, result.after), ...notes]);
}

function ratio(carried: Carried): Figure {
  return carried.potassiumRatio ?? named("potassium of sodium and potassium", "mol %", 0, "no sodium, no potassium");
}

function then(figure: Figure, when: string): Figure {
  return renamed(figure, figure.id, `${figure.label} ${when}`);
}

/** What one gram of a product brings of the thing that is held. */
function contentOf(composition: Composition, held: Held): Decimal {
  switch (held) {
    case "anhydrous":
      return anhydrousShare(composition).div(HUNDRED);
    case "M":
      return alkalinityM(composition);
    case "P":
      return alkalinityP(composition);
    case "cations": {
      const { sodium, potassium } = cationsOf(composition);
      return sodium.plus(potassium);
    }
  }
}

function problemWith({ from, to, hold }: Swap): Problem | undefined {
  const what = heldNames[hold];
  if (dec(from.mass).lte(0)) {
    return noAnswer(
      "convert.dose",
      [],
      `a dose of ${dec(from.mass).toString()} g`,
      "a dose above 0",
      "state the dose to swap",
    );
  }
  if (contentOf(from.composition, hold).lte(0)) {
    return noAnswer(
      "convert.nothing-held",
      [],
      `${from.name} without ${what}`,
      `a product with ${what}`,
      hold === "P" ? "bicarbonates have no P alkalinity: hold M instead" : "hold something else",
    );
  }
  if (to.some(({ composition }) => contentOf(composition, hold).gt(0))) return undefined;
  return noAnswer(
    "convert.cannot-hold",
    [],
    `${to.map(({ name }) => name).join(" and ")} without ${what}`,
    `a product with ${what}`,
    hold === "P" ? "bicarbonates have no P alkalinity: hold M instead" : "take another product",
  );
}

function amountsFor(swap: Swap): readonly Figure[] {
  const { from, to, hold } = swap;
  const dose = named(`dose of ${from.name}`, "g", from.mass, "the question");
  const per = (product: Product): Feed => contentFigure(product, hold);
  const [first, second] = to;
  const alone = (product: Product): Figure =>
    amount(product, "dose * old / new", { dose, old: per(from), new: per(product) });
  if (second === undefined) return [alone(first)];
  const [pull, counter] = [pullOf(first, from), pullOf(second, from)];
  const [one, other] = [contentOf(first.composition, hold), contentOf(second.composition, hold)];
  const whole = one.times(counter).minus(other.times(pull));
  if (whole.abs().gt(NOTHING)) {
    const feed = {
      dose,
      old: per(from),
      one: per(first),
      other: per(second),
      pull: pullFigure(first, pull),
      counter: pullFigure(second, counter),
    };
    const both = [
      amount(first, "dose * old * counter / (one * counter - other * pull)", feed),
      amount(second, "0 - dose * old * pull / (one * counter - other * pull)", feed),
    ] as const;
    if (both.every(({ value }) => dec(value).gt(NOTHING.negated()))) return both.map(withoutRounding);
  }
  const nearer = nearerInRatio(first, second, swap);
  return [first, second].map((product) => (product === nearer ? alone(product) : nothingOf(product)));
}

/** Potassium above what the ratio of the old product asks for, mmol per g: amounts are right when these cancel. */
function pullOf(product: Product, from: Product): Decimal {
  const old = cationsOf(from.composition);
  const { sodium, potassium } = cationsOf(product.composition);
  return potassium.times(old.sodium).minus(sodium.times(old.potassium)).div(old.sodium.plus(old.potassium));
}

function pullFigure(product: Product, pull: Decimal): Figure {
  return named(
    `potassium above the old ratio in 1 g of ${product.name}`,
    "mmol/g",
    pull,
    "the composition",
    massBalance,
  );
}

function nearerInRatio(first: Product, second: Product, { from, hold }: Swap): Product {
  const usable = [first, second].filter(({ composition }) => contentOf(composition, hold).gt(0));
  const share = (product: Product): Decimal => {
    const { sodium, potassium } = cationsOf(product.composition);
    return potassium.div(sodium.plus(potassium));
  };
  const off = (product: Product): Decimal => share(product).minus(share(from)).abs();
  return usable.reduce((best, product) => (off(product).lt(off(best)) ? product : best), usable[0] ?? first);
}

function contentFigure(product: Product, hold: Held): Figure {
  return found({
    id: `convert.content.${product.name}`,
    label: `${heldNames[hold]} in 1 g of ${product.name}`,
    unit: contentUnits[hold],
    places: 4,
    value: contentOf(product.composition, hold),
    by: "the composition",
    sources: [massBalance],
  });
}

function amount(product: Product, formula: string, from: Readonly<Record<string, Feed>>): Figure {
  return worked({
    id: `convert.amount.${product.name}`,
    label: product.name,
    unit: "g",
    places: 2,
    formula,
    from,
    sources: [massBalance],
  });
}

function nothingOf(product: Product): Figure {
  return found({
    id: `convert.amount.${product.name}`,
    label: product.name,
    unit: "g",
    places: 2,
    value: 0,
    by: "the other product alone comes nearest in ratio",
    sources: [massBalance],
  });
}

function withoutRounding(figure: Figure): Figure {
  return dec(figure.value).abs().lt(NOTHING) ? { ...figure, value: "0" } : figure;
}

function carriedWithPh(
  products: readonly Weighed[],
  when: string,
  { doughWater, doughSalt, temperature }: Swap,
): { readonly carried: Carried; readonly notes: readonly Note[] } {
  if (doughWater === undefined) return { carried: carriedBy(products, when), notes: [] };
  const salt: Weighed = { name: "salt", composition: pure("NaCl"), mass: doughSalt ?? 0 };
  const ph = phInWater([...products, salt], doughWater, temperature ?? 25);
  if (ph.ok) return { carried: carriedBy(products, when, ph.value), notes: ph.notes };
  const text = ph.problems
    .map(({ found: what, expected }) => `no pH is estimated: found ${what}, expected ${expected}`)
    .join("; ");
  return { carried: carriedBy(products, when), notes: [{ code: "convert.no-ph", path: [], text }] };
}

function ratioNote({ to, hold }: Swap, ratioOff: Figure): readonly Note[] {
  const off = dec(ratioOff.value);
  if (off.abs().lt("1e-9")) return [];
  const way = off.gt(0) ? "more" : "less";
  const products = to.map(({ name }) => name).join(" and ");
  return [
    {
      code: "convert.ratio-not-met",
      path: [],
      text: `with ${products} the ${heldNames[hold]} is held, the ratio of sodium to potassium is not: ${fixedText(off.abs(), 2)} mol % points ${way} potassium than before`,
    },
  ];
}
