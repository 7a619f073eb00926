import { describe, expect, it } from "vitest";
import { findMaterial } from "#core/materials/catalogue.ts";
import type { Grain } from "#core/materials/flour-class-list.ts";
import { type ClassFit, flourClasses } from "#core/materials/flour-classes.ts";

function fitsOf(name: string, grain: Grain): readonly ClassFit[] {
  const found = findMaterial(name);
  if (!found.ok) throw new Error(name);
  return flourClasses({ ...found.material, grain });
}

function one(fits: readonly ClassFit[], system: string, type: string): ClassFit {
  const fit = fits.find(({ flourClass }) => flourClass.system === system && flourClass.type === type);
  if (fit === undefined) throw new Error(`${system} ${type}`);
  return fit;
}

describe("classes of catalogue flours (USDA Standard Reference 28)", () => {
  it.each([
    // flour, grain, system, type, fit. DIN 10355; Italy, DPR 187/2001; Codex 163; 21 CFR 137.105.
    ["cake flour", "wheat", "DE", "405", "all"],
    ["cake flour", "wheat", "DE", "550", "none"],
    ["cake flour", "wheat", "IT", "00", "all"],
    ["all-purpose flour", "wheat", "DE", "550", "all"],
    ["all-purpose flour", "wheat", "DE", "405", "none"],
    ["whole wheat flour", "wheat", "DE", "1600", "all"],
    ["whole wheat flour", "wheat", "IT", "integrale", "none"],
    ["vital wheat gluten", "gluten", "Codex", "vital wheat gluten", "all"],
    ["bread flour", "wheat", "US", "flour", "all"],
    ["semolina", "durum", "US", "semolina", "all"],
  ] as const)("%s (%s): %s %s fits %s", (name, grain, system, type, within) => {
    expect(one(fitsOf(name, grain), system, type).within).toBe(within);
  });

  it.each([
    // dry ash and protein in %, by hand from the table as is; tolerance half the last digit
    ["cake flour", "IT", "00", "ash", 0.4458],
    ["cake flour", "IT", "00", "protein", 9.3725],
    ["all-purpose flour", "IT", "0", "ash", 0.5336],
    ["whole wheat flour", "IT", "integrale", "ash", 1.7701],
  ] as const)("%s: %s %s sees %s %d %%", (name, system, type, what, expected) => {
    const limit = one(fitsOf(name, "wheat"), system, type).limits.find((entry) => entry.what === what);
    expect(Math.abs(Number(limit?.value.low) - expected)).toBeLessThanOrEqual(0.00005);
  });

  it("reads gluten of unknown nitrogen factor as a range", () => {
    // 75.16 % at 8.20 % moisture is 81.874 % dry if N × 6.25, and 6.25 / 5.7 times that if N × 5.7.
    const [protein] = one(fitsOf("vital wheat gluten", "gluten"), "Codex", "vital wheat gluten").limits.filter(
      ({ what }) => what === "protein",
    );
    expect(Number(protein?.value.low)).toBeCloseTo(81.874, 3);
    expect(Number(protein?.value.high)).toBeCloseTo((81.87363834 * 6.25) / 5.7, 4);
  });

  it("gives no hard class where sources disagree", () => {
    // Japanese trade pages: medium 8.0–9.0 or 8.0–10.5 %, semi-strong 10.5–11.5, 9–11.5 or 10.5–12.0 %.
    const fits = flourClasses({ grain: "wheat", moisture: "14", protein: { value: "9.5" } });
    expect(one(fits, "JP", "medium").within).toBe("some");
    expect(one(fits, "JP", "semi-strong").within).toBe("some");
    expect(one(fits, "JP", "weak").within).toBe("none");
  });

  it("rounds dry ash to the two places of the German limits", () => {
    // 0.505 % lies in the gap between 405 (to 0.50) and 550 (from 0.51); half-even rounding puts 0.5049 to 0.50.
    const at = (ash: string) => flourClasses({ grain: "wheat", moisture: "0", ash });
    expect(one(at("0.5049"), "DE", "405").within).toBe("all");
    expect(one(at("0.5051"), "DE", "550").within).toBe("all");
  });
});
