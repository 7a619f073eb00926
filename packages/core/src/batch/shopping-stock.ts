import { type Figure, worked } from "../figure/figure.ts";
import { type Note, note } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import { dec } from "../number/decimal.ts";
import type { Batch } from "./batch.ts";
import type { ShoppingLine } from "./shopping-line.ts";

/** How far what is on hand goes. */
export interface StockReach {
  /** Each ingredient with a stated stock, what runs out first before the others. */
  readonly lines: readonly { readonly line: ShoppingLine; readonly onHand: Figure; readonly loads: Figure }[];
  readonly loads: Figure;
  /** Bowls, where the weight of a bowl is known. */
  readonly bowls?: Figure;
  readonly notes: readonly Note[];
}

/** What the stated stocks make; undefined where none is stated. Ingredients without a stated stock are named in a note. */
export function stockReach(list: readonly ShoppingLine[], batch: Batch): StockReach | undefined {
  const stocked = list.flatMap((line) => {
    const { onHand, load } = line;
    return onHand === undefined ? [] : [{ line, onHand, loads: loadsOf(line, onHand, load) }];
  });
  if (stocked.length === 0) return undefined;
  const lines = stocked.toSorted((a, b) => dec(a.loads.value).comparedTo(b.loads.value));
  const stock = stocked.map(({ onHand }) => onHand);
  const loads = worked(
    { id: "stock.loads", label: "whole loads from what is on hand", unit: "", places: 0 },
    "floor(min(stock / load))",
    { stock, load: stocked.map(({ line }) => line.load) },
    massBalance,
  );
  const bowls =
    batch.target.bowls &&
    worked(
      { id: "stock.bowls", label: "bowls from what is on hand", unit: "", places: 0 },
      "floor(min(stock / need) * bowls)",
      { stock, need: stocked.map(({ line }) => line.need), bowls: batch.target.bowls },
      massBalance,
    );
  return { lines, loads, ...(bowls && { bowls }), notes: unstated(list) };
}

function loadsOf({ name, load: { id } }: ShoppingLine, onHand: Figure, load: Figure): Figure {
  return worked(
    { id: `${id}s-from-stock`, label: `loads that the ${name} on hand is enough for`, unit: "", places: 1 },
    "floor(10 * stock / load) / 10",
    { stock: onHand, load },
    massBalance,
  );
}

function unstated(list: readonly ShoppingLine[]): readonly Note[] {
  const names = list.filter(({ onHand }) => onHand === undefined).map(({ name }) => name);
  if (names.length === 0) return [];
  return [note("stock.not-stated", ["stock"], { names })];
}
