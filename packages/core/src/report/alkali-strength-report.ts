import type { Composition } from "../chemistry/composition.ts";
import type { Strength } from "../chemistry/strength.ts";
import type { Figure } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import type { UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import { fixedText } from "../number/decimal.ts";
import { alkaliReport, doubtLines, partsTable, strengthFigures } from "./alkali-blocks.ts";
import { phSection } from "./alkali-recipe-report.ts";
import { figureBlock, section } from "./build.ts";
import type { Report } from "./schema.ts";
import { alkalinityEnds } from "./show.ts";

/** A solution whose strength is told. */
export interface StrengthTelling {
  readonly name: string;
  readonly composition: Composition;
  readonly strength: Published<Strength>;
  /** The strength that a reading gives, with what the error of reading means. */
  readonly reading?: Figure | undefined;
}

/**
 * Tells how strong a solution is, in every measure, with its composition, its pH and what an error of reading means.
 *
 * @example strengthReport({ name: "soda", composition: { species: { Na2CO3: "10" }, water: "90", inert: "0" }, strength: strengthOf({ species: { Na2CO3: "10" }, water: "90", inert: "0" }, 20, "145").value }, []).title // => "Strength of soda"
 */
export function strengthReport(telling: StrengthTelling, notes: readonly Note[], units: UnitSystem = "metric"): Report {
  const { name, composition, strength, reading } = telling;
  const measures = strengthFigures(strength);
  const { parts, ph } = strength;
  const read = reading === undefined ? [] : [reading];
  const errors = read.flatMap(({ range, unit }) =>
    range ? [`From ${fixedText(range.low, 2)} to ${fixedText(range.high, 2)} ${unit}: ${range.why}.`] : [],
  );
  const told = {
    command: "alkali strength",
    title: `Strength of ${name}`,
    main: "composition",
    sections: [
      section("reading", "From the reading", figureBlock(read, units), errors),
      section("strength", "In every measure", figureBlock(measures, units), [
        alkalinityEnds,
        ...doubtLines(measures, units),
      ]),
      section("composition", "What it is made of", partsTable(parts, "% by mass")),
      phSection(ph, units),
    ],
    figures: [...read, ...measures, ...parts, ...(ph ? [ph] : [])],
    from: [strength],
    units,
    notes: notes.filter(({ code }) => code !== "ph.of-the-solution"),
  };
  return alkaliReport(told, [composition]);
}
