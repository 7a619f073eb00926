import type { ProductNames } from "../../chemistry/salts/record.ts";
import { usage } from "../../chemistry/salts/sources.ts";
import { saltProducts } from "../../chemistry/species.ts";
import type { Source } from "../../figure/source.ts";

const flourTrade: Source = { cite: "Japanese trade pages on flours", standing: "copy" };

/** Names that stand for one material, with the source that says so. */
interface EverydayNames extends ProductNames {
  /** Key of the material in the catalogue. */
  readonly of: string;
}

function row(of: string, source: Source, ...names: readonly string[]): EverydayNames {
  return { of, names, source };
}

/** A part of one egg or of several. */
function inFrench(part: string): readonly string[] {
  return [part, `${part}s`].flatMap((one) => ["œuf", "œufs", "oeuf", "oeufs"].map((egg) => `${one} d'${egg}`));
}

/**
 * Everyday, regional and trade names that stand for one thing; those of a salt are in its record. Names that stand for
 * several are in `several.ts`.
 */
export const everydayNames: readonly EverydayNames[] = [
  ...saltProducts.flatMap(({ key, names }) => names.map((one) => ({ of: `salt ${key}`, ...one }))),
  row("mext 01015", flourTrade, "薄力粉"),
  row("mext 01018", flourTrade, "中力粉", "うどん粉"),
  row("mext 01020", flourTrade, "強力粉"),
  row("mext 02034", usage, "片栗粉"),
  row("mext 02031", usage, "浮き粉", "澄粉", "澄面"),
  row("mext 02034", usage, "Kartoffelstärke", "Kartoffelmehl", "fécule de pomme de terre"),
  row("mext 02031", usage, "Weizenstärke", "amidon de blé"),
  row("mext 02035", usage, "Maisstärke", "Speisestärke", "amidon de maïs"),
  row("usda 48052", usage, "谷朊粉", "小麦蛋白粉", "Weizengluten", "Weizenkleber", "gluten de blé"),
  row("usda 20064", usage, "Roggenmehl", "farine de seigle"),
  row("usda 20466", usage, "Hartweizengrieß", "semola di grano duro", "semoule de blé dur", "sémola de trigo duro"),
  row("usda 20080", usage, "Weizenvollkornmehl", "farine complète", "farine complète de blé", "farina integrale"),
  row("usda 20080", usage, "harina integral", "harina integral de trigo"),
  row("usda 01123", usage, "Ei", "Eier", "Vollei", "Hühnerei", "Hühnereier", "œuf", "œufs", "oeuf", "oeufs"),
  row("usda 01123", usage, "uovo", "uova", "huevo", "huevos", "全卵", "鶏卵", "鸡蛋", "계란", "달걀"),
  row("usda 01124", usage, "Eiklar", ...inFrench("blanc")),
  row("usda 01125", usage, "Eigelb", "Eigelbe", "Eidotter", ...inFrench("jaune")),
];
