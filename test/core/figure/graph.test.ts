import { readFileSync } from "node:fs";
import { type Graph, graphOf, recalculated } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { feedsOf, found, given, worked } from "#core/figure/figure.ts";
import { published, scoped, withOrigins } from "#core/figure/graph.ts";
import { changedGraph, fastGraph } from "#core/figure/recalculate.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { answered } from "../told-of.ts";

const naming = (id: string) => ({ id, label: id, unit: "", places: 2 });
const leaf = (id: string, value: string) => given(naming(id), value, "the spec");
const [a, b] = [leaf("a", "3"), leaf("b", "4")];
const product = worked(naming("product"), "a * b", { a, b });
const total = worked(naming("total"), "sum(parts * k) / 2", { parts: [product, a], k: "10" });

describe("the graph of figures", () => {
  it("holds each figure once, what it rests on before it, and names what went in by id", () => {
    const graph = graphOf([total, product]);
    expect(Object.keys(graph)).toEqual(["a", "b", "product", "total"]);
    expect(graph["total"] && feedsOf(graph["total"])).toEqual(["product", "a"]);
    expect(JSON.parse(JSON.stringify(graph))).toEqual(graph);
    expect(structuredClone(graph)).toEqual(graph);
  });

  it("is published with a result, on figures of another, whose graph it has to be told of or is left to the whole", () => {
    const first = published({ product, note: "kept" });
    expect(Object.keys(first.graph)).toEqual(["a", "b", "product"]);
    expect(first.note).toBe("kept");
    const twice = worked(naming("twice"), "2 * it", { it: first.product });
    const second = published({ twice }, first.graph);
    expect(Object.keys(second.graph)).toEqual(["a", "b", "product", "twice"]);
    expect(published({ twice: structuredClone(twice) }, first.graph)).toEqual(second);
    const part = published({ twice });
    expect(Object.keys(part.graph)).toEqual(["product", "twice"]);
    expect(published({ part }, first.graph).graph).toEqual(second.graph);
    expect(() => graphOf([twice])).toThrow(RangeError);
  });

  it("is built from what stands in the figures themselves, and takes that off", () => {
    const graph = graphOf([structuredClone(total)]);
    expect(graph).toEqual(graphOf([total]));
    expect(JSON.stringify([graph, published({ total })])).not.toContain("behind");
  });

  it("renames figures and what they rest on among them", () => {
    const renamed = scoped("before", withOrigins([total]));
    expect(Object.keys(graphOf(renamed))).toEqual(["before.a", "before.b", "before.product", "before.total"]);
  });

  it("is worked out again, exactly, with other inputs", () => {
    const again = changedGraph(graphOf([total]), { a: "5" });
    expect(recalculated(graphOf([total]), { a: "5" })).toEqual({ ok: true, value: again, notes: [] });
    // (5 × 4 × 10 + 5 × 10) ÷ 2, by hand
    expect(again["total"]?.value).toBe("125");
    expect(again["product"]?.value).toBe("20");
    expect(() => changedGraph(graphOf([total]), { c: "1" })).toThrow(RangeError);
  });

  it("takes no other value for what is worked out or unknown, and names all of them", () => {
    const refused = recalculated(graphOf([total]), { product: "1", c: "1", a: "5" });
    expect(refused.ok ? [] : refused.problems).toEqual([
      { code: "figure.worked-out", path: ["product"], facts: { id: "product", inputs: ["a", "b"] } },
      { code: "figure.unknown", path: ["c"], facts: { id: "c" } },
    ]);
    expect(changedGraph(graphOf([total]), { product: "1", a: "5" })["total"]?.value).toBe("30");
  });

  it("is worked out again alike whatever the order of its keys is, as a store that sorts them gives it back", () => {
    const graph = graphOf([total]);
    const turned = Object.fromEntries(Object.entries(graph).toReversed());
    const again = recalculated(turned, { a: "5" });
    expect(again).toEqual(recalculated(graph, { a: "5" }));
    expect(again.ok && Object.keys(again.value)).toEqual(Object.keys(turned));
    expect(fastGraph(turned, ["a"], ["total"]).valuesAt([5])).toEqual([125]);
    expect(() => fastGraph(turned, ["a"], ["total"]).valuesAt([])).toThrow(RangeError);
  });

  it("gives a changed figure the change as its source, and leaves one of the same value as it is", () => {
    const lot = { cite: "certificate of the lot", standing: "user" } as const;
    const graph = graphOf([given(naming("lot"), "3", "the spec", lot)]);
    const [changed, same] = ["5", "3.0"].map((value) => recalculated(graph, { lot: value }));
    expect(changed?.ok && changed.value["lot"]?.sources.map(({ cite }) => cite)).toEqual(["a change"]);
    expect(same?.ok && same.value["lot"]).toEqual(graph["lot"]);
  });

  it("remembers what a procedure found before a change, until that is as it was", () => {
    const whole = found(naming("whole"), "12", "rounding", [product]);
    const twice = worked(naming("twice"), "2 * whole", { whole });
    const staleAfter = (graph: Graph, changes: Readonly<Record<string, string>>) => {
      const outcome = recalculated(graph, changes);
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
      return { graph: outcome.value, notes: outcome.notes };
    };
    const notes = [{ code: "figure.found-before", path: [], facts: { ids: ["whole"], labels: ["whole"] } }];
    const first = staleAfter(graphOf([twice, total, leaf("c", "1")]), { a: "5" });
    const second = staleAfter(JSON.parse(JSON.stringify(first.graph)) as Graph, { c: "2" });
    const third = staleAfter(second.graph, { b: "6" });
    expect([first.notes, second.notes, third.notes]).toEqual([notes, notes, notes]);
    expect(third.graph["whole"]?.working).toMatchObject({ on: ["product"], at: ["12"] });
    expect(staleAfter(third.graph, { a: "3", b: "4" }).notes).toEqual([]);
    expect(staleAfter(second.graph, { whole: "20" }).notes).toEqual([]);
    expect(staleAfter(second.graph, { whole: "12" }).notes).toEqual([]);
  });

  it("is worked out fast, with slopes by hand", () => {
    const fast = fastGraph(graphOf([total]), ["a", "b"], ["total", "product"]);
    expect(fast.valuesAt([5, 4])).toEqual([125, 20]);
    // total = 5 a b + 5 a: ∂a = 5 b + 5, ∂b = 5 a
    expect(fast.slopesAt([5, 4])).toEqual([
      [25, 25],
      [4, 5],
    ]);
  });

  it.each([
    ["max(a, b)", [0, 1]],
    ["min(a, b)", [1, 0]],
    ["sqrt(b)", [0, 0.25]],
    ["exp(a - 3)", [1, 0]],
    ["ln(b)", [0, 0.25]],
    ["a ^ 2", [6, 0]],
    ["ceil(a / b)", [0, 0]],
    ["-a / b", [-0.25, 0.1875]],
  ] as const)("knows the slope of %s at a = 3 and b = 4", (formula, slopes) => {
    const figure = worked(naming("one"), formula, { a, b });
    const [found = []] = fastGraph(graphOf([figure]), ["a", "b"], ["one"]).slopesAt([3, 4]);
    for (const [index, slope] of slopes.entries()) expect(found[index]).toBeCloseTo(slope, 12);
  });
});

