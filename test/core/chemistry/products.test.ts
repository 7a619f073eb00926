import {
  additiveLimits,
  additivesIn,
  assayed,
  bakedSalt,
  foodLimits,
  hazardOf,
  mixture,
  pure,
  solubilityOf,
  solutionPh,
  species,
  splitByEndPoints,
  staysClear,
} from "@noodlewright/core/chemistry";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { alkalinityM, alkalinityP } from "#core/chemistry/composition.ts";
import { cautionsFor } from "#core/chemistry/hazard.ts";
import { alkalinityAs, statedAlkalinity } from "#core/chemistry/titration.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { answered } from "../told-of.ts";
import { amount, apart, carbonates, distance } from "./given.ts";

describe("baking soda in the oven", () => {
  test("the composition weighs what was weighed, and the conversion comes back", () => {
    always(100, [amount(0, 100), amount(10, 2000), amount(0, 5)], (percent, before, moisture) => {
      const loss = dec(before)
        .times(percent)
        .div(100)
        .times(dec(1).minus(dec("105.988").div("168.012")));
      const after = dec(before).minus(loss).plus(moisture).toString();
      const { conversion, composition } = answered(bakedSalt({ salt: "NaHCO3", before, after, moisture }));
      expect(Math.abs(Number(conversion.value) - Number(percent))).toBeLessThan(1e-9);
      expect(dec(composition.water).minus(dec(moisture).times(100).div(after)).abs().lt("1e-12")).toBe(true);
    });
  });

  test("alkalinity is conserved: two bicarbonates make one carbonate of the same M", () => {
    const { composition } = answered(bakedSalt({ salt: "KHCO3", before: 500, after: 400 }));
    const before = alkalinityM(pure("KHCO3")).times(500);
    expect(apart(before.toString(), alkalinityM(composition).times(400).toString())).toBeLessThan(1e-18);
  });
});

describe("certificates", () => {
  test("an alkalinity gives the composition back, in every way of stating it", () => {
    always(
      100,
      [carbonates, fc.integer({ min: 1, max: 99 }), fc.constantFrom("Na2CO3", "K2CO3", "Na2O", "K2O")],
      (salts, percent, as) => {
        const product = mixture([
          { composition: salts, mass: percent },
          { composition: { species: {}, water: "0", inert: "100" }, mass: 100 - percent },
        ]);
        const stated = alkalinityAs(alkalinityM(product), as).value;
        expect(distance(answered(assayed({ as, percent: stated }, salts)).composition, product)).toBeLessThan(1e-18);
        const acid = { millilitres: alkalinityM(product).times(2).toString(), normality: "1", sample: "2" };
        expect(distance(answered(assayed({ acid }, salts)).composition, product)).toBeLessThan(1e-18);
      },
    );
  });

  // 10 meq/g are 10 times the mass of an equivalent in mg: 105.988 / 2, 138.204 / 2, 61.979 / 2, 94.195 / 2, 39.997, 56.105 g/mol
  test.each([
    ["Na2CO3", "52.994"],
    ["K2CO3", "69.102"],
    ["Na2O", "30.9895"],
    ["K2O", "47.0975"],
    ["NaOH", "39.997"],
    ["KOH", "56.105"],
  ] as const)("10 meq/g are as %s %s %%", (as, percent) => {
    expect(alkalinityAs("10", as).value).toBe(percent);
    expect(Number(statedAlkalinity({ as, percent }).value)).toBeCloseTo(10, 12);
  });
});

describe("two end points", () => {
  const species = fc.tuple(
    fc.integer({ min: 0, max: 40 }),
    fc.integer({ min: 1, max: 50 }),
    fc.boolean(),
    fc.integer({ min: 0, max: 100 }),
  );

  test("give hydroxide, carbonate and bicarbonate back", () => {
    always(100, [species], ([other, carbonate, caustic]) => {
      const salts = {
        Na2CO3: String(carbonate),
        ...(other === 0 ? {} : caustic ? { NaOH: String(other) } : { NaHCO3: String(other) }),
      };
      const product = { species: salts, water: "0", inert: String(100 - other - carbonate) };
      const split = splitByEndPoints({
        phenolphthalein: alkalinityP(product).toString(),
        total: alkalinityM(product).toString(),
        normality: "1",
        sample: "1",
        potassium: 0,
      });
      expect(distance(answered(split).composition, product)).toBeLessThan(1e-18);
    });
  });

  test("a potassium product is told by its share of potassium", () => {
    const split = answered(
      splitByEndPoints({ phenolphthalein: "5", total: "10", normality: "1", sample: "1", potassium: 100 }),
    );
    expect(split.composition.species.K2CO3).toBe("69.102");
  });
});

