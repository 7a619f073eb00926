import { type Outcome, readNoodleData, told } from "@noodlewright/core";
import {
  hydrate,
  pure,
  readAlkalinity,
  readModulus,
  readProduct,
  readRatio,
  readStrength,
  solutionAt,
  strengthOf,
} from "@noodlewright/core/chemistry";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { anhydrousShare } from "#core/chemistry/composition.ts";
import { readParts } from "#core/materials/composition-parts.ts";
import { materialFiguresSchema } from "#core/materials/schema.ts";
import { statedComposition } from "#core/materials/stated-composition.ts";
import { readBy } from "#core/spec/read-spec.ts";
import { always } from "../../always.ts";
import { answered, codesOf, toldOf } from "../told-of.ts";

/** What figures of a material, as a spec writes them, say about its composition. */
function read(figures: unknown) {
  const parsed = readBy(materialFiguresSchema, figures);
  return parsed.ok ? statedComposition(parsed.value, ["figures"]) : parsed;
}

/** The numbers of a line, without the formulas of its salts. */
const numbersOf = (text: string) => text.replaceAll(/\p{L}[\p{L}\d.]*/gu, " ").match(/\d+(?:[.,]\d+)*/gu) ?? [];

const complaints = (outcome: Outcome<unknown>) => toldOf(outcome).map(({ code, path }) => `${code} ${path.join(".")}`);

describe("a strength in words", () => {
  it.each([
    ["20 %", { measure: "mass-percent", value: "20" }],
    ["20 % by mass", { measure: "mass-percent", value: "20" }],
    ["22.5 % W/V", { measure: "mass-volume-percent", value: "22.5" }],
    ["250 g/L", { measure: "grams-per-litre", value: "250" }],
    ["1.20 mol/L", { measure: "mol-per-litre", value: "1.2" }],
    ["1.2 mol/kg", { measure: "mol-per-kilogram", value: "1.2" }],
    ["1.18 g/mL", { measure: "density", value: "1.18" }],
    ["10 lb/gal", { measure: "density", value: "1.19826427316896628543913255806" }],
    ["24 °Bé", { measure: "degrees-baume", value: "24", scale: "145" }],
    ["24 degrees Baumé", { measure: "degrees-baume", value: "24", scale: "145" }],
    ["1 to 4", { measure: "parts-to-water", value: "25" }],
    ["1:4", { measure: "parts-to-water", value: "25" }],
    ["28,5 °Bé", { measure: "degrees-baume", value: "28.5", scale: "145" }],
    ["0,125 mol/L", { measure: "mol-per-litre", value: "0.125" }],
  ])("%s", (text, stated) => expect(readStrength(text)).toEqual(stated));

  it.each(["", "20", "24 degrees", "1 to 0", "-3 %", "20 % of flour", "1,500 g/L", ",5 %", "1,2,3 %"])(
    "refuses %j",
    (text) => expect(readStrength(text)).toBeUndefined(),
  );

  it("takes scale, temperature and what parts count from beside it", () => {
    const terms = { modulus: "144.3", temperature: "15", readAt: "18", ratioBy: "as-weighed" } as const;
    expect(readStrength("24 °Bé", terms)).toEqual({
      measure: "degrees-baume",
      value: "24",
      scale: "144.3",
      temperature: "18",
    });
    expect(readStrength("250 g/L", terms)).toEqual({ measure: "grams-per-litre", value: "250", temperature: "15" });
    expect(readStrength("1 to 4", terms)).toEqual({ measure: "parts-as-weighed", value: "25" });
    expect([readModulus("144.3"), readModulus(" 145 "), readModulus("144.5")]).toEqual(["144.3", "145", undefined]);
  });

  it("reads ratios of the number of parts asked for", () => {
    expect([readRatio("6 to 4", 2), readRatio("9:1", 2), readRatio("1", 1)]).toEqual([["6", "4"], ["9", "1"], ["1"]]);
    expect(readRatio("6,5:3,5", 2)).toEqual(["6.5", "3.5"]);
    const refused = [readRatio("6 to 4", 3), readRatio("0 to 0", 2), readRatio("six to four", 2)];
    expect(refused.every((ratio) => ratio === undefined)).toBe(true);
  });
});

