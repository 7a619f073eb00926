import { type StyleCheck, styleNotes } from "../blend/style-notes.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import { widthFigure } from "../sheet/strands/cutter.ts";
import type { Spec } from "../spec/spec.ts";

/**
 * Holds a formula against what is published for the `style:` of its spec; nothing where the spec names none.
 *
 * Problems: those of `styleNotes`.
 */
export function formulaStyle(spec: Spec, formula: Formula): Outcome<readonly StyleCheck[]> {
  if (spec.style === undefined) return answer([]);
  const { blend, water, salt, alkali } = formula;
  const { thickness, cutter } = spec.sheet ?? {};
  return styleNotes(spec.style.toLowerCase(), {
    ...(blend.protein && { protein: blend.protein.at14.value }),
    ...(blend.ash && { ash: blend.ash.at14.value }),
    water: water.added.value,
    salt: salt.value,
    ...(alkali && { alkali: alkali.anhydrous.value }),
    ...(thickness && { thickness: thickness.value }),
    ...(cutter && { width: widthFigure(cutter).value }),
  });
}
