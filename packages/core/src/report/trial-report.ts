import type { Trial } from "../explore/water-trial.ts";
import { withOrigins } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Report } from "./schema.ts";
import { figureCell, inSystem, type UnitSystem, words } from "./show.ts";

/** Tells a trial of the water: what to weigh for each dough, what to look at, and a line to write the result on. */
export function trialReport(
  formula: Formula,
  { doughs, look }: Trial,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const columns = [
    wordColumn("ingredient", "ingredient"),
    ...doughs.map((_, index) =>
      numberColumn(`dough-${index + 1}`, `dough ${index + 1}, ${units === "us" ? "oz" : "g"}`),
    ),
  ];
  const poured = row([words("water, % of flour"), ...doughs.map(({ water }) => figureCell(water))], "aside");
  const masses = (doughs[0]?.masses ?? []).map(({ label }, index) =>
    row([
      words(label),
      ...doughs.map(({ masses: all }) => {
        const mass = all[index];
        return mass === undefined ? words("") : figureCell(inSystem(mass, units));
      }),
    ]),
  );
  const figures = doughs.flatMap(({ water, masses: all }) => [water, ...all]);
  return report({
    command: "trial",
    title: `${formula.name}, a trial of the water`,
    main: "trial",
    sections: [
      section("trial", "Three doughs", table("trial", columns, [...masses, poured])),
      section("look", "What to look at", { kind: "text", lines: look.map((line, index) => `${index + 1}. ${line}.`) }),
    ],
    figures: withOrigins(figures),
    notes,
    cautions: formulaCautions(formula),
  });
}
