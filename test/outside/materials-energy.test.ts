import { describe, expect, it } from "vitest";
import { exact } from "#core/figure/figure.ts";
import { energyByTable, energyEU, euEnergyFactors, saltFromSodium } from "#core/materials/energy.ts";

describe("energy", () => {
  it.each([
    // Regulation (EU) No 1169/2011, Annex XIV: kcal and kJ per g
    ["carbohydrate", "4", "17"],
    ["polyols", "2.4", "10"],
    ["protein", "4", "17"],
    ["fat", "9", "37"],
    ["salatrim", "6", "25"],
    ["alcohol", "7", "29"],
    ["organicAcid", "3", "13"],
    ["fibre", "2", "8"],
    ["erythritol", "0", "0"],
  ] as const)("%s counts %s kcal and %s kJ per g", (nutrient, kcal, kilojoule) => {
    expect(euEnergyFactors[nutrient]).toMatchObject({ kcal, kilojoule });
  });

  it("of bread flour by the EU factors", () => {
    // USDA Standard Reference 28, NDB 20083, carbohydrate 72.53 less fibre 2.4; 4/9/4/2 and 17/37/17/8 by hand.
    const energy = energyEU({ protein: "11.98", carbohydrate: "70.13", fat: "1.66", fibre: "2.4" });
    expect(energy.kcal.value).toBe("348.18");
    expect(energy.kilojoule.value).toBe("1476.49");
  });

  it.each([
    // protein, fat, carbohydrate in g; kcal per g of each; kcal as printed. USDA Standard Reference 28; tolerance 1 kcal.
    ["11.98", "1.66", "72.53", "4.05", "8.37", "4.12", "361", "NDB 20083 bread flour"],
    ["15.91", "2.22", "68.63", "2.96", "8.37", "3.78", "325", "NDB 20063 dark rye flour"],
    ["12.62", "3.10", "70.59", "3.37", "8.37", "3.78", "335", "NDB 20011 buckwheat flour"],
    ["51.46", "1.22", "33.92", "3.47", "8.37", "4.07", "327", "NDB 16117 defatted soy flour"],
    ["12.56", "9.51", "0.72", "4.36", "9.02", "3.68", "143", "NDB 01123 whole egg"],
  ])(
    "%s g protein, %s g fat, %s g carbohydrate by %s, %s and %s kcal/g give %s kcal: %s",
    (value, fat, carbohydrate, ofProtein, ofFat, ofRest, printed) => {
      const energyFactors = { protein: ofProtein, fat: ofFat, carbohydrate: ofRest };
      const energy = energyByTable({ protein: { value }, fat, carbohydrate, energyFactors });
      expect(energy && Math.abs(exact(energy).minus(printed).toNumber())).toBeLessThanOrEqual(1);
    },
  );
});

describe("salt from sodium", () => {
  it.each([
    // mg sodium, place, g salt, source
    ["38758", "EU", "96.895", "Regulation (EU) No 1169/2011, Annex I point 11: sodium × 2.5; USDA NDB 02047"],
    ["38758", "JP", "98.445", "Japan, Food Labelling Standards: sodium × 2.54; USDA NDB 02047"],
    ["1000", "JP", "2.540", "MEXT 2020, item 01038, prints 2.5"],
    ["576.3", "EU", "1.441", "dough of 100 flour, 34 water, 1 salt, 0.9 Na2CO3, 0.1 K2CO3 by atomic weights"],
    ["576.3", "JP", "1.464", "the same dough"],
  ] as const)("%s mg sodium is in %s %s g salt", (sodium, place, salt, source) => {
    expect(exact(saltFromSodium(sodium, place)).toFixed(3), source).toBe(salt);
  });
});
