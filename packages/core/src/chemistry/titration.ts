import { exact, type Figure, worked } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { answer, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { citation, definition, massBalance, type Source } from "../figure/source.ts";
import { type Decimal, type DecimalInput, dec, decOf, fixedText, HUNDRED, ONE, sum, ZERO } from "../number/decimal.ts";
import {
  alkalinityM,
  alkalinityP,
  anhydrousShare,
  type Composition,
  compositionOf,
  isChloride,
  sharesOf,
} from "./composition.ts";
import { compositionFigures } from "./composition-figures.ts";
import { atomicWeightSource, molarMass } from "./elements.ts";
import { molarMassFigure, named } from "./named.ts";
import type { SpeciesName } from "./species.ts";

/** What an alkalinity may be stated as, with the equivalents of a mole of it. */
const standards = { Na2CO3: 2, K2CO3: 2, Na2O: 2, K2O: 2, NaOH: 1, KOH: 1 } as const;

/** A substance that an alkalinity is stated as. */
export type AlkalinityStandard = keyof typeof standards;

/** The substances that an alkalinity may be stated as. */
export const alkalinityStandards = Object.keys(standards) as readonly AlkalinityStandard[];

/** An alkalinity as a label or certificate states it: in % of a substance, or in mL of acid for so much of the product. */
export type StatedAlkalinity =
  | { readonly as: AlkalinityStandard; readonly percent: DecimalInput }
  | { readonly acid: AcidUsed };

/** What a titration took: acid for so much of the product. */
export interface AcidUsed {
  readonly millilitres: DecimalInput;
  /** Equivalents per litre. */
  readonly normality: DecimalInput;
  /** g of product */
  readonly sample: DecimalInput;
}

/**
 * alkalinity M in meq per g of product from what a label states.
 *
 * @throws {RangeError} on a sample of zero.
 * @example statedAlkalinity({ as: "Na2CO3", percent: "99.2" }).value.slice(0, 6) // => "18.719"
 */
export function statedAlkalinity(stated: StatedAlkalinity): Figure {
  const naming = { id: "titration.alkalinity", label: "alkalinity M", unit: "meq/g", places: 4 } as const;
  if ("acid" in stated) {
    const from = { volume: millilitres("volume", "acid used", stated.acid.millilitres), ...titrated(stated.acid) };
    return worked(naming, "volume * normality / sample", from, definition);
  }
  const from = {
    percent: named("titration.stated", `alkalinity as ${stated.as}`, "%", stated.percent, "the label"),
    ...molesOf(stated.as),
  };
  return worked(naming, "10 * percent * equivalents / molar", from, atomicWeightSource);
}

/** An alkalinity M of meq per g as % of a substance. @example alkalinityAs("18.87", "Na2CO3").value.slice(0, 6) // => "99.999" */
export function alkalinityAs(meq: Figure | DecimalInput, standard: AlkalinityStandard): Figure {
  const naming = { id: `titration.as-${standard}`, label: `alkalinity as ${standard}`, unit: "%", places: 2 };
  return worked(naming, "meq * molar / equivalents / 10", { meq, ...molesOf(standard) }, atomicWeightSource);
}

/** A product in figures. */
export interface ProductFigures {
  /** What it is made of, % of it. */
  readonly parts: readonly Figure[];
  /** Its alkalinity M and P, and M as labels and certificates state it. */
  readonly alkalinities: readonly Figure[];
}

const usualStandards = ["Na2CO3", "K2CO3", "Na2O"] as const satisfies readonly AlkalinityStandard[];

/** The figures of a product. @param by - where its composition comes from */
export function productFigures(composition: Composition, by: string): ProductFigures {
  const meq = (id: "m" | "p", label: string, value: Decimal): Figure =>
    named(`composition.alkalinity-${id}`, label, "meq/g", value, "the composition", massBalance);
  const m = meq("m", "alkalinity M", alkalinityM(composition));
  const p = meq("p", "alkalinity P", alkalinityP(composition));
  return {
    parts: compositionFigures(composition, by, [massBalance]),
    alkalinities: [m, p, ...usualStandards.map((standard) => alkalinityAs(m, standard))],
  };
}

/** A product, as its titration tells it. */
export interface Assayed extends ProductFigures {
  readonly composition: Composition;
  readonly alkalinity: Figure;
  /** % of alkaline salts in the product */
  readonly assay: Figure;
}

/**
 * The composition behind a stated alkalinity, given which salts the product holds and in what ratio.
 *
 * @param salts - any composition with the alkaline salts in their ratio; its water and inert matter do not count
 * @param water - % of water in the product; the rest is inert
 * Problems: `titration.value`, `titration.no-alkalinity`, `titration.over-100`.
 * @example shown(assayed({ as: "Na2O", percent: "58" }, { species: { Na2CO3: "100" }, water: "0", inert: "0" }).value.assay) // => "99.18 %"
 */
export function assayed(
  stated: StatedAlkalinity,
  salts: Composition,
  water: DecimalInput = 0,
): Outcome<Published<Assayed>> {
  if ("acid" in stated ? !positive(stated.acid) : dec(stated.percent).lte(0)) {
    return refuse(problem("titration.value", [], {}));
  }
  if (alkalinityM(salts).lte(0)) return refuse(problem("titration.no-alkalinity", [], {}));
  const alkalinity = statedAlkalinity(stated);
  const own = anhydrousShare(salts);
  const ofSalts = alkalinityM(salts).times(HUNDRED).div(own);
  const pure = named("titration.pure", "alkalinity M of the pure salts", "meq/g", ofSalts, "the ratio");
  const naming = { id: "titration.assay", label: "alkaline salts in the product", unit: "%", places: 2 };
  const assay = worked(naming, "100 * alkalinity / pure", { alkalinity, pure }, massBalance, atomicWeightSource);
  const share = exact(assay);
  const species = sharesOf(salts).flatMap(([name, part]) =>
    isChloride(name) ? [] : [[name, part.times(share).div(own)] as const],
  );
  const volume = "acid" in stated ? stated.acid.millilitres : undefined;
  const composition = toWhole(species, dec(water), volume);
  if (composition === undefined) {
    return refuse(problem("titration.over-100", [], { share: fixedText(share, 2), water: fixedText(water, 2) }));
  }
  if (!composition.ok) return composition;
  const figures = productFigures(composition.value, byAlkalinity);
  return publish({ composition: composition.value, alkalinity, assay, ...figures }, composition.notes);
}

const byAlkalinity = "the alkalinity and the salts named";

/** % of the dried salts that pharmacopoeias allow an assay to read. */
const monographs = { KHCO3: "101.5", others: "100.5" } as const;
const pharmacopoeias: Source = {
  cite: "United States Pharmacopeia 32: sodium and potassium carbonate 99.5 to 100.5 %, potassium bicarbonate 99.5 to 101.5 %, dried",
  standing: "copy",
};
/** mL that the reading of a burette may be off: common practice, no source. */
const BURETTE_OFF = "0.05";

/**
 * The composition of salts and water, % each. A little more than the whole, as an assay of a pure salt may read, is taken
 * as the whole, with a note; undefined where it is more than pharmacopoeias and the reading of the burette allow.
 *
 * @param volume - mL of acid, where it was titrated
 */
function toWhole(
  species: readonly (readonly [SpeciesName, Decimal])[],
  water: Decimal,
  volume: DecimalInput | undefined,
): Outcome<Composition> | undefined {
  const salts = sum(species.map(([, share]) => share));
  const room = HUNDRED.minus(water);
  if (salts.lte(room)) return compositionOf({ species: Object.fromEntries(species), water });
  if (room.lte(0)) return undefined;
  const off = volume === undefined ? ZERO : HUNDRED.times(BURETTE_OFF).div(volume);
  const monograph = species.every(([name]) => name === "KHCO3") ? monographs.KHCO3 : monographs.others;
  const dried = salts.times(HUNDRED).div(room);
  if (dried.gt(off.plus(monograph))) return undefined;
  const whole = Object.fromEntries(species.map(([name, share]) => [name, share.times(room).div(salts)]));
  const burette = off.isZero() ? undefined : { millilitres: String(BURETTE_OFF), worth: fixedText(off, 2) };
  const facts = { dried: fixedText(dried, 2), most: monograph, source: citation(pharmacopoeias) };
  const composition = compositionOf({ species: whole, water });
  if (!composition.ok) return composition;
  return answer(composition.value, [note("titration.taken-as-whole", [], { ...facts, ...(burette && { burette }) })]);
}

/** A titration to two end points with one acid. */
export interface TwoEndPoints {
  /** mL to the end of phenolphthalein, about pH 8.3 */
  readonly phenolphthalein: DecimalInput;
  /** mL from the beginning to the end of methyl orange, about pH 4.3 */
  readonly total: DecimalInput;
  readonly normality: DecimalInput;
  /** g of product */
  readonly sample: DecimalInput;
  /** mol % of potassium among sodium and potassium; 0 for a sodium product, 100 for a potassium product */
  readonly potassium: DecimalInput;
  /** % of water in the product; 0 where nothing is stated */
  readonly water?: DecimalInput;
}

const splitRule: Source = {
  cite: "textbook split of hydroxide, carbonate and bicarbonate by two end points",
  standing: "memory",
};

/** What two end points tell a solution to hold. */
export interface Split extends ProductFigures {
  readonly hydroxide: Figure;
  readonly carbonate: Figure;
  readonly bicarbonate: Figure;
  readonly composition: Composition;
}

/**
 * Hydroxide, carbonate and bicarbonate of a product from two end points.
 *
 * Problems: `titration.end-points`, `titration.value`, `figure.impossible` for a share of potassium that is none,
 * `composition.over-100`.
 * Source: textbook rule, from memory.
 * @example shown(splitByEndPoints({ phenolphthalein: 10, total: 20, normality: 1, sample: "1.06", potassium: 0 }).value.carbonate) // => "18.8679 meq/g"
 */
export function splitByEndPoints(ends: TwoEndPoints): Outcome<Published<Split>> {
  const [first, total] = [decOf("phenolphthalein", ends.phenolphthalein), decOf("total", ends.total)];
  const potassium = decOf("potassium", ends.potassium);
  if (!positive({ millilitres: total, normality: ends.normality, sample: ends.sample })) {
    return refuse(problem("titration.value", [], {}));
  }
  if (potassium.isNegative() || potassium.gt(HUNDRED)) {
    const facts = { id: "potassium", value: potassium.toFixed(), unit: "%", least: "0", most: "100", whole: false };
    return refuse(problem("figure.impossible", ["potassium"], facts));
  }
  if (first.isNegative() || first.gt(total)) {
    return refuse(problem("titration.end-points", [], { first: first.toString(), total: total.toString() }));
  }
  const from = {
    first: millilitres("phenolphthalein", "acid to phenolphthalein", ends.phenolphthalein),
    total: millilitres("total", "acid in all", ends.total),
    ...titrated(ends),
  };
  const part = (id: string, label: string, formula: string): Figure =>
    worked({ id: `titration.${id}`, label, unit: "meq/g", places: 4 }, formula, from, splitRule);
  const hydroxide = part("hydroxide", "hydroxide", "max(2 * first - total, 0) * normality / sample");
  const carbonate = part("carbonate", "carbonate", "2 * min(first, total - first) * normality / sample");
  const bicarbonate = part("bicarbonate", "bicarbonate", "max(total - 2 * first, 0) * normality / sample");
  const kalium = potassium.div(HUNDRED);
  const percent = (formula: string, meq: Figure, equivalents: number, share: Decimal): Decimal =>
    exact(meq).times(share).times(molarMass(formula)).div(equivalents).div(10);
  const sodium = ONE.minus(kalium);
  const species = [
    ["NaOH", percent("NaOH", hydroxide, 1, sodium)],
    ["KOH", percent("KOH", hydroxide, 1, kalium)],
    ["Na2CO3", percent("Na2CO3", carbonate, 2, sodium)],
    ["K2CO3", percent("K2CO3", carbonate, 2, kalium)],
    ["NaHCO3", percent("NaHCO3", bicarbonate, 1, sodium)],
    ["KHCO3", percent("KHCO3", bicarbonate, 1, kalium)],
  ] as const satisfies readonly (readonly [SpeciesName, Decimal])[];
  const water = dec(ends.water ?? ZERO);
  const present = species.filter(([, share]) => share.gt(0));
  const composition = toWhole(present, water, total) ?? compositionOf({ species: Object.fromEntries(present), water });
  if (!composition.ok) return composition;
  const figures = productFigures(composition.value, byAlkalinity);
  return publish({ hydroxide, carbonate, bicarbonate, composition: composition.value, ...figures }, composition.notes);
}

function molesOf(standard: AlkalinityStandard): { readonly molar: Figure; readonly equivalents: Figure } {
  const id = `titration.equivalents.${standard}`;
  return {
    molar: molarMassFigure(standard),
    equivalents: named(id, `equivalents in a mole of ${standard}`, "", standards[standard], "the equation"),
  };
}

function millilitres(id: string, label: string, volume: DecimalInput): Figure {
  return named(`titration.${id}`, label, "mL", volume, "the titration");
}

/** The acid and what it was used on. */
function titrated({ normality, sample }: Omit<AcidUsed, "millilitres">) {
  return {
    normality: named("titration.normality", "normality of the acid", "eq/L", normality, "the titration"),
    sample: named("titration.sample", "sample", "g", sample, "the titration"),
  };
}

function positive({ millilitres, normality, sample }: AcidUsed): boolean {
  return Object.entries({ millilitres, normality, sample }).every(([name, value]) => decOf(name, value).gt(0));
}
