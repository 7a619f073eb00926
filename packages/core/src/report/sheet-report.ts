import { exact, type Figure, worked } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { definition, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { dec } from "../number/decimal.ts";
import { roundKeepingTotal } from "../number/rounding.ts";
import { sheetCautions } from "../sheet/cautions.ts";
import type { Pass } from "../sheet/passes/passes.ts";
import type { SheetPlan } from "../sheet/sheet-plan.ts";
import { numberColumn, pictureBlock, report, row, section, table, wordColumn } from "./build.ts";
import { formulaCautions } from "./cautions.ts";
import { passStrip } from "./pictures/pass-strip.ts";
import type { Picture } from "./pictures/svg.ts";
import type { Cell, Report, Table } from "./schema.ts";
import { figureCell, groupDigits, inSystem, inUnit, measureCell, type UnitSystem, words } from "./show.ts";

/** Tells a sheet: its passes, its strands and portions, and what becomes of every gram of a load. */
export function sheetReport(
  formula: Formula,
  plan: SheetPlan,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const account = accountOf(plan);
  const shown = sheetFigures(plan);
  return report({
    command: "sheet",
    title: `${formula.name}: ${plan.machine.name}`,
    main: "passes",
    sections: [
      section("passes", "Passes of a sheet", passTable(plan, units), pictureBlock(stripOf(plan))),
      section("sheets", "Sheets and strands", {
        kind: "figures",
        figures: shown.map((figure) => sized(figure, units)),
      }),
      section("account", "What becomes of the dough", accountTable(plan, account, units)),
    ],
    figures: [...Object.values(plan.graph), ...shown, ...account.map(({ all }) => all)],
    from: [plan],
    notes: [...notes, ...cookedNotes(plan, units)],
    cautions: [...formulaCautions(formula), ...sheetCautions(["rolls", "cutter", "dust"]).map(({ text }) => text)],
  });
}

/** How far the cooked weight is known. */
function cookedNotes({ cooked }: SheetPlan, units: UnitSystem): readonly Note[] {
  if (cooked.range === undefined) return [];
  const shown = (value: string) => measureCell(inSystem({ ...cooked, value }, units)).text;
  const text = `A cooked portion may weigh from ${shown(cooked.range.low)} to ${shown(cooked.range.high)}, the range of the usual cook gain; weigh one and write \`cookGain\`.`;
  return [{ code: "sheet.cooked-range", path: ["batch"], text }];
}

const work: Readonly<Record<Pass["kind"], string>> = {
  rough: "crumb to sheet",
  compound: "fold and roll",
  reduce: "roll",
};

/** The sheet after every pass, to scale. */
function stripOf({ schedule }: SheetPlan): Picture | undefined {
  return passStrip(
    schedule.passes.map(({ number, thickness, setting }) => ({
      words: `pass ${number}`,
      thickness: thickness.value,
      setting,
    })),
  );
}

function passTable({ schedule, machine }: SheetPlan, units: UnitSystem): Table {
  const { passes } = schedule;
  const thin = units === "us" ? "in" : "mm";
  const long = units === "us" ? "ft" : "m";
  const speed = units === "us" ? { unit: "ft/min", places: 1 } : { unit: "m/min", places: 2 };
  const speedCell = (figure: Figure | undefined) =>
    figure ? figureCell(inUnit(figure, speed.unit, speed.places)) : words("");
  const set = passes.some(({ setting }) => setting !== undefined);
  const reductions = passes.some(({ reduction }) => reduction !== undefined);
  const timed = schedule.runningTime !== undefined;
  const speeds = timed && (machine.rolls.stands ?? 1) > 1;
  const evens = passes.some(({ even }) => even !== undefined);
  const cells = (pass: Pass): readonly Cell[] => [
    words(String(pass.number)),
    words(pass.kind === "compound" ? `${work.compound}, ${pass.layers} layers` : work[pass.kind]),
    ...(set ? [words(pass.setting ?? "")] : []),
    thinCell(pass.gap, thin),
    thinCell(pass.thickness, thin),
    ...(reductions ? [pass.reduction ? figureCell(pass.reduction) : words("")] : []),
    pass.length ? figureCell(inUnit(pass.length, long, 2)) : words(""),
    ...(speeds ? [speedCell(pass.speed)] : []),
    ...(evens ? [speedCell(pass.even)] : []),
    ...(timed ? [pass.runningTime ? figureCell(pass.runningTime) : words("")] : []),
  ];
  const total = ["", "all passes", ...(set ? [""] : []), "", ""].map(words);
  const sums = row(
    [
      ...total,
      figureCell(schedule.totalReduction),
      words(""),
      ...(speeds ? [words("")] : []),
      ...(evens ? [words("")] : []),
      ...(schedule.runningTime ? [figureCell(schedule.runningTime)] : []),
    ],
    "total",
  );
  return table(
    "passes",
    [
      wordColumn("pass", "pass"),
      wordColumn("work", "work"),
      ...(set ? [wordColumn("setting", machine.rolls.gaps.kind === "sticks" ? "sticks" : "setting")] : []),
      numberColumn("gap", `gap, ${thin}`),
      numberColumn("thickness", `sheet, ${thin}`),
      ...(reductions ? [numberColumn("reduction", "reduction, %")] : []),
      numberColumn("length", `length, ${long}`),
      ...(speeds ? [numberColumn("speed", `speed, ${speed.unit}`)] : []),
      ...(evens ? [numberColumn("even", "by volume")] : []),
      ...(timed ? [numberColumn("time", "running, s")] : []),
    ],
    [...passes.map((pass) => row(cells(pass))), sums],
  );
}

function thinCell(figure: Figure, unit: "mm" | "in"): Cell {
  return figureCell(inUnit(figure, unit, unit === "in" ? 3 : 2));
}

function sheetFigures({
  machine,
  density,
  schedule,
  cut,
  cooked,
  wanted,
  portions,
  loads,
}: SheetPlan): readonly Figure[] {
  return [
    density,
    cut.sheetsPerLoad,
    cut.sheetMass,
    cut.sheetLength,
    schedule.largestReduction,
    schedule.springBack,
    ...((machine.rolls.stands ?? 1) > 1 ? [schedule.trips] : []),
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
    ...(wanted ? [wanted.bowls, beyond(wanted, portions)] : []),
  ];
}

/** By how many portions the loads give more than the bowls wanted, or fewer. */
function beyond({ bowls, spare }: NonNullable<SheetPlan["wanted"]>, portions: Figure): Figure {
  if (!exact(spare).isNegative()) return spare;
  return worked({
    id: "batch.portions-short",
    label: "portions short of the bowls wanted",
    unit: "",
    places: 0,
    formula: "bowls - made",
    from: { bowls, made: portions },
    sources: [definition],
  });
}

function sized(figure: Figure, units: UnitSystem): Figure {
  if (units === "metric" && figure.unit === "mm" && exact(figure).gte(1000)) return inUnit(figure, "m", 2);
  if (units === "us" && figure.unit === "mm" && exact(figure).gte(1000)) return inUnit(figure, "ft", 2);
  return inSystem(figure, units);
}

/** A part of the account, for one load and for all. */
interface AccountLine {
  readonly one: Figure;
  readonly all: Figure;
}

function accountOf({ cut, loads }: SheetPlan): readonly AccountLine[] {
  const { dough, losses, edgeTrim, endTrim, strands, leftover } = cut.account;
  return [strands, leftover, edgeTrim, endTrim, losses, dough].map((one) => ({
    one,
    all: worked({
      id: `${one.id}-all-loads`,
      label: `${one.label}, all loads`,
      unit: "g",
      places: 1,
      formula: "one * loads",
      from: { one, loads },
      sources: [massBalance],
    }),
  }));
}

/** Masses to 0.1 g or 0.001 lb, rounded so that they still add up to the dough. */
function accountTable({ loads }: SheetPlan, lines: readonly AccountLine[], units: UnitSystem): Table {
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
  const one = columns("one");
  const all = columns("all");
  return table(
    "account",
    [
      wordColumn("part", "part"),
      numberColumn("load", `one load, ${unit}`),
      ...(several ? [numberColumn("batch", `all ${loads.value} loads, ${unit}`)] : []),
    ],
    [
      ...parts.map((line, index) =>
        row([
          words(line.one.label),
          ...[one[index], ...(several ? [all[index]] : [])].filter((cell) => cell !== undefined),
        ]),
      ),
      ...whole.map((line) =>
        row(
          [words("dough"), figureCell(inScale(line.one)), ...(several ? [figureCell(inScale(line.all))] : [])],
          "total",
        ),
      ),
    ],
  );
}
