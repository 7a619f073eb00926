import { type Figure, found, given, worked } from "../figure/figure.ts";
import { answer, inputProblem, type Note, type Outcome, type Path, refuse } from "../figure/problem.ts";
import { commonPractice, definition, fromSpec, massBalance, type Source } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import type { Spec } from "../formula/spec.ts";
import { nearestNames } from "../materials/catalogue.ts";
import { dec, ZERO } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";

/** Cooked weight over raw weight where the kitchen has no figure of its own, and how far it is known. */
export const usualCookGain = { value: "1.8", least: "1.7", most: "1.9" } as const;

/** Where the usual cook gain comes from. */
export const cookGainSource: Source = {
  cite: "Standard Tables of Food Composition in Japan 2020: 1.755 by protein and 1.908 by carbohydrate from items 01047 and 01048; trade portions 1.79 to 1.88",
  standing: "copy",
};

/** Size of a batch and what happens to it on the way to the bowls. Masses in g. */
export interface Target {
  /** Dough in the mixer, before any loss. */
  readonly dough: Figure;
  /** What is left after each stage: mixing, sheeting, cutting. */
  readonly stages: readonly Stage[];
  /** Raw strands at the end. */
  readonly strands: Figure;
  /** Raw strands in a bowl, where it is stated. */
  readonly rawWeight?: Figure;
  readonly cookedWeight?: Figure;
  readonly bowls?: Figure;
  readonly figures: readonly Figure[];
}

export interface Stage {
  readonly name: "mixing" | "sheeting" | "cutting";
  readonly loss: Figure;
  readonly lost: Figure;
  readonly after: Figure;
}

/**
 * Finds the dough that has to be mixed for a batch, losses worked backwards.
 *
 * Problems: `batch.not-stated`, `batch.stated-twice`, `batch.bowl-weight-missing`, `batch.bowl-weight-twice`,
 * `batch.unknown-ingredient`, `batch.ingredient-zero`, `mixer.needed`.
 */
export function findTarget(spec: Spec, formula: Formula): Outcome<Target> {
  const bowl = bowlWeight(spec);
  if (!bowl.ok) return bowl;
  const losses = lossFigures(spec);
  const size = doughFigure(spec, formula, bowl.value.raw, losses);
  if (!size.ok) return size;
  const { dough, leaves } = size.value;
  const stages = runStages(dough, losses);
  const last = stages.at(-1);
  if (last === undefined) return refuse(notStated());
  const strands = { ...last.after, id: "batch.strands", label: "raw strands" };
  const { raw, cooked, gain } = bowl.value;
  const bowls = raw && bowlCount(spec, strands, raw);
  const bowlFigures = [cooked, gain, raw].filter((figure): figure is Figure => figure !== undefined);
  const figures = [...leaves, dough, ...stages.flatMap((stage) => [stage.loss, stage.lost, stage.after]), strands];
  return answer(
    {
      dough,
      stages,
      strands,
      ...(raw && { rawWeight: raw }),
      ...(cooked && { cookedWeight: cooked }),
      ...(bowls && { bowls }),
      figures: [...bowlFigures, ...figures, ...(bowls ? [bowls] : [])],
    },
    bowl.notes,
  );
}

/** Weights of a bowl, g, as far as they are stated. */
export interface Bowl {
  readonly raw?: Figure;
  readonly cooked?: Figure;
  readonly gain?: Figure;
}

/** The weight of a bowl, raw and cooked. Problems: `batch.bowl-weight-twice`. */
export function bowlWeight(spec: Pick<Spec, "batch">): Outcome<Bowl> {
  const { rawWeight, cookedWeight } = spec.batch ?? {};
  if (rawWeight !== undefined && cookedWeight !== undefined) {
    const expected = "the raw or the cooked weight of a bowl";
    return refuse(
      inputProblem("batch.bowl-weight-twice", ["batch"], "both rawWeight and cookedWeight", expected, "keep one"),
    );
  }
  if (rawWeight !== undefined) return answer({ raw: mass("bowl.raw", "raw strands in a bowl", rawWeight) });
  if (cookedWeight === undefined) return answer({});
  const cooked = mass("bowl.cooked", "cooked noodles in a bowl", cookedWeight);
  const { gain, notes } = cookGain(spec);
  const raw = worked({
    id: "bowl.raw",
    label: "raw strands in a bowl",
    unit: "g",
    places: 1,
    formula: "cooked / gain",
    from: { cooked, gain },
    sources: [definition],
  });
  return answer({ raw, cooked, gain }, notes);
}

