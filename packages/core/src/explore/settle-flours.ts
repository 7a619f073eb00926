import { planBatch } from "../batch/batch.ts";
import { costOf } from "../batch/cost.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { checkTexts } from "../blend/blend-figures.ts";
import type { BlendQuestion, Check, FoundBlend } from "../blend/blend-question.ts";
import { searchBlend } from "../blend/blend-search.ts";
import { flourShelf, type ShelfFlour } from "../blend/flour-shelf.ts";
import { atSpec, blendQuestion } from "../blend/spec-question.ts";
import { fixedAt } from "../blend/substitute.ts";
import { shown } from "../figure/figure.ts";
import { answer, type Note, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import type { Price } from "../materials/fields.ts";
import type { OwnMaterials } from "../materials/own.ts";
import { type Decimal, dec, decimalText, HUNDRED, sum, ZERO } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import type { FoundAmount } from "./settle-places.ts";

/**
 * Finds the shares of the flours that a spec leaves open, the others as they stand. Where several blends meet all that is
 * wanted, the one nearest to a protein value comes first, unless it is written how near is near enough and the spec prefers
 * something; then the spec's `prefer:` decides, or else the middle of what each flour may be.
 *
 * @param open - their numbers in the list of flours
 * Problems: `settle.out-of-reach` (no answer), with the nearest; those of `flourShelf`, `blendQuestion` and `searchBlend`.
 */
export function floursFound(
  spec: Spec,
  formula: Formula,
  open: readonly number[],
  extra: OwnMaterials,
): Outcome<FoundFlours> {
  const shelf = flourShelf(spec, formula, extra);
  if (!shelf.ok) return shelf;
  const flours = shelf.value.flours.filter(({ path }) => path[0] === "flours");
  const own = { ...shelf.value, flours };
  const bowl = bowlPriceOf(spec, formula);
  const priced = bowl === undefined ? spec : { ...spec, wanted: { ...spec.wanted, price: bowl.price } };
  const asked = blendQuestion(priced, formula, own);
  if (!asked.ok) return asked;
  const { price: _price, ...besides } = asked.value.targets;
  const targets = bowl === undefined ? asked.value.targets : { ...besides, bowlPrice: bowl };
  const question = withOpen({ ...asked.value, targets }, flours, spec, open);
  const outcome = searchBlend(question);
  if (!outcome.ok) return refuse(...outcome.problems.map(atSpec(own)));
  const { value } = outcome;
  if (value.kind === "out-of-reach") {
    const nearest = value.nearest === undefined ? [] : nearestText(value.nearest);
    return refuse(problem("settle.out-of-reach", ["wanted"], { problem: value.problem, nearest }));
  }
  const [blend] = value.blends;
  const notes = [...asked.notes, ...outcome.notes, ...preferenceNotes(spec)].filter(
    ({ code }) => code !== "blend.fewer-alternatives",
  );
  if (blend === undefined) return answer({ amounts: [] }, notes);
  const protein = blend.checks.find(({ id }) => id.startsWith("protein"));
  const amounts = amountsIn(blend, spec, open);
  return answer({ amounts, ...(protein && { protein: checkTexts(protein).reached }) }, notes);
}

/** The shares that were found, and what protein their blend comes to where one is wanted. */
export interface FoundFlours {
  readonly amounts: readonly FoundAmount[];
  readonly protein?: string;
}

type BowlPrice = NonNullable<BlendQuestion["targets"]["bowlPrice"]>;

/**
 * What a bowl may cost, and what of it is flour, all else in it as it is; nothing where that is not known, or where the
 * spec wants less already.
 */
function bowlPriceOf(spec: Spec, formula: Formula): (BowlPrice & { readonly price: Price }) | undefined {
  const { bowlPrice: most, price: stated } = spec.wanted ?? {};
  const batch = most && planBatch(spec, formula);
  const cost = batch?.ok === true ? costOf(spec, formula, batch.value) : undefined;
  if (most === undefined || cost?.ok !== true || batch?.ok !== true) return undefined;
  const { currency, lines, unpriced } = cost.value;
  const bowls = batch.value.target.bowls?.value;
  if (bowls === undefined || currency !== most.currency || unpriced.length > 0) return undefined;
  const others = sum(lines.map(({ weighed, batch: whole }) => (isFlour(weighed) ? ZERO : dec(whole?.value ?? 0))));
  const flour = sum(lines.map(({ weighed }) => (isFlour(weighed) ? dec(weighed.batch.value) : ZERO))).div(1000);
  const perKilogram = dec(most.amount).times(bowls).minus(others).div(flour);
  if (perKilogram.lte(0) || (stated && perKilogram.gte(stated.perKilogram))) return undefined;
  const each = decimalText(perKilogram);
  const perBowl = (one: Decimal) => decimalText(one.div(bowls));
  const price = { text: each, currency, perKilogram: each, pack: "1000", amount: each };
  return { most: most.amount, flour: perBowl(flour), others: perBowl(others), price };
}

function isFlour({ line }: WeighedLine): boolean {
  return line.role === "flour";
}

/** The question with the flours that are stated held fast, and those that are open within their own limits. */
function withOpen(
  question: BlendQuestion,
  flours: readonly ShelfFlour[],
  spec: Spec,
  open: readonly number[],
): BlendQuestion {
  const stated = spec.flours.map(({ amount }, index) =>
    open.includes(index) || amount === "rest" ? undefined : amount,
  );
  const left = HUNDRED.minus(sum(stated.map((amount) => dec(amount?.value ?? 0))));
  const candidates = question.flours.map((flour, index) => {
    const amount = stated[index];
    if (amount === undefined) return flour;
    const { least: _least, most: _most, ...open } = flour;
    return { ...open, ...fixedAt(amount.value, question.step) };
  });
  const asked = { ...question, flours: candidates, alternatives: 1 };
  if (question.prefer.kind !== "nearest") return asked;
  const middles = candidates.map(({ least, most, fixed }, index) => {
    const known = stated[index]?.value ?? fixed;
    if (known !== undefined) return dec(known);
    const top = most === undefined || left.lt(most) ? left : most;
    return dec(least ?? 0)
      .plus(top)
      .div(2);
  });
  const openMiddle = sum(middles.filter((_, index) => stated[index] === undefined));
  const to = middles.map((middle, index) => {
    const isOpen = stated[index] === undefined && !openMiddle.isZero();
    const share = decimalText(isOpen ? middle.times(left).div(openMiddle) : middle);
    return { name: flours[index]?.flour.name ?? "", share };
  });
  const { protein } = question.targets;
  const nearest = protein?.value !== undefined && { protein: { ...protein, nearest: true } };
  return { ...asked, targets: { ...question.targets, ...nearest }, prefer: { kind: "nearest", to } };
}

/** The shares as they are written. */
function amountsIn(blend: FoundBlend, spec: Spec, open: readonly number[]): readonly FoundAmount[] {
  return open.map((index) => {
    const { name = "" } = spec.flours[index] ?? {};
    const share = blend.shares.find((one) => one.name === name)?.share.value ?? "0";
    return { path: ["flours", index, "amount"], name, text: `${share} %` };
  });
}

function preferenceNotes({ wanted }: Spec): readonly Note[] {
  if (wanted?.prefer !== undefined) return [];
  const { aim, value = aim } = wanted?.protein ?? {};
  return [note("settle.preference", ["wanted"], { value: value !== undefined })];
}

/** The nearest blend, and what it misses. */
function nearestText({ shares, checks }: FoundBlend): readonly string[] {
  const flours = shares.map(({ name, share }) => `${name} ${shown(share).replace(" % of flour", " %")}`).join(", ");
  return [flours, ...checks.flatMap(missText)];
}

function missText(check: Check): readonly string[] {
  const { reached, wanted } = checkTexts(check);
  return check.holds ? [] : [`${check.label} ${reached}, wanted ${wanted}`];
}
