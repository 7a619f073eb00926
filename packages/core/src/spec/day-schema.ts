import * as z from "zod/mini";
import { celsius, count, described, massField, optional, quantityField, section, word } from "../materials/fields.ts";
import { namedOnce } from "../materials/named-once.ts";

/** What a wait may be, s: none, or up to seven days. */
const week = { least: "0", most: "604800" };

/** A time of work or of standing: above zero, and no longer than a week. */
export const minutes = (description: string, example: string) =>
  quantityField(["time"], description, [example], { above: "0", most: week.most });

const waitSchema = (what: string, least: string, most: string) =>
  z.optional(
    z.strictObject({
      least: quantityField(["time"], `Shortest ${what}`, [least], week),
      most: z.optional(quantityField(["time"], `Longest ${what}; no limit unless stated`, [most], week)),
    }),
  );

const machines = (what: string) => optional(count(1, 100), `Number of ${what}; 1 unless stated`, [1]);

const potSchema = section({ id: "Pot", description: "A pot and what goes into it at one time" }, () => ({
  basket: massField("Raw noodles that go into a pot at one time", ["1.1 kg"]),
  water: z.optional(
    quantityField(
      ["volume", "mass"],
      "Water of a pot, 1 L taken as 1 kg; ten times the noodles unless stated",
      ["20 L"],
      { above: "0", most: "1000000000", words: "an amount above zero" },
    ),
  ),
  power: z.optional(
    quantityField(["power"], "Power that reaches the water, found by timing a pot as it warms", ["9 kW"], {
      above: "0",
      most: "1000",
    }),
  ),
  boilsAt: z.optional(celsius("Temperature at which water boils there; 100 °C unless stated", "98 °C", "70", "105")),
}));

/** The `plan:` section: how long a load takes at each stage, and with how many machines. */
export const planSchema = section(
  {
    id: "Plan",
    description: "How long a load takes at each stage, and with how many machines",
    examples: [{ serve: "12:15", mix: "15 min", roll: "15 min", boil: "20 min" }],
  },
  () => ({
    serve: optional(z.string(), "Time of service", ["12:15"]),
    weigh: z.optional(minutes("Time to weigh a load", "10 min")),
    mix: z.optional(minutes("Time of a load in the mixer, filling and emptying included", "15 min")),
    rest: waitSchema("rest of the crumb", "20 min", "60 min"),
    compound: z.optional(minutes("Time to compound a load into sheets", "10 min")),
    relax: waitSchema("rest of the compounded sheets before they are rolled", "20 min", "60 min"),
    roll: z.optional(minutes("Time to roll the sheets of a load to their thickness", "15 min")),
    mature: waitSchema("wait of the sheets before cutting", "30 min", "2 h"),
    cut: z.optional(
      quantityField(
        ["time"],
        "Time to cut a load and portion it; 0 min where a slitter in line cuts as the sheet leaves the rolls",
        ["12 min", "0 min"],
        week,
      ),
    ),
    boil: z.optional(minutes("Time to boil a load, basket after basket", "20 min")),
    benches: machines("benches to weigh at"),
    mixers: machines("mixers"),
    compounders: described(machines("compounding rolls of their own"), {
      description: "Number of compounding rolls beside the sheeters; the sheeters compound unless stated",
    }),
    sheeters: machines("sheeters; they compound, roll and cut"),
    pots: machines("pots"),
    longestStanding: z.optional(
      minutes("Longest that a load may stand between two stages; no limit unless stated", "15 min"),
    ),
    longestHold: z.optional(
      minutes("Longest that a finished load may wait for service; no limit unless stated", "20 min"),
    ),
    pot: z.optional(potSchema),
  }),
);

/** The `temperature:` section: what the water temperature is worked out from. */
export const temperatureSchema = section(
  {
    id: "Temperature",
    description: "Temperatures and heat of the mix",
    examples: [{ dough: "25 °C", flour: "19 °C", room: "20 °C", tap: "14 °C" }],
  },
  () => ({
    dough: z.optional(celsius("Dough temperature wanted after mixing", "25 °C", "0", "60")),
    flour: z.optional(celsius("Temperature of the flour", "19 °C", "-30", "100")),
    room: z.optional(
      celsius("Temperature of the room, and of all that is neither flour nor water", "20 °C", "-30", "60"),
    ),
    ingredients: optional(
      z.record(word(80), celsius("Its temperature", "4 °C", "-30", "100")).check(namedOnce),
      "Temperature of single ingredients by their names, rework as `rework`, where it is neither the flour's nor the room's",
      [{ "whole egg": "4 °C" }],
    ),
    tap: z.optional(celsius("Temperature of the water from the tap", "14 °C", "0.1", "100")),
    ice: z.optional(celsius("Temperature of the ice; 0 °C unless stated", "-18 °C", "-40", "0")),
    mixingHeat: z.optional(
      quantityField(["heat"], "Heat of mixing of this dough in this mixer, measured, per kg of dough", ["12 kJ/kg"], {
        least: "0",
        most: "200",
      }),
    ),
    mixerPower: z.optional(
      quantityField(
        ["power"],
        "Power of the mixer that goes into the dough, where the heat is not measured",
        ["0.75 kW"],
        { least: "0", most: "1000" },
      ),
    ),
    mixingTime: z.optional(
      quantityField(["time"], "Time that the mixer runs", ["10 min"], { least: "0", most: "36000" }),
    ),
    friction: z.optional(
      quantityField(
        ["temperature difference"],
        "Friction of the rule of three temperatures, for the cross-check",
        ["8 K"],
        { least: "0", most: "60" },
      ),
    ),
  }),
);
