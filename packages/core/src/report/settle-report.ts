import type { FoundAmount } from "../explore/settle-places.ts";
import type { WantedCheck } from "../explore/wanted-checks.ts";
import { measureText } from "../figure/in-system.ts";
import { pathText } from "../figure/problem.ts";
import { reachedTexts } from "../figure/problems/explore.ts";
import type { Formula } from "../formula/formula.ts";
import { listing, numberColumn, report, section, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import type { Report, Telling } from "./schema.ts";

const fewest =
  "In the fewest digits that give the formula and all that is wanted as shown, and weights that no scale here tells apart.";
const none = "The spec leaves nothing to be found: it states every amount.";
const rule =
  "Amounts are found by the exact value, or the middle of a range. What is stated meets a value as it is shown, give or take the share that weights may be off (`weighingTolerance`, 1 % unless stated) or the ± written behind it; the protein of a blend, the `within` of it. Flours are found as near to a protein value as their steps come.";
const missed = "What is not met rests on amounts that the spec states: `find` in place of one leaves room for it.";

function dearestText({ label, dearest }: WantedCheck): readonly string[] {
  return dearest === undefined ? [] : [`Of ${label}, ${dearest.name} makes ${dearest.cost}.`];
}

/** Tells the amounts that were found, and how far what is wanted is met. */
export function settleReport(
  formula: Formula,
  { rounded, checks }: { readonly rounded: readonly FoundAmount[]; readonly checks: readonly WantedCheck[] },
  { notes, units = "metric" }: Telling,
): Report {
  const told = (check: WantedCheck) => reachedTexts(check, (one) => measureText(one, units));
  const amounts = listing("found", rounded, [
    [wordColumn("what", "what"), ({ name }) => name],
    [numberColumn("amount", "amount"), ({ text }) => text],
    [wordColumn("place", "place in the spec"), ({ path }) => pathText(path)],
  ]);
  const wanted = listing("wanted", checks, [
    [wordColumn("what", "what"), ({ label }) => label],
    [numberColumn("reached", "reached"), (check) => told(check).reached],
    [wordColumn("wanted", "wanted"), (check) => told(check).wanted],
    [wordColumn("met", "met"), ({ holds }) => (holds ? "yes" : "no")],
  ]);
  const lines = [rule, ...(checks.every(({ holds }) => holds) ? [] : [missed]), ...checks.flatMap(dearestText)];
  return report({
    command: "settle",
    title: formula.name,
    main: rounded.length === 0 && checks.length > 0 ? "wanted" : "found",
    sections: [
      section("found", "Amounts found", amounts, [rounded.length === 0 ? none : fewest]),
      section("wanted", "What is wanted", wanted, checks.length === 0 ? [] : lines),
    ],
    figures: Object.values(formula.graph),
    from: [formula],
    units,
    notes,
    cautions: formulaCautions(formula),
  });
}
