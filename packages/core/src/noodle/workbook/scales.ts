import { mixerLimit } from "../../batch/stated-mass.ts";
import type { Scale, WeighedLine } from "../../batch/weighing.ts";
import type { Graph } from "../../figure/graph.ts";
import { ceilOf, joined, justMore, textIn } from "../../render/workbook/formulas.ts";
import type { CellOf } from "../../render/workbook/workbook.ts";
import type { Spec } from "../../spec/spec.ts";

const scaleId = (index: number, what: "division" | "capacity"): string => `scale.${index + 1}.${what}`;

/** The smallest load of a mixer as a figure. */
export function mixerFigures({ mixer }: Spec): Graph {
  if (mixer?.smallest === undefined) return {};
  const smallest = mixerLimit("smallest", mixer.smallest, mixer.of);
  return { [smallest.id]: smallest };
}

/** The greatest capacity of scales that all have one. */
function greatestOf(scales: readonly Scale[], cell: CellOf): string {
  return `MAX(${scales.map((_, index) => cell(scaleId(index, "capacity"))).join(",")})`;
}

/** More than any division. */
const beyond = "1000000000";

/** The division of the scale that takes a mass, as `chooseScale` chooses it. */
export function divisionRule(mass: string, scales: readonly Scale[]): (cell: CellOf) => string {
  return (cell) => {
    const each = scales.map(({ capacity }, index) => ({ capacity, index, division: cell(scaleId(index, "division")) }));
    const holding = each.flatMap(({ capacity, index, division }) =>
      capacity ? [`IF(${cell(mass)}<=${cell(scaleId(index, "capacity"))}*${justMore},${division},${beyond})`] : [],
    );
    const boundless = each.flatMap(({ capacity, division }) => (capacity ? [] : [division]));
    const finest = `MIN(${[...holding, ...boundless].join(",")})`;
    if (boundless.length > 0) {
      const most = `${cell(mass)}*${cell("weighing.tolerance")}/100*${justMore}`;
      const open = `MAX(${boundless.map((division) => `IF(${division}<=${most},${division},0)`).join(",")})`;
      const rest = `IF(${open}>0,${open},${finest})`;
      if (holding.length === 0) return rest;
      const held = `MIN(${holding.join(",")})`;
      return `IF(${held}<=${most},${held},${rest})`;
    }
    const greatest = greatestOf(scales, cell);
    const largest = each.reduceRight(
      (otherwise, { index, division }) =>
        otherwise === "" ? division : `IF(${cell(scaleId(index, "capacity"))}=${greatest},${division},${otherwise})`,
      "",
    );
    return `IF(${finest}<${beyond},${finest},${largest})`;
  };
}

/** Whether any of some lines is too little for its scale, as `tooLittle` tells it. */
export function tooLittleRule(lines: readonly WeighedLine[]): (cell: CellOf) => string {
  return (cell) => {
    const most = `${cell("weighing.tolerance")}*${justMore}`;
    const off = lines.map((line) => cell(line.off.id));
    return `OR(${joined("MAX", [...lines.map(({ nearest }) => cell(nearest.id)), ...off])}>${most},${joined("MIN", off)}<-${most})`;
  };
}

/** The name of the scale that weighs a line, and whether it takes it, as the tables of weights tell it. */
export function weighOnRule(line: WeighedLine, scales: readonly Scale[]): (cell: CellOf) => string {
  const names = scales.map(({ name }) => textIn(name));
  return (cell) => {
    const name = names.reduceRight(
      (otherwise, one, index) => `IF(${cell(line.step.id)}=${cell(scaleId(index, "division"))},${one},${otherwise})`,
    );
    const tooLittle = `IF(${tooLittleRule([line])(cell)},": too little",`;
    if (scales.some(({ capacity }) => capacity === undefined)) return `${name}&${tooLittle}"")`;
    const [mass, most] = [cell(line.exact.id), greatestOf(scales, cell)];
    return `${name}&${tooLittle}IF(${mass}>${most}*${justMore},", in "&${ceilOf(`${mass}/${most}`)}&" weighings",""))`;
  };
}
