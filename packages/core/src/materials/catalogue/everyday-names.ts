import type { Source } from "../../figure/source.ts";

const additiveList: Source = {
  cite: "list of additive names in many languages of a public food database, E 500 to E 501",
  standing: "copy",
};
const textbook: Source = { cite: "chemistry textbook, names of the hydrates of sodium carbonate", standing: "copy" };
const federal: Source = {
  cite: "21 CFR 184.1742 and 184.1792, sodium carbonate and sesquicarbonate",
  standing: "copy",
};
const kansuiPage: Source = { cite: "encyclopaedia, Japanese, article on kansui, 2022", standing: "copy" };
const additiveNumbers: Source = {
  cite: "Codex Alimentarius, Class Names and the International Numbering System for Food Additives, CAC/GL 36",
  standing: "memory",
};
const usage: Source = { cite: "kitchen and trade usage", standing: "memory" };
const flourTrade: Source = { cite: "Japanese trade pages on flours", standing: "copy" };

/** Names that stand for one material, with the source that says so. */
export interface EverydayNames {
  /** Key of the material in the catalogue. */
  readonly of: string;
  readonly names: readonly string[];
  readonly source: Source;
  /** The name does not say how much crystal water there is. */
  readonly waterNotSaid?: true;
}

function row(of: string, source: Source, ...names: readonly string[]): EverydayNames {
  return { of, names, source };
}

function dry(of: string, source: Source, ...names: readonly string[]): EverydayNames {
  return { of, names, source, waterNotSaid: true };
}

const soda = "salt sodium-carbonate";
const potash = "salt potassium-carbonate";
const bicarbonate = "salt sodium-bicarbonate";

/**
 * Everyday, regional and trade names that stand for one thing. Names that stand for several are in `several.ts`.
 *
 * Sources: as on each row; a name from memory is safe to recognise, and the answer shows what it was taken for.
 */
export const everydayNames: readonly EverydayNames[] = [
  row(soda, textbook, "soda ash"),
  row(soda, additiveList, "Calcinierte Soda", "Kalzinierte Soda"),
  row(soda, usage, "calcined soda", "light soda ash", "dense soda ash", "纯碱", "ソーダ灰", "소다회"),
  dry(soda, additiveList, "Natriumcarbonat", "carbonate de sodium", "carbonate de soude"),
  dry(soda, additiveList, "炭酸ナトリウム", "碳酸钠", "鹼粉", "탄산나트륨"),
  dry(soda, { cite: "Chinese health page on 食用碱", standing: "copy" }, "面碱"),
  dry(soda, additiveNumbers, "E 500(i)", "INS 500(i)"),
  dry(soda, usage, "carbonate of soda", "炭酸ソーダ", "苏打"),
  row("salt sodium-carbonate-monohydrate", additiveList, "crystal carbonate"),
  row("salt sodium-carbonate-monohydrate", usage, "soda monohydrate", "thermonatrite"),
  row(bicarbonate, additiveList, "sodium hydrogen carbonate", "sodium acid carbonate", "bicarbonate de soude"),
  row(bicarbonate, additiveList, "doppeltkohlensaures Natron", "bicarbonate alimentaire", "炭酸水素ナトリウム", "重曹"),
  row(bicarbonate, additiveList, "小苏打", "碳酸氢钠", "梳打粉", "탄산수소나트륨"),
  row(bicarbonate, additiveNumbers, "E 500(ii)", "INS 500(ii)"),
  row(
    bicarbonate,
    usage,
    "bicarb",
    "bread soda",
    "cooking soda",
    "Speisenatron",
    "Speisesoda",
    "Backsoda",
    "sel de Vichy",
  ),
  row(bicarbonate, usage, "重炭酸ソーダ", "ベーキングソーダ", "식소다", "식용소다", "베이킹소다", "중조"),
  row("salt sodium-sesquicarbonate", federal, "trona"),
  row("salt sodium-sesquicarbonate", additiveList, "セスキ炭酸ナトリウム"),
  row("salt sodium-sesquicarbonate", additiveNumbers, "E 500(iii)", "INS 500(iii)"),
  row("salt sodium-sesquicarbonate", usage, "セスキ"),
  dry(potash, additiveList, "Kaliumcarbonat", "炭酸カリウム", "碳酸钾", "钾碱", "탄산칼륨"),
  dry(potash, additiveNumbers, "E 501(i)", "INS 501(i)"),
  dry(
    potash,
    usage,
    "salt of tartar",
    "carbonate of potash",
    "carbonate de potassium",
    "carbonate de potasse",
    "炭酸カリ",
  ),
  row("salt potassium-carbonate-sesquihydrate", usage, "potassium carbonate hydrate"),
  row("salt potassium-bicarbonate", additiveNumbers, "E 501(ii)", "INS 501(ii)"),
  row("salt potassium-bicarbonate", additiveList, "potassium hydrogen carbonate"),
  row("salt sodium-hydroxide", kansuiPage, "苛性ソーダ"),
  row("salt sodium-hydroxide", additiveNumbers, "E 524", "INS 524"),
  row("salt sodium-hydroxide", usage, "caustic soda", "soude caustique", "Ätznatron", "Laugenperlen"),
  row("salt sodium-hydroxide", usage, "烧碱", "火碱", "苛性钠", "가성소다", "양잿물"),
  row("salt potassium-hydroxide", additiveNumbers, "E 525", "INS 525"),
  row(
    "salt potassium-hydroxide",
    usage,
    "caustic potash",
    "potasse caustique",
    "Ätzkali",
    "苛性カリ",
    "苛性钾",
    "가성칼리",
  ),
  row("mext 01015", flourTrade, "薄力粉"),
  row("mext 01018", flourTrade, "中力粉", "うどん粉"),
  row("mext 01020", flourTrade, "強力粉"),
  row("mext 02034", usage, "片栗粉"),
  row("mext 02031", usage, "浮き粉", "澄粉", "澄面"),
  row("usda 48052", usage, "谷朊粉", "小麦蛋白粉"),
];
