import { type Figure, found, given, isFigure, worked } from "../../figure/figure.ts";
import { definition, fromSpec } from "../../figure/source.ts";
import { type Decimal, type DecimalText, fixedText, HUNDRED } from "../../number/decimal.ts";

/** One way of setting the rolls: the gap and the thickness the sheet has afterwards. */
export interface PassStep {
  readonly setting?: string;
  readonly gap: Figure;
  readonly thickness: Figure;
}

/** How a sheet gets to its final thickness: the steps are written when asked for, since the roots among them take their time. */
export interface Way {
  /** Thickness after the last step, mm. */
  readonly last: Figure;
  readonly steps: () => readonly PassStep[];
}

/** What the steps are worked out from; thicknesses in mm, the largest reduction in %. */
export interface Reduction {
  readonly first: Figure;
  readonly final: Figure;
  readonly largestReduction: Figure;
  readonly springBack: Figure;
  /** How far the last fixed setting may lie from the final thickness, mm. */
  readonly finalTolerance: Figure;
  /** Passes of compounding that go before; the numbers of the steps follow on. */
  readonly passesBefore: number;
}

export const millimetres = { unit: "mm", places: 2 };

/** The step of one pass through a gap that is given, or that was chosen among the settings for some figures. */
export function stepAt(
  pass: number,
  gap: DecimalText | Decimal | Figure,
  springBack: Figure,
  chosen?: { readonly setting: string; readonly on: readonly Figure[] },
): PassStep {
  const naming = { id: `pass-${pass}.gap`, label: `gap of pass ${pass}`, ...millimetres };
  const set = isFigure(gap)
    ? worked(naming, "gap", { gap }, definition)
    : chosen?.on
      ? found(naming, gap, "the machine", chosen.on, fromSpec)
      : given(naming, gap, "the machine", fromSpec);
  const thicknessNaming = { id: `pass-${pass}.thickness`, label: `thickness after pass ${pass}`, ...millimetres };
  const thickness = worked(thicknessNaming, "gap * springBack", { gap: set, springBack }, definition);
  return { ...(chosen && { setting: chosen.setting }), gap: set, thickness };
}

/** Two places, downwards, so that advice never goes past a limit; a limit such as one third is not written out to its end. */
export function downwards(value: Decimal): Decimal {
  return value.plus("1e-12").times(HUNDRED).floor().div(HUNDRED);
}

/** Two places, upwards. */
export function upwards(value: Decimal): Decimal {
  return downwards(value.negated()).negated();
}

/** Millimetres for messages. */
export function mm(value: Decimal): DecimalText {
  return fixedText(value, 2);
}

/** For messages. */
export function percent(share: Decimal): string {
  return `${fixedText(share.times(HUNDRED), 1)} %`;
}
