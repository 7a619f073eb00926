import {
  pure,
  readHydrometer,
  readWeighedVolume,
  type StatedStrength,
  solutionAt,
  solutionDensity,
  strengthOf,
} from "@noodlewright/core/chemistry";
import { shownValue } from "@noodlewright/core/figure";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { baumeFromDensity, densityFromBaume } from "#core/chemistry/baume.ts";
import { rootBetween } from "#core/chemistry/bracket.ts";
import { anhydrousShare, solutionOf } from "#core/chemistry/composition.ts";
import { fitRange } from "#core/chemistry/stated-strength.ts";
import { massOfVolume, volumeOfMass } from "#core/chemistry/strength.ts";
import { dec } from "#core/number/decimal.ts";
import { always } from "../../always.ts";
import { answered, codesOf, toldOf } from "../told-of.ts";
import { amount, apart, carbonates, distance } from "./given.ts";

/** A round trip has to come back this near. */
const EXACT = 1e-9;

test("every measure leads back to the same solution", () => {
  always(20, [carbonates, amount(0.5, 20), amount(5, 40)], (salts, percent, temperature) => {
    const solution = answered(solutionOf(salts, percent));
    const { byVolume, massPercent, partsToWater, molPerKilogram } = answered(strengthOf(solution, temperature, "145"));
    if (byVolume === undefined) throw new Error("no density");
    const stated: readonly StatedStrength[] = [
      { measure: "mass-percent", value: massPercent.value },
      { measure: "parts-to-water", value: partsToWater.value },
      { measure: "mol-per-kilogram", value: molPerKilogram.value },
      { measure: "density", value: byVolume.density.value, temperature },
      { measure: "mass-volume-percent", value: byVolume.massVolumePercent.value, temperature },
      { measure: "grams-per-litre", value: byVolume.gramsPerLitre.value, temperature },
      { measure: "mol-per-litre", value: byVolume.molPerLitre.value, temperature },
    ];
    for (const one of stated) expect(distance(answered(solutionAt(salts, one)), solution)).toBeLessThan(EXACT);
  });
});

test("strength to degrees Baumé and back is the identity, on every scale", () => {
  const scales = fc.constantFrom(
    "145" as const,
    "144.3" as const,
    "144.32" as const,
    "144" as const,
    "146.78" as const,
  );
  always(30, [carbonates, amount(0.5, 20), scales], (salts, percent, scale) => {
    const { baume } = answered(strengthOf(answered(solutionOf(salts, percent)), 20, scale));
    if (baume === undefined) throw new Error("no degrees");
    const back = answered(solutionAt(salts, { measure: "degrees-baume", scale, value: baume.value }));
    expect(anhydrousShare(back).minus(percent).abs().toNumber()).toBeLessThan(EXACT);
  });
});

test("degrees Baumé and density undo each other at any temperature", () => {
  always(100, [amount(0.01, 60), amount(0, 40)], (degrees, temperature) => {
    const density = densityFromBaume(degrees, "144.3", temperature);
    expect(baumeFromDensity(density, "144.3", temperature).minus(degrees).abs().toNumber()).toBeLessThan(1e-30);
  });
});

test("density rises with strength and falls with temperature", () => {
  always(50, [carbonates, amount(0.5, 18), amount(5, 38)], (salts, percent, temperature) => {
    const density = (strength: string, at: string): number =>
      Number(answered(solutionDensity(answered(solutionOf(salts, strength)), at)).value);
    const stronger = dec(percent).plus(1).toString();
    const warmer = dec(temperature).plus(2).toString();
    expect(density(stronger, temperature)).toBeGreaterThan(density(percent, temperature));
    expect(density(percent, warmer)).toBeLessThan(density(percent, temperature));
  });
});

