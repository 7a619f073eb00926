import type { Batch } from "../batch/batch.ts";
import type { Output } from "../blend/cause.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { flourBasis } from "../formula/blend.ts";
import { type Decimal, dec, HUNDRED, ONE, sum } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import { type BatchCauses, causesOf, type Input, type ModelLine } from "./spec-causes.ts";
import { type Tolerance, type ToleranceQuestion, tolerance } from "./tolerance.ts";

/** What the errors of a kitchen do to a load. */
export interface BatchTolerance {
  readonly causes: BatchCauses["causes"];
  /** What nobody states the error of, and nothing tells. */
  readonly exact: BatchCauses["exact"];
  readonly outputs: readonly Tolerance[];
}

const outputs: Readonly<Record<"protein" | "water" | "alkali" | "portion", Output>> = {
  protein: { id: "protein", label: `protein of the blend at ${flourBasis} % mb`, unit: "%", places: 2 },
  water: { id: "water", label: "dough water", unit: "% of dough", places: 2 },
  alkali: { id: "alkali", label: "alkalinity M", unit: "meq/100 g flour", places: 2 },
  portion: { id: "portion", label: "raw weight of a bowl", unit: "g", places: 1 },
};

/**
 * Tells what errors of weighing, flours, moisture, strength and losses do to the protein of the blend, the dough water, the
 * alkalinity and the weight of a bowl, in one load of a batch.
 *
 * Problems: `tolerance.no-error` where nothing is in doubt, and those of `tolerance`.
 */
export function batchTolerance(
  spec: Spec,
  batch: Batch,
  { seed, draws }: Pick<ToleranceQuestion, "seed" | "draws"> = {},
): Outcome<BatchTolerance> {
  const known = causesOf(spec, batch);
  if (known.causes.length === 0) {
    return refuse(problem("tolerance.no-error", [], {}));
  }
  const { lines } = known;
  const bowls = batch.target.bowls && dec(batch.target.bowls.value).div(batch.loads.count.value);
  const rework = batch.rework?.mass.value ?? 0;
  const model: ToleranceQuestion["model"] = (inputs, output) => {
    const read = ({ id, value }: Input): Decimal => inputs[id] ?? dec(value);
    switch (output) {
      case "protein":
        return proteinAtBasis(lines, read);
      case "water":
        return sum(lines.map(({ mass, moisture }) => read(mass).times(read(moisture)))).div(masses(lines, read));
      case "alkali":
        return alkalinity(lines, read);
      default:
        return known.losses
          .reduce((left, loss) => left.times(ONE.minus(read(loss).div(HUNDRED))), masses(lines, read).plus(rework))
          .div(bowls ?? ONE);
    }
  };
  const flours = lines.filter(({ flour }) => flour);
  const asked = [
    ...(flours.every(({ protein }) => protein !== undefined) ? [outputs.protein] : []),
    outputs.water,
    ...(lines.some(({ strength }) => strength !== undefined) ? [outputs.alkali] : []),
    ...(bowls === undefined ? [] : [outputs.portion]),
  ];
  const outcome = tolerance({
    causes: known.causes,
    outputs: asked,
    model,
    ...(seed !== undefined && { seed }),
    ...(draws !== undefined && { draws }),
  });
  if (!outcome.ok) return outcome;
  return answer({ causes: known.causes, exact: known.exact, outputs: outcome.value });
}

type Read = (input: Input) => Decimal;

function masses(lines: readonly ModelLine[], read: Read): Decimal {
  return sum(lines.map(({ mass }) => read(mass)));
}

/** Mixed as is, and brought to the basis by the mixed moisture. */
function proteinAtBasis(lines: readonly ModelLine[], read: Read): Decimal {
  const flours = lines.filter(({ flour }) => flour);
  const dryShare = ({ moisture }: ModelLine): Decimal => HUNDRED.minus(read(moisture));
  const protein = flours.map((line): Decimal => {
    if (line.protein === undefined) return dec(0);
    const { input, basisMoisture } = line.protein;
    const stated = read(line.mass).times(read(input));
    return basisMoisture === undefined ? stated : stated.times(dryShare(line)).div(HUNDRED.minus(basisMoisture));
  });
  const dry = sum(flours.map((line) => read(line.mass).times(dryShare(line))));
  return sum(protein).times(HUNDRED.minus(flourBasis)).div(dry);
}

function alkalinity(lines: readonly ModelLine[], read: Read): Decimal {
  const salts = lines.flatMap(({ mass, strength }) =>
    strength === undefined ? [] : [read(mass).times(read(strength))],
  );
  const flour = masses(
    lines.filter((line) => line.flour),
    read,
  );
  return sum(salts).times(HUNDRED).div(flour);
}
