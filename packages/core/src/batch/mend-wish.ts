import { answer, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { stockField } from "../materials/fields.ts";
import { nearestNames, plainName } from "../materials/nearest.ts";
import { type Decimal, dec, fixedText } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import type { Batch } from "./batch.ts";
import { linesOf } from "./dough-size.ts";

/** What is in the bowl of one load that should not be, and what there is no more of. */
export interface MendWish {
  /** By name or by the id of its line: what is in the bowl in all, such as `3170 g`; what is not in yet is `0 g`. What is not named is in by the list. */
  readonly weighed: readonly { readonly name: string; readonly amount: string }[];
  /** Names or ids of what none can be added of. */
  readonly noMore?: readonly string[] | undefined;
}

/** More of something than ten times the list, or twice what the mixer takes, is a slip of the number or its unit, g. */
function mostOf(planned: Decimal, mixer: Spec["mixer"]): Decimal {
  const [byList, byMixer] = [planned.times(10), mixer && dec(mixer.largest.value).times(2)];
  return byMixer?.lt(byList) ? byMixer : byList;
}

/** What `--weighed` names the rework by, beside its name on the list. */
export const reworkId = "rework";

/** What is in the bowl, and what there is no more of. */
export interface ReadWish {
  /** By the identity of a line, g. */
  readonly masses: ReadonlyMap<string, string>;
  readonly short: ReadonlySet<string>;
}

/** Reads what was said of a bowl against the list of its load. */
export function readWish(
  { mixer }: Spec,
  formula: Formula,
  { lines, rework, remedies: { stock } }: Batch,
  { weighed, noMore = [] }: MendWish,
): Outcome<ReadWish> {
  if (weighed.length === 0) return refuse(problem("mend.nothing", ["weighed"], {}));
  const problems: Problem[] = [];
  const weighable = lines.map(({ line }) => line);
  const lineOf = (name: string, key: "weighed" | "noMore"): string | undefined => {
    const named = linesOf(name, formula).filter((one) => weighable.includes(one));
    const exact = named.filter((one) => plainName(one.name) === plainName(name));
    const byId = weighable.filter(({ id }) => id === name);
    const [line, ...others] = [byId, exact, named].find((found) => found.length > 0) ?? [];
    if (line !== undefined && others.length > 0)
      problems.push(problem("mend.several", [key], { name, ids: [line, ...others].map(({ id }) => id) }));
    if (line !== undefined) return line.id;
    if (rework && [reworkId, rework.name].some((one) => plainName(one) === plainName(name))) return reworkId;
    const names = [...weighable.map((one) => one.name), ...(rework ? [reworkId] : [])];
    problems.push(problem("mend.unknown", [key], { name, names, nearest: nearestNames(name, names, 1) }));
    return undefined;
  };
  const masses = new Map<string, string>();
  for (const { name, amount } of weighed) {
    const id = lineOf(name, "weighed");
    const mass = stockField("What is in the bowl", ["3170 g"]).safeParse(amount);
    const line = lines.find((one) => one.line.id === id);
    const planned = id === reworkId ? rework?.mass : line?.load;
    const most = planned && mostOf(dec(planned.value), mixer);
    if (!mass.success) problems.push(problem("mend.amount", ["weighed"], { name, amount }));
    else if (planned && most && dec(mass.data.value).gt(most))
      problems.push(
        problem("mend.beyond", ["weighed"], {
          name: line?.line.name ?? name,
          amount,
          planned: fixedText(planned.value, planned.places),
          most: fixedText(most, 0),
        }),
      );
    else if (id !== undefined && masses.has(id)) problems.push(problem("mend.twice", ["weighed"], { name }));
    else if (id !== undefined) masses.set(id, mass.data.value);
  }
  const short = new Set(noMore.flatMap((name) => lineOf(name, "noMore") ?? []));
  const salts = stock?.salts.map(({ line }) => line) ?? [];
  const isOfStock = weighed.some(({ name }) => plainName(name) === plainName(stock?.dose.name ?? ""));
  if (isOfStock || (salts.length > 0 && !salts.some(({ id }) => masses.has(id))))
    return refuse(problem("mend.stock", ["weighed"], { names: salts.map((one) => one.name) }));
  return problems.length > 0 ? refuse(...problems) : answer({ masses, short });
}
