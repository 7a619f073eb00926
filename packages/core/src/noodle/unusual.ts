import { loudNote, type Note, type Path } from "../figure/problem.ts";
import { citation, commonPractice } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { everyLine } from "../formula/line.ts";
import { unusualFigures } from "../materials/usual.ts";
import { type DecimalText, dec } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";

type Rule = readonly [Path, label: string, DecimalText | undefined, most: DecimalText, unit: string, id?: string];

/** Values of a spec, each with the most of it that kitchens have, beyond which it is most likely a slip, and the figure that it is. */
function rulesOf({ batch, losses, sheet }: Spec): readonly Rule[] {
  return [
    [["batch", "rawWeight"], "raw noodles of a bowl", batch?.rawWeight?.value, "1000", "g", "bowl.raw"],
    [["batch", "cookedWeight"], "cooked noodles of a bowl", batch?.cookedWeight?.value, "2000", "g", "bowl.cooked"],
    [["losses", "mixing"], "loss at mixing", losses?.mixing?.value, "30", "%", "loss.mixing"],
    [["losses", "sheeting"], "loss at sheeting", losses?.sheeting?.value, "30", "%", "loss.sheeting"],
    [["losses", "cutting"], "loss at cutting", losses?.cutting?.value, "30", "%", "loss.cutting"],
    [["sheet", "springBack"], "thickness of a sheet over its gap", sheet?.springBack, "2", "times"],
  ];
}

/** Figures that a spec states, each with the most of it that kitchens have. */
export function usualMost(spec: Spec) {
  return rulesOf(spec).flatMap(([, , value, most, , id]) => (id && value !== undefined ? [{ id, value, most }] : []));
}

/** Values of a spec that no kitchen at hand has, and figures that no flour, starch or gluten has. They are worked with as they are: a weight in the wrong unit looks like one. */
export function unusualValues(spec: Spec, formula: Formula): readonly Note[] {
  const source = citation(commonPractice);
  const slips = rulesOf(spec).flatMap(([path, label, value, most, unit]) =>
    value === undefined || dec(value).lte(most)
      ? []
      : [loudNote("spec.unusual", path, { label, value, most, unit, source })],
  );
  return [...slips, ...everyLine(formula).flatMap(({ material, name, path }) => unusualFigures(material, name, path))];
}
