import { exact, type Figure, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { note, type Outcome, type Problem, problem, refuse } from "../../figure/problem.ts";
import { type DecimalText, dec, sum } from "../../number/decimal.ts";
import { asked, askedFigure, type Given, numberOf, outsideLimits } from "../inputs.ts";
import { type Component, choiOkos, components, densities, type Polynomial, specificHeats } from "./choi-okos.ts";

/** What a dough or food is made of: the mass of each component, in g or any one unit, since only the shares count. */
export type FoodComposition = Readonly<Record<Component, Given>>;

/** A food at a temperature in °C. */
export interface Food {
  readonly composition: FoodComposition;
  readonly temperature: Given;
  /** Begins the ids of the figures; `food` where it is left out. */
  readonly name?: string;
}

const airNaming = { id: "dough.air", label: "air", unit: "%", places: 1 };

/**
 * Estimates the density of a food without pores, in g/mL: the upper bound for a dough, which always holds some air.
 *
 * Temperatures from 0 to 150 °C. Problems: `sheet.out-of-range`, `food.empty`.
 * Source: Choi and Okos 1986 component equations, volumes added up.
 *
 * @example shown(poreFreeDensity({ composition: { water: "49.5", protein: "11.8", fat: "1.5", carbohydrate: "71.7", fibre: "0", ash: "2.4" }, temperature: "25" }).value) // => "1.29 g/mL"
 */
export function poreFreeDensity(food: Food): Outcome<Published<Figure>> {
  const problems = foodProblems(food);
  if (problems.length > 0) return refuse(...problems);
  const present = presentIn(food.composition);
  const naming = { id: "dough.density-pore-free", label: "density without pores", unit: "g/mL", places: 2 };
  const from = {
    masses: present.map((component) => massOf(food, component)),
    densities: present.map((component) => property(component, "density", "kg/m³", densities[component], food)),
  };
  return publish(worked(naming, "sum(masses) / sum(masses / densities) / 1000", from, choiOkos));
}

/**
 * Estimates the density of a dough that holds some air, in g/mL.
 *
 * @param air - share of the volume that is air, 0 to below 100 %; measured by the kitchen, 0 gives the upper bound.
 * Problems: `sheet.out-of-range`, `food.empty`. Source: Choi and Okos 1986; the air by definition of porosity.
 *
 * @example shown(doughDensity({ composition: { water: "49.5", protein: "11.8", fat: "1.5", carbohydrate: "71.7", fibre: "0", ash: "2.4" }, temperature: "25" }, "5").value) // => "1.22 g/mL"
 */
export function doughDensity(food: Food, air: DecimalText): Outcome<Published<Figure>> {
  const problems = outsideLimits([{ path: ["air"], value: air, unit: "%", least: "0", below: "100" }]);
  const dense = poreFreeDensity(food);
  if (!dense.ok) return refuse(...dense.problems, ...problems);
  if (problems.length > 0) return refuse(...problems);
  const naming = { id: "dough.density", label: "dough density", unit: "g/mL", places: 2 };
  const from = { density: dense.value, air: asked(airNaming, air) };
  const density = worked(naming, "density * (1 - air / 100)", from, choiOkos);
  return publish(density, [note("dough.density-estimate", [], {})]);
}

/**
 * Estimates the specific heat of a food from its composition, in kJ/(kg K).
 *
 * Temperatures from 0 to 150 °C. Reads dry flour 8 to 15 % too high: use `flourSpecificHeat` for flour.
 * Problems: `sheet.out-of-range`, `food.empty`. Source: Choi and Okos 1986 component equations.
 *
 * @example shown(specificHeat({ composition: { water: "75", protein: "12.2", fat: "10.2", carbohydrate: "0.4", fibre: "0", ash: "1" }, temperature: "20" }).value) // => "3.65 kJ/(kg K)"
 */
export function specificHeat(food: Food): Outcome<Published<Figure>> {
  const problems = foodProblems(food);
  if (problems.length > 0) return refuse(...problems);
  const present = presentIn(food.composition);
  const unit = "kJ/(kg K)";
  const naming = { id: `${food.name ?? "food"}.specific-heat`, label: "specific heat", unit, places: 2 };
  const from = {
    masses: present.map((component) => massOf(food, component)),
    heats: present.map((component) => property(component, "specific heat", unit, specificHeats[component], food)),
  };
  return publish(worked(naming, "sum(masses * heats) / sum(masses)", from, choiOkos));
}

function foodProblems({ composition, temperature }: Food): readonly Problem[] {
  const problems = outsideLimits([
    { path: ["temperature"], value: temperature, unit: "°C", least: "0", most: "150" },
    ...components.map((component) => ({
      path: ["composition", component],
      value: composition[component],
      unit: "g",
      least: "0",
    })),
  ]);
  if (problems.length > 0) return problems;
  const total = sum(components.map((component) => dec(numberOf(composition[component]))));
  if (total.gt(0)) return [];
  return [problem("food.empty", ["composition"], {})];
}

function presentIn(composition: FoodComposition): readonly Component[] {
  return components.filter((component) => dec(numberOf(composition[component])).gt(0));
}

function massOf({ composition, name = "food" }: Food, component: Component): Figure {
  return askedFigure({ id: `${name}.${component}`, label: component, unit: "g", places: 2 }, composition[component]);
}

function property(component: Component, what: string, unit: string, polynomial: Polynomial, food: Food): Figure {
  const id = `${food.name ?? "food"}.${component}-${what.replace(" ", "-")}`;
  const naming = { id, label: `${what} of ${component}`, unit, places: unit === "kg/m³" ? 1 : 4 };
  return worked(naming, "c0 + c1 * t + c2 * t ^ 2", { ...polynomial, t: food.temperature }, choiOkos);
}

/** The density that a kitchen has measured, g/mL. @example givenDensity("1.24").value // => "1.24" */
export function givenDensity(value: DecimalText): Figure {
  return asked({ id: "dough.density", label: "dough density", unit: "g/mL", places: 3 }, value);
}

/**
 * Finds the share of air in a dough, in % of its volume, from its measured density and the density without pores.
 *
 * Problems: `food.denser-than-solid` when the measured density is above the density without pores.
 *
 * @example shown(airFromDensity(givenDensity("1.22"), poreFreeDensity({ composition: { water: "49.5", protein: "11.8", fat: "1.5", carbohydrate: "71.7", fibre: "0", ash: "2.4" }, temperature: "25" }).value).value) // => "5.2 %"
 */
export function airFromDensity(measured: Figure, poreFree: Figure): Outcome<Published<Figure>> {
  if (exact(measured).gt(exact(poreFree))) {
    const facts = { measured: measured.value, poreFree: poreFree.value };
    return refuse(problem("food.denser-than-solid", ["density"], facts));
  }
  return publish(worked(airNaming, "(1 - measured / poreFree) * 100", { measured, poreFree }, choiOkos));
}
