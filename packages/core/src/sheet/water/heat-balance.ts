import { type Figure, given, summed, worked } from "../../figure/figure.ts";
import { frozen } from "../../figure/frozen.ts";
import type { Problem } from "../../figure/problem.ts";
import { definition, type Source } from "../../figure/source.ts";
import { askedFigure, celsius, type Given, type Limits, outsideLimits } from "../inputs.ts";

/** Something that goes into the mix with a temperature of its own: g, °C, kJ/(kg K). */
export interface Ingredient {
  /** Begins the ids of its figures; its place among the others unless given. */
  readonly id?: string;
  readonly name: string;
  readonly mass: Given;
  readonly temperature: Given;
  readonly specificHeat: Figure;
}

/** What a mix is made of. The bowl is warmed with the dough without being dough. */
export interface Mix {
  readonly flour: { readonly mass: Given; readonly temperature: Given; readonly specificHeat?: Figure };
  /** Water, ice included, g. */
  readonly water: Given;
  readonly others?: readonly Ingredient[];
  readonly bowl?: Ingredient;
}

const geankoplis: Source = {
  cite: "Geankoplis, Transport Processes and Separation Process Principles, 4th ed.",
  at: "appendix A.4-1",
  standing: "read",
};
/** A textbook problem on a dough of 2 kg flour and 1 kg water. */
export const doughProblem: Source = {
  cite: "Çengel and Boles, Thermodynamics, 8th ed.",
  at: "problem 5-157, a mixed dough",
  standing: "read",
};

/**
 * The specific heat of flour with 12 to 13.5 % water, kJ/(kg K): the middle of the measured 1.80 to 1.88. The composition
 * equations give about 2.0 for the same flour, so the measured figure is taken.
 */
export const flourSpecificHeat: Figure = frozen({
  ...given(
    { id: "flour.specific-heat", label: "specific heat of flour", unit: "kJ/(kg K)", places: 2 },
    "1.84",
    "middle of the table values",
    geankoplis,
  ),
  range: { low: "1.80", high: "1.88", why: "table values for 12 to 13.5 % water" },
});

/** The specific heat of liquid water, kJ/(kg K). */
export const waterSpecificHeat: Figure = frozen(
  given(
    { id: "water.specific-heat", label: "specific heat of water", unit: "kJ/(kg K)", places: 2 },
    "4.18",
    "table value",
    doughProblem,
  ),
);

/** What takes part in the balance beside the water. */
function bodiesOf({ flour, others, bowl }: Mix): readonly Body[] {
  const specificHeat = flour.specificHeat ?? flourSpecificHeat;
  return [
    { ...flour, id: "flour", name: "flour", specificHeat },
    ...placed(others),
    ...(bowl === undefined ? [] : [{ id: "bowl", ...bowl }]),
  ];
}

type Body = Ingredient & Required<Pick<Ingredient, "id">>;

function placed(others: Mix["others"] = []): readonly Body[] {
  return others.map((one, index) => ({ id: `other.${index + 1}`, ...one }));
}

/** Dough of a mix: everything but the bowl, g. */
export function doughMass({ flour, water, others }: Mix): Figure {
  return summed(
    { id: "mix.dough", label: "dough", unit: "g", places: 0 },
    { masses: [massOf("flour", flour.mass), massOf("water", water), ...placed(others).map(mass)] },
    definition,
  );
}

/** Heat taken up by everything but the water on its way to a temperature, kJ. */
export function heatTakenUp(mix: Mix, temperature: Figure): Figure {
  const bodies = bodiesOf(mix);
  return worked(
    { id: "mix.heat-taken-up", label: "heat taken up by flour, other ingredients and bowl", unit: "kJ", places: 1 },
    "sum(masses / 1000 * heats * rises)",
    {
      masses: bodies.map(mass),
      heats: bodies.map((body) => body.specificHeat),
      rises: bodies.map((body) => rise(body, temperature)),
    },
    definition,
  );
}

function mass({ id, name, mass: value }: Body): Figure {
  return massOf(id, value, name);
}

/** The figure of a mass that goes into the mix. */
export function massOf(id: string, value: Given, name = id): Figure {
  return askedFigure({ id: `${id}.mass`, label: name, unit: "g", places: 1 }, value);
}

function rise({ id, name, temperature }: Body, wanted: Figure): Figure {
  const own = askedFigure(celsius(id, `temperature of ${name}`), temperature);
  const naming = { id: `${id}.rise`, label: `rise of ${name}`, unit: "K", places: 1 };
  return worked(naming, "wanted - own", { wanted, own }, definition);
}

/** What a mix has to keep to. */
export function mixProblems(mix: Mix): readonly Problem[] {
  const { flour, water, others = [], bowl } = mix;
  return outsideLimits([
    ...bodyLimits(["flour"], flour.mass, flour.temperature, flour.specificHeat),
    { path: ["water"], value: water, unit: "g", above: "0" },
    ...others.flatMap((other, index) =>
      bodyLimits(["others", index], other.mass, other.temperature, other.specificHeat),
    ),
    ...(bowl === undefined ? [] : bodyLimits(["bowl"], bowl.mass, bowl.temperature, bowl.specificHeat)),
  ]);
}

function bodyLimits(
  path: readonly (string | number)[],
  value: Given,
  temperature: Given,
  specificHeat: Figure | undefined,
): readonly Limits[] {
  return [
    { path: [...path, "mass"], value: value, unit: "g", above: "0" },
    { path: [...path, "temperature"], value: temperature, unit: "°C", least: "-30", most: "100" },
    { path: [...path, "specificHeat"], value: specificHeat?.value, unit: "kJ/(kg K)", above: "0", most: "5" },
  ];
}

/** The flour temperature at which the balance would close with so much less heat, °C. */
export function coolerFlour({ flour }: Mix, surplus: Figure): Figure {
  const naming = { id: "flour.cooler", label: "temperature of the flour", unit: "°C", places: 0 };
  const from = { own: flour.temperature, surplus, mass: flour.mass, heat: flour.specificHeat ?? flourSpecificHeat };
  return worked(naming, "own - surplus / (mass / 1000 * heat)", from, definition);
}
