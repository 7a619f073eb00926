import * as z from "zod/mini";
import { exact, type Figure } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import {
  type Note,
  note,
  type Outcome,
  type Path,
  type Problem,
  problem,
  problemsOf,
  refuse,
} from "../../figure/problem.ts";
import { said } from "../../figure/said.ts";
import { celsius, described, massField, refuseValue, shareField } from "../../materials/fields.ts";
import { densityField, lengthField, MOST_DENSITY } from "../../materials/machine-schema.ts";
import { dec, fixedText } from "../../number/decimal.ts";
import { parseQuantity } from "../../number/quantity.ts";
import { readBy } from "../../spec/read-spec.ts";
import { gainFromWater, gainFromWeights } from "../day/cook-gain.ts";
import { givenDensity, poreFreeDensity } from "./food.ts";
import { densityFromSheet, lossesFrom, springBackFrom, thicknessFromSheet } from "./inverse.ts";
import { mixingHeat } from "./measured-mix.ts";
import { denserNotes, thinnerNotes } from "./physical-bounds.ts";
import { frictionFrom } from "./three-temperatures.ts";

/** The kitchen's own figures from something it measured, and how to write them into the spec. */
export interface Measurement {
  readonly results: readonly Figure[];
  /** Lines for the spec, in YAML. */
  readonly lines: readonly string[];
}

const sheetSchema = z.strictObject({
  length: lengthField("Length of the strip", ["1 m"], "1000000"),
  width: lengthField("Width of the strip", ["150 mm"], "3000"),
  mass: massField("Its mass", ["372 g"]),
  thickness: z.optional(lengthField("Its thickness, the mean of several places", ["1.5 mm"], "500")),
  density: z.optional(densityField("Its density, where the thickness is not measured", ["1.24 g/mL"])),
  gap: z.optional(lengthField("Gap that it came through", ["1.35 mm"], "500")),
});

/**
 * What a dough of the least water that is rolled, 28 on 100 of flour, is made of, g; one with more water is lighter. The flour as in
 * the MEXT table, 01020: 14.5 water, 11.8 protein, 1.5 fat, 71.7 carbohydrate with fibre, 0.4 ash; with 2 of salts.
 */
const driestDough = { water: "42.5", protein: "11.8", fat: "1.5", carbohydrate: "71.7", fibre: "0", ash: "2.4" };

/**
 * Finds density, thickness and spring-back from a strip of sheet measured on the bench.
 *
 * Problems: those of reading; `measured.thickness-or-density` unless one of the two is given; `measured.implausible`. Notes warn of what no dough and no rolls
 * can do.
 *
 * @example shown(measuredSheet({ length: "1 m", width: "150 mm", thickness: "2 mm", mass: "372 g" }).value.results[0]) // => "1.240 g/mL"
 */
export function measuredSheet(input: unknown): Outcome<Published<Measurement>> {
  const reading = readBy(sheetSchema, input);
  if (!reading.ok) return reading;
  const { length, width, mass, thickness, density, gap } = reading.value;
  if ((thickness === undefined) === (density === undefined)) {
    const stated = thickness === undefined ? "neither" : "both";
    return refuse(problem("measured.thickness-or-density", ["thickness"], { stated }));
  }
  const strip = { length: length.value, width: width.value, mass: mass.value };
  const known = givenDensity(density?.value ?? "0");
  const first = thickness
    ? densityFromSheet({ ...strip, thickness: thickness.value })
    : thicknessFromSheet(strip, known);
  if (!first.ok) return first;
  const dense = poreFreeDensity({ composition: driestDough, temperature: "25" });
  if (!dense.ok) return dense;
  const unlikely = thickness ? implausible(first.value, ["mass"], "0.5", MOST_DENSITY) : [];
  const back = gap && springBackFrom(thickness?.value ?? first.value, gap.value);
  if (back?.ok === false) return back;
  const stretched = back?.ok ? implausible(back.value, ["gap"], "0.5", "3") : [];
  if (unlikely.length + stretched.length > 0) return refuse(...unlikely, ...stretched);
  const lines = [
    ...(thickness ? [`density: ${fixedText(first.value.value, 3)} g/mL`] : []),
    ...(back?.ok ? [`springBack: ${fixedText(back.value.value, 3)}`] : []),
  ];
  const own = thickness ? first.value : known;
  return publish(measurement([first.value, ...(back?.ok ? [back.value] : [])], "sheet", lines), [
    ...denserNotes(own, dense.value, "even a dough with only 28 of water on 100 of flour"),
    ...(back?.ok ? thinnerNotes(exact(back.value)) : []),
  ]);
}

