import type { Batch } from "../batch/batch.ts";
import { exact, type Figure, renamed, standing, worked } from "../figure/figure.ts";
import { type Graph, published } from "../figure/graph.ts";
import { measure } from "../figure/in-system.ts";
import { answer, type Note, note, type Outcome, problem, problemsOf, refuse } from "../figure/problem.ts";
import { commonPractice, definition, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import type { OwnMachines } from "../materials/machine-schema.ts";
import { type DecimalText, dec, fixedText } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";
import { cookedMass } from "./day/cook.ts";
import { askedOr, celsius, type Given, placing, type Usual } from "./inputs.ts";
import { fitProblems, sizeWritten } from "./passes/fits.ts";
import type { CutterSize, Machine } from "./passes/machine.ts";
import { machineNamed } from "./passes/machine-of.ts";
import type { PassRequest } from "./passes/pass-request.ts";
import { type PassPlan, type PassSchedule, passPlan, scheduled, unevenSpeeds } from "./passes/passes.ts";
import { suitedSheet } from "./passes/suited-sheet.ts";
import type { CutRequest, SheetRequest } from "./strands/cut-request.ts";
import { type CutPlan, cutPlan, lengthInStrands, type Sheets, sheetsOf } from "./strands/geometry.ts";
import { compositionOf } from "./water/dough-food.ts";
import { doughDensity, givenDensity, poreFreeDensity } from "./water/food.ts";
import { denserNotes, thinnerNotes } from "./water/physical-bounds.ts";

/** The sheet of a spec: the passes and sheets of a load on its machine, and its strands where a cutter is stated. */
export interface SheetPlan {
  readonly machine: Machine;
  readonly density: Figure;
  readonly schedule: PassSchedule;
  readonly sheets: Sheets;
  readonly loads: Figure;
  readonly strands?: Strands;
  readonly graph: Graph;
}

/** What the sheets are cut into: strands and portions, and what becomes of every gram. */
export interface Strands {
  readonly cut: CutPlan;
  /** A portion when it is cooked, g, with the range of the usual cook gain. */
  readonly cooked: Figure;
  /** Portions that all loads give. */
  readonly portions: Figure;
  /**
   * Portions wanted, and by how many the loads give more; below zero where they give fewer, with `short` the number that is
   * missing.
   */
  readonly wanted?: { readonly bowls: Figure; readonly spare: Figure; readonly short?: Figure };
  /** What becomes of the dough, g: strands, leftover, trim and losses, and last the dough that they add up to. */
  readonly account: readonly AccountLine[];
}

/** A part of the account, for one load and for all. */
export interface AccountLine {
  readonly one: Figure;
  readonly all: Figure;
}

type SheetFields = NonNullable<Spec["sheet"]>;

/** Temperature that the density is estimated for where none is stated, °C; ten degrees change it by less than 0.5 %. */
const usualTemperature: Usual = { value: "25", source: commonPractice };

/**
 * Works out the passes and sheets of a spec's loads on its machine, and their strands and portions where a cutter is stated.
 *
 * Problems: `sheet.not-stated`, `machine.unknown`, those of `passSchedule`, `cutPlan` and `fitProblems`, each with its place
 * in the spec.
 */
export function planSheet(spec: Spec, formula: Formula, batch: Batch, included: OwnMachines = {}): Outcome<SheetPlan> {
  const sheeted = sheetedLoads(spec, formula, batch, included);
  if (!sheeted.ok) return sheeted;
  const { sheet, passes, machine, density, sheets, cut } = sheeted.value;
  const strands = cut && strandsOf(cut, spec, batch);
  if (strands?.ok === false) return strands;
  const schedule = scheduled(passes, { mass: sheets.sheetMass, density, width: sheetWidth(sheet, machine) });
  const loads = batch.loads.count;
  const plan = { machine, density, schedule, sheets, loads, ...(strands && { strands: strands.value }) };
  return answer(published(plan, formula.graph, batch.graph), [
    ...sheeted.notes,
    ...unevenSpeeds(schedule),
    ...(strands === undefined
      ? [note("sheet.no-cutter", ["sheet"], {})]
      : [
          ...shortNotes(strands.value, batch),
          ...leftoverNotes(strands.value, loads, sheet),
          ...lengthNotes(strands.value, sheet),
        ]),
    ...ownFigureNotes(sheet),
  ]);
}

/** The note of `planSheet` on sheets that give fewer portions than are wanted; none where there is no sheet to be had. */
export function shortPortionsNotes(spec: Spec, formula: Formula, batch: Batch, included: OwnMachines): readonly Note[] {
  const sheeted = sheetedLoads(spec, formula, batch, included);
  const cut = sheeted.ok ? sheeted.value.cut : undefined;
  return cut === undefined ? [] : shortNotes({ cut, ...portionsOf(cut, batch) }, batch);
}

/** What the loads are rolled and cut into, before their passes are written out. */
interface SheetedLoads extends Pick<SheetPlan, "machine" | "density" | "sheets"> {
  readonly sheet: SheetFields;
  readonly passes: PassPlan;
  readonly cut?: CutPlan;
}

function sheetedLoads(spec: Spec, formula: Formula, batch: Batch, included: OwnMachines): Outcome<SheetedLoads> {
  const { sheet } = spec;
  if (sheet === undefined) {
    const meant = suitedSheet(spec, included, batch.target.rawWeight);
    return refuse(problem("sheet.not-stated", ["sheet"], { ...(meant && { meant }) }));
  }
  const machine = machineNamed(sheet.machine, spec, included);
  const density = densityOf(spec, sheet, formula);
  if (!machine.ok || !density.ok) return refuse(...problemsOf(machine), ...problemsOf(density));
  const passes = passPlan(passRequest(sheet, machine.value));
  if (!passes.ok) return placed(passes.problems);
  const { cutter } = sheet;
  const request = sheetRequest(sheet, machine.value, batch, density.value, passes.value.last);
  const cut = cutter && cutPlan({ ...request, ...cutRequest({ ...sheet, cutter }, machine.value, batch) });
  const sheets = cut ?? sheetsOf(request);
  if (!sheets.ok) return placed(sheets.problems);
  const { sheetsPerLoad, sheetMass, sheetLength } = sheets.value;
  const width = sheetWidth(sheet, machine.value);
  const fits = fitProblems({ width, length: sheetLength.value, ...(cutter && { cutter }) }, machine.value);
  if (fits.length > 0) return placed(fits);
  const loads = {
    sheet,
    passes: passes.value,
    machine: machine.value,
    density: density.value,
    sheets: { sheetsPerLoad, sheetMass, sheetLength },
    ...(cut?.ok && { cut: cut.value }),
  };
  return answer(loads, [...density.notes, ...passes.notes]);
}

function strandsOf(cut: CutPlan, { batch: stated }: Spec, batch: Batch): Outcome<Strands> {
  const gain = stated?.cookGain;
  const cooked = cookedMass(cut.portion, gain === undefined ? undefined : { gain });
  if (!cooked.ok) return refuse(...cooked.problems.map((problem) => ({ ...problem, path: ["batch", "cookGain"] })));
  return answer({
    cut,
    cooked: renamed(cooked.value, "portion.cooked", "cooked portion"),
    ...portionsOf(cut, batch),
    account: accountOf(cut, batch.loads.count),
  });
}

function sheetWidth(sheet: SheetFields, { rolls }: Machine): DecimalText {
  return sheet.width?.value ?? rolls.width;
}

/** Where in the spec the names of the requests stand. */
const places = {
  finalThickness: ["sheet", "thickness"],
  firstThickness: ["sheet", "start"],
  gaps: ["sheet", "machine"],
  compounding: ["sheet", "compounding"],
  largestReduction: ["sheet", "largestReduction"],
  springBack: ["sheet", "springBack"],
  rollSpeed: ["sheet", "machine"],
  width: ["sheet", "width"],
  cutter: ["sheet", "cutter"],
  portion: ["sheet", "portion"],
  strandLength: ["sheet", "strandLength"],
  edgeTrim: ["sheet", "edgeTrim"],
  endTrim: ["sheet", "endTrim"],
  losses: ["losses", "mixing"],
};

const placed = placing(places, ["sheet"]);

function densityOf(spec: Spec, sheet: SheetFields, formula: Formula): Outcome<Figure> {
  const { composition, notes } = compositionOf(formula.lines);
  const stated = spec.temperature?.dough?.value;
  const temperature = askedOr(celsius("dough", "dough temperature wanted"), stated, usualTemperature);
  if (sheet.density !== undefined) {
    const measured = givenDensity(sheet.density.value);
    const dense = poreFreeDensity({ composition, temperature });
    return dense.ok ? answer(measured, denserNotes(measured, dense.value, "this dough")) : placed(dense.problems);
  }
  const density = doughDensity({ composition, temperature }, sheet.air?.value ?? "0");
  return density.ok ? answer(density.value, [...density.notes, ...notes]) : placed(density.problems);
}

function passRequest(sheet: SheetFields, { rolls }: Machine): PassRequest {
  const { start, compounding, gaps, largestReduction, springBack, tolerance } = sheet;
  return {
    gaps: gaps === undefined ? rolls.gaps : { kind: "list", gaps: gaps.map(({ value }) => value) },
    finalThickness: sheet.thickness.value,
    ...(start && { firstThickness: start.value }),
    ...(compounding && {
      compounding: {
        gap: compounding.gap.value,
        folds: compounding.folds,
        ...(compounding.layers !== undefined && { layers: compounding.layers }),
      },
    }),
    ...(rolls.compoundingGap !== undefined && { compoundingGap: rolls.compoundingGap }),
    ...(largestReduction && { largestReduction: largestReduction.value }),
    ...(springBack !== undefined && { springBack }),
    ...(tolerance && { finalTolerance: tolerance.value }),
    ...(rolls.speed !== undefined && { rollSpeed: rolls.speed }),
    ...(rolls.stands !== undefined && { stands: rolls.stands }),
  };
}

function sheetRequest(
  sheet: SheetFields,
  machine: Machine,
  batch: Batch,
  density: Figure,
  thickness: Given,
): SheetRequest {
  const mixing = batch.target.stages.find(({ name }) => name === "mixing");
  return {
    dough: batch.loads.dough,
    density,
    thickness,
    width: sheetWidth(sheet, machine),
    ...(mixing && { losses: mixing.loss }),
    ...(machine.longestSheet !== undefined && { longestSheet: machine.longestSheet }),
  };
}

function cutRequest(
  sheet: SheetFields & { readonly cutter: CutterSize },
  machine: Machine,
  batch: Batch,
): Omit<CutRequest, keyof SheetRequest> {
  const portion = sheet.portion?.value ?? batch.target.rawWeight;
  const cutter = machine.cutters.find(({ size }) => sizeWritten(size) === sizeWritten(sheet.cutter));
  return {
    cutter: sheet.cutter,
    ...(cutter?.workingWidth !== undefined && { workingWidth: cutter.workingWidth }),
    ...(portion !== undefined && { portion }),
    ...(sheet.strandLength && { strandLength: sheet.strandLength.value }),
    ...(sheet.edgeTrim && { edgeTrim: sheet.edgeTrim.value }),
    ...(sheet.endTrim && { endTrim: sheet.endTrim.value }),
  };
}

function portionsOf(cut: CutPlan, batch: Batch): Pick<Strands, "portions" | "wanted"> {
  const naming = { id: "batch.portions-made", label: "portions of all loads", unit: "", places: 0 };
  const from = { loads: batch.loads.count, portions: cut.portionsPerLoad };
  const portions = worked(naming, "loads * portions", from, massBalance);
  const { bowls } = batch.target;
  if (bowls === undefined) return { portions };
  const against = { made: portions, bowls };
  const beyond = { id: "batch.portions-spare", label: "portions beyond the bowls wanted", unit: "", places: 0 };
  const spare = worked(beyond, "made - bowls", against, definition);
  if (exact(portions).gte(exact(bowls))) {
    return { portions: standing(portions, { least: bowls }), wanted: { bowls, spare } };
  }
  const missing = { id: "batch.portions-short", label: "portions short of the bowls wanted", unit: "", places: 0 };
  const short = worked(missing, "bowls - made", { bowls, made: portions }, definition);
  return { portions: standing(portions, { most: bowls }), wanted: { bowls, spare, short } };
}

function accountOf({ account }: CutPlan, loads: Figure): readonly AccountLine[] {
  const { dough, losses, edgeTrim, endTrim, strands, leftover } = account;
  return [strands, leftover, edgeTrim, endTrim, losses, dough].map((one) => {
    const naming = { id: `${one.id}-all-loads`, label: `${one.label}, all loads`, unit: "g", places: 1 };
    return { one, all: worked(naming, "one * loads", { one, loads }, massBalance) };
  });
}

/** Where the sheets give fewer portions than the batch counts on, the losses of the batch are too low. */
function shortNotes({ wanted, cut }: Pick<Strands, "wanted" | "cut">, batch: Batch): readonly Note[] {
  if (wanted === undefined || !exact(wanted.spare).isNegative()) return [];
  const { account } = cut;
  const afterMixing = exact(account.dough).minus(exact(account.losses));
  const lost = dec(100).times(afterMixing.minus(exact(account.strands)).div(afterMixing));
  const counted = dec(100).minus(
    batch.target.stages
      .filter(({ name }) => name !== "mixing")
      .reduce((kept, { loss }) => kept.times(dec(100).minus(exact(loss))).div(100), dec(100)),
  );
  const fewer = fixedText(exact(wanted.spare).negated(), 0);
  const facts = { fewer, wanted: wanted.bowls.value, lost: fixedText(lost, 1), counted: fixedText(counted, 1) };
  return [note("sheet.portions-short", ["losses", "sheeting"], facts)];
}

/** Where a load leaves enough over for another portion, since the ends of its sheets are shorter than a strand. */
function leftoverNotes({ cut }: Strands, loads: Figure, { endTrim }: SheetFields): readonly Note[] {
  const { leftover } = cut.account;
  const more = exact(leftover).div(exact(cut.portion)).floor();
  const length = lengthInStrands(cut.sheetLength, { ...(endTrim && { endTrim: endTrim.value }) });
  const cuts = length.div(exact(cut.cutLength)).floor();
  if (more.isZero() || cuts.isZero()) return [];
  const end = length.minus(cuts.times(exact(cut.cutLength)));
  const facts = {
    left: measure(leftover.value, "g", 0),
    loads: exact(loads).gt(1) ? ("several" as const) : ("one" as const),
    portions: more.toFixed(),
    end: measure(end, "mm", 0),
    lengths: [cuts.plus(1), cuts].map((count) => measure(length.div(count).floor(), "mm")),
  };
  return [note("sheet.much-left-over", ["sheet", "strandLength"], facts)];
}

/** Says how long the strands of a portion are where nobody states it. */
function lengthNotes({ cut }: Strands, { strandLength }: SheetFields): readonly Note[] {
  if (strandLength !== undefined) return [];
  return [note("sheet.strand-length", ["sheet"], { length: measure(cut.cutLength.value, "mm", 0) })];
}

function ownFigureNotes({ springBack, compounding }: SheetFields): readonly Note[] {
  const springs =
    springBack === undefined ? [note("sheet.spring-back-unmeasured", ["sheet"], {})] : thinnerNotes(dec(springBack));
  const layers = compounding !== undefined && compounding.folds > 0;
  return [...springs, ...(layers ? [note("sheet.layers", ["sheet", "compounding"], {})] : [])];
}
