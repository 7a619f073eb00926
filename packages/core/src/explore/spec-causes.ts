import type { Batch } from "../batch/batch.ts";
import type { WeighedLine } from "../batch/weighing.ts";
import { alkalinityM } from "../chemistry/composition.ts";
import { catalogue } from "../materials/catalogue.ts";
import { assumedMoisture } from "../materials/doubt.ts";
import { halfLastDigit } from "../materials/label.ts";
import type { Material, MaterialKind } from "../materials/material.ts";
import type { KitchenMaterial } from "../materials/own.ts";
import { type Decimal, type DecimalText, dec, decimalText, ONE } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import { type Cause, causeWords } from "./cause.ts";

/** What may be off in a batch, and what is not known of it. */
export interface BatchCauses {
  readonly causes: readonly Cause[];
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
  const cause: AddCause = (of, error) => {
    const doubt = typeof error === "string" ? { plusMinus: error } : error;
    if (!dec(doubt.plusMinus).isZero()) causes.push({ ...of, ...doubt });
  };
  const lines = batch.lines.filter(({ load }) => !dec(load.value).isZero());
  for (const weighed of lines) {
    const { line, load } = weighed;
    const { material, name, role } = line;
    cause({ id: load.id, kind: "weighing", name, unit: "g", value: load.value }, weighingError(spec, weighed));
    const { value: moisture, untold: _exact, ...wet } = doubtOf(material, "moisture", material.moisture);
    cause({ id: `${line.id}.moisture`, kind: "moisture", name, unit: "%", value: moisture }, wet);
    if (role === "flour") proteinCause(weighed, cause);
    exact.push(...untoldOf(weighed).map((what) => `${what} of ${name}`));
    if (role !== "alkali" || material.composition === undefined) continue;
    const strength = alkalinityM(material.composition);
    const error = strength.times(material.strengthUncertainty ?? 0).div(100);
    const of = {
      id: `${line.id}.alkalinity-m`,
      kind: "strength",
      name,
      unit: "meq/g",
      value: decimalText(strength),
    } as const;
    if (material.strengthUncertainty === undefined) exact.push(causeWords(of));
    cause(of, decimalText(error));
  }
  const lossError = spec.losses?.uncertainty?.value;
  for (const { name, loss } of batch.target.stages) {
    if (dec(loss.value).isZero()) continue;
    const error = lossError ?? asRead(spec.losses?.[name]?.text);
    cause({ id: loss.id, kind: "loss", name, unit: "%", value: loss.value }, error);
  }
  return { causes, exact };
}

/** How far an input may be off, and from what that was assumed where nobody states it. */
interface Doubt {
  readonly plusMinus: DecimalText;
  readonly assumed?: string;
}

type AddCause = (of: Omit<Cause, keyof Doubt>, error: DecimalText | Doubt) => void;

/** The protein of a flour as it is stated: on its own moisture, and by its own nitrogen factor. */
function proteinCause({ line: { id, name, material } }: WeighedLine, cause: AddCause): void {
  const { protein, stated } = material;
  if (protein === undefined) return;
  const { value, untold: _exact, ...doubt } = doubtOf(material, "protein", protein.value);
  const of = { kind: "protein", name, unit: "%" } as const;
  const basis = stated.protein?.basis;
  if (basis?.kind !== "at") {
    cause({ ...of, id: `${id}.protein`, basis: "as is", value }, doubt);
    return;
  }
  const scale = dec(protein.value).isZero() ? ONE : dec(stated.protein?.value ?? protein.value).div(protein.value);
  const onBasis = (one: DecimalText): DecimalText => decimalText(dec(one).times(scale));
  cause(
    { ...of, id: `${id}.protein-stated`, basis: `at ${basis.moisture} % mb`, value: onBasis(value) },
    { ...doubt, plusMinus: onBasis(doubt.plusMinus) },
  );
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
): Doubt & { readonly value: DecimalText; readonly untold?: true } {
  const range = material.ranges?.[what];
  if (range !== undefined) {
    const [low, high] = [dec(range.low), dec(range.high)];
    const isAssumed = what === "moisture" && material.by?.moisture === assumedMoisture.by;
    const half = { value: decimalText(low.plus(high).div(2)), plusMinus: decimalText(high.minus(low).div(2)) };
    return { ...half, ...(isAssumed && { assumed: "the usual moistures of flour, since nobody states it" }) };
  }
  const own = spreadOf(material, what);
  if (own !== undefined) {
    const assumed = `the spread of the table's ${material.spread?.[what]?.n ?? ""} samples`;
    return { value, plusMinus: decimalText(own), assumed };
  }
  const written = material.written?.[what];
  if (written !== undefined) {
    const { plusMinus, assumed } = asRead(written);
    const stated = what === "protein" ? material.stated.protein?.value : undefined;
    const share = stated === undefined || dec(stated).isZero() ? ONE : dec(value).div(stated);
    return { value, plusMinus: decimalText(share.times(plusMinus)), ...(assumed !== undefined && { assumed }) };
  }
  const usual = flourKinds.includes(material.kind) ? usualSpread(material.kind, what) : undefined;
  if (usual === undefined) return { value, plusMinus: "0", untold: true };
  const most = usual.gt(value) ? value : decimalText(usual);
  return { value, plusMinus: most, assumed: `the usual spread of a ${material.kind} in the catalogue` };
}

/** What of an ingredient nothing tells the error of; of water, salts and what has none there is no doubt. */
function untoldOf({ line: { role, material } }: WeighedLine): readonly string[] {
  const { kind, moisture, protein } = material;
  if (kind === "water" || kind === "salt" || kind === "alkali") return [];
  const figures = { moisture, ...(role === "flour" && protein && { protein: protein.value }) };
  const untold = (["moisture", "protein"] as const).filter((what) => {
    const value = figures[what];
    return value !== undefined && !dec(value).isZero() && doubtOf(material, what, value).untold;
  });
  const isOpen = role === "flour" && protein !== undefined && protein.nitrogenFactor === undefined;
  return [...untold, ...(isOpen ? ["nitrogen factor"] : [])];
}

const flourKinds: readonly MaterialKind[] = ["flour", "gluten", "starch", "bran"];

/** Half a unit of the last digit somebody wrote. */
function asRead(written = "0"): Doubt {
  const number = /\d+(?:\.\d+)?/u.exec(written)?.[0] ?? "0";
  return { plusMinus: decimalText(halfLastDigit(number)), assumed: `its last digit, as "${written}" is written` };
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
  return decimalText(dec(stated ?? dec(division).div(2)).times(lots));
}
