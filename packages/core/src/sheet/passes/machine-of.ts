import { answer, type Outcome, problem, refuse } from "../../figure/problem.ts";
import type { MachineFields, OwnMachines } from "../../materials/machine-schema.ts";
import { nearestNames } from "../../materials/nearest.ts";
import type { Spec } from "../../spec/spec.ts";
import type { Gaps, Machine, Rolls } from "./machine.ts";

/**
 * Finds the machine that the sheet is made on: those of the spec first, then those of the included files.
 *
 * Problems: `machine.unknown`, with the nearest names.
 */
export function machineNamed(name: string, spec: Pick<Spec, "machines">, included: OwnMachines): Outcome<Machine> {
  const machines = { ...included, ...spec.machines };
  const fields = Object.hasOwn(machines, name) ? machines[name] : undefined;
  if (fields !== undefined) return answer(machineOf(name, fields));
  const names = Object.keys(machines);
  const nearest = nearestNames(name, names);
  const meant = nearest[0] ?? names[0];
  return refuse(problem("machine.unknown", ["sheet", "machine"], { name, names, nearest, ...(meant && { meant }) }));
}

function machineOf(name: string, fields: MachineFields): Machine {
  const { width, speed, stands, compoundingGap, cutters, longestSheet } = fields;
  return {
    name,
    rolls: {
      width: width.value,
      gaps: gapsOf(fields),
      ...(compoundingGap && { compoundingGap: compoundingGap.value }),
      ...rollSpeed(speed),
      ...(stands !== undefined && { stands }),
    },
    cutters: (cutters ?? []).map(({ size, over }) => ({ size, ...(over && { workingWidth: over.value }) })),
    ...(longestSheet && { longestSheet: longestSheet.value }),
  };
}

function rollSpeed(speed: MachineFields["speed"]): Pick<Rolls, "speed" | "stands"> {
  if (speed === undefined) return {};
  return "value" in speed ? { speed: speed.value } : { speed: speed.map(({ value }) => value), stands: speed.length };
}

function gapsOf({ gap, dial, line, sticks }: MachineFields): Gaps {
  if (gap !== undefined) return { kind: "free", least: gap.least.value, greatest: gap.greatest.value };
  const kind = dial !== undefined ? "dial" : line !== undefined ? "line" : "sticks";
  const settings = Object.entries(dial ?? line ?? sticks ?? {}).map(([name, { value }]) => ({ name, gap: value }));
  return { kind, settings };
}
