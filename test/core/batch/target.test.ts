import { askBatch, readNoodleData } from "@noodlewright/core";
import { describe, expect, it } from "vitest";
import { dec } from "#core/number/decimal.ts";
import { noteCodesOf, type Written } from "../formula/worked-out.ts";
import { answered, codesOf, toldOf } from "../told-of.ts";
import { plain, plan, planned } from "./planned.ts";

/** 100 of flour, 36 of water and 1 of salt: 137 of dough. */
describe("each way of stating the size of a batch", () => {
  const mixer = { smallest: "1370 g", largest: "2.74 kg" };
  const sizes: readonly (readonly [what: string, written: Partial<Written>, dough: string])[] = [
    ["bowls of raw strands", { batch: { bowls: 20, rawWeight: "137 g" } }, "2740"],
    ["bowls of cooked noodles", { batch: { bowls: 20, cookedWeight: "274 g", cookGain: 2 } }, "2740"],
    ["dough", { batch: { dough: "12 kg" } }, "12000"],
    ["flour", { batch: { flour: "10 kg" } }, "13700"],
    ["the largest load", { batch: { load: "largest" }, mixer }, "2740"],
    ["the smallest load", { batch: { load: "smallest" }, mixer }, "1370"],
    ["the largest load in flour", { batch: { load: "largest" }, mixer: { largest: "2 kg", of: "flour" } }, "2740"],
    ["all there is of the salt", { batch: { have: { name: "table salt", amount: "50 g" } } }, "6850"],
    ["all there is of the flour", { batch: { have: { name: "Bread Flour", amount: "3.2 kg" } } }, "4384"],
    // 453.59 g of water would be weighed as 454 g: half a gram of it is left, and 453 g are weighed
    ["all there is of the water", { batch: { have: { name: "tap water", amount: "1 lb" } } }, "1724.2681858333"],
    [
      "what can be weighed of the largest load",
      { batch: { load: "largest" }, mixer: { largest: "1002.7 g" } },
      "1002.2",
    ],
    ["as written in masses", { flours: [{ name: "bread flour", amount: "500 g" }] }, "685"],
    ["as written, brought to flour of another moisture", writtenOn("11.36 %"), "683.6"],
  ];

  it.each(sizes)("%s", (_, written, dough) => {
    const { target } = planned(written);
    expect(dec(target.dough.value).toDecimalPlaces(10).toString()).toBe(dough);
    expect(target.strands.value).toBe(target.dough.value);
  });

  /** Flour at hand of 11.36 % for 500 g of 13.36 %: the written 500 g of flour keep their dry matter. */
  function writtenOn(moisture: string): Partial<Written> {
    return {
      flours: [{ name: "bread flour", amount: "500 g", figures: { moisture } }],
      water: { tap: "178.6 g", onFlourMoisture: "13.36 %" },
      salt: "5 g",
    };
  }
});

describe("losses", () => {
  const losses = { mixing: "0.5 %", sheeting: "3 %", cutting: "1 %" };

  it("are worked backwards from the bowls and come out at the bowls", () => {
    const { target } = planned({ batch: { bowls: 320, rawWeight: "130 g" }, losses });
    // 320 × 130 ÷ (0.995 × 0.97 × 0.99) by hand
    expect(dec(target.dough.value).toFixed(4)).toBe("43537.4833");
    expect(dec(target.strands.value).toFixed(15)).toBe("41600.000000000000000");
    expect(target.stages.map(({ name }) => name)).toEqual(["mixing", "sheeting", "cutting"]);
    expect(target.bowls?.value).toBe("320");
  });

  it("are worked forwards from the dough, whole bowls counted", () => {
    const { target } = planned({ batch: { dough: "1000 g", rawWeight: "100 g" }, losses });
    // 1000, less 5, less 29.85, less 9.6515
    expect(target.stages.map(({ lost }) => lost.value)).toEqual(["5", "29.85", "9.6515"]);
    expect(target.strands.value).toBe("955.4985");
    expect(target.bowls?.value).toBe("9");
  });

  it("are none unless stated", () => {
    const { target } = planned({ batch: { dough: "1000 g", rawWeight: "100 g" } });
    expect(target.stages.map(({ lost }) => lost.value)).toEqual(["0", "0", "0"]);
    expect(target.bowls?.value).toBe("10");
  });
});

describe("cook gain", () => {
  it("is a usual value, with a note, where the kitchen has none", () => {
    const outcome = plan({ batch: { bowls: 10, cookedWeight: "216 g" } });
    expect(noteCodesOf(outcome)).toContain("batch.usual-cook-gain");
    expect(outcome.ok && outcome.value.target.rawWeight?.value).toBe("120");
    expect(noteCodesOf(plan({ batch: { bowls: 10, cookedWeight: "216 g", cookGain: 1.8 } }))).toEqual([
      "scales.assumed",
    ]);
  });
});

describe("sizes that cannot be", () => {
  it.each([
    ["batch.not-stated", {}],
    ["batch.not-stated", { batch: {} }],
    ["batch.not-stated", { batch: { rawWeight: "130 g" } }],
    ["batch.stated-twice", { batch: { bowls: 3, rawWeight: "130 g", have: { name: "table salt", amount: "1 g" } } }],
    ["mixer.needed", { batch: { load: "smallest" }, mixer: { largest: "3 kg" } }],
  ] satisfies readonly (readonly [string, object])[])("%s: %j", (code, written) => {
    const outcome = askBatch(answered(readNoodleData({ name: "test", ...plain, ...written })));
    expect(codesOf(outcome)).toEqual([code]);
    expect(toldOf(outcome).every(({ kind, path }) => kind === "input" && path.length > 0)).toBe(true);
  });

  it("says what is wrong with the size and with the scales in one go", () => {
    const scales = [{ division: "1 g" }, { division: "1 oz" }];
    expect(codesOf(plan({ scales }))).toEqual(["batch.not-stated", "scales.mixed-systems"]);
  });

  it("names all that a batch can be made of, dusting too", () => {
    const dusting = { name: "cornstarch", amount: "2 %" };
    const have = (name: string) => plan({ dusting, batch: { have: { name, amount: "1 kg" } } });
    const outcome = have("dragon fruit");
    expect(toldOf(outcome)[0]?.expected).toMatch(/^an ingredient of the formula: .*, cornstarch$/u);
    expect(have("cornstarch").ok).toBe(true);
  });

  it("offers the nearest ingredient", () => {
    const outcome = plan({ batch: { have: { name: "bread flower", amount: "1 kg" } } });
    expect(toldOf(outcome)[0]?.advice).toContain('"bread flour"');
  });
});
