import type { Figure } from "../figure/figure.ts";
import { answer, type Note, type Outcome, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import type { Spec } from "../formula/spec.ts";
import type { OwnMaterials } from "../materials/own.ts";
import { dec } from "../number/decimal.ts";
import { basisAsked, blendFigures } from "./blend-figures.ts";
import type { BlendAnswer, BlendQuestion, FoundBlend } from "./blend-question.ts";
import { searchBlend } from "./blend-search.ts";
import type { BlendWater } from "./blend-water.ts";
import { figuresBefore } from "./compare-blends.ts";
import { flourShelf } from "./flour-shelf.ts";
import { atSpec, blendQuestion, sharesNow } from "./spec-question.ts";
import { type SquareAnswer, squareRule } from "./square.ts";
import { shareFigure, waterBetween } from "./substitute.ts";

/** The blends that a spec asks for, beside the blend it has. */
export interface SpecBlend {
  readonly question: BlendQuestion;
  readonly answer: BlendAnswer;
  /** The blend of the spec: shares and what they come to, named `before.` and their identity, with what they rest on. */
  readonly before: readonly Figure[];
  /** The same under their own identity, for a comparison. */
  readonly now: readonly Figure[];
  /** Water of each blend that was found. */
  readonly water: readonly BlendWater[];
  /** The square rule, where two flours have to meet one protein value. */
  readonly square?: SquareAnswer;
}

/**
 * Finds the blend that a spec asks for under `wanted:`, of its flours and those of its `shelf:`.
 *
 * @param extra - the kitchen's own materials from files that the spec includes
 * Problems: those of `flourShelf`, `blendQuestion` and `searchBlend`.
 */
export function designBlend(spec: Spec, formula: Formula, extra: OwnMaterials = {}): Outcome<SpecBlend> {
  const shelf = flourShelf(spec, formula, extra);
  if (!shelf.ok) return shelf;
  const question = blendQuestion(spec, formula, shelf.value);
  if (!question.ok) return question;
  const outcome = searchBlend(question.value);
  if (!outcome.ok) return refuse(...outcome.problems.map(atSpec(shelf.value)));
  const flours = shelf.value.flours.map(({ flour }) => flour);
  const old = sharesNow(shelf.value);
  const found = outcome.value.kind === "found" ? outcome.value.blends : [];
  const water = found.map((blend) => waterBetween(flours, old, flours, sharesIn(blend), formula.water.added.value));
  const now = figuresNow(
    question.value,
    shelf.value.flours.map(({ share }) => share),
  );
  const square = squareOf(question.value);
  const waterNotes: readonly Note[] = water.slice(0, 1).flatMap(({ notes }) => notes);
  return answer(
    {
      question: question.value,
      answer: outcome.value,
      before: figuresBefore(now),
      now,
      water,
      ...(square && { square }),
    },
    [...question.notes, ...outcome.notes, ...waterNotes],
  );
}

function sharesIn(blend: FoundBlend) {
  return blend.shares.map(({ name, share }) => ({ name, share: share.value }));
}

/** The blend as it is. */
function figuresNow({ flours, targets, currency }: BlendQuestion, shares: readonly string[]): readonly Figure[] {
  const all = flours.map(({ name }, index) => shareFigure(name, shares[index] ?? "0"));
  const inUse = all.filter(({ value }) => !dec(value).isZero());
  return [...inUse, ...blendFigures(flours, all, basisAsked(targets), currency)];
}

function squareOf({ flours, targets: { protein } }: BlendQuestion): SquareAnswer | undefined {
  const [one, other, third] = flours;
  if (one === undefined || other === undefined || third !== undefined) return undefined;
  if (protein === undefined || !("value" in protein)) return undefined;
  const outcome = squareRule({ one, other, target: protein.value, basis: protein.basis });
  return outcome.ok ? outcome.value : undefined;
}
