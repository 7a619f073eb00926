import { alkalinityM, anhydrousShare, pure } from "../chemistry/composition.ts";
import { answer, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import type { WayOut } from "../figure/problems/explore.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import {
  ceilToDivision,
  type Decimal,
  dec,
  decimalText,
  fixedText,
  floorToDivision,
  ONE,
  ZERO,
} from "../number/decimal.ts";
import { mostParts } from "../spec/believed.ts";
import type { Spec } from "../spec/spec.ts";
import { extreme, type Quotient, type Sum } from "./extreme.ts";
import type { FoundAmount, OpenPlaces } from "./settle-places.ts";
import { doseRows, type Sought, soughtIn, type Want, wantsOf, waterSums } from "./settle-wants.ts";

/** Decimal places of a found amount in %, far below what any scale shows. */
const places = 6;

/**
 * Finds the alkaline products, the salt and the water that a spec leaves open, exactly: all that is wanted is linear in the
 * parts on 100 of flour, and is solved together, since salt and water share the dough. Within what meets it all, each value is
 * aimed at and then the middle of each range, strength before ratio, then salt and water.
 *
 * @param formula - that of the spec with the open alkaline products and salt at 0
 * Problems: those of `wantsOf`; `settle.alike`, `settle.conflict` (no answer).
 */
export function balanceAmounts(spec: Spec, formula: Formula, open: OpenPlaces): Outcome<readonly FoundAmount[]> {
  const sought = soughtIn(formula, open);
  const asked = wantsOf(spec, formula, open, sought);
  if (!asked.ok) return asked;
  const limits = beliefs(sought.unknowns);
  const rows = [...limits, ...asked.value.flatMap(rowsOf)];
  const doses = doseRows(spec, sought);
  const size = sought.unknowns.length;
  const isBelieved = extreme(zero(size), "most", [...rows, ...doses]) !== undefined;
  const aimed = [...rows, ...(isBelieved ? doses : [])];
  // an aim never takes away what there is
  for (const want of asked.value) {
    const nearer = aimedAt(want, aimed);
    if (extreme(zero(size), "most", [...aimed, ...nearer]) !== undefined) aimed.push(...nearer);
  }
  const met = extreme(zero(size), "most", aimed);
  const names = sought.unknowns.map((line) => openName(line, open));
  if (met === undefined) return refuse(...conflicts(asked.value, limits, doses, names));
  const alkali = [...sought.unknowns.entries()].filter(([, { role }]) => role === "alkali");
  if (!alkali.every(([index]) => isOne(amountAt(index, size), aimed)))
    return refuse(problem("settle.alike", ["alkali"], { names: alkali.map(([, { name }]) => name) }));
  const solved = { spec, formula, open, sought, amounts: met.amounts };
  const found = sought.unknowns.flatMap((line, index) => amountOf(line, met.amounts[index] ?? ZERO, solved));
  return answer(found, asked.notes);
}

/** What no dough takes more of. */
function beliefs(unknowns: readonly FormulaLine[]): readonly Sum[] {
  return unknowns.map(({ role }, index) => {
    const most = role === "flour" ? mostParts.ingredient : mostParts[role];
    return [...unknowns.map((_, at) => (at === index ? dec(-1) : ZERO)), dec(most)];
  });
}

/** Nothing, whatever the amounts: where it has an extreme, there are amounts that keep all rows. */
function zero(size: number): Quotient {
  const top = Array.from({ length: size + 1 }, () => ZERO);
  return { top, bottom: top.with(-1, ONE) };
}

function amountAt(index: number, size: number): Quotient {
  const { top, bottom } = zero(size);
  return { top: top.with(index, ONE), bottom };
}

