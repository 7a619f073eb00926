import { loudNote, type Note, type Path } from "../figure/problem.ts";
import { citation, commonPractice } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import { everyLine } from "../formula/line.ts";
import { unusualFigures } from "../materials/usual.ts";
import { type DecimalText, dec } from "../number/decimal.ts";
import type { Spec } from "../spec/spec.ts";

/** A value of a spec, and the most of it that kitchens have: beyond it, it is most likely a slip. */
interface Rule {
  readonly path: Path;
  readonly label: string;
  readonly value: DecimalText | undefined;
  readonly most: DecimalText;
  readonly unit: string;
}

/** Values of a spec that no kitchen at hand has, and figures that no flour, starch or gluten has. They are worked with as they are: a weight in the wrong unit looks like one. */
export function unusualValues({ batch, losses, sheet }: Spec, formula: Formula): readonly Note[] {
  const rules: readonly Rule[] = [
    {
      path: ["batch", "rawWeight"],
      label: "raw noodles of a bowl",
      value: batch?.rawWeight?.value,
      most: "1000",
      unit: "g",
    },
    {
      path: ["batch", "cookedWeight"],
      label: "cooked noodles of a bowl",
      value: batch?.cookedWeight?.value,
      most: "2000",
      unit: "g",
    },
    ...(["mixing", "sheeting", "cutting"] as const).map((stage) => ({
      path: ["losses", stage],
      label: `loss at ${stage}`,
      value: losses?.[stage]?.value,
      most: "30",
      unit: "%",
    })),
    {
      path: ["sheet", "springBack"],
      label: "thickness of a sheet over its gap",
      value: sheet?.springBack,
      most: "2",
      unit: "times",
    },
  ];
  const source = citation(commonPractice);
  const slips = rules.flatMap(({ path, label, value, most, unit }) =>
    value === undefined || dec(value).lte(most)
      ? []
      : [loudNote("spec.unusual", path, { label, value, most, unit, source })],
  );
  return [...slips, ...everyLine(formula).flatMap(({ material, name, path }) => unusualFigures(material, name, path))];
}
