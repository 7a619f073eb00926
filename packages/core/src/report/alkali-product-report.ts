import type { BakedDose } from "../chemistry/bake-dose.ts";
import { type Baked, type BakingSalt, ovenCautions } from "../chemistry/baking.ts";
import type { Composition } from "../chemistry/composition.ts";
import type { Assayed, Split } from "../chemistry/titration.ts";
import type { Figure } from "../figure/figure.ts";
import type { Published } from "../figure/graph.ts";
import { measureText, type UnitSystem } from "../figure/in-system.ts";
import type { Note } from "../figure/problem.ts";
import { alkaliCautions, alkaliReport, allLimits, carriedFigures, partsTable, sideBySide } from "./alkali-blocks.ts";
import { figureBlock, report, section } from "./build.ts";
import type { Report } from "./schema.ts";
import { alkalinityEnds } from "./show.ts";

const ends = [alkalinityEnds];

/**
 * Tells a tray of baked bicarbonate: how far it went, what it is made of now, and how much of it meets a dose.
 *
 * @example bakeReport(bakedSalt({ salt: "NaHCO3", before: 500, after: 330 }).value, []).main // => "composition"
 */
export function bakeReport(
  baked: Published<Baked>,
  notes: readonly Note[],
  dose?: Published<BakedDose>,
  units: UnitSystem = "metric",
): Report {
  const { conversion, composition, parts, alkalinities } = baked;
  const weigh = dose?.swapped.amounts ?? [];
  const doses = dose === undefined ? [] : [dose.wanted, ...weigh, dose.swapped.waterOff];
  const told = {
    command: "alkali bake",
    title: "Bicarbonate from the oven",
    main: "composition",
    sections: [
      section(
        "dose",
        "What to weigh of it",
        dose && figureBlock(doses, units),
        dose && sideBySide(dose.swapped.before, dose.swapped.after, units),
        dose && ends,
      ),
      section("conversion", "How far it went", { kind: "figures", figures: [conversion, baked.idealYield] }),
      section("composition", "What it is made of now", partsTable(parts, "% of the product")),
      section("alkalinity", "Its alkalinity", { kind: "figures", figures: alkalinities }, dose ? undefined : ends),
    ],
    figures: [
      ...doses,
      ...(dose === undefined ? [] : [...carriedFigures(dose.swapped.before), ...carriedFigures(dose.swapped.after)]),
      conversion,
      baked.idealYield,
      ...parts,
      ...alkalinities,
    ],
    from: [baked, ...(dose ? [dose] : [])],
    units,
    notes,
    cautions: ovenCautions,
  };
  return alkaliReport(told, [composition]);
}

/**
 * Tells the yield of an oven that converts all, before anything was weighed.
 *
 * @example idealBakeReport("NaHCO3", idealYield("NaHCO3")).main // => "limits"
 */
export function idealBakeReport(
  salt: BakingSalt,
  { graph, ...figure }: Published<Figure>,
  units: UnitSystem = "metric",
): Report {
  const carbonate: Composition = {
    species: salt === "NaHCO3" ? { Na2CO3: "100" } : { K2CO3: "100" },
    water: "0",
    inert: "0",
  };
  const [limits, ...notKnown] = allLimits([carbonate]);
  const [ovenFrom, ovenTo] = ["120", "150"].map((value) => measureText({ value, unit: "°C", places: 0 }, units));
  return report({
    command: "alkali bake",
    title: "Bicarbonate in the oven",
    main: "limits",
    sections: [
      section("conversion", "Full conversion", { kind: "figures", figures: [figure] }, [
        "Weigh the salt without its tray before and after, and give both weights: they tell how far it went.",
        `Bake it in a thin layer at ${ovenFrom} to ${ovenTo} for about an hour, and weigh again until the weight stays: common practice, no source.`,
      ]),
      section("limits", "Limits that name it", limits, notKnown),
    ],
    figures: [figure],
    from: [{ graph }],
    units,
    cautions: [...ovenCautions, ...alkaliCautions([carbonate])],
  });
}

/**
 * Tells the composition behind a stated or titrated alkalinity.
 *
 * @example assayReport(assayed({ as: "Na2O", percent: "58" }, { species: { Na2CO3: "100" }, water: "0", inert: "0" }).value, []).main // => "composition"
 */
export function assayReport(
  assay: Published<Assayed | Split>,
  notes: readonly Note[],
  units: UnitSystem = "metric",
): Report {
  const { composition, parts, alkalinities } = assay;
  const found =
    "assay" in assay ? [assay.alkalinity, assay.assay] : [assay.hydroxide, assay.carbonate, assay.bicarbonate];
  const told = {
    command: "alkali assay",
    title: "What the alkalinity says is in it",
    main: "composition",
    sections: [
      section("alkalinity", "As stated or titrated", { kind: "figures", figures: found }),
      section("composition", "What it is made of", partsTable(parts, "% of the product")),
      section("stated-as", "The same alkalinity in other words", { kind: "figures", figures: alkalinities }, ends),
    ],
    figures: [...found, ...parts, ...alkalinities],
    from: [assay],
    units,
    notes,
  };
  return alkaliReport(told, [composition]);
}
