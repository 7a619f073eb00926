import type { Outcome } from "@noodlewright/core";
import { convert, correct, dilute, makeUp, type Recipe, severalStock } from "@noodlewright/core/chemistry";
import { type Graph, recalculated } from "@noodlewright/core/figure";
import { expect, it } from "vitest";
import { graphOf } from "#core/figure/graph.ts";
import { figuresIn } from "../report/figures-in.ts";
import { answered } from "../told-of.ts";

const soda = { name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" } };
const potash = { name: "potash", composition: { species: { K2CO3: "98" }, water: "1", inert: "1" } };
const weak = { name: "weak", composition: { species: { Na2CO3: "9" }, water: "91", inert: "0" } };
const conditions = { temperature: 20, storage: 4, scale: "145" } as const;
const percent = (value: string) => ({ measure: "mass-percent", value }) as const;
const graphFor = (answer: object): Graph =>
  graphOf(figuresIn(answer), "graph" in answer ? (answer.graph as Graph) : {});

const make = (part: number, strength: string, litre: boolean) =>
  makeUp({
    products: [
      { ...soda, parts: part },
      { ...potash, parts: 1 },
    ],
    ratioBy: "as-weighed",
    target: percent(strength),
    amount: litre ? { millilitres: 1000 } : { grams: 1000 },
    ...conditions,
  });
const thin = (mass: number) => dilute({ stock: { ...weak, mass }, target: percent("6"), ...conditions });
const strengthen = (mass: number) =>
  correct({ batch: { ...weak, mass }, salts: soda, target: percent("12"), ...conditions });
const stock = (mass: number): Outcome<{ readonly recipe: Recipe }> =>
  severalStock({ products: [{ ...soda, mass }], scales: [{ division: 1 }], tolerance: 1, loads: 20, ...conditions });
const swapped = (mass: number, share: string) =>
  convert({
    from: { ...soda, mass },
    to: [
      potash,
      { name: "crystals", composition: { species: { Na2CO3: share }, water: String(100 - Number(share)), inert: "0" } },
    ],
    hold: "M",
  });

it.each([
  ["a part of the ratio", make(6, "15", false), "solutions.part.0", "7", make(7, "15", false)],
  ["a part of the ratio, by volume", make(6, "15", true), "solutions.part.0", "7", make(7, "15", true)],
  ["the strength", make(6, "15", false), "solutions.strength", "14", make(6, "14", false)],
  ["the stock to thin", thin(500), "solutions.amount.0", "600", thin(600)],
  ["the batch to strengthen", strengthen(4200), "solutions.amount.0", "4000", strengthen(4000)],
  ["the dose that another takes the place of", swapped(8, "37"), "convert.dose", "11", swapped(11, "37")],
  ["what a product is made of", swapped(8, "37"), "convert.salt.2.Na2CO3", "36", swapped(8, "36")],
  ["the salt of a load", stock(8), "stock.part.1", "11", stock(11)],
] as const)("a solution follows %s, or says what of it does not", (_, before, id, change, after) => {
  const graph = graphFor(answered<object>(before));
  const anew = graphFor(answered<object>(after));
  const again = recalculated(graph, { [id]: change });
  if (!again.ok) throw new Error(JSON.stringify(again.problems));
  const told = new Set(again.notes.flatMap(({ facts }) => ("ids" in facts ? facts.ids : [])));
  for (const figure of Object.values(again.value)) {
    const { working } = figure;
    if (working.kind !== "formula") continue;
    const feeds = Object.values(working.from).flatMap((fed) =>
      "figure" in fed ? [fed.figure] : "figures" in fed ? fed.figures : [],
    );
    if (feeds.some((feed) => told.has(feed))) told.add(figure.id);
  }
  const differ = (one: string): boolean =>
    Math.abs(Number(again.value[one]?.value) - Number(anew[one]?.value)) > 1e-9 * Number(anew[one]?.value);
  const silent = Object.keys(again.value).filter((one) => !told.has(one) && anew[one] !== undefined && differ(one));
  expect(again.value[id]?.value).toBe(anew[id]?.value);
  expect(silent).toEqual([]);
});
