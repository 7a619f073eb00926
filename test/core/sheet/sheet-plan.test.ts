import { describe, expect, it, test } from "vitest";
import { planBatch } from "#core/batch/batch.ts";
import { formulaOf } from "#core/formula/formula.ts";
import { planSheet } from "#core/sheet/sheet-plan.ts";
import { noteCodesOf } from "../formula/worked-out.ts";
import { answered } from "../told-of.ts";

/** 2 mm strands, rolls of 200 mm. */
const input = {
  name: "Harbour school noodle",
  flours: [{ name: "bread flour", amount: "100 %" }],
  water: { added: "35 %" },
  batch: { bowls: 20, rawWeight: "100 g" },
  losses: { mixing: "3 %", sheeting: "2 %", cutting: "1 %" },
  machines: { rolls: { width: "200 mm", gap: { least: "0.4 mm", greatest: "10 mm" }, cutters: [{ size: "2 mm" }] } },
  sheet: { machine: "rolls", thickness: "1.5 mm", cutter: "2 mm", start: "6 mm", density: "1.25 g/mL" },
};

/** The sheet of so many bowls of 100 g, with edges of 10 mm. */
function sheetOf(bowls: number, edgeTrim = "10 mm") {
  const batch = { bowls, rawWeight: "100 g" };
  const { spec, formula } = answered(formulaOf({ ...input, batch, sheet: { ...input.sheet, edgeTrim } }));
  const outcome = planSheet(spec, formula, answered(planBatch(spec, formula)));
  const notes = outcome.ok ? outcome.notes : [];
  return { plan: answered(outcome), note: notes.find(({ code }) => code === "sheet.portions-short")?.facts };
}

test("without a cutter the passes and the sheets stay as they are, and a note says what needs one", () => {
  const { cutter: _cutter, ...uncut } = input.sheet;
  const read = (sheet: object) => {
    const { spec, formula } = answered(formulaOf({ ...input, sheet }));
    const outcome = planSheet(spec, formula, answered(planBatch(spec, formula)));
    return { plan: answered(outcome), told: noteCodesOf(outcome) };
  };
  const [cut, whole] = [read(input.sheet), read(uncut)];
  expect(whole.plan.strands).toBeUndefined();
  expect([whole.plan.schedule, whole.plan.sheets]).toEqual([cut.plan.schedule, cut.plan.sheets]);
  expect([cut, whole].map(({ told }) => told.includes("sheet.no-cutter"))).toEqual([false, true]);
});

test("the length of the strands is told where nobody states it", () => {
  const { cutters: _cutters, ...rolls } = input.machines.rolls;
  const read = (more: object) => {
    const { spec, formula } = answered(formulaOf({ ...input, ...more }));
    return planSheet(spec, formula, answered(planBatch(spec, formula)));
  };
  expect(noteCodesOf(read({ machines: { rolls } }))).toContain("sheet.strand-length");
  expect(noteCodesOf(read({ sheet: { ...input.sheet, strandLength: "250 mm" } }))).not.toContain("sheet.strand-length");
});

/**
 * By hand: 20 bowls are 2000 / (0.97 × 0.98 × 0.99) = 2125.186 g of dough, 2061.431 g after the mixer. 90 strands of 2 mm out of
 * 200 mm leave 1855.288 g at the cutter: 18 portions, so that 261.431 g or 12.682 % do not get into one. The batch counts on
 * 1 − 0.98 × 0.99 = 2.98 %.
 */
describe("sheets that give fewer portions than the batch counts on", () => {
  it("are told with what they lose and what the batch counts on, in % of the dough at the rolls", () => {
    const { plan, note } = sheetOf(20);
    expect([plan.strands?.portions.value, plan.strands?.wanted?.spare.value]).toEqual(["18", "-2"]);
    expect(note).toEqual({ fewer: "2", wanted: "20", lost: "12.7", counted: "3.0" });
  });

  it("are not told where the portions are exactly those wanted", () => {
    // all 100 strands, and 2 % and 1 % more dough at the rolls than the portions hold
    const { plan, note } = sheetOf(20, "0 mm");
    expect(plan.strands?.wanted?.spare.value).toBe("0");
    expect(note).toBeUndefined();
  });
});
