import { type Figure, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { note, type Outcome, refuse } from "../../figure/problem.ts";
import { definition, type Source } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";
import { asked, askedFigure, askedOr, type Given, outsideLimits } from "../inputs.ts";
import { waterSpecificHeat } from "../water/heat-balance.ts";

const boilingTest: Source = {
  cite: "appendix text of a Chinese sensory noodle method: 50 g of noodles boiled in 500 mL",
  standing: "read",
};

const potNaming = { id: "pot.water", label: "pot water", unit: "g", places: 0 };
const powerNaming = { id: "pot.power", label: "power into the water", unit: "kW", places: 1 };

/** Temperature of the noodles that go into the pot. */
export const rawTemperature = { id: "pot.raw-temperature", label: "their temperature", unit: "°C", places: 0 };

/**
 * Finds the water of a pot for the noodles that are in it at one time, g.
 *
 * @param raw - raw noodles in the pot at one time, g
 * @param perGram - g of water for a g of noodles, 2 to 50; 10 where it is left out
 * Problems: `sheet.out-of-range`. Source: a laboratory boiling test.
 *
 * @example shown(potWater("1000").value) // => "10000 g"
 */
export function potWater(raw: Given, perGram?: Given): Outcome<Published<Figure>> {
  const problems = outsideLimits([
    { path: ["raw"], value: raw, unit: "g", above: "0" },
    { path: ["perGram"], value: perGram, unit: "", least: "2", most: "50" },
  ]);
  if (problems.length > 0) return refuse(...problems);
  const share = askedOr({ id: "pot.share", label: "water for a gram of noodles", unit: "g/g", places: 0 }, perGram, {
    value: "10",
    source: boilingTest,
  });
  return publish(worked(potNaming, "raw * share", { raw: rawInPot(raw), share }, ...share.sources));
}

/** The noodles that are in a pot at one time. */
export function rawInPot(raw: Given): Figure {
  return askedFigure({ id: "pot.raw", label: "raw noodles in the pot", unit: "g", places: 0 }, raw);
}

/** A basket of raw noodles going into a boiling pot: g, °C, kJ/(kg K), kW. */
export interface Basket {
  readonly water: Given;
  readonly raw: Given;
  readonly rawTemperature: Given;
  readonly rawSpecificHeat: Figure;
  /** Power that reaches the water, as `powerIntoWater` measures it. */
  readonly power: DecimalText;
  /** Boiling point of the pot, °C; 100 where it is left out, lower in high places. */
  readonly boilingPoint?: DecimalText;
}

/** What a basket does to the pot. */
export interface PotRecovery {
  /** How far the pot falls, K. */
  readonly drop: Figure;
  /** How long it takes to boil again, s. */
  readonly recovery: Figure;
}

/** What the recovery of a pot leaves out. */
const assumptions = [note("pot.estimate", [], {})];

/**
 * Estimates how far a pot falls when a basket goes in and how long it takes to boil again.
 *
 * Problems: `sheet.out-of-range`. Source: first law.
 *
 * @example shown(potRecovery({ water: "20000", raw: "1000", rawTemperature: "10", rawSpecificHeat: waterSpecificHeat, power: "9" }).value.drop) // => "4.3 K"
 */
export function potRecovery(basket: Basket): Outcome<Published<PotRecovery>> {
  const problems = outsideLimits([
    { path: ["water"], value: basket.water, unit: "g", above: "0" },
    { path: ["raw"], value: basket.raw, unit: "g", above: "0" },
    { path: ["rawTemperature"], value: basket.rawTemperature, unit: "°C", least: "0", below: "70" },
    { path: ["rawSpecificHeat"], value: basket.rawSpecificHeat.value, unit: "kJ/(kg K)", above: "0", most: "5" },
    { path: ["power"], value: basket.power, unit: "kW", above: "0", most: "1000" },
    { path: ["boilingPoint"], value: basket.boilingPoint, unit: "°C", least: "70", most: "105" },
  ]);
  if (problems.length > 0) return refuse(...problems);
  const boiling = askedOr({ id: "pot.boiling", label: "boiling point", unit: "°C", places: 0 }, basket.boilingPoint, {
    value: "100",
    source: { ...definition, cite: "water at sea level" },
  });
  const raw = rawInPot(basket.raw);
  const water = askedFigure(potNaming, basket.water);
  const own = askedFigure(rawTemperature, basket.rawTemperature);
  const heat = worked(
    { id: "pot.heat", label: "heat the noodles take up", unit: "kJ", places: 0 },
    "raw / 1000 * specific * (boiling - own)",
    { raw, specific: basket.rawSpecificHeat, boiling, own },
    definition,
  );
  const drop = worked(
    { id: "pot.drop", label: "fall of the pot", unit: "K", places: 1 },
    "heat / (water / 1000 * waterHeat + raw / 1000 * specific)",
    { heat, water, waterHeat: waterSpecificHeat, raw, specific: basket.rawSpecificHeat },
    definition,
  );
  const power = asked(powerNaming, basket.power);
  const recoveryNaming = { id: "pot.recovery", label: "time to boil again", unit: "s", places: 0 };
  const recovery = worked(recoveryNaming, "heat / power", { heat, power }, definition);
  return publish({ drop, recovery }, assumptions);
}

/** A pot of water that was timed as it warmed: g, °C, s. */
export interface TimedPot {
  readonly water: DecimalText;
  readonly from: DecimalText;
  readonly to: DecimalText;
  readonly seconds: DecimalText;
}

/**
 * Finds the power that reaches the water of a pot from a timed warming, kW.
 *
 * Problems: `sheet.out-of-range`. Source: first law.
 *
 * @example shown(powerIntoWater({ water: "20000", from: "20", to: "80", seconds: "600" }).value) // => "8.4 kW"
 */
export function powerIntoWater(pot: TimedPot): Outcome<Published<Figure>> {
  const problems = outsideLimits([
    { path: ["water"], value: pot.water, unit: "g", above: "0" },
    { path: ["from"], value: pot.from, unit: "°C", least: "0", most: "100" },
    { path: ["to"], value: pot.to, unit: "°C", above: pot.from, most: "100" },
    { path: ["seconds"], value: pot.seconds, unit: "s", above: "0" },
  ]);
  if (problems.length > 0) return refuse(...problems);
  const from = { ...pot, heat: waterSpecificHeat };
  return publish(worked(powerNaming, "water / 1000 * heat * (to - from) / seconds", from, definition));
}
