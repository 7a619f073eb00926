import type { Figure } from "../figure/figure.ts";
import { type Graph, published } from "../figure/graph.ts";
import { measure } from "../figure/in-system.ts";
import { answer, type Note, note, type Outcome, type Path, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import type { OwnMaterials } from "../materials/own.ts";
import { dec, decimalText } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import { blendFigures, checksOfShares, describeShares, shareFigure } from "./blend-figures.ts";
import type { BlendAnswer, BlendQuestion, Check, FoundBlend } from "./blend-question.ts";
import type { BlendWater } from "./blend-water.ts";
import { type Change, compareBlends, shareTotals, shownBlend } from "./compare-blends.ts";
import { flourShelf } from "./flour-shelf.ts";
import { soughtWithWater, waterBetween, withDough } from "./own-water.ts";
import { atSpec, blendQuestion, candidatesOf, doughNow, sharesNow } from "./spec-question.ts";
import { type SquareAnswer, squareRule } from "./square.ts";
import { styleNotes } from "./style-notes.ts";

/** The blends that a spec asks for, beside the blend it has. */
export interface SpecBlend {
  readonly question: BlendQuestion;
  readonly answer: BlendAnswer;
  /** The shown blend beside that of the spec. */
  readonly changes: readonly Change[];
  /** All shares, before and now. */
  readonly totals: readonly Figure[];
  /** The blend of the spec against all that is asked, as if nothing were changed. */
  readonly unchanged: readonly Check[];
  /** Water of each blend that was found, where it is not the blend as it was. */
  readonly water: readonly BlendWater[];
  /** The square rule, where two flours have to meet one protein value. */
  readonly square?: SquareAnswer;
  readonly graph: Graph;
}

/**
 * Finds the blend that a spec asks for under `wanted:`, of its flours and those of its `shelf:`.
 *
 * Where the nearest is wanted and the blend as it is meets all of it, that is the answer, in whatever steps its shares are,
 * unless the spec asks for alternatives.
 *
 * @param extra - the kitchen's own materials from files that the spec includes
 * @param open - places of the amounts that the spec left to be found
 * Problems: those of `flourShelf`, `blendQuestion` and `searchBlend`.
 */
export function designBlend(
  spec: Spec,
  formula: Formula,
  extra: OwnMaterials = {},
  open: readonly Path[] = [],
): Outcome<SpecBlend> {
  const shelf = flourShelf(spec, formula, extra);
  if (!shelf.ok) return shelf;
  const question = blendQuestion(spec, formula, shelf.value);
  if (!question.ok) return question;
  const shares = shelf.value.flours.map(({ share }) => share);
  const oldShares = shelf.value.flours.map(({ flour, share }, index) => shareFigure(flour, index, share));
  const before = describeShares(question.value, oldShares);
  const unchanged = checksOfShares(question.value, shares);
  const isEnough = question.value.prefer.kind === "nearest" && spec.wanted?.alternatives === undefined;
  const stays = isEnough && unchanged.every(({ holds }) => holds);
  const flours = candidatesOf(shelf.value, question.value);
  const old = sharesNow(shelf.value);
  const now = doughNow(spec, formula, open);
  const sought = { ...question.value, ...now, flours: withDough(flours, old, flours, now) };
  const outcome = stays
    ? answer({ answer: asItIs(before), rows: [] })
    : soughtWithWater(sought, (after) => waterBetween(flours, old, flours, after, now));
  if (!outcome.ok) return refuse(...outcome.problems.map(atSpec(shelf.value)));
  const { answer: found, rows } = outcome.value;
  const blend = shownBlend(found);
  const changes = blend === undefined ? [] : compareBlends(before, blend, oldShares);
  const [first] = found.kind === "found" ? found.blends : [];
  const style = styleOf(spec, question.value, first);
  if (!style.ok) return style;
  const square = squareOf(question.value);
  const bags = first ? bagNotes(question.value, first) : [];
  const waterNotes = rows[0]?.water.notes ?? [];
  return answer(
    published({
      question: plain(question.value),
      answer: found,
      changes,
      totals: shareTotals(changes),
      unchanged,
      water: rows.map(({ water }) => water),
      ...(square && { square }),
    }),
    [...shelf.notes, ...question.notes, ...outcome.notes, ...bags, ...style.notes, ...waterNotes],
  );
}

/** A question without the figures that it was made of. */
function plain({ batch: _batch, ...question }: BlendQuestion): BlendQuestion {
  return { ...question, flours: question.flours.map(({ figures: _figures, ...flour }) => flour) };
}

function asItIs(blend: FoundBlend): BlendAnswer {
  const order = "nothing is changed: the flours meet all of it as they are; ask for alternatives to see other blends";
  return { kind: "found", blends: [blend], order, unchanged: true };
}

/** How many whole bags of a flour go into the batch. */
function bagNotes({ flours }: BlendQuestion, { shares, checks }: FoundBlend): readonly Note[] {
  return flours.flatMap(({ name, bag }, index): readonly Note[] => {
    const counted = checks.find(({ id }) => id === `bag.${index + 1}`);
    if (bag === undefined || counted === undefined || !shares.some((one) => one.name === name)) return [];
    const bags = dec(counted.reached).div(counted.bound).round();
    const facts = { name, bags: decimalText(bags), bag: measure(dec(bag).div(1000), "kg") };
    return [note("blend.bags", ["shelf", name, "bag"], facts)];
  });
}

/** A blend that was found beside what is published for the style of the spec: protein and ash at 14 % mb. */
function styleOf({ style }: Spec, question: BlendQuestion, blend: FoundBlend | undefined) {
  const { flours } = question;
  if (style === undefined || blend === undefined) return answer([]);
  const shares = flours.map(
    (flour, index) => blend.shares.find(({ name }) => name === flour.name)?.share ?? shareFigure(flour, index, "0"),
  );
  const figures = blendFigures({ ...question, targets: {} }, shares);
  const at14 = (what: string) => figures.find(({ id }) => id === `blend.${what}.14`)?.value;
  const [protein, ash] = [at14("protein"), at14("ash")];
  return styleNotes(style.toLowerCase(), { ...(protein && { protein }), ...(ash && { ash }) });
}

function squareOf({ flours, targets: { protein } }: BlendQuestion): SquareAnswer | undefined {
  const [one, other, third] = flours;
  if (one === undefined || other === undefined || third !== undefined) return undefined;
  if (protein?.value === undefined) return undefined;
  const outcome = squareRule({ one, other, target: protein.value, basis: protein.basis });
  return outcome.ok ? outcome.value : undefined;
}
