import type { OwnMachines } from "../../materials/machine-schema.ts";
import { type DecimalText, dec } from "../../number/decimal.ts";
import type { Spec } from "../../spec/spec.ts";
import { usualPortion } from "../strands/cut-request.ts";
import { sizeWritten } from "./fits.ts";
import type { Gaps, Machine } from "./machine.ts";
import { machineNamed } from "./machine-of.ts";
import { usualFirst } from "./pass-request.ts";
import { passPlan } from "./passes.ts";

/** Values of a `sheet:` section as somebody writes them. */
export type WrittenSheet = Readonly<Record<string, string | number>>;

/** Thickness of a sheet and width of a strand that are started from, mm. */
const usual = { thickness: "1.4", strand: "2" };

/**
 * The `sheet:` section that suits a machine of a kitchen: the first one that can roll a usual sheet, a thickness that it has,
 * a cutter of its own and dough that its widest gap takes. None where the kitchen describes no machine.
 */
export function suitedSheet(
  spec: Pick<Spec, "machines">,
  included: OwnMachines,
  rawWeight: unknown,
): WrittenSheet | undefined {
  const machines = Object.keys({ ...spec.machines, ...included }).flatMap((name) => {
    const machine = machineNamed(name, spec, included);
    return machine.ok ? [machine.value] : [];
  });
  const ways = machines.map((machine) => ({ machine, thickness: rollable(machine)[0] }));
  const { machine, thickness } = ways.find((way) => way.thickness !== undefined) ?? ways[0] ?? {};
  if (machine === undefined) return undefined;
  const [cutter] = machine.cutters;
  const over = cutter?.workingWidth;
  return {
    machine: machine.name,
    thickness: `${thickness ?? usual.thickness} mm`,
    cutter: cutter === undefined ? `${usual.strand} mm` : sizeWritten(cutter.size),
    start: `${usualFirst(machine.rolls.gaps)} mm`,
    ...(over !== undefined && dec(over).lt(machine.rolls.width) && { width: `${over} mm` }),
    ...(rawWeight === undefined && { portion: usualPortion }),
  };
}

/** Thicknesses that a machine can roll its thickest dough to, the most usual first. */
function rollable(machine: Machine): readonly DecimalText[] {
  const { gaps } = machine.rolls;
  return thicknesses(gaps).filter(
    (finalThickness) => passPlan({ gaps, firstThickness: usualFirst(gaps), finalThickness }).ok,
  );
}

function thicknesses(gaps: Gaps): readonly DecimalText[] {
  const off = (gap: DecimalText) => dec(gap).minus(usual.thickness).abs();
  if (gaps.kind === "free") return [dec(usual.thickness).clamp(gaps.least, gaps.greatest).toFixed()];
  return gaps.settings.map(({ gap }) => gap).toSorted((one, other) => off(one).comparedTo(off(other)));
}
