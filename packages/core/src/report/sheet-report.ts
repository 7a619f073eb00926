import { exact, type Figure } from "../figure/figure.ts";
import { groupDigits, inUnit, measure, type UnitSystem } from "../figure/in-system.ts";
import { type Note, note } from "../figure/problem.ts";
import { told } from "../figure/told.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import { roundKeepingTotal } from "../number/rounding.ts";
import { sheetCautions } from "../sheet/cautions.ts";
import type { Pass } from "../sheet/passes/passes.ts";
import type { SheetPlan, Strands } from "../sheet/sheet-plan.ts";
import { figureBlock, listing, numberColumn, pictureBlock, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import { passStrip } from "./pictures/pass-strip.ts";
import type { Picture } from "./pictures/svg.ts";
import type { Cell, Report, Table, Telling } from "./schema.ts";
import { cellOr, figureCell, words } from "./show.ts";

/** Tells a sheet: its passes, and where it is cut its strands and portions, and what becomes of every gram of a load. */
export function sheetReport(formula: Formula, plan: SheetPlan, { notes, units = "metric" }: Telling): Report {
  const { strands } = plan;
  const passes = passTable(plan, passColumns(plan, units));
  return report({
    command: "sheet",
    title: `${formula.name}: ${plan.machine.name}`,
    main: "passes",
    sections: [
      section("passes", "Passes of a sheet", passes, tripsLine(plan), pictureBlock(stripOf(plan))),
      section("sheets", sheetsHeading(plan), figureBlock(sheetFigures(plan), units)),
      ...(strands ? [section("account", "What becomes of the dough", accountTable(strands, plan.loads, units))] : []),
    ],
    figures: Object.values(plan.graph),
    units,
    notes: [...notes, ...(strands ? cookedNotes(strands) : [])],
    cautions: [...formulaCautions(formula), ...sheetCautions(["rolls", "cutter", "dust"]).map(told)],
  });
}

/** Names what stands there. */
export function sheetsHeading({ strands }: SheetPlan): string {
  return strands === undefined ? "Sheets" : "Sheets and strands";
}

/** How far the cooked weight is known. */
function cookedNotes({ cooked }: Strands): readonly Note[] {
  if (cooked.range === undefined) return [];
  const { low, high } = cooked.range;
  const facts = { low: measure(low, cooked.unit, cooked.places), high: measure(high, cooked.unit, cooked.places) };
  return [note("sheet.cooked-range", ["batch"], facts)];
}

const work: Readonly<Record<Pass["kind"], string>> = {
  rough: "crumb to sheet",
  compound: "fold and roll",
  reduce: "roll",
};

/** The sheet after every pass, to scale. */
function stripOf({ schedule }: SheetPlan): Picture | undefined {
  const passes = schedule.passes.map(({ number, thickness: { value }, setting }) => {
    return { words: `pass ${number}`, thickness: value, setting };
  });
  return passStrip(passes);
}

/** A column of the passes: what each pass has in it, and all passes together. */
export interface PassColumn {
  readonly column: Table["columns"][number];
  readonly cell: (pass: Pass) => Cell;
  readonly all: Cell;
}

/** The passes by some columns, and all together in the last row where that tells anything. */
export function passTable({ schedule }: SheetPlan, columns: readonly PassColumn[], withAll = true): Table {
  const told = columns.map(({ column, cell }) => [column, cell] as const);
  const all = columns.map((one) => one.all);
  return listing("passes", schedule.passes, told, ...(withAll ? [row(all, "total")] : []));
}

/** How passes are timed that stands roll at once, where there are any: their column does not add up then. */
export function tripsLine({ schedule, machine }: SheetPlan): readonly string[] {
  const stands = machine.rolls.stands ?? 1;
  if (stands < 2 || schedule.runningTime === undefined) return [];
  const which =
    stands === 2 ? "Both stands roll at once: of two passes" : `The ${stands} stands roll at once: of the passes`;
  return [`${which} in one trip, the longest time counts. Folded passes are trips of their own.`];
}

/** What there is to tell of the passes on a machine: settings, speeds and times where they are known. */
export function passColumns({ schedule, machine }: SheetPlan, units: UnitSystem): readonly PassColumn[] {
  const { passes } = schedule;
  const thin = units === "us" ? "in" : "mm";
  const long = units === "us" ? "ft" : "m";
  const speed = units === "us" ? { unit: "ft/min", places: 1 } : { unit: "m/min", places: 2 };
  const cellOf = (figure: Figure | undefined) => cellOr(figure, "");
  const speedCell = (figure: Figure | undefined) => cellOf(figure && inUnit(figure, speed.unit, speed.places));
  const set = machine.rolls.gaps.kind === "sticks" ? "sticks" : "setting";
  const timed = schedule.runningTime !== undefined;
  const some = (key: keyof Pass): boolean => passes.some((pass) => pass[key] !== undefined);
  const workText = ({ kind, layers }: Pass) =>
    kind === "compound" ? `${work.compound}, ${layers} layers` : work[kind];
  const told = (column: PassColumn["column"], cell: PassColumn["cell"], all = words("")) => ({ column, cell, all });
  const columns = [
    told(wordColumn("pass", "pass"), ({ number }) => words(String(number))),
    told(wordColumn("work", "work"), (pass) => words(workText(pass)), words("all passes")),
    some("setting") && told(wordColumn("setting", set), ({ setting }) => words(setting ?? "")),
    told(numberColumn("gap", `gap, ${thin}`), ({ gap }) => thinCell(gap, thin)),
    told(numberColumn("thickness", `sheet, ${thin}`), ({ thickness }) => thinCell(thickness, thin)),
    some("reduction") &&
      told(
        numberColumn("reduction", "reduction, %"),
        ({ reduction }) => cellOf(reduction),
        figureCell(schedule.totalReduction),
      ),
    told(numberColumn("length", `length, ${long}`), ({ length }) => cellOf(length && inUnit(length, long, 2))),
    timed &&
      (machine.rolls.stands ?? 1) > 1 &&
      told(numberColumn("speed", `speed, ${speed.unit}`), (pass) => speedCell(pass.speed)),
    some("even") && told(numberColumn("even", "by volume"), ({ even }) => speedCell(even)),
    timed &&
      told(numberColumn("time", "running, s"), ({ runningTime }) => cellOf(runningTime), cellOf(schedule.runningTime)),
  ];
  return columns.filter((column) => column !== false);
}

function thinCell(figure: Figure, unit: "mm" | "in"): Cell {
  return figureCell(inUnit(figure, unit, unit === "in" ? 3 : 2));
}

function sheetFigures({ machine, density, schedule, sheets, strands, loads }: SheetPlan): readonly Figure[] {
  return [
    density,
    sheets.sheetsPerLoad,
    sheets.sheetMass,
    sheets.sheetLength,
    schedule.largestReduction,
    schedule.springBack,
    ...((machine.rolls.stands ?? 1) > 1 ? [schedule.trips] : []),
    ...(strands ? strandFigures(strands, loads) : [loads]),
  ];
}

function strandFigures({ cut, cooked, wanted, portions }: Strands, loads: Figure): readonly Figure[] {
  return [
    cut.strandWidth,
    cut.strandsAcross,
    cut.massPerMetre,
    cut.cutLength,
    cut.portion,
    cut.strandsPerPortion,
    cooked,
    cut.portionsPerSheet,
    cut.portionsPerLoad,
    loads,
    portions,
    ...(wanted ? [wanted.bowls, wanted.short ?? wanted.spare] : []),
  ];
}

/** Masses to 0.1 g or 0.001 lb, rounded so that they still add up to the dough. */
function accountTable({ account: lines }: Strands, loads: Figure, units: UnitSystem): Table {
  const { unit, places } = units === "us" ? { unit: "lb", places: 3 } : { unit: "g", places: 1 };
  const inScale = (figure: Figure) => inUnit(figure, unit, places);
  const parts = lines.slice(0, -1);
  const whole = lines.slice(-1);
  const several = exact(loads).gt(1);
  const columns = (which: "one" | "all"): readonly Cell[] => {
    const masses = parts.map((line) => inScale(line[which]));
    const division = dec(10).pow(-places);
    const rounded = roundKeepingTotal(masses.map((mass) => ({ value: exact(mass), division })));
    return masses.map((mass, index) => ({
      ...figureCell(mass),
      text: groupDigits((rounded[index] ?? exact(mass)).toFixed(places)),
    }));
  };
  const [one, all] = [columns("one"), columns("all")];
  return table(
    "account",
    [
      wordColumn("part", "part"),
      numberColumn("load", `one load, ${unit}`),
      ...(several ? [numberColumn("batch", `all ${loads.value} loads, ${unit}`)] : []),
    ],
    [
      ...parts.map((line, index) =>
        row([line.one.label, ...[one[index], ...(several ? [all[index]] : [])].filter((cell) => cell !== undefined)]),
      ),
      ...whole.map((line) =>
        row(["dough", figureCell(inScale(line.one)), ...(several ? [figureCell(inScale(line.all))] : [])], "total"),
      ),
    ],
  );
}
