import { type Figure, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { type Outcome, refuse } from "../../figure/problem.ts";
import { definition } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";
import { asked, askedFigure, celsius, type Given, outsideLimits } from "../inputs.ts";
import { doughMass, heatTakenUp, type Mix, mixProblems, waterSpecificHeat } from "./heat-balance.ts";

/** A mix as it was made: what went in, and the temperature its dough came out with. */
export interface MeasuredMix extends Mix {
  readonly waterTemperature: DecimalText;
  readonly doughTemperature: DecimalText;
}

/**
 * Finds the heat of mixing of one measured mix, in kJ/kg of dough: hydration, mixer work and loss to the room in one. It is
 * the kitchen's own figure for this mixer, dough and time, and takes the place of the estimate.
 *
 * Problems: `sheet.out-of-range`.
 *
 * @example shown(mixingHeat({ flour: { mass: "10000", temperature: "22" }, water: "3500", waterTemperature: "28.67", doughTemperature: "27" }).value) // => "5.0 kJ/kg"
 */
export function mixingHeat(mix: MeasuredMix): Outcome<Published<Figure>> {
  const problems = [
    ...mixProblems(mix),
    ...outsideLimits([
      { path: ["waterTemperature"], value: mix.waterTemperature, unit: "°C", least: "0", most: "100" },
      { path: ["doughTemperature"], value: mix.doughTemperature, unit: "°C", least: "0", most: "100" },
    ]),
  ];
  if (problems.length > 0) return refuse(...problems);
  const reached = asked(celsius("dough", "dough temperature"), mix.doughTemperature);
  const { water, waterTemperature: own } = mix;
  const from = {
    takenUp: heatTakenUp(mix, reached),
    water,
    heat: waterSpecificHeat,
    reached,
    own,
    dough: doughMass(mix),
  };
  const naming = { id: "mix.heat", label: "measured heat of mixing", unit: "kJ/kg", places: 1 };
  const formula = "(takenUp + water / 1000 * heat * (reached - own)) / (dough / 1000)";
  return publish(worked(naming, formula, from, definition));
}

/** A mixer at work: power that goes into the dough in kW, minutes, dough in g. */
export interface MixerRun {
  readonly power: DecimalText;
  readonly minutes: DecimalText;
  readonly dough: Given;
}

/**
 * Finds the work a mixer puts into a dough, in kJ/kg: at most its power for the time it runs.
 *
 * Problems: `sheet.out-of-range`.
 *
 * @example shown(mixerWork({ power: "0.75", minutes: "10", dough: "13500" }).value) // => "33.3 kJ/kg"
 */
export function mixerWork({ power, minutes, dough }: MixerRun): Outcome<Published<Figure>> {
  const problems = outsideLimits([
    { path: ["power"], value: power, unit: "kW", least: "0", most: "1000" },
    { path: ["minutes"], value: minutes, unit: "min", least: "0", most: "600" },
    { path: ["dough"], value: dough, unit: "g", above: "0" },
  ]);
  if (problems.length > 0) return refuse(...problems);
  const naming = { id: "mix.work", label: "mixer work", unit: "kJ/kg", places: 1 };
  const from = {
    power: asked({ id: "mixer.power", label: "power", unit: "kW", places: 2 }, power),
    minutes: asked({ id: "mixer.minutes", label: "mixing time", unit: "min", places: 0 }, minutes),
    dough: askedFigure({ id: "mix.dough", label: "dough", unit: "g", places: 0 }, dough),
  };
  return publish(worked(naming, "power * minutes * 60 / (dough / 1000)", from, definition));
}
