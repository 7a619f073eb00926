import type { Scale } from "../../batch/weighing.ts";
import { type Figure, given } from "../../figure/figure.ts";
import { type Graph, plainFigure } from "../../figure/graph.ts";
import { fromSpec } from "../../figure/source.ts";
import { justMore } from "../../render/workbook/formulas.ts";
import type { CellOf } from "../../render/workbook/workbook.ts";
import { quoted } from "./made.ts";

const scaleId = (index: number, what: "division" | "capacity"): string => `scale.${index + 1}.${what}`;

/** The scales as figures, which choose the division of each ingredient. */
export function scaleFigures(scales: readonly Scale[]): Graph {
  const figures = scales.flatMap(({ name, division, capacity, assumed }, index): readonly Figure[] => {
    const naming = (what: "division" | "capacity") => ({
      id: scaleId(index, what),
      label: `${what} of ${name}`,
      unit: "g",
      places: Math.min(division.decimalPlaces(), 6),
      by: assumed ? "assumed" : "spec",
      sources: [fromSpec],
    });
    return [
      given({ ...naming("division"), value: division }),
      ...(capacity ? [given({ ...naming("capacity"), value: capacity })] : []),
    ];
  });
  return Object.fromEntries(figures.map((figure) => [figure.id, plainFigure(figure)]));
}

/** The division of the scale that takes a mass, as `chooseScale` chooses it. */
export function divisionRule(mass: string, scales: readonly Scale[]): (cell: CellOf) => string {
  return (cell) => {
    const divisions = scales.map((_, index) => cell(scaleId(index, "division")));
    const capacity = (index: number): string => cell(scaleId(index, "capacity"));
    const fitting = scales.map((scale, index) =>
      scale.capacity === undefined
        ? divisions[index]
        : `IF(${cell(mass)}<=${capacity(index)}*${justMore},${divisions[index]},1000000000)`,
    );
    const finest = `MIN(${fitting.join(",")})`;
    if (scales.some((scale) => scale.capacity === undefined)) return finest;
    const greatest = `MAX(${scales.map((_, index) => capacity(index)).join(",")})`;
    const largest = scales.reduceRight(
      (otherwise, _, index) =>
        otherwise === ""
          ? `${divisions[index]}`
          : `IF(${capacity(index)}=${greatest},${divisions[index]},${otherwise})`,
      "",
    );
    return `IF(${finest}<1000000000,${finest},${largest})`;
  };
}

/** The name of the scale with the division of a line. */
export function scaleNameRule(division: string, scales: readonly Scale[]): (cell: CellOf) => string {
  return (cell) =>
    scales.reduceRight(
      (otherwise, { name }, index) =>
        otherwise === ""
          ? quoted(name)
          : `IF(${cell(division)}=${cell(scaleId(index, "division"))},${quoted(name)},${otherwise})`,
      "",
    );
}