describe("the graph of a formula", () => {
  const example = (name: string): unknown =>
    parse(readFileSync(new URL(`../../../examples/${name}.yaml`, import.meta.url), "utf8"));
  const { graph } = answered(formulaOf(example("written-in-grams"))).formula;
  const leaves = Object.values(graph).filter(({ working, value }) => working.kind !== "formula" && value !== "0");
  const ends = Object.values(graph).filter(({ working }) => working.kind === "formula");
  const ids = leaves.map(({ id }) => id);
  const changed = fc.array(fc.integer({ min: -50, max: 50 }), { minLength: ids.length, maxLength: ids.length });

  it("gives its own values again", () => {
    const again = changedGraph(graph, Object.fromEntries(leaves.map(({ id, value }) => [id, value])));
    for (const { id, value } of ends) expect([id, again[id]?.value]).toEqual([id, value]);
  });

  it("gives in doubles what it gives in decimals, to twelve digits", () => {
    const fast = fastGraph(
      graph,
      ids,
      ends.map(({ id }) => id),
    );
    always(30, [changed], (thousandths) => {
      const inputs = leaves.map(({ value }, index) =>
        dec(value)
          .times(1000 + (thousandths[index] ?? 0))
          .div(1000),
      );
      const exactly = changedGraph(graph, Object.fromEntries(ids.map((id, index) => [id, inputs[index] ?? 0])));
      const quickly = fast.valuesAt(inputs.map((input) => input.toNumber()));
      for (const [index, { id }] of ends.entries()) {
        const wanted = Number(exactly[id]?.value);
        expect(Math.abs((quickly[index] ?? 0) - wanted), id).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(wanted)));
      }
    });
  });
});
