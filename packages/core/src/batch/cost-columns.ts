import { type Figure, found, given, summed, worked } from "../figure/figure.ts";
import { commonPractice, definition, massBalance } from "../figure/source.ts";
import type { FormulaLine } from "../formula/line.ts";
import { finerPlaces, priceFigure } from "../formula/prices.ts";
import { currencySource } from "../materials/currencies.ts";
import { dec, decimalText, digitsText, ZERO } from "../number/decimal.ts";
import { roundKeepingTotal } from "../number/rounding.ts";
import { isTap, type Prices } from "./cost-prices.ts";
import type { WeighedLine } from "./weighing.ts";

/** Costs of all priced ingredients, exact and rounded so that they add up. */
export interface Column {
  readonly byLine: ReadonlyMap<string, Figure>;
  readonly total: Figure;
}

/** What each ingredient costs in the batch, in a load and in a bowl. */
export interface Columns {
  readonly batch: Column;
  readonly load: Column;
  readonly bowl?: Column;
  /** What the batch costs before it is rounded. */
  readonly unrounded: Figure;
}

/** The columns of the cost table, each rounded to the smallest coin with its total kept; bowls two places finer. */
export function costColumns(
  weighed: readonly WeighedLine[],
  prices: Prices,
  bowls: Figure | undefined,
  incomplete: boolean,
): Columns {
  const priced = weighed.flatMap((one) => {
    const price = pricePaid(one.line, prices);
    return price === undefined ? [] : [{ one, price }];
  });
  const lines = priced.map(({ one }) => one.line);
  const { currency: unit, places: coins } = prices;
  const places = coins + finerPlaces;
  const exactCosts = (what: "batch" | "load"): readonly Figure[] =>
    priced.map(({ one, price }) => {
      const label = `${one.line.name} in ${what === "batch" ? "the batch" : "a load"}, unrounded`;
      const naming = { id: `cost.${one.line.id}.${what}.exact`, label, unit, places };
      return worked(naming, "mass * price / 1000", { mass: one[what], price }, massBalance);
    });
  const left = incomplete ? ", what is priced of it" : "";
  const ofBatch = exactCosts("batch");
  const ofLoad = exactCosts("load");
  const ofBowl = bowls && ofBatch.map((cost, index) => bowlCost(cost, bowls, lines[index], prices));
  const column = (what: keyof typeof wholes, exact: readonly Figure[]) => addedUp(what, exact, lines, prices, left);
  const batch = column("batch", ofBatch);
  const load = column("load", ofLoad);
  const bowl = ofBowl && column("bowl", ofBowl);
  const naming = { id: "cost.batch.exact", label: `the batch, unrounded${left}`, unit, places };
  return { batch, load, ...(bowl && { bowl }), unrounded: summed(naming, { cost: ofBatch }, definition) };
}

/** The price of an ingredient; nothing where none is stated, but for tap water. */
function pricePaid({ id }: FormulaLine, { lines, currency, places }: Prices): Figure | undefined {
  const line = lines.find((one) => one.id === id);
  const price = line && priceFigure(line, lines);
  if (price !== undefined || line === undefined || !isTap(line)) return price;
  const label = `price of ${line.name}`;
  const naming = { id: `${id}.price`, label, unit: `${currency}/kg`, places: places + finerPlaces };
  return given(naming, 0, "none stated: counted as free", commonPractice);
}

function bowlCost(cost: Figure, bowls: Figure, line: FormulaLine | undefined, { currency, places }: Prices): Figure {
  const label = `${line?.name} in a bowl, unrounded`;
  const naming = { id: `cost.${line?.id}.bowl.exact`, label, unit: currency, places: places + 2 * finerPlaces };
  return worked(naming, "cost / bowls", { cost, bowls }, definition);
}

const wholes = { batch: "the batch", load: "one load", bowl: "one bowl" } as const;

function addedUp(
  what: keyof typeof wholes,
  exact: readonly Figure[],
  lines: readonly FormulaLine[],
  { currency, places }: Prices,
  left: string,
): Column {
  const shown = what === "bowl" ? places + finerPlaces : places;
  const division = dec(10).pow(-shown);
  const steps = exact.map(({ value }) => ({ value: dec(value), division }));
  const rounded = roundKeepingTotal(steps, "change");
  const figures = exact.map((cost, index) => {
    const line = lines[index];
    return found(
      { id: `cost.${line?.id}.${what}`, label: `${line?.name} in ${wholes[what]}`, unit: currency, places: shown },
      rounded[index] ?? ZERO,
      `${digitsText(cost.value, 10)} ${currency} rounded to ${decimalText(division)} ${currency}, the total kept`,
      exact,
      currencySource,
    );
  });
  const naming = { id: `cost.${what}`, label: `${wholes[what]}${left}`, unit: currency, places: shown };
  return {
    byLine: new Map(lines.flatMap((line, index) => (figures[index] ? [[line.id, figures[index]]] : []))),
    total: summed(naming, { cost: figures }, definition),
  };
}
