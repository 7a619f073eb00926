import * as z from "zod/mini";
import { costOf } from "../batch/cost.ts";
import { type Comparison, compareNoodles, type Side } from "../explore/compare.ts";
import { batchTolerance } from "../explore/spec-tolerance.ts";
import { frozen } from "../figure/frozen.ts";
import type { Published } from "../figure/graph.ts";
import { answer, type Note, note, problem, problemsOf } from "../figure/problem.ts";
import { section } from "../materials/fields.ts";
import { formulaCautions } from "../report/cautions.ts";
import { compareReport } from "../report/compare-report.ts";
import { type Answer, answered } from "./answer.ts";
import { asRead, type Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";
import { readWish, wishedText } from "./wishes.ts";

/** A noodle and what it is called beside the others. */
export interface NamedNoodle {
  readonly name: string;
  readonly noodle: Noodle;
}

const namedNoodles = z.array(
  section({ description: "A noodle to compare" }, () => ({
    name: wishedText("What the noodle is called", "as written"),
    noodle: z.custom<Noodle>(),
  })),
);

/**
 * Noodles side by side, on 100 of flour, by the load and by the bowl: what differs, by how much, and whether the errors of
 * scales, flours, strengths and losses could make the difference. The first is the one that the others are held against.
 *
 * Problems: `compare.one`, `compare.name`. A batch that cannot be had is told in a note, and its weights are left out.
 * @example askCompare([]).problems[0].code // => "compare.one"
 */
export function askCompare(noodles: readonly NamedNoodle[]): Answer<Published<Comparison>> {
  const wished = readWish(namedNoodles, noodles);
  if (!wished.ok) return wished;
  if (noodles.length < 2)
    return frozen({ ok: false, problems: [problem("compare.one", [], { noodles: noodles.length })] });
  const names = noodles.map(({ name }) => name.trim());
  const unclear = names.flatMap((name, index) =>
    name === "" || names.indexOf(name) < index ? [problem("compare.name", [index, "name"], { name })] : [],
  );
  if (unclear.length > 0) return frozen({ ok: false, problems: unclear });
  const read = noodles.map(sideOf);
  return answered(answer(compareNoodles(read.map(({ side }) => side))), {
    notes: () => read.flatMap(({ notes }) => notes),
    report: (comparison, notes) =>
      compareReport(
        comparison,
        { notes, units: noodles[0]?.noodle.units ?? "metric" },
        noodles.flatMap(({ noodle }) => formulaCautions(noodle.formula)),
      ),
  });
}

function sideOf({ name, noodle }: NamedNoodle): { readonly side: Side; readonly notes: readonly Note[] } {
  const { spec, formula } = asRead(noodle);
  const batch = plannedBatch(noodle);
  const cost = batch.ok ? costOf(spec, formula, batch.value) : batch;
  const side: Side = {
    name,
    formula,
    ...(batch.ok && { batch: batch.value, tolerance: batchTolerance(spec, formula, batch.value, { draws: 100 }) }),
    ...(cost.ok && { cost: cost.value }),
  };
  const loud = [...noodle.notes, ...(batch.ok ? batch.notes : [])].filter((one) => one.loud);
  const unpriced = cost.ok ? cost.notes.filter(({ code }) => code === "cost.not-priced") : [];
  const missing = problemsOf(batch)
    .slice(0, 1)
    .map((problem) => note("compare.no-batch", ["batch"], { problem }));
  const all = [...loud, ...unpriced.map((one) => ({ ...one, loud: true as const })), ...missing];
  // Notes say of which noodle they speak.
  return { side, notes: all.map((one) => ({ ...one, of: { noodle: name } })) };
}
