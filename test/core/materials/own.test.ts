import type { MaterialFigures, OwnMaterials } from "@noodlewright/core/spec";
import { describe, expect, it } from "vitest";
import { resolveMaterial } from "#core/materials/own.ts";
import { materialFiguresSchema, ownMaterialsSchema } from "#core/materials/schema.ts";
import { answered, codesOf, toldOf } from "../told-of.ts";

const written = (figures: object): MaterialFigures => materialFiguresSchema.parse(figures);
const kitchen = (materials: object): OwnMaterials => ownMaterialsSchema.parse(materials);
const resolve = (name: string, figures?: object, own: object = {}) =>
  resolveMaterial(name, ["flours", 0, "name"], figures && written(figures), kitchen(own));

describe("a name of the catalogue", () => {
  it("brings its own figures, as is", () => {
    const flour = answered(resolve("Bread flour"));
    // USDA Standard Reference 28, NDB 20083
    expect(flour).toMatchObject({
      moisture: "13.36",
      protein: { value: "11.98", nitrogenFactor: "5.70" },
      ash: "0.47",
    });
    expect(flour.stated).toEqual({});
    expect(flour.figureSources.protein).toBe(flour.source);
    expect(answered(resolve("bread flour"))).toBe(flour); // made once, and shared
  });

  it("keeps what the kitchen does not state", () => {
    const flour = answered(resolve("bread flour", { protein: "12.4 %", proteinBasis: "as is", price: "0.92 EUR/kg" }));
    expect(flour).toMatchObject({
      moisture: "13.36",
      protein: { value: "12.4", nitrogenFactor: "5.7" },
      ash: "0.47",
      allergens: ["wheat"],
      allergensKnown: true,
      price: { perKilogram: "0.92", currency: "EUR" },
    });
    expect(flour.figureSources.protein.standing).toBe("user");
    expect(flour.figureSources.moisture.standing).not.toBe("user");
  });

  it("keeps its dry matter where only the moisture is replaced", () => {
    const damp = answered(resolve("bread flour", { moisture: "15 %" }));
    // 11.98 × 85 ÷ 86.64 and so on: Iowa State University, PM 1625
    expect(damp.protein?.value.slice(0, 8)).toBe("11.75323");
    expect(damp.ash?.slice(0, 8)).toBe("0.461103");
    expect(damp.fat?.slice(0, 8)).toBe("1.628578");
    expect(damp.stated.protein).toEqual({ value: "11.98", basis: { kind: "at", moisture: "13.36" } });
    expect(damp.figureSources.protein.standing).not.toBe("user");
  });

  it("loses energy, spread and remarks with the figures they went with", () => {
    const table = answered(resolve("bread flour"));
    expect(table.energy).toBe("361");
    const own = answered(resolve("bread flour", { moisture: "15 %" }));
    expect([own.energy, own.spread]).toEqual([undefined, undefined]);
    expect(answered(resolve("bread flour", { price: "1 EUR/kg" })).energy).toBe("361");
  });
});

describe("the kitchen's own materials", () => {
  const house = {
    "House Flour": { moisture: "13 %", protein: "12 %", ash: "0.5 %", ashBasis: "dry", allergens: ["wheat"] },
  };

  it("are found whatever case and spaces, with the usual bases of flours", () => {
    const flour = answered(resolve("house  flour", undefined, house));
    expect(flour).toMatchObject({ key: "own houseflour", kind: "flour", glutenForming: true, allergens: ["wheat"] });
    // 12 % at 14 % mb is 12 × 87 ÷ 86 as is; 0.5 % dry is 0.5 × 0.87
    expect(flour.protein?.value.slice(0, 8)).toBe("12.13953");
    expect(flour.protein?.nitrogenFactor).toBe("5.7");
    expect(flour.ash).toBe("0.435");
  });

  it("take further figures beside the name, and the protein goes with the new moisture", () => {
    const flour = answered(resolve("house flour", { moisture: "15 %" }, house));
    expect(flour.moisture).toBe("15");
    expect(flour.protein?.value.slice(0, 8)).toBe("11.86046");
    expect(flour.ash).toBe("0.425");
  });

  it("start from a catalogue material with `like`", () => {
    const flour = answered(resolve("miller's 55", { like: "bread flour", protein: "11.5 %" }));
    expect(flour).toMatchObject({ kind: "flour", moisture: "13.36", allergens: ["wheat"] });
  });

  it("replace the figures of a catalogue name", () => {
    const flour = answered(resolve("bread flour", undefined, { "bread flour": { moisture: "14.2 %" } }));
    expect(flour.moisture).toBe("14.2");
    expect(flour.kind).toBe("flour");
  });

  it("are as is and on 6.25 where they are no flour", () => {
    const egg = answered(
      resolve("pooled egg", { kind: "egg", moisture: "75 %", protein: "12.2 %", fat: "10 %", sodium: "140 mg" }),
    );
    expect(egg).toMatchObject({
      protein: { value: "12.2", nitrogenFactor: "6.25" },
      glutenForming: false,
      sodium: "140",
    });
    expect(egg.allergensKnown).toBe(false);
  });

  it("may be products of stated composition, crystal water counted", () => {
    const liquor = answered(
      resolve("kitchen liquor", { composition: { K2CO3: "18 %", Na2CO3: "12 %", water: "rest" } }),
    );
    expect(liquor).toMatchObject({
      kind: "alkali",
      moisture: "70",
      composition: { species: { K2CO3: "18", Na2CO3: "12" } },
    });
    const crystals = answered(resolve("crystals", { composition: { Na2CO3·10H2O: "100 %" } }));
    // Na2CO3 105.988 of 286.138 g/mol: handbooks of chemistry print 37.04 %
    expect(crystals.moisture.slice(0, 5)).toBe("62.95");
    expect(crystals.composition?.species.Na2CO3?.slice(0, 5)).toBe("37.04");
    const powder = answered(resolve("powder", { composition: { Na2CO3: "60 %", inert: "40 %" } }));
    expect(powder.composition).toEqual({ species: { Na2CO3: "60" }, water: "0", inert: "40" });
  });
});

