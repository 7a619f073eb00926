import type { Range } from "../figure/figure.ts";
import { answer, type Note, note, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import { commonPractice } from "../figure/source.ts";
import { type DecimalText, dec, decimalText, HUNDRED, ZERO } from "../number/decimal.ts";
import type { LabelFigures } from "./doubt-schema.ts";
import { readLabels } from "./label.ts";
import type { MaterialFigures } from "./schema.ts";

/** Moisture of a flour of which nobody states it. */
export const assumedMoisture = {
  value: "13.5",
  low: "12",
  high: "15",
  by: "assumed, since nobody states it",
  source: commonPractice,
} as const;

/** Said of a flour whose moisture had to be assumed. */
export const assumedNote = note("materials.moisture-assumed", [], {});

/**
 * Whether the moisture may be assumed: of a flour of which there is only the bag, with its nutrition label, its protein as
 * sold, or nothing but that it is a flour.
 */
export function onlyTheBag({ label, kind, protein, proteinBasis }: MaterialFigures): boolean {
  return label !== undefined || (kind === "flour" && (protein === undefined || proteinBasis?.kind === "as is"));
}

/** Protein as labels leave it open, % as is. */
export interface ProteinOfLabel {
  readonly value: DecimalText;
  readonly range: Range;
  /** What the value is, in words. */
  readonly by: string;
  readonly notes: readonly Note[];
}

/**
 * Reads the labels among the figures of a material; undefined where there are none. A nitrogen factor beside the label
 * is the one behind every label that does not say its own.
 *
 * @param factor - the one wanted
 * Problems: `materials.protein-twice`, and those of `readLabels`.
 */
export function readFigureLabels(
  figures: MaterialFigures,
  factor: DecimalText,
  path: Path,
): Outcome<ProteinOfLabel | undefined> {
  const { label } = figures;
  if (label === undefined) return answer(undefined);
  const place = [...path, "label"];
  if (figures.protein !== undefined) return refuse(problem("materials.protein-twice", place, {}));
  const list = Array.isArray(label) ? label : [label];
  const labels = list.map(({ serving, nitrogenFactor = figures.nitrogenFactor, ...one }) => ({
    ...one,
    serving: serving?.value,
    nitrogenFactor,
  }));
  const reading = readLabels(labels, factor);
  if (!reading.ok) {
    const at = (steps: Path): Path => (Array.isArray(label) ? steps : steps.slice(1));
    return refuse(...reading.problems.map((problem) => ({ ...problem, path: [...place, ...at(problem.path)] })));
  }
  const { low, high } = reading.value;
  const middle = decimalText(dec(low).plus(high).div(2));
  return answer({ value: middle, range: { low, high, why: leftOpen }, by: middleOf(list), notes: reading.notes });
}

const leftOpen = "what the rounding of the label (in Japan its tolerance) leaves open";

function middleOf(labels: readonly LabelFigures[]): string {
  const printed = labels.map(({ protein, serving }) => {
    const amount = /^[<\d.,\s]+$/u.test(protein) ? `${protein} g` : protein;
    return `${amount} per ${serving?.text ?? "100 g"}`;
  });
  return `the middle of what ${printed.join(" and ")} ${printed.length === 1 ? "leaves" : "leave"} open`;
}

/** What is known of a material before its figures are laid over it, and after. */
interface Layers {
  readonly before: { readonly value: DecimalText; readonly range: Range } | undefined;
  readonly value: DecimalText;
}

/** Range of the protein as is: of the label, of the stated uncertainty, or that of before on the new value. */
export function proteinDoubt(
  figures: MaterialFigures,
  labelled: ProteinOfLabel | undefined,
  stated: DecimalText,
  { before, value }: Layers,
): Range | undefined {
  if (labelled !== undefined) return labelled.range;
  const { proteinUncertainty: error } = figures;
  if (error !== undefined) {
    const plusMinus = dec(stated).isZero() ? dec(error.value) : dec(error.value).times(value).div(stated);
    return around(value, decimalText(plusMinus), `protein stated to ± ${error.text}`);
  }
  if (figures.protein !== undefined || before === undefined || dec(before.value).isZero()) return undefined;
  const moved = (end: DecimalText): DecimalText => decimalText(dec(end).times(value).div(before.value));
  return { ...before.range, low: moved(before.range.low), high: moved(before.range.high) };
}

/** Range of the moisture: of the stated uncertainty, of an assumption, or that of before. */
export function moistureDoubt(
  figures: MaterialFigures,
  value: DecimalText,
  assumed: boolean,
  before: Range | undefined,
): Range | undefined {
  const { moistureUncertainty: error } = figures;
  if (error !== undefined) return around(value, error.value, `moisture stated to ± ${error.text}`);
  if (assumed) return { low: assumedMoisture.low, high: assumedMoisture.high, why: "moisture not stated" };
  return figures.moisture === undefined ? before : undefined;
}

function around(value: DecimalText, plusMinus: DecimalText, why: string): Range {
  const [low, high] = [dec(value).minus(plusMinus), dec(value).plus(plusMinus)];
  return { low: decimalText(low.lt(ZERO) ? ZERO : low), high: decimalText(high.gt(HUNDRED) ? HUNDRED : high), why };
}
