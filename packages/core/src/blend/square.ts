import { exact, type Figure, given, worked } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { type Outcome, problem, refuse } from "../figure/problem.ts";
import { commonPractice, fromSpec, massBalance } from "../figure/source.ts";
import { percent } from "../formula/naming.ts";
import type { MoistureBasis } from "../materials/fields.ts";
import { dryRatio } from "../materials/moisture.ts";
import type { DecimalText } from "../number/decimal.ts";

/** Two flours and the protein their blend is to have. Percentages as is; the target at its basis. */
export interface SquareQuestion {
  readonly one: { readonly name: string; readonly protein: DecimalText; readonly moisture: DecimalText };
  readonly other: { readonly name: string; readonly protein: DecimalText; readonly moisture: DecimalText };
  readonly target: DecimalText;
  readonly basis: MoistureBasis;
}

/** The shares that meet the target exactly, with the working of the square. */
export interface SquareAnswer {
  readonly one: Figure;
  readonly other: Figure;
  readonly working: readonly Figure[];
}

/**
 * Blends two flours by the square rule: each flour takes as many parts as the other is away from the target.
 *
 * With a moisture basis each flour is held against the protein it would need, as it is, to be on target itself.
 * Problems: `square.same-protein`, `square.out-of-reach`.
 * Source: mass balance; the rule is common practice.
 *
 * @example shown(squareRule({ one: { name: "soft", protein: "9", moisture: "14" }, other: { name: "gluten", protein: "72", moisture: "14" }, target: "11", basis: { kind: "as is" } }).value.one) // => "96.825 % of flour"
 */
export function squareRule(question: SquareQuestion): Outcome<Published<SquareAnswer>> {
  const { one, other } = question;
  const [oneOff, otherOff] = [offTarget("one", one, question), offTarget("other", other, question)];
  const away = [exact(oneOff.off), exact(otherOff.off)] as const;
  if (away[0].isZero() && away[1].isZero()) return refuse(problem("square.same-protein", ["other", "protein"], {}));
  if (away[0].times(away[1]).gt(0)) {
    const side = away[0].gt(0) ? "above" : "below";
    return refuse(problem("square.out-of-reach", ["target"], { side, target: question.target }));
  }
  const oneParts = parts("one", one.name, otherOff.off);
  const otherParts = parts("other", other.name, oneOff.off);
  const share = (id: "one" | "other", name: string, own: Figure, rest: Figure): Figure =>
    worked(
      { id: `square.${id}.share`, label: `share of ${name}`, unit: "% of flour", places: 3 },
      "100 * own / (own + rest)",
      { own, rest },
      massBalance,
      commonPractice,
    );
  return publish({
    one: share("one", one.name, oneParts, otherParts),
    other: share("other", other.name, otherParts, oneParts),
    working: [...oneOff.working, ...otherOff.working, oneParts, otherParts],
  });
}

/** How far a flour is above (or below) the protein that would put it on target. */
function offTarget(
  id: "one" | "other",
  flour: SquareQuestion["one"],
  { target, basis }: SquareQuestion,
): { readonly off: Figure; readonly working: readonly Figure[] } {
  const stated = (what: string, label: string, value: DecimalText): Figure =>
    given(percent(`square.${id}.${what}`, label), value, "the question", fromSpec);
  const protein = stated("protein", `protein of ${flour.name}`, flour.protein);
  const aim = stated("target", "target protein", target);
  const moisture = stated("moisture", `moisture of ${flour.name}`, flour.moisture);
  const naming = percent(`square.${id}.needed`, `protein that puts ${flour.name} on target`);
  const needed =
    basis.kind === "as is"
      ? worked(naming, "target", { target: aim }, massBalance)
      : worked(
          naming,
          `target * ${dryRatio("basis", "moisture")}`,
          { target: aim, moisture, basis: basis.moisture },
          massBalance,
        );
  const off = worked(
    percent(`square.${id}.off`, `${flour.name} above target`),
    "protein - needed",
    { protein, needed },
    massBalance,
  );
  return { off, working: [needed, off] };
}

/** Parts of one flour: what the other is away from the target. */
function parts(id: "one" | "other", name: string, across: Figure): Figure {
  return worked(
    { id: `square.${id}.parts`, label: `parts of ${name}`, unit: "parts", places: 2 },
    "max(across, -across)",
    { across },
    commonPractice,
  );
}
