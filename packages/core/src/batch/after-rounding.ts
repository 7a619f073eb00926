import { type Figure, worked } from "../figure/figure.ts";
import { scoped } from "../figure/graph.ts";
import { definition, massBalance } from "../figure/source.ts";
import { sumAlkali } from "../formula/alkali.ts";
import type { Formula } from "../formula/formula.ts";
import { type FormulaLine, moistureFigure } from "../formula/lines.ts";
import { dec } from "../number/decimal.ts";

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

/** One ingredient and what a load really gets of it, g. */
export interface Delivered {
  readonly line: FormulaLine;
  readonly load: Figure;
}

/**
 * The change that weighing makes to the water, to each salt, and to what the salts come to: worked out by the formulas of
 * the formula itself, from what a load really gets.
 *
 * @returns the comparison, and every figure that it rests on
 */
export function afterRounding(
  formula: Formula,
  delivered: readonly Delivered[],
): { readonly compared: readonly AfterRounding[]; readonly figures: readonly Figure[] } {
  const flour = delivered.filter(({ line }) => line.role === "flour").map(({ load }) => load);
  const weighed = delivered.map(({ line, load }): FormulaLine => {
    const naming = { id: `${line.id}.weighed-parts`, label: line.name, unit: "% of flour", places: line.parts.places };
    const from = { load, flour };
    const parts = worked({ ...naming, formula: "100 * load / sum(flour)", from, sources: [massBalance] });
    return { ...line, parts };
  });
  const others = weighed.filter(({ role }) => role !== "flour");
  const alkali = sumAlkali(weighed);
  const made = alkali === undefined ? [] : scoped("weighed", alkali.figures);
  const asWeighed = (asked: Figure): Figure | undefined => made.find(({ id }) => id === `weighed.${asked.id}`);
  const water = worked({
    id: "weighed.water.added",
    label: "added water as weighed",
    unit: "% of flour",
    places: 2,
    formula: "sum(parts * moisture) / 100",
    from: { parts: others.map(({ parts }) => parts), moisture: others.map(moistureFigure) },
    sources: [massBalance],
  });
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
    const real = asked && asWeighed(asked);
    return asked === undefined || real === undefined ? [] : [compare(id, label, asked, real)];
  });
  const compared = [compare("water", "added water", formula.water.added, water), ...salts, ...sums].filter(
    ({ asked }) => !dec(asked.value).isZero(),
  );
  const own = compared.flatMap(({ difference, change }) => [difference, change]);
  return { compared, figures: [water, ...made, ...own] };
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
