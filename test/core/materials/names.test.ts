import { pure, readProduct } from "@noodlewright/core/chemistry";
import { describe, expect, it } from "vitest";
import { alkalinityM } from "#core/chemistry/composition.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { everydayNames } from "#core/materials/catalogue/everyday-names.ts";
import { catalogue, findMaterial, isAlkaliLike, nearestMaterials } from "#core/materials/catalogue.ts";
import { plainName } from "#core/materials/nearest.ts";
import { resolveMaterial } from "#core/materials/own.ts";
import { severalOf, severalThings } from "#core/materials/several.ts";
import { dec } from "#core/number/decimal.ts";
import { codesOf, toldOf } from "../told-of.ts";

const everyName = catalogue().flatMap(({ name, aliases }) => [name, ...aliases]);
const alkaline = new Set(
  catalogue()
    .filter(({ kind }) => kind === "alkali")
    .flatMap(({ name, aliases }) => [name, ...aliases]),
);

const terms = { modulus: "145", temperature: "20", ratioBy: "anhydrous" } as const;

/** What is said about a name that stands for several things, in an answer to a spec. */
function said(alkali: object): { readonly found: string; readonly expected: string; readonly advice: string } {
  const outcome = formulaOf({
    name: "test",
    flours: [{ name: "bread flour", amount: "100 %" }],
    water: { added: "34 %" },
    alkali: [alkali],
  });
  expect(codesOf(outcome)).toEqual(["materials.several"]);
  const [problem] = toldOf(outcome);
  return problem ?? { found: "", expected: "", advice: "" };
}

describe("everyday names", () => {
  it("stand for the material that they are listed with, whatever their case and width", () => {
    for (const { of, names } of everydayNames) {
      for (const name of names) {
        const found = findMaterial(name.toUpperCase());
        expect([name, found.ok && found.material.key]).toEqual([name, of]);
      }
    }
    const wide = findMaterial("Ｅ５００（ｉｉ）");
    expect(wide.ok && wide.material.key).toBe("salt sodium-bicarbonate");
  });

  it("clash with no name that stands for several things, and those with none of their own", () => {
    const known = new Set(everyName.map(plainName));
    const several = severalThings.flatMap(({ names }) => names.map(plainName));
    expect(several.filter((name) => known.has(name))).toEqual([]);
    expect(new Set(several).size).toBe(several.length);
    expect([...everydayNames, ...severalThings].every(({ source }) => source.cite !== "")).toBe(true);
  });

  // Names and what they stand for: a chemistry textbook for soda ash, 21 CFR 184.1792 for trona, an additive list of a
  // public food database for the others; that none of them tells of crystal water stands there too.
  it.each([
    ["soda ash", "salt sodium-carbonate", false],
    ["炭酸ナトリウム", "salt sodium-carbonate", true],
    ["carbonate de soude", "salt sodium-carbonate", true],
    ["重曹", "salt sodium-bicarbonate", false],
    ["梳打粉", "salt sodium-bicarbonate", false],
    ["doppeltkohlensaures Natron", "salt sodium-bicarbonate", false],
    ["탄산칼륨", "salt potassium-carbonate", true],
    ["trona", "salt sodium-sesquicarbonate", false],
  ])("%s is %s", (name, key, silent) => {
    const material = resolveMaterial(name, [], undefined);
    if (!material.ok) throw new Error(name);
    expect(material.value.key).toBe(key);
    expect(material.value.notes.some((note) => typeof note === "string" && note.includes("crystal water"))).toBe(
      silent,
    );
  });
});

