import { askCompare, type NamedNoodle } from "@noodlewright/core";
import type { Placed } from "../input/placed-problem.ts";
import type { Io } from "../io.ts";
import { printProblems, printReport, unitsOf } from "../shared/answer.ts";
import { loadNoodle } from "../shared/ask-noodle.ts";
import type { Asked, Command } from "../shared/command.ts";
import { batchFlags, batchOverrides, specFlags } from "../shared/flags.ts";

/** `noodlewright compare`: noodles side by side, or one as written beside the same as set. */
export const compareCommand: Command = {
  positionals: { specs: "Spec files in YAML or JSON; the first is the one that the others are held against" },
  flags: { ...batchFlags, ...specFlags },
  examples: {
    "noodlewright compare noodle.yaml --set 'water.added=38 %'": "a noodle as written, and with more water",
    "noodlewright compare summer.yaml winter.yaml": "two noodles: what differs, and whether errors could make it",
    "noodlewright compare summer.yaml winter.yaml --dough '10 kg'": "both for the same mass of dough",
  },
  run: async (asked, io) => {
    const paths = asked.list("specs");
    const sets = asked.list("set");
    const alone = paths.length === 1 && sets.length > 0;
    const orders: readonly Order[] = alone
      ? paths.flatMap((path) => [
          { path, name: "as written", sets: [] },
          { path, name: "as set", sets },
        ])
      : paths.map((path) => ({ path, sets }));
    const reading = await readAll(orders, asked, io);
    if (!reading.ok) return printProblems(reading.problems, asked, io);
    const answer = askCompare(reading.noodles);
    return answer.ok ? printReport(answer.report(), asked, io) : printProblems(answer.problems, asked, io);
  },
};

interface Order {
  readonly path: string;
  /** What it is called; its own name unless stated. */
  readonly name?: string;
  readonly sets: readonly string[];
}

async function readAll(
  orders: readonly Order[],
  asked: Asked,
  io: Io,
): Promise<Placed<{ noodles: readonly NamedNoodle[] }>> {
  const noodles: NamedNoodle[] = [];
  for (const { path, name, sets } of orders) {
    const order = { path, overrides: batchOverrides(asked), sets, units: unitsOf(asked), needs: "machines" as const };
    const loading = await loadNoodle(order, io);
    if (!loading.ok) return loading;
    const { noodle } = loading.loaded;
    const own = name ?? noodle.formula.name;
    noodles.push({ name: noodles.some((other) => other.name === own) ? `${own} (${path})` : own, noodle });
  }
  return { ok: true, noodles };
}
