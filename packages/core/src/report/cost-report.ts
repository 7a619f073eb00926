import type { Batch } from "../batch/batch.ts";
import type { Cost, CostLine } from "../batch/cost.ts";
import type { ShoppingLine } from "../batch/shopping-line.ts";
import type { StockReach } from "../batch/shopping-stock.ts";
import type { Figure } from "../figure/figure.ts";
import { groupDigits, type UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import { figureBlock, listing, numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import type { Cell, Report, Table } from "./schema.ts";
import { figureCell, weightCell, words } from "./show.ts";

/** Tells what a batch costs, what to buy for it and how far the store goes. */
export function costReport(
  formula: Formula,
  batch: Batch,
  cost: Cost,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const { shopping } = cost;
  return report({
    command: "cost",
    title: formula.name,
    main: "cost",
    sections: [
      section("cost", "Cost of the ingredients", costTable(batch, cost), figureBlock([cost.kilogram], units)),
      section("shares", "Shared out to the smallest coin", sharesTable(cost)),
      section("shopping", "Shopping list", shoppingTable(cost)),
      section("stock", "What is on hand", ...stockBlocks(shopping.reach)),
    ],
    figures: [...Object.values(formula.graph), ...Object.values(cost.graph)],
    from: [cost, batch, formula],
    units,
    notes,
    cautions: [],
  });
}

function costTable(batch: Batch, cost: Cost): Table {
  const { currency, lines, unpriced } = cost;
  const unit = batch.lines[0]?.unit ?? "g";
  const several = dec(batch.loads.count.value).gt(1);
  const columns = [
    wordColumn("ingredient", "ingredient"),
    wordColumn("price", "price"),
    numberColumn("mass", `batch, ${unit}`),
    numberColumn("batch", `batch, ${currency}`),
    ...(several ? [numberColumn("load", `one load, ${currency}`)] : []),
    ...(cost.bowl ? [numberColumn("bowl", `a bowl, ${currency}`)] : []),
  ];
  const figures = (one: Pick<CostLine, "batch" | "load" | "bowl">): readonly Cell[] => [
    orBlank(one.batch),
    ...(several ? [orBlank(one.load)] : []),
    ...(cost.bowl ? [orBlank(one.bowl)] : []),
  ];
  const rows = lines.map((one) => {
    const { line, batch: mass, division, unit: shown } = one.weighed;
    const name = line.role === "dusting" ? `${line.name} (dusting)` : line.name;
    const price = one.priced ?? "no price";
    return row([words(name), words(price), weightCell(mass, shown, division), ...figures(one)]);
  });
  const { rework } = batch;
  const free = rework
    ? [
        row([
          words(rework.name),
          words("paid for before"),
          weightCell(rework.batch, rework.unit, rework.division),
          ...figures({}),
        ]),
      ]
    : [];
  const name = unpriced.length === 0 ? "all ingredients" : "what is priced of them";
  return table("cost", columns, [
    ...rows,
    ...free,
    row([words(name), words(""), words(""), ...figures(cost)], "total"),
  ]);
}

function orBlank(figure: Figure | undefined): Cell {
  return figure === undefined ? words("–") : figureCell(figure);
}

function sharesTable({ shared, currency }: Cost): Table {
  const groups = shared.flatMap((one) => one.groups.map((group) => ({ ...group, over: one.over })));
  return listing("shares", groups, [
    [wordColumn("over", "over"), ({ over }) => `${over}s`],
    [numberColumn("count", "how many"), ({ count }) => figureCell(count)],
    [numberColumn("each", `each, ${currency}`), ({ each }) => figureCell(each)],
    [numberColumn("together", `together, ${currency}`), ({ together }) => figureCell(together)],
  ]);
}

function shoppingTable({ currency, unpriced, shopping: { lines, pay } }: Cost): Table {
  const name = unpriced.length === 0 ? "to pay" : "to pay for what is priced";
  const stocked = lines.some(({ onHand }) => onHand !== undefined);
  const unit = lines[0]?.unit ?? "g";
  const columns = [
    wordColumn("ingredient", "ingredient"),
    numberColumn("need", `needed, ${unit}`),
    ...(stocked ? [numberColumn("on-hand", `on hand, ${unit}`)] : []),
    numberColumn("buy", "buy"),
    numberColumn("pay", `pay, ${currency}`),
    numberColumn("left", `left over, ${unit}`),
  ];
  const rows = lines.map((line) =>
    row([
      words(line.name),
      mass(line, line.need),
      ...(stocked ? [line.onHand ? mass(line, line.onHand) : words("not stated")] : []),
      buyCell(line),
      orBlank(line.pay),
      mass(line, line.left),
    ]),
  );
  const blanks = columns.slice(1, -2).map(() => words(""));
  return table("shopping", columns, [...rows, row([words(name), ...blanks, figureCell(pay), words("")], "total")]);
}

function mass({ unit, division }: ShoppingLine, figure: Figure): Cell {
  return weightCell(figure, unit, division);
}

function buyCell(line: ShoppingLine): Cell {
  const { packs, buy, unit } = line;
  if (dec(buy.value).isZero()) return { ...figureCell(buy), text: "nothing" };
  if (packs === undefined) {
    const cell = mass(line, buy);
    return { ...cell, text: `${cell.text} ${unit}` };
  }
  return { ...figureCell(packs.count), text: `${groupDigits(packs.count.value)} × ${packs.text}` };
}

function stockBlocks(reach: StockReach | undefined) {
  if (reach === undefined) return [];
  const { lines } = reach;
  const unit = lines[0]?.line.unit ?? "g";
  return [
    { kind: "figures" as const, figures: [reach.loads, ...(reach.bowls ? [reach.bowls] : [])] },
    listing("stock", lines, [
      [wordColumn("ingredient", "ingredient"), ({ line }) => line.name],
      [numberColumn("on-hand", `on hand, ${unit}`), ({ line, onHand }) => mass(line, onHand)],
      [numberColumn("load", `one load, ${unit}`), ({ line }) => mass(line, line.load)],
      [numberColumn("loads", "loads"), ({ loads }) => figureCell(loads)],
      [wordColumn("first", ""), (one) => (one === lines[0] ? "runs out first" : "")],
    ]),
  ];
}
