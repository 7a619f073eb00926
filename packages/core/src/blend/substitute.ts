import { type Figure, shown } from "../figure/figure.ts";
import { type Graph, published } from "../figure/graph.ts";
import { answer, loudNote, type Note, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { describeShares, flourGraph, shareFigure } from "./blend-figures.ts";
import type { BlendAnswer, FoundBlend } from "./blend-question.ts";
import type { BlendWater } from "./blend-water.ts";
import { type Change, compareBlends, idsAtBasis, shareTotals, shownBlend } from "./compare-blends.ts";
import { soughtWithWater, waterBetween, withDough } from "./own-water.ts";
import { heldTargets, type NewLotQuestion, type StockedFlour, type SubstituteQuestion } from "./substitute-question.ts";

/** The new blends, each beside the old one. */
export interface Substitution {
  readonly answer: BlendAnswer;
  /** The shown blend beside the old one. */
  readonly changes: readonly Change[];
  /** All shares, before and now. */
  readonly totals: readonly Figure[];
  /** Each blend that was found; the figures of the first are named `alternative.1.` and their identity, and so on. */
  readonly rows: readonly {
    readonly blend: FoundBlend;
    readonly changes: readonly Change[];
    /** Of these, what moved and was not to be kept on that side. */
    readonly notHeld: readonly Change[];
    readonly water: BlendWater;
  }[];
  readonly graph: Graph;
}

/**
 * Replaces a flour that is not to be had by those at hand, holding protein, ash or gluten-forming protein, and gives the water.
 *
 * The other flours of the blend keep their shares, but those that have limits of their own; only where no blend does so do
 * they move as well, and a note says it. Percentages as is. Problems: `substitute.missing`, `substitute.nothing`, `substitute.flour`
 * and those of `searchBlend`.
 *
 * @example substitute({ blend: [{ name: "strong", share: "100" }], flours: [{ name: "strong", protein: "12", moisture: "14" }, { name: "other", protein: "12", moisture: "14" }], missing: "strong", hold: ["protein"], basis: { kind: "as is" }, water: "34" }).value.rows[0].blend.shares[0].name // => "other"
 */
export function substitute(question: SubstituteQuestion): Outcome<Substitution> {
  if (!question.blend.some(({ name }) => name === question.missing)) {
    const names = question.blend.map(({ name }) => name);
    return refuse(problem("substitute.missing", ["missing"], { name: question.missing, names, nearest: [] }));
  }
  if ([...question.flours, ...question.blend].every(({ name }) => name === question.missing)) {
    return refuse(problem("substitute.nothing", ["missing"], {}));
  }
  const share = (name: string): DecimalText | undefined => question.blend.find((one) => one.name === name)?.share;
  const without = question.flours.map((flour) =>
    flour.name === question.missing ? { ...withoutLimits(flour), missing: true } : flour,
  );
  const kept = without.map((flour) => {
    const now = share(flour.name);
    if (now === undefined || hasLimits(flour)) return flour;
    const { bag: _bag, ...open } = flour;
    return { ...open, ...fixedAt(now, question.step) };
  });
  const first = reblend(question, question.flours, kept);
  if (first.ok && first.value.answer.kind === "found") return first;
  const moved = reblend(question, question.flours, onOwnSteps(question, without));
  return moved.ok && moved.value.answer.kind === "found"
    ? answer(moved.value, [note("substitute.moved", ["missing"], { missing: question.missing }), ...moved.notes])
    : moved;
}

function hasLimits({ least, most, fixed, ratioTo, missing }: StockedFlour): boolean {
  return [least, most, fixed, ratioTo, missing].some((limit) => limit !== undefined);
}

/** A share that stays, in a step of its own where it is off the step of the others. */
export function fixedAt(share: DecimalText, step: DecimalText = "1"): Pick<StockedFlour, "fixed" | "step"> {
  const own = [step, "0.1", "0.01"].find((one) => isOn(share, one)) ?? "0.001";
  return { fixed: decimalText(dec(share).toDecimalPlaces(3)), ...(own !== step && { step: own }) };
}

/** Shares that are off the step but on the tenth may stay as they are: such flours move in tenths. */
function onOwnSteps(
  { blend, step = "1" }: Omit<SubstituteQuestion, "missing">,
  flours: readonly StockedFlour[],
): readonly StockedFlour[] {
  return flours.map((flour) => {
    const now = blend.find(({ name }) => name === flour.name)?.share;
    const isOff =
      now !== undefined && !flour.missing && flour.fixed === undefined && !isOn(now, step) && isOn(now, "0.1");
    return isOff ? { ...flour, step: "0.1" } : flour;
  });
}

function isOn(share: DecimalText, step: DecimalText): boolean {
  return dec(share).mod(step).isZero();
}

/**
 * Corrects a blend for a new lot of one of its flours, holding what the old blend had, and gives the water.
 *
 * Problems: `substitute.lot`, `substitute.flour` and those of `searchBlend`.
 *
 * @example newLot({ blend: [{ name: "strong", share: "100" }], flours: [{ name: "strong", protein: "12", moisture: "14" }], lot: { name: "strong", protein: "12", moisture: "15" }, hold: [], basis: { kind: "as is" }, water: "34" }).value.rows[0].water.added.places // => 2
 */
export function newLot(question: NewLotQuestion): Outcome<Substitution> {
  const { lot } = question;
  if (!question.flours.some(({ name }) => name === lot.name)) {
    const names = question.flours.map(({ name }) => name);
    return refuse(problem("substitute.lot", ["lot", "name"], { name: lot.name, names, nearest: [] }));
  }
  const flours = question.flours.map((flour) => (flour.name === lot.name ? lotOf(flour, lot) : flour));
  const fresh = onOwnSteps(question, flours);
  const held = reblend(question, question.flours, fresh);
  if (flours.length > 1 || !held.ok || held.value.answer.kind === "found") return held;
  const open = reblend({ ...question, hold: [] }, question.flours, fresh);
  return open.ok ? answer(open.value, [onlyFlourNote(lot.name, open.value), ...open.notes]) : open;
}

/** The new lot in the place of the old one. */
function lotOf(old: StockedFlour, lot: StockedFlour): StockedFlour {
  const { id, share } = old.figures ?? {};
  const figures = lot.figures && id !== undefined && share && { ...lot.figures, id, share };
  return { ...lot, newLot: true, ...(figures && { figures }) };
}

/** With one flour nothing can be held: what its new lot moves. */
function onlyFlourNote(name: string, { rows }: Substitution): Note {
  const moved = (rows[0]?.notHeld ?? []).map(({ label, before, after }) =>
    [label, before && `from ${shown(before)}`, after && `to ${shown(after)}`].filter(Boolean).join(" "),
  );
  return loudNote("substitute.only-flour", ["lot"], { name, moved });
}

function reblend(
  question: Omit<SubstituteQuestion, "missing">,
  old: readonly StockedFlour[],
  fresh: readonly StockedFlour[],
): Outcome<Substitution> {
  const stranger = question.blend.find(({ name }) => !old.some((flour) => flour.name === name));
  if (stranger !== undefined) return refuse(problem("substitute.flour", ["blend"], { name: stranger.name }));
  const shares = old.map(({ name }) => question.blend.find((one) => one.name === name)?.share ?? "0");
  const sought = {
    ...question,
    flours: withDough(old, question.blend, fresh, question),
    targets: heldTargets(question, old, shares.map(dec)),
    old: flourGraph({ flours: old }),
    prefer: { kind: "nearest" as const, to: question.blend },
  };
  const outcome = soughtWithWater(sought, (after) => waterBetween(old, question.blend, fresh, after, question));
  if (!outcome.ok) return outcome;
  const { answer: found } = outcome.value;
  const targets = { protein: { basis: question.basis } };
  const oldShares = old.map((flour, index) => shareFigure(flour, index, shares[index] ?? "0"));
  const before = describeShares({ ...sought, flours: old, targets }, oldShares);
  const rows = outcome.value.rows.map(({ blend, water }) => {
    const changes = compareBlends(before, blend, oldShares);
    return { blend, changes, notHeld: notHeld(changes, blend), water };
  });
  const nearest = shownBlend(found);
  const changes = rows[0]?.changes ?? (nearest ? compareBlends(before, nearest, oldShares) : []);
  const notes: readonly Note[] = [...outcome.notes, ...(rows[0]?.water.notes ?? [])];
  return answer(published({ answer: found, changes, totals: shareTotals(changes), rows }), notes);
}

/** By how much a figure has to move before it is worth a word: the tenth of protein and the hundredth of ash that certificates print. */
const worthAWord: Readonly<Record<string, string>> = {
  protein: "0.1",
  "gluten-protein": "0.1",
  ash: "0.02",
  wholegrain: "1",
};

/** The figures that nothing keeps on the side they moved to: dry, as is or at a basis as they are held. */
function notHeld(changes: readonly Change[], { checks }: FoundBlend): readonly Change[] {
  const held = idsAtBasis(changes.map(({ id }) => id));
  return changes.filter(({ id, difference }) => {
    const [, name = ""] = held.includes(id) ? id.split(".") : [];
    const least = worthAWord[name];
    if (difference === undefined || least === undefined) return false;
    const side = dec(difference.value).isNegative() ? "least" : "most";
    const isHeld = checks.some((check) => check.id === `${checkNames[name] ?? name}.${side}` && check.holds);
    return !isHeld && dec(difference.value).abs().gte(least);
  });
}

const checkNames: Readonly<Record<string, string>> = {
  "gluten-protein": "gluten-forming-protein",
  wholegrain: "wholegrain-share",
};

function withoutLimits(flour: StockedFlour): StockedFlour {
  const { least: _least, most: _most, ratioTo: _ratioTo, store: _store, ...rest } = flour;
  const { bag: _bag, step: _step, ...figures } = rest;
  return figures;
}
