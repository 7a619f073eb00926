import type { Outcome } from "@noodlewright/core";
import type { Published } from "@noodlewright/core/figure";
import {
  calibrateReport,
  type Measurement,
  measuredCooking,
  measuredLosses,
  measuredMixing,
  measuredSheet,
  measuredToasting,
} from "@noodlewright/core/sheet";
import { printProblems, printReport, unitsOf } from "../shared/answer.ts";
import type { Command, Group } from "../shared/command.ts";
import { dataOf, flagsAt, overridesOf, placeAtFlag, type ValueFlags } from "../shared/flag-values.ts";
import { reportFlags } from "../shared/flags.ts";

const measure = flagsAt();

function calibration(
  title: string,
  values: ValueFlags,
  work: (input: unknown) => Outcome<Published<Measurement>>,
  examples: Command["examples"],
): Command {
  return {
    positionals: {},
    flags: { ...values, ...reportFlags },
    examples,
    run: async (asked, io) => {
      const outcome = work(dataOf(overridesOf(values, asked)));
      if (!outcome.ok) return printProblems(outcome.problems.map(placeAtFlag(values)), asked, io);
      return printReport(calibrateReport(title, outcome.value, outcome.notes, unitsOf(asked)), asked, io);
    },
  };
}

const sheet = calibration(
  "A measured sheet",
  {
    length: measure("length", "Length of the strip", "1 m"),
    width: measure("width", "Width of the strip", "150 mm"),
    mass: measure("mass", "Its mass", "278 g"),
    thickness: measure("thickness", "Its thickness", "1.5 mm"),
    density: measure("density", "Its density, where the thickness is not measured", "1.24 g/mL"),
    gap: measure("gap", "Gap that it came through", "1.35 mm"),
  },
  measuredSheet,
  {
    "noodlewright calibrate sheet --length '1 m' --width '150 mm' --mass '278 g' --thickness '1.5 mm' --gap '1.35 mm'":
      "density and spring-back",
  },
);

const losses = calibration(
  "A weighed batch",
  {
    mixing: measure("mixing", "Weight before and after mixing", "10 kg to 9.95 kg"),
    sheeting: measure("sheeting", "Weight before and after the rolls, trim taken off", "9.95 kg to 9.6 kg"),
    cutting: measure("cutting", "Weight before and after cutting", "9.6 kg + 90 g to 9.58 kg"),
  },
  measuredLosses,
  {
    "noodlewright calibrate losses --mixing '10 kg to 9.95 kg' --cutting '9.6 kg + 90 g to 9.58 kg'":
      "losses by stage; what was added, such as dusting starch, after the plus",
  },
);

const mixing = calibration(
  "A measured mix",
  {
    flour: measure("flour", "Flour of the mix", "10 kg"),
    water: measure("water", "Water of the mix", "3.5 kg"),
    "flour-at": measure("flourAt", "Temperature of the flour", "19 °C"),
    "water-at": measure("waterAt", "Temperature of the water", "14 °C"),
    "dough-at": measure("doughAt", "Temperature of the dough as it left the mixer", "25 °C"),
    "room-at": measure("roomAt", "Temperature of the room", "20 °C"),
  },
  measuredMixing,
  {
    "noodlewright calibrate mixing --flour '10 kg' --water '3.5 kg' --flour-at '19 °C' --water-at '14 °C' --dough-at '25 °C'":
      "the heat of mixing of this mixer and dough",
  },
);

const cooking = calibration(
  "A measured boiling",
  {
    raw: measure("raw", "Raw noodles", "500 g"),
    cooked: measure("cooked", "The same noodles cooked and drained", "880 g"),
    "raw-water": measure("rawWater", "Water of the raw noodles", "33 %"),
    "cooked-water": measure("cookedWater", "Water of the cooked noodles", "65 %"),
    "solids-loss": measure("solidsLoss", "Solids lost to the pot", "5 %"),
  },
  measuredCooking,
  {
    "noodlewright calibrate cooking --raw '500 g' --cooked '880 g'": "the cook gain, from weights",
    "noodlewright calibrate cooking --raw-water '33 %' --cooked-water '65 %'": "the same from the water",
  },
);

const toasting = calibration(
  "A flour that was dried or toasted",
  {
    before: measure("before", "Flour before", "1000 g"),
    after: measure("after", "The same flour after", "940 g"),
    moisture: measure("moisture", "Moisture of the flour before", "13.6 %"),
    protein: measure("protein", "Protein of the flour before, as is", "12.4 %"),
  },
  measuredToasting,
  {
    "noodlewright calibrate toasting --before '1000 g' --after '940 g' --moisture '13.6 %'":
      "the moisture after, and how to write it into the spec",
  },
);

/** `noodlewright calibrate`: the kitchen's own figures from what it measured. */
export const calibrateGroup: Group = {
  commands: [
    { usage: "sheet", describe: "Density, thickness and spring-back from a measured strip of sheet", command: sheet },
    { usage: "losses", describe: "Losses by stage from one weighed batch", command: losses },
    { usage: "mixing", describe: "Heat of mixing, and friction, from one measured mix", command: mixing },
    { usage: "cooking", describe: "Cook gain from weights, or from the water before and after", command: cooking },
    { usage: "toasting", describe: "Moisture of a flour that the kitchen dried or toasted", command: toasting },
  ],
};
