import * as z from "zod/mini";
import { mendLoad } from "../batch/mend.ts";
import type { Mended } from "../batch/mend-load.ts";
import type { MendWish } from "../batch/mend-wish.ts";
import { scalesOf } from "../batch/weighing.ts";
import { frozen } from "../figure/frozen.ts";
import type { Published } from "../figure/graph.ts";
import { section } from "../materials/fields.ts";
import { mendReport } from "../report/mend-report.ts";
import { type Answer, answered } from "./answer.ts";
import { asRead, type Noodle } from "./noodle.ts";
import { doughNotes, plannedBatch } from "./planned-batch.ts";
import { readWish, wishedText } from "./wishes.ts";

const mendWish = section({ description: "What is in the bowl" }, () => ({
  weighed: z.array(
    section({ description: "An ingredient in the bowl" }, () => ({
      name: wishedText("Name of an ingredient", "tap water"),
      amount: wishedText("What is in the bowl of it", "3170 g"),
    })),
  ),
  noMore: z.optional(z.array(wishedText("Name of what none can be added of", "bread flour"))),
}));

/**
 * What to add to a load in which there is too much of something, what it becomes, and how near to the formula it comes.
 *
 * @param wish - what is in the bowl in all, by name; and what there is no more of
 * Problems: those of `askBatch` and `mendLoad`; of the wish.
 *
 * @example askMend(example("school-noodle"), { weighed: [{ name: "tap water", amount: "3170 g" }] }).value.lines[0].add.value // => "79.1"
 */
export function askMend(noodle: Noodle, wish: MendWish): Answer<Published<Mended>> {
  const { spec, formula, units } = asRead(noodle);
  const wished = readWish(mendWish, wish);
  if (!wished.ok) return wished;
  const batch = plannedBatch(noodle);
  if (!batch.ok) return batch;
  const scales = scalesOf(spec, units === "us");
  if (!scales.ok) return frozen(scales);
  return answered(mendLoad(spec, formula, batch.value, scales.value, wished.value), {
    notes: (own) => [...own, ...doughNotes(noodle)],
    report: (mended, notes) => mendReport(formula, mended, { notes, units }),
  });
}
