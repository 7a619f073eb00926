import { exact, type Figure, found, worked } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { measure } from "../figure/in-system.ts";
import { type Note, note, type Outcome, type Problem, problem, problemsOf, refuse } from "../figure/problem.ts";
import { type Decimal, type DecimalInput, type DecimalText, dec, HUNDRED, ONE, sum } from "../number/decimal.ts";
import { type Composition, isChloride, sharesOf, speciesOf } from "./composition.ts";
import { shareFigure, waterFigure } from "./composition-figures.ts";
import { type Limit, nearestByIons } from "./ion-saturation.ts";
import { harvieMollerWeare } from "./pitzer.ts";
import { known, type SolubilityTable } from "./salts/record.ts";
import { hydrates, type SpeciesName, speciesWith } from "./species.ts";

/** Whether a solution stays clear: `clear`, `doubtful` within the doubt of the figures, `crystals`, or `not known`. */
export type Clarity = "clear" | "doubtful" | "crystals" | "not known";

/** Whether a solution stays clear, and what it comes from. */
export interface Solubility {
  readonly verdict: Clarity;
  /** The greater of what the salts take together of their limits and of what their ions do, in %: above 100 crystals grow. */
  readonly taken: Figure;
  /** Each salt with its limit, g anhydrous in 100 g water. */
  readonly limits: readonly Figure[];
  /** What crystallises first. */
  readonly solid: string;
  /** °C that it holds at */
  readonly temperature: DecimalText;
}

/** A single salt is doubtful within 3 % of its limit, about the spread of the tables; mixed salts from 80 %. */
const SINGLE = "97";
const MIXED = "80";

/**
 * The solubility of a salt, g anhydrous in 100 g of water.
 *
 * Between table rows the logarithm is taken as straight: solubility curves bend upwards.
 *
 * @param temperature - °C, within the table
 * Problems: `solubility.no-table`, `solubility.temperature`.
 * @example shown(solubilityOf("Na2CO3", 20).value) // => "21.8 g/100 g water"
 */
export function solubilityOf(name: SpeciesName, temperature: DecimalInput): Outcome<Published<Figure>> {
  const t = dec(temperature);
  const table = known(speciesOf(name).solubility);
  if (table === undefined) {
    return refuse(
      problem("solubility.no-table", [], { name: speciesOf(name).name, tables: speciesWith("solubility") }),
    );
  }
  const limit = between(table, t);
  if (limit === undefined) return refuse(outside(name, table, t));
  const label = `limit of ${speciesOf(name).name} at ${t.toString()} °C, as ${solidAt(table, t)}`;
  return publish(
    found(
      { id: `solubility.${name}`, label, unit: "g/100 g water", places: 1 },
      limit,
      "interpolation between rows of the table, straight in the logarithm",
      undefined,
      ...table.sources,
    ),
  );
}

/**
 * Whether a solution stays clear at a temperature.
 *
 * For mixed salts each is taken to use up its part of its own limit and the parts are added up: an estimate that no
 * published table of these mixtures was at hand to check, hence doubtful from 80 %. It holds for the neutral carbonates. Of
 * other mixtures, where a salt can be kept from dissolving by another, or come of an exchange, the activities of the ions
 * count as well; where they are not known, neither is the verdict.
 *
 * @param composition - of the solution
 * @param temperature - °C
 * @param on - what the solution was mixed from, where figures tell that
 * Problems: `solubility.no-water`, and those of `solubilityOf`.
 * Source: Harvie, Møller and Weare 1984 for the activities, at 25 °C; the tables for the limits.
 * @example staysClear({ species: { Na2CO3: "15" }, water: "85", inert: "0" }, 4).value.verdict // => "crystals"
 */
export function staysClear(
  composition: Composition,
  temperature: DecimalInput,
  on?: readonly Figure[],
): Outcome<Published<Solubility>> {
  const t = dec(temperature);
  const shares = sharesOf(composition);
  if (dec(composition.water).isZero() || shares.length === 0) return refuse(problem("solubility.no-water", [], {}));
  const outcomes = shares.map(([name]) => solubilityOf(name, t));
  const problems = outcomes.flatMap(problemsOf);
  if (problems.length > 0) return refuse(...problems);
  const limits = outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : []));
  const amounts = shares.map(([name]) => shareFigure(composition, name, on));
  const naming = { id: "solubility.taken", label: `taken of the limits at ${t.toString()} °C`, unit: "%", places: 0 };
  const summed = worked(
    naming,
    "100 * sum(100 * amounts / water / limits)",
    { amounts, water: waterFigure(composition, on), limits },
    ...limits.flatMap((figure) => figure.sources),
  );
  const parts = amounts.map((amount, index) => exact(amount).div(limits[index]?.value ?? 1));
  const greatest = indexOfGreatest(parts);
  const way = wayFor(composition, shares, t);
  const ahead = typeof way === "object" && way.taken.gt(summed.value) ? way : undefined;
  const solid = solidOf(ahead?.salt ?? shares[greatest]?.[0], t);
  const by = "the activities of the ions in the mixture, against those in the saturated solution of the salt by itself";
  const sources = [harvieMollerWeare, ...summed.sources];
  const taken = ahead === undefined ? summed : found(naming, ahead.taken, by, amounts, ...sources);
  const alone = parts[greatest]?.times(HUNDRED).div(composition.water).gt(1) === true;
  const verdict = way === "not known" && !alone ? "not known" : verdictOn(exact(taken), shares.length);
  return publish({ verdict, taken, limits, solid, temperature: t.toString() }, notesOn(shares, t, way));
}

