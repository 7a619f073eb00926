import { describe, expect, it } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { card } from "#core/card/card.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { recordedTexts } from "#core/materials/recorded.ts";
import { formulaReport } from "#core/report/formula-report.ts";
import { lotsSection } from "#core/report/recorded.ts";
import type { Written } from "../formula/worked-out.ts";
import { answered, codesOf } from "../told-of.ts";

const recorded = { lotNumber: "L2214", wetGluten: "29 %", farinographAbsorption: "60.5 %", fallingNumber: "320 s" };
const house = { moisture: "13.8 %", protein: "12.4 %", ash: "0.5 %" };
const made = (figures: object, more: Partial<Written> = {}) =>
  formulaOf({
    name: "t",
    flours: [{ name: "house flour", amount: "100 %", figures: { ...house, ...figures } }],
    water: { added: "36 %" },
    ...more,
  });

describe("recorded figures of a certificate", () => {
  it("are kept with the flour, and change nothing that is worked out", () => {
    const [with_, without] = [answered(made({ recorded })), answered(made({}))];
    expect(recordedTexts(with_.formula.lines[0]?.material.recorded ?? {})).toEqual([
      ["lot", "L2214"],
      ["wet gluten", "29 %"],
      ["farinograph absorption", "60.5 %"],
      ["falling number", "320 s"],
    ]);
    expect(with_.formula.water).toEqual(without.formula.water);
    expect(with_.formula.blend).toEqual(without.formula.blend);
  });

  it("are printed with the formula and on the card, and are said to tell no water", () => {
    const { spec, formula } = answered(made({ recorded }, { batch: { dough: "5 kg" } }));
    const line = "house flour: lot L2214, wet gluten 29 %, farinograph absorption 60.5 %, falling number 320 s";
    const section = formulaReport(formula, { notes: [] }).sections.find(({ id }) => id === "recorded");
    const [block] = section?.blocks ?? [];
    expect(block?.kind === "text" && block.lines).toEqual([
      `${line}.`,
      "These are kept as the mills state them: no source turns them into the water of a noodle dough.",
    ]);
    const wishes = {
      about: "",
      date: "2026-11-25",
      files: [],
      said: "",
      loads: [],
      units: "metric",
      notes: [],
    } as const;
    expect(card(spec, formula, answered(planBatch(spec, formula)), wishes).about).toEqual([line]);
    const bare = answered(made({})).formula;
    expect(formulaReport(bare, { notes: [] }).sections.map(({ id }) => id)).not.toContain("recorded");
  });

  it("are those of one certificate: a new one replaces the old one's as a whole", () => {
    const lot = { of: "House flour", figures: { recorded: { lotNumber: "0298", fallingNumber: "5.5 min" } } };
    const { spec, formula } = answered(made({ recorded }, { lot }));
    if (spec.lot === undefined) throw new Error("no lot");
    const [table] = lotsSection(formula, spec.lot).blocks;
    expect(table?.kind === "table" && table.rows.map(({ cells }) => cells.map(({ text }) => text))).toEqual([
      ["lot", "L2214", "0298"],
      ["wet gluten", "29 %", "–"],
      ["farinograph absorption", "60.5 %", "–"],
      ["falling number", "320 s", "5.5 min"],
    ]);
    const own = { "house flour": { ...house, recorded } };
    const over = made({ recorded: { lotNumber: "0298" } }, { materials: own });
    expect(answered(over).formula.lines[0]?.material.recorded).toEqual({ lotNumber: "0298" });
  });

  it("take no lot number that a reader of numbers has shortened", () => {
    expect(codesOf(made({ recorded: { lotNumber: 298 } }))).toEqual(["spec.type"]);
    expect(codesOf(made({ recorded: { fallingNumber: "320" } }))).toEqual(["quantity.unreadable"]);
  });
});
