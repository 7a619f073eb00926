import { bench, describe } from "vitest";
import type { BlendQuestion, Candidate, Preference } from "#core/blend/blend-question.ts";
import { searchBlend } from "#core/blend/blend-search.ts";
import { Independent, restate } from "../core/explore/independent.ts";

/** Eight flours in steps of half a per cent, beside the independent solver in the same run. */
const rows: readonly (readonly [string, string, string, string, string])[] = [
  ["strong", "12.60", "14.50", "0.50", "1.10"],
  ["medium", "9.70", "14.00", "0.50", "0.95"],
  ["soft", "8.30", "14.00", "0.40", "0.90"],
  ["wholegrain", "12.80", "14.50", "1.60", "1.30"],
  ["barley", "10.50", "12.11", "1.28", "1.20"],
  ["rye", "8.50", "13.50", "0.60", "1.05"],
  ["starch", "0.10", "14.20", "0.20", "1.60"],
  ["gluten", "72.00", "6.50", "1.20", "4.00"],
];
const flours: readonly Candidate[] = rows.map(([name, protein, moisture, ash, price]) => ({
  name,
  protein,
  moisture,
  ash,
  price,
}));
const basis = { kind: "at" as const, moisture: "14" };
const preferences: readonly Preference[] = [
  { kind: "cheapest" },
  { kind: "fewest" },
  { kind: "most", flour: "strong" },
  {
    kind: "nearest",
    to: [
      { name: "strong", share: "60" },
      { name: "soft", share: "30" },
      { name: "barley", share: "10" },
    ],
  },
];
const solver = await Independent.load();

for (const prefer of preferences) {
  const question: BlendQuestion = {
    flours,
    step: "0.5",
    prefer,
    targets: { protein: { least: "11.5", most: "11.6", basis }, ash: { most: "0.55", basis } },
  };
  describe(`eight flours, steps of 0.5 %, ${prefer.kind}`, () => {
    bench("blend search with its tie order and figures", () => {
      searchBlend(question);
    });
    bench("independent solver, smallest value only", () => {
      solver.solve(restate(question), question);
    });
  });
}