/** Cooked weight over raw weight: that of the spec, or the usual one with a note. */
export function cookGain(spec: Pick<Spec, "batch">): { readonly gain: Figure; readonly notes: readonly Note[] } {
  const stated = spec.batch?.cookGain;
  const gain = given({
    id: "bowl.cook-gain",
    label: "cook gain",
    unit: "",
    places: 2,
    value: stated ?? usualCookGain.value,
    by: stated === undefined ? "usual value" : "spec",
    sources: [stated === undefined ? cookGainSource : fromSpec],
  });
  if (stated !== undefined) return { gain, notes: [] };
  const text = `the cook gain is taken as ${usualCookGain.value}; kitchens find ${usualCookGain.least} to ${usualCookGain.most}, so weigh one cooked portion and write \`cookGain\``;
  return { gain, notes: [{ code: "batch.usual-cook-gain", path: ["batch"], text }] };
}

function mass(id: string, label: string, quantity: Quantity): Figure {
  const { value, text } = quantity;
  return given({ id, label, unit: "g", places: 1, value, by: `spec, ${text}`, sources: [fromSpec] });
}

const stageNames = ["mixing", "sheeting", "cutting"] as const;
type Losses = Readonly<Record<(typeof stageNames)[number], Figure>>;

function lossFigures(spec: Spec): Losses {
  const loss = (name: (typeof stageNames)[number]): Figure => {
    const stated = spec.losses?.[name];
    return given({
      id: `loss.${name}`,
      label: `loss at ${name}`,
      unit: "%",
      places: 2,
      value: stated?.value ?? ZERO,
      by: stated === undefined ? "none stated" : `spec, ${stated.text}`,
      sources: [stated === undefined ? commonPractice : fromSpec],
    });
  };
  return { mixing: loss("mixing"), sheeting: loss("sheeting"), cutting: loss("cutting") };
}

const doughNaming = { id: "batch.dough", label: "dough to mix", unit: "g", places: 1 };

/** The dough to mix and what it is worked out from. */
interface Size {
  readonly dough: Figure;
  readonly leaves: readonly Figure[];
}

function doughFigure(spec: Spec, formula: Formula, raw: Figure | undefined, losses: Losses): Outcome<Size> {
  const batch = spec.batch ?? {};
  const ways = (["bowls", "dough", "flour", "load", "have"] as const).filter((way) => batch[way] !== undefined);
  const [way, second] = ways;
  if (second !== undefined) {
    const expected = "one of bowls, dough, flour, load or have";
    const advice = "keep the one that sets the size of the batch";
    return refuse(inputProblem("batch.stated-twice", ["batch"], ways.join(" and "), expected, advice));
  }
  const parts = formula.water.dough;
  if (way === undefined) {
    return formula.writtenFlour === undefined ? refuse(notStated()) : answer(doughAsWritten(formula));
  }
  switch (way) {
    case "bowls":
      return raw === undefined ? refuse(weightMissing()) : answer(doughForBowls(batch.bowls ?? 0, raw, losses));
    case "dough":
      return answer({ dough: mass("batch.dough", "dough to mix", batch.dough as Quantity), leaves: [] });
    case "flour":
      return answer(doughForFlour(mass("batch.flour-stated", "flour stated", batch.flour as Quantity), parts));
    case "load":
      return doughForLoad(spec, parts);
    case "have":
      return doughForIngredient(batch.have as Have, formula);
  }
}

type Have = NonNullable<NonNullable<Spec["batch"]>["have"]>;

function doughForBowls(count: number, raw: Figure, losses: Losses): Size {
  const bowls = given({
    id: "batch.bowls-stated",
    label: "bowls",
    unit: "",
    places: 0,
    value: count,
    by: "spec",
    sources: [fromSpec],
  });
  const dough = worked({
    ...doughNaming,
    formula: "bowls * raw / ((1 - mixing / 100) * (1 - sheeting / 100) * (1 - cutting / 100))",
    from: { bowls, raw, ...losses },
    sources: [massBalance],
  });
  return { dough, leaves: [bowls] };
}

function doughForFlour(flour: Figure, parts: Figure): Size {
  const from = { flour, parts };
  const dough = worked({ ...doughNaming, formula: "flour * parts / 100", from, sources: [massBalance] });
  return { dough, leaves: [flour] };
}

