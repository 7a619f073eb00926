import { told } from "@noodlewright/core";
import type { DoughWater } from "@noodlewright/core/answers";
import type { Published } from "@noodlewright/core/figure";
import { plainMixWater } from "@noodlewright/core/sheet";
import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { loadWater } from "#core/sheet/water/dough-water.ts";
import { listed, noteCodesOf } from "../../formula/worked-out.ts";
import { answered, codesOf, toldOf } from "../../told-of.ts";

const temperature = { dough: "25 °C", flour: "21 °C", room: "22 °C", mixingHeat: "12 kJ/kg" };
const eggNoodle = {
  name: "Egg noodle",
  flours: listed({ "bread flour": "85 %", "whole wheat flour": "rest" }),
  water: { added: "25 %" },
  salt: "1 %",
  ingredients: [{ name: "whole egg", amount: "12 %" }],
  batch: { flour: "10 kg" },
  scales: [{ name: "bench scale", division: "5 g", capacity: "15 kg" }],
};

function outcomeOf(changed: object, spec: object = eggNoodle) {
  const { spec: read, formula } = answered(formulaOf({ ...spec, temperature: { ...temperature, ...changed } }));
  return loadWater(read, answered(planBatch(read, formula)));
}

const waterOf = (changed: object): Published<DoughWater> => answered(outcomeOf(changed));

function figure({ graph }: Published<DoughWater>, id: string): number {
  const one = graph[id];
  if (one === undefined) throw new Error(`no figure ${id}`);
  return Number(one.value);
}

it("says of which dry salts no heat of solution is counted, because none is known", () => {
  const notesWith = (alkali: string): readonly string[] => {
    const outcome = outcomeOf({}, { ...eggNoodle, alkali: [{ name: alkali, amount: "0.4 %" }] });
    return outcome.ok ? outcome.notes.filter(({ code }) => code.endsWith("heat-of-solution")).map(told) : [];
  };
  expect(notesWith("potassium hydroxide")).toEqual([
    "potassium hydroxide holds KOH, whose heat of solution is not known here, so none is counted for it.",
  ]);
  expect(notesWith("potassium carbonate")).toEqual([]);
});

describe("a temperature for each ingredient", () => {
  it("counts with its mass and specific heat: the first law closes by hand", () => {
    const asRoom = waterOf({});
    const cold = waterOf({ ingredients: { "Whole egg": "4 °C" } });
    const water = figure(cold, "water.mass");
    const egg = 10_000 * 0.12;
    const heat = Object.values(cold.graph).find(
      ({ id }) => id.endsWith(".specific-heat") && id.startsWith("ingredient"),
    );
    // Egg is three quarters water: between water and dry food.
    expect(Number(heat?.value)).toBeGreaterThan(3);
    expect(Number(heat?.value)).toBeLessThan(4);
    // 18 K colder than the room: so much more heat has to come from the water. Its specific heat changes by 0.1 % between the two.
    const warmer = (egg * Number(heat?.value) * 18) / (water * 4.18);
    expect(figure(cold, "water.temperature") - figure(asRoom, "water.temperature")).toBeCloseTo(warmer, 2);
  });

  it("may be that of one of several flours", () => {
    const warm = waterOf({ ingredients: { "whole wheat flour": "31 °C" } });
    const water = figure(warm, "water.mass");
    // 1.5 kg of 1.84 kJ/(kg K), 10 K warmer.
    const cooler = (1500 * 1.84 * 10) / (water * 4.18);
    expect(figure(waterOf({}), "water.temperature") - figure(warm, "water.temperature")).toBeCloseTo(cooler, 9);
  });

  it("counts rework as a body of its own, as warm as the room unless stated, its water bound already", () => {
    const spec = { ...eggNoodle, rework: { amount: "10 %" } };
    const of = (changed: object): Published<DoughWater> => answered(outcomeOf(changed, spec));
    const asRoom = of({});
    const water = figure(asRoom, "water.mass");
    const mass = figure(asRoom, "rework.load");
    // A tenth of the dough in the mixer, to half a division of 5 g.
    expect(Math.abs(mass - figure(asRoom, "mix.dough") / 10)).toBeLessThanOrEqual(2.5);
    const cold = of({ ingredients: { Rework: "4 °C" } });
    const heat = figure(cold, "rework.specific-heat");
    // A dough of 41 % water lies between flour and water.
    expect(heat).toBeGreaterThan(2.2);
    expect(heat).toBeLessThan(2.9);
    // 18 K colder than the room; the specific heat changes by 0.2 % between the two.
    const warmer = (mass * heat * 18) / (water * 4.18);
    expect(figure(cold, "water.temperature") - figure(asRoom, "water.temperature")).toBeCloseTo(warmer, 1);
    const estimated = of({ mixingHeat: undefined });
    const fresh = figure(estimated, "mix.dough") - mass;
    // 15 kJ on each kg of new dough; table salt takes up heat, 3.88 kJ/mol of 58.44 g (CRC Handbook, 25 °C).
    const salt = (figure(estimated, "NaCl.mass") * 3.88) / 58.44;
    expect(figure(estimated, "mix.heat-made")).toBeCloseTo((15 * fresh) / 1000 - salt, 1);
    expect(codesOf(outcomeOf({ ingredients: { rework: "4 °C" } }))).toEqual(["temperature.unknown-ingredient"]);
  });

  it("names what the formula does not have", () => {
    const outcome = outcomeOf({ ingredients: { "whole eg": "4 °C" } });
    expect(codesOf(outcome)).toEqual(["temperature.unknown-ingredient"]);
    expect(toldOf(outcome)[0]?.advice).toContain('"whole egg"');
  });
});

