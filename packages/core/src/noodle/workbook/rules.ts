import { type Figure, feedsOf } from "../../figure/figure.ts";
import { dec } from "../../number/decimal.ts";
import { floorOf, joined, literal, stepsOf } from "../../render/workbook/formulas.ts";
import type { CellOf, RoundedFigures } from "../../render/workbook/workbook.ts";
import type { Made, Rules } from "./made.ts";
import { divisionRule } from "./scales.ts";

/** Divisions, changes by rounding, and what is weighed apart. */
export function weighingRules({ batch, scales, weighed, graph }: Made): Rules {
  const rules: Rules = {};
  for (const { line, exact, load, step, off, nearest } of weighed) {
    if (scales.length > 1) rules[step.id] = divisionRule(exact.id, scales);
    rules[off.id] = (cell) => `IF(${cell(exact.id)}=0,0,100*(${cell(load.id)}-${cell(exact.id)})/${cell(exact.id)})`;
    rules[nearest.id] = (cell) => `IF(${cell(exact.id)}=0,0,100*${cell(step.id)}/2/${cell(exact.id)})`;
    if (line.role === "dusting") {
      rules[load.id] = (cell) => `ROUND(${stepsOf(cell(exact.id), cell(step.id))}*${cell(step.id)},12)`;
    }
  }
  for (const { id, asked, weighed: real } of batch.rounding) {
    rules[`rounding.${id}.percent`] = (cell) =>
      `IF(${cell(asked.id)}=0,0,100*(${cell(real.id)}-${cell(asked.id)})/${cell(asked.id)})`;
  }
  if (batch.rework !== undefined) {
    const { mass } = batch.rework;
    const division = divisionRule("rework.exact", scales);
    const down = graph["rework.stated"]?.unit === "g";
    rules[mass.id] = (cell) => {
      const [exact, step] = [cell("rework.exact"), division(cell)];
      return `ROUND(${down ? floorOf(`${exact}/(${step})`) : stepsOf(exact, `(${step})`)}*(${step}),12)`;
    };
  }
  return rules;
}

function reachOf(stock: string, used: string): string {
  return `IF(${used}>0,${stock}/${used},1000000000)`;
}

/** The figures that went into one, by the names of its formula. */
function fedTo(figure: Figure | undefined): Readonly<Record<string, readonly string[]>> {
  if (figure?.working.kind !== "formula") return {};
  const feeds = Object.entries(figure.working.from).map(
    ([name, fed]) => [name, "figures" in fed ? fed.figures : "figure" in fed ? [fed.figure] : []] as const,
  );
  return Object.fromEntries(feeds);
}

/** Prices of one material, what is paid, how far what there is goes, and what is shared out. */
export function costRules({ cost, weighed, graph }: Made): Rules {
  if (cost === undefined) return {};
  const rules: Rules = {};
  const places = cost.batch.places;
  for (const { line } of weighed) {
    const of = `shopping.${line.id}`;
    const pay = graph[`${of}.pay`];
    const price = pay && feedsOf(pay).find((id) => id.endsWith(".price"));
    if (price === undefined) continue;
    const bought = graph[`${of}.packs`] === undefined ? "buy" : "packs";
    rules[`${of}.pay`] = (cell) => {
      const much = bought === "buy" ? cell(`${of}.buy`) : `${cell(`${of}.packs`)}*${cell(`${of}.pack`)}`;
      return `ROUND(ROUND(${much}*${cell(price)}/1000,9),${places})`;
    };
  }
  for (const [id, per] of [
    ["stock.loads", "load"],
    ["stock.bowls", "need"],
  ] as const) {
    const { stock, [per]: used, bowls } = fedTo(graph[id]);
    // What none is taken of is enough for any number.
    const reach = (cell: CellOf): string =>
      joined("MIN", stock?.map((one, index) => reachOf(cell(one), cell(used?.[index] ?? one))) ?? []);
    const times = bowls?.[0];
    if (stock) rules[id] = (cell) => floorOf(`${reach(cell)}${times === undefined ? "" : `*${cell(times)}`}`);
  }
  const coin = literal(dec(10).pow(-places));
  for (const { over, groups } of cost.shared) {
    const [load, bowls] = ["loads.count", "batch.bowls"];
    const count = over === "load" ? load : bowls;
    const least = (cell: CellOf): string => floorOf(`${cell("cost.batch")}/${cell(count)}/${coin}`);
    const more = (cell: CellOf): string => `(ROUND(${cell("cost.batch")}/${coin},0)-${least(cell)}*${cell(count)})`;
    for (const { count: number, each, together } of groups) {
      const most = number.id.includes(".more.");
      rules[number.id] = (cell) => (most ? more(cell) : `${cell(count)}-${more(cell)}`);
      rules[each.id] = (cell) => `ROUND((${least(cell)}${most ? "+1" : ""})*${coin},10)`;
      rules[together.id] = (cell) => `${cell(number.id)}*${cell(each.id)}`;
    }
  }
  return rules;
}

/** What is rounded with its total kept. */
export function roundings({ batch, cost, scales, weighed }: Made): readonly RoundedFigures[] {
  const loads: RoundedFigures = {
    title: "Weights of a load, rounded to the scales with the total kept",
    least: "proportion",
    divisions: scales.length,
    lines: batch.lines.map(({ line, exact, load, step }) => ({
      name: line.name,
      exact: exact.id,
      rounded: load.id,
      division: step.id,
    })),
  };
  if (cost === undefined) return [loads];
  const columns = (["batch", "load", ...(cost.bowl ? ["bowl" as const] : [])] as const).map((what): RoundedFigures => {
    const places = (what === "batch" ? cost.batch : what === "load" ? cost.load : cost.bowl)?.places ?? 0;
    return {
      title: `Cost of ${what === "batch" ? "the batch" : `a ${what}`}, rounded with the total kept`,
      least: "change",
      divisions: 1,
      lines: weighed.flatMap(({ line }) =>
        cost.graph[`cost.${line.id}.${what}.exact`] === undefined
          ? []
          : [
              {
                name: line.name,
                exact: `cost.${line.id}.${what}.exact`,
                rounded: `cost.${line.id}.${what}`,
                division: { step: dec(10).pow(-places).toString() },
              },
            ],
      ),
    };
  });
  return [loads, ...columns.filter(({ lines }) => lines.length > 0)];
}
