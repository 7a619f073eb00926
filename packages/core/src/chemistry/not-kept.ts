import type { Figure } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { dec, fixedText } from "../number/decimal.ts";
import type { Carried } from "./carried.ts";
import { standardsWithoutHydroxides } from "./food-limits.ts";

/** What changes by less than this share of itself counts as kept: the doubt of the atomic weights is of this order. */
const KEPT = "0.0005";

const watched = ["anhydrous", "alkalinityM", "alkalinityP", "salt", "sodium", "potassium"] as const;

/** Says what a swap does not keep, in words; an empty list where it keeps everything. @example whatIsNotKept(carriedBy([], "before"), carriedBy([], "after")) // => [] */
export function whatIsNotKept(before: Carried, after: Carried): readonly Note[] {
  const changes = watched.flatMap((key) => changeOf(before[key], after[key]));
  const list =
    changes.length === 0 ? [] : [{ code: "convert.not-kept", path: [], text: `not kept: ${changes.join("; ")}` }];
  const notes: Note[] = [...list];
  if (differ(before.bicarbonate, after.bicarbonate)) {
    notes.push({
      code: "convert.bicarbonate",
      path: [],
      text: "bicarbonate is not carbonate: at the same alkalinity M it brings no alkalinity P and twice the carbonic acid that acid can set free, and its solution is about three pH units milder",
    });
  }
  if (differ(before.hydroxide, after.hydroxide)) {
    const more = dec(after.hydroxide.value).gt(before.hydroxide.value);
    const standards = more
      ? `. Not all standards allow it in noodles: ${standardsWithoutHydroxides}. Check the local code`
      : "";
    notes.push({
      code: "convert.hydroxide",
      path: [],
      text: `hydroxide is not carbonate: at the same alkalinity M it is all P, its solution is far more alkaline, and it burns${standards}`,
    });
  }
  return notes;
}

function changeOf(before: Figure, after: Figure): readonly string[] {
  if (!differ(before, after)) return [];
  return [`${before.label} ${fixedText(before.value, 2)} becomes ${fixedText(after.value, 2)} ${before.unit}`];
}

function differ(before: Figure, after: Figure): boolean {
  const greatest = dec(before.value).abs().plus(dec(after.value).abs());
  return dec(before.value).minus(after.value).abs().gt(greatest.div(2).times(KEPT));
}
