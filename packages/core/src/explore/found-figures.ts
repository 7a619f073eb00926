import { planBatch } from "../batch/batch.ts";
import { costOf } from "../batch/cost.ts";
import { type Figure, found, worked } from "../figure/figure.ts";
import { type Graph, graphOf, standingIn } from "../figure/graph.ts";
import { massBalance } from "../figure/source.ts";
import { absorptionFigure } from "../formula/flour-figures.ts";
import type { Formula } from "../formula/formula.ts";
import { ofDough } from "../formula/naming.ts";
import type { OwnMaterials } from "../materials/own.ts";
import type { Spec } from "../spec/spec.ts";
import type { FoundAmount } from "./settle-places.ts";
import { heldWants } from "./wanted-checks.ts";

const foundByWants = "found by what is wanted";

/** Whether a figure is an amount that was found. */
export function isFoundByWants({ working }: Figure): boolean {
  return working.kind === "procedure" && working.by === foundByWants;
}

/**
 * A formula whose found amounts tell that they were found, and from what: all that is given of what is wanted and rests on
 * them, and the amounts before them. Flours come first; they were looked at as they mix, too, and beside the dough of a batch
 * where there is a store of them. The others were found together, and water of which nothing is wanted by what the flours take.
 */
export function withFound(
  { spec, formula }: { readonly spec: Spec; readonly formula: Formula },
  amounts: readonly FoundAmount[],
  extra: OwnMaterials,
): Formula {
  const planned = spec.batch && planBatch(spec, formula);
  const batch = planned?.ok ? planned.value : undefined;
  const costs = batch && costOf(spec, formula, batch);
  const graph: Graph = { ...formula.graph, ...batch?.graph, ...(costs?.ok && costs.value.graph) };
  const wants = heldWants(spec, formula, batch, extra).held.map(({ want: { reached, least, most } }) => {
    const figures = [reached, least, most].filter((figure) => figure !== undefined);
    return graphOf(figures, graph);
  });
  const all = amounts.map((amount) => amountFigure(amount, formula.graph));
  const foundBy = (sought: readonly Figure[], also: readonly Figure[], before: readonly Figure[] = []) => {
    const rests = wants.filter((behind) => sought.some(({ id }) => behind[id] !== undefined));
    const looked: Graph = Object.fromEntries([graphOf(also, graph), ...rests].flatMap((one) => Object.entries(one)));
    const open = Object.values(looked).filter(
      ({ id, working }) => working.kind === "given" && all.every((one) => one.id !== id),
    );
    const done = [...before, ...open];
    for (const one of sought) done.push(found(one, one.value, foundByWants, done.slice(), massBalance));
    return done.slice(before.length + open.length);
  };
  const dough = batch?.target.dough;
  const stocks = Object.values(graph).filter(({ id }) => /^shopping\.flour\.\d+\.on-hand$/u.test(id));
  const isDoughOpen = dough !== undefined && all.some(({ id }) => graphOf([dough], graph)[id] !== undefined);
  const stores = dough === undefined || isDoughOpen ? [] : stocks.map((stock) => storeFigure(stock, dough));
  const isShort = isDoughOpen ? stocks.length > 0 : stores.some(({ value }) => value !== "100");
  const mixed = Object.values(formula.graph).filter(({ id }) => id.startsWith("blend."));
  const beside = dough && isShort ? [...stocks, dough, formula.water.dough] : [];
  const flours = foundBy(all.filter(isFlour), [...mixed, ...beside], stores);
  const wanted = spec.wanted?.addedWater ?? spec.wanted?.doughWater;
  const takesWater = wanted === undefined && amounts.some(({ path: [key] }) => key === "water");
  const lines = takesWater ? formula.lines.filter(({ role }) => role === "flour") : [];
  const taken = lines.flatMap((line) => [line.parts, absorptionFigure(line) ?? []].flat());
  const others = all.filter((one) => !isFlour(one));
  return standingIn(formula, [...flours, ...foundBy(others, taken, flours)], graph);
}

/** What the store has of a flour, % of the dough of the batch: no dough takes more than all, whatever its water. */
function storeFigure(stock: Figure, dough: Figure): Figure {
  const naming = ofDough(stock.id.replace(/^shopping\.(.*)\.on-hand$/u, "$1.store"), `${stock.label}, all at most`);
  return worked(naming, "min(100 * stock / dough, 100)", { stock, dough }, massBalance);
}

function isFlour({ id }: Figure): boolean {
  return id.startsWith("flour.");
}

/** What the spec states an amount as, as a figure, by the place where it is written: its dose, or what it comes to where that is the same. */
function amountFigure({ path: [key, place] }: FoundAmount, graph: Graph): Figure {
  const list = { flours: "flour", alkali: "alkali" }[String(key)];
  const line = list === undefined ? key : `${list}.${Number(place) + 1}`;
  const ids =
    key === "water"
      ? [`water.${place}-written`, `water.${place}-stated`, "water.tap"]
      : [`${line}.stated`, `${line}.parts`];
  const figure = ids.map((id) => graph[id]).find((one) => one?.working.kind === "given");
  if (figure === undefined) throw new RangeError(`no figure stands for the amount at ${key}`);
  return figure;
}
