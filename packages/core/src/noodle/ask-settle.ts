import type { FoundAmount } from "../explore/settle-places.ts";
import type { WantedCheck } from "../explore/wanted-checks.ts";
import { answer } from "../figure/problem.ts";
import { settleReport } from "../report/settle-report.ts";
import { answered, type ChangingAnswer, changing } from "./answer.ts";
import { heldAgainst } from "./held-against.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";

/** The amounts that a spec left to be found, and how far what it wants is met. */
export interface SettledNoodle {
  readonly found: readonly FoundAmount[];
  /** The same in the fewest digits that give the formula as shown, and weights that no scale tells apart: to be written down. */
  readonly rounded: readonly FoundAmount[];
  readonly checks: readonly WantedCheck[];
}

/**
 * The amounts that were found when the noodle was read, and all that its spec wants beside what it comes to. The cost of a
 * bowl is held against what is wanted where the spec states a batch. `changes()` put the amounts in the place of `find`.
 *
 * @example askSettle(example("friday-noodle")).value.found[0].text // => "41 %"
 * @example askSettle(example("friday-noodle")).changes()[0] // => { path: ["flours", 0, "amount"], value: "41 %" }
 */
export function askSettle(noodle: Noodle): ChangingAnswer<SettledNoodle> {
  const { checks, notes: unknown } = heldAgainst(noodle, plannedBatch(noodle));
  const { settled } = noodle;
  const own = noodle.notes.filter(({ code }) => code !== "settle.found");
  const outcome = answer({ found: settled?.found ?? [], rounded: settled?.rounded() ?? [], checks }, unknown);
  const told = answered(outcome, {
    notes: (more) => [...own, ...more],
    report: (value, notes) => settleReport(noodle.formula, value, { notes, units: noodle.units }),
  });
  return changing(told, ({ rounded }) => rounded.map(({ path, text: value }) => ({ path, value })));
}
