import { type Figure, type Naming, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { note, type Outcome, type Problem, refuse } from "../../figure/problem.ts";
import type { Source } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";
import { asked, askedFigure, celsius, type Given, type Limits, outsideLimits } from "../inputs.ts";

/** The bakers' rule of three temperatures. All in °C; friction as the rise it stands for. */
export interface ThreeTemperatures {
  readonly dough: Given;
  readonly flour: Given;
  readonly room: Given;
}

const bakersRule: Source = {
  cite: "bakery trade magazine, June 2018, p. 29, rule of three temperatures",
  standing: "read",
};

const noMasses = note("temperature.rule-without-masses", [], {});

/**
 * Finds the water temperature by the bakers' rule, °C: a cross-check of the heat balance, since the rule has no masses.
 *
 * Problems: `sheet.out-of-range`. Source: bakery trade.
 *
 * @example shown(threeTemperatureWater({ dough: "26", flour: "18", room: "18" }, "8").value) // => "34.0 °C"
 */
export function threeTemperatureWater(
  temperatures: ThreeTemperatures,
  friction: DecimalText,
): Outcome<Published<Figure>> {
  const naming = {
    id: "water.three-temperatures",
    label: "water temperature by the rule of three",
    unit: "°C",
    places: 1,
  };
  const limits = { path: ["friction"], value: friction, unit: "K", least: "-20", most: "60" };
  return byRule(naming, temperatures, asked(frictionNaming, friction), limits);
}

/**
 * Finds the friction figure of the bakers' rule from one measured mix, K.
 *
 * Problems: `sheet.out-of-range`. Source: bakery trade.
 *
 * @example shown(frictionFrom({ dough: "26", flour: "18", room: "18" }, "34").value) // => "8.0 K"
 */
export function frictionFrom(temperatures: ThreeTemperatures, water: DecimalText): Outcome<Published<Figure>> {
  const limits = { path: ["water"], value: water, unit: "°C", least: "0", most: "100" };
  const own = asked({ id: "rule.water", label: "temperature of the water", unit: "°C", places: 1 }, water);
  return byRule(frictionNaming, temperatures, own, limits);
}

const frictionNaming = { id: "rule.friction", label: "friction", unit: "K", places: 1 };

/** What three times the dough is above flour, room and one more: the water, or the friction. */
function byRule(
  naming: Naming,
  { dough, flour, room }: ThreeTemperatures,
  last: Figure,
  limits: Limits,
): Outcome<Published<Figure>> {
  const problems = [...temperatureProblems({ dough, flour, room }), ...outsideLimits([limits])];
  if (problems.length > 0) return refuse(...problems);
  const from = {
    dough: askedFigure(celsius("dough", "temperature of the dough"), dough),
    flour: askedFigure(celsius("flour", "temperature of the flour"), flour),
    room: askedFigure(celsius("room", "temperature of the room"), room),
    last,
  };
  return publish(worked(naming, "3 * dough - flour - room - last", from, bakersRule), [noMasses]);
}

function temperatureProblems({ dough, flour, room }: ThreeTemperatures): readonly Problem[] {
  const usual = { unit: "°C", least: "-30", most: "60" };
  return outsideLimits([
    { path: ["dough"], value: dough, ...usual },
    { path: ["flour"], value: flour, ...usual },
    { path: ["room"], value: room, ...usual },
  ]);
}