/** A figure that the spec would refuse is a slip of the scale, the rule or a unit. */
function implausible(figure: Figure, path: Path, least: string, most: string): readonly Problem[] {
  if (exact(figure).gte(least) && exact(figure).lte(most)) return [];
  const unit = figure.unit === "" ? "" : ` ${figure.unit}`;
  const shown = exact(figure).toSignificantDigits(4).toFixed();
  return [problem("measured.implausible", path, { label: figure.label, figure: shown, unit, least, most })];
}

const weighingForm = /^([^+]+?)(?:\s*\+\s*(.+?))?\s+to\s+(.+)$/u;

function weighingField(stage: string) {
  const example = "10 kg to 9.95 kg";
  return described(
    z.optional(
      z.pipe(
        z.string(),
        z.transform((input, context) => {
          const [, before = "", added, after = ""] = weighingForm.exec(input.trim()) ?? [];
          const readings = [before, after, ...(added === undefined ? [] : [added])].map((text) =>
            parseQuantity(text, ["mass"]),
          );
          const [into, out, more] = readings.map((reading) => (reading.ok ? reading.quantity.value : undefined));
          if (into === undefined || out === undefined || readings.some(({ ok }) => !ok)) {
            return refuseValue(context, problem("weighing.unreadable", [], { written: said(input), example }));
          }
          return { before: into, ...(more !== undefined && { added: more }), after: out };
        }),
      ),
    ),
    { description: `Weight before and after ${stage}`, examples: [example] },
  );
}

const stages = ["mixing", "sheeting", "cutting"] as const;
const lossesSchema = z.strictObject({
  mixing: weighingField("mixing"),
  sheeting: weighingField("sheeting, trim taken off"),
  cutting: weighingField("cutting"),
});

/**
 * Finds the losses by stage from one weighed batch.
 *
 * Problems: those of reading, `weighing.unreadable`, `measured.implausible`, and those of `lossesFrom`.
 *
 * @example shown(measuredLosses({ mixing: "10 kg to 9.95 kg" }).value.results[0]) // => "0.50 %"
 */
export function measuredLosses(input: unknown): Outcome<Published<Measurement>> {
  const reading = readBy(lossesSchema, input);
  if (!reading.ok) return reading;
  const weighed = stages.flatMap((stage) => {
    const weighing = reading.value[stage];
    return weighing === undefined ? [] : [{ stage, ...weighing }];
  });
  const losses = lossesFrom(weighed);
  if (!losses.ok) {
    const place = ({ path, ...problem }: Problem): Problem => {
      const [index] = path;
      return { ...problem, path: [typeof index === "number" ? (weighed[index]?.stage ?? "mixing") : "mixing"] };
    };
    return refuse(...losses.problems.map(place));
  }
  const unlikely = losses.value.stages.flatMap(({ stage, loss }) => implausible(loss, [stage], "0", "90"));
  if (unlikely.length > 0) return refuse(...unlikely);
  const results = losses.value.stages.map(({ loss }) => loss);
  const lines = losses.value.stages.map(({ stage, loss }) => `${stage}: ${fixedText(loss.value, 2)} %`);
  return publish(measurement([...results, losses.value.total], "losses", lines), [], losses.value.graph);
}

const mixSchema = z.strictObject({
  flour: massField("Flour of the mix", ["10 kg"]),
  water: massField("Water of the mix", ["3.5 kg"]),
  flourAt: celsius("Temperature of the flour", "19 °C", "-30", "100"),
  waterAt: celsius("Temperature of the water", "14 °C", "0", "100"),
  doughAt: celsius("Temperature of the dough as it left the mixer", "25 °C", "0", "60"),
  roomAt: z.optional(celsius("Temperature of the room", "20 °C", "-30", "60")),
});