/** Least water, % of a product, that counts as that of its crystals; what a dry powder took up is less. */
const CRYSTAL_WATER = "5";

/** Whether a product is of salts with their crystal water: there is water in it, and too little to dissolve them at 20 °C. */
export function holdsCrystals(composition: Composition): boolean {
  if (dec(composition.water).lt(CRYSTAL_WATER) || sharesOf(composition).length === 0) return false;
  const clarity = staysClear(composition, "20");
  return !clarity.ok || clarity.value.verdict === "crystals";
}

function verdictOn(taken: Decimal, salts: number): Clarity {
  if (taken.gt(HUNDRED)) return "crystals";
  return taken.gt(salts === 1 ? SINGLE : MIXED) ? "doubtful" : "clear";
}

/** Share of chloride among the salts that counts as an impurity of carbonates, such as a certificate names. */
const IMPURITY = "0.02";

/** °C between which activity coefficients of 25 °C are taken to do. */
const FITTING = ["0", "40"] as const;

/** How a mixture is judged: by the sum of its parts alone, by its ions as well, or not at all. */
type Way = "sum" | NonNullable<ReturnType<typeof nearestByIons>> | "not known";

function wayFor(composition: Composition, shares: readonly (readonly [SpeciesName, Decimal])[], t: Decimal): Way {
  const most = sum(shares.map(([, share]) => share)).times(IMPURITY);
  const trace = ([name, share]: (typeof shares)[number]): boolean => isChloride(name) && share.lte(most);
  if (shares.length === 1 || shares.every((one) => speciesOf(one[0]).kind === "carbonate" || trace(one))) return "sum";
  if (t.lt(FITTING[0]) || t.gt(FITTING[1])) return "not known";
  const limitOf = (salt: SpeciesName): Limit | undefined => {
    const limit = solubilityOf(salt, t);
    const crystal = Object.values(hydrates).find(({ name }) => name === solidOf(salt, t));
    return limit.ok ? { grams: limit.value.value, crystalWater: Number(crystal?.water ?? 0) } : undefined;
  };
  return nearestByIons(composition, limitOf) ?? "not known";
}

const wayTold = { sum: "solubility.mixed", ions: "solubility.by-ions", "not known": "solubility.not-known" } as const;

function notesOn(shares: readonly (readonly [SpeciesName, Decimal])[], t: Decimal, way: Way): readonly Note[] {
  if (shares.length === 1) return [];
  const notes: Note[] = [note(wayTold[typeof way === "object" ? "ions" : way], [], {})];
  const moles = (count: (name: SpeciesName) => number): Decimal =>
    sum(shares.map(([name, share]) => share.times(count(name)).div(speciesOf(name).molarMass)));
  const bicarbonate = moles((name) => (speciesOf(name).kind === "bicarbonate" ? 1 : 0));
  const sodium = moles((name) => speciesOf(name).sodium);
  if (bicarbonate.gt(0) && sodium.gt(0) && shares.some(([name]) => name !== "NaHCO3" && name !== "NaCl")) {
    notes.push(note("solubility.exchange", [], { temperature: measure(t, "°C", 0) }));
  }
  return notes;
}

function outside(name: SpeciesName, table: SolubilityTable, t: Decimal): Problem {
  const [first, last] = [table.rows[0]?.[0] ?? "", table.rows.at(-1)?.[0] ?? ""];
  return problem("solubility.temperature", [], { temperature: t.toString(), name: speciesOf(name).name, first, last });
}

/** The limit of each table at the temperature last asked for: whoever looks for a strength asks for one many times. */
const lastLimits = new WeakMap<SolubilityTable, { readonly t: Decimal; readonly limit: Decimal | undefined }>();

function between(table: SolubilityTable, t: Decimal): Decimal | undefined {
  const last = lastLimits.get(table);
  const { limit } = last?.t.eq(t) ? last : { limit: interpolated(table, t) };
  lastLimits.set(table, { t, limit });
  return limit;
}

function interpolated(table: SolubilityTable, t: Decimal): Decimal | undefined {
  const above = table.rows.findIndex(([at]) => t.lte(at));
  const [right, left] = [table.rows[above], table.rows[above - 1]];
  if (right === undefined) return undefined;
  if (t.eq(right[0])) return dec(right[1]);
  if (left === undefined) return undefined;
  const way = t.minus(left[0]).div(dec(right[0]).minus(left[0]));
  return dec(left[1]).ln().times(ONE.minus(way)).plus(dec(right[1]).ln().times(way)).exp();
}

function solidOf(name: SpeciesName | undefined, t: Decimal): string {
  const table = name === undefined ? undefined : known(speciesOf(name).solubility);
  return table === undefined ? "" : solidAt(table, t);
}

function solidAt(table: SolubilityTable, t: Decimal): string {
  return (table.solids.find(([upTo]) => t.lte(upTo)) ?? table.solids.at(-1))?.[1] ?? "";
}

function indexOfGreatest(values: readonly Decimal[]): number {
  return values.reduce((best, value, index) => (value.gt(values[best] ?? 0) ? index : best), 0);
}
