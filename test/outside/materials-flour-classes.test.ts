import { describe, expect, it } from "vitest";
import { classedFlours } from "#core/formula/classes.ts";
import { flourClassList, type Grain } from "#core/materials/flour-class-list.ts";
import { classesIn, limitsOf } from "#core/materials/flour-classes.ts";
import { materialsReport } from "#core/report/materials-report.ts";
import { workedOut } from "../core/formula/worked-out.ts";
import { catalogued } from "./catalogued.ts";

type Flour = Parameters<typeof classesIn>[0];

function falls(flour: Flour, system: string, type: string): boolean {
  return classesIn(flour).some(({ flourClass }) => flourClass.system === system && flourClass.type === type);
}

/** What is seen of a flour by a class, whether it falls in it or not. */
function seen(flour: Flour, system: string, type: string, what: string) {
  const flourClass = flourClassList.find((one) => one.system === system && one.type === type);
  if (flourClass === undefined) throw new Error(`${system} ${type}`);
  return limitsOf(flour, flourClass).find((limit) => limit.what === what)?.value;
}

describe("classes of catalogue flours (USDA Standard Reference 28)", () => {
  it.each([
    // flour, grain, system, type, whether it falls in it. DIN 10355; Italy, DPR 187/2001; Codex 163; 21 CFR 137.105.
    ["cake flour", "wheat", "DE", "405", true],
    ["cake flour", "wheat", "DE", "550", false],
    ["cake flour", "wheat", "IT", "00", true],
    ["all-purpose flour", "wheat", "DE", "550", true],
    ["all-purpose flour", "wheat", "DE", "405", false],
    ["whole wheat flour", "wheat", "DE", "1600", true],
    ["whole wheat flour", "wheat", "IT", "integrale", false],
    ["vital wheat gluten", "gluten", "Codex", "vital wheat gluten", true],
    ["bread flour", "wheat", "US", "flour", true],
    ["semolina", "durum", "US", "semolina", true],
  ] as const)("%s (%s): %s %s fits: %s", (name, grain: Grain, system, type, fits) => {
    expect(falls({ ...catalogued(name), grain }, system, type)).toBe(fits);
  });

  it.each([
    // dry ash and protein in %, by hand from the table as is; tolerance half the last digit
    ["cake flour", "IT", "00", "ash", 0.4458],
    ["cake flour", "IT", "00", "protein", 9.3725],
    ["all-purpose flour", "IT", "0", "ash", 0.5336],
    ["whole wheat flour", "IT", "integrale", "ash", 1.7701],
  ] as const)("%s: %s %s sees %s %d %%", (name, system, type, what, expected) => {
    const value = seen({ ...catalogued(name), grain: "wheat" }, system, type, what);
    expect(Math.abs(Number(value?.low) - expected)).toBeLessThanOrEqual(0.00005);
  });

  it("reads gluten of unknown nitrogen factor as a range", () => {
    // 75.16 % at 8.20 % moisture is 81.874 % dry if N × 6.25, and 6.25 / 5.7 times that if N × 5.7.
    const gluten = { ...catalogued("vital wheat gluten"), grain: "gluten" } as const;
    const protein = seen(gluten, "Codex", "vital wheat gluten", "protein");
    expect(Number(protein?.low)).toBeCloseTo(81.874, 3);
    expect(Number(protein?.high)).toBeCloseTo((81.87363834 * 6.25) / 5.7, 4);
  });

  it("gives no hard class where sources disagree", () => {
    // Japanese trade pages: medium 8.0–9.0 or 8.0–10.5 %, semi-strong 10.5–11.5, 9–11.5 or 10.5–12.0 %.
    const between = { grain: "wheat", moisture: "14", protein: { value: "9.5" } } as const;
    expect(classesIn(between).filter(({ flourClass }) => flourClass.system === "JP")).toEqual([]);
    expect(falls({ ...between, protein: { value: "8.5" } }, "JP", "medium")).toBe(true);
  });

  it("rounds dry ash to the two places of the German limits", () => {
    // 0.505 % lies in the gap between 405 (to 0.50) and 550 (from 0.51); half-even rounding puts 0.5049 to 0.50.
    const at = (ash: string) => ({ grain: "wheat", moisture: "0", ash }) as const;
    expect(falls(at("0.5049"), "DE", "405")).toBe(true);
    expect(falls(at("0.5051"), "DE", "550")).toBe(true);
  });
});

describe("the class of a flour, as users are told", () => {
  const toldOf = (...flours: readonly (readonly [name: string, amount: string])[]): readonly string[] => {
    const written = flours.map(([name, amount]) => ({ name, amount }));
    const { formula } = workedOut({ flours: written, water: { tap: "35 %" } });
    return classedFlours(formula).flatMap(({ name, fits }) =>
      fits.map(({ flourClass }) => `${name}: ${flourClass.type} (${flourClass.system})`),
    );
  };

  // DIN 10355; decree 63-720; DPR 187/2001; 21 CFR 137; CODEX STAN 152; ash and protein of USDA Standard Reference 28.
  it.each([
    ["all-purpose flour", "550 (DE)", true],
    ["all-purpose flour", "405 (DE)", false],
    ["cake flour", "00 (IT)", true],
    ["semolina", "semolina (US)", true],
    ["semolina", "00 (IT)", false],
    ["bread flour", "wheat flour (Codex)", true],
  ] as const)("%s falls in class %s: %s", (name, type, falls) => {
    expect(toldOf([name, "100 %"]).some((line) => line.endsWith(`: ${type}`))).toBe(falls);
  });

  it("is told of the blend as well, by its own ash and moisture, where all is of one grain", () => {
    const blended = toldOf(["cake flour", "50 %"], ["all-purpose flour", "rest"]);
    // (0.39 + 0.47) / 2 of ash at (12.51 + 11.92) / 2 % of moisture is 0.49 % dry
    expect(blended).toContain("the blend: 405 (DE)");
    expect(toldOf(["cake flour", "50 %"], ["dark rye flour", "rest"]).join()).not.toContain("the blend");
  });

  it("is nothing where the grain is not known, or none is for it", () => {
    expect(toldOf(["barley flour", "100 %"])).toEqual([]);
    const house = { name: "house flour", amount: "100 %", figures: { moisture: "14 %", ash: "0.45 %" } };
    expect(classedFlours(workedOut({ flours: [house], water: { tap: "35 %" } }).formula)).toEqual([]);
  });

  it("stands in the answer of a formula and of a material", () => {
    const classes = materialsReport([catalogued("bread flour")], "bread flour").sections.find(
      ({ id }) => id === "classes",
    );
    expect(JSON.stringify(classes)).toContain("550");
    expect(JSON.stringify(classes)).toContain("Germany: DIN 10355 (1992)");
  });
});