/** The bounds of a want as sums that are zero or more where they are kept; of what there is none, there is no ratio. */
function rowsOf({ top, bottom, least, most }: Pick<Want, "top" | "bottom" | "least" | "most">): readonly Sum[] {
  const over = (bound: Decimal): Sum => top.map((value, at) => value.minus(bound.times(bottom[at] ?? ZERO)));
  return [
    ...(least ? [over(least)] : []),
    ...(most ? [over(most).map((value) => value.negated())] : []),
    ...(bottom.at(-1)?.isZero() === true ? [bottom.with(-1, smallestOf)] : []),
  ];
}

/** What has to be there to be a ratio of, in % of flour, below zero as it stands in a row. */
const smallestOf = dec("-0.001");

/** Holds a want as near to what it aims at as what is kept before it lets it come. */
function aimedAt(want: Want, kept: readonly Sum[]): readonly Sum[] {
  const { aim, least, most } = want;
  if (aim === undefined || (least && most && least.eq(most))) return [];
  const [low, high] = reach(want, kept);
  if (low === undefined || high === undefined) return [];
  const nearest = aim.lt(low) ? low : aim.gt(high) ? high : aim;
  return rowsOf({ ...want, least: nearest.minus(hairOfAim), most: nearest.plus(hairOfAim) });
}

type Reach = readonly [low: Decimal | undefined, high: Decimal | undefined];

function reach(quotient: Quotient, kept: readonly Sum[]): Reach {
  return [extreme(quotient, "least", kept)?.value, extreme(quotient, "most", kept)?.value];
}

/** Whether a quotient can come to one value only. */
function isOne(quotient: Quotient, kept: readonly Sum[]): boolean {
  const [low, high] = reach(quotient, kept);
  return low === undefined || high === undefined || high.minus(low).lt(hair);
}

/** Far below what is written of an amount. */
const hair = "1e-12";
/** Far below that, and above what divisions leave off an end that is aimed at. */
const hairOfAim = "1e-18";

/** What of all that is wanted does not go together. The least of a conflict is left aside to look for another one. */
function conflicts(
  wants: readonly Want[],
  limits: readonly Sum[],
  doses: readonly Sum[],
  unknowns: readonly (string | undefined)[],
): readonly Problem[] {
  const rows = (kept: readonly Want[]): readonly Sum[] => [...limits, ...kept.flatMap(rowsOf)];
  const canMeet = (kept: readonly Want[]): boolean => extreme(zero(limits.length), "most", rows(kept)) !== undefined;
  const problems: Problem[] = [];
  let rest = wants;
  while (!canMeet(rest)) {
    const all = rest.toReversed().reduce((conflict, want) => {
      const fewer = conflict.filter((other) => other !== want);
      return canMeet(fewer) ? conflict : fewer;
    }, rest);
    const ways = all.map((want) => {
      const [others = [], within = []] = [rest, all].map((list) => list.filter((other) => other !== want));
      const beside = canMeet(others) ? others : within;
      const way = wayOut(want, [...doses, ...rows(beside)]);
      const limiting = beside.toReversed().reduce((kept, one) => {
        const fewer = kept.filter((other) => other !== one);
        return all.includes(one) || !isNear(wayOut(want, [...doses, ...rows(fewer)]), way) ? kept : fewer;
      }, beside);
      return { ...way, kept: limiting.map(({ label, wanted }) => ({ label, wanted })) };
    });
    const involved = rest.filter(
      (want) => all.includes(want) || ways.some(({ kept }) => kept.some(({ label }) => label === want.label)),
    );
    const names = unknowns.flatMap((name, index) =>
      name !== undefined &&
      involved.some(({ top, bottom }) => [top, bottom].some((sum) => sum[index]?.isZero() === false))
        ? [name]
        : [],
    );
    problems.push(problem("settle.conflict", ["wanted"], { names, wants: ways }));
    const least = all.at(-1);
    rest = rest.filter((want) => want !== least);
  }
  return problems;
}

/** What a line is called where the spec leaves it to be found, and how much water it brings itself where that is much. */
function openName({ role, name, material: { moisture } }: FormulaLine, open: OpenPlaces): string | undefined {
  if (role === "water") return open.water === undefined ? undefined : "water";
  return dec(moisture).gt(20) ? `${name} (${fixedText(moisture, 1)} % water)` : name;
}

