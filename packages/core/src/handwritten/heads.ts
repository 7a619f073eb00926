import { currencyCodes } from "../materials/currencies.ts";
import { parsePrice } from "../materials/fields.ts";
import { amountsOf, type CommaUse } from "./amounts.ts";

/** What a column of a table holds, as its head and its cells tell. */
export type Column = { readonly at: number; readonly head: string } & (
  | { readonly is: "name" | "unit" | "note" | "index" | "unknown" }
  /** `label` tells batches that stand side by side apart; `unit` goes to the bare numbers below. */
  | { readonly is: "amount"; readonly unit?: string; readonly label: string }
  /** What a bag holds. */
  | { readonly is: "pack"; readonly unit: string }
  /** In `currency`, for what is told by `per`: `kg`, `25 kg`, a bag of the column of packs. */
  | { readonly is: "price"; readonly currency?: string; readonly per?: string }
  | { readonly is: "figure"; readonly of: "protein" | "moisture" | "ash" }
);

const word = (words: string, flags = "iu"): RegExp => new RegExp(String.raw`(?<!\p{L})(?:${words})(?!\p{L})`, flags);

/** Heads of columns that tell a unit. */
const units: readonly (readonly [unit: string, head: RegExp])[] = [
  ["kg", /(?<!\p{L})kg(?!\p{L})|kilo|公斤|千克/iu],
  ["mg", /(?<!\p{L})mg(?!\p{L})|milligram/iu],
  ["g", /(?<!\p{L})g(?:r|rams?|rammes?)?(?!\p{L})|gramm|グラム|克/iu],
  ["oz", word("oz|ounces?")],
  ["lb", word("lbs?|pounds?")],
  ["ml", word("ml|millilit(?:er|re)s?")],
  ["l", word("l|lit(?:er|re)s?")],
  ["%", /%|per ?cent|prozent/iu],
];
const names =
  /^(?:ingredients?|items?|names?|(?:raw )?materials?|products?|what|zutat(?:en)?|rohstoffe?|bezeichnung|artikel|ingrédients?|matières? premières?|produits?|ingredient[ei]|ingredientes|materie? prim[ae]|материал|ингредиенты?|材料|原料|配料|品名|재료|원료)\s*(?::|\(.*\))?$/iu;
/** Heads of what stands below them by kinds; a row of a formula as well, where an amount stands beside. */
const groups =
  /^(?:flours|liquids?|dry|wet|salts|alkalis?|dough|(?:for )?dusting|others?|starches|powders?|trocken|flüssig|mehle)\s*:?$/iu;
const amountWords = word(
  "amount|quantity|qty|weight|mass|menge|gewicht|masse|quantité|poids|peso|quantità|cantidad|分量|重量|用量|数量|количество|вес|용량|무게",
);
const batchWords = word(
  String.raw`batch(?:es)?|loads?|charge|ansatz|ansätze|fournée|bowls?|portions?|portionen|people|small|medium|large|half|double|single|klein|groß|mittel|doppelt|x ?\d+|\d+ ?x|\d[\d.,]* ?(?:k?g|lb|oz)|\d+`,
);
const unitWords = /^(?:units?|einheit(?:en)?|unité|unità|unidad|单位|単位|단위)\.?$/iu;
const noteWords =
  /^(?:notes?|comments?|remarks?|bemerkungen?|anmerkungen?|hinweise?|remarques?|note|nota|notas|備考|备注|비고)$/iu;
