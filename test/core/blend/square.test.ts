import { searchBlend, squareRule } from "@noodlewright/core/explore";
import fc from "fast-check";
import { expect, test } from "vitest";
import { asIs, at14, soft, strong } from "../explore/kitchen.ts";
import { answered } from "../told-of.ts";

test("the square rule and the search in fine steps agree on two flours, at a basis and as is", () => {
  const tenths = (low: number, high: number) =>
    fc.integer({ min: low * 10, max: high * 10 }).map((n) => (n / 10).toFixed(1));
  const property = fc.property(
    tenths(6, 9),
    tenths(12, 15),
    tenths(10, 16),
    tenths(8, 14),
    tenths(10, 11),
    fc.boolean(),
    (low, high, wet, dry, target, based) => {
      const one = { name: "low", protein: low, moisture: wet };
      const other = { name: "high", protein: high, moisture: dry };
      const basis = based ? at14 : asIs;
      const square = answered(squareRule({ one, other, target, basis }));
      const answer = answered(
        searchBlend({
          flours: [one, other],
          step: "0.1",
          prefer: { kind: "most", flour: "low" },
          targets: { protein: { least: target, basis } },
        }),
      );
      const least =
        answer.kind === "found" ? answer.blends[0]?.shares.find(({ name }) => name === "high")?.share.value : undefined;
      // the search takes the first step that is not short of the square
      expect(Number(least)).toBeCloseTo(Math.ceil(Number(square.other.value) * 10 - 1e-9) / 10, 9);
      expect(Number(square.one.value) + Number(square.other.value)).toBeCloseTo(100, 20);
    },
  );
  fc.assert(property, { numRuns: 100, seed: 3 });
});

test("the working shows the parts: each flour takes what the other is away from the target", () => {
  const answer = answered(squareRule({ one: soft, other: strong, target: "10.5", basis: asIs }));
  const parts = answer.working.filter(({ unit }) => unit === "parts").map((figure) => Number(figure.value));
  expect(parts).toEqual([2.1, 2.2].map((part) => expect.closeTo(part, 12)));
});
