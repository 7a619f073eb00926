import { at, type Source } from "../../figure/source.ts";
import type { Material, Protein, Spread, SpreadOf } from "../material.ts";
import { columns, figures } from "./columns.ts";
import type { Entry } from "./entry.ts";
import { natures } from "./nature.ts";
import { type UsdaRow, usdaRows } from "./usda-sr28-rows.ts";
import { type UsdaSpreadRow, usdaSpreadRows } from "./usda-sr28-spread.ts";

export const usdaSource: Source = {
  cite: "USDA National Nutrient Database for Standard Reference, Release 28 (2015)",
  standing: "copy",
};

const noFactor = "the table prints no nitrogen factor for this protein";

/** What has to be known before a row is built on. */
const traps: Readonly<Record<string, readonly string[]>> = {
  "11413": ["this is dried and milled potato with 6.9 % protein, not potato starch"],
  "16122": ["its water, protein, fat, carbohydrate and ash add up to 100.27 %, not 100 %"],
  "18371": ["an acid and a carbonate: it would use up part of the alkali"],
  "18373": [
    "an acid salt: it would use up part of the alkali",
    "its carbohydrate by difference is tartaric acid and no starch",
  ],
  "20061": ["the printed energy is 2 kcal below what the table's own factors give"],
  "20068": ["pearls of cooked starch; tapioca flour as sold is raw starch, see cassava starch"],
  "20645": ["the nearest row to what the trade sells as high-gluten flour"],
  "20646": ["the nearest row to what the trade sells as high-gluten flour"],
  "48052": ["one sample, the maker's own analysis"],
};

const grains = ["20076", "20140", "20062", "20004", "20038", "20008"];

/** The foods of the table that can go into a dough. */
export const usdaEntries: readonly Entry[] = usdaRows.map((row) => {
  const [ndb, name, , , , , ...aliases] = row;
  return { key: `usda ${ndb}`, name, aliases, build: () => material(row) };
});

function material(row: UsdaRow): Material {
  const [ndb, name, nature, composition, factors, published, ...aliases] = row;
  const { moisture = "0", protein = "0", ...others } = columns(composition, figures);
  const [nitrogen = "-"] = factors.split(" ");
  const spread = usdaSpreadRows.find(([other]) => other === ndb);
  return {
    key: `usda ${ndb}`,
    name,
    published,
    aliases,
    ...natures[nature],
    moisture,
    protein: nitrogen === "-" ? { value: protein } : { value: protein, nitrogenFactor: nitrogen },
    ...others,
    allergensKnown: true,
    ...(spread !== undefined && { spread: spreadOf(spread) }),
    notes: notesOf(ndb, { value: protein }, nitrogen),
    source: at(usdaSource, `NDB ${ndb}`),
  };
}

function notesOf(ndb: string, protein: Protein, nitrogen: string): readonly string[] {
  return [
    ...(traps[ndb] ?? []),
    ...(grains.includes(ndb) ? ["the row is of the whole grain, not of a flour milled from it"] : []),
    ...(nitrogen === "-" && Number(protein.value) > 0 ? [noFactor] : []),
  ];
}

function spreadOf([, moisture, protein, ash]: UsdaSpreadRow): Readonly<Partial<Record<SpreadOf, Spread>>> {
  const texts = { moisture, protein, ash };
  const known: Partial<Record<SpreadOf, Spread>> = {};
  for (const of of ["moisture", "protein", "ash"] as const) {
    const { n, ...rest } = columns(texts[of], ["n", "standardError", "low", "high"]);
    if (n !== undefined) known[of] = { n: Number(n), ...rest };
  }
  return known;
}
