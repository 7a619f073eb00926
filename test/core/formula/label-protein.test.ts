import { describe, expect, it } from "vitest";
import { workedOut } from "./worked-out.ts";

const label = { protein: "4 g", serving: "30 g", rules: "US" } as const;
const mixed = (flours: Parameters<typeof workedOut>[0]["flours"]) =>
  workedOut({ flours, water: { added: "36 %" } }).formula;

describe("the protein of a flour that only a label tells", () => {
  const { blend, graph } = mixed([{ name: "shop flour", amount: "100 %", figures: { label } }]);
  const { protein, moisture } = blend;

  // by hand: 3.5 to 4.5 g in 30 g, less 5.7 / 6.25 at the low end; 12 to 15 % moisture
  it.each([
    ["as is", protein?.asIs, 10.64, 15],
    ["dry", protein?.dry, (10.64 * 100) / 88, (15 * 100) / 85],
    ["at 14 %", protein?.at14, (10.64 * 86) / 88, (15 * 86) / 85],
  ])("%s has a range that holds the moisture nobody states", (_, figure, low, high) => {
    expect(Number(figure?.range?.low)).toBeCloseTo(low, 9);
    expect(Number(figure?.range?.high)).toBeCloseTo(high, 9);
  });

  it("says of the ranges what they hold", () => {
    expect(protein?.asIs.range?.why).toContain("moisture as shown");
    expect(protein?.at14.range?.why).toContain("and moisture of those");
    expect(moisture.range).toMatchObject({ low: "12", high: "15" });
  });

  it("is the middle of what the label leaves open, and the moisture is assumed", () => {
    const working = (id: string) => graph[id]?.working;
    const by = "the middle of what 4 g per 30 g leaves open";
    expect(working("flour.1.protein")).toEqual({ kind: "given", by });
    expect(working("flour.1.moisture")).toEqual({ kind: "given", by: "assumed, since nobody states it" });
  });

  it("has no wider range at a basis where the moisture is stated", () => {
    const { protein: known } = mixed([
      { name: "shop flour", amount: "100 %", figures: { label, moisture: "13.5 %" } },
    ]).blend;
    expect(Number(known?.at14.range?.low)).toBeCloseTo((10.64 * 86) / 86.5, 9);
    expect(known?.at14.range?.why).toContain("moisture as shown");
  });
});

describe("a blend with such a flour", () => {
  const certificate = { moisture: "14.2 %", protein: "9 %", proteinUncertainty: "0.3 %" };
  const { blend } = mixed([
    { name: "shop flour", amount: "60 %", figures: { label } },
    { name: "mill flour", amount: "rest", figures: certificate },
  ]);

  it("reaches from the least to the greatest of all corners", () => {
    const corners = [10.64, 15].flatMap((shop) =>
      [8.7, 9.3].flatMap((stated) =>
        [12, 15].map((damp) => {
          const asIs = 0.6 * shop + (0.4 * stated * (100 - 14.2)) / 86;
          return (asIs * 86) / (100 - 0.6 * damp - 0.4 * 14.2);
        }),
      ),
    );
    expect(Number(blend.protein?.at14.range?.low)).toBeCloseTo(Math.min(...corners), 9);
    expect(Number(blend.protein?.at14.range?.high)).toBeCloseTo(Math.max(...corners), 9);
  });
});
