import * as z from "zod/mini";
import type { Batch } from "../../batch/batch.ts";
import type { Rework } from "../../batch/rework.ts";
import type { WeighedLine } from "../../batch/weighing.ts";
import { type Composition, sharesOf } from "../../chemistry/composition.ts";
import { type DissolvingSalt, isDissolving, speciesNames } from "../../chemistry/species.ts";
import { exact, type Figure, found, given, summed, worked } from "../../figure/figure.ts";
import { type Graph, type Published, published } from "../../figure/graph.ts";
import { measure } from "../../figure/in-system.ts";
import { answer, type Note, note, type Outcome, problem, problemsOf, refuse } from "../../figure/problem.ts";
import { definition, massBalance } from "../../figure/source.ts";
import type { FormulaLine } from "../../formula/line.ts";
import { described, massField } from "../../materials/fields.ts";
import { nearestNames, plainName } from "../../materials/nearest.ts";
import { type DecimalText, dec, decimalText, roundToDivision } from "../../number/decimal.ts";
import { temperatureSchema } from "../../spec/day-schema.ts";
import { readBy } from "../../spec/read-spec.ts";
import type { Spec } from "../../spec/spec.ts";
import { asked, celsius, type Given, placing } from "../inputs.ts";
import { compositionOf } from "./dough-food.ts";
import { specificHeat } from "./food.ts";
import { doughMass, flourSpecificHeat, type Ingredient, type Mix, massOf } from "./heat-balance.ts";
import { type WeighedIce, weighedIce } from "./iced-water.ts";
import { mixerWork } from "./measured-mix.ts";
import type { MixingHeat } from "./mixing-heat.ts";
import { type WaterPlan, waterTemperature } from "./temperature.ts";
import { threeTemperatureWater } from "./three-temperatures.ts";

/** The water temperature of a dough, with the bakers' rule beside it where its friction is known. */
export interface DoughWater {
  readonly plan: WaterPlan;
  readonly water: Figure;
  /** The water as the scale shows it, and its ice. */
  readonly weighed: WeighedWater;
  readonly byRule?: Figure;
  /** How far the rule lies from the heat balance, K. */
  readonly apart?: Figure;
}

/** Water in whole divisions of the scale that weighs it, part of it as ice where the tap is too warm. */
export interface WeighedWater {
  readonly listed: Figure;
  readonly ice?: WeighedIce;
  readonly scale: Pick<WeighedLine, "scale" | "division" | "unit">;
}

type Temperatures = NonNullable<Spec["temperature"]>;

/** A mix without a spec: flour, water and the temperatures. */
const plainMixSchema = described(
  z.strictObject({
    flour: massField("Flour", ["10 kg"]),
    water: massField("Water", ["3.5 kg"]),
    temperature: temperatureSchema,
  }),
  { id: "PlainMix", description: "Flour, water and the temperatures of a mix" },
);

/**
 * Finds the water temperature for a mix of flour and water alone.
 *
 * Problems: those of reading, `temperature.missing`, and those of `waterTemperature`.
 *
 * @example shown(plainMixWater({ flour: "10 kg", water: "3.5 kg", temperature: { dough: "27 °C", flour: "22 °C" } }).value.plan.temperature) // => "19.4 °C"
 */
export function plainMixWater(input: unknown): Outcome<Published<DoughWater>> {
  const reading = readBy(plainMixSchema, input);
  if (!reading.ok) return reading;
  const { flour, water, temperature } = reading.value;
  const needed = neededOf(temperature);
  if (!needed.ok) return needed;
  const mix: Mix = { flour: { mass: flour.value, temperature: needed.value.flour }, water: water.value };
  return balance(mix, temperature, needed.value.dough, { drySalts: [], notes: [], weigh: wholeGrams });
}

/** For a mix without a spec, whose scales are not known. */
const wholeGrams = { scale: "a scale of whole grams", division: "1", unit: "g" } as const;

