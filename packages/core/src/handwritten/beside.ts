import { alkalinityM } from "../chemistry/composition.ts";
import { materialNamed } from "../materials/catalogue.ts";
import { findPart } from "../materials/composition-parts.ts";
import { readProduct } from "../materials/product-text.ts";
import { type Decimal, dec, decimalText, HUNDRED, sum } from "../number/decimal.ts";
import { moneyIn, priceOf } from "./heads.ts";

/** What stands beside a flour: the protein, the moisture and the ash of its label or certificate. */
export interface Beside {
  /** The line without it. */
  readonly rest: string;
  /** What it leaves open. */
  readonly remarks: readonly string[];
  readonly figures: Readonly<Record<string, unknown>>;
  /** What it costs, as a spec has it. */
  readonly price?: string;
}

const code = "(?:[A-Z]{1,3}|eur|usd|gbp|[Ee]uros?)";
/** Money, and for how much of it: `1.20 EUR/kg`, `at € 1.20 per kg`, `(7.80 EUR per 500 g)`. */
const priceForm = new RegExp(
  String.raw`[\s,;:–-]*(?:(?<!\p{L})(?:at|for|à|zu|costs?|price)\s|@\s?)?\(?(?<told>(?:[A-Z]{0,3}\p{Sc} ?\d[\d.,]*|(?:${code} )?\d[\d.,]* ?(?:${code}(?!\p{L})|\p{Sc}))(?: ?(?:\/|(?:per|for|pro|je|par|le|al|por|an?|the)(?!\p{L})) ?(?:\d[\d.,]* ?)?(?:kg|g|lb|oz|kilo)(?!\p{L}))?)\)?(?=[\s,;.)]|$)`,
  "u",
);

/** Takes out of a line the price that stands in it; of one that does not tell for how much, or in what, the reason. */
function takePrice(line: string): Pick<Beside, "rest" | "remarks" | "price"> {
  const match = priceForm.exec(line);
  const text = match?.groups?.["told"]?.replace(/eur|usd|gbp/u, (one) => one.toUpperCase()) ?? "";
  if (match === null || moneyIn(text) === undefined) return { rest: line, remarks: [] };
  const rest = `${line.slice(0, match.index)} ${line.slice(match.index + match[0].length)}`;
  const price = priceOf(text.replace(/kilo$/u, "kg"), undefined);
  if (price !== undefined) return { rest, remarks: [], price };
  return { rest, remarks: [`the price "${text}" is left out: write it like 0.92 EUR/kg`] };
}

const number = String.raw`(\d+(?:[.,]\d+)?)`;
const proteinWords = "(?:protein|proteins|prot\\.?|eiweiß|protéines?|proteine|たんぱく質|蛋白质|蛋白質|단백질)";
const per = String.raw`(?: ?(?:\/|per|in|je|pro|of a serving of) ?${number}? ?g)?`;
const basis = String.raw`(?:[, ]*(?:at|on|auf)? ?(14 ?% ?mb|dry(?: basis| matter)?|as is)(?!\p{L}))?`;
/** Soda ash and pearl ash are alkalis. */
const ash = "(?<![\\p{L}-]|soda |pearl |wood )(?:ash|asche|cendres|灰分)(?!\\p{L})";
const forms: readonly (readonly [key: "protein" | "moisture" | "ash", form: RegExp])[] = [
  [
    "protein",
    new RegExp(`${number} ?(%|g)${per} ?(?:of )?${proteinWords}(?! ?concentrate| ?isolate)${per}${basis}`, "iu"),
  ],
  ["protein", new RegExp(`${proteinWords}(?: content)? ?[:=]? ?${number} ?(%|g)${per}${basis}`, "iu")],
  ["moisture", new RegExp(`${number} ?(%) ?(?:moisture|feuchte|humidité|水分)`, "iu")],
  ["moisture", new RegExp(`(?:moisture|feuchte|humidité|水分)(?: content)? ?[:=]? ?${number} ?(%)`, "iu")],
  ["ash", new RegExp(`${number} ?(%) ?${ash}${basis}`, "iu")],
  ["ash", new RegExp(`${ash}(?: content)? ?[:=]? ?${number} ?(%)${basis}`, "iu")],
];

/**
 * Takes out of a line what it says of a flour. A protein in % without a basis is that of the flour as sold, or, with
 * the moisture of a certificate beside it, left without one; in g of a serving it is that of a nutrition label, rounded by
 * the widest of the rule books.
 */
