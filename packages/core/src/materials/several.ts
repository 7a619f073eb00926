import { alkalinityM, anhydrousShare, ofFormula, pure } from "../chemistry/composition.ts";
import { namesIn } from "../chemistry/salts/record.ts";
import { additiveList, healthPage, usage } from "../chemistry/salts/sources.ts";
import { type Formula, nameOf } from "../chemistry/species.ts";
import { type Path, type Problem, problem } from "../figure/problem.ts";
import type { Source } from "../figure/source.ts";
import { type Decimal, type DecimalInput, type DecimalText, dec, fixedText } from "../number/decimal.ts";
import { plainName } from "./nearest.ts";

/** A name that stands for several things, or for something that is no noodle alkali, with what has to be asked. */
export interface SeveralThings {
  readonly names: readonly string[];
  readonly kind: "alkali" | "flour" | "no alkali";
  /** Whatever flour it is, it is one of common wheat. */
  readonly wheat?: true;
  /** In words, after "may be". */
  readonly mayBe: string;
  /** The strongest and the weakest of them, where the name says that it is a dry salt. */
  readonly between?: readonly [strongest: Formula, weakest: Formula];
  /** What the label or the supplier must tell. */
  readonly ask: string;
  readonly source: Source;
}

const kansuiRule: Source = {
  cite: "Japan, manufacturing standard of kansui: carbonates, sodium bicarbonate and phosphates, also diluted with flour",
  standing: "copy",
};
const recipes: Source = {
  cite: "recipe pages that put home-made substitutes in the place of lye water",
  standing: "copy",
};

const howMuchWater = "the formula or the share of water on the pack, and whether it is food grade";
const madeUpOf = "the list of substances and their % on the pack or the data sheet, and whether it is diluted";
const substanceAndStrength =
  "the substance, and its % by mass or a hydrometer reading with its temperature; until then treat it as a hydroxide, which burns";
const subNumber = "the small number in brackets behind the number";

type Between = SeveralThings["between"];

function alkali(names: string, mayBe: string, ask: string, source: Source, between?: Between): SeveralThings {
  return { names: namesIn(names), kind: "alkali", mayBe, ask, source, ...(between && { between }) };
}

function flour(names: string, mayBe: string, ask: string, source: Source = usage): SeveralThings {
  return { names: namesIn(names), kind: "flour", mayBe, ask, source };
}

function wheat(names: string, mayBe: string, ask: string, source?: Source): SeveralThings {
  return { ...flour(names, mayBe, ask, source), wheat: true };
}

function other(names: string, mayBe: string): SeveralThings {
  const ask = "a product that is sold as a noodle alkali";
  return { names: namesIn(names), kind: "no alkali", mayBe, ask, source: usage };
}

const proteinOfPack = "the protein on the pack and the serving it counts for";

/**
 * Names that stand for several things, so that nothing is worked out with them.
 *
 * Sources: as on each row. The ranges of doses come from the molar masses.
 */