/**
 * Finds the water temperature for one load of a spec. What is neither flour nor tap water has the temperature of the room unless
 * it has one of its own; rework of the same dough, named `rework`, too.
 *
 * Problems: `temperature.missing`, `temperature.no-tap-water`, `temperature.unknown-ingredient`, `temperature.no-flour-left`, and those of `waterTemperature`, each with its place in the
 * spec.
 */
export function loadWater(spec: Spec, batch: Batch): Outcome<Published<DoughWater>> {
  const temperature = spec.temperature ?? {};
  const needed = neededOf(temperature);
  if (!needed.ok) return needed;
  const lines = batch.lines.filter(({ exact: mass }) => !exact(mass).isZero());
  const water = lines.filter(({ line }) => line.role === "water");
  if (water.length === 0) return refuse(problem("temperature.no-tap-water", ["water"], {}));
  const own = ownTemperatures(temperature, lines, batch.rework !== undefined);
  if (!own.ok) return own;
  const apart = lines.filter((one) => own.value.has(one));
  const others = lines.filter((one) => one.line.role !== "flour" && one.line.role !== "water" && !own.value.has(one));
  const rest = others.length === 0 ? answer([]) : otherIngredients(others, temperature);
  const single = collected(apart.map((one) => singleIngredient(one, own.value.get(one) ?? "0")));
  const old = batch.rework ? collected([reworkBody(batch.rework, lines, temperature)]) : answer([]);
  if (!rest.ok || !single.ok || !old.ok)
    return refuse(...problemsOf(rest), ...problemsOf(single), ...(rest.ok ? problemsOf(old) : []));
  const flour = lines.filter((one) => one.line.role === "flour" && !own.value.has(one));
  if (flour.length === 0) return refuse(problem("temperature.no-flour-left", ["temperature", "ingredients"], {}));
  const bodies = [...rest.value, ...single.value, ...old.value];
  const mix: Mix = {
    flour: { mass: massOfLines("flour", flour), temperature: needed.value.flour },
    water: massOfLines("water", water),
    ...(bodies.length > 0 && { others: bodies }),
  };
  const [first, second] = water;
  return balance(mix, temperature, needed.value.dough, {
    drySalts: drySalts(lines.filter(({ line }) => line.role !== "flour" && line.role !== "water")),
    notes: [...rest.notes, ...saltNotes(apart)],
    ...(batch.rework && { rework: batch.rework.mass }),
    weigh: first ?? wholeGrams,
    graph: batch.graph,
    ...(first && second === undefined && { listed: first.load }),
  });
}

/** The lines that have a temperature of their own, in °C. */
function ownTemperatures(
  { ingredients = {} }: Temperatures,
  lines: readonly WeighedLine[],
  rework: boolean,
): Outcome<ReadonlyMap<WeighedLine, DecimalText>> {
  const there = lines.filter(({ line }) => line.role !== "water");
  const names = [...there.map(({ line }) => line.name), ...(rework ? [reworkName] : [])];
  const own = new Map<WeighedLine, DecimalText>();
  const problems = Object.entries(ingredients).flatMap(([name, { value }]) => {
    const named = there.filter(({ line }) => sameName(line.name, name));
    for (const one of named) own.set(one, value);
    if (names.some((one) => sameName(one, name))) return [];
    const facts = { name, names, nearest: nearestNames(name, names).slice(0, 1) };
    return [problem("temperature.unknown-ingredient", ["temperature", "ingredients", name], facts)];
  });
  return problems.length > 0 ? refuse(...problems) : answer(own);
}

/** What the spec calls rework among the ingredients that have a temperature. */
const reworkName = "rework";

function sameName(one: string, other: string): boolean {
  return plainName(one) === plainName(other);
}

