import { readdirSync, readFileSync } from "node:fs";
import * as core from "@noodlewright/core";
import { type Graph, recalculated } from "@noodlewright/core/figure";
import { readKitchenFile } from "@noodlewright/core/spec";
import { expect, it } from "vitest";
import { parse } from "yaml";
import { feedsOf } from "#core/figure/figure.ts";

const folder = new URL("../../../examples/", import.meta.url);
const read = (file: string): unknown => parse(readFileSync(new URL(file, folder), "utf8"));
const kitchen = readKitchenFile(read("harbour-store.yaml"));
const kitchens = kitchen.ok ? [kitchen.value] : [];

const asks = { batch: core.askBatch, sheet: core.askSheet, water: core.askWater, cost: core.askCost };

/** What may be written otherwise: the key, the text that takes its place, and the figure that it becomes. */
const changes: readonly (readonly [key: string, text: string | number, id: string, value: string])[] = [
  ["batch.rawWeight", "117 g", "bowl.raw", "117"],
  ["batch.bowls", 311, "batch.bowls", "311"],
  ["batch.cookGain", 1.75, "bowl.cook-gain", "1.75"],
  ["losses.mixing", "0.7 %", "loss.mixing", "0.7"],
  ["losses.sheeting", "3.5 %", "loss.sheeting", "3.5"],
  ["losses.cutting", "1.2 %", "loss.cutting", "1.2"],
  ["mixer.largest", "9.7 kg", "mixer.largest", "9700"],
  ["sheet.thickness", "1.45 mm", "passes.final", "1.45"],
  ["sheet.springBack", 1.1, "passes.spring-back", "1.1"],
  ["sheet.edgeTrim", "3 mm", "sheet.edge-trim", "3"],
  ["sheet.endTrim", "25 mm", "sheet.end-trim", "25"],
  ["sheet.air", "4 %", "dough.air", "4"],
  ["temperature.dough", "26 °C", "dough.temperature", "26"],
  ["temperature.flour", "19 °C", "flour.temperature", "19"],
  ["temperature.room", "23 °C", "room.temperature", "23"],
  ["temperature.tap", "13 °C", "tap.temperature", "13"],
  ["temperature.friction", "7 K", "rule.friction", "7"],
  ["water.added", "34.5 %", "water.added-stated", "34.5"],
  ["alkali.0.amount", "0.65 %", "alkali.1.parts", "0.65"],
  ["salt", "1.2 %", "salt.parts", "1.2"],
  ["dusting.amount", "1.7 %", "dusting.parts", "1.7"],
  ["prices.table salt", "0.75 EUR/kg", "cost.salt.price", "0.75"],
];

/** The data with another text at a key; none where the key is not there. */
function changed(data: unknown, key: string, text: string | number): unknown {
  const copy: unknown = structuredClone(data);
  const steps = key.split(".");
  const last = steps.pop() ?? "";
  let part = copy;
  for (const step of steps) part = typeof part === "object" && part !== null ? Reflect.get(part, step) : undefined;
  if (typeof part !== "object" || part === null || Reflect.get(part, last) === undefined) return undefined;
  if (Reflect.get(part, last) === "find") return undefined;
  Reflect.set(part, last, text);
  return copy;
}

/** The figures of a graph that rest on nothing that a procedure found. */
function withoutProcedures(graph: Graph): readonly string[] {
  const found = new Set<string>();
  for (const figure of Object.values(graph)) {
    if (figure.working.kind === "procedure" || feedsOf(figure).some((id) => found.has(id))) found.add(figure.id);
  }
  return Object.keys(graph).filter((id) => !found.has(id));
}

const cases = readdirSync(folder)
  .filter((file) => file.endsWith(".yaml") && file !== "harbour-store.yaml")
  .flatMap((file) => {
    const data = read(file);
    const noodle = core.readNoodleData(data, { kitchens });
    if (!noodle.ok) return [];
    return Object.entries(asks).flatMap(([question, ask]) => {
      const before = ask(noodle.value);
      if (!before.ok) return [];
      return changes.flatMap(([key, text, id, value]) => {
        const other = changed(data, key, text);
        const graph: Graph = before.value.graph;
        const after = core.readNoodleData(other, { kitchens });
        const anew = after.ok ? ask(after.value) : after;
        const figure = Object.hasOwn(graph, id) ? graph[id] : undefined;
        if (other === undefined || !anew.ok || figure === undefined || figure.working.kind === "formula") return [];
        return [{ file, question, graph, anew: anew.value.graph, id, value }];
      });
    });
  });

it("changes inputs of each kind in each answer", () => {
  const named = new Set(cases.map(({ question, id }) => `${question} ${id.split(".")[0]}`));
  for (const kind of [
    "batch bowl",
    "batch mixer",
    "sheet loss",
    "sheet passes",
    "water flour",
    "water room",
    "cost cost",
  ]) {
    expect([...named]).toContain(kind);
  }
});

it.each(cases)("$question of $file with another $id is what the noodle changed so is answered with", (one) => {
  const { graph, id, value } = one;
  const anew: Graph = one.anew;
  const again = recalculated(graph, { [id]: value });
  if (!again.ok) throw new Error(JSON.stringify(again.problems));
  const kept = withoutProcedures(again.value).filter((figure) => Object.hasOwn(anew, figure));
  const told = (from: Graph) => kept.map((figure) => `${figure} ${from[figure]?.value}`);
  expect(anew[id]?.value).toBe(value);
  expect(told(again.value)).toEqual(told(anew));
});
