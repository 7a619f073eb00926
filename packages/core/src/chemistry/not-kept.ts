import type { Figure } from "../figure/figure.ts";
import { measure } from "../figure/in-system.ts";
import { type Note, note } from "../figure/problem.ts";
import { dec } from "../number/decimal.ts";
import type { Carried } from "./carried.ts";
import { standardsWithoutHydroxides } from "./food-limits.ts";

/** What changes by less than this share of itself counts as kept: the doubt of the atomic weights is of this order. */
const KEPT = "0.0005";

const watched = ["anhydrous", "alkalinityM", "alkalinityP", "salt", "sodium", "potassium"] as const;

/** Says what a swap does not keep, in words; an empty list where it keeps everything. @example whatIsNotKept(carriedBy([], "before"), carriedBy([], "after")) // => [] */
export function whatIsNotKept(before: Carried, after: Carried): readonly Note[] {
  const changes = watched.flatMap((key) => changeOf(before[key], after[key]));
  const notes: Note[] = changes.length === 0 ? [] : [note("convert.not-kept", [], { changes })];
  if (differ(before.bicarbonate, after.bicarbonate)) notes.push(note("convert.bicarbonate", [], {}));
  if (differ(before.hydroxide, after.hydroxide)) {
    const more = dec(after.hydroxide.value).gt(before.hydroxide.value);
    notes.push(note("convert.hydroxide", [], more ? { without: standardsWithoutHydroxides } : {}));
  }
  return notes;
}

function changeOf(before: Figure, after: Figure) {
  if (!differ(before, after)) return [];
  const { label, unit } = before;
  return [{ label, before: measure(before.value, unit, 2), after: measure(after.value, unit, 2) }];
}

function differ(before: Figure, after: Figure): boolean {
  const greatest = dec(before.value).abs().plus(dec(after.value).abs());
  return dec(before.value).minus(after.value).abs().gt(greatest.div(2).times(KEPT));
}
