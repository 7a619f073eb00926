import { askBatch, readStatedNoodle, told } from "@noodlewright/core";
import { beyond } from "./beyond.ts";
import type { BookSpec } from "./workbook-spec.ts";

/**
 * Which weights of a workbook its spec does not give as it was changed, and why: what was found or decided for the spec as it
 * was is found and decided anew. Where the workbook was not worked out since, what may be found anew.
 */
export async function heldBack({ data, sought, shown, open }: BookSpec): Promise<readonly string[]> {
  if (open.length > 0) return [];
  if (shown === undefined) return sought.length === 0 ? [] : [`found anew when it is worked out: ${sought.join(", ")}`];
  const noodle = readStatedNoodle(data, { kitchens: [] }, await beyond(data));
  const batch = noodle.ok ? askBatch(noodle.value) : noodle;
  if (!batch.ok) return batch.problems.map((problem) => `as it was changed it has no answer: ${told(problem).found}`);
  const { lines, dusting, withStock = [] } = batch.value;
  const weights = [
    ...[...lines, ...(dusting ? [dusting] : [])].map(({ line, load }) => ({ name: line.name, figure: load })),
    ...withStock.map(({ name, mass }) => ({ name: `${name}, with the stock solution`, figure: mass })),
  ];
  const unlike = weights.flatMap(({ name, figure: { id, value, unit } }) => {
    const there = shown.get(id);
    const same = there === undefined || Math.abs(Number(there.value) - Number(value)) <= 1e-9 * Math.abs(Number(value));
    return same || there.unit !== unit
      ? []
      : [`${name}: ${value} ${unit} a load, where the workbook shows ${there.value} ${unit}`];
  });
  const why =
    sought.length > 0 ? `${sought.join(", ")}: found anew` : "what was decided for it as it was is decided anew";
  return unlike.length === 0 ? [] : [`other weights than the workbook shows (${why}):`, ...unlike];
}
