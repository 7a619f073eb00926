import type { Batch } from "../batch/batch.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { halfLastDigit } from "../blend/blend-limits.ts";
import type { Cause } from "../blend/cause.ts";
import { alkalinityM } from "../chemistry/composition.ts";
import { blendFactor } from "../formula/blend.ts";
import { catalogue } from "../materials/catalogue.ts";
import { assumedMoisture } from "../materials/doubt.ts";
import type { Material, MaterialKind } from "../materials/material.ts";
import type { KitchenMaterial } from "../materials/own.ts";
import { type Decimal, type DecimalText, dec, decimalText, ONE } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";

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

/**
 * Gathers what a spec says about errors: scales, flours, strengths and losses. Where nobody states the error of a flour or of
 * a loss, one is assumed, and the cause says from what. An error of zero is no cause.
 */
export function causesOf(spec: Spec, batch: Batch): BatchCauses {
  const causes: Cause[] = [];
  const exact: string[] = [];
  const input: MakeInput = (id, label, unit, value, error) => {
    const { plusMinus, assumed } = typeof error === "string" ? { plusMinus: error } : error;
    const words = assumed === undefined ? { label } : { label: `${label} (error assumed)`, assumed };
    if (dec(plusMinus).gt(0)) causes.push({ id, value, plusMinus, unit, ...words });
    return { id, value };
  };
  const lines = batch.lines
    .filter(({ load }) => !dec(load.value).isZero())
    .map((weighed): ModelLine => {
      const { line, load } = weighed;
      const { material, name, role } = line;
      const mass = input(`${line.id}.mass`, `weighing of ${name}`, "g", load.value, weighingError(spec, weighed));
      const wet = doubtOf(material, "moisture", material.moisture);
      const moisture = input(`${line.id}.moisture`, `moisture of ${name}`, "%", wet.value, wet);
      const common = { id: line.id, mass, moisture, flour: role === "flour" };
      if (role === "flour") {
        const protein = proteinInput(weighed, input);
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
  const lossError = spec.losses?.uncertainty?.value;
  const losses = lost.map(({ name, loss }) =>
    input(`loss.${name}`, `loss at ${name}`, "%", loss.value, lossError ?? asRead(spec.losses?.[name]?.text)),
  );
  return { causes, lines, losses, exact };
}

/** How far an input may be off, and from what that was assumed where nobody states it. */
interface Doubt {
  readonly plusMinus: DecimalText;
  readonly assumed?: string;
}

type MakeInput = (id: string, label: string, unit: string, value: DecimalText, error: DecimalText | Doubt) => Input;

function proteinInput({ line }: WeighedLine, input: MakeInput): ModelLine["protein"] | undefined {
  const { protein, stated } = line.material;
  if (protein === undefined) return undefined;
  const basisMoisture = stated.protein?.basis.kind === "at" ? stated.protein.basis.moisture : undefined;
  const written = basisMoisture === undefined ? protein.value : (stated.protein?.value ?? protein.value);
  const scale = dec(protein.value).isZero() ? dec(1) : dec(written).div(protein.value);
  const factor = dec(blendFactor).div(protein.nitrogenFactor ?? blendFactor);
  const { value, ...doubt } = doubtOf(line.material, "protein", protein.value);
  const whole = (one: DecimalText): DecimalText => text(dec(one).times(scale).times(factor));
  const where = basisMoisture === undefined ? "as is" : `at ${basisMoisture} % mb`;
  const label = `protein of ${line.name} ${where}`;
  const error = { ...doubt, plusMinus: whole(doubt.plusMinus) };
  return { input: input(`${line.id}.protein`, label, "%", whole(value), error), basisMoisture };
}

/**
 * The middle of what a figure may be, and how far off it may be, % as is: the stated error or the reading of a label where
 * there is one; otherwise the spread of the table's samples, the last digit that was written, or the usual spread of such a
 * flour in the catalogue.
 */
function doubtOf(
  material: KitchenMaterial,
  what: "moisture" | "protein",
  value: DecimalText,
): Doubt & { readonly value: DecimalText } {
  const range = material.ranges?.[what];
  if (range !== undefined) {
    const [low, high] = [dec(range.low), dec(range.high)];
    const isAssumed = what === "moisture" && material.by?.moisture === assumedMoisture.by;
    const half = { value: text(low.plus(high).div(2)), plusMinus: text(high.minus(low).div(2)) };
    return { ...half, ...(isAssumed && { assumed: "the usual moistures of flour, since nobody states it" }) };
  }
  const own = spreadOf(material, what);
  if (own !== undefined) {
    return {
      value,
      plusMinus: text(own),
      assumed: `the spread of the table's ${material.spread?.[what]?.n ?? ""} samples`,
    };
  }
  const written = material.written?.[what];
  if (written !== undefined) {
    const { plusMinus, assumed } = asRead(written);
    const stated = what === "protein" ? material.stated.protein?.value : undefined;
    const share = stated === undefined || dec(stated).isZero() ? ONE : dec(value).div(stated);
    return { value, plusMinus: text(share.times(plusMinus)), ...(assumed !== undefined && { assumed }) };
  }
  const usual = flourKinds.includes(material.kind) ? usualSpread(material.kind, what) : undefined;
  if (usual === undefined) return { value, plusMinus: "0" };
  const most = usual.gt(value) ? value : text(usual);
  return { value, plusMinus: most, assumed: `the usual spread of a ${material.kind} in the catalogue` };
}

const flourKinds: readonly MaterialKind[] = ["flour", "gluten", "starch", "bran"];

/** Half a unit of the last digit somebody wrote. */
function asRead(written = "0"): Doubt {
  const number = /\d+(?:\.\d+)?/u.exec(written)?.[0] ?? "0";
  return { plusMinus: text(halfLastDigit(number)), assumed: `its last digit, as "${written}" is written` };
}

/** Half the way from the least sample to the greatest; where the table has only the error of their mean, an even spread with the same deviation. */
function spreadOf({ spread }: Pick<Material, "spread">, what: "moisture" | "protein"): Decimal | undefined {
  const { n, standardError, low, high } = spread?.[what] ?? {};
  if (low !== undefined && high !== undefined) return dec(high).minus(low).div(2);
  return n === undefined || standardError === undefined ? undefined : dec(n).times(3).sqrt().times(standardError);
}

/** The middle one of the spreads that the catalogue knows of a kind. */
function usualSpread(kind: MaterialKind, what: "moisture" | "protein"): Decimal | undefined {
  const known = catalogue()
    .flatMap((material) => (material.kind === kind ? (spreadOf(material, what) ?? []) : []))
    .toSorted((a, b) => a.cmp(b));
  return known[Math.floor(known.length / 2)];
}

/** The error of the scale that weighs a line, once for each lot; half a division unless the spec says otherwise. */
function weighingError({ scales }: Spec, { scale, division, lots }: WeighedLine): DecimalText {
  const stated = scales?.find((one) => (one.name ?? `scale to ${one.division.text}`) === scale)?.error?.value;
  return text(dec(stated ?? dec(division).div(2)).times(lots));
}

function text(value: Decimal): DecimalText {
  return decimalText(value);
}
