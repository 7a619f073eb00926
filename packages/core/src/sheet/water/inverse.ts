import { exact, type Figure, found, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { type Outcome, type Problem, problem, refuse } from "../../figure/problem.ts";
import { definition, massBalance } from "../../figure/source.ts";
import { type DecimalText, dec } from "../../number/decimal.ts";
import { asked, askedFigure, type Given, numberOf, outsideLimits } from "../inputs.ts";

/** A sheet or strip measured on the bench: mm and g. */
export interface MeasuredSheet {
  readonly length: DecimalText;
  readonly width: DecimalText;
  readonly thickness: DecimalText;
  readonly mass: DecimalText;
}

const sizes = {
  length: { id: "measured.length", label: "length", unit: "mm", places: 0 },
  width: { id: "measured.width", label: "width", unit: "mm", places: 0 },
  thickness: { id: "measured.thickness", label: "thickness", unit: "mm", places: 2 },
  mass: { id: "measured.mass", label: "mass", unit: "g", places: 1 },
};

/**
 * Finds the density of a dough from a measured strip, in g/mL.
 *
 * Problems: `sheet.out-of-range`.
 *
 * @example shown(densityFromSheet({ length: "1000", width: "150", thickness: "2", mass: "372" }).value) // => "1.240 g/mL"
 */
export function densityFromSheet(sheet: MeasuredSheet): Outcome<Published<Figure>> {
  const problems = aboveZero({ ...sheet });
  if (problems.length > 0) return refuse(...problems);
  const naming = { id: "dough.density", label: "measured dough density", unit: "g/mL", places: 3 };
  const from = { ...measured(sheet), thickness: asked(sizes.thickness, sheet.thickness) };
  return publish(worked(naming, "mass * 1000 / (length * width * thickness)", from, definition));
}

/**
 * Finds the mean thickness of a sheet from its mass, size and density, in mm: steadier than a gauge on soft dough.
 *
 * Problems: `sheet.out-of-range`.
 *
 * @example shown(thicknessFromSheet({ length: "1000", width: "150", mass: "372" }, givenDensity("1.24")).value) // => "2.00 mm"
 */
export function thicknessFromSheet(
  sheet: Omit<MeasuredSheet, "thickness">,
  density: Figure,
): Outcome<Published<Figure>> {
  const problems = aboveZero({ ...sheet, density: density.value });
  if (problems.length > 0) return refuse(...problems);
  const naming = { ...sizes.thickness, label: "mean thickness" };
  const from = { ...measured(sheet), density };
  return publish(worked(naming, "mass * 1000 / (length * width * density)", from, definition));
}

function measured({ mass, length, width }: Omit<MeasuredSheet, "thickness">) {
  return { mass: asked(sizes.mass, mass), length: asked(sizes.length, length), width: asked(sizes.width, width) };
}

/**
 * Finds the spring-back: the thickness of the sheet, measured or from its mass, by the gap it came through.
 *
 * Problems: `sheet.out-of-range`.
 *
 * @example shown(springBackFrom("1.4", "1.25").value) // => "1.12"
 */
export function springBackFrom(thickness: Given, gap: DecimalText): Outcome<Published<Figure>> {
  const problems = aboveZero({ thickness: numberOf(thickness), gap });
  if (problems.length > 0) return refuse(...problems);
  const naming = { id: "passes.spring-back", label: "measured spring-back", unit: "", places: 2 };
  const opened = asked({ id: "measured.gap", label: "gap", unit: "mm", places: 2 }, gap);
  const from = { thickness: askedFigure(sizes.thickness, thickness), gap: opened };
  return publish(worked(naming, "thickness / gap", from, definition));
}

/** What went into a stage of the work and what came out of it, weighed, g. What was added on the way is named. */
export interface WeighedStage {
  readonly stage: string;
  readonly before: DecimalText;
  readonly added?: DecimalText;
  readonly after: DecimalText;
}

/** The losses of a weighed batch: of each stage, and of a dough that goes through all of them. */
export interface StageLosses {
  readonly stages: readonly { readonly stage: string; readonly loss: Figure }[];
  readonly total: Figure;
}

/**
 * Finds the losses by stage from one weighed batch, in %.
 *
 * Problems: `sheet.out-of-range`, `inverse.no-stages`, `inverse.gained` when more came out of a stage than went in.
 *
 * @example shown(lossesFrom([{ stage: "mix", before: "10000", after: "9950" }]).value.total) // => "0.50 %"
 */
export function lossesFrom(stages: readonly WeighedStage[]): Outcome<Published<StageLosses>> {
  if (stages.length === 0) return refuse(problem("inverse.no-stages", [], {}));
  const problems = stages.flatMap((stage, index) => stageProblems(stage, index));
  if (problems.length > 0) return refuse(...problems);
  const losses = stages.map((stage) => ({ stage: stage.stage, loss: lossOf(stage) }));
  const share = losses.reduce((left, { loss }) => left.times(dec(100).minus(exact(loss)).div(100)), dec(1));
  const keeping = { id: "losses.kept", label: "share kept through all stages", unit: "", places: 4 };
  const kept = found(keeping, share, "product of what each stage keeps", undefined, massBalance);
  const naming = { id: "losses.total", label: "losses of all stages", unit: "%", places: 2 };
  return publish({ stages: losses, total: worked(naming, "(1 - kept) * 100", { kept }, massBalance) });
}

function stageProblems(stage: WeighedStage, index: number): readonly Problem[] {
  const range = outsideLimits([
    { path: [index, "before"], value: stage.before, unit: "g", above: "0" },
    { path: [index, "added"], value: stage.added, unit: "g", least: "0" },
    { path: [index, "after"], value: stage.after, unit: "g", least: "0" },
  ]);
  if (range.length > 0) return range;
  const into = dec(stage.before).plus(stage.added ?? "0");
  if (into.gte(stage.after)) return [];
  return [problem("inverse.gained", [index, "after"], { after: stage.after, before: into.toString() })];
}

function lossOf({ stage, before, added, after }: WeighedStage): Figure {
  const naming = { id: `losses.${stage}`, label: `loss at ${stage}`, unit: "%", places: 2 };
  return worked(naming, "(1 - after / (before + added)) * 100", { before, added: added ?? "0", after }, massBalance);
}

function aboveZero(values: Readonly<Record<string, DecimalText>>): readonly Problem[] {
  return outsideLimits(Object.entries(values).map(([name, value]) => ({ path: [name], value, unit: "", above: "0" })));
}
