import { asFigure, exact, type Figure } from "../figure/figure.ts";
import { graphOf, published, underScope } from "../figure/graph.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { fromSpec } from "../figure/source.ts";
import { ofFlour } from "../formula/naming.ts";
import { type Decimal, type DecimalText, dec, decimalText, HUNDRED, ONE, sum, ZERO } from "../number/decimal.ts";
import { checksOfShares, describeShares, figuresOf, flourGraph, shareFigure } from "./blend-figures.ts";
import { restFlour } from "./blend-grid.ts";
import type { BlendAnswer, BlendQuestion, Check, FoundBlend, GivenShare } from "./blend-question.ts";
import { soughtBlends } from "./blend-search.ts";
import { type BlendWater, waterOf, withOpenRange } from "./blend-water.ts";
import type { BatchSize, StockedFlour, SubstituteQuestion } from "./substitute-question.ts";
import { glutenTakes, type WaterLine } from "./water-flour.ts";

/** A share of a blend, as text or as the figure that it is. */
interface NamedShare {
  readonly name: string;
  readonly share: DecimalText | Figure;
}

/** What is known of the dough of the old blend. */
type DoughNow = Pick<SubstituteQuestion, "water" | "held" | "size">;

/** What is known of the water of a new blend of flours beside that of an old one. */
export function waterBetween(
  old: readonly StockedFlour[],
  before: readonly GivenShare[],
  fresh: readonly StockedFlour[],
  after: readonly NamedShare[],
  { water, held }: DoughNow,
): BlendWater {
  return waterOf(linesOf(old, before), linesOf(fresh, after), waterNow(water), held);
}

function waterNow(water: DecimalText | Figure): Figure {
  return asFigure(ofFlour("water.before", "added water before"), water, "the spec", fromSpec);
}

function linesOf(flours: readonly StockedFlour[], shares: readonly NamedShare[]): readonly WaterLine[] {
  return shares.flatMap(({ name, share }) => {
    const index = flours.findIndex((one) => one.name === name);
    const flour = flours[index];
    if (flour === undefined) return [];
    const { moisture, absorption } = figuresOf(flour, index);
    const parts = typeof share === "string" ? shareFigure(flour, index, share) : share;
    const { dryGluten, newLot } = flour;
    const line = {
      name,
      share: parts,
      moisture,
      absorption,
      ...(dryGluten && { dryGluten }),
      ...(newLot && { newLot }),
    };
    return exact(parts).isZero() ? [] : [line];
  });
}

/**
 * Each flour with how much it makes of what the batch is a mass of, beside that of the blend as it is. The water of a blend is
 * linear in its shares by own figures and by sources alike; where both may come to count, each flour makes the least dough of
 * them, so that no blend takes more of a store or more money than it was found to.
 */
export function withDough(
  old: readonly StockedFlour[],
  before: readonly GivenShare[],
  fresh: readonly StockedFlour[],
  now: DoughNow,
): readonly StockedFlour[] {
  const { water: added, held, size } = now;
  if (size === undefined) return fresh;
  const isOpen = ({ ownWater, dryGluten }: StockedFlour): boolean => ownWater === undefined && dryGluten !== true;
  const all = [...old, ...fresh];
  const mixed =
    (held === undefined || held.least !== held.most) &&
    all.some(isOpen) &&
    all.some(({ ownWater, dryGluten }) => ownWater !== undefined && !dryGluten);
  const alone = (flours: readonly StockedFlour[], news: readonly StockedFlour[], name: string): Decimal =>
    exact(waterBetween(flours, before, news, [{ name, share: "100" }], now).added);
  const bySources = (flours: readonly StockedFlour[]): readonly StockedFlour[] =>
    flours.map((flour, index) => {
      if (flour.dryGluten) return flour;
      const { ownWater: _own, ...open } = flour;
      return { ...open, figures: { ...figuresOf(flour, index), absorption: undefined } };
    });
  const used = before.flatMap(({ name, share }) => {
    const flour = old.find((one) => one.name === name);
    return flour === undefined || dec(share).isZero() ? [] : [{ ...flour, share: dec(share) }];
  });
  const openShare = sum(used.filter(isOpen).map(({ share }) => share));
  const taken = used
    .filter((flour) => !isOpen(flour))
    .map(({ share, ownWater }) => share.times(ownWater?.percent ?? glutenTakes));
  const addedNow = exact(waterNow(added));
  const byOwn = addedNow.times(100).minus(sum(taken));
  return fresh.map((flour) => {
    const { name } = flour;
    const isKept = mixed && isOpen(flour) && used.some((one) => one.name === name);
    const waters = [
      alone(old, fresh, name),
      ...(mixed ? [alone(bySources(old), bySources(fresh), name)] : []),
      ...(isKept ? [byOwn.div(openShare)] : []),
    ];
    const least = waters.reduce((one, other) => (one.lt(other) ? one : other));
    // what there is of a flour goes into the batch whatever its share: bags set no step
    const { bag, ...open } = flour;
    const bagged = bag === undefined || size.flours.includes(name) ? open : { ...open, bag };
    return { ...bagged, dough: decimalText(made(size, least.minus(addedNow), [{ name, share: "100" }])) };
  });
}

