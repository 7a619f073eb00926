import { type Figure, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { type Outcome, refuse } from "../../figure/problem.ts";
import { commonPractice, massBalance } from "../../figure/source.ts";
import type { DecimalText } from "../../number/decimal.ts";
import { asked, askedOr, outsideLimits, type Usual } from "../inputs.ts";

/**
 * Finds the dusting starch for sheets, g.
 *
 * @param sheets - mass of the sheets, g
 * @param share - % of their mass, 0 to 20; 0 where it is left out. 1 to 3 % is common practice, no source.
 * Problems: `sheet.out-of-range`.
 *
 * @example shown(dustingStarch("10000", "2").value) // => "200 g"
 */
export function dustingStarch(sheets: DecimalText, share?: DecimalText): Outcome<Published<Figure>> {
  const problems = outsideLimits([
    { path: ["sheets"], value: sheets, unit: "g", above: "0" },
    { path: ["share"], value: share, unit: "%", least: "0", most: "20" },
  ]);
  if (problems.length > 0) return refuse(...problems);
  const from = {
    sheets: asked({ id: "dusting.sheets", label: "sheets", unit: "g", places: 0 }, sheets),
    share: askedOr({ id: "dusting.share", label: "dusting", unit: "% of the sheet", places: 1 }, share, usual),
  };
  const naming = { id: "dusting.starch", label: "dusting starch", unit: "g", places: 0 };
  return publish(worked(naming, "sheets * share / 100", from, massBalance));
}

const usual: Usual = {
  value: "0",
  source: {
    ...commonPractice,
    cite: "none until the kitchen has weighed its own; 1 to 3 % is common practice, no source",
  },
};
