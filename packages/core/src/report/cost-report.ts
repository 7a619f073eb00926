import type { Batch } from "../batch/batch.ts";
import type { Cost, CostLine } from "../batch/cost.ts";
import type { ShoppingLine } from "../batch/shopping-line.ts";
import type { StockReach } from "../batch/shopping-stock.ts";
import type { Figure } from "../figure/figure.ts";
import { groupDigits } from "../figure/in-system.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import { figureBlock, listing, numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import type { Cell, Report, Table, Telling } from "./schema.ts";
import { cellOr, figureCell, weightCell, words } from "./show.ts";

/** Tells what a batch costs, what to buy for it and how far the store goes. */
export function costReport(formula: Formula, batch: Batch, cost: Cost, { notes, units = "metric" }: Telling): Report {
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
  });
}

function costTable(batch: Batch, cost: Cost): Table {
  const { currency, lines, unpriced } = cost;
  const several = dec(batch.loads.count.value).gt(1);
  const shown: readonly (readonly [of: "batch" | "load" | "bowl", label: string])[] = [
    ["batch", `batch, ${currency}`],
    ...(several ? [["load", `one load, ${currency}`] as const] : []),
    ...(cost.bowl ? [["bowl", `a bowl, ${currency}`] as const] : []),
  ];
  const figures = (one: Pick<CostLine, "batch" | "load" | "bowl">) => shown.map(([of]) => cellOr(one[of]));
  const free = (batch.rework ? [batch.rework] : []).map(({ name, batch: mass, unit, division }) =>
    row([name, "paid for before", weightCell(mass, unit, division), ...figures({})]),
  );
  const name = unpriced.length === 0 ? "all ingredients" : "what is priced of them";
  const total = row([name, "", "", ...figures(cost)], "total");
  return listing(
    "cost",
    lines,
    [
      [
        wordColumn("ingredient", "ingredient"),
        ({ weighed: { line } }) => (line.role === "dusting" ? `${line.name} (dusting)` : line.name),
      ],
      [wordColumn("price", "price"), ({ priced }) => priced ?? "no price"],
      [
        numberColumn("mass", `batch, ${batch.lines[0]?.unit ?? "g"}`),
        ({ weighed }) => weightCell(weighed.batch, weighed.unit, weighed.division),
      ],
      ...shown.map(([of, label]) => [numberColumn(of, label), (one: CostLine) => cellOr(one[of])] as const),
    ],
    ...free,
    total,
  );
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
  const unit = lines[0]?.unit ?? "g";
  const onHand = [
    numberColumn("on-hand", `on hand, ${unit}`),
    (line: ShoppingLine) => (line.onHand ? mass(line, line.onHand) : "not stated"),
  ] as const;
  const { columns, rows } = listing("shopping", lines, [
    [wordColumn("ingredient", "ingredient"), (line) => line.name],
    [numberColumn("need", `needed, ${unit}`), (line) => mass(line, line.need)],
    ...(lines.some((line) => line.onHand !== undefined) ? [onHand] : []),
    [numberColumn("buy", "buy"), buyCell],
    [numberColumn("pay", `pay, ${currency}`), (line) => cellOr(line.pay)],
    [numberColumn("left", `left over, ${unit}`), (line) => mass(line, line.left)],
  ]);
  const blanks = columns.slice(1, -2).map(() => words(""));
  return table("shopping", columns, [...rows, row([name, ...blanks, figureCell(pay), ""], "total")]);
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
