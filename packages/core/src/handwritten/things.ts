import { nameAdvice } from "../figure/problems/materials.ts";
import { findMaterial, isAlkaliLike, materialNamed, nearestAlkalis } from "../materials/catalogue.ts";
import type { Material } from "../materials/material.ts";
import { plainName } from "../materials/nearest.ts";
import { readProduct } from "../materials/product-text.ts";
import { type SeveralThings, severalOf } from "../materials/several.ts";

/** What a written name stands for. */
export type Thing =
  /** Of hydration, the water that the dough gets in all beside that of the flour. */
  | { readonly is: "water"; readonly material: Material; readonly added?: true }
  | { readonly is: "salt"; readonly material: Material }
  /** Trimmings of the same dough. */
  | { readonly is: "rework" }
  /** With the words in brackets that are a part of its name, where there are any. */
  | { readonly is: "material"; readonly name: string; readonly material: Material; readonly withWords?: string }
  | { readonly is: "several"; readonly name: string; readonly several: SeveralThings }
  /** Alkaline salts at a strength, such as `30 °Bé K2CO3`, as the spec names them; asked about where that may be two things. */
  | { readonly is: "product"; readonly name: string; readonly ask?: string }
  | { readonly is: "unknown"; readonly name: string; readonly alkali: boolean; readonly advice: string };

/** Salt and water in the languages of noodle kitchens; kitchen and trade usage, from memory. */
const salts = plainNames(
  "salt, table salt, sea salt, cooking salt, kosher salt, iodised salt, iodized salt, flake salt, Salz, Speisesalz, Kochsalz, Meersalz, sel, sel fin, sel de mer, sale, sal, 食塩, 塩, 盐, 食盐, 鹽, 소금",
);
const waters = plainNames(
  "water, tap water, drinking water, Wasser, eau, acqua, agua, 水, お水, 冷水, 清水, 물, ice, ice water, iced water",
);
/** Rework in some of the languages of noodle kitchens, from memory. */
const reworks = plainNames(
  "rework, rework dough, rework of the dough, rework of dough, reworked dough, trimmings, dough trimmings, trimmings of dough, trimmings of the same dough, scrap dough, dough scraps, Teigreste, Teigabschnitte, rognures de pâte, ritagli di pasta",
);
/** Water in % of the flour, as a word for it. */
const hydrations = plainNames("hydration, water hydration, hydration water, hydratation");

function plainNames(list: string): ReadonlySet<string> {
  return new Set(list.split(", ").map(plainName));
}

/** What a cook does with an ingredient, before its amount. */
export const verbs =
  "(?:then )?(?:take|use|mix|knead|add|combine|dissolve|weigh|put|stir|sift|you need)(?: (?:in|out|together|with|up))?";
export const verbWords = new RegExp(`(?<!\\p{L})${verbs}(?!\\p{L})`, "iu");

/** Words that say how something is or is put in, and nothing of what it is. */
const handling =
  /,? ?(?<!\p{L})(?:dissolved|stirred|mixed)(?: in(?:to)?(?: (?:it|the|some|a little|part|of|cold|warm|hot))*(?: water)?)?(?!\p{L})|at \d+ ?°[CF]?|(?<!\p{L})(?:in(?:to)? (?:it|the (?:\p{L}+ )?water)|for \d+ ?(?:min(?:ute)?|h(?:our)?)s?)(?!\p{L})|(?<!\p{L})(?:of|the|then|some|a little|a bit|a few|about|approx(?:imately)?|approx\.|around|roughly|ca\.?|circa|etwa|environ|约|約|sifted|sieved|cold|ice-cold|kalt(?:es)?|eiskalt|lauwarm(?:es)?|tepid|rase|bombée|gestrichen(?:er?)?|gehäuft(?:er?)?|level|heaped|froide?|tiède|fredda|tiepida|warm|lukewarm|hot|chilled|boiled|at room temperature|room temperature|filtered|fresh|freshly|finely|fine|beaten|lightly|large|medium-sized|free-range|organic|good|plus more|divided|optional|in all|total of|weighed|to taste|as needed|as required|bags?|sacks?|food[ -]grade)(?!\p{L})/giu;

