import * as z from "zod";
import type { Batch } from "../batch/batch.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { type Composition, sharesOf } from "../chemistry/composition.ts";
import { exact, type Figure, given, withOrigins, worked } from "../figure/figure.ts";
import {
  answer,
  inputProblem,
  type Note,
  noAnswer,
  type Outcome,
  type Path,
  type Problem,
  refuse,
} from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import { temperatureSchema } from "../formula/day-schema.ts";
import type { FormulaLine } from "../formula/lines.ts";
import { readBy } from "../formula/read-spec.ts";
import type { Spec } from "../formula/spec.ts";
import { massField } from "../materials/fields.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { compositionOf } from "./dough-food.ts";
import { specificHeat } from "./food.ts";
import { doughMass, type Ingredient, type Mix, massOf } from "./heat-balance.ts";
import { type DissolvingSalt, dissolvingSalts } from "./heat-of-solution.ts";
import type { Given } from "./inputs.ts";
import { mixerWork } from "./measured-mix.ts";
import type { MixingHeat } from "./mixing-heat.ts";
import { type WaterPlan, waterTemperature } from "./temperature.ts";
import { threeTemperatureWater } from "./three-temperatures.ts";

/** The water temperature of a dough, with the bakers' rule beside it where its friction is known. */
export interface DoughWater {
  readonly plan: WaterPlan;
  readonly water: Figure;
  readonly byRule?: Figure;
  /** Every figure, leaves first. */
  readonly figures: readonly Figure[];
}

type Temperatures = NonNullable<Spec["temperature"]>;

/** A mix without a spec: flour, water and the temperatures. */
export const plainMixSchema = z
  .strictObject({
    flour: massField("Flour", ["10 kg"]),
    water: massField("Water", ["3.5 kg"]),
    temperature: temperatureSchema,
  })
  .meta({ id: "PlainMix", description: "Flour, water and the temperatures of a mix" });

/**
 * Finds the water temperature for a mix of flour and water alone.
 *
 * Problems: those of reading, `temperature.missing`, and those of `waterTemperature`.
 *
 * @example plainMixWater({ flour: "10 kg", water: "3.5 kg", temperature: { dough: "27 °C", flour: "22 °C" } }).ok // => true
 */
export function plainMixWater(input: unknown): Outcome<DoughWater> {
  const reading = readBy(plainMixSchema, input);
  if (!reading.ok) return reading;
  const { flour, water, temperature } = reading.value;
  const needed = neededOf(temperature);
  if (!needed.ok) return needed;
  const mix: Mix = { flour: { mass: flour.value, temperature: needed.value.flour }, water: water.value };
  return balance(mix, temperature, needed.value.dough, [], []);
}

/**
 * Finds the water temperature for one load of a spec. What is neither flour nor tap water has the temperature of the room.
 *
 * Problems: `temperature.missing`, `temperature.no-tap-water`, and those of `waterTemperature`, each with its place in the
 * spec.
 */
export function loadWater(spec: Spec, batch: Batch): Outcome<DoughWater> {
  const temperature = spec.temperature ?? {};
  const needed = neededOf(temperature);
  if (!needed.ok) return needed;
  const lines = batch.lines.filter(({ exact: mass }) => !exact(mass).isZero());
  const water = lines.filter(({ line }) => line.role === "water");
  if (water.length === 0) return refuse(noTapWater());
  const others = lines.filter(({ line }) => line.role !== "flour" && line.role !== "water");
  const rest = others.length === 0 ? answer([]) : otherIngredients(others, temperature);
  if (!rest.ok) return rest;
  const flour = lines.filter(({ line }) => line.role === "flour");
  const mix: Mix = {
    flour: { mass: massOfLines("flour", flour), temperature: needed.value.flour },
    water: massOfLines("water", water),
    ...(rest.value.length > 0 && { others: rest.value }),
  };
  return balance(mix, temperature, needed.value.dough, drySalts(others), rest.notes);
}

function massOfLines(name: string, lines: readonly WeighedLine[]): Figure {
  return worked({
    id: `${name.replaceAll(" ", "-")}.mass`,
    label: `${name} of one load`,
    unit: "g",
    places: 1,
    formula: "sum(masses)",
    from: { masses: lines.map(({ exact: mass }) => mass) },
    sources: [massBalance],
  });
}

/** Eggs, salts and all else in one, at the temperature of the room. */
function otherIngredients(others: readonly WeighedLine[], { room }: Temperatures): Outcome<readonly Ingredient[]> {
  if (room === undefined)
    return refuse(missing("room", "the temperature of the room, which all other ingredients have"));
  const name = "other ingredients";
  const { composition } = compositionOf(
    others.map(({ line }) => line),
    "others",
  );
  const heat = specificHeat({ composition, temperature: dec(room.value).lt(0) ? "0" : room.value, name: "others" });
  if (!heat.ok) return placed(heat.problems);
  const mass = massOfLines(name, others);
  return answer([{ name, mass, temperature: room.value, specificHeat: heat.value }], saltNotes(others));
}

/** Wetter than this a salt carries crystal water or is a solution, and its heat of solution is another one. */
const driestMoisture = 5;

