import { waterOnly } from "../chemistry/composition.ts";
import { gramsOf } from "../chemistry/strength.ts";
import { commonPractice, type Source } from "../figure/source.ts";
import type { Material, MaterialKind } from "../materials/material.ts";
import { type Decimal, type DecimalText, dec, decimalText, fixedText } from "../number/decimal.ts";

/** What a word behind a number measures. */
export type Measure =
  | { readonly by: "mass" | "share"; readonly unit: string }
  | { readonly by: "volume"; readonly millilitres: readonly [least: DecimalText, most: DecimalText] }
  /** So many parts by weight, as a number without a unit. */
  | { readonly by: "parts" }
  /** So many of them, as of eggs. */
  | { readonly by: "pieces" }
  /** A pinch, a packet: nobody can tell how much it is. */
  | { readonly by: "unknown" }
  /** Of a time, a length, a temperature: no amount of anything. */
  | { readonly by: "other" };

const exactly = (millilitres: DecimalText): Measure => ({ by: "volume", millilitres: [millilitres, millilitres] });
const between = (least: DecimalText, most: DecimalText): Measure => ({ by: "volume", millilitres: [least, most] });

/**
 * The words by what they measure. Spoons and cups hold what their country says: a cup 200 mL in Japan, 237 in the United
 * States, 250 where it is metric; a tablespoon 15 mL, in Australia 20.
 */
const words: readonly (readonly [names: string, measure: Measure])[] = [
  [
    "kg kgs kilo kilos kilogram kilograms kilogramm 公斤 千克 キロ キログラム 킬로 킬로그램",
    { by: "mass", unit: "kg" },
  ],
  ["g gr gm gms gram grams gramme grammes gramm grammi gramos 克 公克 グラム 그램", { by: "mass", unit: "g" }],
  ["mg milligram milligrams", { by: "mass", unit: "mg" }],
  ["oz ozs ounce ounces", { by: "mass", unit: "oz" }],
  ["lb lbs pound pounds", { by: "mass", unit: "lb" }],
  ["% percent per_cent pct prozent pour_cent パーセント", { by: "share", unit: "%" }],
  ["fl_oz floz fluid_ounce fluid_ounces", between("28.4", "29.6")],
  ["ml mls millilitre millilitres milliliter milliliters cc 毫升 ミリリットル", exactly("1")],
  ["cl centilitre centilitres centiliter centiliters", exactly("10")],
  ["dl decilitre decilitres deciliter deciliters", exactly("100")],
  ["l litre litres liter liters ltr リットル", exactly("1000")],
  [
    "t tsp tsps teaspoon teaspoons tl teelöffel c._à_c c._à_c. c_à_c c._à_café c_à_café cuil._à_café cuillère_à_café cuillères_à_café cucchiaino cucchiaini cucharadita cucharaditas 小さじ 小匙 茶匙",
    between("4.9", "5"),
  ],
  [
    "tbsp tbsps tbs tbl tablespoon tablespoons el esslöffel c._à_s c._à_s. c_à_s c._à_soupe c_à_soupe cuil._à_soupe cuillère_à_soupe cuillères_à_soupe cucchiaio cucchiai cucharada cucharadas 大さじ 大匙 汤匙",
    between("14.8", "20"),
  ],
  ["cup cups カップ 컵", between("200", "250")],
  ["pint pints", between("473", "568")],
  ["quart quarts qt qts", between("946", "1137")],
  ["gallon gallons gal gals", between("3785", "4546")],
  ["part parts teil teile", { by: "parts" }],
  ["stück stk pièce pièces pezzo pezzi pc pcs piece pieces 個 个 개", { by: "pieces" }],
  [
    "spoon spoons spoonful spoonfuls pinch pinches prise prisen pincée pincées pizzico pizzichi messerspitze msp dash dashes handful handfuls knob drop drops packet packets pack packs sachet sachets bag bags box boxes bottle bottles jar jars glass glasses scoop scoops",
    { by: "unknown" },
  ],
  [
    "min mins minute minutes h hr hrs hour hours s sec secs second seconds d day days mm cm inch inches c °c f °f deg degrees times passes rpm 分 分钟 小时 時間 秒",
    { by: "other" },
  ],
];

