import type { Hold } from "@noodlewright/core/explore";
import type { Override } from "../input/overrides.ts";
import type { Asked, Flag } from "./command.ts";
import { flagsAt, overridesOf, plainNumber, type ValueFlags } from "./flag-values.ts";
import { nameAndAmount } from "./flags.ts";

const wanted = flagsAt("wanted");

/** Flags of how a blend is searched, in place of what the spec says under `wanted:`. */
export const searchValues: ValueFlags = {
  within: wanted("within", "How near a protein value has to be met, ±", "0.1 %"),
  basis: wanted("basis", "Moisture basis of protein and ash", "14 % mb"),
  step: wanted("step", "Steps that the shares come in", "1 %"),
  "most-flours": wanted("mostFlours", "Most flours that may be in the blend", "3", plainNumber),
  "least-share": wanted("leastShare", "Smallest share of a flour that is in the blend at all", "5 %"),
  alternatives: wanted("alternatives", "How many blends to show", "5", plainNumber),
};

/** Flags of what a blend has to reach. */
export const wantedValues: ValueFlags = {
  protein: wanted("protein", "Protein of the blend: a value, a range, or one end of it", "11.5 %"),
  "gluten-protein": wanted("glutenProtein", "Least protein that forms gluten", "9 %"),
  ash: wanted("ash", "Most ash, or a window of it", "0.38 to 0.45 %"),
  wholegrain: wanted("wholegrain", "Share of wholegrain flours", "at least 20 %"),
  price: wanted("price", "Most that the blend may cost", "1.10 EUR/kg"),
  "batch-price": wanted("batchPrice", "Most that all the flour of the batch may cost", "12 EUR"),
  prefer: wanted(
    "prefer",
    "Which blend comes first: nearest, cheapest, fewest, most FLOUR, or use up FLOUR; OTHER FLOUR",
    "most rye flour",
  ),
  ...searchValues,
};

/** A flour that may go in, with its share. */
export const shelfFlag: Readonly<Record<string, Flag>> = {
  shelf: {
    describe: "A flour that may go in, or a limit of one; may be given several times",
    placeholder: "vital wheat gluten=at most 4 %",
  },
};

/** Flags of a blend that no value stands behind, and those that may be given several times. */
export const blendFlags: Readonly<Record<string, Flag>> = {
  bag: { describe: "Whole bags of a flour only; may be given several times", placeholder: "bread flour=25 kg" },
  "whole-range": {
    describe: "Meet protein over the whole range that labels and certificates leave open",
    kind: "switch",
  },
};

/** What a flour that takes the place of another keeps. */
export const holdFlag = (usual: readonly Hold[]): Readonly<Record<string, Flag>> => ({
  hold: {
    describe:
      "What the new blend keeps, of protein, ash, gluten protein, wholegrain share; also `ash or less`, `gluten protein or more`",
    placeholder: "protein, ash",
    fallback: usual.join(", "),
  },
});

/** What those flags say, as parts of the spec. */
export function blendOverrides(asked: Asked): readonly Override[] {
  const bags = asked.list("bag").map((text): Override => {
    const { name, amount = "" } = nameAndAmount(text);
    return { flag: "--bag", path: ["shelf", name, "bag"], value: amount, example: "bread flour=25 kg" };
  });
  const whole = { flag: "--whole-range", path: ["wanted", "wholeRange"], value: true, example: "" };
  return [...bags, ...(asked.on("whole-range") ? [whole] : [])];
}

/** The flags of a search. */
export const searchFlags: Readonly<Record<string, Flag>> = { ...shelfFlag, ...searchValues };

/** What `--shelf` says, as parts of the spec. */
export function shelfOverrides(asked: Asked): readonly Override[] {
  return asked.list("shelf").map((text): Override => {
    const at = text.indexOf("=");
    const name = (at < 0 ? text : text.slice(0, at)).trim();
    const share = at < 0 ? "any" : text.slice(at + 1).trim();
    return { flag: "--shelf", path: ["shelf", name, "share"], value: share, example: `${name}=at most 4 %` };
  });
}

/** The parts of a spec that the flags of a search say. */
export function searchOverrides(values: ValueFlags, asked: Asked): readonly Override[] {
  return [...overridesOf(values, asked), ...shelfOverrides(asked)];
}