describe("pH", () => {
  const solution = (species: Readonly<Record<string, string>>, water: string) => ({ species, water, inert: "0" });

  test("rises with the strength of soda and falls with the share of bicarbonate", () => {
    const value = (species: Readonly<Record<string, string>>, water: string) =>
      Number(answered(solutionPh(solution(species, water), 25)).value);
    expect(value({ Na2CO3: "2" }, "98")).toBeGreaterThan(value({ Na2CO3: "1" }, "99"));
    expect(value({ Na2CO3: "1", NaHCO3: "1" }, "98")).toBeLessThan(value({ Na2CO3: "1" }, "99"));
    expect(value({ NaOH: "0.5", NaHCO3: "1.05" }, "98.45")).toBeCloseTo(value({ Na2CO3: "1.325" }, "98.45"), 2);
  });

  test("says that it is the solution's, with its doubt", () => {
    const outcome = solutionPh(solution({ Na2CO3: "1" }, "99"), 25);
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(["ph.of-the-solution"]);
    expect(answered(outcome).range?.low).toBe("11.31");
    expect(answered(outcome).label).toContain("MacInnes");
  });
});

describe("solubility", () => {
  test("rises with temperature up to 35 °C for every salt", () => {
    for (const salt of ["Na2CO3", "K2CO3", "NaHCO3", "KHCO3", "KCl"] as const) {
      const limits = ["0", "5", "12", "20", "28", "35"].map((t) => Number(answered(solubilityOf(salt, t)).value));
      expect(limits).toEqual(limits.toSorted((a, b) => a - b));
    }
  });

  test("mixtures say what the estimate rests on", () => {
    const outcome = staysClear({ species: { K2CO3: "10", NaHCO3: "5" }, water: "85", inert: "0" }, 20);
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(["solubility.by-ions", "solubility.exchange"]);
    expect(answered(staysClear({ species: { Na2CO3: "12", K2CO3: "12" }, water: "76", inert: "0" }, 20)).verdict).toBe(
      "doubtful",
    );
  });

  test("what keeps salts apart is not known without parameters or beyond them", () => {
    const told = (species: Readonly<Record<string, string>>, water: string) => {
      const outcome = staysClear({ species, water, inert: "0" }, 20);
      return outcome.ok ? [outcome.value.verdict, outcome.notes[0]?.code] : [];
    };
    expect(told({ Na2CO3: "5", Na3PO4: "1" }, "94")).toEqual(["not known", "solubility.not-known"]);
    expect(told({ K2CO3: "38", NaHCO3: "1" }, "61")).toEqual(["not known", "solubility.not-known"]);
    // One salt past its own limit is past it in any company that shares an ion with it.
    expect(told({ Na2CO3: "20", Na3PO4: "1" }, "79")).toEqual(["crystals", "solubility.not-known"]);
    expect(told({ K2CO3: "20", Na2CO3: "5", NaCl: "0.2" }, "74.8")).toEqual(["clear", "solubility.mixed"]);
  });
});

describe("hazards and limits", () => {
  test("cautions follow what is in it", () => {
    const codes = (species: Readonly<Record<string, string>>, water: string) =>
      cautionsFor({ species, water, inert: "0" }).map(({ code }) => code);
    expect(codes({ NaOH: "1" }, "99")).toContain("caution.burns");
    expect(codes({ Na2CO3: "100" }, "0")).toEqual(
      expect.arrayContaining(["caution.eyes", "caution.heat", "caution.powder", "caution.aluminium", "caution.sheet"]),
    );
    expect(codes({ Na2CO3: "5" }, "95")).not.toContain("caution.powder");
    expect(codes({ NaHCO3: "100" }, "0")).not.toContain("caution.eyes");
  });

  test("a mixture adds up its irritants", () => {
    const hazard = hazardOf({ species: { Na2CO3: "6", K2CO3: "6" }, water: "88", inert: "0" });
    expect(hazard.statements.map(({ code }) => code)).toEqual(["H319"]);
    expect(hazard.statements[0]?.because).toContain("12.0 % of sodium carbonate and potassium carbonate");
    expect(hazardOf(pure("NaHCO3")).signal).toBe("none");
  });

  test("additives and limits are those of the species", () => {
    expect(additivesIn({ species: { K2CO3: "60", Na2CO3: "40" }, water: "0", inert: "0" }).map(({ eu }) => eu)).toEqual(
      ["E 500(i)", "E 501(i)"],
    );
    expect(foodLimits(pure("K2CO3")).limits.map(({ most }) => most)).toEqual(["11000"]);
    expect(species.NaOH.kansui).toBe("not named");
  });

  test("what is not known of a salt is said, and not taken for none", () => {
    expect(foodLimits(pure("NaCl"))).toEqual({ limits: [], notKnown: ["NaCl"] });
    expect(
      additiveLimits(
        mixture([
          { composition: pure("Na2HPO4"), mass: 1 },
          { composition: pure("KHCO3"), mass: 1 },
        ]),
      ).notKnown,
    ).toEqual(["Na2HPO4"]);
    expect(hazardOf(pure("Na2HPO4")).signal).toBe("not known");
  });
});
