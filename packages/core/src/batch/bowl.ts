import { type Figure, given, worked } from "../figure/figure.ts";
import { answer, type Note, note, type Outcome, problem, refuse } from "../figure/problem.ts";
import { definition, fromSpec, type Source } from "../figure/source.ts";
import type { Spec } from "../spec/spec.ts";
import { statedMass } from "./stated-mass.ts";

/** Cooked weight over raw weight where the kitchen has no figure of its own, and how far it is known. */
export const usualCookGain = { value: "1.8", least: "1.7", most: "1.9" } as const;

/** Where the usual cook gain comes from. */
export const cookGainSource: Source = {
  cite: "Standard Tables of Food Composition in Japan 2020: 1.755 by protein and 1.908 by carbohydrate from items 01047 and 01048; trade portions 1.79 to 1.88",
  standing: "copy",
};

/** Weights of a bowl, g, as far as they are stated. */
interface Bowl {
  readonly raw?: Figure;
  readonly cooked?: Figure;
  readonly gain?: Figure;
}

/** The weight of a bowl, raw and cooked. Problems: `batch.bowl-weight-twice`. */
export function bowlWeight(spec: Pick<Spec, "batch">): Outcome<Bowl> {
  const { rawWeight, cookedWeight } = spec.batch ?? {};
  if (rawWeight !== undefined && cookedWeight !== undefined) {
    return refuse(problem("batch.bowl-weight-twice", ["batch"], {}));
  }
  if (rawWeight !== undefined) return answer({ raw: statedMass("bowl.raw", "raw strands in a bowl", rawWeight) });
  if (cookedWeight === undefined) return answer({});
  const cooked = statedMass("bowl.cooked", "cooked noodles in a bowl", cookedWeight);
  const { gain, notes } = cookGain(spec);
  const naming = { id: "bowl.raw", label: "raw strands in a bowl", unit: "g", places: 1 };
  const raw = worked(naming, "cooked / gain", { cooked, gain }, definition);
  return answer({ raw, cooked, gain }, notes);
}

/** Cooked weight over raw weight: that of the spec, or the usual one with a note. */
export function cookGain(spec: Pick<Spec, "batch">): { readonly gain: Figure; readonly notes: readonly Note[] } {
  const stated = spec.batch?.cookGain;
  const gain = given(
    { id: "bowl.cook-gain", label: "cook gain", unit: "", places: 2 },
    stated ?? usualCookGain.value,
    stated === undefined ? "usual value" : "the spec",
    stated === undefined ? cookGainSource : fromSpec,
  );
  if (stated !== undefined) return { gain, notes: [] };
  const { value: taken, least, most } = usualCookGain;
  return { gain, notes: [note("batch.usual-cook-gain", ["batch"], { taken, least, most })] };
}
