import { answer, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import {
  type Decimal,
  type DecimalInput,
  type DecimalText,
  dec,
  decimalText,
  decOf,
  HUNDRED,
  shortText,
  sum,
  ZERO,
} from "../number/decimal.ts";
import { molarMass } from "./elements.ts";
import {
  type Formula,
  type HydrateName,
  hydrates,
  isHydrate,
  type Species,
  type SpeciesName,
  species,
  speciesNames,
} from "./species.ts";

/** What a product is made of, in % of its mass. The parts add up to exactly 100. */
export interface Composition {
  readonly species: Readonly<Partial<Record<SpeciesName, DecimalText>>>;
  /** Water of crystals, moisture and solvent together. */
  readonly water: DecimalText;
  /** What takes no part: flour as a diluent, insoluble matter, impurities. */
  readonly inert: DecimalText;
}

/** Masses of the parts of something, in any one unit. */
export interface SaltParts {
  readonly species: Readonly<Partial<Record<SpeciesName, DecimalInput>>>;
  readonly water?: DecimalInput;
  readonly inert?: DecimalInput;
}

/** Places kept in a share, so that the parts add up without any rounding: 0.1 % to 27 places is well inside 40 digits. */
const PLACES = 27;

/** The species of a composition with their shares in %, zeros left out. @example sharesOf(pure("K2CO3")).length // => 1 */
export function sharesOf(composition: Composition): readonly (readonly [SpeciesName, Decimal])[] {
  const shares: (readonly [SpeciesName, Decimal])[] = [];
  for (const name of speciesNames) {
    const share = composition.species[name];
    if (share !== undefined && share !== "0") shares.push([name, dec(share)]);
  }
  return shares.filter(([, share]) => !share.isZero());
}

/** The record of a species, with all it may hold. @example speciesOf("KOH").name // => "potassium hydroxide" */
export function speciesOf(name: SpeciesName): Species {
  return species[name];
}

/**
 * The composition of what has the given masses of its parts.
 *
 * @param parts - masses in any one unit, not below zero, some of them above zero
 * @throws {RangeError} on a negative mass or none at all: outside data goes through `compositionOf`.
 * @example fromMasses({ species: { Na2CO3: 1 }, water: 3 }).species.Na2CO3 // => "25"
 */
export function fromMasses(parts: SaltParts): Composition {
  const masses = [
    ...speciesNames.map((name) => dec(parts.species[name] ?? 0)),
    dec(parts.water ?? 0),
    dec(parts.inert ?? 0),
  ];
  const total = sum(masses);
  if (masses.some((mass) => mass.isNegative() && !mass.isZero()) || total.isZero()) {
    throw new RangeError("a composition needs masses above zero");
  }
  const shares = masses.map((mass) => mass.times(HUNDRED).div(total).toDecimalPlaces(PLACES));
  const greatest = shares.reduce((best, share, index) => (share.gt(shares[best] ?? ZERO) ? index : best), 0);
  const others = sum(shares.filter((_, index) => index !== greatest));
  const texts = shares.map((share, index) => decimalText(index === greatest ? HUNDRED.minus(others) : share));
  const present = speciesNames.flatMap((name, index) => (texts[index] === "0" ? [] : [[name, texts[index]] as const]));
  return {
    species: Object.fromEntries(present),
    water: texts[speciesNames.length] ?? "0",
    inert: texts[speciesNames.length + 1] ?? "0",
  };
}

/**
 * The composition of a product from what is stated about it; what is not stated is inert.
 *
 * @param stated - % by mass of the product
 * Problems: `composition.unknown` for what is no salt of the list, `composition.negative`, `composition.over-100`.
 * @throws {RangeError} on a text that is no number
 * @example compositionOf({ species: { Na2CO3: "99" }, water: "0.6" }).value.inert // => "0.4"
 */
export function compositionOf(stated: Omit<SaltParts, "inert">): Outcome<Composition> {
  const unknown = Object.keys(stated.species).filter((name) => !speciesNames.some((one) => one === name));
  if (unknown.length > 0) {
    return refuse(...unknown.map(unknownSpecies));
  }
  const parts = Object.entries({ ...stated.species, water: stated.water ?? 0 });
  const given = parts.map(([name, share]) => decOf(name, share));
  const total = sum(given);
  if (given.some((share) => share.isNegative() && !share.isZero())) {
    return refuse(problem("composition.negative", [], {}));
  }
  if (total.gt(HUNDRED)) return refuse(problem("composition.over-100", [], { total: shortText(total, 4) }));
  return answer(fromMasses({ ...stated, inert: HUNDRED.minus(total) }));
}

/** A formula that is none of the list, with the one that it is when 0 stands for O, or in other letters. */
function unknownSpecies(name: string): Problem {
  const like = (formula: string): string => formula.toLowerCase().replaceAll("0", "o");
  const nearest = speciesNames.filter((one) => like(one) === like(name));
  return problem("composition.unknown", ["species", name], { name, names: speciesNames, nearest });
}

/**
 * A single salt of a given assay; the rest counts as inert, the loss on drying as water.
 *
 * @param assayPercent - % of the salt in the dried product, 0 to 100
 * @param lossOnDrying - % of the product as it is, 0 to 100
 * @throws {RangeError} on a share that is none
 * @example pure("Na2CO3", "99.2").inert // => "0.8"
 */
export function pure(
  formula: SpeciesName,
  assayPercent: DecimalInput = 100,
  lossOnDrying: DecimalInput = 0,
): Composition {
  const dried = HUNDRED.minus(shareOf("lossOnDrying", lossOnDrying));
  const salt = dried.times(shareOf("assayPercent", assayPercent)).div(HUNDRED);
  return fromMasses({ species: { [formula]: salt }, water: lossOnDrying, inert: dried.minus(salt) });
}

/**
 * A hydrate of a given assay; the rest counts as inert.
 *
 * @param assayPercent - % of the hydrate in the product, 0 to 100
 * @throws {RangeError} on a share that is none
 * @example hydrate("Na2CO3.10H2O").water.slice(0, 7) // => "62.9591"
 */
export function hydrate(name: HydrateName, assayPercent: DecimalInput = 100): Composition {
  const { species: moles, water, formula } = hydrates[name];
  const assay = shareOf("assayPercent", assayPercent);
  const masses = Object.entries(moles).map(
    ([part, count]) => [part, molarMass(part).times(count).times(assay)] as const,
  );
  return fromMasses({
    species: Object.fromEntries(masses),
    water: molarMass("H2O").times(water).times(assay),
    inert: molarMass(formula).times(HUNDRED.minus(assay)),
  });
}

function shareOf(name: string, input: DecimalInput): Decimal {
  const share = decOf(name, input);
  if (share.gte(0) && share.lte(HUNDRED)) return share;
  throw new RangeError(`${name}: ${share.toFixed()} is no share of 0 to 100 %`);
}

/** What a salt or hydrate is made of, as a pure product. @example ofFormula("KOH").species.KOH // => "100" */
export function ofFormula(formula: Formula): Composition {
  return isHydrate(formula) ? hydrate(formula) : pure(formula);
}

/**
 * Whether a product is sodium sesquicarbonate (trona), the double salt of carbonate and bicarbonate.
 *
 * Source: Joint FAO/WHO Expert Committee on Food Additives, specification of sodium sesquicarbonate, 28th session 1981
 * (read in a copy): NaHCO3 35.0 to 38.6 %, Na2CO3 46.4 to 50.0 %, water 13.8 to 16.7 %.
 * @example isSesquicarbonate(hydrate("Na2CO3.NaHCO3.2H2O")) // => true
 */
export function isSesquicarbonate({ species: { NaHCO3, Na2CO3 }, water }: Composition): boolean {
  const within = (share: DecimalText | undefined, least: string, most: string): boolean =>
    dec(share ?? 0).gte(least) && dec(share ?? 0).lte(most);
  return within(NaHCO3, "35.0", "38.6") && within(Na2CO3, "46.4", "50.0") && within(water, "13.8", "16.7");
}

/** A product and how much of it. */
export interface Portion {
  readonly composition: Composition;
  /** g, or any one unit */
  readonly mass: DecimalInput;
}

/**
 * What comes of bringing products together. No reaction is reckoned with.
 *
 * @param portions - masses in any one unit, zero or more, some above zero
 * @throws {RangeError} on a negative mass or none at all.
 * @example mixture([{ composition: pure("Na2CO3"), mass: 9 }, { composition: pure("K2CO3"), mass: 1 }]).species.K2CO3 // => "10"
 */
export function mixture(portions: readonly Portion[]): Composition {
  const total = (share: (composition: Composition) => DecimalInput): Decimal =>
    sum(portions.map((portion) => dec(portion.mass).times(share(portion.composition))));
  return fromMasses({
    species: Object.fromEntries(speciesNames.map((name) => [name, total((c) => c.species[name] ?? 0)])),
    water: total((c) => c.water),
    inert: total((c) => c.inert),
  });
}

/**
 * A product thinned with water to a strength.
 *
 * @param massPercent - % by mass of anhydrous alkaline salts, above 0
 * Problems: `solution.too-strong` when the product itself is weaker than that.
 * @example solutionOf(pure("K2CO3"), 40) // => { ok: true, value: { species: { K2CO3: "40" }, water: "60", inert: "0" }, notes: [] }
 */
export function solutionOf(composition: Composition, massPercent: DecimalInput): Outcome<Composition> {
  const strength = dec(massPercent);
  const own = anhydrousShare(composition);
  if (strength.lte(0) || strength.gt(own)) {
    return refuse(
      problem("solution.too-strong", [], { strength: decimalText(strength), most: reachText(own), unit: "% by mass" }),
    );
  }
  const water = own.times(HUNDRED).div(strength).minus(HUNDRED);
  return answer(
    mixture([
      { composition, mass: HUNDRED },
      { composition: waterOnly, mass: water },
    ]),
  );
}

/** The greatest strength that can be asked for, in four digits: rounded down, so that asking for it works. */
export function reachText(most: Decimal): DecimalText {
  return decimalText(most.toSignificantDigits(4, 1));
}

/** Nothing but water. */
export const waterOnly: Composition = { species: {}, water: "100", inert: "0" };

/** % by mass of all alkaline species without water; sodium and potassium chloride are left out. @example anhydrousShare(pure("Na2CO3")).toString() // => "100" */
export function anhydrousShare(composition: Composition): Decimal {
  return sum(sharesOf(composition).flatMap(([name, share]) => (isChloride(name) ? [] : [share])));
}

/** Whether a salt is no alkali and comes along as salt. @example isChloride("KCl") // => true */
export function isChloride(name: SpeciesName): boolean {
  return speciesOf(name).kind === "chloride";
}

/** What a gram of a product holds of something that is counted by the mole, mmol. @example perGram(pure("KOH"), (one) => one.potassium).toFixed(2) // => "17.82" */
export function perGram(composition: Composition, count: (one: Species) => number): Decimal {
  const moles = sharesOf(composition).map(([name, share]) =>
    share.times(count(species[name])).div(species[name].molarMass),
  );
  return sum(moles).times(10);
}

/** Alkalinity to about pH 4.3, meq per g of product. @example alkalinityM(pure("NaHCO3")).toFixed(3) // => "11.904" */
export function alkalinityM(composition: Composition): Decimal {
  return perGram(composition, (one) => one.equivalentsM);
}

/** Alkalinity to about pH 8.3, meq per g of product; below zero where acid phosphates prevail. @example alkalinityP(pure("NaHCO3")).toString() // => "0" */
export function alkalinityP(composition: Composition): Decimal {
  return perGram(composition, (one) => one.equivalentsP);
}

/** Sodium, % by mass of the product. @example sodiumShare(pure("NaCl")).toFixed(2) // => "39.34" */
export function sodiumShare(composition: Composition): Decimal {
  return perGram(composition, (one) => one.sodium)
    .times(molarMass("Na"))
    .div(10);
}

/** Potassium, % by mass of the product. @example potassiumShare(pure("K2CO3")).toFixed(2) // => "56.58" */
export function potassiumShare(composition: Composition): Decimal {
  return perGram(composition, (one) => one.potassium)
    .times(molarMass("K"))
    .div(10);
}

/** K2CO3 as mass % of the anhydrous neutral carbonates; undefined where there are none. @example potassiumCarbonateShare(pure("K2CO3"))?.toString() // => "100" */
export function potassiumCarbonateShare(composition: Composition): Decimal | undefined {
  const potassium = dec(composition.species.K2CO3 ?? 0);
  const all = potassium.plus(composition.species.Na2CO3 ?? 0);
  return all.isZero() ? undefined : potassium.times(HUNDRED).div(all);
}

/**
 * Anhydrous salts in a mass of a product, in the unit of the mass.
 *
 * @example saltsIn({ species: { Na2CO3: "37" }, water: "63", inert: "0" }, "200") // => "74"
 */
export function saltsIn(composition: Composition, mass: DecimalInput): DecimalText {
  return decimalText(anhydrousShare(composition).times(mass).div(100));
}

/**
 * Alkalinity M of a mass of a product, meq.
 *
 * @param grams - the mass, g
 * @example Math.round(equivalentsIn({ species: { Na2CO3: "100" }, water: "0", inert: "0" }, "100")) // => 1887
 */
export function equivalentsIn(composition: Composition, grams: DecimalInput): DecimalText {
  return decimalText(alkalinityM(composition).times(grams));
}

/** A part of a whole, %. @example percentOf("3", "40") // => "7.5" */
export function percentOf(part: DecimalInput, whole: DecimalInput): DecimalText {
  return decimalText(dec(part).times(100).div(whole));
}
