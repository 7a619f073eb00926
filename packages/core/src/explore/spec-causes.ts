import type { Batch } from "../batch/batch.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { alkalinityM } from "../chemistry/composition.ts";
import type { Range } from "../figure/figure.ts";
import { blendFactor } from "../formula/blend.ts";
import type { Spec } from "../formula/spec.ts";
import { type Decimal, type DecimalText, dec, decimalText } from "../number/decimal.ts";
import type { Cause } from "./cause.ts";

/** One ingredient of a load in the model: what of it may be off, and what is taken as it is. */
export interface ModelLine {
  readonly id: string;
  readonly mass: Input;
  readonly moisture: Input;
  readonly flour: boolean;
  /** Protein as N × 5.7, % of the flour as stated, and how a stated basis turns it to as is. */
  readonly protein?: { readonly input: Input; readonly basisMoisture: DecimalText | undefined };
  /** meq/g of an alkaline product. */
  readonly strength?: Input;
}

/** An input of the model: its name among the causes, and its value where it is no cause. */
export interface Input {
  readonly id: string;
  readonly value: DecimalText;
}

/** What may be off in a batch, and what is not known of it. */
export interface BatchCauses {
  readonly causes: readonly Cause[];
  readonly lines: readonly ModelLine[];
  readonly losses: readonly Input[];
  /** What nobody states the error of. */
  readonly exact: readonly string[];
}

/** Gathers what a spec says about errors: scales, flours, strengths and losses. An error of zero is no cause. */
export function causesOf(spec: Spec, batch: Batch): BatchCauses {
  const causes: Cause[] = [];
  const exact: string[] = [];
  const input = (id: string, label: string, unit: string, value: DecimalText, plusMinus: DecimalText): Input => {
    if (dec(plusMinus).gt(0)) causes.push({ id, label, value, plusMinus, unit });
    return { id, value };
  };
  const lines = batch.lines
    .filter(({ load }) => !dec(load.value).isZero())
    .map((weighed): ModelLine => {
      const { line, load } = weighed;
      const { material, name, role } = line;
      const mass = input(`${line.id}.mass`, `weighing of ${name}`, "g", load.value, weighingError(spec, weighed));
      const wet = centred(material.moisture, material.ranges?.moisture);
      const moisture = input(`${line.id}.moisture`, `moisture of ${name}`, "%", wet.value, wet.plusMinus);
      const common = { id: line.id, mass, moisture, flour: role === "flour" };
      if (role === "flour") {
        const protein = proteinInput(weighed, input);
        const unsure = [
          ...(material.ranges?.moisture === undefined ? ["moisture"] : []),
          ...(protein !== undefined && material.ranges?.protein === undefined ? ["protein"] : []),
        ];
        if (unsure.length > 0) exact.push(`${unsure.join(" and ")} of ${name}`);
        return { ...common, ...(protein && { protein }) };
      }
      if (role !== "alkali" || material.composition === undefined) return common;
      const strength = alkalinityM(material.composition);
      const error = strength.times(material.strengthUncertainty ?? 0).div(100);
      if (material.strengthUncertainty === undefined) exact.push(`strength of ${name}`);
      return {
        ...common,
        strength: input(`${line.id}.strength`, `strength of ${name}`, "meq/g", text(strength), text(error)),
      };
    });
  const lost = batch.target.stages.filter(({ loss }) => !dec(loss.value).isZero());
  const losses = lost.map(({ name, loss }) =>
    input(`loss.${name}`, `loss at ${name}`, "%", loss.value, spec.losses?.uncertainty?.value ?? "0"),
  );
  if (losses.length > 0 && spec.losses?.uncertainty === undefined) exact.push("losses");
  return { causes, lines, losses, exact };
}

type MakeInput = (id: string, label: string, unit: string, value: DecimalText, plusMinus: DecimalText) => Input;

function proteinInput({ line }: WeighedLine, input: MakeInput): ModelLine["protein"] | undefined {
  const { protein, ranges, stated } = line.material;
  if (protein === undefined) return undefined;
  const basisMoisture = stated.protein?.basis.kind === "at" ? stated.protein.basis.moisture : undefined;
  const written = basisMoisture === undefined ? protein.value : (stated.protein?.value ?? protein.value);
  const scale = dec(protein.value).isZero() ? dec(1) : dec(written).div(protein.value);
  const factor = dec(blendFactor).div(protein.nitrogenFactor ?? blendFactor);
  const { value, plusMinus } = centred(protein.value, ranges?.protein);
  const whole = (one: DecimalText): DecimalText => text(dec(one).times(scale).times(factor));
  const where = basisMoisture === undefined ? "as is" : `at ${basisMoisture} % mb`;
  const label = `protein of ${line.name} ${where}`;
  return { input: input(`${line.id}.protein`, label, "%", whole(value), whole(plusMinus)), basisMoisture };
}

/** The middle of a range and half its width. */
function centred(value: DecimalText, range: Range | undefined): { value: DecimalText; plusMinus: DecimalText } {
  if (range === undefined) return { value, plusMinus: "0" };
  const [low, high] = [dec(range.low), dec(range.high)];
  return { value: text(low.plus(high).div(2)), plusMinus: text(high.minus(low).div(2)) };
}

/** The error of the scale that weighs a line, once for each lot; half a division unless the spec says otherwise. */
function weighingError({ scales }: Spec, { scale, division, lots }: WeighedLine): DecimalText {
  const stated = scales?.find((one) => (one.name ?? `scale to ${one.division.text}`) === scale)?.error?.value;
  return text(dec(stated ?? dec(division).div(2)).times(lots));
}

function text(value: Decimal): DecimalText {
  return decimalText(value);
}