/** How much a blend makes of what the batch is a mass of, that of the blend as it is being 1. */
function made({ parts, water, flours, share }: BatchSize, more: Decimal, shares: readonly NamedShare[]): Decimal {
  const now = sum(
    shares
      .filter(({ name }) => flours.includes(name))
      .map((one) => dec(typeof one.share === "string" ? one.share : one.share.value)),
  );
  return now
    .minus(share)
    .plus(water ? more : 0)
    .div(parts)
    .plus(1);
}

/** A blend that was found, and the water it takes. */
interface Watered {
  readonly blend: FoundBlend;
  readonly water: BlendWater;
}

/**
 * The blends that are sought, each held against what is asked with the water it takes itself. Where the flour of the batch
 * follows the blend, whole bags are counted on the flour of the blend that is found: it is sought again until that is so.
 */
export function soughtWithWater(
  question: BlendQuestion & Pick<SubstituteQuestion, "size">,
  waterFor: (shares: readonly NamedShare[]) => BlendWater,
): Outcome<{ readonly answer: BlendAnswer; readonly rows: readonly Watered[] }> {
  const { size } = question;
  const watered = (blend: FoundBlend): Watered => {
    const water = waterFor(blend.shares);
    return { blend: withWater(question, blend, water, size), water };
  };
  const told = (answer: BlendAnswer, rows: readonly Watered[]) => ({
    answer: answer.kind === "found" ? { ...answer, blends: rows.map(({ blend }) => blend) } : answer,
    rows: rows.map(({ blend, water }) => {
      const lines = linesOf(question.flours, blend.shares);
      const own = graphOf([water.before, ...lines.map(({ share }) => share)]);
      const open = withOpenRange(water, lines);
      const named = underScope(blend.scope, open, { ...flourGraph(question), ...own });
      return { blend, water: published(named, graphOf([open.added, ...open.causes])) };
    }),
  });
  const soughtOn = (asked: BlendQuestion) => {
    const outcome = soughtBlends(asked);
    return { outcome, found: outcome.ok && outcome.value.kind === "found" ? outcome.value.blends : [] };
  };
  const flourOf = ({ blend, water }: Watered) => ownFlour(question, blend, water, size);
  const counts = size !== undefined && question.flourMass !== undefined && question.flours.some(({ bag }) => bag);
  const byWeight = counts
    ? soughtOn({ ...question, alternatives: 1, flours: question.flours.map(({ bag: _bag, ...flour }) => flour) }).found
    : [];
  let [bagMass] = byWeight.map((blend) => flourOf(watered(blend)));
  for (let round = 1; ; round += 1) {
    const { outcome, found } = soughtOn({ ...question, ...(bagMass !== undefined && { bagMass }) });
    if (!outcome.ok) return outcome;
    const rows = found.map(watered);
    const [first] = rows;
    if (!counts || first === undefined) return answer(told(outcome.value, rows), outcome.notes);
    const counted = bagMass;
    const whole = rows.map((row) => inBags(question, row, counted, watered, flourOf));
    if (whole[0] !== undefined || round === mostRounds) {
      const kept = whole.filter((row) => row !== undefined);
      return answer(told(outcome.value, kept.length > 0 ? kept : rows), outcome.notes);
    }
    bagMass = flourOf(first);
  }
}