describe("a food whose parts come to more than 100 %", () => {
  const sums = [
    // 95 × 88 ÷ 86 = 97.21 and 12 × 88 ÷ 1 = 1056: PM 1625, Moisture Basis Conversions
    ["protein of dry matter", { moisture: "12 %", protein: "95 %" }, "97.21 % protein (95 % at 14 % mb) = 109.21 %"],
    ["a basis of 99 %", { moisture: "12 %", protein: "12 %", proteinBasis: "99 % mb" }, "= 1068.00 %"],
    ["ash", { moisture: "13 %", protein: "80 %", proteinBasis: "as is", ash: "9 %", ashBasis: "dry" }, "= 100.83 %"],
    ["fat", { moisture: "14 %", protein: "12 %", ash: "0.5 %", fat: "80 %" }, "+ 80.00 % fat = 106.50 %"],
    ["carbohydrate", { moisture: "14 %", protein: "12 %", carbohydrate: "77 %" }, "+ 77.00 % carbohydrate = 103.00 %"],
    ["a label", { moisture: "14 %", label: { protein: "99 g", rules: "EU" } }, "90.29 % protein = 104.29 %"],
    ["a table row", { like: "bread flour", fat: "80 %" }, "= 105.81 %"],
  ] as const;

  it.each(sums)("is refused with the sum: %s", (_, figures, sum) => {
    for (const outcome of [resolve("house", figures), resolve("house", undefined, { house: figures })]) {
      expect(codesOf(outcome)).toEqual(["materials.beyond-whole"]);
      expect(toldOf(outcome)[0]?.found).toContain(sum);
    }
  });

  it("is none where rounding alone makes it so, and where a new lot leaves an old carbohydrate behind", () => {
    const old = { moisture: "14 %", protein: "11 %", ash: "0.5 %", fat: "1.3 %", carbohydrate: "73.4 %" };
    expect(resolve("house", old).ok).toBe(true);
    expect(resolve("house", { protein: "15 %" }, { house: old }).ok).toBe(true);
    expect(resolve("broth", { kind: "other", moisture: "99 %", sodium: "300 mg" }).ok).toBe(true);
  });
});

describe("what is wrong is said with a code and a path", () => {
  const water = { moisture: "14 %" };
  const parts = (composition: object) => ({ composition });
  it.each([
    ["materials.unknown", "house", { like: "bred flour", ...water }, "name", "bread flour"],
    ["materials.unknown", "qqqqqqqq", undefined, "name", "look it up in the catalogue"],
    [
      "materials.composition",
      "powder",
      parts({ Na2CO3: "60 %", K2CO3: "50 %", water: "rest" }),
      "figures.composition",
      "rest",
    ],
    [
      "materials.composition",
      "powder",
      parts({ Na2CO3: "60 %", inert: "rest", water: "rest" }),
      "figures.composition",
      "rest",
    ],
    ["quantity.unreadable", "powder", parts({ Na2CO3: "100" }), "figures.composition.Na2CO3", '"100 %"'],
  ] as const)("%s", (code, name, figures, place, advice) => {
    const told = toldOf(resolve(name, figures));
    expect(told.map((one) => [one.code, one.path.join(".")])).toEqual([[code, `flours.0.${place}`]]);
    expect(told[0]?.advice).toContain(advice);
  });

  it("offers the kitchen's own names for a name, and only the catalogue's for `like`", () => {
    const own = { "house flour": water };
    const byName = resolve("hause flour", undefined, own);
    expect(toldOf(byName)[0]?.advice).toContain('"house flour"');
    const byLike = resolve("other", { like: "house flour", ...water }, own);
    expect(toldOf(byLike)[0]?.advice).not.toContain('"house flour"');
  });

  it("names every wrong part of a composition in one go", () => {
    const outcome = resolve("powder", { composition: { salt: "1 %", Na2CO3: "x", K2CO3: "rest" } });
    expect(codesOf(outcome)).toEqual(["materials.composition-part", "quantity.unreadable"]);
  });
});
