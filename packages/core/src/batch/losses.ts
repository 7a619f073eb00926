import { type Figure, given, worked } from "../figure/figure.ts";
import { commonPractice, fromSpec, massBalance } from "../figure/source.ts";
import { ZERO } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";

/** A stage on the way to the bowls: what it loses, %, and what is left, g. */
export interface Stage {
  readonly name: "mixing" | "sheeting" | "cutting";
  readonly loss: Figure;
  readonly lost: Figure;
  readonly after: Figure;
}

const stageNames = ["mixing", "sheeting", "cutting"] as const;
/** The loss of each stage, % of what enters it. */
export type Losses = Readonly<Record<(typeof stageNames)[number], Figure>>;

/** The losses that a spec states; none where it states none. */
export function lossFigures(spec: Spec): Losses {
  const loss = (name: (typeof stageNames)[number]): Figure => {
    const stated = spec.losses?.[name];
    return given(
      { id: `loss.${name}`, label: `loss at ${name}`, unit: "%", places: 2 },
      stated?.value ?? ZERO,
      stated === undefined ? "none stated" : `spec, ${stated.text}`,
      stated === undefined ? commonPractice : fromSpec,
    );
  };
  return { mixing: loss("mixing"), sheeting: loss("sheeting"), cutting: loss("cutting") };
}

/** What is left after each stage. */
export function runStages(dough: Figure, losses: Losses): readonly Stage[] {
  const after: Readonly<Record<Stage["name"], string>> = {
    mixing: "dough at the rolls",
    sheeting: "sheet at the cutter",
    cutting: "raw strands",
  };
  const stages: Stage[] = [];
  let before = dough;
  for (const name of stageNames) {
    const loss = losses[name];
    const lostNaming = { id: `batch.lost-${name}`, label: `lost at ${name}`, unit: "g", places: 1 };
    const lost = worked(lostNaming, "before * loss / 100", { before, loss }, massBalance);
    const leftNaming = { id: `batch.after-${name}`, label: after[name], unit: "g", places: 1 };
    const left = worked(leftNaming, "before - lost", { before, lost }, massBalance);
    stages.push({ name, loss, lost, after: left });
    before = left;
  }
  return stages;
}
