import { alkalinityM, anhydrousShare } from "../chemistry/composition.ts";
import { citation } from "../figure/source.ts";
import { told } from "../figure/told.ts";
import { classesIn, grainOf } from "../materials/flour-classes.ts";
import type { Material } from "../materials/material.ts";
import { listing, numberColumn, report, section, wordColumn } from "./build.ts";
import { classSection } from "./class-blocks.ts";
import type { Cell, Report, Section, Table } from "./schema.ts";
import { alkalinityEnds, numberCell, words } from "./show.ts";

/** Tells what is in the catalogue: one table for what has a composition by analysis, one for the salts. */
export function materialsReport(materials: readonly Material[], asked: string): Report {
  const foods = materials.filter(({ composition }) => composition === undefined);
  const ends = foods.length < materials.length ? [alkalinityEnds] : [];
  const [only] = materials;
  const single = materials.length === 1 && only !== undefined;
  return report({
    command: "materials",
    title: asked === "" ? "Materials of the catalogue" : `Materials: ${asked}`,
    main: foods.length > 0 ? "materials" : "salts",
    sections: [
      section("materials", "Flours, starches, eggs and the rest, % as is", foodTable(foods)),
      section("salts", "Salts and alkaline products", saltTable(materials), ends),
      ...(single ? [section("about", "About it", about(only)), classesOf(only)] : []),
      section("sources", "Sources", sources(materials)),
    ],
    cautions: [
      "Table values are means of samples: a bag can be off by a point of protein or moisture or more. A certificate of the lot is better.",
    ],
  });
}

function amount(value: string | undefined, unit: string): Cell {
  return value === undefined ? words("–") : numberCell(value, unit, 2);
}

function foodTable(materials: readonly Material[]): Table {
  return listing("materials", materials, [
    [wordColumn("name", "name"), ({ name }) => name],
    [wordColumn("kind", "kind"), ({ kind, wholegrain }) => (wholegrain ? `${kind}, wholegrain` : kind)],
    [numberColumn("moisture", "moisture"), ({ moisture }) => amount(moisture, "%")],
    [numberColumn("protein", "protein"), ({ protein }) => amount(protein?.value, "%")],
    [numberColumn("factor", "N factor"), ({ protein }) => amount(protein?.nitrogenFactor, "")],
    [numberColumn("ash", "ash"), ({ ash }) => amount(ash, "%")],
    [wordColumn("key", "key"), ({ key }) => key],
  ]);
}

function saltTable(materials: readonly Material[]): Table {
  const salts = materials.flatMap(({ composition, name, key }) => (composition ? [{ composition, name, key }] : []));
  return listing("salts", salts, [
    [wordColumn("name", "name"), ({ name }) => name],
    [
      numberColumn("anhydrous", "alkaline salts %"),
      ({ composition }) => numberCell(anhydrousShare(composition), "%", 2),
    ],
    [numberColumn("water", "water %"), ({ composition }) => amount(composition.water, "%")],
    [
      numberColumn("alkalinity", "alkalinity M meq/g"),
      ({ composition }) => numberCell(alkalinityM(composition), "meq/g", 3),
    ],
    [wordColumn("key", "key"), ({ key }) => key],
  ]);
}

function classesOf(material: Material): Section {
  const grain = grainOf(material);
  const fits = grain === undefined ? [] : classesIn({ ...material, grain });
  return classSection([{ name: material.name, fits }]);
}

function about(material: Material): readonly string[] {
  const { published, aliases, allergens, allergensKnown, spread, notes } = material;
  const spreads = Object.entries(spread ?? {}).flatMap(([what, one]) =>
    one === undefined
      ? []
      : [
          `${what}: ${one.n} samples${one.low !== undefined && one.high !== undefined ? `, from ${one.low} to ${one.high} %` : ""}${one.standardError === undefined ? "" : `, standard error ${one.standardError} %`}.`,
        ],
  );
  return [
    ...(published === undefined ? [] : [`Printed as: ${published}.`]),
    ...(aliases.length === 0 ? [] : [`Also found as: ${aliases.join(", ")}.`]),
    ...spreads,
    allergensKnown
      ? `Allergens: ${allergens.length === 0 ? "none of its own" : allergens.join(", ")}.`
      : "Allergens: not known.",
    ...notes.map((one) => (typeof one === "string" ? one : told(one))),
  ];
}

function sources(materials: readonly Material[]): readonly string[] {
  const texts = materials.map(({ source }) => citation({ cite: source.cite, standing: source.standing }));
  return [...new Set(texts)];
}