describe("a name that stands for several things", () => {
  // g that replace 1 g of anhydrous sodium carbonate at the same alkalinity, by the CIAAW atomic weights of 2021:
  // decahydrate 2.69972, monohydrate 1.16997, potassium carbonate 1.30396, its sesquihydrate 1.55892, sodium hydroxide 0.75475.
  it.each([
    [{ name: "washing soda", amount: "1 %" }, "0.37 %", "1.00 %"],
    [{ name: "Soda Crystals", amount: "1 %" }, "0.37 %", "0.85 %"],
    [{ name: "E500", amount: "1 %" }, "0.37 %", "1.00 %"],
    [{ name: "pearl ash", amount: "1 %" }, "0.64 %", "0.77 %"],
    [{ name: "soda", amount: "1 %" }, "0.37 %", "1.32 %"],
    [{ name: "washing soda", amount: "1 %", as: "alkalinity" }, "1.00 %", "2.70 %"],
    [{ name: "washing soda", amount: "1 %", as: "anhydrous salts" }, "1.00 %", "2.70 %"],
    [{ name: "potash", amount: "18.87 meq" }, "1.06 %", "1.56 %"],
    [{ name: "sodium carbonate", amount: "1 %", replaceWith: "washing soda" }, "1.00 %", "2.70 %"],
    // a fifth of each: 0.2 of a dose of sodium carbonate; times 105.988 / 138.205, the molar masses, where all is potassium's
    [{ name: "20 % w/w mixed carbonates", amount: "3 %" }, "0.46 %", "0.60 %"],
    [{ name: "sodium carbonate", amount: "1 %", replaceWith: "20 % w/w mixed carbonates" }, "5.00 %", "6.52 %"],
  ])("%j tells the range of doses", (alkali, least, most) => {
    const { expected } = said(alkali);
    expect(expected).toMatch(
      new RegExp(`from ${least.replace(".", "\\.")} \\(.*to ${most.replace(".", "\\.")} \\(`, "u"),
    );
  });

  it("tells the range of doses of a swap: 12 g of potassium carbonate takes 9.20 to 24.84 g of washing soda", () => {
    const meq = dec(12).times(alkalinityM(pure("K2CO3")));
    const outcome = readProduct("washing soda", {}, terms, [], { text: "12 g K2CO3", unit: "g", meq });
    expect(toldOf(outcome)[0]?.expected).toMatch(/from 9\.20 g .* to 24\.84 g /u);
  });

  it.each([
    ["lye water", "% by mass", /hydroxide, which burns/u],
    ["wood ash", "titration", /strong alkali/u],
    ["kansui", "list of substances", /diluted/u],
    ["간수", "tofu", /./u],
  ])("%s has no range, and says what must be told", (name, asked, more) => {
    const { expected, advice } = said({ name, amount: "1 %" });
    expect(expected).not.toContain(";");
    expect(advice).toContain(asked);
    expect(advice).toMatch(more);
  });

  it("shows no line with a ratio that nobody stated", () => {
    for (const line of ["20 % w/w mixed carbonates", "mixed carbonates at 20 %"]) {
      expect(toldOf(readProduct(line, {}, terms, []))[0]?.lines).toEqual(["Na2CO3 at 20 %", "K2CO3 at 20 %"]);
    }
  });

  it("is taken as described where its composition is written beside it", () => {
    const own = resolveMaterial("washing soda", [], { composition: { "Na2CO3.H2O": "100 %" } });
    expect(own.ok && own.value.moisture.slice(0, 5)).toBe("14.52");
  });

  it("does not become one thing by a price or an uncertainty beside it", () => {
    said({ name: "washing soda", amount: "1 %", figures: { strengthUncertainty: "2 %" } });
  });

  it.each(["flour", "小麦粉", "strong flour", "cornflour", "T55"])("%s is a flour to be told apart", (name) => {
    expect(severalOf(name)?.kind).toBe("flour");
    const label = { protein: "4 g", serving: "30 g", rules: "US" };
    const spec = (figures: object) => ({
      name: "test",
      flours: [{ name, amount: "100 %", ...figures }],
      water: { added: "34 %" },
    });
    expect(codesOf(formulaOf(spec({})))).toEqual(["materials.several"]);
    expect(codesOf(formulaOf(spec({ figures: { label } })))).toEqual([]);
  });

  it.each(["borax", "baking powder", "hartshorn"])("%s is no noodle alkali", (name) => {
    expect(said({ name, amount: "1 %" }).found).toContain("is no noodle alkali");
  });
});

describe("spelling help", () => {
  const alkaliNames = [...alkaline, ...severalThings.flatMap(({ kind, names }) => (kind === "flour" ? [] : names))];

  it("guesses nothing for the name of an alkali, spelled right or wrong", () => {
    for (const name of alkaliNames) {
      const middle = Math.floor(name.length / 2);
      const slips = [name.slice(1), name.slice(0, middle) + name.slice(middle + 1), `${name}e`];
      const asked = plainName(name).length < 6 ? [name] : [name, ...slips];
      for (const one of asked) expect([one, nearestMaterials(one, everyName)]).toEqual([one, []]);
    }
  });

  it.each(["lye", "lye wter", "wshing soda", "E 500", "pottash", "kansue", "karbonat", "alkali salt"])(
    "takes %s for an alkali",
    (name) => {
      expect(isAlkaliLike(name)).toBe(true);
    },
  );

  it("never offers an alkali for another word", () => {
    for (const name of everyName.filter((one) => !isAlkaliLike(one))) {
      const offered = nearestMaterials(`${name}s`, everyName);
      expect([name, offered.filter((one) => alkaline.has(one))]).toEqual([name, []]);
    }
  });

  it.each([
    ["rye", false],
    ["bread flour", false],
    ["egg", false],
    ["soba", false],
    ["cake flour", false],
  ])("%s is not taken for an alkali", (name, taken) => {
    expect(isAlkaliLike(name)).toBe(taken);
  });
});
