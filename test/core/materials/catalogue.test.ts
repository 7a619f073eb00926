import { describe, expect, it } from "vitest";
import { catalogue, findMaterial, searchMaterials } from "#core/materials/catalogue.ts";
import { plainName } from "#core/materials/nearest.ts";
import { dec } from "#core/number/decimal.ts";

function named(name: string): string | readonly string[] {
  const found = findMaterial(name);
  return found.ok ? found.material.key : found.nearest;
}

describe("catalogue", () => {
  it("gives every key, name and other name to one material only", () => {
    const owners = new Map<string, string>();
    for (const { key, name, aliases } of catalogue()) {
      for (const one of [key, name, ...aliases]) {
        const plain = plainName(one);
        expect([one, owners.get(plain) ?? key]).toEqual([one, key]);
        owners.set(plain, key);
      }
    }
    expect(new Set(catalogue().map(({ key }) => key)).size).toBe(catalogue().length);
  });

  it("has a source, a moisture and a thought on allergens on every material", () => {
    for (const material of catalogue()) {
      expect(material.source.at, material.key).toBeDefined();
      expect(dec(material.moisture).gte(0) && dec(material.moisture).lte(100), material.key).toBe(true);
      expect(material.allergensKnown, material.key).toBe(true);
    }
  });

  it("writes plain numbers and survives JSON", () => {
    const numbers = ["moisture", "ash", "fat", "carbohydrate", "fibre", "sodium", "potassium", "energy"] as const;
    for (const material of catalogue()) {
      for (const name of numbers) expect(material[name] ?? "0", material.key).toMatch(/^\d+(\.\d+)?$/u);
      expect(material.protein?.value ?? "0", material.key).toMatch(/^\d+(\.\d+)?$/u);
      expect(material.protein?.nitrogenFactor ?? "5.7", material.key).toMatch(/^[56]\.\d+$/u);
    }
    expect(JSON.parse(JSON.stringify(catalogue()))).toEqual(catalogue());
  });

  it("leaves no part below zero and no sum above what is possible", () => {
    for (const { key, moisture, protein, ash, fibre, carbohydrate } of catalogue()) {
      if (carbohydrate !== undefined) expect(dec(carbohydrate).gte(fibre ?? 0), key).toBe(true);
      expect(
        dec(moisture)
          .plus(protein?.value ?? 0)
          .plus(ash ?? 0)
          .lte("100.1"),
        key,
      ).toBe(true);
    }
  });

  it("gives salts a composition, and only them", () => {
    for (const { key, kind, composition } of catalogue()) {
      expect([key, composition !== undefined]).toEqual([key, kind === "alkali" || kind === "salt"]);
    }
  });

  it("counts as gluten-forming only what is of wheat", () => {
    const forming = catalogue().filter(({ glutenForming }) => glutenForming);
    expect(forming.every(({ allergens }) => allergens.includes("wheat"))).toBe(true);
    for (const name of ["wheat bran", "wheat germ", "wheat starch", "triticale flour", "rye flour"]) {
      const found = findMaterial(name);
      expect([name, found.ok && found.material.glutenForming]).toEqual([name, false]);
    }
  });
});

describe("finding a material", () => {
  it.each([
    ["bread flour", "usda 20083"],
    ["  Bread   FLOUR ", "usda 20083"],
    ["breadflour", "usda 20083"],
    ["USDA 20083", "usda 20083"],
    ["soft flour grade 1", "mext 01015"],
    ["egg", "usda 01123"],
    ["baking soda", "salt sodium-bicarbonate"],
    ["soda ash", "salt sodium-carbonate"],
    ["high gluten flour", "usda 20645"],
    ["water", "usda 14411"],
  ])("%s is %s", (name, key) => {
    expect(named(name)).toBe(key);
  });

  it.each([
    ["bred flour", "bread flour"],
    ["flour bread", "bread flour"],
    ["semolna", "semolina"],
    ["taipoca", "tapioca"],
    ["rye dark flour", "dark rye flour"],
  ])("%s is not known, and %s is nearest", (name, nearest) => {
    expect(named(name)[0]).toBe(nearest);
  });

  it("offers nothing for what is like nothing", () => {
    expect(named("xyzzy")).toEqual([]);
    expect(named("")).toEqual([]);
  });
});

describe("searching", () => {
  it("narrows with every word and by kind", () => {
    expect(searchMaterials("dark RYE").map(({ key }) => key)).toEqual(["usda 20063"]);
    expect(searchMaterials("", "gluten").map(({ name }) => name)).toEqual(["vital wheat gluten", "gluten powder"]);
    expect(searchMaterials("sodium carbonate", "alkali").map(({ name }) => name)).toEqual([
      "sodium carbonate",
      "sodium carbonate monohydrate",
      "sodium carbonate decahydrate",
      "sodium carbonate heptahydrate",
      "sodium bicarbonate",
      "sodium sesquicarbonate",
    ]);
    expect(searchMaterials("20083").map(({ name }) => name)).toEqual(["bread flour"]);
    expect(searchMaterials("bread", "egg")).toEqual([]);
  });
});
