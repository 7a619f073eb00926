import { exact, type Figure } from "../figure/figure.ts";
import type { UnitSystem } from "../figure/in-system.ts";
import { dec, ONE } from "../number/decimal.ts";
import { figureBlock, section, wordColumn } from "../report/build.ts";
import type { Section, Table } from "../report/schema.ts";
import { type PassColumn, passColumns, passTable, sheetsHeading, tripsLine } from "../report/sheet-report.ts";
import { words } from "../report/show.ts";
import type { SheetPlan } from "../sheet/sheet-plan.ts";

/** What is set and seen at the machine; the rest of what is known of the passes is how they were found. */
const onPaper: ReadonlySet<string> = new Set(["pass", "work", "setting", "gap", "thickness", "speed", "even", "time"]);

/** Signs of a bar as tall as the thickest sheet. */
const longestBar = 10;

/** What of a sheet belongs on paper: the passes, the sheet drawn beside its thickness, and the figures to work by. */
export function sheetSections(plan: SheetPlan, units: UnitSystem): readonly Section[] {
  return [
    section("passes", "Passes of a sheet", passesTable(plan, units), tripsLine(plan)),
    section("sheets", sheetsHeading(plan), figureBlock(figuresToWorkBy(plan), units)),
  ];
}

function figuresToWorkBy({ sheets, strands }: SheetPlan): readonly Figure[] {
  const ofSheets = [sheets.sheetsPerLoad, sheets.sheetMass, sheets.sheetLength];
  if (strands === undefined) return ofSheets;
  const { cut } = strands;
  return [...ofSheets, cut.strandWidth, cut.cutLength, cut.portion, cut.strandsPerPortion, cut.portionsPerSheet];
}

/** The passes with a bar as long as the sheet is thick, to scale. */
function passesTable(plan: SheetPlan, units: UnitSystem): Table {
  const { passes } = plan.schedule;
  const thickest = passes.reduce((most, { thickness }) => (exact(thickness).gt(most) ? exact(thickness) : most), ONE);
  const drawn: PassColumn = {
    column: wordColumn("drawn", ""),
    cell: ({ thickness }) => words("█".repeat(dec(thickness.value).div(thickest).times(longestBar).round().toNumber())),
    all: words(""),
  };
  const columns = passColumns(plan, units)
    .filter(({ column }) => onPaper.has(column.id))
    .flatMap((one) => (one.column.id === "thickness" ? [one, drawn] : [one]));
  return passTable(plan, columns, plan.schedule.runningTime !== undefined);
}
