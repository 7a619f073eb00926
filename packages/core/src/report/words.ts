import { baumeDefinition } from "../chemistry/baume.ts";
import { commonPractice, definition, type Source } from "../figure/source.ts";
import { distanceTo, nearestNames, plainName, wordsOf } from "../materials/nearest.ts";
import { cutterNumber } from "../sheet/strands/cutter.ts";

/** A word of the trade or of chemistry, explained to somebody who cooks. */
export interface Word {
  readonly word: string;
  /** Other ways it is written in an answer. */
  readonly also: readonly string[];
  readonly meaning: string;
  readonly source: Source;
}

const factors: Source = {
  cite: "USDA Commercial Item Description A-A-20126F, section 6.3 note 8 (5.7); Regulation (EU) No 1169/2011, Annex I point 10 (6.25)",
  standing: "copy",
};

/** Meanings, each by the word and the other ways it is written. */
type Meanings = Readonly<Record<string, string>>;

const ofTheTrade: Meanings = {
  "absorption; own water":
    "how much water a flour takes up until its dough has a set firmness, in per cent of the flour; noodle dough is drier than that",
  "added water":
    "all water of a dough but the flour's own: what is poured, and what eggs, solutions and damp salts bring",
  ash: "what is left when flour is burnt: its minerals. More ash means more of the bran",
  assay: "a laboratory's finding of how much of a pack is the salt that it is sold as",
  "carried water; water it carries":
    "water that comes with another ingredient, such as egg, solutions or damp salts, and so is not poured in",
  "compounding; compound":
    "pressing the crumb through the rolls into a rough sheet, folding it or laying sheets on each other, and rolling again until it is one smooth sheet",
  "cook gain; cooked weight over raw weight": "how many times heavier noodles are after boiling",
  crumb: "the loose, damp lumps that a stiff dough is after mixing, before the rolls press them into a sheet",
  division: "the smallest step that a scale shows",
  "dough water": "all water of a dough, the flour's own included, in 100 of dough",
  "dusting; dusting starch": "starch or flour strewn on the sheet or the strands so that they do not stick",
  "edge trim; trim; end trim": "the uneven edges and ends that are cut off a sheet before it goes through the cutter",
  "friction; heat of mixing; mixing heat; mixer work":
    "warmth that mixing itself puts into the dough; the water is taken that much colder",
  gap: "the distance between the rolls, which sets how thick the sheet comes out",
  gluten: "the protein of wheat that makes a dough hold together and stretch",
  "hydration; heat of hydration; hydration of flour":
    "the taking up of water: dry flour grows warm as it does. Bakers also call the added water in per cent of the flour so",
  kansui: "alkali for noodles: mostly sodium and potassium carbonate, as a powder or as a solution of any strength",
  "load; loads": "one filling of the mixer; a batch is one or more of them",
  lot: "what was milled and packed in one go: the next bag with the same name may be another lot, with other figures",
  lye: "a hydroxide or its solution, which burns skin and eyes; also a name for weaker alkaline solutions, so that the label has to say which",
  "mb; % mb; moisture basis":
    "moisture basis: a figure reckoned as if the flour had that much water, so that flours can be compared. 14 % mb is usual for flour",
  "% of flour; parts": "weight for every 100 of flour as weighed; all the flours together are the 100",
  "pass; passes": "once through the rolls",
  "raw strands; raw weight": "cut noodles before they are boiled",
  rework: "trimmings of the same dough that go into the next one",
  "spring-back": "how much thicker the sheet is than the gap that it went through",
  "stock solution; stock": "salts dissolved beforehand in water, so that a small dose can be weighed well",
  "tap water": "what is poured: the added water without what other ingredients bring",
};

const byDefinition: Meanings = {
  "alkalinity M; alkalinity; M and P":
    "how much acid the alkali can take up in all, down to the end of bicarbonate; two doses with the same M are equally much alkali by that measure",
  "alkalinity P; M and P":
    "the part of the alkalinity that goes before carbonate has become bicarbonate: the strong part. Bicarbonate, such as baking soda, has none of it",
  "anhydrous; anhydrous salts":
    "without any water, not even that in the crystals; washing crystals may be more than half water",
  "as is": "as the flour comes out of the bag, with the moisture that it has",
  "hydrate; monohydrate; decahydrate; sesquihydrate":
    "a salt with water in its crystals, so that more of it has to be weighed for the same effect",
  "meq; milliequivalent":
    "a count of how much acid something can take up; 1 g of sodium carbonate without water counts 18.87",
  pH: "how alkaline or how sour a liquid is: 7 is neither, more is alkaline, and each step is ten times as much. It does not tell how much alkali there is, which alkalinity does",
  "potassium share; % of the carbonates": "how much of the sodium and potassium carbonate is potassium carbonate",
  "range; give or take": "from the least to the most that a figure may be, where something is not known exactly",
  reduction: "by how much a pass makes the sheet thinner, in per cent of what went in",
  "% w/v; w/v": "grams in 100 mL of the solution, and not in 100 g of it",
};

function wordsOfSource(meanings: Meanings, source: Source): readonly Word[] {
  return Object.entries(meanings).map(([names, meaning]) => {
    const [word = "", ...also] = names.split("; ");
    return { word, also, meaning, source };
  });
}

/** What a word is sorted by. */
function letters({ word }: Word): string {
  return word.replace(/^% /u, "").toLowerCase();
}

