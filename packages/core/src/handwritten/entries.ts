import { citation } from "../figure/source.ts";
import { type DecimalText, dec, decimalText } from "../number/decimal.ts";
import { madeOf } from "./beside.ts";
import type { DraftEntry } from "./draft.ts";
import type { Item } from "./line.ts";
import { eggRange, type GramsRange, gramsRange, waterGrams } from "./measures.ts";
import { nameOfThing, thingsWithin, verbWords } from "./things.ts";

/** Where an ingredient goes in a spec. */
export type Part = "flours" | "water" | "alkali" | "salt" | "ingredients" | "rework" | "dusting";

/** An ingredient on its way into the spec: understood, with what is still to be asked of it. */
export interface PlacedItem {
  readonly item: Item;
  readonly part: Part;
  readonly entry: DraftEntry;
  readonly amount: ChosenAmount;
  /** What the cook has to answer before the spec can be worked out. */
  readonly asks: readonly { readonly about: "name" | "amount"; readonly text: string }[];
}

/** The amount that counts, of those of a line. */
type ChosenAmount =
  | { readonly by: "mass" | "share"; readonly text: string; readonly value: DecimalText; readonly share?: DecimalText }
  | { readonly by: "number"; readonly text: string; readonly value: DecimalText }
  | { readonly by: "open"; readonly why: string };

/** An ingredient that is left out, and why. */
interface LeftOut {
  readonly why: string;
}

const flourKinds: readonly string[] = ["flour", "starch", "gluten", "bran"];

/** Places an ingredient in the spec, or says why it cannot be. */
export function placed(item: Item, underDusting: boolean): PlacedItem | LeftOut {
  const where = partOf(item);
  if ("why" in where) return where;
  const part = (underDusting || item.dusting) && where.part !== "alkali" ? "dusting" : where.part;
  const amount = chosen(item);
  const figures = { ...where.figures };
  const ofPrice =
    part === "water" && item.price !== undefined
      ? [`the price "${item.price}" is left out: water has none in a spec`]
      : [];
  const remarks = [...(where.remarks ?? []), ...item.remarks, ...remarksOn(item, amount), ...ofPrice];
  const entry = {
    line: item.line.number,
    name: where.name,
    amount: amount.by === "open" ? undefined : amount.text,
    ...(amount.by !== "open" && { value: amount.value }),
    ...(Object.keys(figures).length > 0 && { figures }),
    remarks,
    ...(item.thing.is === "water" && item.thing.added && { added: item.thing.added }),
    ...(where.toFillIn && { toFillIn: where.toFillIn }),
  };
  const asks = [
    ...(where.ask === undefined ? [] : [{ about: "name" as const, text: where.ask }]),
    ...(amount.by === "open" ? [{ about: "amount" as const, text: amount.why }] : []),
  ];
  return { item, part, entry, amount, asks };
}

interface Where {
  readonly part: Exclude<Part, "dusting">;
  readonly name: string;
  readonly figures?: Readonly<Record<string, unknown>>;
  readonly remarks?: readonly string[];
  readonly toFillIn?: readonly string[];
  readonly ask?: string;
}

/** A name that holds two known things, or one and what to do with it, is of neither of them. */
function severalNamed({ thing }: Item): Where | undefined {
  if (thing.is !== "unknown") return undefined;
  const names = [...new Set(thingsWithin(thing.name).map(nameOfThing))].filter((name) =>
    /\p{L}/u.test(name.replace(typed, "")),
  );
  if (names.length === 0 || (names.length === 1 && !verbWords.test(thing.name))) return undefined;
  const ask = `"${thing.name}" names ${names.join(" and ")}: write each of them with an amount of its own`;
  const part = flourWords.test(thing.name) ? "flours" : "ingredients";
  return { part, name: thing.name, remarks: [ask], ask };
}