/** Each round counts on the flour of the blend before: after two or three the next is the same to a thousandth of a share. */
const mostRounds = 5;

/** A blend with its bags counted on its own flour, the rest flour taking the difference; none where it then misses what it met. */
function inBags(
  question: BlendQuestion,
  row: Watered,
  counted: DecimalText | undefined,
  watered: (blend: FoundBlend) => Watered,
  flourOf: (row: Watered) => DecimalText | undefined,
): Watered | undefined {
  const { flours, flourMass } = question;
  const rest = flours[restFlour(question)]?.name;
  const bags = new Map(
    row.blend.shares.flatMap(({ name, share }) => {
      const bag = flours.find((one) => one.name === name)?.bag;
      if (bag === undefined) return [];
      const mass = dec(share.value).times(counted ?? flourMass ?? 0);
      return [[name, mass.div(100).div(bag).round().times(bag)] as const];
    }),
  );
  const checksWith = ({ blend }: Watered): readonly Check[] => {
    const shares = flours.map(({ name }) => blend.shares.find((one) => one.name === name)?.share.value ?? "0");
    return [...checksOfShares(question, shares).filter(({ id }) => id.startsWith("share.")), ...blend.checks];
  };
  const moved = (share: (name: string, value: Decimal) => Decimal): Watered => {
    const to = row.blend.shares.map((one) => ({ ...one, value: share(one.name, dec(one.share.value)) }));
    const off = HUNDRED.minus(sum(to.map(({ value }) => value)));
    const shares = to.map(({ name, share: figure, value }) => ({
      name,
      share: { ...figure, value: decimalText(value.plus(name === rest ? off : 0)) },
    }));
    return watered({ ...row.blend, shares });
  };
  const shareOn = (flour: Decimal) => (name: string, value: Decimal) =>
    bags.get(name)?.times(HUNDRED).div(flour) ?? value;
  const partsOn = (one: Decimal | undefined): Decimal | undefined => {
    const mass = one && flourOf(moved(shareOn(ONE.div(one))));
    return mass === undefined ? undefined : ONE.div(mass);
  };
  // What a gram of the flour is of all is linear in what it is where the bags are counted: two tell where it is the same.
  const first = ONE.div(counted ?? flourMass ?? 1);
  const second = partsOn(first);
  const third = partsOn(second);
  if (second === undefined || third === undefined) return undefined;
  const slope = second.eq(first) ? ZERO : third.minus(second).div(second.minus(first));
  const flour = ONE.minus(slope).div(second.minus(slope.times(first)));
  if (!flour.isFinite() || flour.lte(0)) return undefined;
  const now = moved((name, value) => shareOn(flour)(name, value).toDecimalPlaces(3));
  const known = checksWith(row);
  const isMissed = ({ id, holds }: Check): boolean =>
    !holds && (id.startsWith("bag.") || known.some((check) => check.id === id && check.holds));
  const values = now.blend.shares.map(({ share }) => exact(share));
  const isBlend = values.every((value) => value.gt(0)) && sum(values).eq(HUNDRED);
  return isBlend && !checksWith(now).some(isMissed) ? now : undefined;
}

/** Flour of the batch in a blend with its own water, g. */
function ownFlour(
  { flourMass }: BlendQuestion,
  blend: FoundBlend,
  { added, before }: BlendWater,
  size: BatchSize | undefined,
): DecimalText | undefined {
  if (size === undefined || flourMass === undefined) return undefined;
  const own = made(size, dec(added.value).minus(before.value), blend.shares);
  return own.gt(0) ? decimalText(dec(flourMass).div(own)) : undefined;
}

/** A blend that was found, held against what is asked with the water it takes itself. */
function withWater(
  question: BlendQuestion,
  blend: FoundBlend,
  { added, before }: BlendWater,
  size: BatchSize | undefined,
): FoundBlend {
  const own = size && made(size, dec(added.value).minus(before.value), blend.shares);
  if (!own?.gt(0)) return blend;
  const flours = question.flours.map((flour) => ({ ...flour, dough: decimalText(own) }));
  const shares = flours.map(
    (flour, index) => blend.shares.find(({ name }) => name === flour.name)?.share ?? shareFigure(flour, index, "0"),
  );
  return describeShares({ ...question, flours }, shares, blend.scope);
}
