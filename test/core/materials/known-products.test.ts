import { askFormula, readNoodleData } from "@noodlewright/core";
import { describe, expect, test } from "vitest";
import { knownProducts } from "#core/materials/known-products.ts";
import { readProduct } from "#core/materials/product-text.ts";

const products = knownProducts("");

describe("every salt that is listed", () => {
  test("are 29", () => expect(products.length).toBe(29));

  test.each(products)(
    "$name is read as a product, by its name and by its formula",
    ({ name, formula, composition }) => {
      for (const written of [name, formula]) {
        const read = readProduct(written, {}, {}, []);
        const found = read.ok ? read.value.composition : undefined;
        // Table salt has what was printed of it.
        if (name === "sodium chloride" && written === name) expect(Object.keys(found?.species ?? {})).toEqual(["NaCl"]);
        else expect(found).toEqual(composition);
      }
    },
  );

  test.each(products.filter(({ alkaline }) => alkaline))("$name is read as the alkali of a spec", ({ name }) => {
    const noodle = readNoodleData({
      name: "class noodle",
      flours: [{ name: "bread flour", amount: "100 %" }],
      water: { added: "36 %" },
      alkali: [{ name, amount: "0.2 %" }],
    });
    expect(noodle.ok ? askFormula(noodle.value).ok : noodle.problems).toBe(true);
  });
});

test("a phosphate that is sold with water and without says which was taken", () => {
  const notes = (name: string) => readProduct(name, {}, {}, []);
  const [anhydrous, hydrated] = ["trisodium phosphate", "trisodium phosphate dodecahydrate"].map(notes);
  expect(JSON.stringify(anhydrous)).toContain("without crystal water");
  expect(JSON.stringify(hydrated)).not.toContain("without crystal water");
});