test("the density shows its working", () => {
  const density = answered(solutionDensity({ species: { Na2CO3: "10" }, water: "90", inert: "0" }, 20));
  expect(density.working.kind).toBe("formula");
  expect(density.unit).toBe("g/mL");
  expect(density.range?.why).toContain("0.21 % for the density fit of sodium carbonate");
});

test("mass and volume undo each other", () => {
  const solution = { species: { K2CO3: "30" }, water: "70", inert: "0" };
  const mass = answered(massOfVolume(solution, "750", 20));
  expect(apart(answered(volumeOfMass(solution, mass.value, 20)).value, "750")).toBeLessThan(EXACT);
});

test("parts as weighed count the crystals with their water", () => {
  const solution = answered(
    solutionAt({ species: { Na2CO3: "37" }, water: "63", inert: "0" }, { measure: "parts-as-weighed", value: "25" }),
  );
  expect(solution.species.Na2CO3).toBe("7.4");
});

describe("a hydrometer", () => {
  const soda = pure("Na2CO3");

  test("tells the strength and what its error is worth: 0.1 degrees are 0.08 % of soda", () => {
    const read = answered(readHydrometer(soda, { measure: "degrees-baume", scale: "145", value: "13.9" }, "0.1"));
    expect(Number(read.massPercent.value)).toBeCloseTo(10, 1);
    expect(read.massPercent.range?.why).toContain("is worth 0.08 % by mass");
  });

  test("a weighed volume tells the same", () => {
    const weighed = { mass: "110.36", volume: "100", temperature: "20", massError: "0.01", volumeError: "0.1" };
    const read = answered(readWeighedVolume(soda, weighed));
    expect(Number(read.massPercent.value)).toBeCloseTo(10, 1);
    expect(Number(read.massPercent.range?.low)).toBeLessThan(Number(read.massPercent.value));
  });

  test("a reading hardly above water is a strength near nothing, not a refusal", () => {
    const read = answered(readHydrometer(pure("K2CO3"), { measure: "density", value: "0.9983" }, "0.001"));
    expect(Number(read.massPercent.value)).toBeLessThan(0.05);
    expect(read.massPercent.range?.low).toBe("0");
  });

  test("the strength stands between what the doubt of the fits leaves", () => {
    always(20, [carbonates, amount(1.02, 1.18)], (salts, value) => {
      const stated = { measure: "density", value } as const;
      const middle = anhydrousShare(answered(solutionAt(salts, stated)));
      const range = fitRange(salts, stated);
      expect(range?.low.lt(middle) && range.high.gt(middle)).toBe(true);
    });
    expect(fitRange(soda, { measure: "mass-percent", value: "10" })).toBeUndefined();
  });

  test("tells at what temperature degrees Baumé were taken as read", () => {
    const factsAt = (temperature?: string) => {
      const outcome = solutionAt(soda, {
        measure: "degrees-baume",
        scale: "145",
        value: "16.4",
        ...(temperature !== undefined && { temperature }),
      });
      return outcome.ok ? outcome.notes[0]?.facts : undefined;
    };
    expect(factsAt()).toEqual({
      degrees: "16.4",
      temperature: { value: "15.6", unit: "°C", places: 1 },
      stated: false,
    });
    expect(factsAt("12")).toEqual({
      degrees: "16.4",
      temperature: { value: "12", unit: "°C", places: 0 },
      stated: true,
    });
  });
});