const indexWords = /^(?:#|no|nr|n°|№|pos)\.?$/iu;
const packWords = word("bags?|packs?|sacks?|packages?|gebinde|sack|säcke|sacs?|sacco|sacchi|sacos?|packung(?:en)?");
const priceWords = word(
  "prices?|costs?|preise?|kosten|prix|coûts?|prezzo|prezzi|cost[oi]|precios?|coste|costes|price each|цена|стоимость|価格|単価|値段|原価|价格|单价|成本|가격|단가|원가",
);
const figures: readonly (readonly [of: "protein" | "moisture" | "ash", head: RegExp])[] = [
  ["protein", /protein|prot\.|eiweiß|protéine|たんぱく質|蛋白/iu],
  ["moisture", /moisture|feuchte|humidité|水分/iu],
  ["ash", word("ash|asche|cendres|灰分")],
];
/** Signs of one currency; those that several share, such as $ and ¥, do not tell which. */
const signs: readonly (readonly [code: string, sign: RegExp])[] = [
  ["USD", /US ?\$/u],
  ["AUD", /(?:AU?) ?\$/u],
  ["CAD", /(?:CA?) ?\$/u],
  ["NZD", /NZ ?\$/u],
  ["HKD", /HK ?\$/u],
  ["TWD", /NT ?\$/u],
  ["SGD", /S ?\$/u],
  ["BRL", /R ?\$/u],
  ["EUR", /€|(?<!\p{L})euros?(?!\p{L})/iu],
  ["GBP", /£/u],
  ["INR", /₹/u],
  ["KRW", /₩|원/u],
  ["JPY", /円/u],
  ["CNY", /元/u],
  ["THB", /฿/u],
  ["VND", /₫/u],
  ["PHP", /₱/u],
  ["RUB", /₽/u],
  ["TRY", /₺/u],
  ["ILS", /₪/u],
];
const sharedSign = /[$¥￥]|(?<!\p{L})kr\.?(?!\p{L})/iu;
/** Codes that are words as well: of money only where a word of price stands beside. */
const alsoWords = ["ALL", "BAM", "COP", "CUP", "GEL", "LAK", "MOP", "SOS", "TOP", "TRY"];

/** The money that a text is in, where it is of money at all; of some currency where it does not tell which. */
export function moneyIn(text: string): { readonly currency?: string } | undefined {
  const isPrice = priceWords.test(text);
  const code = (text.match(/(?<!\p{L})[A-Z]{3}(?!\p{L})/gu) ?? []).find(
    (one) => currencyCodes().includes(one) && (isPrice || !alsoWords.includes(one)),
  );
  const currency = code ?? signs.find(([, sign]) => sign.test(text))?.[0];
  return currency !== undefined ? { currency } : isPrice || sharedSign.test(text) ? {} : undefined;
}

/** Whether a cell has an amount of money. */
export const isMoney = (cell: string): boolean =>
  /\d/u.test(cell) && !/\p{L}{4}/u.test(cell) && moneyIn(cell) !== undefined;

/** For how much a price is, as `EUR/kg` and `price of a bag of 25 kg` tell. */
export function pricedMass(text: string): string | undefined {
  const pack = /(\d[\d.,]*) ?(kg|g|lb|oz)(?!\p{L})/iu.exec(text);
  if (pack !== null) return `${pack[1]?.replace(",", ".")} ${pack[2]?.toLowerCase()}`;
  return /(?:\/|(?<!\p{L})(?:per|pro|je|par|le|al|por|a|the)) ?(?:1 ?)?(kg|g|lb|oz)(?!\p{L})/iu
    .exec(text)?.[1]
    ?.toLowerCase();
}

/** A price as a spec has it, of text that tells how much money; for how much, and in what, where the text does not tell. */
export function priceOf(text: string, comma: CommaUse, per?: string, currency?: string): string | undefined {
  const [number] = amountsOf(text.replace(/[^\d.,' ]+/gu, " ").trim(), comma);
  const mass = pricedMass(text.replace(/^\D*[\d.,' ]+/u, "")) ?? per;
  const money = moneyIn(text)?.currency ?? currency;
  if (number?.is.by !== "number" || mass === undefined || money === undefined) return undefined;
  const price = `${number.is.text} ${money}${/^\d/u.test(mass) ? ` per ${mass}` : `/${mass}`}`;
  return Number(number.is.value) === 0 || parsePrice(price) === undefined ? undefined : price;
}

/** Nothing, said in one way or another; the sign of an error is no amount either. */
const empty = /^(?:[-–.]+|n\/?a\.?|nil|#(?:[A-Z]{3,5}[!?]|N\/A|DIV\/0[!]))?$/iu;
export const isEmpty = (cell: string): boolean => empty.test(cell);
export const isBare = (cell: string): boolean => /^[\d.,' ]*\d(?: ?\d+\/\d+)?$/u.test(cell);
const isNumber = (cell: string): boolean => /^[-–]?[\d.,' ]*\d\s*(?:%|\p{L}{1,10}\.?)?$/u.test(cell);

/** Whether a row is the head of a table: it names its columns, and none of its cells is an amount of anything. */
export function isHead(cells: readonly string[], first: boolean): boolean {
  const filled = cells.filter((cell) => cell !== "");
  if (filled.length === 0 || filled.some((cell) => cell.length > 60)) return false;
  const tellsAmount = (cell: string): boolean =>
    unitOf(cell) !== undefined ||
    amountWords.test(cell) ||
    batchWords.test(cell) ||
    unitWords.test(cell) ||
    moneyIn(cell) !== undefined;
  const [name = "", ...rest] = filled;
  if (filled.length > 1 && names.test(name))
    return (
      rest.some((cell) => tellsAmount(cell) || noteWords.test(cell)) || /^(?:ingr|zutat|材料|原料|配料)/iu.test(name)
    );
  if (cells[0] === "") return first && filled.every((cell) => tellsAmount(cell) && !isBare(cell));
  if (filled.length < 2 || filled.some((cell) => /\d/u.test(cell))) return false;
  if (groups.test(name)) return rest.some((cell) => /^(?:%|\p{L}+)$/u.test(cell) && unitOf(cell) !== undefined);
  return filled.some((cell) => names.test(cell) || amountWords.test(cell) || unitWords.test(cell));
}

/** Whether a column below this head has names of ingredients. */
export const isOfNames = (head: string): boolean => names.test(head) || groups.test(head);

/** Whether a name is that of a kind of ingredients, such as the flours. */
export const isOfKind = (name: string): boolean =>
  groups.test(name) || /^(?:flour|liquid|alkali|mehl|starch)\s*:?$/iu.test(name);

/** Whether what a name counts is bowls. */
export const isOfBowls = (name: string): boolean =>
  /^(?:(?:number|no\.?) of |yield:? |yield \(?)?(?:bowls|portions|servings|portionen)\)?$/iu.test(name);

/** Whether what stands below this head is for dusting. */
export const isOfDusting = (head: string): boolean => /dusting/iu.test(head) && groups.test(head);

function unitOf(head: string): string | undefined {
  const plain = head
    .replace(/(?:\/|per|je|pro|auf|for|für|on) ?\d*[\d.,]* ?(?:k?g|lb|oz)(?!\p{L}).*?(?=[(]|$)/giu, " ")
    .replace(/\d[\d.,]* ?(?:k?g|lb|oz)(?!\p{L})/giu, " ");
  const bracketed = /\(([^)]*)\)\s*$/u.exec(plain)?.[1];
  const within = (text: string): string | undefined => units.find(([, form]) => form.test(text))?.[0];
  return (bracketed === undefined ? undefined : within(bracketed)) ?? within(plain);
}

/** What tells one batch from another in a head. */
function labelOf(head: string, unit: string | undefined): string {
  const form = units.find(([one]) => one === unit)?.[1];
  const bare =
    unit === undefined || form === undefined
      ? head
      : head.replace(/\(([^)]*)\)\s*$/u, (whole, within: string) => (form.test(within) ? "" : whole));
  const rest = bare === head && form !== undefined && !/\d ?(?:k?g|lb|oz)/iu.test(head) ? head.replace(form, "") : bare;
  return rest
    .replace(amountWords, " ")
    .replace(word("baker'?s?'?|of|in|on|the|flour|share|anteil|total|auf|mehl", "giu"), " ")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim()
    .toLowerCase();
}

/** What the columns of a table hold, each cell of its rows by its place. */
export function columnsOf(head: readonly string[], rows: readonly (readonly string[])[]): readonly Column[] {
  const width = Math.max(head.length, ...rows.map((row) => row.length));
  const columns = Array.from(
    { length: width },
    (_, at): Column =>
      columnOf(
        at,
        head[at] ?? "",
        rows.map((row) => row[at] ?? "").filter((cell) => !isEmpty(cell)),
      ),
  );
  const named = columns.find(({ is }) => is === "name");
  const wordy = named ?? columns.find(({ is, at }) => is === "note" && !noteWords.test(head[at] ?? ""));
  const found = columns.map((one): Column => {
    if (one === wordy) return { at: one.at, head: one.head, is: "name" };
    return one.is === "name" ? { at: one.at, head: one.head, is: "note" } : one;
  });
  if (found.some(({ is }) => is === "amount")) return found;
  return found.map((one) =>
    one.is === "unknown" ? { at: one.at, head: one.head, is: "amount", label: one.head.toLowerCase() } : one,
  );
}

function columnOf(at: number, head: string, cells: readonly string[]): Column {
  const money =
    moneyIn(head) ??
    (cells.length > 0 && cells.every((cell) => /\d/u.test(cell) && moneyIn(cell))
      ? moneyIn(cells[0] ?? "")
      : undefined);
  if (money !== undefined) {
    const per = pricedMass(head) ?? (packWords.test(head) ? "pack" : undefined);
    return { at, head, is: "price", ...money, ...(per !== undefined && { per }) };
  }
  if (indexWords.test(head)) return { at, head, is: "index" };
  if (noteWords.test(head)) return { at, head, is: "note" };
  const figure = figures.find(([, form]) => form.test(head))?.[0];
  if (figure !== undefined) return { at, head, is: "figure", of: figure };
  if (unitWords.test(head)) return { at, head, is: "unit" };
  const unit = unitOf(head);
  if (packWords.test(head) && unit !== undefined) return { at, head, is: "pack", unit };
  const numbers = cells.filter(isNumber).length * 2 >= cells.length && cells.length > 0;
  if (isOfNames(head)) return { at, head, is: numbers ? "index" : "name" };
  if (unit !== undefined || amountWords.test(head) || (batchWords.test(head) && (numbers || cells.length === 0)))
    return { at, head, is: "amount", ...(unit !== undefined && { unit }), label: labelOf(head, unit) };
  if (cells.length > 0 && cells.every((cell) => unitOf(cell) !== undefined && !/\d/u.test(cell) && cell.length < 8))
    return { at, head, is: "unit" };
  return { at, head, is: numbers ? "unknown" : "note" };
}
