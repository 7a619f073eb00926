import type { FoundAmount } from "../explore/settle-places.ts";
import type { WantedCheck } from "../explore/wanted-checks.ts";
import { type Note, pathText } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Report } from "./schema.ts";
import { words } from "./show.ts";

const fewest = "Rounded to the fewest digits at which all that is wanted reads the same.";

/** Tells the amounts that were found, and how far what is wanted is met. */
export function settleReport(
  formula: Formula,
  { rounded, checks }: { readonly rounded: readonly FoundAmount[]; readonly checks: readonly WantedCheck[] },
  notes: readonly Note[],
): Report {
  return report({
    command: "settle",
    title: formula.name,
    main: "found",
    sections: [
      section(
        "found",
        "Amounts found",
        table(
          "found",
          [wordColumn("what", "what"), numberColumn("amount", "amount"), wordColumn("place", "place in the spec")],
          rounded.map(({ name, text, path }) => row([words(name), words(text), words(pathText(path))])),
        ),
        { kind: "text", lines: [rounded.length === 0 ? "The spec leaves nothing to be found." : fewest] },
      ),
      section(
        "wanted",
        "What is wanted",
        table(
          "wanted",
          [
            wordColumn("what", "what"),
            numberColumn("reached", "reached"),
            wordColumn("wanted", "wanted"),
            wordColumn("met", "met"),
          ],
          checks.map(({ label, reached, wanted, holds }) =>
            row([words(label), words(reached), words(wanted), words(holds ? "yes" : "no")]),
          ),
        ),
      ),
    ],
    figures: Object.values(formula.graph),
    from: [formula],
    notes,
    cautions: formulaCautions(formula),
  });
}
