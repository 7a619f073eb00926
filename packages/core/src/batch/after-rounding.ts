import { type Figure, worked } from "../figure/figure.ts";
import { scoped, withOrigins } from "../figure/graph.ts";
import { definition } from "../figure/source.ts";
import { sumAlkali } from "../formula/alkali.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import { dec } from "../number/decimal.ts";
import { type Delivered, linesAsWeighed, waterOfLines } from "./as-weighed.ts";

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
  const weighed = linesAsWeighed(delivered);
  const water = waterOfLines(weighed);
  const alkali = sumAlkali(weighed);
  const loads = new Set(
    withOrigins(
      delivered.map(({ load }) => load),
      formula.graph,
    ).map(({ id }) => id),
  );
  const reached = withOrigins([water.added, ...(alkali?.figures ?? [])], formula.graph);
  const made = scoped(
    "weighed",
    reached.filter(({ id, working }) => working.kind === "formula" && !loads.has(id)),
  );
  const asWeighedOf = (asked: Figure): Figure | undefined => made.find(({ id }) => id === `weighed.${asked.id}`);
  const salts = formula.lines.flatMap((line) => {
    const real = weighed.find(({ id }) => id === line.id);
    return isSalt(line) && real !== undefined ? [compare(line.id, line.name, line.parts, real.parts)] : [];
  });
  const share = formula.alkali?.potassiumShare;
  const mixed = share !== undefined && ![0, 100].some((all) => dec(share.value).eq(all));
  const several = formula.lines.filter(({ role }) => role === "alkali").length > 1;
  const sums = [
    ...(several ? ([["alkali", "anhydrous alkaline salts", formula.alkali?.anhydrous]] as const) : []),
    ["alkalinity-m", "alkalinity M", formula.alkali?.alkalinityM] as const,
    ...(mixed ? ([["potassium-share", "potassium carbonate", share]] as const) : []),
  ].flatMap(([id, label, asked]) => {
    const real = asked && asWeighedOf(asked);
    return asked === undefined || real === undefined ? [] : [compare(id, label, asked, real)];
  });
  const added = asWeighedOf(formula.water.added) ?? water.added;
  return [compare("water", "added water", formula.water.added, added), ...salts, ...sums].filter(
    ({ asked }) => !dec(asked.value).isZero(),
  );
}

function isSalt({ material, role }: FormulaLine): boolean {
  return role === "alkali" || role === "salt" || material.kind === "salt";
}

function compare(id: string, label: string, asked: Figure, weighed: Figure): AfterRounding {
  const naming = { id: `rounding.${id}`, label: `change of ${label} by rounding`, unit: asked.unit };
  const from = { weighed, asked };
  const sources = [definition];
  const places = asked.unit === "% of flour" ? 3 : asked.places;
  const difference = worked({ ...naming, places, formula: "weighed - asked", from, sources });
  const ofAsked = { ...naming, id: `${naming.id}.percent`, unit: "%", places: 1 };
  const change = dec(asked.value).isZero()
    ? worked({ ...ofAsked, formula: "0 * weighed", from: { weighed }, sources })
    : worked({ ...ofAsked, formula: "100 * (weighed - asked) / asked", from, sources });
  return { id, label, asked, weighed, difference, change };
}