function doughAsWritten(formula: Formula): Size {
  const flour = formula.writtenFlour as Figure;
  const factor = formula.referenceFactor;
  const parts = formula.water.dough;
  if (factor === undefined) return doughForFlour(flour, parts);
  const from = { flour, factor, parts };
  const dough = worked({ ...doughNaming, formula: "flour / factor * parts / 100", from, sources: [massBalance] });
  return { dough, leaves: [] };
}

function doughForLoad(spec: Spec, parts: Figure): Outcome<Size> {
  const { mixer } = spec;
  const size = spec.batch?.load;
  const limit = size === "smallest" ? mixer?.smallest : mixer?.largest;
  if (limit === undefined) {
    const expected = `the mixer's ${size ?? "largest"} load`;
    const path: Path = mixer === undefined ? ["batch", "load"] : ["mixer"];
    return refuse(
      inputProblem("mixer.needed", path, `no ${size ?? "largest"} load`, expected, "state it under `mixer:`"),
    );
  }
  const figure = mass("mixer.limit", `${size ?? "largest"} load of the mixer`, limit);
  if (spec.mixer?.of === "flour") return answer(doughForFlour(figure, parts));
  return answer({ dough: { ...figure, id: doughNaming.id, label: doughNaming.label }, leaves: [] });
}

function doughForIngredient(have: Have, formula: Formula): Outcome<Size> {
  const wanted = have.name.trim().toLowerCase();
  const lines = formula.lines.filter(
    (line) => line.name.trim().toLowerCase() === wanted || line.material.name === wanted,
  );
  const path: Path = ["batch", "have", "name"];
  if (lines.length === 0) {
    const names = formula.lines.map((line) => line.name);
    const nearest = nearestNames(have.name, names, 2);
    return refuse(
      inputProblem(
        "batch.unknown-ingredient",
        path,
        `"${have.name}"`,
        `an ingredient of the formula: ${names.join(", ")}`,
        nearest.length > 0 ? `did you mean ${nearest.map((name) => `"${name}"`).join(" or ")}?` : "name one of these",
      ),
    );
  }
  const parts = lines.map((line) => line.parts);
  if (parts.every((part) => dec(part.value).isZero())) {
    const advice = "name an ingredient that the dough needs";
    return refuse(
      inputProblem(
        "batch.ingredient-zero",
        path,
        `"${have.name}", of which the dough takes none`,
        "some of it",
        advice,
      ),
    );
  }
  const stock = mass("batch.have", `${have.name} there is`, have.amount);
  const dough = worked({
    ...doughNaming,
    formula: "have * dough / sum(parts)",
    from: { have: stock, dough: formula.water.dough, parts },
    sources: [massBalance],
  });
  return answer({ dough, leaves: [stock] });
}

function runStages(dough: Figure, losses: Losses): readonly Stage[] {
  const after: Readonly<Record<Stage["name"], string>> = {
    mixing: "dough at the rolls",
    sheeting: "sheet at the cutter",
    cutting: "raw strands",
  };
  const stages: Stage[] = [];
  let before = dough;
  for (const name of stageNames) {
    const loss = losses[name];
    const lost = worked({
      id: `batch.lost-${name}`,
      label: `lost at ${name}`,
      unit: "g",
      places: 1,
      formula: "before * loss / 100",
      from: { before, loss },
      sources: [massBalance],
    });
    const left = worked({
      id: `batch.after-${name}`,
      label: after[name],
      unit: "g",
      places: 1,
      formula: "before - lost",
      from: { before, lost },
      sources: [massBalance],
    });
    stages.push({ name, loss, lost, after: left });
    before = left;
  }
  return stages;
}

function bowlCount(spec: Spec, strands: Figure, raw: Figure): Figure {
  const naming = { id: "batch.bowls", label: "bowls", unit: "", places: 0 };
  const stated = spec.batch?.bowls;
  if (stated !== undefined) return found({ ...naming, value: stated, by: "spec", sources: [fromSpec] });
  return worked({ ...naming, formula: "floor(strands / raw)", from: { strands, raw }, sources: [definition] });
}

function notStated() {
  return inputProblem(
    "batch.not-stated",
    ["batch"],
    "no size of batch",
    "one of bowls, dough, flour, load or have",
    "write it under `batch:`, or give it as a flag such as --bowls 320 --raw-weight '130 g'",
  );
}

function weightMissing() {
  return inputProblem(
    "batch.bowl-weight-missing",
    ["batch"],
    "a number of bowls without their weight",
    "rawWeight or cookedWeight beside bowls",
    "write `rawWeight: 130 g`, or `cookedWeight: 230 g` with `cookGain`",
  );
}
