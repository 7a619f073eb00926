import type { TrialWeights, WeighedTrial } from "../explore/trial-weights.ts";
import type { Trial, TrialDough } from "../explore/water-trial.ts";
import type { Figure } from "../figure/figure.ts";
import type { Formula } from "../formula/formula.ts";
import { fixedText } from "../number/decimal.ts";
import { remedySections } from "./batch-report.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Report, Table, Telling } from "./schema.ts";
import { cellOr, weightCell, words } from "./show.ts";

/** Tells a trial of the water: what to weigh for each dough, what to look at, and a line to write the result on. */
export function trialReport(
  formula: Formula,
  { trial, weights, graph }: WeighedTrial,
  { notes, units = "metric" }: Telling,
): Report {
  const { doughs, look, unknown } = trial;
  const unit = weights.doughs[0]?.[0]?.unit ?? "g";
  const columns = [
    wordColumn("ingredient", "ingredient"),
    ...doughs.map((_, index) => numberColumn(`dough-${index + 1}`, `dough ${index + 1}, ${unit}`)),
  ];
  const aside = (label: string, read: (dough: TrialDough) => Figure | undefined): Table["rows"] => {
    const cells = doughs.map(read);
    if (cells.every((figure) => figure === undefined)) return [];
    return [row([label, ...cells.map((figure) => cellOr(figure))], "aside")];
  };
  const asides = [
    ...aside("water to pour, % of flour", ({ water }) => water),
    ...aside("added water, % of flour", ({ added }) => added),
    ...aside("added water as the spec is written, %", ({ written }) => written),
    ...aside(`water ${unknown.join()} takes, % of it`, ({ absorption }) => absorption),
  ];
  const steps = look.map((line, index) => `${index + 1}. ${line}.`);
  return report({
    command: "trial",
    title: `${formula.name}, a trial of the water`,
    main: "trial",
    sections: [
      section("trial", "Three doughs", table("trial", columns, [...weighedRows(weights), ...asides])),
      ...remedySections(weights.remedies),
      section("look", "What to look at", steps),
      section("write", "What to write down", linesToWrite(trial)),
    ],
    figures: Object.values(graph),
    units,
    notes,
    cautions: formulaCautions(formula),
  });
}

/** What to weigh for each dough, as the scales show it. */
function weighedRows({ doughs }: TrialWeights): Table["rows"] {
  const first = doughs[0] ?? [];
  return first.map(({ name }, index) =>
    row([
      name,
      ...doughs.map((dough) => {
        const one = dough[index];
        return one === undefined ? words("") : weightCell(one.mass, one.unit, one.division);
      }),
    ]),
  );
}

/** What of the best dough goes into the spec; the middle one as the example. */
function linesToWrite({ doughs, unknown, plusMinus }: Trial): readonly string[] {
  const middle = doughs[1];
  if (middle === undefined) return [];
  const { added, written = added, absorption } = middle;
  const [flour] = unknown;
  const water = `The added water of the best dough goes into the spec, in place of what it says of added, tap or dough water; of dough 2: water: { added: ${fixedText(written.value, 2)} % }.`;
  if (flour !== undefined && absorption && plusMinus) {
    const ends = `${fixedText(absorption.value, 2)} %, absorptionUncertainty: ${fixedText(plusMinus.value, 1)} %`;
    return [
      water,
      `Then ${flour} has a figure of its own, half a step either way; of dough 2: figures: { absorption: ${ends} }.`,
    ];
  }
  if (unknown.length < 2) return [water];
  return [
    water,
    `This trial does not tell what each of ${unknown.join(", ")} takes: try a dough of one flour alone, and write the added water of the best one down as its absorption.`,
  ];
}