export function takeBeside(line: string): Beside {
  const priced = takePrice(line);
  let { rest } = priced;
  let figures: Record<string, unknown> = {};
  const remarks = [...priced.remarks];
  for (const [key, form] of forms) {
    const match = form.exec(rest);
    if (match === null || figures[key] !== undefined || (key === "protein" && "label" in figures)) continue;
    rest = `${rest.slice(0, match.index)} ${rest.slice(match.index + match[0].length)}`;
    const found = stated(key, match);
    if (found === undefined) remarks.push(`"${match[0].trim()}" is left out: in how many grams?`);
    figures = { ...figures, ...found };
  }
  const emptied = rest.replace(/\([\s,;:]*\)/gu, " ").replace(/(?:\bwith\b|[,;(:–-])\s*(?=\)|$)/u, "");
  const { proteinBasis = figures["moisture"] === undefined ? "as is" : undefined, ...others } = figures;
  const isBased = figures["protein"] !== undefined && proteinBasis !== undefined;
  return {
    rest: emptied,
    figures: { ...others, ...(isBased && { proteinBasis }) },
    remarks,
    ...(priced.price !== undefined && { price: priced.price }),
  };
}

function stated(
  key: "protein" | "moisture" | "ash",
  match: RegExpExecArray,
): Readonly<Record<string, unknown>> | undefined {
  const [, amount = "", unit = "%", ...more] = match;
  const plain = amount.replace(",", ".");
  if (key === "moisture") return { moisture: `${plain} %` };
  const onBasis = more.find((one) => one !== undefined && /mb|dry|as is/iu.test(one))?.toLowerCase();
  const named = onBasis?.startsWith("dry") ? "dry" : onBasis?.replace(/ ?% ?/u, " % ");
  if (key === "ash") return { ash: `${plain} %`, ...(named !== undefined && { ashBasis: named }) };
  const serving = more.find((one) => one !== undefined && /^\d/u.test(one) && !/mb/iu.test(one))?.replace(",", ".");
  if (unit === "g" && serving === undefined) return undefined;
  if (unit === "g" && !dec(serving ?? 0).eq(HUNDRED)) {
    return { label: { protein: `${plain} g`, serving: `${serving} g`, rules: "US" } };
  }
  return { protein: `${plain} %`, ...(named !== undefined && { proteinBasis: named }) };
}

/**
 * Reads what a product is made of: `60 % sodium carbonate, 40 % K2CO3`, `K2CO3 20 % in water`; undefined where it is no
 * such list, or does not say what the rest is.
 *
 * @param solution - whether what is not named is water
 */
export function madeOf(words: string, solution: boolean): Readonly<Record<string, string>> | undefined {
  if (!words.includes("%")) return inRatio(words);
  const parts = words
    .split(/(?<!(?<![\p{L}\d.,])\d+),|,(?!\d)|[;+&]|\band\b|\bund\b/iu)
    .map((part) => part.trim())
    .filter((part) => part !== "" && !(solution && /^(?:rest )?water(?: rest)?$/iu.test(part)))
    .map(partOf);
  const known = parts.flatMap((part) => (part === undefined ? [] : [part]));
  if (known.length === 0 || known.length < parts.length) return undefined;
  const total = sum(known.map(({ share }) => share));
  if (!total.eq(HUNDRED) && !(solution && total.lt(HUNDRED))) return undefined;
  const written = known.map(({ formula, share }) => [formula, `${decimalText(share)} %`] as const);
  return Object.fromEntries([...written, ...(total.lt(HUNDRED) ? [["water", "rest"] as const] : [])]);
}

/** Salts in a ratio, such as `Na2CO3 60 / K2CO3 40`, with the share of each. */
function inRatio(words: string): Readonly<Record<string, string>> | undefined {
  const product = readProduct(words, {}, {}, []);
  if (!product.ok) return undefined;
  const { species, water } = product.value.composition;
  const [first, ...others] = Object.entries({ ...species, water })
    .filter(([, share]) => !dec(share).isZero())
    .map(([name, share]) => [name, dec(share).toDecimalPlaces(4)] as const);
  if (first === undefined || Object.keys(species).length < 2) return undefined;
  const rest = HUNDRED.minus(sum(others.map(([, share]) => share)));
  const shares = [[first[0], rest] as const, ...others];
  return Object.fromEntries(shares.map(([name, share]) => [name, `${decimalText(share)} %`]));
}

function partOf(text: string): { readonly formula: string; readonly share: Decimal } | undefined {
  const match = new RegExp(`^(?:${number} ?% ?(?:of )?(.+)|(.+?) ?[:=]? ?${number} ?%)$`, "iu").exec(text);
  const [amount, name] = [match?.[1] ?? match?.[4], (match?.[2] ?? match?.[3])?.replace(/ in water$/iu, "").trim()];
  if (amount === undefined || name === undefined) return undefined;
  const formula = formulaOfName(name);
  return formula === undefined ? undefined : { formula, share: dec(amount.replace(",", ".")) };
}

function formulaOfName(name: string): string | undefined {
  const part = findPart(name);
  if (part !== undefined) return part.name;
  const material = materialNamed(name);
  if (material?.composition === undefined || alkalinityM(material.composition).isZero()) return undefined;
  return material.aliases.find((alias) => findPart(alias) !== undefined);
}