function partOf(item: Item): Where | LeftOut {
  const { thing, figures, inBrackets, name } = item;
  const several = severalNamed(item);
  if (several !== undefined) return several;
  const taken = thing.is === "material" ? thing.withWords : undefined;
  const beside = inBrackets.filter((words) => words !== taken && !/^[\d.,/\s%]*$/u.test(words));
  const made = beside.map((words) => madeOf(words, isSolution(`${name} ${words}`))).find((one) => one !== undefined);
  const unused = (made === undefined ? beside : []).map((words) => `beside it stood: ${words}`);
  if (thing.is === "product")
    return {
      part: "alkali",
      name: thing.name,
      ...(thing.ask !== undefined && { ask: thing.ask, remarks: [thing.ask] }),
    };
  if (thing.is === "water" || thing.is === "salt" || thing.is === "rework")
    return { part: thing.is, name: thing.is, remarks: unused };
  if (thing.is === "material") {
    const { kind } = thing.material;
    if (kind === "alkali") return { part: "alkali", name: thing.name, remarks: unused, ...hydrateAsk(beside) };
    if (flourKinds.includes(kind)) return { part: "flours", name: thing.name, figures, remarks: unused };
    return { part: "ingredients", name: thing.name, remarks: unused };
  }
  if (thing.is === "several") {
    const { kind, mayBe, ask, wheat } = thing.several;
    if (kind === "no alkali") return { why: `"${thing.name}" is ${mayBe}: it is no noodle alkali` };
    if (kind === "alkali") {
      if (made !== undefined) return { part: "alkali", name: thing.name, figures: { composition: made } };
      const ratio = inBrackets.find((words) => /^\d+ ?[/:] ?\d+$/u.test(words));
      const which =
        ratio === undefined
          ? ""
          : `which salt is the ${Number.parseInt(ratio, 10)} of "${ratio}"? Write both, as in (Na2CO3 60 %, K2CO3 40 %). `;
      const question = `${which}"${thing.name}" may be ${mayBe}. Ask for ${ask}`;
      return { part: "alkali", name: thing.name, remarks: [question], toFillIn: compositionSample, ask: question };
    }
    if (wheat === true) return bagFlour(thing.name, figures, [...unused, ...noProtein(thing.name, figures, ask)]);
    const question = `"${thing.name}" may be ${mayBe}. Ask for ${ask}`;
    return { part: "flours", name: thing.name, remarks: [question], ask: question };
  }
  if (thing.alkali) {
    if (made !== undefined) return { part: "alkali", name: thing.name, figures: { composition: made } };
    const question = `"${thing.name}" is not in the catalogue, and no guess is made for an alkali. Ask for the list of substances and their % on the pack`;
    return { part: "alkali", name: thing.name, remarks: [question], toFillIn: compositionSample, ask: question };
  }
  if (isWheat(thing.name))
    return bagFlour(thing.name, figures, [...unused, ...noProtein(thing.name, figures, "the protein on its bag")]);
  if (flourWords.test(thing.name) && !noFlour.test(thing.name)) {
    const question = `"${thing.name}" is not in the catalogue: ask the mill for its moisture and protein; ${thing.advice}`;
    if (Object.keys(figures).length > 0) return { part: "flours", name: thing.name, figures, remarks: unused };
    return { part: "flours", name: thing.name, remarks: [...unused, question], toFillIn: figuresSample, ask: question };
  }
  return { why: `"${thing.name}" is not in the catalogue; ${thing.advice}` };
}

