import { describe, expect, it } from "vitest";
import { dec } from "#core/number/decimal.ts";
import type { Written } from "../formula/worked-out.ts";
import { listed } from "../formula/worked-out.ts";
import { plan, planned } from "./planned.ts";

/** The ends of what a spec may say: nothing may loop, overflow or lose a digit there. */
const extremes: readonly (readonly [what: string, written: Partial<Written>])[] = [
  ["the heaviest batch on the finest scale", { batch: { dough: "1000 tonne" }, scales: [{ division: "0.001 mg" }] }],
  [
    "two scales a billion apart",
    {
      batch: { dough: "900 tonne" },
      scales: [{ division: "1 tonne" }, { division: "0.001 mg", capacity: "10 tonne" }],
    },
  ],
  ["a million bowls", { batch: { bowls: 1_000_000, rawWeight: "0.9 kg" }, mixer: { largest: "1 g" } }],
  [
    "the greatest losses",
    { batch: { bowls: 1, rawWeight: "130 g" }, losses: { mixing: "90 %", sheeting: "90 %", cutting: "90 %" } },
  ],
  ["a scale coarser than the whole batch", { batch: { dough: "10 kg" }, scales: [{ division: "15 kg" }] }],
  [
    "one flour of forty that weighs nothing",
    {
      flours: listed({ "bread flour": "0 %", "cake flour": "rest" }),
      batch: { flour: "1 kg" },
    },
  ],
];

describe("extremes", () => {
  it.each(extremes)("%s", (_, written) => {
    const outcome = plan(written);
    const text = JSON.stringify(outcome);
    expect(JSON.parse(text)).toEqual(outcome);
    expect(text).not.toMatch(/NaN|Infinity|"-?[\d.]+e[+-]?\d+"|null/u);
    if (!outcome.ok) return;
    const { lines, loadTotal } = outcome.value;
    const total = lines.reduce((sum, { load }) => sum.plus(load.value), dec(0));
    expect(total.eq(loadTotal.value)).toBe(true);
  });

  it("keep thousands of tonnes exact to a microgram", () => {
    const { lines } = planned({ batch: { flour: "700 tonne" }, scales: [{ division: "0.001 mg" }] });
    expect(lines.map(({ load }) => load.value)).toEqual(["700000000", "252000000", "7000000"]);
  });
});