describe("a solution in a spec", () => {
  const salts = { K2CO3: 6, Na2CO3: 4 };

  it("is the same in whatever measure its strength is stated", () => {
    always(15, [fc.integer({ min: 20, max: 200 }).map((n) => n / 10)], (percent) => {
      const solution = answered(
        solutionAt(answered(read({ solution: { salts, strength: "20 %" } })) ?? pure("K2CO3"), {
          measure: "mass-percent",
          value: String(percent),
        }),
      );
      const strength = answered(strengthOf(solution, "20", "145"));
      const { byVolume, baume } = strength;
      const written = [
        `${strength.massPercent.value} %`,
        `${strength.partsToWater.value} to 100`,
        `${strength.molPerKilogram.value} mol/kg`,
        `${byVolume?.density.value} g/mL`,
        `${byVolume?.massVolumePercent.value} % w/v`,
        `${byVolume?.gramsPerLitre.value} g/L`,
        `${byVolume?.molPerLitre.value} mol/L`,
        `${baume?.value} °Bé`,
      ];
      for (const text of written) {
        const composition = answered(read({ solution: { salts, strength: text } }));
        expect(Number(composition && anhydrousShare(composition)), text).toBeCloseTo(percent, 8);
      }
    });
  });

  it("takes one salt by its name", () => {
    const strength = "30 °Bé";
    expect(read({ solution: { salts: "K2CO3", strength } })).toEqual(
      read({ solution: { salts: { K2CO3: 1 }, strength } }),
    );
    expect(toldOf(read({ solution: { salts: "mixed carbonates", strength } }))[0]?.expected).toMatch(/^.{1,120}$/u);
  });

  it("keeps the ratio of its salts, by anhydrous mass or as weighed", () => {
    const anhydrous = answered(read({ solution: { salts, strength: "20 %" } }));
    expect([anhydrous?.species.K2CO3, anhydrous?.species.Na2CO3, anhydrous?.water]).toEqual(["12", "8", "80"]);
    const crystals = { "K2CO3.1.5H2O": 6, Na2CO3: 4 };
    const weighed = answered(read({ solution: { salts: crystals, ratioBy: "as weighed", strength: "1 to 9" } }));
    const share = anhydrousShare(hydrate("K2CO3.1.5H2O")).times(6).plus(400).div(100);
    const byMass = answered(read({ solution: { salts: crystals, ratioBy: "as weighed", strength: "10 %" } }));
    for (const one of [weighed, byMass]) expect(Number(one && anhydrousShare(one))).toBeCloseTo(Number(share), 10);
  });

  it.each([
    [{ solution: { salts, strength: "20" } }, ["materials.strength figures.solution.strength"]],
    [{ solution: { salts, strength: "75 °Bé" } }, ["strength.beyond-fit figures.solution.strength"]],
    [
      { solution: { salts: { K2C03: 1 }, strength: "20 %" } },
      ["materials.composition-part figures.solution.salts.K2C03"],
    ],
    [{ solution: { salts: {}, strength: "20 %" } }, ["materials.salts figures.solution.salts"]],
    [{ solution: { salts: { K2CO3: 1, NaCl: 1 }, strength: "20 %" } }, ["materials.salts figures.solution.salts"]],
    [{ solution: { salts, strength: "20 °Bé", modulus: 150 } }, ["materials.modulus solution.modulus"]],
    [
      { solution: { salts, strength: "20 %" }, composition: { K2CO3: "100 %" } },
      ["materials.composition-twice figures"],
    ],
    [{ solution: { salts: { Na2CO3·10H2O: 3, K2CO3: 1 }, strength: "18 %" } }, ["materials.crystals figures.solution"]],
    [{ solution: { salts: "Na2CO3·10H2O", strength: "1 to 5" } }, ["materials.crystals figures.solution"]],
  ])("refuses %j", (figures, codes) => expect(complaints(read(figures))).toEqual(codes));
});

describe("a certificate", () => {
  it.each([
    ["98 % as Na2CO3", { as: "Na2CO3", percent: "98" }],
    ["57.3% as na2o", { as: "Na2O", percent: "57.3" }],
    ["37.4 mL of 1 N acid on 2 g", { acid: { millilitres: "37.4", normality: "1", sample: "2" } }],
    ["98 % as soda", undefined],
    ["98 %", undefined],
  ])("states %j", (text, stated) => expect(readAlkalinity(text)).toEqual(stated));

  it("gives the composition back", () => {
    const soda = answered(
      read({ certificate: { salts: { Na2CO3: 1 }, alkalinity: "98 % as Na2CO3", water: "1.5 %" } }),
    );
    expect([soda?.species.Na2CO3, soda?.water, soda?.inert]).toEqual(["98", "1.5", "0.5"]);
    expect(complaints(read({ certificate: { salts: { Na2CO3: 1 }, alkalinity: "98 %" } }))).toEqual([
      "materials.alkalinity figures.certificate.alkalinity",
    ]);
    expect(complaints(read({ certificate: { salts: { K2CO3: 1 }, alkalinity: "98 % as Na2CO3" } }))).toEqual([
      "titration.over-100 figures.certificate.alkalinity",
    ]);
  });
});