/** Whether the ends that are told are less than a hundredth apart. */
function isNear(one: Reached, other: Reached): boolean {
  const [end, beside] = [one, other].map(({ reach, stays }) => dec(reach[stays === "below" ? 1 : 0] ?? 0));
  return end !== undefined && beside?.minus(end).abs().lte(beside.div(100)) === true;
}

type Reached = Omit<WayOut, "kept">;

/** How near a want of a conflict comes beside what is kept: each end so that asking for it is met. */
function wayOut({ label, unit, wanted, ...want }: Want, kept: readonly Sum[]): Reached {
  const [low, high] = reach(want, kept);
  const stays: "below" | "above" = high && want.least?.gt(high) === true ? "below" : "above";
  const way = { label, unit, wanted, stays };
  if (low === undefined || high === undefined) return { ...way, reach: [] };
  const [least, most] = [low.div(want.room.plus(1)), high.div(ONE.minus(want.room))];
  const isBelow = stays === "below";
  const [end, start] = want.isValue ? [most, least] : [high, low];
  const told = isBelow ? inward(end, "down", least) : inward(start, "up", most);
  const other = isBelow ? inward(low, "up", told) : inward(high, "down", told);
  return { ...way, reach: (isBelow ? [other, told] : [told, other]).map(decimalText) };
}

/** An end in two places, or four of a small number, and in more where it would pass the other end; the other where none do. */
function inward(end: Decimal, way: "up" | "down", other: Decimal): Decimal {
  const fewest = end.abs().lt("0.1") ? 4 : 2;
  const short = Array.from({ length: places }, (_, more) =>
    (way === "up" ? ceilToDivision : floorToDivision)(end, dec(10).pow(-fewest - more)),
  );
  return short.find((value) => (way === "up" ? value.lte(other) : value.gte(other))) ?? other;
}

interface Solved {
  readonly spec: Spec;
  readonly formula: Formula;
  readonly open: OpenPlaces;
  readonly sought: Sought;
  readonly amounts: readonly Decimal[];
}

/** The amount as the spec states it: on flour of the stated moisture, and by what the dose or the water states. */
function amountOf(line: FormulaLine, parts: Decimal, solved: Solved): readonly FoundAmount[] {
  const { spec, formula, open } = solved;
  const factor = dec(formula.referenceFactor?.value ?? 1);
  const write = (path: FoundAmount["path"], name: string, percent: Decimal): readonly FoundAmount[] => [
    { path, name, text: `${decimalText(percent.toDecimalPlaces(places))} %` },
  ];
  if (line.role === "salt") return write(["salt"], line.name, parts.div(factor));
  if (line.role === "alkali") {
    const as = spec.alkali?.[Number(line.path[1])]?.as;
    const { composition } = line.material;
    const stated =
      composition === undefined
        ? dec(1)
        : as === "anhydrous salts"
          ? anhydrousShare(composition).div(100)
          : as === "alkalinity"
            ? alkalinityM(composition).div(alkalinityM(pure("Na2CO3")))
            : dec(1);
    return write([...line.path, "amount"], line.name, parts.times(stated).div(factor));
  }
  if (open.water === undefined) return [];
  return write(["water", open.water], `${open.water} water`, statedWater(open.water, parts, solved));
}

/** The water of the dough as one of the three ways states it. */
function statedWater(way: "added" | "tap" | "dough", tap: Decimal, { formula, sought, amounts }: Solved): Decimal {
  const all = waterSums(sought);
  const of = (sum: Sum): Decimal =>
    sum.reduce((total, value, index) => total.plus(value.times(amounts[index] ?? ONE)), ZERO);
  if (way === "dough") return of(all.water).times(100).div(of(all.mass));
  const onFlour = way === "added" ? of(all.added) : tap;
  const factor = formula.referenceFactor;
  return factor === undefined ? onFlour : onFlour.plus(100).div(factor.value).minus(100);
}
