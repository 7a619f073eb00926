import * as z from "zod/mini";
import { problem } from "../figure/problem.ts";
import { type DecimalText, dec } from "../number/decimal.ts";
import { parseQuantity } from "../number/quantity.ts";
import { count, described, optional, quantityField, readOrRefused, refuseValue, section, word } from "./fields.ts";

/** A length above zero. */
export function lengthField(description: string, examples: readonly string[], most: string) {
  return quantityField(["length"], description, examples, { above: "0", most });
}

/** g/mL, rounded up: flour of 12 % water without any air has 1.44 by the component equations, and water only makes it lighter. */
export const MOST_DENSITY = "1.45";

/** The density of a sheet. */
export function densityField(description: string, examples: readonly string[]) {
  const limits = { least: "0.5", most: MOST_DENSITY, after: ", about that of flour without any air" };
  return quantityField(["density"], description, examples, limits);
}

/** A length of zero or more. */
export function trimField(description: string, examples: readonly string[]) {
  return quantityField(["length"], description, examples, { least: "0", most: "1000" });
}

/** A cutter by its number (strands from 30 mm of width) or by the width of its strand in mm. */
type CutterField =
  | { readonly kind: "number"; readonly number: number }
  | { readonly kind: "width"; readonly width: DecimalText };

/** A field that takes a cutter. */
export function cutterField(description: string) {
  const refused = (written: string) => problem("cutter.unreadable", [], { written });
  return readOrRefused(z.union([z.string(), z.number()]), readCutter, refused, {
    description,
    examples: [20, "1.5 mm"],
  });
}

function readCutter(input: string | number): CutterField | undefined {
  const number = /^(?:no\.? *)?(\d{1,3})$/iu.exec(String(input).trim())?.[1];
  if (number !== undefined) {
    const value = Number(number);
    return value >= 1 && value <= 60 ? { kind: "number", number: value } : undefined;
  }
  const reading = parseQuantity(input, ["length"]);
  if (!reading.ok || dec(reading.quantity.value).lte(0) || dec(reading.quantity.value).gt(300)) return undefined;
  return { kind: "width", width: reading.quantity.value };
}

const settingsField = (description: string, examples: readonly Readonly<Record<string, string>>[]) =>
  optional(z.record(word(40), lengthField("Gap at this setting, measured", ["2.6 mm"], "200")), description, examples);

const cutterSchema = section({ id: "Cutter", description: "A cutter" }, () => ({
  size: cutterField(
    "A cutter number (strands from 30 mm of width), or the width of a strand such as 2 mm; a knife goes by width",
  ),
  over: z.optional(lengthField("Width that it cuts over; that of the rolls unless stated", ["220 mm"], "3000")),
}));

const gapSchema = section({ id: "FreeGap", description: "Rolls whose gap can be set freely" }, () => ({
  least: lengthField("Narrowest gap", ["0.4 mm"], "200"),
  greatest: lengthField("Widest gap", ["12 mm"], "200"),
}));

const mostStands = 20;
const speedLimits = { above: "0", most: "200" };
const speedField = quantityField(["speed"], "Surface speed of the rolls", ["6 m/min"], speedLimits);

const ways = ["gap", "dial", "line", "sticks"] as const;
const mostSettings = 60;

const machineExample = { width: "240 mm", gap: { least: "0.4 mm", greatest: "12 mm" }, cutters: [{ size: 20 }] };

/** A sheeter, a hand-cranked machine or a rolling pin with its cutters. */
const machineSchema = z.lazy(() =>
  described(
    z
      .strictObject({
        width: lengthField("Widest sheet that the rolls or the pin take", ["240 mm"], "3000"),
        gap: z.optional(gapSchema),
        dial: settingsField("A dial: the gap of every number, measured by the kitchen", [
          { "1": "2.6 mm", "2": "2 mm" },
        ]),
        line: settingsField("Fixed pairs of rolls one after the other: the gap of each", [{ first: "4 mm" }]),
        sticks: settingsField("Guide sticks beside a rolling pin: the thickness of each pair", [
          { "thick pair": "4 mm" },
        ]),
        speed: optional(
          z.union([speedField, z.array(speedField).check(z.minLength(1), z.maxLength(mostStands))]),
          "Surface speed of the rolls: of the last stand that a sheet runs through, or a list with that of each stand, first to last",
          ["6 m/min", ["4 m/min", "6 m/min"]],
        ),
        stands: optional(
          count(1, mostStands),
          "Pairs of rolls that a sheet runs through in one trip; as many as speeds, or 1, unless stated",
          [2],
        ),
        compoundingGap: z.optional(
          lengthField("Gap of the rolls that compound, where the machine has its own", ["8 mm"], "100"),
        ),
        cutters: optional(
          z.array(cutterSchema).check(z.minLength(1), z.maxLength(40)),
          "The cutters and knives at hand; where none are listed, any cutter of a sheet is taken to be there",
        ),
        longestSheet: z.optional(lengthField("Longest sheet that the bench or the reel takes", ["6 m"], "1000000")),
      })
      .check((context) => {
        const machine = context.value;
        const stated = ways.filter((way) => machine[way] !== undefined);
        if (stated.length !== 1) refuseValue(context, problem("machine.gaps-stated", [], { stated }));
        const [least, greatest] = [machine.gap?.least.value ?? "0", machine.gap?.greatest.value ?? "1"];
        if (dec(least).gte(greatest))
          refuseValue(context, problem("machine.gaps-reversed", [], { least, greatest }), ["gap"]);
        const speeds = Array.isArray(machine.speed) ? machine.speed.length : undefined;
        if (speeds !== undefined && machine.stands !== undefined && speeds !== machine.stands)
          refuseValue(context, problem("machine.speeds-count", [], { speeds, stands: machine.stands }), ["speed"]);
        for (const way of ["dial", "line", "sticks"] as const) {
          const settings = Object.keys(machine[way] ?? {}).length;
          if (machine[way] !== undefined && (settings === 0 || settings > mostSettings))
            refuseValue(context, problem("machine.settings-count", [], { settings, most: mostSettings }), [way]);
        }
      }),
    { id: "Machine", description: "What a kitchen rolls and cuts with", examples: [machineExample] },
  ),
);

/** A machine as read. */
export type MachineFields = z.output<typeof machineSchema>;

/** A kitchen's own machines by name. */
export const ownMachinesSchema = described(z.record(word(80), machineSchema), {
  description: "The kitchen's own machines, by name",
  examples: [{ "bench rolls": machineExample }],
});

/** Machines by name. */
export type OwnMachines = Readonly<Record<string, MachineFields>>;