describe("an assay", () => {
  it("counts the loss on drying as water, and the assay on what is left", () => {
    const soda = answered(read({ assay: { of: "Na2CO3", content: "99 %", lossOnDrying: "2 %" } }));
    expect([soda?.species.Na2CO3, soda?.water, soda?.inert]).toEqual(["97.02", "2", "0.98"]);
    const crystals = answered(read({ assay: { of: "K2CO3.1.5H2O", content: "99 %", lossOnDrying: "16 %" } }));
    expect([crystals?.species.K2CO3, crystals?.water]).toEqual(["83.16", "16"]);
    expect(answered(read({ assay: { of: "Na2CO3.10H2O", content: "100 %" } }))).toEqual(hydrate("Na2CO3.10H2O"));
  });

  it.each([
    [{ assay: { of: "soda", content: "99 %" } }, ["materials.composition-part figures.assay.of"]],
    [{ assay: { of: "water", content: "99 %" } }, ["materials.assay figures.assay.of"]],
    [
      { assay: { of: "Na2CO3.NaHCO3.2H2O", content: "99 %", lossOnDrying: "30 %" } },
      ["materials.assay figures.assay.lossOnDrying"],
    ],
  ])("refuses %j", (figures, codes) => expect(complaints(read(figures))).toEqual(codes));
});

