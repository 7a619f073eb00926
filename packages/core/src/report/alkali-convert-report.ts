import type { Carried } from "../chemistry/carried.ts";
import type { Swapped } from "../chemistry/convert.ts";
import { heldNames, type Swap } from "../chemistry/swap-amounts.ts";
import type { Figure } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import { inSystem, measureText, type UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import { dec, decimalText } from "../number/decimal.ts";
import { alkaliReport, carriedFigures, phOfSolution, sideBySide } from "./alkali-blocks.ts";
import { numberColumn, row, section, table, wordColumn } from "./build.ts";
import type { Report, Table } from "./schema.ts";
import { alkalinityEnds, figureCell, measureCell } from "./show.ts";

/**
 * Tells a swap: what to weigh, what to take off the tap water, and what the new products bring that the old did not.
 *
 * @example convertReport({ from: { name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 10 }, to: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" } }], hold: "M" }, convert({ from: { name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 10 }, to: [{ name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" } }], hold: "M" }).value, []).main // => "weigh"
 */
export function convertReport(
  { from, to, hold }: Swap,
  swapped: Published<Swapped>,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const { dose, amounts, shares, before, after, waterOff, ratioOff } = swapped;
  const compositions = [from, ...to].map(({ composition }) => composition);
  const used = to.filter((_, index) => amounts[index]?.value !== "0").map(({ composition }) => composition);
  const withPh = before.ph !== undefined || after.ph !== undefined;
  const told = {
    command: "alkali convert",
    title: `${to.map(({ name }) => name).join(" and ")} in place of ${from.name}`,
    main: "weigh",
    sections: [
      section("weigh", "What to weigh", weighTable(dose, amounts, shares, units), [
        heldLine(hold, before, after),
        waterLine(waterOff, units),
      ]),
      section("brings", "What they bring, for this dose", sideBySide(before, after, units), [
        alkalinityEnds,
        ...(withPh ? [phOfSolution, scaleLine(before.ph ?? after.ph)] : [noPh]),
      ]),
    ],
    figures: [dose, ...amounts, ...(shares ?? []), ...[before, after].flatMap(carriedFigures), waterOff, ratioOff],
    from: [swapped],
    units,
    notes: notes.filter(({ code }) => code !== "ph.of-the-solution"),
  };
  return alkaliReport(told, used, compositions);
}

const noPh = "The pH needs the water of the dough: state it to have the pH of the mixing water estimated.";

function scaleLine(ph: Figure | undefined): string {
  const why = ph?.range?.why;
  return `MacInnes scale, closed to the air${why === undefined ? "" : `; ${why}`}.`;
}

/** What the swap holds: both alkalinities where it does. */
function heldLine(hold: Swap["hold"], before: Carried, after: Carried): string {
  const alike = (which: "alkalinityM" | "alkalinityP"): boolean =>
    dec(before[which].value).minus(after[which].value).abs().lt("1e-20");
  const both = (hold === "M" || hold === "P") && alike("alkalinityM") && alike("alkalinityP");
  if (hold === "cations") return "Held exactly: the moles of sodium and potassium in sum, not of each.";
  return `Held exactly: ${both ? "alkalinity M and P" : heldNames[hold]}.`;
}

function weighTable(
  dose: Figure,
  amounts: readonly Figure[],
  shares: readonly Figure[] | undefined,
  units: UnitSystem,
): Table {
  const rows = [dose, ...amounts].map((figure, index) => {
    const share = shares?.[index];
    return row([
      index === 0 ? "in place of" : "weigh",
      figure.label,
      measureCell(inSystem(figure, units)),
      ...(share === undefined ? [] : [figureCell(share)]),
    ]);
  });
  return table(
    "weigh",
    [
      wordColumn("role", "what"),
      wordColumn("product", "product"),
      numberColumn("mass", "mass"),
      ...(shares === undefined ? [] : [numberColumn("share", "% of flour")]),
    ],
    rows,
  );
}

function waterLine(waterOff: Figure, units: UnitSystem): string {
  const grams = dec(waterOff.value);
  if (grams.abs().lt("0.005")) return "The tap water of the dough stays as it is.";
  const text = measureText({ ...waterOff, value: decimalText(grams.abs()) }, units);
  return grams.gt(0)
    ? `Take ${text} off the tap water: the dough keeps the water it had.`
    : `Add ${text} to the tap water: the dough keeps the water it had.`;
}
