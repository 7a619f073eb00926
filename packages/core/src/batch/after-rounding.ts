import { type Figure, worked } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import { dec } from "../number/decimal.ts";
import { asWeighed, type Delivered } from "./as-weighed.ts";

/** What a load as weighed comes to, beside what the formula asks for. */
export interface AfterRounding {
  readonly id: string;
  readonly label: string;
  readonly asked: Figure;
  readonly weighed: Figure;
  /** In the unit of both. */
  readonly difference: Figure;
  /** The same in % of what is asked. */
  readonly change: Figure;
}

/**
 * The change that weighing makes to the water, to each salt, and to what the salts come to: worked out by the formulas of
 * the formula itself, from what a load really gets.
 */
export function afterRounding(formula: Formula, delivered: readonly Delivered[]): readonly AfterRounding[] {
  const weighed = asWeighed(formula, delivered);
  const { alkali, lines, water } = formula;
  const share = alkali?.potassiumShare;
  const mixed = share !== undefined && ![0, 100].some((all) => dec(share.value).eq(all));
  const several = lines.filter(({ role }) => role === "alkali").length > 1;
  const rows = [
    ["water", "added water", water.added],
    ...lines.filter(isSalt).map(({ id, name, parts }) => [id, name, parts] as const),
    ...(several ? ([["alkali", "anhydrous alkaline salts", alkali?.anhydrous]] as const) : []),
    ["alkalinity-m", "alkalinity M", alkali?.alkalinityM],
    ...(mixed ? ([["potassium-share", "potassium carbonate", share]] as const) : []),
  ] as const;
  return rows.flatMap(([id, label, asked]) => {
    if (asked === undefined || dec(asked.value).isZero()) return [];
    const real = weighed(asked);
    return real === undefined ? [] : [compare(id, label, asked, real)];
  });
}

function isSalt({ material, role }: FormulaLine): boolean {
  return role === "alkali" || role === "salt" || material.kind === "salt";
}

function compare(id: string, label: string, asked: Figure, weighed: Figure): AfterRounding {
  const { unit } = asked;
  const from = { weighed, asked };
  const [own, text] = [`rounding.${id}`, `change of ${label} by rounding`];
  const places = unit === "% of flour" ? 3 : asked.places;
  const difference = worked({ id: own, label: text, unit, places }, "weighed - asked", from, definition);
  const ofAsked = { id: `${own}.percent`, label: text, unit: "%", places: 1 };
  const change = worked(ofAsked, "100 * (weighed - asked) / asked", from, definition);
  return { id, label, asked, weighed, difference, change };
}
