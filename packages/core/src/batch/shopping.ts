import { type Figure, found, given, type Naming, renamed, summed, worked } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { definition, fromSpec, massBalance } from "../figure/source.ts";
import type { FormulaLine } from "../formula/line.ts";
import { priceFigure } from "../formula/prices.ts";
import { materialName } from "../materials/catalogue.ts";
import type { Price } from "../materials/fields.ts";
import { dec, fixedText } from "../number/decimal.ts";
import type { Batch } from "./batch.ts";
import type { Prices } from "./cost-prices.ts";
import type { ShoppingLine } from "./shopping-line.ts";
import { type StockReach, stockReach } from "./shopping-stock.ts";
import type { WeighedLine } from "./weighing.ts";

/** What to buy for a batch, and how far the store goes. */
export interface Shopping {
  readonly lines: readonly ShoppingLine[];
  /** To pay for all that has a price. */
  readonly pay: Figure;
  readonly reach?: StockReach;
  readonly notes: readonly Note[];
}

/**
 * The shopping list of a batch: what is on hand taken off, what is sold by the pack rounded up to packs.
 *
 * Tap water is not on it. What is sold by weight is bought to the gram that is needed.
 */
export function shoppingFor(weighed: readonly WeighedLine[], prices: Prices, batch: Batch): Shopping {
  const lines = grouped(weighed).map((group) => shoppingLine(group, prices));
  const paid = lines.flatMap((line) => line.pay ?? []);
  const naming = { id: "shopping.pay", label: "to pay", unit: prices.currency, places: prices.places };
  const pay = summed(naming, { pay: paid }, definition);
  const reach = stockReach(lines, batch);
  return { lines, pay, ...(reach && { reach }), notes: reach?.notes ?? [] };
}

/** Lines of one material, such as a starch in the dough and for dusting; water and nothing at all are left out. */
function grouped(weighed: readonly WeighedLine[]): readonly (readonly [WeighedLine, ...WeighedLine[]])[] {
  const groups = new Map<string, [WeighedLine, ...WeighedLine[]]>();
  for (const one of weighed) {
    if (one.line.role === "water" || dec(one.load.value).isZero()) continue;
    const name = materialName(one.line.name);
    const group = groups.get(name);
    if (group === undefined) groups.set(name, [one]);
    else group.push(one);
  }
  return [...groups.values()];
}

function shoppingLine(group: readonly [WeighedLine, ...WeighedLine[]], prices: Prices): ShoppingLine {
  const [first] = group;
  const { id, name } = first.line;
  const line = prices.lines.find((one) => one.id === id) ?? first.line;
  const { price, stock } = line.material;
  const places = Math.max(...group.map(({ batch }) => batch.places));
  const naming = (what: string, label: string) => ({ id: `shopping.${id}.${what}`, label, unit: "g", places });
  const need = summed(naming("need", `${name} needed`), { mass: group.map(({ batch }) => batch) }, massBalance);
  const load = summed(naming("load", `${name} in one load`), { mass: group.map((one) => one.load) }, massBalance);
  const onHand = stock && given(naming("on-hand", `${name} on hand`), stock.value, `stated, ${stock.text}`, fromSpec);
  const lacking = naming("missing", `${name} that is missing`);
  const missing = worked(lacking, "max(need - stock, 0)", { need, stock: onHand ?? 0 }, massBalance);
  const bought = price?.packText === undefined ? undefined : inPacks(price, price.packText, missing, naming, name);
  const buy = bought?.buy ?? renamed(missing, `shopping.${id}.buy`, `${name} to buy`);
  const over = { stock: onHand ?? 0, buy, need };
  const left = worked(naming("left", `${name} left over`), "stock + buy - need", over, massBalance);
  const pay = price && payFigure(line, price, bought, buy, prices);
  return {
    name,
    unit: first.unit,
    division: first.division,
    need,
    load,
    ...(onHand && { onHand }),
    ...(bought && price?.packText && { packs: { count: bought.count, text: price.packText } }),
    buy,
    ...(pay && { pay }),
    left,
  };
}

type Named = (what: string, label: string) => Naming;

function inPacks(price: Price, text: string, missing: Figure, naming: Named, name: string) {
  const pack = given(naming("pack", `pack of ${name}`), price.pack, `stated, ${text}`, fromSpec);
  const countNaming = { ...naming("packs", `packs of ${name}`), unit: "", places: 0 };
  const count = worked(countNaming, "ceil(missing / pack)", { missing, pack }, definition);
  const buy = worked(naming("buy", `${name} to buy`), "packs * pack", { packs: count, pack }, massBalance);
  return { count, buy };
}

function payFigure(
  line: FormulaLine,
  price: Price,
  bought: { readonly count: Figure } | undefined,
  buy: Figure,
  prices: Prices,
): Figure {
  const { id, name } = line;
  const { currency, places } = prices;
  const packs = bought?.count;
  const perKilogram = priceFigure(line, prices.lines);
  const exact = packs ? dec(packs.value).times(price.amount) : dec(buy.value).times(price.perKilogram).div(1000);
  const much = packs ? `${packs.value} packs` : `${fixedText(buy.value, buy.places)} g`;
  const naming = { id: `shopping.${id}.pay`, label: `to pay for ${name}`, unit: currency, places };
  const on = [packs ?? buy, ...(perKilogram ? [perKilogram] : [])];
  return found(naming, fixedText(exact, places), `${much} at ${price.text}, to the smallest coin`, on, fromSpec);
}
