import { type Note, note, type Path } from "../figure/problem.ts";
import { citation, commonPractice, type Source } from "../figure/source.ts";
import { dec, shortText } from "../number/decimal.ts";
import type { Material } from "./material.ts";

/** What is usual of one figure of a kind of material, % as is. */
interface Usual {
  readonly of: string;
  readonly figure: "moisture" | "protein";
  readonly low: string;
  readonly high: string;
  readonly sources: readonly Source[];
}

const wheatMoisture: Source = { cite: "CODEX STAN 152-1985, moisture at most 15.5 %", standing: "read" };
const glutenStandard: Source = { cite: "CODEX STAN 163-1987, rev. 2001", at: "section 3.2", standing: "read" };
const tables: Source = {
  cite: "wheat flours of USDA National Nutrient Database, SR28: 8.2 to 15.3 %",
  standing: "read",
};
const starches: Source = {
  cite: "MEXT, Standard Tables of Food Composition in Japan, potato starch: 18.0 %",
  standing: "read",
};

const ofWheat: readonly Usual[] = [
  { of: "wheat flour", figure: "moisture", low: "8", high: "15.5", sources: [wheatMoisture, commonPractice] },
  { of: "wheat flour", figure: "protein", low: "6", high: "18", sources: [tables, commonPractice] },
];
const ofOtherFlour: readonly Usual[] = [
  { of: "flour", figure: "moisture", low: "3", high: "15.5", sources: [commonPractice] },
];
const ofKind: Readonly<Partial<Record<Material["kind"], readonly Usual[]>>> = {
  starch: [
    { of: "starch", figure: "moisture", low: "8", high: "20", sources: [starches, commonPractice] },
    { of: "starch", figure: "protein", low: "0", high: "1", sources: [commonPractice] },
  ],
  gluten: [
    { of: "dry gluten", figure: "moisture", low: "4", high: "10", sources: [glutenStandard, commonPractice] },
    { of: "dry gluten", figure: "protein", low: "70", high: "85", sources: [glutenStandard, commonPractice] },
  ],
};

function usualOf({ kind, glutenForming }: Material): readonly Usual[] {
  if (kind !== "flour") return ofKind[kind] ?? [];
  return glutenForming ? ofWheat : ofOtherFlour;
}

/**
 * Notes on the moisture and the protein of a flour, a starch or a gluten that its kind does not have: most likely a slip, a
 * point in the wrong place or another basis. It is worked with as it is. What was toasted has less moisture than others.
 *
 * Source: standards and tables as the notes say, their other ends common practice.
 */
export function unusualFigures(material: Material, name: string, path: Path): readonly Note[] {
  const isToasted = material.notes.some((one) => typeof one !== "string" && one.code === "materials.toasted");
  return usualOf(material).flatMap(({ of, figure, low, high, sources }) => {
    const value = figure === "moisture" ? material.moisture : material.protein?.value;
    if (value === undefined || (dec(value).gte(low) && dec(value).lte(high))) return [];
    if (figure === "moisture" && isToasted && dec(value).lt(low)) return [];
    const source = sources.map(citation).join("; ");
    return [note("materials.unusual", path, { name, figure, value: shortText(value, 2), of, low, high, source })];
  });
}
