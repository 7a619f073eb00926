import { type Note, note } from "../figure/problem.ts";
import type { Source } from "../figure/source.ts";
import { type Decimal, dec, fixedText, ONE, sum } from "../number/decimal.ts";
import { type Composition, isSesquicarbonate, sharesOf, speciesOf } from "./composition.ts";
import { type StatementCode, statements, summing } from "./hazard-statements.ts";
import { known } from "./salts/record.ts";
import { type Additive, additive, type SpeciesName } from "./species.ts";

/** How a product is classed for its label, as far as its species and strength tell. */
export interface Hazard {
  /** `not known` where nothing is known of a salt in it and nothing else classes it. */
  readonly signal: "Danger" | "Warning" | "none" | "not known";
  readonly pictograms: readonly string[];
  readonly statements: readonly Statement[];
  /** What the limits leave open, in sentences. */
  readonly open: readonly string[];
  readonly sources: readonly Source[];
}

/** A hazard statement of the label. */
export interface Statement {
  /** Code of the Globally Harmonised System, such as `H319`. */
  readonly code: string;
  readonly text: string;
  /** Which species and strength call for it. */
  readonly because: string;
}

/** Whether a salt burns at some strength. @example burns("KOH") // => true */
export function burns(name: SpeciesName): boolean {
  return known(speciesOf(name).hazard)?.limits.H314 !== undefined;
}

/** Whether a salt irritates at some strength and does not burn. @example irritates("KOH") // => false */
export function irritates(name: SpeciesName): boolean {
  return !burns(name) && known(speciesOf(name).hazard)?.limits.H319 !== undefined;
}

/** Whether the class of a salt is not known here. @example unclassed("Na2HPO4") // => true */
export function unclassed(name: SpeciesName): boolean {
  return speciesOf(name).hazard === "not known";
}

function holds(composition: Composition, what: (name: SpeciesName) => boolean): boolean {
  return sharesOf(composition).some(([name]) => what(name));
}

/** Says so of such salts; nothing of none. */
export function unclassedSalts(names: readonly SpeciesName[]): readonly string[] {
  if (names.length === 0) return [];
  const salts = names.map((name) => speciesOf(name).name).join(" and ");
  return [`The hazard class of ${salts} is not known here: see the safety data sheet.`];
}

/** % from which the tables of Annex I class mixtures whose parts cannot be summed: a strong base, another irritant. */
const unsummed = { base: 1, irritant: 3 } as const;

/** % by mass from which a part counts. */
const COUNTS = ONE;

interface Share {
  readonly name: SpeciesName;
  readonly share: Decimal;
  readonly limit: number;
}

/**
 * The hazard class of a product by its species and strength; the safety data sheet of the product at hand goes first.
 *
 * A statement holds where the shares of all salts that call for it, each over its own limit, come to one or more.
 *
 * Source: as named in the result.
 * @example hazardOf({ species: { NaOH: "5" }, water: "95", inert: "0" }).signal // => "Danger"
 */
export function hazardOf(composition: Composition): Hazard {
  const shares = sharesOf(composition);
  const codes = Object.keys(statements) as readonly StatementCode[];
  const holding = codes
    .map((code) => ({ code, parts: callingFor(code, shares) }))
    .filter(({ parts }) => sum(parts.map(({ share, limit }) => share.div(limit))).gte(1));
  const burning = holding.some(({ code }) => code === "H314");
  const told = holding.filter(({ code }) => !(burning && (code === "H315" || code === "H319")));
  const unknown = shares.filter(([name, share]) => unclassed(name) && share.gte(COUNTS));
  const harms = told.some(({ code }) => code !== "H314" && code !== "H290");
  const otherwise = unknown.length > 0 ? "not known" : "none";
  const entries = shares.flatMap(([name]) => known(speciesOf(name).hazard)?.source ?? []);
  return {
    signal: burning ? "Danger" : told.length > 0 ? "Warning" : otherwise,
    pictograms: [...(burning ? ["GHS05"] : []), ...(harms ? ["GHS07"] : [])],
    statements: told.map(({ code, parts }) => ({ code, text: statements[code], because: becauseOf(parts) })),
    open: [...unclassedSalts(unknown.map(([name]) => name)), ...(told.length > 0 ? [] : unsummedSalts(shares))],
    sources: [...new Set([...entries, ...(entries.length === 0 ? [] : [summing])])],
  };
}