describe("a product in one line", () => {
  const own = { "harbour powder": { kind: "alkali", composition: { Na2CO3: "90 %", K2CO3: "10 %" } } } as const;
  const line = (text: string) => readProduct(text, own, {}, ["product"]);

  it.each([
    ["harbour powder", answered(readParts({ Na2CO3: "90 %", K2CO3: "10 %" }, []))],
    ["Sodium  Carbonate", pure("Na2CO3")],
    ["NaOH", pure("NaOH")],
    ["K2CO3.1.5H2O", hydrate("K2CO3.1.5H2O")],
    ["K2CO3 30 %, water rest", answered(readParts({ K2CO3: "30 %", water: "rest" }, []))],
    ["K2CO3 6, Na2CO3 4", answered(readParts({ K2CO3: "60 %", Na2CO3: "40 %" }, []))],
    ["K2CO3 6, Na2CO3 4 at 20 %", answered(readParts({ K2CO3: "12 %", Na2CO3: "8 %", water: "rest" }, []))],
    ["K2CO3·1.5H2O 20 %, water rest", answered(readParts({ "K2CO3.1.5H2O": "20 %", water: "rest" }, []))],
    ["harbour powder at 10 %", answered(readParts({ Na2CO3: "9 %", K2CO3: "1 %", water: "rest" }, []))],
  ])("%s", (text, composition) => expect(answered(line(text)).composition).toEqual(composition));

  it.each([
    ["harbor powder", "product.unknown"],
    ["bread flour", "product.no-alkali"],
    ["", "product.unknown"],
    ["K2CO3 30 %", "product.unclear"],
    ["K2CO3 30 %, soap rest", "product.unknown"],
    ["K2CO3 and Na2CO3", "product.unclear"],
    ["K2CO3 6, Na2CO3 40 %", "product.unclear"],
    ["30 Baumé", "product.unclear"],
    ["20 g/100 ml", "product.unclear"],
    ["20% kansui", "materials.several"],
    ["kansui 30 °Bé", "materials.several"],
    ["washing soda 9, potash 1", "materials.several"],
    ["K2CO3 20 g in 100 ml water", "product.unknown"],
    ["K2CO3 at 20 parts", "product.strength"],
    ["K2CO3 250,500 g/L", "product.unclear"],
    ["K2CO3 ,5 %, water rest", "product.unclear"],
    ["K2CO3 28 5 °Bé", "product.unclear"],
    ["28 to 30 °Bé K2CO3", "product.unclear"],
    ["Na2CO3 60 %, K2CO3 50 %", "product.unclear"],
    ["K2CO3 70 %, Na2CO3 20 %", "product.unclear"],
    ["K2CO3 at 90 °Bé", "strength.beyond-fit"],
    ["water 100 %", "product.no-alkali"],
  ])("refuses %j, with lines that are read", (text, code) => {
    const outcome = line(text);
    expect(new Set(codesOf(outcome))).toEqual(new Set([code]));
    for (const { lines, advice } of toldOf(outcome)) {
      if (code === "strength.beyond-fit") continue;
      expect(lines?.length).toBeGreaterThan(0);
      for (const shown of lines ?? []) expect(complaints(line(shown)), shown).toEqual([]);
      if (advice.includes("of other products")) continue;
      for (const number of (lines ?? []).flatMap(numbersOf)) {
        expect(
          numbersOf(text)
            .map((one) => one.replace(",", "."))
            .flatMap((one) => [one, one.replace(".", "")]),
        ).toContain(number);
      }
    }
  });

  it.each([
    ["Na2CO3 60 %, K2CO3 50 %", ["Na2CO3 60, K2CO3 50"]],
    ["Na2CO3 30 %, K2CO3 10 %", ["Na2CO3 30 %, K2CO3 10 %, water rest", "Na2CO3 30 %, K2CO3 10 %, inert rest"]],
    ["K2CO3 at 250,500 g/L", ["K2CO3 at 250.500 g/L"]],
    // by hand: 1 part of crystals in 6, of 286.14 g of which 105.99 g are the salt, is 6.173 %
    ["Na2CO3·10H2O at 1 to 5", ["Na2CO3 16.67 %, water rest", "Na2CO3 6.173 %, water rest"]],
    ["sodium carbonate decahydrate at 20 %", ["Na2CO3 20 %, water rest", "Na2CO3 7.408 %, water rest"]],
    // 138.205 g of the salt in 165.23 g
    ["K2CO3·1.5H2O at 20 %", ["K2CO3 20 %, water rest", "K2CO3 16.73 %, water rest"]],
    ["K2CO3.1.5H2O 6, Na2CO3 4", ["Na2CO3 35.8 %, K2CO3 53.7 %, water rest", "Na2CO3 40 %, K2CO3 50.19 %, water rest"]],
    ["K2CO3 1,200 to 1 g", ["K2CO3", "Na2CO3 60 %, K2CO3 40 %", "K2CO3 6, Na2CO3 4 at 30 °Bé"]],
    ["K2CO3 28 5 °Bé", ["K2CO3 at 5 °Bé"]],
  ])("in place of %j shows %j", (text, lines) => expect(toldOf(line(text))[0]?.lines).toEqual(lines));

  const words = ["K2CO3", "sodium carbonate", "NaOH", "harbour powder"];
  const units = ["°Bé", "% w/v", "g/L", "mol/L", "mol/kg", "g/mL", "%, water rest"];

  it("reads a comma as a point, in whatever order the words stand, or asks which is meant", () => {
    const [whole, decimals] = [fc.nat(40).map(String), fc.stringMatching(/^\d{1,4}$/u)];
    always(60, [fc.constantFrom(...words), fc.constantFrom(...units), whole, decimals, fc.nat(2)], (...parts) => {
      const [salt, unit, before, behind, order] = parts;
      const read = (mark: string) => {
        const strength = `${before}${mark}${behind} ${unit}`;
        const outcome = line([`${salt} ${strength}`, `${strength} ${salt}`, `${salt} at ${strength}`][order] ?? "");
        return outcome.ok ? outcome.value.composition : codesOf(outcome);
      };
      const doubtful = behind.length === 3 && before !== "0";
      expect(read(",")).toEqual(doubtful ? ["product.unclear"] : read("."));
    });
  });

  it("passes over no number that stands in a line", () => {
    const right = [
      "K2CO3 at 20 %",
      "30 °Bé NaOH",
      "K2CO3 6, Na2CO3 4 at 30 °Bé",
      "Na2CO3 60 %, K2CO3 40 %",
      "NaOH 200 g/L",
    ];
    const extra = fc.constantFrom("7", "7,", "7;", "(7)", "7:", "7/", "7 to", "7 %", "7 g", "7-", "0.7");
    always(60, [fc.constantFrom(...right), extra, fc.nat(8)], (text, more, at) => {
      const blanks = text.split(" ");
      expect(line(text).ok).toBe(true);
      expect(line([...blanks.slice(0, at), more, ...blanks.slice(at)].join(" ")).ok).toBe(false);
    });
  });

  it.each([
    ["potassium carbonate 20 %, water rest", "K2CO3 20 %, water rest"],
    ["20 % potassium carbonate, rest water", "K2CO3 20 %, water rest"],
    ["Na2CO3 20 g/L", "Na2CO3 at 20 g/L"],
    ["20 g/100 ml K2CO3", "K2CO3 at 20 % w/v"],
    ["30 °Bé K2CO3", "K2CO3 at 30 °Bé"],
    ["K2CO3 30 Baumé", "K2CO3 at 30 °Bé"],
    ["1.2 mol/L Na2CO3 solution", "Na2CO3 at 1.2 mol/L"],
    ["K2CO3 Na2CO3 9:1", "K2CO3 9, Na2CO3 1"],
    ["K2CO3:Na2CO3 6:4, 30 °Bé", "K2CO3 6, Na2CO3 4 at 30 °Bé"],
    ["60/40 potassium carbonate / sodium carbonate", "K2CO3 60 %, Na2CO3 40 %"],
    ["60% K2CO3 40% Na2CO3", "K2CO3 60 %, Na2CO3 40 %"],
    ["E 501(i) 60 %, E 500(i) 40 %", "K2CO3 60 %, Na2CO3 40 %"],
  ])("reads %j as %j", (text, plain) =>
    expect(answered(line(text)).composition).toEqual(answered(line(plain)).composition),
  );

  it("says at which temperature a strength by volume or by Baumé is taken", () => {
    const notes = (text: string) => {
      const outcome = line(text);
      return (outcome.ok ? outcome.notes : []).map(told).filter((said) => said.includes("°C"));
    };
    expect(notes("Na2CO3 20 g/L")).toContain(
      "the strength is taken as measured at 20 °C, the usual temperature of laboratory tables",
    );
    expect(notes("K2CO3 30 °Bé").join()).toContain("30 °Bé is taken as read at 15.6 °C");
    expect(notes("K2CO3 20 %, water rest")).toEqual([]);
  });

  // The solubility table of sodium carbonate, with its source, has 21.8 g in 100 g of water at 20 °C: 17.9 % by mass.
  it.each([
    ["Na2CO3 45 %, water rest", true],
    ["Na2CO3 at 25 %", true],
    ["Na2CO3 17 %, water rest", false],
    ["K2CO3 at 50 %", false],
    ["Na2CO3.10H2O", false],
    ["Na2CO3.10H2O 60 %, K2CO3 40 %", false],
  ])("says of %j whether there is more salt in it than dissolves: %j", (text, told) => {
    const outcome = line(text);
    const loud = (outcome.ok ? outcome.notes : []).filter(({ code }) => code === "strength.undissolved");
    expect([outcome.ok, loud.length > 0]).toEqual([true, told]);
  });

  it.each([
    [{ solution: { salts: { Na2CO3: 1 }, strength: "25 %" } }, true],
    [{ composition: { Na2CO3: "25 %", water: "rest" } }, true],
    [{ solution: { salts: { Na2CO3: 1 }, strength: "17 %" } }, false],
    [{ composition: { Na2CO3: "37 %", water: "63 %" } }, false],
    [{ composition: { Na2CO3: "58.8 %", K2CO3: "39.2 %", water: "rest" } }, false],
  ])("says the same of the figures %j of a spec: %j", (figures, told) => {
    const data = {
      name: "test",
      flours: [{ name: "bread flour", amount: "100 %" }],
      water: { added: "36 %" },
      alkali: [{ name: "our bottle", amount: "2 %", figures }],
    };
    const loud = answered(readNoodleData(data)).notes.filter((note) => note.loud);
    expect(JSON.stringify(loud).includes("strength.undissolved")).toBe(told);
  });

  it.each([
    ["sodum carbonate", 'did you mean "sodium carbonate" or "sodium bicarbonate"? no guess is made for an alkali'],
    ["harbor powder", 'did you mean "harbour powder"'],
    ["kansui", "the label or the supplier must tell"],
    ["xyzzy", "look it up in the catalogue"],
  ])("of products near %j tells those of the kitchen's own, and guesses no alkali", (text, advice) => {
    expect(toldOf(line(text))[0]?.advice).toContain(advice);
  });
});