/**
 * Finds the heat of mixing from one measured mix of flour and water, and the friction of the bakers' rule where the room is given.
 *
 * Problems: those of reading, and those of `mixingHeat` and `frictionFrom`.
 *
 * @example shown(measuredMixing({ flour: "10 kg", water: "3.5 kg", flourAt: "22 °C", waterAt: "28 °C", doughAt: "27 °C" }).value.results[0]) // => "5.7 kJ/kg"
 */
export function measuredMixing(input: unknown): Outcome<Published<Measurement>> {
  const reading = readBy(mixSchema, input);
  if (!reading.ok) return reading;
  const { flour, water, flourAt, waterAt, doughAt, roomAt } = reading.value;
  const heat = mixingHeat({
    flour: { mass: flour.value, temperature: flourAt.value },
    water: water.value,
    waterTemperature: waterAt.value,
    doughTemperature: doughAt.value,
  });
  const friction =
    roomAt && frictionFrom({ dough: doughAt.value, flour: flourAt.value, room: roomAt.value }, waterAt.value);
  if (!heat.ok || friction?.ok === false) return refuse(...problemsOf(heat), ...problemsOf(friction));
  const results = [heat.value, ...(friction?.ok ? [friction.value] : [])];
  // What is below zero is no figure to go on with.
  const written = results.filter(({ value }) => !dec(value).isNegative());
  const keyOf = (figure: Figure) => (figure === heat.value ? "mixingHeat" : "friction");
  const lines = written.map((figure) => `${keyOf(figure)}: ${fixedText(figure.value, 1)} ${figure.unit}`);
  return publish(measurement(results, "temperature", lines), [
    ...(written.includes(heat.value) ? [] : [note("measured.cold-mix", [], {})]),
    ...(friction?.ok ? friction.notes : []),
  ]);
}

const cookSchema = z.strictObject({
  raw: z.optional(massField("Raw noodles", ["500 g"])),
  cooked: z.optional(massField("The same noodles cooked and drained", ["880 g"])),
  rawWater: z.optional(shareField("Water of the raw noodles", ["33 %"])),
  cookedWater: z.optional(shareField("Water of the cooked noodles", ["65 %"])),
  solidsLoss: z.optional(shareField("Solids lost to the pot, % of those of the raw noodles", ["5 %"])),
});

/**
 * Finds the cook gain from the weights of one boiling, or from the water before and after it.
 *
 * Problems: those of reading, `measured.cook-pair`, `measured.implausible`, and those of `gainFromWeights` and `gainFromWater`.
 *
 * @example shown(measuredCooking({ raw: "500 g", cooked: "880 g" }).value.results[0]) // => "1.76"
 */
export function measuredCooking(input: unknown): Outcome<Published<Measurement>> {
  const reading = readBy(cookSchema, input);
  if (!reading.ok) return reading;
  const { raw, cooked, rawWater, cookedWater, solidsLoss } = reading.value;
  const byWeight = raw && cooked && !rawWater && !cookedWater && !solidsLoss;
  const byWater = rawWater && cookedWater && !raw && !cooked;
  if (!byWeight && !byWater) return refuse(problem("measured.cook-pair", ["raw"], {}));
  const gain = byWeight
    ? gainFromWeights(raw.value, cooked.value)
    : gainFromWater({
        rawWater: rawWater?.value ?? "0",
        cookedWater: cookedWater?.value ?? "0",
        solidsLoss: solidsLoss?.value ?? "0",
      });
  if (!gain.ok) return gain;
  const unlikely = implausible(gain.value, byWeight ? ["cooked"] : ["cookedWater"], "0.5", "5");
  if (unlikely.length > 0) return refuse(...unlikely);
  const values = [`cookGain: ${fixedText(gain.value.value, 2)}`];
  return publish(measurement([gain.value], "batch", values), shrunkNotes(gain.value));
}

/** Noodles take up water as they boil, more than the solids that they lose. */
function shrunkNotes(gain: Figure): readonly Note[] {
  if (exact(gain).gte(1)) return [];
  return [note("cook.lighter", ["cooked"], { gain: fixedText(gain.value, 2) })];
}

function measurement(results: readonly Figure[], section: string, values: readonly string[]): Measurement {
  const lines = values.length === 0 ? [] : [`${section}: { ${values.join(", ")} }`];
  return { results, lines };
}