function callingFor(code: StatementCode, shares: readonly (readonly [SpeciesName, Decimal])[]): readonly Share[] {
  return shares.flatMap(([name, share]) => {
    const limit = known(speciesOf(name).hazard)?.limits[code];
    return limit === undefined ? [] : [{ name, share, limit }];
  });
}

function becauseOf(parts: readonly Share[]): string {
  const [first] = parts;
  const list = (texts: readonly string[]): string => texts.join(" and ");
  if (first !== undefined && parts.every(({ limit }) => limit === first.limit)) {
    const names = list(parts.map(({ name }) => speciesOf(name).name));
    return `${fixedText(sum(parts.map(({ share }) => share)), 1)} % of ${names}, from ${first.limit} %`;
  }
  const each = parts.map(
    ({ name, share, limit }) => `${fixedText(share, 1)} % of ${speciesOf(name).name}, alone from ${limit} %,`,
  );
  return `${list(each)} summed`;
}

function unsummedSalts(shares: readonly (readonly [SpeciesName, Decimal])[]): readonly string[] {
  const share = sum(shares.flatMap(([name, part]) => (irritates(name) ? [part] : [])));
  if (share.lt(unsummed.base)) return [];
  const eyes = share.lt(unsummed.irritant) ? "" : `an irritant counts from ${unsummed.irritant} %, and `;
  return [
    `Sums need not hold for such salts, though: by the tables for that case ${eyes}a base of pH 11.5 or more counts as corrosive from ${unsummed.base} %. Take care as with an irritant of the eyes; the supplier's own data decide.`,
  ];
}

/**
 * Says beside a pH what the pH rule of the classification regulation makes of it; nothing below 11.5.
 *
 * Source: Regulation (EC) No 1272/2008, Annex I, 3.2.3.1.2, and the guidance to it on bases with limits of their own.
 * @example phRule({ species: { Na2CO3: "1" }, water: "99", inert: "0" }, "11.36") // => []
 */
export function phRule(composition: Composition, ph: string): readonly Note[] {
  if (dec(ph).toDecimalPlaces(1).lt("11.5")) return [];
  const [burning, irritating] = [holds(composition, burns), holds(composition, irritates)];
  const known = burning ? (irritating ? "both" : "hydroxide") : "salts";
  return [note("ph.classification", [], { known })];
}

/**
 * The usual cautions for a product, by what is in it. They defer to the label, the safety data sheet and local rules.
 *
 * @example cautionsFor({ species: { Na2CO3: "100" }, water: "0", inert: "0" }).length > 0 // => true
 */
export function cautionsFor(composition: Composition): readonly Note[] {
  const [burning, irritating] = [holds(composition, burns), holds(composition, irritates)];
  const codes = [
    ...(burning ? (["burns", "into-water"] as const) : []),
    ...(irritating ? (["eyes"] as const) : []),
    ...(irritating && dec(composition.water).lt(50) ? (["heat", "powder"] as const) : []),
    ...(burning || irritating ? (["aluminium"] as const) : []),
    ...(["food-grade", "keep", "sheet"] as const),
  ];
  return codes.map((code) => note(`caution.${code}`, [], {}));
}

/**
 * The additive names and numbers of what is in a product; a double salt that has a number of its own goes by that.
 *
 * @example additivesIn({ species: { K2CO3: "100" }, water: "0", inert: "0" })[0]?.eu // => "E 501(i)"
 */
export function additivesIn(composition: Composition): readonly (Additive & { readonly name: string })[] {
  if (isSesquicarbonate(composition)) return [{ name: "sodium sesquicarbonate", ...additive("500(iii)") }];
  return sharesOf(composition).flatMap(([name]) => {
    const one = speciesOf(name);
    return one.additive === "no number" ? [] : [{ name: one.name, ...additive(one.additive) }];
  });
}
