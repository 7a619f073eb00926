import { exact, type Figure, standing, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { type Note, note, type Outcome, type Problem, problem, refuse } from "../../figure/problem.ts";
import { definition } from "../../figure/source.ts";
import { type DecimalText, dec, fixedText, floorToDivision, ONE } from "../../number/decimal.ts";
import { asked, askedFigure, celsius, type Given, outsideLimits } from "../inputs.ts";
import {
  coolerFlour,
  doughMass,
  heatTakenUp,
  type Mix,
  massOf,
  mixProblems,
  waterSpecificHeat,
} from "./heat-balance.ts";
import { heatToMelt, iceMass, meltingIce } from "./ice.ts";
import { heatMade, heatProblems, type MixingHeat } from "./mixing-heat.ts";

/** The dough temperature that is wanted, °C, and what it is made from. */
export interface WaterRequest extends Mix {
  readonly wanted: Given;
  readonly heat: MixingHeat;
  /** Temperature of the water from the tap, °C. */
  readonly tap?: DecimalText;
  /** Temperature of the ice, °C, 0 or below; 0 where it is left out. */
  readonly iceTemperature?: DecimalText;
}

/** The water that brings a dough to its temperature. */
export interface WaterPlan {
  /** Temperature of all the water in one, °C; below 0 it can only be reached with ice. */
  readonly temperature: Figure;
  readonly dough: Figure;
  readonly heatMade: Figure;
  /** Where the tap is too warm: so much of the water as ice, the rest from the tap. */
  readonly ice?: { readonly ice: Figure; readonly tapWater: Figure /** Of the water, %. */; readonly share: Figure };
}

/**
 * Finds the water temperature that brings a dough to the temperature wanted, by a heat balance over its masses.
 *
 * What is lost to the air of the room is part of the kitchen's own measured heat of mixing. Where the tap is warmer than the water has to
 * be, part of it is ice. Temperatures in °C, dough wanted at 0 to 60.
 * Problems: `sheet.out-of-range`, `temperature.needs-ice`, `temperature.too-warm`, `temperature.too-cold`.
 * Source: first law; specific heats, hydration and melting as the figures say.
 *
 * @example shown(waterTemperature({ flour: { mass: "10000", temperature: "22" }, water: "3500", wanted: "27", heat: { kind: "measured", perKilogram: "5" } }).value.temperature) // => "28.7 °C"
 */
export function waterTemperature(request: WaterRequest): Outcome<Published<WaterPlan>> {
  const problems = [
    ...mixProblems(request),
    ...heatProblems(request.heat),
    ...outsideLimits([
      { path: ["wanted"], value: request.wanted, unit: "°C", least: "0", most: "60" },
      { path: ["tap"], value: request.tap, unit: "°C", above: "0", most: "100" },
      { path: ["iceTemperature"], value: request.iceTemperature, unit: "°C", least: "-40", most: "0" },
    ]),
  ];
  if (problems.length > 0) return refuse(...problems);
  const wanted = askedFigure(celsius("dough", "dough temperature wanted"), request.wanted);
  const water = massOf("water", request.water);
  const dough = doughMass(request);
  const made = heatMade(request.heat, dough);
  const naming = { ...celsius("water", "water temperature"), bounds: { most: "100" } };
  const from = { wanted, takenUp: heatTakenUp(request, wanted), made, water, heat: waterSpecificHeat };
  const temperature = worked(naming, "wanted + (takenUp - made) / (water / 1000 * heat)", from, definition);
  const plan = { temperature, dough, heatMade: made };
  const shown = (places: number) => ({ temperature: fixedText(temperature.value, places) });
  if (exact(temperature).gt(100)) return refuse(problem("temperature.too-cold", ["flour", "temperature"], shown(0)));
  if (request.tap === undefined) {
    if (exact(temperature).lt(0)) return refuse(problem("temperature.needs-ice", ["tap"], shown(1)));
    return publish(
      { ...plan, temperature: { ...temperature, bounds: { least: "0", most: "100" } } },
      notesOn(request, temperature),
    );
  }
  const tapNaming = celsius("tap", "temperature of the tap water");
  const tap = asked({ ...tapNaming, bounds: { least: "0", most: "100" } }, request.tap);
  if (exact(temperature).gte(exact(tap))) {
    const untouched = standing(temperature, { least: tap });
    return publish({ ...plan, temperature: untouched }, notesOn(request, temperature));
  }
  const without = { ...standing(temperature, { most: tap }), label: "temperature the water would need without ice" };
  return withIce(request, { ...plan, temperature: without }, water, tap);
}

function withIce(request: WaterRequest, plan: WaterPlan, water: Figure, tap: Figure): Outcome<Published<WaterPlan>> {
  const iceTemperature =
    request.iceTemperature === undefined
      ? meltingIce
      : asked(celsius("ice", "temperature of the ice"), request.iceTemperature);
  const ice = standing(iceMass(water, tap, plan.temperature, iceTemperature), { most: water });
  if (exact(ice).gt(exact(water))) return refuse(tooWarm(request, plan, water, iceTemperature));
  const tapWaterNaming = { id: "water.from-tap", label: "water from the tap beside the ice", unit: "g", places: 1 };
  const tapWater = worked(tapWaterNaming, "water - ice", { water, ice }, definition);
  const shareNaming = { id: "water.ice-share", label: "ice, % of the water", unit: "%", places: 0 };
  const share = worked(shareNaming, "ice / water * 100", { ice, water }, definition);
  const notes = [...notesOn(request, plan.temperature), meltNote(share)];
  return publish({ ...plan, ice: { ice, tapWater, share } }, notes);
}

/** More than melts in time in most mixers, %: common practice, no source. */
const MUCH_ICE = 50;

function meltNote(share: Figure): Note {
  return exact(share).gt(MUCH_ICE)
    ? note("temperature.much-ice", ["temperature"], { ice: fixedText(share.value, 0) })
    : note("temperature.ice-melts", ["temperature"], {});
}

function tooWarm(request: WaterRequest, plan: WaterPlan, water: Figure, iceTemperature: Figure): Problem {
  const naming = { id: "mix.surplus", label: "heat that all the water as ice cannot take up", unit: "kJ", places: 1 };
  const from = { water, melting: heatToMelt(iceTemperature), heat: waterSpecificHeat, wanted: plan.temperature };
  const surplus = worked(naming, "water / 1000 * (-melting - heat * wanted)", from, definition);
  const flour = coolerFlour(request, surplus);
  const coolEnough = floorToDivision(dec(flour.value), ONE);
  return problem("temperature.too-warm", ["flour", "temperature"], { coolEnough: fixedText(coolEnough, 0) });
}

function notesOn({ heat }: WaterRequest, temperature: Figure): readonly Note[] {
  const estimated = heat.kind === "estimated" ? heat : undefined;
  return [
    ...(estimated && !estimated.hydration ? [note("temperature.textbook-hydration", ["heat"], {})] : []),
    ...(estimated && !estimated.mixerWork ? [note("temperature.no-mixer-work", ["heat"], {})] : []),
    ...(exact(temperature).gt(45) ? [note("temperature.hot-water", [], {})] : []),
  ];
}