/** Every word that is explained, in the order of the alphabet. */
export const glossary: readonly Word[] = [
  wordsOfSource(ofTheTrade, commonPractice),
  wordsOfSource(byDefinition, definition),
  wordsOfSource(
    {
      "cutter number; cutter": "how many strands a cutter makes of 30 mm of sheet: number 20 cuts them 1.5 mm wide",
    },
    cutterNumber,
  ),
  wordsOfSource(
    {
      "degrees Baumé; °Bé; Baumé":
        "what a hydrometer shows in a solution: the denser the solution, the more degrees. It is no per cent",
    },
    baumeDefinition,
  ),
  wordsOfSource(
    {
      "N factor; nitrogen factor; factor":
        "a laboratory finds nitrogen, and multiplies it to get protein: by 5.7 for flour, by 6.25 on many nutrition labels. The same flour then shows two proteins",
    },
    factors,
  ),
]
  .flat()
  .sort((one, other) => (letters(one) < letters(other) ? -1 : 1));

const forms = new Map<Word, RegExp>();

/** Where a text has a word as a word of its own; -1 where it has not. */
function placeIn(text: string, one: Word): number {
  let form = forms.get(one);
  if (form === undefined) {
    const ways = [one.word, ...one.also].map((way) => way.replace(/[.*+?^${}()|[\]\\/]/gu, "\\$&"));
    form = new RegExp(`(?<![\\p{L}\\p{N}])(?:${ways.join("|")})(?![\\p{L}\\p{N}])`, "iu");
    forms.set(one, form);
  }
  return text.search(form);
}

/** The words that are explained, of those in a text, in the order in which they come up. @example wordsIn("36 % of flour, as is").map(({ word }) => word) // => ["% of flour", "as is"] */
export function wordsIn(text: string): readonly Word[] {
  return glossary
    .map((one) => ({ one, place: placeIn(text, one) }))
    .filter(({ place }) => place >= 0)
    .sort((a, b) => a.place - b.place)
    .map(({ one }) => one);
}

/** Words that were looked up: those found, what of the name was taken for one that is spelt nearly so, and what none has. */
export interface LookedUp {
  readonly words: readonly Word[];
  readonly nearly: readonly string[];
  readonly unknown: readonly string[];
  /** How many parts of the name were found as they are written. */
  readonly found: number;
}

/**
 * Looks words up by their names, whatever the case and the number; several stand with `and` or a comma between them, or
 * one after the other. All words for no name.
 *
 * @example lookUp("M and P").words.map(({ word }) => word) // => ["alkalinity M", "alkalinity P"]
 */
export function lookUp(name: string): LookedUp {
  if (name.trim() === "") return { words: glossary, nearly: [], unknown: [], found: 0 };
  const ways = [[name], name.split(/\s*(?:,|&|\+|\/|\band\b)\s*/iu), name.split(/[\s,]+/u)];
  const tries = ways.map((parts) => lookedUp(parts.filter((part) => part !== "")));
  return tries.find(({ nearly, unknown }) => nearly.length + unknown.length === 0) ?? best(tries);
}

function lookedUp(parts: readonly string[]): LookedUp {
  const found = parts.map((part) => ({ part, same: named(part) }));
  const rest = found.filter(({ same }) => same.length === 0).map(({ part }) => ({ part, near: nearWords(part) }));
  return {
    words: [...new Set([...found.flatMap(({ same }) => same), ...rest.flatMap(({ near }) => near)])],
    nearly: rest.filter(({ near }) => near.length > 0).map(({ part }) => part),
    unknown: rest.filter(({ near }) => near.length === 0).map(({ part }) => part),
    found: found.length - rest.length,
  };
}

/** Of ways to take a name apart, the first that finds most of its parts as they are written. */
function best(tries: readonly LookedUp[]): LookedUp {
  const found = tries.filter(({ words }) => words.length > 0).sort((a, b) => b.found - a.found);
  return found[0] ?? { words: [], nearly: [], unknown: [], found: 0 };
}

function namesOf({ word, also }: Word): readonly string[] {
  return [word, ...also];
}

/** The words of a name, or else those that have all its words in one of theirs. */
function named(part: string): readonly Word[] {
  const sought = singular(plainName(part));
  const exact = glossary.filter((one) => namesOf(one).some((way) => singular(plainName(way)) === sought));
  if (exact.length > 0) return exact;
  const words = wordsOf(part)
    .filter((word) => !/^[\d.]*%?$/u.test(word))
    .map(singular);
  const has = (way: string): boolean => {
    if (/ and /u.test(way)) return false;
    const own = wordsOf(way.replaceAll("-", " ")).map(singular);
    return words.length > 0 && words.every((word) => own.includes(word));
  };
  return glossary.filter((one) => namesOf(one).some(has));
}

function singular(word: string): string {
  return word.length > 3 && /[^s]s$/u.test(word) && word !== "asis" ? word.slice(0, -1) : word;
}

/** The words that are spelt nearly so: no more than a letter in four is another one. */
function nearWords(part: string): readonly Word[] {
  const distance = distanceTo(plainName(part), 0.25);
  const near = nearestNames(part, glossary.flatMap(namesOf)).filter((way) => distance(plainName(way)) < 1);
  return glossary.filter((one) => namesOf(one).some((way) => near.includes(way)));
}