/** Rework is the same dough: it has the composition of the formula, and its salts are dissolved already. */
function reworkBody(
  { mass }: Rework,
  lines: readonly WeighedLine[],
  { room, ingredients = {} }: Temperatures,
): Outcome<Ingredient> {
  const stated = Object.entries(ingredients).find(([name]) => sameName(name, reworkName))?.[1];
  if (stated === undefined && room === undefined) return refuse(missing("room", "rework"));
  const temperature = stated ? bodyTemperature(reworkName, reworkName, stated.value) : roomFigure(room);
  const heat = heatOfLines(lines, reworkName, temperature);
  return heat.ok ? answer({ id: reworkName, name: reworkName, mass, temperature, specificHeat: heat.value }) : heat;
}

function roomFigure(room: Temperatures["room"]): Figure {
  return bodyTemperature("room", "the room", room?.value ?? "0");
}

/** The temperature of flour, of an ingredient, or of the room, which it has: between -30 and 100 °C. */
function bodyTemperature(id: string, of: string, value: DecimalText): Figure {
  return asked({ ...celsius(id, `temperature of ${of}`), bounds: { least: "-30", most: "100" } }, value);
}

/** An ingredient at a temperature of its own. */
function singleIngredient(weighed: WeighedLine, own: DecimalText): Outcome<Ingredient> {
  const { line, exact: mass } = weighed;
  const temperature = bodyTemperature(line.id, line.name, own);
  const body = { id: line.id, name: line.name, mass, temperature };
  if (line.role === "flour") return answer({ ...body, specificHeat: flourSpecificHeat });
  const heat = heatOfLines([weighed], line.id, temperature);
  return heat.ok ? answer({ ...body, specificHeat: heat.value }) : heat;
}

function heatOfLines(weighed: readonly WeighedLine[], name: string, temperature: Figure): Outcome<Figure> {
  const lines = weighed.map(({ line }) => line);
  const { composition } = compositionOf(lines, `${name}.food`);
  const heat = specificHeat({ composition, temperature: atLeastFreezing(temperature, name), name });
  return heat.ok ? heat : placed(heat.problems);
}

/** The temperature by which a specific heat is taken: that of what is frozen is taken at 0 °C. */
function atLeastFreezing(temperature: Figure, name: string): Figure {
  const naming = { id: `${name}.unfrozen`, label: `${temperature.label}, 0 °C at least`, unit: "°C", places: 1 };
  return worked(naming, "max(0, t)", { t: temperature }, definition);
}

function collected<T>(outcomes: readonly Outcome<T>[]): Outcome<readonly T[]> {
  const problems = outcomes.flatMap(problemsOf);
  return problems.length > 0
    ? refuse(...problems)
    : answer(outcomes.flatMap((outcome) => (outcome.ok ? [outcome.value] : [])));
}

function massOfLines(name: string, lines: readonly WeighedLine[]): Figure {
  const naming = { id: `${name.replaceAll(" ", "-")}.mass`, label: `${name} of one load`, unit: "g", places: 1 };
  return summed(naming, { masses: lines.map(({ exact: mass }) => mass) }, massBalance);
}

/** Eggs, salts and all else in one, at the temperature of the room. */
function otherIngredients(others: readonly WeighedLine[], { room }: Temperatures): Outcome<readonly Ingredient[]> {
  if (room === undefined) return refuse(missing("room", "others"));
  const name = "other ingredients";
  const temperature = roomFigure(room);
  const heat = heatOfLines(others, "others", temperature);
  if (!heat.ok) return heat;
  const mass = massOfLines(name, others);
  return answer([{ id: "other-ingredients", name, mass, temperature, specificHeat: heat.value }], saltNotes(others));
}

/** Wetter than this a salt carries crystal water or is a solution, and its heat of solution is another one. */
const driestMoisture = 5;

function drySalts(lines: readonly WeighedLine[]): readonly DrySalt[] {
  return speciesNames.filter(isDissolving).flatMap((salt): readonly DrySalt[] => {
    const holding = lines.flatMap(({ line, exact: mass }) => {
      const share = isDry(line) ? sharesOf(line.material.composition).find(([name]) => name === salt)?.[1] : undefined;
      return share === undefined ? [] : [{ line, mass, share }];
    });
    if (holding.length === 0) return [];
    const share = holding.map(({ line, share: value }) =>
      given(
        { id: `${line.id}.${salt}-share`, label: `${salt} in ${line.name}`, unit: "%", places: 2 },
        value,
        "as stated for the material",
        line.material.source,
      ),
    );
    const naming = { id: `${salt}.mass`, label: `${salt} of one load`, unit: "g", places: 1 };
    const from = { masses: holding.map((one) => one.mass), share };
    const mass = worked(naming, "sum(masses * share) / 100", from, massBalance);
    return [{ salt, mass }];
  });
}