/** What a name stands for: as written, without what says how it is handled, or with its parts the other way round. */
export function thingOf(written: string, inBrackets: readonly string[]): Thing {
  const name = trimmed(written);
  const plain = handled(name);
  const [first = "", ...rest] = plain.split(",").map((part) => trimmed(part));
  const turned = rest.length === 0 ? [] : [`${rest.join(" ")} ${first}`];
  for (const words of inBrackets) {
    for (const candidate of [`${plain} ${words}`, `${plain}, ${words}`, `${words} ${plain}`]) {
      const thing = exactly(candidate);
      if (thing?.is === "material") return { ...thing, name: thing.material.name, withWords: words };
      if (thing?.is === "several" && thing.several.kind === "flour" && /^\d+$/u.test(words)) return thing;
    }
  }
  const whole = [name, plain, ...turned, plain.replace(/^\d{1,2} (?=\p{L})|(?<=\p{L}) \d{1,2}$/u, "")];
  for (const candidate of whole) {
    const thing = exactly(candidate);
    if (thing !== undefined) return thing.is === "several" ? namedBeside(thing, inBrackets) : thing;
  }
  // The nearest names are looked for where somebody asks, for that takes its time.
  return {
    is: "unknown",
    name: plain,
    get alkali() {
      return whole.some(isAlkaliLike);
    },
    get advice() {
      const found = findMaterial(plain);
      return nameAdvice(
        { alkali: this.alkali, nearest: found.ok ? [] : found.nearest, alike: nearestAlkalis(plain) },
        otherwise,
      );
    },
  };
}

/** A name without the words that say how it is handled. */
export function handled(name: string): string {
  return trimmed(name.replace(handling, " "));
}

const inSolution = /(?<!\p{L})(?:solution|liquid)(?!\p{L})/iu;
/** A strength: one that only a solution has, or a per cent with a word that says so. */
const strengths = /°|\d ?\p{L}+ ?\/ ?m?l(?!\p{L})|%.*w\/v|(?<!\p{L})(?:Bé|Baumé)(?!\p{L})/iu;
const inPercent = /\d ?%/u;
const dissolved = /(?<!\p{L})(?:(?:water|inert) rest|solution|liquid|dissolved|in water|at \d[\d.,]* ?%)/iu;

/**
 * Salts with a strength beside them, said to be a solution, or several in a ratio; undefined where none of these is so.
 *
 * @param alone - whether there is one amount for all of them, so that a ratio has to be told
 */
export function productOf(written: string, alone = false): Extract<Thing, { readonly is: "product" }> | undefined {
  const name = trimmed(written).replace(/^of /iu, "");
  const strong = strengths.test(name) || (inPercent.test(name) && dissolved.test(name));
  const named = thingsWithin(name);
  const several = named.filter(isAlkali).length > 1;
  const dilute = strong || inSolution.test(name);
  if (!dilute && !several) return undefined;
  const product = readProduct(name, {}, {}, []);
  if (product.ok) return { is: "product", name };
  const [problem] = product.problems;
  const { lines = [], others = false } = problem !== undefined && "lines" in problem.facts ? problem.facts : {};
  if (!dilute && !(alone && named.every(isAlkali))) return undefined;
  const salts =
    named.some(isAlkali) || (strong && named.some((one) => one.is === "several" && one.several.kind === "alkali"));
  if (!salts || lines.length === 0) return undefined;
  const like = lines.map((line) => `"${line}"`).join(" or ");
  const own = others ? "write it, with the salts and figures of its label, in the form of" : "write it like";
  return { is: "product", name, ask: `"${name}" leaves open what is in it: ${own} ${like}` };
}