export const severalThings: readonly SeveralThings[] = [
  alkali(
    "kansui powder, powdered kansui, alkaline noodle salt, 粉末かんすい, 면류첨가알칼리제, 拉面剂",
    "any mixture of sodium and potassium carbonate, or a weaker one with bicarbonate, phosphates or flour in it",
    madeUpOf,
    kansuiRule,
    ["Na2CO3", "K2CO3"],
  ),
  alkali(
    "kansui, かんすい, かん水, 鹹水",
    "a powder, a solution or a powder diluted with flour, of sodium and potassium carbonate with or without bicarbonate and phosphates",
    `${madeUpOf}; of a solution its strength`,
    kansuiRule,
  ),
  alkali(
    "lye water, alkaline water, alkaline solution, liquid kansui, kansui solution, 液体かんすい, 枧水, 梘水, 碱水, 鹼水, lihiya",
    "a solution of sodium and potassium carbonate of any strength, a solution of a hydroxide, or, as alkaline water, drinking water",
    substanceAndStrength,
    recipes,
  ),
  alkali(
    "mixed carbonates, mixed carbonate, mixed alkali carbonates, carbonate mix, carbonates",
    "sodium and potassium carbonate in any ratio",
    "how much of each is in it",
    usage,
    ["Na2CO3", "K2CO3"],
  ),
  alkali(
    "washing soda, Waschsoda, Reine Soda, cristaux de soude",
    "sodium carbonate without water, its monohydrate, its decahydrate, or crystals that have partly dried",
    howMuchWater,
    additiveList,
    ["Na2CO3", "Na2CO3.10H2O"],
  ),
  alkali(
    "soda crystals, sal soda, Kristallsoda, 晶碱, 洗涤碱, 洗濯ソーダ",
    "sodium carbonate decahydrate when fresh and closed; an open pack dries to the monohydrate",
    "whether it was fresh and closed, and whether it is food grade: it is sold for laundry",
    usage,
    ["Na2CO3.H2O", "Na2CO3.10H2O"],
  ),
  alkali(
    "soda",
    "sodium bicarbonate in English kitchens, sodium carbonate with or without water in trade and in German, and sodium hydroxide as caustic soda, which burns",
    "which soda it is, and its water",
    usage,
    ["NaOH", "Na2CO3.10H2O"],
  ),
  alkali(
    "Natron",
    "sodium bicarbonate in German; sodium carbonate decahydrate as the mineral",
    "which of the two",
    usage,
    ["NaHCO3", "Na2CO3.10H2O"],
  ),
  alkali(
    "soude",
    "sodium hydroxide, which burns, or sodium carbonate with or without water",
    "caustique or carbonate, and its water",
    usage,
    ["NaOH", "Na2CO3.10H2O"],
  ),
  alkali(
    "potash, potasse, Kali",
    "potassium carbonate, its sesquihydrate, potassium hydroxide, which burns, or a fertiliser, which is no alkali at all",
    "carbonate, caustic or fertiliser, and the assay",
    usage,
    ["KOH", "K2CO3.1.5H2O"],
  ),
  alkali(
    "pearl ash, Pottasche, potasse perlée",
    "potassium carbonate, its sesquihydrate, or damp goods between the two",
    "the hydrate or the assay on the pack",
    additiveList,
    ["K2CO3", "K2CO3.1.5H2O"],
  ),
  alkali("saleratus", "potassium or sodium bicarbonate, by the age of the receipt", "which of the two", usage, [
    "NaHCO3",
    "KHCO3",
  ]),
  alkali(
    "lye, caustic, Lauge",
    "sodium or potassium hydroxide, a solution of either, or wood-ash lye",
    substanceAndStrength,
    usage,
  ),
  alkali(
    "Natronlauge, Kalilauge, lessive de soude",
    "a solution of sodium hydroxide, as Kalilauge of potassium hydroxide, of any strength",
    "its % by mass; it burns",
    usage,
  ),
  alkali(
    "食用碱, 碱, 鹼, 碱面, 口碱",
    "sodium carbonate with or without water, or mixed with bicarbonate; 碱面 are also alkaline noodles",
    "what the pack lists under 成分",
    healthPage,
    ["Na2CO3", "Na2CO3.10H2O"],
  ),
  alkali(
    "소다",
    "sodium bicarbonate in kitchens, sodium carbonate, or as 가성소다 sodium hydroxide, which burns",
    "which soda it is",
    usage,
    ["NaOH", "NaHCO3"],
  ),
  alkali(
    "간수, nigari, bittern",
    "bittern of magnesium chloride, which is no alkali; in Korean also noodle alkali",
    "whether it is for noodles or for tofu",
    usage,
  ),
  alkali("炭酸, タンサン", "sodium bicarbonate or a carbonate", "which of them", usage, ["Na2CO3", "NaHCO3"]),
  alkali(
    "E 500, INS 500",
    "(i) sodium carbonate with or without water, (ii) sodium bicarbonate or (iii) sodium sesquicarbonate",
    subNumber,
    additiveList,
    ["Na2CO3", "Na2CO3.10H2O"],
  ),
  alkali(
    "E 501, INS 501",
    "(i) potassium carbonate or its sesquihydrate, or (ii) potassium bicarbonate",
    subNumber,
    additiveList,
    ["K2CO3", "KHCO3"],
  ),
  alkali("E 339, E 340, E 450, E 451, リン酸塩", "acid and alkaline phosphates under one number", subNumber, usage),
  alkali(
    "wood-ash water, wood-ash lye, ash water, wood ash, 灰汁, 木灰, 잿물, nước tro tàu, 蓬灰, air abu",
    "mainly potassium carbonate of unknown strength, with whatever else was in the ash",
    "a titration, which tells how strong it is; until then treat it as a strong alkali",
    usage,
  ),
  alkali("sesqui", "sodium sesquicarbonate or potassium carbonate sesquihydrate", "which of the two", usage, [
    "Na2CO3.NaHCO3.2H2O",
    "K2CO3.1.5H2O",
  ]),
  alkali(
    "TSP",
    "trisodium phosphate without water or with twelve of water; in hardware shops something else",
    howMuchWater,
    usage,
    ["Na3PO4", "Na3PO4.12H2O"],
  ),
  alkali("DSP", "disodium hydrogen phosphate without water, with two, seven or twelve of water", howMuchWater, usage, [
    "Na2HPO4",
    "Na2HPO4.12H2O",
  ]),
  alkali("TSPP", "tetrasodium diphosphate without water or with ten of water", howMuchWater, usage, [
    "Na4P2O7",
    "Na4P2O7.10H2O",
  ]),
  alkali(
    "TKPP, STPP, SAPP",
    "tetrapotassium diphosphate, pentasodium triphosphate, or disodium dihydrogen diphosphate, an acid that takes alkali away",
    "the formula and the water on the data sheet",
    usage,
  ),
  alkali(
    "papad khar, sajji khar",
    "natural sodium carbonate and bicarbonate with whatever else was in the earth or the ash",
    "an analysis, or a titration",
    usage,
  ),
  other("baking powder", "a bicarbonate with an acid and starch, which use each other up"),
  other("hartshorn, 臭粉", "ammonium carbonate or bicarbonate, which leave as gas"),
  other(
    "大苏打, 硼砂, borax, sodium percarbonate, washing powder",
    "sodium thiosulphate, borax, a bleach or a detergent, none of which belongs in food",
  ),
  wheat(
    "flour, wheat flour, white flour, Mehl, Weizenmehl, farine, farine de blé, harina, harina de trigo, farina, farina di grano tenero, 小麦粉, 面粉, 밀가루",
    "any wheat flour, from cake flour of 7 % protein to high-gluten flour of 15 %",
    proteinOfPack,
  ),
  wheat(
    "strong flour, harina de fuerza",
    "a white or a wholemeal flour of 11.5 to 14.5 % protein",
    `white or wholemeal, and ${proteinOfPack}`,
  ),
  flour("gluten flour", "a flour with gluten added, of about 40 % protein, or gluten itself, of 75 %", proteinOfPack),
  flour(
    "cornflour, wheaten cornflour",
    "ground maize (United States), maize starch (United Kingdom, Australia), or wheat starch, a wheat allergen (wheaten cornflour)",
    "maize or wheat, flour or starch",
  ),
  flour("生粉", "potato, maize or tapioca starch", "which starch"),
  wheat("全粒粉", "the whole grain of strong or of soft wheat", `強力 or 薄力, and ${proteinOfPack}`),
  wheat("富强粉, 雪花粉, 饺子粉", "a wheat flour of any strength: a word of the trade", proteinOfPack),
  flour(
    "sarrasin, farine de sarrasin, farine de blé noir, そば粉",
    "buckwheat flour of the whole grain or of its inner part; there is no wheat in it by nature",
    "whole or inner, and whether wheat was milled on the same stones",
  ),
  flour("farro", "einkorn, emmer or spelt, whole or pearled; all of them are wheat", "which grain"),
  wheat(
    "00, T45, T55, T65, T80, T110, T150, Type 405, Type 550, Type 812, Type 1050, Type 1600",
    "a wheat flour of any strength: the type tells its ash, not its protein",
    proteinOfPack,
    { cite: "DIN 10355, French decree 63-720, Italian DPR 187/2001: types by ash of dry matter", standing: "copy" },
  ),
];

