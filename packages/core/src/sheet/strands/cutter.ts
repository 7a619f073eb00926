import { type Figure, worked } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { type Outcome, refuse } from "../../figure/problem.ts";
import type { Source } from "../../figure/source.ts";
import { asked, outsideLimits } from "../inputs.ts";
import { type CutterSize, sizeLimits } from "../passes/machine.ts";

/** The trade says the number is standardised in Japan; no standard number was found, so none is printed. */
export const cutterNumber: Source = {
  cite: "Japanese noodle machine makers' pages: the cutter number is the number of strands cut from 30 mm of width",
  standing: "read",
};

/**
 * Tells how wide a strand a cutter cuts, in mm: 30 by its number, or its own width.
 *
 * Numbers 1 to 60, widths up to 300 mm. Problems: `sheet.out-of-range`. Source: machine makers' convention.
 *
 * @example shown(strandWidth({ kind: "number", number: 20 }).value) // => "1.50 mm"
 */
export function strandWidth(size: CutterSize): Outcome<Published<Figure>> {
  const problems = outsideLimits([sizeLimits(size, [])]);
  return problems.length > 0 ? refuse(...problems) : publish(widthFigure(size));
}

/** The strand width of a size that is known to be right. */
export function widthFigure(size: CutterSize): Figure {
  const naming = { id: "strand.width", label: "strand width", unit: "mm", places: 2 };
  if (size.kind === "width") return asked(naming, size.width);
  return worked(naming, "30 / number", { number: size.number }, cutterNumber);
}
