import {
  type CutPlan,
  type CutRequest,
  type CutterSize,
  cutPlan,
  givenDensity,
  loadsFor,
} from "@noodlewright/core/sheet";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exact } from "#core/figure/figure.ts";
import { always } from "../../../always.ts";
import { answered, codesOf } from "../../told-of.ts";

const school: CutRequest = {
  dough: "10000",
  density: givenDensity("1.24"),
  thickness: "1.5",
  width: "300",
  cutter: { kind: "number", number: 20 },
  portion: "130",
  losses: "1",
  edgeTrim: "5",
  endTrim: "50",
  longestSheet: "6000",
};

function parts({ account: { losses, edgeTrim, endTrim, strands, leftover } }: CutPlan) {
  return [losses, edgeTrim, endTrim, strands, leftover].map(exact);
}

const places = (min: number, max: number, digits: number) =>
  fc
    .integer({ min: min * 10 ** digits, max: max * 10 ** digits })
    .map((value) => (value / 10 ** digits).toFixed(digits));
const cutter: fc.Arbitrary<CutterSize> = fc.oneof(
  fc.integer({ min: 4, max: 30 }).map((number): CutterSize => ({ kind: "number", number })),
  places(1, 9, 2).map((width): CutterSize => ({ kind: "width", width })),
);
const wished: fc.Arbitrary<Pick<CutRequest, "portion" | "strandLength">> = fc.oneof(
  fc.record({ portion: places(50, 300, 1) }),
  fc.record({ strandLength: places(100, 600, 0) }),
  fc.record({ portion: places(50, 300, 3), strandLength: places(100, 600, 0) }),
);

describe("sheet and strands of a load", () => {
  it("accounts for every gram exactly", () => {
    let planned = 0;
    always(
      300,
      [
        fc.record({
          dough: places(500, 20000, 4),
          density: places(1, 1.4, 3).map(givenDensity),
          thickness: places(1, 4, 2),
          width: places(120, 500, 0),
          losses: places(0, 5, 2),
          edgeTrim: places(0, 20, 1),
          endTrim: places(0, 80, 0),
          longestSheet: places(800, 9000, 0),
        }),
        cutter,
        wished,
      ],
      (base, size, wish) => {
        const outcome = cutPlan({ ...base, ...wish, cutter: size });
        if (!outcome.ok) return;
        planned += 1;
        const plan = outcome.value;
        const total = parts(plan).reduce((sum, part) => sum.plus(part));
        expect(total.toString()).toBe(exact(plan.account.dough).toString());
        for (const part of parts(plan)) expect(part.gte(0)).toBe(true);
        expect(exact(plan.sheetLength).lte(base.longestSheet)).toBe(true);
      },
    );
    expect(planned).toBeGreaterThan(150);
  });

  it("works out the school's load", () => {
    const plan = answered(cutPlan(school));
    // 290 mm by 1.5 mm; 1.24 × 1.5 × 1.5; 9900 g by 1.24 × 300 × 1.5 in 3 sheets; 130 g by 193 × 2.79 g/m.
    expect(plan.strandsAcross.value).toBe("193");
    expect(plan.massPerMetre.value).toBe("2.79");
    expect(plan.sheetsPerLoad.value).toBe("3");
    expect(Number(plan.sheetLength.value)).toBeCloseTo(5913.978, 3);
    expect(Number(plan.sheetMass.value)).toBe(3300);
    // 9900 g × (300 - 193 × 1.5) / 300, then 9553.5 g × 100 / 5913.978.
    expect(plan.account.edgeTrim.value).toBe("346.5");
    expect(Number(plan.account.endTrim.value)).toBeCloseTo(161.541, 3);
    expect(Number(plan.cutLength.value)).toBeCloseTo(241.425, 3);
    expect([plan.portionsPerSheet.value, plan.portionsPerLoad.value]).toEqual(["24", "72"]);
    expect(answered(loadsFor("320", plan.portionsPerLoad.value)).value).toBe("5");
  });

  it("weighs portions off strands of a given length", () => {
    const plan = answered(
      cutPlan({ ...school, dough: "500", width: "140", portion: "130", strandLength: "300", longestSheet: "9000" }),
    );
    expect(plan.cutLength.value).toBe("300");
    expect(Number(plan.strandsPerPortion.value)).toBeCloseTo(130 / (2.79 * 0.3), 9);
  });

  it("makes one cut across the sheet a portion where only the length is given", () => {
    const { portion: _, ...rest } = school;
    const plan = answered(cutPlan({ ...rest, strandLength: "250" }));
    expect(Number(plan.portion.value)).toBeCloseTo(193 * 2.79 * 0.25, 5);
  });

  it("has whole strands exactly where a number divides the width", () => {
    const plan = answered(cutPlan({ ...school, cutter: { kind: "number", number: 14 }, edgeTrim: "0" }));
    expect([plan.strandsAcross.value, plan.account.edgeTrim.value]).toEqual(["140", "0"]);
  });

  it("cuts no wider than the cutter works", () => {
    expect(answered(cutPlan({ ...school, workingWidth: "150" })).strandsAcross.value).toBe("100");
  });

  it("refuses a sheet too short for one cut", () => {
    expect(codesOf(cutPlan({ ...school, longestSheet: "150" }))).toEqual(["geometry.too-short"]);
  });
});