const byWord = new Map(
  words.flatMap(([names, measure]) => names.split(" ").map((name) => [name.replaceAll("_", " "), measure] as const)),
);

/** The words of measure as alternatives of a regular expression, the long ones first. */
export const measureWords = [...byWord.keys()]
  .sort((a, b) => b.length - a.length)
  .map((word) =>
    /^[a-zäöüéèà° ]+$/u.test(word)
      ? `${word.replaceAll(" ", " ?")}(?!\\p{L})\\.?`
      : word.replaceAll(".", "\\.").replace(/[a-z]$/u, "$&(?!\\p{L})"),
  )
  .join("|");

/** What a word measures. A capital T is a tablespoon in recipes, a small t a teaspoon. @example measureOf("grams") // => { by: "mass", unit: "g" } */
export function measureOf(word: string): Measure | undefined {
  if (word === "T") return byWord.get("tbsp");
  const plain = word.replace(/\.$/u, "").replace(/^(fl|per|fluid|pour) ?(?=\S)/iu, "$1 ");
  return byWord.get(plain.toLowerCase()) ?? byWord.get(word.replace(/\.$/u, "").toLowerCase());
}

/** A range of grams, and who says so. */
export interface GramsRange {
  readonly least: DecimalText;
  readonly most: DecimalText;
  readonly source: Source;
}

/** g/mL of what kitchens measure by the spoon, loose to pressed. */
const looseToPressed: Readonly<Partial<Record<MaterialKind, readonly [DecimalText, DecimalText]>>> = {
  flour: ["0.45", "0.65"],
  starch: ["0.45", "0.75"],
  gluten: ["0.35", "0.6"],
  salt: ["0.6", "1.35"],
  alkali: ["0.5", "1.3"],
  egg: ["1", "1.05"],
  water: ["0.99", "1"],
  fat: ["0.9", "0.93"],
};

/**
 * The grams that a volume of a material may be: by the spoon's size, and by how loosely it is filled.
 *
 * Source: common practice, no source.
 * @example gramsRange("flour", ["200", "250"])?.least // => "90"
 */
export function gramsRange(
  kind: MaterialKind,
  [least, most]: readonly [DecimalText, DecimalText],
): GramsRange | undefined {
  const density = looseToPressed[kind];
  if (density === undefined) return undefined;
  const [loose, pressed] = density;
  return { least: rounded(dec(least).times(loose)), most: rounded(dec(most).times(pressed)), source: commonPractice };
}

/** Grams of an egg without its shell, from a small to a large one. */
const eggs: readonly (readonly [key: RegExp, least: number, most: number])[] = [
  [/yolk/u, 14, 20],
  [/white/u, 28, 42],
  [/egg/u, 40, 65],
];

/** The grams that so many eggs may be, without their shells. Source: common practice, no source. */
export function eggRange(material: Pick<Material, "kind" | "name">, count: Decimal): GramsRange | undefined {
  const size = material.kind === "egg" ? eggs.find(([key]) => key.test(material.name)) : undefined;
  if (size === undefined) return undefined;
  return { least: rounded(count.times(size[1])), most: rounded(count.times(size[2])), source: commonPractice };
}

/** Grams of a volume of water at 20 °C. @example waterGrams("500") // => "499.1" */
export function waterGrams(millilitres: DecimalText): DecimalText | undefined {
  const grams = gramsOf(waterOnly, { millilitres }, "20");
  return grams.ok ? rounded(dec(grams.value)) : undefined;
}

/** To a tenth below ten grams and of water; to whole grams above. */
function rounded(grams: Decimal): DecimalText {
  return decimalText(dec(fixedText(grams, 1)));
}