function drySalts(lines: readonly WeighedLine[]): readonly DrySalt[] {
  return dissolvingSalts.flatMap((salt): readonly DrySalt[] => {
    const holding = lines.flatMap(({ line, exact: mass }) => {
      const share = isDry(line) ? sharesOf(line.material.composition).find(([name]) => name === salt)?.[1] : undefined;
      return share === undefined ? [] : [{ line, mass, share }];
    });
    if (holding.length === 0) return [];
    const share = holding.map(({ line, share: value }) =>
      given({
        id: `${line.id}.${salt}-share`,
        label: `${salt} in ${line.name}`,
        unit: "%",
        places: 2,
        value,
        by: "as stated for the material",
        sources: [line.material.source],
      }),
    );
    const mass = worked({
      id: `${salt}.mass`,
      label: `${salt} of one load`,
      unit: "g",
      places: 1,
      formula: "sum(masses * share) / 100",
      from: { masses: holding.map((one) => one.mass), share },
      sources: [massBalance],
    });
    return [{ salt, mass }];
  });
}

function isDry(line: FormulaLine): line is FormulaLine & { readonly material: { readonly composition: Composition } } {
  return line.material.composition !== undefined && dec(line.material.moisture).lte(driestMoisture);
}

function saltNotes(lines: readonly WeighedLine[]): readonly Note[] {
  return lines
    .filter(({ line }) => line.material.composition !== undefined && !isDry(line))
    .map(({ line }) => ({
      code: "temperature.no-heat-of-solution",
      path: line.path,
      text: `${line.name} holds water, so no heat of solution is counted for it.`,
    }));
}

interface DrySalt {
  readonly salt: DissolvingSalt;
  readonly mass: Given;
}

function neededOf({
  dough,
  flour,
}: Temperatures): Outcome<{ readonly dough: DecimalText; readonly flour: DecimalText }> {
  if (dough !== undefined && flour !== undefined) return answer({ dough: dough.value, flour: flour.value });
  return refuse(
    ...(dough === undefined ? [missing("dough", "the dough temperature wanted")] : []),
    ...(flour === undefined ? [missing("flour", "the temperature of the flour")] : []),
  );
}

function missing(key: "dough" | "flour" | "room", expected: string): Problem {
  const advice = `write \`${key}: 20 °C\` under \`temperature:\`, or give --${key}-at '20 °C'`;
  return inputProblem("temperature.missing", ["temperature", key], "nothing", expected, advice);
}

function noTapWater(): Problem {
  const advice = "state more water, or fewer watery ingredients";
  return noAnswer(
    "temperature.no-tap-water",
    ["water"],
    "a dough without tap water",
    "tap water to warm or cool",
    advice,
  );
}

function balance(
  mix: Mix,
  temperature: Temperatures,
  wanted: DecimalText,
  salts: readonly DrySalt[],
  notes: readonly Note[],
): Outcome<DoughWater> {
  const heat = heatOf(mix, temperature, salts);
  if (!heat.ok) return heat;
  const { tap, ice, flour, room, friction } = temperature;
  const plan = waterTemperature({
    ...mix,
    wanted,
    heat: heat.value,
    ...(tap && { tap: tap.value }),
    ...(ice && { iceTemperature: ice.value }),
  });
  if (!plan.ok) return placed(plan.problems);
  const rule =
    flour && room && friction
      ? threeTemperatureWater({ dough: wanted, flour: flour.value, room: room.value }, friction.value)
      : undefined;
  if (rule?.ok === false) return placed(rule.problems);
  const water = massOf("water", mix.water);
  const { ice: iced, ...figures } = plan.value;
  const all = [
    water,
    ...Object.values(figures),
    ...Object.values<Figure>({ ...iced }),
    ...(rule?.ok ? [rule.value] : []),
  ];
  return answer({ plan: plan.value, water, ...(rule?.ok && { byRule: rule.value }), figures: withOrigins(all) }, [
    ...notes,
    ...plan.notes,
    ...(rule?.ok ? rule.notes : []),
  ]);
}

function heatOf(
  mix: Mix,
  { mixingHeat, mixerPower, mixingTime }: Temperatures,
  drySalts: readonly DrySalt[],
): Outcome<MixingHeat> {
  if (mixingHeat !== undefined) return answer({ kind: "measured", perKilogram: mixingHeat.value });
  if (mixerPower === undefined || mixingTime === undefined) return answer({ kind: "estimated", drySalts });
  const minutes = decimalText(dec(mixingTime.value).div(60));
  const work = mixerWork({ power: mixerPower.value, minutes, dough: doughMass(mix) });
  return work.ok ? answer({ kind: "estimated", mixerWork: work.value, drySalts }) : placed(work.problems);
}

/** Where in the spec the names of the request stand. */
const places: Readonly<Record<string, Path>> = {
  wanted: ["temperature", "dough"],
  flour: ["temperature", "flour"],
  others: ["temperature", "room"],
  tap: ["temperature", "tap"],
  iceTemperature: ["temperature", "ice"],
  heat: ["temperature", "mixingHeat"],
  power: ["temperature", "mixerPower"],
  minutes: ["temperature", "mixingTime"],
  friction: ["temperature", "friction"],
};

function placed(problems: readonly Problem[]): Outcome<never> {
  return refuse(
    ...problems.map((problem) => ({ ...problem, path: places[String(problem.path[0])] ?? ["temperature"] })),
  );
}
