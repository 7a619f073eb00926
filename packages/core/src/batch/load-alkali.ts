import type { Weighed } from "../chemistry/carried.ts";
import type { Batch } from "./batch.ts";

/** The alkaline products of one load, g of each before rounding. */
export function alkaliOfLoad(batch: Batch): readonly Weighed[] {
  return batch.lines.flatMap(({ line, exact }) => {
    const { composition } = line.material;
    if (line.role !== "alkali" || composition === undefined) return [];
    return [{ name: line.name, composition, mass: exact.value }];
  });
}