describe("outside the fits", () => {
  test("too warm names the range", () => {
    const outcome = solutionDensity({ species: { K2CO3: "25" }, water: "75", inert: "0" }, 50);
    expect(toldOf(outcome)[0]?.expected).toBe("5 °C to 40 °C for these salts");
  });

  test("below 20 °C the carried-on fit of potassium carbonate is named", () => {
    const outcome = solutionDensity({ species: { K2CO3: "25" }, water: "75", inert: "0" }, 15);
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(["density.carried-on"]);
  });

  test("a phosphate solution keeps its strength by mass", () => {
    const outcome = strengthOf({ species: { Na3PO4: "5" }, water: "95", inert: "0" }, 20, "145");
    expect(outcome.ok && outcome.value.byVolume).toBeUndefined();
    expect(outcome.ok && outcome.value.massPercent.value).toBe("5");
    expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(["strength.no-density", "ph.not-estimated"]);
  });

  test.each([
    "mass-percent",
    "parts-to-water",
    "mol-per-kilogram",
    "density",
    "mass-volume-percent",
    "grams-per-litre",
    "mol-per-litre",
    "degrees-baume",
  ] as const)("what is beyond reach in %s is told with a reach in that measure, which works", (measure) => {
    always(4, [fc.integer({ min: 20, max: 400 }), fc.integer({ min: 0, max: 10 })], (tenths, potash) => {
      const salts = tenths / (potash > 4 ? 10 : 25);
      const product = {
        species: {
          K2CO3: dec(salts).times(potash).div(10).toFixed(),
          Na2CO3: dec(salts)
            .times(10 - potash)
            .div(10)
            .toFixed(),
        },
        water: dec(100).minus(salts).toFixed(),
        inert: "0",
      };
      const asked = (value: string) =>
        solutionAt(product, measure === "degrees-baume" ? { measure, value, scale: "144.3" } : { measure, value });
      const refused = asked(measure === "density" ? "3" : measure === "degrees-baume" ? "99" : "2000");
      const expected = toldOf(refused)[0]?.expected ?? "";
      const most = /(?:at most|and) (?<most>[\d.]+) (?!at most)/u.exec(expected)?.groups?.["most"] ?? "";
      expect(asked(most).ok, expected).toBe(true);
      expect(asked(dec(most).times("1.002").toFixed()).ok, expected).toBe(false);
    });
  });

  test("values that no solution has are refused", () => {
    expect(codesOf(solutionAt(pure("Na2CO3"), { measure: "density", value: "0.9" }))).toEqual(["strength.beyond-fit"]);
    const strong = solutionAt(pure("Na2CO3"), { measure: "density", value: "1.5" });
    expect(toldOf(strong)[0]?.advice).toContain("take a stronger product");
  });
});

test("the bracketed search finds a root, and says when there is none", () => {
  expect(rootBetween((x) => x.pow(3).minus(8), dec(0), dec(5))?.toFixed(12)).toBe("2.000000000000");
  expect(rootBetween((x) => x.plus(1), dec(0), dec(5))).toBeUndefined();
  expect(rootBetween((x) => x, dec(0), dec(5))?.toString()).toBe("0");
  expect(rootBetween((x) => x.minus(5), dec(0), dec(5))?.toString()).toBe("5");
});

test("a strength shows no more digits than a bottle, a scale and a flask can bear", () => {
  const strength = answered(strengthOf({ species: { K2CO3: "25" }, water: "75", inert: "0" }, 20, "145"));
  const { byVolume, massPercent, partsToWater, molPerKilogram, alkalinityM, alkalinityP } = strength;
  const { massVolumePercent, gramsPerLitre, molPerLitre } = byVolume ?? {};
  const all = [massPercent, partsToWater, molPerKilogram, alkalinityM, alkalinityP];
  const volumes = [massVolumePercent, gramsPerLitre, molPerLitre].flatMap((figure) => figure ?? []);
  expect(volumes).toHaveLength(3);
  for (const figure of [...all, ...volumes]) {
    const digits = shownValue(figure).replace(".", "").replace(/^0+/u, "");
    expect([figure.id, digits.length <= 4]).toEqual([figure.id, true]);
  }
});

test("an error of a density is told as a share of it, which is the same in every unit: 0.00016951 of 1.08", () => {
  const read = answered(readHydrometer(pure("K2CO3"), { measure: "density", value: "1.08" }, "0.00016951429982"));
  expect(read.massPercent.range?.why).toMatch(/^a reading error of 0\.016 % of the density either way/u);
});