describe("ice", () => {
  it("and tap water are whole divisions of the scale, and add up to the water that it shows", () => {
    const { weighed, plan } = waterOf({ tap: "30 °C", flour: "28 °C" });
    const [ice, tap, all] = [weighed.ice?.ice, weighed.ice?.tapWater, weighed.listed].map((each) =>
      Number(each?.value),
    );
    expect([(ice ?? 0) % 5, (tap ?? 0) % 5]).toEqual([0, 0]);
    expect((ice ?? 0) + (tap ?? 0)).toBe(all);
    expect(Math.abs((ice ?? 0) - Number(plan.ice?.ice.value))).toBeLessThanOrEqual(2.5);
  });

  it("of a mix without a spec is weighed in whole grams", () => {
    const mix = { flour: "10 kg", water: "3.5 kg" };
    const { weighed } = answered(
      plainMixWater({ ...mix, temperature: { dough: "24 °C", flour: "27 °C", tap: "26 °C", mixingHeat: "11 kJ/kg" } }),
    );
    expect(weighed.ice?.ice.value).toMatch(/^\d+$/u);
    expect(Number(weighed.ice?.ice.value) + Number(weighed.ice?.tapWater.value)).toBe(3500);
  });

  it("has to melt, which is said; and more of it than melts in time, too", () => {
    const notes = (changed: object) => noteCodesOf(outcomeOf({ tap: "24 °C", ...changed }));
    expect(notes({ flour: "27 °C" })).toContain("temperature.ice-melts");
    expect(notes({ flour: "32 °C", mixingHeat: "35 kJ/kg" })).toContain("temperature.much-ice");
    expect(notes({ tap: "5 °C" })).not.toContain("temperature.ice-melts");
  });
});

describe("the rule of three beside the heat balance", () => {
  const beside = (changed: object) => outcomeOf({ tap: "20 °C", friction: "4 K", ...changed });

  it("is told how far they are apart, and what to check where it is far", () => {
    const near = beside({});
    const { byRule, plan, apart } = answered(near);
    expect(Number(apart?.value)).toBeCloseTo(Number(byRule?.value) - Number(plan.temperature.value), 9);
    expect(near.ok && near.notes.map(({ code }) => code)).not.toContain("temperature.far-apart");
    const mixer = { mixingHeat: undefined, mixerPower: "2 kW", mixingTime: "3 min" };
    const far = beside({ ...mixer, ice: "-18 °C", flour: "27 °C" });
    const text = far.ok ? far.notes.map(told).join() : codesOf(far).join();
    for (const input of ["room 22 °C", "ice -18 °C", "mixer power 2 kW for 3 min", "friction 4 K"]) {
      expect(text).toContain(input);
    }
  });

  it.each([
    { friction: "8 K", rule: "at 24.0 °C, 14.0 K warmer;" },
    { friction: "20 K", rule: "at 12.0 °C, 2.0 K warmer;" },
    { friction: "23 K", rule: "at 9.0 °C, 1.0 K colder;" },
  ])("says that $friction of friction alone leaves the heat balance as it is", ({ rule, friction }) => {
    const plain = answered(beside({ mixingHeat: undefined, friction: undefined }));
    const outcome = beside({ mixingHeat: undefined, friction });
    expect(answered(outcome).plan.temperature.value).toBe(plain.plan.temperature.value);
    const said = outcome.ok ? outcome.notes.filter(({ code }) => code === "temperature.friction-alone").map(told) : [];
    expect(said).toEqual([expect.stringContaining(rule)]);
    expect(said[0]).toContain("heat of mixing");
    expect(noteCodesOf(outcome)).not.toContain("temperature.no-mixer-work");
    expect(noteCodesOf(beside({ friction }))).not.toContain("temperature.friction-alone");
  });
});
