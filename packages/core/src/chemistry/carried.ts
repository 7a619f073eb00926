import { type Figure, given, renamed, worked } from "../figure/figure.ts";
import { type Published, published } from "../figure/graph.ts";
import type { Outcome } from "../figure/problem.ts";
import { definition, massBalance } from "../figure/source.ts";
import { type Decimal, type DecimalInput, type DecimalText, dec, decimalText, sum } from "../number/decimal.ts";
import {
  alkalinityM,
  alkalinityP,
  anhydrousShare,
  type Composition,
  mixture,
  perGram,
  potassiumShare,
  sharesOf,
  sodiumShare,
  speciesOf,
} from "./composition.ts";
import { atomicWeightSource } from "./elements.ts";
import { grams, named } from "./named.ts";
import { solutionPh } from "./ph.ts";
import type { SaltShare } from "./salt-content.ts";
import type { Species } from "./species.ts";

/** A product by its name. */
export interface Product {
  readonly name: string;
  readonly composition: Composition;
  /** Its salts as figures, where another result has them. */
  readonly salts?: readonly SaltShare[];
}

/** A product and how many grams of it. */
export interface Weighed extends Product {
  readonly mass: DecimalInput;
}

/** What weighed products bring along, for the amounts weighed. */
export interface Carried {
  readonly anhydrous: Figure;
  readonly alkalinityM: Figure;
  readonly alkalinityP: Figure;
  readonly water: Figure;
  /** Sodium and potassium chloride. */
  readonly salt: Figure;
  readonly sodium: Figure;
  readonly potassium: Figure;
  readonly bicarbonate: Figure;
  readonly hydroxide: Figure;
  /** Potassium of the alkaline salts, mol % of their sodium and potassium; absent without either. */
  readonly potassiumRatio?: Figure;
  /** pH of the salts in the water given, where it can be estimated. */
  readonly ph?: Figure;
}

/** Sodium and potassium of the alkaline salts, mmol per g of product. @example cationsOf({ species: { KOH: "56.105" }, water: "43.895", inert: "0" }).potassium.toString() // => "10" */
export function cationsOf(composition: Composition): { readonly sodium: Decimal; readonly potassium: Decimal } {
  const count = (which: "sodium" | "potassium"): Decimal =>
    perGram(composition, (one) => (one.kind === "chloride" ? 0 : one[which]));
  return { sodium: count("sodium"), potassium: count("potassium") };
}

/** Potassium of the alkaline salts, mol % of their sodium and potassium; 0 without either. @example potassiumOf({ species: { KOH: "5" }, water: "95", inert: "0" }) // => "100" */
export function potassiumOf(composition: Composition): DecimalText {
  const { sodium, potassium } = cationsOf(composition);
  const both = sodium.plus(potassium);
  return both.isZero() ? "0" : decimalText(potassium.times(100).div(both));
}

function shareOf(composition: Composition, kind: Species["kind"]): Decimal {
  return sum(sharesOf(composition).flatMap(([name, share]) => (speciesOf(name).kind === kind ? [share] : [])));
}

/** Units of what is carried, and their places. */
const places = { g: 2, mg: 0, meq: 1, mmol: 1 } as const;
type Unit = keyof typeof places;

const inHundred = ["100 g", "sum(masses * contents / 100)", definition] as const;
const inOne = ["1 g", "sum(masses * contents)", atomicWeightSource] as const;

/**
 * What weighed products bring into a dough: alkalinity, sodium, potassium, water and salt.
 *
 * @param products - masses in g
 * @param when - a word that tells this figure from its like, such as `before`
 * @param own - the masses as figures, where another result has them
 * @param ph - the pH of the solution that the salts make with the dough's water, where it was estimated
 * @example carriedBy([{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 10 }], "before").anhydrous.value // => "10"
 */
export function carriedBy(
  products: readonly Weighed[],
  when: string,
  ph?: Figure,
  own: readonly Figure[] = [],
): Published<Carried> {
  const masses = products.map(
    ({ name, mass }, index) =>
      own[index] ?? given(grams(`carried.${when}.mass.${index + 1}`, `mass of ${name}`), mass, "the dose", definition),
  );
  const total = (id: string, label: string, unit: Unit, content: (composition: Composition) => Decimal): Figure => {
    const [per, formula, source] = unit === "g" ? inHundred : inOne;
    const contents = products.map(({ name, composition, salts = [] }, index) => {
      const what = `${label} in ${per} of ${name}`;
      const on = salts.map(([, share]) => share);
      return named(
        `carried.${when}.${id}.${index + 1}`,
        what,
        unit,
        content(composition),
        "the composition",
        source,
        on,
      );
    });
    const naming = { id: `carried.${when}.${id}`, label, unit, places: places[unit] };
    return worked(naming, formula, { masses, contents }, massBalance, source);
  };
  const sodium = total("cation-sodium", "sodium of the alkaline salts", "mmol", (c) => cationsOf(c).sodium);
  const ofPotassium = (c: Composition) => cationsOf(c).potassium;
  const potassium = total("cation-potassium", "potassium of the alkaline salts", "mmol", ofPotassium);
  const ratio = () => {
    const id = `carried.${when}.potassium-ratio`;
    const naming = { id, label: "potassium of sodium and potassium", unit: "mol %", places: 2 };
    return worked(naming, "100 * potassium / (sodium + potassium)", { sodium, potassium }, definition);
  };
  return published({
    anhydrous: total("anhydrous", "anhydrous salts", "g", anhydrousShare),
    alkalinityM: total("alkalinity-m", "alkalinity M", "meq", alkalinityM),
    alkalinityP: total("alkalinity-p", "alkalinity P", "meq", alkalinityP),
    water: total("water", "water carried", "g", (c) => dec(c.water)),
    salt: total("salt", "sodium and potassium chloride", "g", (c) => shareOf(c, "chloride")),
    sodium: total("sodium", "sodium", "mg", (c) => sodiumShare(c).times(10)),
    potassium: total("potassium", "potassium", "mg", (c) => potassiumShare(c).times(10)),
    bicarbonate: total("bicarbonate", "of it bicarbonates", "g", (c) => shareOf(c, "bicarbonate")),
    hydroxide: total("hydroxide", "of it hydroxides", "g", (c) => shareOf(c, "hydroxide")),
    ...(!dec(sodium.value).plus(potassium.value).isZero() && { potassiumRatio: ratio() }),
    ...(ph && { ph: renamed(ph, `carried.${when}.ph`) }),
  });
}

/**
 * The pH of weighed products in the water of a dough, as a solution without the flour; problems as in `solutionPh`.
 *
 * @param water - g of all water the salts meet, their own included
 * @param temperature - °C
 * @example shown(phInWater([{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 10 }], 350, 25).value) // => "11.5"
 */
export function phInWater(
  products: readonly Weighed[],
  water: DecimalInput,
  temperature: DecimalInput,
): Outcome<Published<Figure>> {
  const own = sum(products.map(({ composition, mass }) => dec(mass).times(composition.water).div(100)));
  const more = dec(water).minus(own);
  const added = { composition: { species: {}, water: "100", inert: "0" }, mass: more.isNegative() ? 0 : more };
  return solutionPh(mixture([...products, added]), temperature);
}