export function isAlkali(thing: Thing): thing is Extract<Thing, { readonly is: "material" }> {
  return thing.is === "material" && thing.material.kind === "alkali";
}

const otherwise = "look it up in the catalogue, or give its figures under `figures:`";

export function nameOfThing(thing: Thing): string {
  return "name" in thing ? thing.name : thing.is;
}

/** The things whose names stand among the words of a text, the longest names first. */
export function thingsWithin(text: string): readonly Thing[] {
  const words = text.split(/[^\p{L}\p{N}'-]+/u).filter((word) => word !== "");
  const found: Thing[] = [];
  for (let from = 0; from < words.length; from += 1) {
    for (let length = longestName; length > 0; length -= 1) {
      const name = words.slice(from, from + length).join(" ");
      const thing = /\p{L}.*\p{L}|[^\p{Script=Latin}\P{L}]/u.test(name) ? exactly(name) : undefined;
      if (thing === undefined) continue;
      found.push(thing);
      from += length - 1;
      break;
    }
  }
  return found;
}

/** In words, of the names that are looked for in a text. */
const longestName = 4;

/** Of a name of several things, the one that the brackets beside it name. */
function namedBeside(several: Thing, inBrackets: readonly string[]): Thing {
  const kind = several.is === "several" ? several.several.kind : undefined;
  for (const words of inBrackets) {
    const named = exactly(words);
    if (named?.is === "material" && named.material.kind === kind) return { ...named, withWords: words };
  }
  return several;
}

function exactly(name: string): Thing | undefined {
  const plain = plainName(name);
  if (plain === "") return undefined;
  const material = (key: string): Material | undefined => materialNamed(key);
  const [salt, water] = [material("table salt"), material("tap water")];
  if (salts.has(plain) && salt) return { is: "salt", material: salt };
  if (reworks.has(plain)) return { is: "rework" };
  if (hydrations.has(plain) && water) return { is: "water", material: water, added: true };
  if (waters.has(plain) && water) return { is: "water", material: water };
  const known = materialNamed(name) ?? materialNamed(singular(name));
  if (known !== undefined) {
    if (known.kind === "salt" && known.name === salt?.name) return { is: "salt", material: known };
    return known.kind === "water"
      ? { is: "water", material: known }
      : { is: "material", name: nameFor(name, known), material: known };
  }
  const several = severalOf(name) ?? flourType(name);
  return several && { is: "several", name, several };
}

/** `00 flour` and `flour type 550` are flours by their type. */
function flourType(name: string): SeveralThings | undefined {
  const type = name.replace(/(?<!\p{L})(?:wheat flour|flour|weizenmehl|mehl|farine|farina|tipo)(?!\p{L})/giu, " ");
  const number = /(?<!\d)\d{2,4}(?!\d)/u.exec(type)?.[0] ?? "";
  const numbered = /^[\s(]*(?:type|typ|t)?[\s.]*\d+[\s)]*$/iu.test(type) ? number : "";
  const several =
    severalOf(type) ??
    severalOf(type.replace(/type|typ/iu, "")) ??
    severalOf(`T${numbered}`) ??
    severalOf(`Type ${numbered}`);
  return several?.kind === "flour" ? several : undefined;
}

function singular(name: string): string {
  return name.replace(/(?<=\p{L}{3})s$/u, "");
}

/** A name that leads to the same material keeps the word of the cook. */
function nameFor(written: string, material: Material): string {
  return materialNamed(written)?.key === material.key ? written : material.name;
}

/** A name without spaces, marks and connecting words at its ends. */
export function trimmed(name: string): string {
  return name
    .replace(/\s+/gu, " ")
    .replace(/^(?:[\s:=,;.·…*|/@+~–-]|of (?=\p{L}))+|[\s:=,;.·…*|/@+~–-]+$/gu, "")
    .trim();
}
