import { exact, type Feed, type Figure, found, worked } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { answer, distinct, type Note, note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { massBalance, type Source } from "../figure/source.ts";
import { type DecimalInput, type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { type BaumeName, baumeDefinition, baumeFromDensity, baumeScales } from "./baume.ts";
import { alkalinityM, alkalinityP, type Composition, isChloride, sharesOf, speciesOf } from "./composition.ts";
import { shareFigure, solutionParts, waterFigure } from "./composition-figures.ts";
import { solutionDensity } from "./density.ts";
import { atomicWeightSource } from "./elements.ts";
import { named } from "./named.ts";
import { phTold, solutionPh } from "./ph.ts";
import { reactionNotes } from "./reaction.ts";
import { notASolution } from "./stated-strength.ts";

/** How strong a solution is, in every measure. Strength counts the anhydrous alkaline salts; sodium and potassium chloride ride along uncounted. */
export interface Strength {
  readonly massPercent: Figure;
  /** Anhydrous salts to 100 parts of water. */
  readonly partsToWater: Figure;
  readonly molPerKilogram: Figure;
  readonly alkalinityM: Figure;
  readonly alkalinityP: Figure;
  /** What takes a density; absent where no published fit covers the solution, and a note says why. */
  readonly byVolume?: VolumeStrength;
  /** What a hydrometer shows at its own temperature; absent where no published fit covers that. */
  readonly baume?: Figure;
  /** What it is made of, % by mass. */
  readonly parts: readonly Figure[];
  /** Of the solution, never of a dough; absent where it cannot be estimated, and a note says why. */
  readonly ph?: Figure;
}

/** The strength of a solution by volume, where its density is known. */
export interface VolumeStrength {
  readonly density: Figure;
  readonly massVolumePercent: Figure;
  readonly gramsPerLitre: Figure;
  readonly molPerLitre: Figure;
}

/**
 * The strength of a solution in every measure.
 *
 * @param composition - with some water
 * @param temperature - °C at which volumes are meant, 0 to 40
 * @param scale - the hydrometer scale to give degrees Baumé on
 * @param on - what the solution was mixed from, where figures tell that
 * Problems: `strength.no-water`, `strength.no-salt`.
 * @example shown(strengthOf({ species: { K2CO3: "40" }, water: "60", inert: "0" }, 20, "145").value.molPerKilogram) // => "4.824 mol/kg"
 */
export function strengthOf(
  composition: Composition,
  temperature: DecimalInput,
  scale: BaumeName,
  on?: readonly Figure[],
): Outcome<Published<Strength>> {
  const without = notASolution(composition);
  if (without !== undefined) return refuse(without);
  const salts = sharesOf(composition).filter(([name]) => !isChloride(name));
  const shares = salts.map(([name]) => shareFigure(composition, name, on));
  const molar = salts.map(([id]) => {
    const { name, molarMass } = speciesOf(id);
    return measured(`molar.${id}`, `molar mass of ${name}`, "g/mol", 3, molarMass, atomicWeightSource);
  });
  const alkalinity = (id: string, label: string, value: DecimalInput): Figure =>
    measured(id, label, "meq/g", 3, value, massBalance, shares);
  const water = waterFigure(composition, on);
  const percent = made("mass-percent", "strength by mass", "% w/w", 2, "sum(shares)", { shares });
  const [byMass, byMoles] = ["100 * percent / water", "1000 * sum(shares / molar) / water"] as const;
  const mass: Strength = {
    massPercent: percent,
    partsToWater: made("parts", "anhydrous salts to 100 parts of water", "parts", 2, byMass, { percent, water }),
    molPerKilogram: made("molality", "moles of salts per kg of water", "mol/kg", 3, byMoles, { shares, molar, water }),
    alkalinityM: alkalinity("alkalinity-m", "alkalinity M, to about pH 4.3", alkalinityM(composition)),
    alkalinityP: alkalinity("alkalinity-p", "alkalinity P, to about pH 8.3", alkalinityP(composition)),
    parts: solutionParts(composition, on),
  };
  const density = solutionDensity(composition, temperature, on);
  const baume = baumeFigure(composition, scale, on);
  const { ph, notes: phNotes } = phTold(solutionPh(composition, temperature, on));
  const notes = [...notesOf(density), ...notesOf(baume), ...reactionNotes([composition]), ...phNotes];
  const strength = {
    ...mass,
    ...(density.ok && { byVolume: byVolume(density.value, percent, shares, molar) }),
    ...(baume.ok && { baume: baume.value }),
    ...(ph && { ph }),
  };
  return publish(strength, distinct(notes));
}

/** What a hydrometer of a scale shows in a solution at its own temperature; problems as in `solutionDensity`. @example shown(baumeFigure({ species: { Na2CO3: "10" }, water: "90", inert: "0" }, "145").value) // => "13.92 °Bé" */
export function baumeFigure(composition: Composition, scale: BaumeName, on?: readonly Figure[]): Outcome<Figure> {
  const { sample, use, sources } = baumeScales[scale];
  const density = solutionDensity(composition, sample, on);
  if (!density.ok) return density;
  const figure = found(
    { id: "strength.baume", label: `hydrometer, modulus ${scale} (${use})`, unit: "°Bé", places: 2 },
    baumeFromDensity(density.value.value, scale, sample),
    `${baumeDefinition.at ?? ""}, with the density of the solution and of water at the scale's own temperatures`,
    sharesOf(composition).map(([name]) => shareFigure(composition, name, on)),
    ...sources,
    ...density.value.sources,
  );
  const { range } = density.value;
  const degreesOf = (value: string): string => decimalText(baumeFromDensity(value, scale, sample));
  const around = range && { low: degreesOf(range.low), high: degreesOf(range.high), why: range.why };
  return answer({ ...figure, ...(around && { range: around }) }, density.notes);
}

function byVolume(
  density: Figure,
  percent: Figure,
  shares: readonly Figure[],
  molar: readonly Figure[],
): VolumeStrength {
  const ranged: typeof made = (...figure) => withDensityRange(made(...figure), density);
  const byMass = { percent, density };
  const [moles, byMoles] = ["10 * sum(shares / molar) * density", { shares, molar, density }] as const;
  return {
    density,
    massVolumePercent: ranged("mass-volume", "strength by volume", "% w/v", 2, "percent * density", byMass),
    gramsPerLitre: ranged("grams-per-litre", "anhydrous salts by volume", "g/L", 1, "10 * percent * density", byMass),
    molPerLitre: ranged("molarity", "moles of salts in a litre", "mol/L", 3, moles, byMoles),
  };
}

function made(
  id: string,
  label: string,
  unit: string,
  places: number,
  formula: string,
  from: Readonly<Record<string, Feed>>,
): Figure {
  return worked({ id: `strength.${id}`, label, unit, places }, formula, from, massBalance);
}

function measured(
  id: string,
  label: string,
  unit: string,
  places: number,
  value: DecimalInput,
  source: Source,
  on: readonly Figure[] = [],
): Figure {
  return found({ id: `strength.${id}`, label, unit, places }, value, "the composition", on, source);
}

function notesOf(outcome: Outcome<Figure>): readonly Note[] {
  if (outcome.ok) return outcome.notes;
  return outcome.problems.map((problem) => note("strength.no-density", problem.path, { problem }));
}

/** Grams in a volume of a solution: mL times g/mL; problems as in `solutionDensity`. @example shown(massOfVolume({ species: {}, water: "100", inert: "0" }, 1000, 20).value) // => "998.20 g" */
export function massOfVolume(
  composition: Composition,
  millilitres: DecimalInput,
  temperature: DecimalInput,
  on?: readonly Figure[],
): Outcome<Figure> {
  const density = solutionDensity(composition, temperature, on);
  if (!density.ok) return density;
  const volume = named("strength.volume-given", "volume", "mL", millilitres, "the question");
  const from = { volume, density: density.value };
  const mass = made("mass-of-volume", "mass of the volume", "g", 2, "volume * density", from);
  return answer(withDensityRange(mass, density.value), density.notes);
}

/** An amount of solution: by mass in g, or by volume in mL at the working temperature. */
export type Amount = { readonly grams: DecimalInput } | { readonly millilitres: DecimalInput };

/** Grams of an amount stated by mass or by volume. Problems: `density.powder`, and those of `solutionDensity`. @example gramsOf({ species: {}, water: "100", inert: "0" }, { grams: 5 }, 20).value // => "5" */
export function gramsOf(composition: Composition, amount: Amount, temperature: DecimalInput): Outcome<DecimalText> {
  if ("grams" in amount) return answer(decimalText(dec(amount.grams)));
  const mass = massOfVolume(composition, amount.millilitres, temperature);
  if (mass.ok) return answer(mass.value.value, mass.notes);
  const isPowder = ({ code }: Problem): boolean => code === "density.too-strong";
  return refuse(...mass.problems.map((one) => (isPowder(one) ? problem("density.powder", [], {}) : one)));
}

/** Millilitres that a mass of a solution fills; problems as in `solutionDensity`. @example shown(volumeOfMass({ species: {}, water: "100", inert: "0" }, 1000, 20).value) // => "1001.8 mL" */
export function volumeOfMass(
  composition: Composition,
  grams: DecimalInput | Figure,
  temperature: DecimalInput,
  on?: readonly Figure[],
): Outcome<Figure> {
  const density = solutionDensity(composition, temperature, on);
  if (!density.ok) return density;
  const told = typeof grams === "object" && "working" in grams;
  const mass = told ? grams : named("strength.mass-given", "mass", "g", grams, "the question");
  const volume = made("volume", "volume", "mL", 1, "mass / density", { mass, density: density.value });
  const { range } = density.value;
  const around = range && {
    low: decimalText(exact(mass).div(range.high)),
    high: decimalText(exact(mass).div(range.low)),
    why: range.why,
  };
  return answer({ ...volume, ...(around && { range: around }) }, density.notes);
}

/** A figure that rises with a density, with the doubt of that density. */
function withDensityRange(figure: Figure, density: Figure): Figure {
  if (density.range === undefined) return figure;
  const scale = exact(figure).div(density.value);
  const at = (value: string): string => decimalText(scale.times(value));
  return { ...figure, range: { low: at(density.range.low), high: at(density.range.high), why: density.range.why } };
}
