import { askWater } from "@noodlewright/core";
import { plainMixWater, temperatureReport } from "@noodlewright/core/sheet";
import type { PlacedProblem } from "../input/placed-problem.ts";
import { ownProblem } from "../input/problem.ts";
import type { ExitStatus, Io } from "../io.ts";
import { printProblems, printReport } from "../shared/answer.ts";
import { printAnswer, unitsOf } from "../shared/ask-noodle.ts";
import type { Asked, Command } from "../shared/command.ts";
import { dataOf, overridesOf, placeAtFlag, type ValueFlags } from "../shared/flag-values.ts";
import { batchFlags, batchOverrides, specFlags } from "../shared/flags.ts";

const temperatureFlags: ValueFlags = {
  "dough-at": { describe: "Dough temperature wanted", placeholder: "25 °C", path: ["temperature", "dough"] },
  "flour-at": { describe: "Temperature of the flour", placeholder: "19 °C", path: ["temperature", "flour"] },
  "room-at": { describe: "Temperature of the room", placeholder: "20 °C", path: ["temperature", "room"] },
  "tap-at": { describe: "Temperature of the tap water", placeholder: "14 °C", path: ["temperature", "tap"] },
  "ice-at": { describe: "Temperature of the ice", placeholder: "-18 °C", path: ["temperature", "ice"] },
  "mixing-heat": { describe: "Measured heat of mixing", placeholder: "12 kJ/kg", path: ["temperature", "mixingHeat"] },
  "mixer-power": {
    describe: "Power of the mixer that goes into the dough",
    placeholder: "0.75 kW",
    path: ["temperature", "mixerPower"],
  },
  "mixing-time": { describe: "Time that the mixer runs", placeholder: "10 min", path: ["temperature", "mixingTime"] },
  friction: {
    describe: "Friction of the rule of three temperatures",
    placeholder: "8 K",
    path: ["temperature", "friction"],
  },
};

const massFlags: ValueFlags = {
  flour: { describe: "Flour as weighed, with a spec or without", placeholder: "10 kg", path: ["flour"] },
  water: { describe: "Water of the mix, where there is no spec", placeholder: "3.5 kg", path: ["water"] },
};

/** `noodlewright water-temperature`: how warm the water has to be, and how much of it is ice. */
export const waterTemperatureCommand: Command = {
  positionals: { spec: "Spec file in YAML or JSON, or - for standard input; none for a mix of flour and water" },
  flags: { ...temperatureFlags, ...batchFlags, ...massFlags, ...specFlags },
  examples: [
    ["noodlewright water-temperature noodle.yaml --flour-at '24 °C'", "for one load, on a warm day"],
    [
      "noodlewright water-temperature --flour '10 kg' --water '3.5 kg' --dough-at '25 °C' --flour-at '19 °C'",
      "for a mix without a spec",
    ],
  ],
  run: (asked, io) => (asked.text("spec") === undefined ? plainMix(asked, io) : specLoad(asked, io)),
};

function specLoad(asked: Asked, io: Io): Promise<ExitStatus> {
  const overrides = [...overridesOf(temperatureFlags, asked), ...batchOverrides(asked)];
  return printAnswer({ ask: askWater, overrides, needs: "machines" }, asked, io);
}

async function plainMix(asked: Asked, io: Io): Promise<ExitStatus> {
  if (asked.list("set").length > 0) return printProblems([noSpec], asked, io);
  const flags = { ...massFlags, ...temperatureFlags };
  const outcome = plainMixWater({ temperature: {}, ...dataOf(overridesOf(flags, asked)) });
  if (!outcome.ok) return printProblems(outcome.problems.map(placeAtFlag(flags)), asked, io);
  const units = unitsOf(asked);
  return printReport(temperatureReport("Water for a mix", outcome.value, outcome.notes, units), asked, io);
}

const noSpec: PlacedProblem = { ...ownProblem("set.no-spec", {}), flag: "--set" };
