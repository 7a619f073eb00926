import type { BakedDose } from "../chemistry/bake-dose.ts";
import type { Baked } from "../chemistry/baking.ts";
import { idealYield, ovenCautions } from "../chemistry/baking.ts";
import { alkalinityM, alkalinityP, type Composition } from "../chemistry/composition.ts";
import { compositionFigures } from "../chemistry/composition-figures.ts";
import { named } from "../chemistry/named.ts";
import { type Assayed, alkalinityAs, type Split } from "../chemistry/titration.ts";
import type { Figure } from "../figure/figure.ts";
import type { Note } from "../figure/problem.ts";
import { massBalance, type Source } from "../figure/source.ts";
import {
  additiveLimitsNote,
  alkaliCautions,
  allLimits,
  carriedFigures,
  rulesSections,
  sideBySide,
} from "./alkali-blocks.ts";
import { numberColumn, report, row, section, table, wordColumn } from "./build.ts";
import type { Block, Report, Table } from "./schema.ts";
import { alkalinityEnds, figureCell, inSystem, type UnitSystem, words } from "./show.ts";

const ends: Block = { kind: "text", lines: [alkalinityEnds] };

/**
 * Tells a tray of baked bicarbonate: how far it went, what it is made of now, and how much of it meets a dose.
 *
 * @example bakeReport(bakedSalt({ salt: "NaHCO3", before: 500, after: 330 }).value, []).main // => "composition"
 */
export function bakeReport(
  baked: Baked,
  notes: readonly Note[],
  dose?: BakedDose,
  units: UnitSystem = "metric",
): Report {
  const { conversion, composition } = baked;
  const parts = compositionFigures(composition, "the masses before and after", [massBalance]);
  const strengths = strengthOfProduct(composition);
  const weigh = dose?.swapped.amounts ?? [];
  const doses = dose === undefined ? [] : [dose.wanted, ...weigh, dose.swapped.waterOff];
  return report({
    command: "alkali bake",
    title: "Bicarbonate from the oven",
    main: "composition",
    sections: [
      section(
        "dose",
        "What to weigh of it",
        dose && { kind: "figures", figures: doses.map((figure) => inSystem(figure, units)) },
        dose && sideBySide(dose.swapped.before, dose.swapped.after),
        dose && ends,
      ),
      section("conversion", "How far it went", { kind: "figures", figures: [conversion, baked.idealYield] }),
      section("composition", "What it is made of now", compositionTable(parts)),
      section("alkalinity", "Its alkalinity", { kind: "figures", figures: strengths }, dose ? undefined : ends),
      ...rulesSections([composition]),
    ],
    figures: [
      ...doses,
      ...(dose === undefined ? [] : [...carriedFigures(dose.swapped.before), ...carriedFigures(dose.swapped.after)]),
      conversion,
      baked.idealYield,
      ...parts,
      ...strengths,
    ],
    notes: [...notes, additiveLimitsNote],
    cautions: [...ovenCautions, ...alkaliCautions([composition])],
  });
}

/**
 * Tells the yield of an oven that converts all, before anything was weighed.
 *
 * @example idealBakeReport("NaHCO3").main // => "limits"
 */
export function idealBakeReport(salt: "NaHCO3" | "KHCO3"): Report {
  const figure = idealYield(salt);
  const carbonate: Composition = {
    species: salt === "NaHCO3" ? { Na2CO3: "100" } : { K2CO3: "100" },
    water: "0",
    inert: "0",
  };
  const [limits, ...notKnown] = allLimits([carbonate]);
  return report({
    command: "alkali bake",
    title: "Bicarbonate in the oven",
    main: "limits",
    sections: [
      section(
        "conversion",
        "Full conversion",
        { kind: "figures", figures: [figure] },
        {
          kind: "text",
          lines: [
            "Weigh the salt without its tray before and after, and give both weights: they tell how far it went.",
            "Bake it in a thin layer at 120 to 150 °C for about an hour, and weigh again until the weight stays: common practice, no source.",
          ],
        },
      ),
      section("limits", "Limits that name it", limits, { kind: "text", lines: notKnown }),
    ],
    figures: [figure],
    notes: [],
    cautions: [...ovenCautions, ...alkaliCautions([carbonate])],
  });
}

/**
 * Tells the composition behind a stated or titrated alkalinity.
 *
 * @example assayReport(assayed({ as: "Na2O", percent: "58" }, { species: { Na2CO3: "100" }, water: "0", inert: "0" }).value, []).main // => "composition"
 */
export function assayReport(assay: Assayed | Split, notes: readonly Note[]): Report {
  const { composition } = assay;
  const found =
    "assay" in assay ? [assay.alkalinity, assay.assay] : [assay.hydroxide, assay.carbonate, assay.bicarbonate];
  const parts = compositionFigures(composition, "the alkalinity and the salts named", [massBalance]);
  const strengths = strengthOfProduct(composition);
  return report({
    command: "alkali assay",
    title: "What the alkalinity says is in it",
    main: "composition",
    sections: [
      section("alkalinity", "As stated or titrated", { kind: "figures", figures: found }),
      section("composition", "What it is made of", compositionTable(parts)),
      section("stated-as", "The same alkalinity in other words", { kind: "figures", figures: strengths }, ends),
      ...rulesSections([composition]),
    ],
    figures: [...found, ...parts, ...strengths],
    notes: [...notes, additiveLimitsNote],
    cautions: alkaliCautions([composition]),
  });
}

function compositionTable(parts: readonly Figure[]): Table {
  return table(
    "composition",
    [wordColumn("part", "part"), numberColumn("share", "% of the product")],
    parts.map((figure) => row([words(figure.label), figureCell(figure)])),
  );
}

/** What labels and certificates state an alkalinity as. */
const usualStandards = ["Na2CO3", "K2CO3", "Na2O"] as const;

function strengthOfProduct(composition: Composition): readonly Figure[] {
  const source: Source = massBalance;
  const m = named(
    "composition.alkalinity-m",
    "alkalinity M",
    "meq/g",
    alkalinityM(composition),
    "the composition",
    source,
  );
  const p = named(
    "composition.alkalinity-p",
    "alkalinity P",
    "meq/g",
    alkalinityP(composition),
    "the composition",
    source,
  );
  return [m, p, ...usualStandards.map((standard) => alkalinityAs(m.value, standard))];
}