function isDry(line: FormulaLine): line is FormulaLine & { readonly material: { readonly composition: Composition } } {
  return line.material.composition !== undefined && dec(line.material.moisture).lte(driestMoisture);
}

function saltNotes(lines: readonly WeighedLine[]): readonly Note[] {
  return lines.flatMap(({ line }) => {
    const why = uncounted(line);
    return why === undefined ? [] : [note("temperature.no-heat-of-solution", line.path, { name: line.name, ...why })];
  });
}

/** Why no heat of solution is counted for a line, where one might be. */
function uncounted(line: FormulaLine): { readonly salts?: readonly string[] } | undefined {
  if (line.material.composition === undefined) return undefined;
  if (!isDry(line)) return {};
  const unknown = sharesOf(line.material.composition).flatMap(([name]) => (isDissolving(name) ? [] : [name]));
  return unknown.length === 0 ? undefined : { salts: unknown };
}

interface DrySalt {
  readonly salt: DissolvingSalt;
  readonly mass: Given;
}

function neededOf({ dough, flour }: Temperatures): Outcome<{ readonly dough: Figure; readonly flour: Figure }> {
  if (dough === undefined || flour === undefined) {
    const absent = [...(dough ? [] : [missing("dough", "wanted")]), ...(flour ? [] : [missing("flour", "flour")])];
    return refuse(...absent);
  }
  const wanted = { ...celsius("dough", "dough temperature wanted"), bounds: { least: "0", most: "60" } };
  return answer({ dough: asked(wanted, dough.value), flour: bodyTemperature("flour", "flour", flour.value) });
}

function missing(key: "dough" | "flour" | "room", of: "wanted" | "flour" | "rework" | "others") {
  return problem("temperature.missing", ["temperature", key], { key, of });
}

/** What the balance needs beside masses and temperatures. */
interface Beside {
  readonly drySalts: readonly DrySalt[];
  readonly notes: readonly Note[];
  /** Rework of a load, g. */
  readonly rework?: Given;
  /** The scale that weighs the water. */
  readonly weigh: WeighedWater["scale"];
  /** The water as that scale shows it; rounded to it unless stated. */
  readonly listed?: Figure;
  /** What the masses rest on. */
  readonly graph?: Graph;
}

function balance(mix: Mix, temperature: Temperatures, wanted: Figure, beside: Beside): Outcome<Published<DoughWater>> {
  const heat = heatOf(mix, temperature, beside);
  if (!heat.ok) return heat;
  const { tap, ice, room, friction } = temperature;
  const plan = waterTemperature({
    ...mix,
    wanted,
    heat: heat.value,
    ...(tap && { tap: tap.value }),
    ...(ice && { iceTemperature: ice.value }),
  });
  if (!plan.ok) return placed(plan.problems);
  const rule =
    room && friction
      ? threeTemperatureWater({ dough: wanted, flour: mix.flour.temperature, room: roomFigure(room) }, friction.value)
      : undefined;
  if (rule?.ok === false) return placed(rule.problems);
  const water = massOf("water", mix.water);
  const weighed = weighedWater(water, plan.value, beside);
  const apart = rule?.ok ? apartFigure(rule.value, plan.value) : undefined;
  const found: DoughWater = {
    water,
    plan: plan.value,
    weighed,
    ...(rule?.ok && { byRule: rule.value }),
    ...(apart && { apart }),
  };
  return answer(published(found, beside.graph ?? {}), [
    ...beside.notes,
    ...plan.notes.filter(({ code }) => friction === undefined || code !== "temperature.no-mixer-work"),
    ...frictionNotes(temperature, found),
    ...(rule?.ok ? rule.notes : []),
    ...(apart ? apartNotes(apart, temperature) : []),
  ]);
}

