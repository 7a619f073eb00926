import { type Composition, compositionOf, hydrate, hydrates, mixture, pure } from "@noodlewright/core/chemistry";
import { describe, expect, test } from "vitest";
import {
  anhydrousShare,
  fromMasses,
  isSesquicarbonate,
  ofFormula,
  potassiumCarbonateShare,
  solutionOf,
  speciesOf,
} from "#core/chemistry/composition.ts";
import { molarMass } from "#core/chemistry/elements.ts";
import { hydrateNames, speciesNames } from "#core/chemistry/species.ts";
import { dec, sum } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { answered } from "../told-of.ts";
import { amount, distance, drySalts, wetProduct } from "./given.ts";

function total(composition: Composition): string {
  return sum([
    ...Object.values(composition.species).map(dec),
    dec(composition.water),
    dec(composition.inert),
  ]).toString();
}

describe("formulas", () => {
  test("a hydrate weighs its parts", () => {
    for (const { formula, species: parts, water } of Object.values(hydrates)) {
      const salts = sum(Object.entries(parts).map(([name, count]) => molarMass(name).times(count)));
      expect(molarMass(formula).toString()).toBe(salts.plus(molarMass("H2O").times(water)).toString());
    }
  });

  test("without phosphate or chloride every cation is worth one equivalent of acid", () => {
    for (const { atoms, equivalentsM, sodium, potassium } of speciesNames.map(speciesOf)) {
      if (atoms.P === undefined && atoms.Cl === undefined) expect(equivalentsM).toBe(sodium + potassium);
    }
  });

  test("P is less than M by the bicarbonate, or the hydrogen phosphate, that is left", () => {
    for (const { atoms, equivalentsM, equivalentsP } of speciesNames.map(speciesOf)) {
      expect(equivalentsM - equivalentsP).toBe((atoms.C ?? 0) + (atoms.P === undefined ? 0 : 1));
    }
  });

  test("what is no formula is a bug", () => {
    expect(() => molarMass("Xy2")).toThrow(RangeError);
    expect(() => molarMass("Na2 CO3")).toThrow(RangeError);
    expect(() => fromMasses({ species: {} })).toThrow(RangeError);
    expect(() => pure("Na2CO3", "0x10")).toThrow(RangeError);
    expect(() => pure("Na2CO3", "99", "a little")).toThrow(RangeError);
  });
});

test("every part adds up to exactly 100", () => {
  always(100, [wetProduct, drySalts, amount(0.01, 999), amount(0.01, 999)], (one, other, first, second) => {
    const mixed = mixture([
      { composition: one, mass: first },
      { composition: other, mass: second },
    ]);
    expect(total(mixed)).toBe("100");
  });
  for (const formula of [...speciesNames, ...hydrateNames]) expect(total(ofFormula(formula))).toBe("100");
  expect(total(fromMasses({ species: { Na2CO3: 1, K2CO3: 1 }, water: 1 }))).toBe("100");
});

test("a mixture holds the masses of its parts", () => {
  always(100, [wetProduct, wetProduct, amount(0.01, 999), amount(0.01, 999)], (one, other, first, second) => {
    const mixed = mixture([
      { composition: one, mass: first },
      { composition: other, mass: second },
    ]);
    const mass = dec(first).plus(second);
    const before = anhydrousShare(one).times(first).plus(anhydrousShare(other).times(second));
    expect(anhydrousShare(mixed).times(mass).minus(before).abs().lt("1e-18")).toBe(true);
  });
});

test("a solution keeps the ratio of its salts and has the strength asked for", () => {
  always(100, [drySalts, amount(0.01, 99)], (salts, percent) => {
    const solution = answered(solutionOf(salts, percent));
    expect(anhydrousShare(solution).minus(percent).abs().lt("1e-24")).toBe(true);
    const dried = mixture([{ composition: { ...solution, water: "0", inert: "0" }, mass: 1 }]);
    expect(distance(dried, salts)).toBeLessThan(1e-20);
  });
});

test("products are described by assay, loss on drying and crystal water", () => {
  expect(pure("Na2CO3", "99.2", "0.5")).toEqual({ species: { Na2CO3: "98.704" }, water: "0.5", inert: "0.796" });
  expect(anhydrousShare(hydrate("K2CO3.1.5H2O")).toFixed(4)).toBe("83.6452");
  expect(anhydrousShare(hydrate("Na2CO3.10H2O", "98")).toFixed(4)).toBe("36.3001");
  expect(answered(compositionOf({ species: { K2CO3: "60", Na2CO3: "38" }, water: "1.5" })).inert).toBe("0.5");
  expect(potassiumCarbonateShare(pure("NaHCO3"))).toBeUndefined();
  expect(anhydrousShare(pure("NaCl")).isZero()).toBe(true);
});

/** JECFA, specification of sodium sesquicarbonate, 28th session 1981: NaHCO3 35.0 to 38.6 %, Na2CO3 46.4 to 50.0 %, water 13.8 to 16.7 %. */
test.each([
  ["NaHCO3", "35.0", "38.6", "34.9", "38.7"],
  ["Na2CO3", "46.4", "50.0", "46.3", "50.1"],
  ["water", "13.8", "16.7", "13.7", "16.8"],
] as const)("sodium sesquicarbonate is told by its %s, %s to %s %%", (part, least, most, less, more) => {
  const isIt = (share: string): boolean => {
    const parts = { NaHCO3: "35.5", Na2CO3: "46.8", water: "14.4", [part]: share };
    const { water, ...species } = parts;
    return isSesquicarbonate({
      species,
      water,
      inert: dec(100)
        .minus(sum(Object.values(parts).map(dec)))
        .toString(),
    });
  };
  expect([less, least, most, more].map(isIt)).toEqual([false, true, true, false]);
});