let byName: ReadonlyMap<string, SeveralThings> | undefined;

/** What a name stands for, where that is several things. @example severalOf("Washing  Soda")?.between // => ["Na2CO3", "Na2CO3.10H2O"] */
export function severalOf(name: string): SeveralThings | undefined {
  byName ??= new Map(severalThings.flatMap((one) => one.names.map((known) => [plainName(known), one] as const)));
  return byName.get(plainName(name));
}

/** A dose that a name stands beside: of the product itself, or what a product has to bring. */
export interface DoseBeside {
  readonly text: string;
  readonly unit: "g" | "%";
  /** So much of it, g or %. */
  readonly ofIt?: DecimalText;
  /** So much alkalinity, meq in what `unit` counts, or so much of anhydrous salts. */
  readonly meq?: DecimalInput;
  readonly anhydrous?: Decimal;
  /** What of it is the salt, % by mass; all of it where it is no solution. */
  readonly salt?: DecimalText;
}

/** The problem of a name that stands for several things: what they are, what to ask, and the range of doses. */
export function severalProblem(
  { kind, mayBe, ask, between }: SeveralThings,
  name: string,
  path: Path,
  dose?: DoseBeside,
  code: "materials.several" | "search.several" = "materials.several",
): Problem {
  const range = between === undefined || dose === undefined ? undefined : rangeText(between, dose);
  return problem(code, path, { name, kind, mayBe, ask, ...(range !== undefined && { range }) });
}

function rangeText(
  [strongest, weakest]: readonly [Formula, Formula],
  { text, unit, ofIt, meq, anhydrous, salt = "100" }: DoseBeside,
): string {
  const amount = (formula: Formula): Decimal => {
    const composition = ofFormula(formula);
    const share = dec(salt).div(100);
    const strength = alkalinityM(composition).times(share);
    if (ofIt !== undefined) return strength.times(ofIt).div(alkalinityM(pure("Na2CO3")));
    if (meq !== undefined) return dec(meq).div(strength);
    return (anhydrous ?? dec(0)).times(100).div(anhydrousShare(composition).times(share));
  };
  const ends = [strongest, weakest].map((formula) => ({ formula, amount: amount(formula) }));
  const [low, high] = ends
    .toSorted((a, b) => a.amount.cmp(b.amount))
    .map((end) => `${fixedText(end.amount, 2)} ${unit} (${nameOf(end.formula)})`);
  return ofIt === undefined
    ? `${text} takes from ${low} to ${high} of it`
    : `${text} of it is worth from ${low} to ${high} of sodium carbonate without water`;
}