function weighedWater(water: Figure, { ice }: WaterPlan, { weigh, listed }: Beside): WeighedWater {
  const { division, scale, unit } = weigh;
  const shown =
    listed ??
    found(
      { id: "water.weighed", label: "water", unit: "g", places: dec(division).decimalPlaces() },
      roundToDivision(exact(water), dec(division)),
      `rounded to ${division} g (${scale})`,
      [water],
      massBalance,
    );
  return { listed: shown, scale: { division, scale, unit }, ...(ice && { ice: weighedIce(ice.ice, shown, weigh) }) };
}

function apartFigure(rule: Figure, { temperature }: WaterPlan): Figure {
  const naming = { id: "water.apart", label: "rule above the heat balance", unit: "K", places: 1 };
  return worked(naming, "rule - balance", { rule, balance: temperature }, definition);
}

/** Friction is the rise of the rule of three, which counts each temperature as one third: no heat that a balance of masses could take. */
function frictionNotes(
  { friction, mixingHeat, mixerPower, mixingTime }: Temperatures,
  found: DoughWater,
): readonly Note[] {
  if (friction === undefined || mixingHeat !== undefined || (mixerPower && mixingTime)) return [];
  const { byRule, apart } = found;
  const facts = {
    friction: measure(friction.value, "K"),
    ...(byRule &&
      apart && {
        rule: measure(byRule.value, "°C", 1),
        apart: measure(exact(apart).abs(), "K", 1),
        colder: exact(apart).isNegative(),
      }),
  };
  return [note("temperature.friction-alone", ["temperature", "friction"], facts)];
}

/** K, common practice, no source: further apart than the masses account for in most doughs. */
const FAR_APART = 15;

function apartNotes(
  apart: Figure,
  { room, ice, mixerPower, mixingTime, mixingHeat, friction }: Temperatures,
): readonly Note[] {
  if (exact(apart).abs().lte(FAR_APART)) return [];
  const work = mixerPower && mixingTime && `mixer power ${mixerPower.text} for ${mixingTime.text}`;
  const inputs = [
    room && `room ${room.text}`,
    ice && `ice ${ice.text}`,
    mixingHeat ? `heat of mixing ${mixingHeat.text}` : work,
    friction && `friction ${friction.text}`,
  ].filter((input) => input !== undefined);
  const facts = { apart: measure(exact(apart).abs(), "K", 0), inputs, power: work !== undefined };
  return [note("temperature.far-apart", ["temperature"], facts)];
}

function heatOf(
  mix: Mix,
  { mixingHeat, mixerPower, mixingTime }: Temperatures,
  { drySalts, rework }: Beside,
): Outcome<MixingHeat> {
  if (mixingHeat !== undefined) return answer({ kind: "measured", perKilogram: mixingHeat.value });
  const estimated = { kind: "estimated", drySalts, ...(rework && { rework }) } as const;
  if (mixerPower === undefined || mixingTime === undefined) return answer(estimated);
  const minutes = decimalText(dec(mixingTime.value).div(60));
  const work = mixerWork({ power: mixerPower.value, minutes, dough: doughMass(mix) });
  return work.ok ? answer({ ...estimated, mixerWork: work.value }) : placed(work.problems);
}

/** Where in the spec the names of the request stand. */
const places = {
  wanted: ["temperature", "dough"],
  flour: ["temperature", "flour"],
  others: ["temperature", "room"],
  tap: ["temperature", "tap"],
  iceTemperature: ["temperature", "ice"],
  heat: ["temperature", "mixingHeat"],
  "heat.mixerWork": ["temperature", "mixerPower"],
  power: ["temperature", "mixerPower"],
  minutes: ["temperature", "mixingTime"],
  friction: ["temperature", "friction"],
};

const placed = placing(places, ["temperature"]);