const compositionSample = [
  "figures:    what the pack says, in place of these",
  "  composition: { Na2CO3: 60 %, K2CO3: 40 % }",
];
const figuresSample = [
  "figures:    what its bag or its mill says, in place of these",
  "  moisture: 13.6 %",
  "  protein: 12.4 %",
];
/** Flour, of whatever it is ground, in the languages of noodle kitchens; from memory. */
const flourWords = /flour|mehl|farine|farina|harina|semola|粉$|밀가루/iu;
/** What goes into flour, or is no flour by itself. */
const noFlour = /[卵蛋]|improver|substitute|self[ -]?rais|self[ -]?ris|enhancer|treatment/iu;
/** Words of the flour trade, from memory, that stand beside flour of common wheat; of no one strength. */
const wheatWords =
  /(?:wheat|strong|bread|plain|all-purpose|noodle|dumpling|pizza|patent|clear|white|soft|weak|medium|hard|high[ -](?:gluten|protein)|low[ -]protein|baker'?s?)(?!\p{L}).*flour|hi[ -]?gluten|(?<!\p{L})W ?\d{2,3}(?!\d)|(?<!\p{L})weizenmehl|強力粉|薄力粉|中力粉/iu;
/** What is of another grain, has leavening in it, or is no flour. */
const otherFlour =
  /rice|corn|maize|sorghum|oat|barley|rye|buckwheat|quinoa|millet|teff|tapioca|cassava|potato|bean|pea(?!\p{L})|soy|lentil|nut(?!\p{L})|almond|coconut|banana|lupin|sesame|hemp|flax|linseed|amaranth|gram|acorn|carob|plantain|spelt|durum|einkorn|emmer|free|self[ -]?rais|self[ -]?ris|improver|substitute/iu;
/** The type of a flour, and all else that may stand beside it in the name of one of common wheat. */
const typed = /(?<!\p{L})(?:type|typ|tipo|t)[. ]?\d{1,4}(?!\d)/iu;
const besideType =
  /(?<!\p{L})(?:wheat|flour|weizen|weizenmehl|mehl|farine|farina|harina|blé|tendre|froment|grano|tenero|trigo|de|di|d'|bread|strong|white|plain|organic|bio|type|typ|tipo)(?!\p{L})/giu;

/** Whether a name is plainly that of a flour of common wheat. */
function isWheat(name: string): boolean {
  if (otherFlour.test(name)) return false;
  return wheatWords.test(name) || (typed.test(name) && !/\p{L}/u.test(name.replace(typed, "").replace(besideType, "")));
}

function isSolution(words: string): boolean {
  return /water|solution|liquid|液|水/iu.test(words);
}

/** Brackets that may mean another salt than the name says. */
function hydrateAsk(beside: readonly string[]): Pick<Where, "ask"> {
  const words = beside.find(
    (one) => /hydrat|crystal|solution|liquid|wet|water|%/iu.test(one) && !/^anhydrous|without water/iu.test(one),
  );
  return words === undefined
    ? {}
    : { ask: `"${words}" beside a salt changes the dose: write the salt by its full name` };
}

/** A flour of common wheat of which there is only the bag. */
function bagFlour(name: string, figures: Readonly<Record<string, unknown>>, remarks: readonly string[]): Where {
  return { part: "flours", name, figures: { kind: "flour", allergens: ["wheat"], ...figures }, remarks };
}

function noProtein(name: string, figures: Readonly<Record<string, unknown>>, ask: string): readonly string[] {
  if (figures["protein"] !== undefined || figures["label"] !== undefined) return [];
  return [`"${name}" may be any wheat flour: ${ask} would tell how strong, as in "${name}, protein 12 %"`];
}

function remarksOn(item: Item, amount: ChosenAmount): readonly string[] {
  if (amount.by === "open") return [amount.why];
  const [volume] = volumesOf(item);
  return amount.by === "mass" && volume !== undefined && !item.amounts.some(({ is }) => is.by === "mass")
    ? [`${volume.written} of water at 20 °C`]
    : [];
}

/** The amount of a line that counts: masses before percent, percent before volumes, all of them before bare numbers. */
function chosen(item: Item): ChosenAmount {
  const masses = item.amounts.flatMap(({ is, written }) => (is.by === "mass" ? [{ ...is, written }] : []));
  const shares = item.amounts.flatMap(({ is }) => (is.by === "share" ? [is] : []));
  const numbers = item.amounts.flatMap(({ is }) => (is.by === "number" ? [is] : []));
  const volumes = volumesOf(item);
  const unclear = item.amounts.find(({ is }) => is.by === "unclear");
  const [mass, share, number] = [masses[0], shares[0], numbers[0]];
  if (mass !== undefined) {
    const other = masses.find(({ value }) => dec(value).minus(mass.value).abs().gt(dec(mass.value).times("0.03")));
    if (other !== undefined)
      return open(`"${mass.written}" and "${other.written}" are not the same: write one of them`);
    const few = eggsTooLight(item, mass.value);
    if (few !== undefined) return open(`${few} (${mass.written} may be that of one)`);
    return { by: "mass", text: mass.text, value: mass.value, ...(share && { share: share.value }) };
  }
  if (share !== undefined) {
    if (shares.length > 1) return open("two percentages stand there: write one of them");
    return { by: "share", text: share.text, value: share.value };
  }
  const [volume] = volumes;
  if (volume !== undefined) {
    const other = item.thing.is === "water" ? volumes.find((one) => isApart(volume, one)) : undefined;
    if (other !== undefined)
      return open(`"${volume.written}" and "${other.written}" are not the same: write one of them`);
    return ofVolume(item, volume.millilitres, volume.written);
  }
  if (unclear?.is.by === "unclear") return open(unclear.is.why);
  if (number === undefined) return open(`no amount stands there: weigh it and write the grams`);
  if (numbers.length > 1) return open("two numbers without a unit stand there: write one of them with its unit");
  const eggs =
    item.thing.is === "material" && (item.amountFirst || number.pieces === true)
      ? eggRange(item.thing.material, dec(number.value))
      : undefined;
  if (eggs !== undefined) return open(weigh(`${number.text} without the shell`, eggs, "eggs differ in size"));
  if (number.pieces === true)
    return open(`nobody can tell what ${number.text} of it weigh: weigh them once and write the grams`);
  return { by: "number", text: number.text, value: number.value };
}

/** What so many eggs may weigh, where a line counts eggs and states less. */
function eggsTooLight({ thing, name }: Item, grams: DecimalText): string | undefined {
  const count = /^\d{1,3}(?= )| (\d{1,3})$/u.exec(name)?.[0].trim();
  const range = thing.is === "material" && count !== undefined ? eggRange(thing.material, dec(count)) : undefined;
  return range && dec(grams).lt(range.least)
    ? weigh(`${count} without the shell`, range, "eggs differ in size")
    : undefined;
}

interface Volume {
  readonly written: string;
  readonly millilitres: readonly [least: DecimalText, most: DecimalText];
}

/** The volumes of a line, those that are the same in every country first: of `2/3 cup (150 ml)` the millilitres count. */
function volumesOf({ amounts }: Item): readonly Volume[] {
  const volumes = amounts.flatMap(({ is, written }) =>
    is.by === "volume" ? [{ written, millilitres: is.millilitres }] : [],
  );
  const isExact = ({ millilitres: [least, most] }: Volume): boolean => least === most;
  return [...volumes.filter(isExact), ...volumes.filter((one) => !isExact(one))];
}

/** Whether no cup or spoon holds both, with what a cook rounds by. */
function isApart({ millilitres: one }: Volume, { millilitres: other }: Volume): boolean {
  return dec(one[1]).times("1.03").lt(other[0]) || dec(other[1]).times("1.03").lt(one[0]);
}

function ofVolume(item: Item, millilitres: readonly [DecimalText, DecimalText], written: string): ChosenAmount {
  const exact = millilitres[0] === millilitres[1];
  const { thing } = item;
  if (thing.is === "water" && exact) {
    const grams = waterGrams(millilitres[0]);
    if (grams !== undefined) return { by: "mass", text: `${grams} g`, value: grams };
  }
  const kind =
    thing.is === "material"
      ? thing.material.kind
      : thing.is === "several" && thing.several.kind !== "no alkali"
        ? thing.several.kind
        : undefined;
  const salt = thing.is === "salt" || thing.is === "water" ? thing.is : kind;
  const range = salt === undefined ? undefined : gramsRange(salt, millilitres);
  if (range !== undefined) return open(weigh(written, range, "by how it is filled and how large the measure is"));
  return open(`"${written}" is a volume: weigh it once and write the grams`);
}

function weigh(what: string, { least, most, source }: GramsRange, why: string): string {
  return `${what} may be ${least} to ${most} g (${citation(source)}), ${why}: weigh it once and write the grams`;
}

function open(why: string): ChosenAmount {
  return { by: "open", why };
}

/** Two entries of what a spec has once, such as water and salt, become one; undefined where they cannot be added up. */
export function addedUp(one: DraftEntry, other: DraftEntry): DraftEntry | undefined {
  const units = [one, other].map(({ amount }) => amount?.endsWith("%") === true);
  if (one.value === undefined || other.value === undefined || units[0] !== units[1]) return undefined;
  const value = decimalText(dec(one.value).plus(other.value));
  const remarks = [...one.remarks, ...other.remarks, `${one.amount} and ${other.amount} together`];
  return { ...one, value, amount: `${value} ${units[0] === true ? "%" : "g"}`, remarks };
}
