import { askWater } from "@noodlewright/core";
import { plainMixWater, temperatureReport } from "@noodlewright/core/sheet";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { ownProblem } from "../input/problem.ts";
import type { ExitStatus, Io } from "../io.ts";
import { printProblems, printReport, unitsOf } from "../shared/answer.ts";
import { printAnswer } from "../shared/ask-noodle.ts";
import type { Asked, Command } from "../shared/command.ts";
import { dataOf, flagsAt, overridesOf, placeAtFlag, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags, specFlags } from "../shared/flags.ts";

const temperature = flagsAt("temperature");

const temperatureFlags: ValueFlags = {
  "dough-at": temperature("dough", "Dough temperature wanted", "25 °C"),
  "flour-at": temperature("flour", "Temperature of the flour", "19 °C"),
  "room-at": temperature("room", "Temperature of the room", "20 °C"),
  "tap-at": temperature("tap", "Temperature of the tap water", "14 °C"),
  "ice-at": temperature("ice", "Temperature of the ice", "-18 °C"),
  "mixing-heat": temperature("mixingHeat", "Measured heat of mixing", "12 kJ/kg"),
  "mixer-power": temperature("mixerPower", "Power of the mixer that goes into the dough", "0.75 kW"),
  "mixing-time": temperature("mixingTime", "Time that the mixer runs", "10 min"),
  friction: temperature("friction", "Friction of the rule of three temperatures", "8 K"),
};

const massFlags: ValueFlags = {
  flour: { describe: "Flour as weighed, with a spec or without", placeholder: "10 kg", path: ["flour"] },
  water: { describe: "Water of the mix, where there is no spec", placeholder: "3.5 kg", path: ["water"] },
};

/** `noodlewright water-temperature`: how warm the water has to be, and how much of it is ice. */
export const waterTemperatureCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input; none for a mix of flour and water" },
  flags: { ...temperatureFlags, ...batchFlags, ...massFlags, ...specFlags },
  examples: {
    "noodlewright water-temperature noodle.yaml --flour-at '24 °C'": "for one load, on a warm day",
    "noodlewright water-temperature --flour '10 kg' --water '3.5 kg' --dough-at '25 °C' --flour-at '19 °C'":
      "for a mix without a spec",
  },
  run: (asked, io) => {
    if (asked.text("spec") === undefined) return plainMix(asked, io);
    const overrides = overridesOf({ ...temperatureFlags, ...batchFlags }, asked);
    return printAnswer({ ask: askWater, overrides, needs: "machines" }, asked, io);
  },
};

async function plainMix(asked: Asked, io: Io): Promise<ExitStatus> {
  if (asked.list("set").length > 0) return printProblems([noSpec], asked, io);
  const flags = { ...massFlags, ...temperatureFlags };
  const outcome = plainMixWater({ temperature: {}, ...dataOf(overridesOf(flags, asked)) });
  if (!outcome.ok) return printProblems(outcome.problems.map(placeAtFlag(flags)), asked, io);
  const units = unitsOf(asked);
  return printReport(temperatureReport("Water for a mix", outcome.value, outcome.notes, units), asked, io);
}

const noSpec: PlacedProblem = { ...ownProblem("set.no-spec", {}), flag: "--set" };
