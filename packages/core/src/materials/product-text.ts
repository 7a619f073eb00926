import type { Product } from "../chemistry/carried.ts";
import { anhydrousShare, type Composition, mixture } from "../chemistry/composition.ts";
import { mixInRatio, type RatioBy } from "../chemistry/ratio.ts";
import { countedAsWeighed, solutionAt } from "../chemistry/stated-strength.ts";
import {
  answer,
  type Note,
  note,
  type Outcome,
  type Path,
  type Problem,
  problem,
  problemsOf,
  refuse,
} from "../figure/problem.ts";
import { type DecimalText, dec, decimalText, HUNDRED, sum } from "../number/decimal.ts";
import { isAlkaliLike, nearestAlkalis, nearestMaterials } from "./catalogue.ts";
import { findPart } from "./composition-parts.ts";
import { isMaterialName, type KitchenMaterial, type OwnMaterials, resolveMaterial } from "./own.ts";
import { type DoseBeside, severalOf } from "./several.ts";
import { eitherWay, undissolved } from "./stated-composition.ts";
import { pointed, readStrength, type StrengthTerms, solutionUnits, strengthForms } from "./strength-text.ts";

/** What a product is read with. */
interface Reading {
  readonly own: OwnMaterials;
  readonly terms: StrengthTerms;
  readonly path: Path;
  readonly beside: DoseBeside | undefined;
  /** The strength that the line states, where its salts are read apart from it. */
  readonly solution?: string;
  /** What is shown beside a problem. */
  readonly shown: () => Shown;
}

/** Lines that are read, in place of one that is not; of `others`, only the form is that of the line. */
interface Shown {
  readonly lines: readonly string[];
  readonly others?: true;
}

/**
 * Reads an alkaline product written in one line: by name, by formula, by composition, as salts in a ratio or as a solution
 * of a strength, in the order that people and labels write them. Where a line could mean two things it is refused, with
 * lines that are read.
 *
 * @param own - the kitchen's own materials
 * @param terms - the hydrometer's modulus, the temperature, and what the parts of a ratio count
 * @param path - of problems
 * Problems: `product.unknown`, `product.unclear`, `materials.several`, `product.no-alkali`, `product.strength`, and those of `solutionAt`.
 * @example readProduct("potassium carbonate 30 %, water rest", {}, {}, []).value.composition.water // => "70"
 */
export function readProduct(
  text: string,
  own: OwnMaterials,
  terms: StrengthTerms,
  path: Path,
  beside?: DoseBeside,
): Outcome<Product> {
  const name = text.trim().replaceAll(/\s+/gu, " ");
  const line = isName(name, own) ? name : pointed(name);
  const reading: Reading = { own, terms, path, beside, shown: () => linesLike(line ?? name, reading) };
  const composition = line === undefined ? refuse(unsureComma(name, reading)) : read(line, reading);
  if (!composition.ok) return composition;
  if (Object.keys(composition.value.species).length > 0) {
    const inWater = line !== undefined && !isName(line, own) && dissolved.some((form) => form.test(line));
    const notes = inWater ? undissolved(name, composition.value, path) : [];
    return answer({ name, composition: composition.value }, [...composition.notes, ...notes]);
  }
  return refuse(problem("product.no-alkali", path, { name, lines: usualLines, others: true }));
}

/** The problem of a comma that may be a decimal one or none, with the line of either where it is read. */
function unsureComma(name: string, reading: Reading): Problem {
  const either = [".", ""].map((mark) => name.replaceAll(/,(?=\d)/gu, mark));
  const read = readable(either, reading);
  const shown = read.length > 0 ? { lines: read } : { lines: usualLines, others: true };
  return problem("product.unclear", reading.path, { name, why: "comma", ...shown });
}

function read(name: string, reading: Reading): Outcome<Composition> {
  return (
    byName(name, reading) ??
    bySolution(name, reading) ??
    byShare(name, reading) ??
    byParts(name, reading) ??
    unknown(name, reading)
  );
}

const shareOfSalts =
  /^(\d+(?:\.\d+)?) ?%(?: w\/w| m\/m| by (?:mass|weight))?(?: of)? (.+?)(?: (?:solution|liquid))?$/iu;

/** A share by mass of a name that stands for several salts; undefined where it does not. */
function byShare(line: string, reading: Reading): Outcome<Composition> | undefined {
  const [, share = "", name = ""] = shareOfSalts.exec(line) ?? [];
  if (severalOf(name)?.between === undefined || dec(share).isZero()) return undefined;
  return byName(name, dissolvedIn(reading, `${share} %`, share));
}

/** What the salts of a solution are read with; `salt` is their share by mass, where that is what is stated. */
function dissolvedIn(reading: Reading, solution: string, salt: DecimalText | undefined): Reading {
  const { beside } = reading;
  return { ...reading, solution, beside: beside && salt !== undefined ? { ...beside, salt } : undefined };
}

/** A product by its formula or by a name; undefined where nothing has it. */
function byName(name: string, { own, path, beside, solution, shown }: Reading): Outcome<Composition> | undefined {
  const formula = findPart(name);
  if (formula !== undefined) return answer(formula.composition);
  if (!isMaterialName(name, own)) return undefined;
  const material = resolveMaterial(name, path, undefined, own, beside);
  if (!material.ok) {
    const alone = severalOf(name)?.between?.map((salt) => (solution === undefined ? salt : `${salt} at ${solution}`));
    return refuse(
      ...material.problems.map((one) =>
        one.code === "materials.several"
          ? { ...one, facts: { ...one.facts, ...(alone === undefined ? shown() : { lines: alone }) } }
          : one,
      ),
    );
  }
  const { composition } = material.value;
  if (composition !== undefined) return answer(composition, remarksOn(name, material.value, path));
  return refuse(problem("product.no-alkali", path, { name, ...shown() }));
}

function unknown(name: string, { own, path, shown }: Reading): Outcome<Composition> {
  const nearest = nearestMaterials(name, Object.keys(own));
  const facts = { name, nearest, alkali: isAlkaliLike(name), alike: nearestAlkalis(name), ...shown() };
  return refuse(problem("product.unknown", path, facts));
}

const atStrength = /^(.+?),? (?:at|@) ([\d.].*)$/u;
const number = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;
/** A strength that only a solution has, wherever it stands; per cent and parts alone may be of a powder. */
const inSolution = new RegExp(
  String.raw`(?<![\w.])${number} ?(?:${solutionUnits})(?: (?:solution|liquid))?(?: of\b)?(?![\w/])`,
  "iu",
);

/** Lines of salts in water. */
const dissolved = [atStrength, inSolution, /(?<![\p{L}\d.])(?:water|h2o)(?!\p{L})/iu];

const endOfStrength = /(?: (?:solution|liquid))?(?: of)?$/iu;

/** Salts at a strength; undefined where the line states none. */
function bySolution(name: string, reading: Reading): Outcome<Composition> | undefined {
  const { terms, path, shown } = reading;
  const [, before, after] = atStrength.exec(name) ?? [];
  const found = before === undefined ? inSolution.exec(name) : null;
  if (before === undefined && found === null) return undefined;
  const strength = (after ?? found?.[0] ?? "").replace(endOfStrength, "");
  const salts =
    before ?? `${name.slice(0, found?.index)} ${name.slice((found?.index ?? 0) + (found?.[0].length ?? 0))}`;
  const bare = salts.trim().replaceAll(/^[\s,;:(@]+(?:of\b)?|[\s,;:()@]+$/gu, "");
  if (bare === "") return refuse(problem("product.unclear", path, { name: strength, why: "no salt", ...shown() }));
  const plain = isName(bare, reading.own) ? bare : bare.replaceAll(/ ?\b(?:solution|liquid)\b(?: of\b)? ?/giu, "");
  const stated = readStrength(strength, terms);
  const salt = stated?.measure === "mass-percent" ? stated.value : undefined;
  const dissolved = dissolvedIn(reading, strength, salt);
  const saltsBy = (ratioBy: RatioBy): Outcome<Composition> =>
    byName(plain, dissolved) ?? byParts(plain, { ...reading, terms: { ...terms, ratioBy } }) ?? unknown(plain, reading);
  const dry = saltsBy(terms.ratioBy ?? "anhydrous");
  if (!dry.ok) return dry;
  if (stated === undefined) return refuse(problem("product.strength", path, { strength, strengthForms, ...shown() }));
  return askedOfCrystals(name, reading, [dry.value], (ratioBy) => {
    const [product, counted] = [saltsBy(ratioBy), readStrength(strength, { ...terms, ratioBy }) ?? stated];
    if (!product.ok) return product;
    const meant = ratioBy === "as-weighed" ? countedAsWeighed(counted, product.value) : counted;
    const solution = solutionAt(product.value, meant);
    return solution.ok
      ? answer(solution.value, [...product.notes, ...solution.notes])
      : refuse(...solution.problems.map((problem) => ({ ...problem, path })));
  });
}

function askedOfCrystals(
  name: string,
  { terms, path }: Reading,
  products: readonly Composition[],
  meant: (ratioBy: RatioBy) => Outcome<Composition>,
): Outcome<Composition> {
  const unclear = (lines: readonly string[]) => problem("product.unclear", path, { name, why: "crystals", lines });
  return eitherWay(terms.ratioBy, products, meant, unclear);
}

/** A piece of a line: a product by name, how much of it, or a ratio of several. */
type Piece =
  | { readonly kind: "name"; readonly text: string }
  | { readonly kind: "percent" | "parts" | "rest"; readonly text: string }
  | { readonly kind: "ratio"; readonly parts: readonly string[] };

const between = /^(?:[\s,;:+&()/]|(?:and|und|et|with|of|in|to)(?![\w]))+/iu;
const ratioForm = new RegExp(`^${number}(?:(?: ?[:∶/] ?| to )${number})+(?![\\w.])`, "u");
const amountForm = new RegExp(`^(${number})( ?%)?(?![\\w.])`, "u");
const restForm = /^(?:the )?(?:rest|balance|remainder)(?!\w)/iu;

/** Cuts a line into names and amounts; undefined where something in it is neither. */
function piecesOf(line: string, own: OwnMaterials): readonly Piece[] | undefined {
  const pieces: Piece[] = [];
  let left = line;
  while (left !== "") {
    const gap = between.exec(left);
    if (gap !== null) left = left.slice(gap[0].length);
    if (left === "") break;
    const [piece, length] = pieceAt(left, own);
    if (piece === undefined) return undefined;
    pieces.push(piece);
    left = left.slice(length);
  }
  return pieces;
}

function pieceAt(left: string, own: OwnMaterials): readonly [Piece | undefined, number] {
  const ratio = ratioForm.exec(left);
  if (ratio !== null) return [{ kind: "ratio", parts: ratio[0].split(/ ?[:∶/] ?| to /u) }, ratio[0].length];
  const amount = amountForm.exec(left);
  if (amount?.[1] !== undefined) {
    return [{ kind: amount[2] === undefined ? "parts" : "percent", text: amount[1] }, amount[0].length];
  }
  const rest = restForm.exec(left);
  if (rest !== null) return [{ kind: "rest", text: rest[0] }, rest[0].length];
  const ends = [...left.slice(0, longestName).matchAll(/(?=$|[\s,;:+&()/])/gu)].map(({ index }) => index).reverse();
  const end = ends.find((index) => index > 0 && isName(left.slice(0, index), own));
  return end === undefined ? [undefined, 0] : [{ kind: "name", text: left.slice(0, end) }, end];
}

/** Letters of the longest name that is looked for within a line. */
const longestName = 60;

function isName(text: string, own: OwnMaterials): boolean {
  return findPart(text) !== undefined || isMaterialName(text, own);
}

/** A mix of products in a line: shares of the whole, or parts of a ratio; undefined where the line is no such thing. */
function byParts(line: string, reading: Reading): Outcome<Composition> | undefined {
  const pieces = piecesOf(line, reading.own);
  if (pieces === undefined || !pieces.some(({ kind }) => kind === "name")) return undefined;
  const paired = pairs(pieces);
  const names = pieces.flatMap((piece) => (piece.kind === "name" ? [piece.text] : []));
  const products = names.map((name) => byName(name, reading) ?? unknown(name, reading));
  const problems = products.flatMap(problemsOf);
  if (problems.length > 0) return refuse(...problems);
  if (paired === undefined)
    return refuse(problem("product.unclear", reading.path, { name: line, why: "no parts", ...reading.shown() }));
  const parts = products.flatMap((product, index) => {
    const [name, amount] = [names[index], paired[index]];
    return product.ok && name !== undefined && amount !== undefined
      ? [{ name, composition: product.value, ...amount }]
      : [];
  });
  const notes = products.flatMap((product) => (product.ok ? product.notes : []));
  const mixed = mixOf(parts, line, reading);
  return mixed.ok ? answer(mixed.value, notes) : mixed;
}

interface Amount {
  readonly kind: "percent" | "parts" | "rest";
  readonly text: string;
}

/** The amount of each name, which stands before all of them or behind all of them; a ratio goes with names in its order. */
function pairs(pieces: readonly Piece[]): readonly Amount[] | undefined {
  const amounts = pieces.flatMap((piece) => (piece.kind === "name" || piece.kind === "ratio" ? [] : [piece]));
  const names = pieces.filter(({ kind }) => kind === "name").length;
  const [ratio, second] = pieces.flatMap((piece) => (piece.kind === "ratio" ? [piece.parts] : []));
  if (ratio !== undefined) {
    const whole = second === undefined && amounts.length === 0 && ratio.length === names;
    return whole ? ratio.map((text) => ({ kind: "parts", text })) : undefined;
  }
  const inTurn = pieces.every(({ kind }, index) => (kind === "name") === (pieces[index % 2]?.kind === "name"));
  const alternate = names === amounts.length && pieces[0]?.kind !== pieces[1]?.kind && inTurn;
  return alternate ? amounts : undefined;
}

interface InMix extends Product, Amount {}

function mixOf(parts: readonly InMix[], line: string, reading: Reading): Outcome<Composition> {
  const { path, shown } = reading;
  const stated = sum(parts.map(({ kind, text }) => dec(kind === "percent" ? text : 0)));
  const rests = parts.filter(({ kind }) => kind === "rest").length;
  const inParts = parts.filter(({ kind }) => kind === "parts");
  if (inParts.length > 0) {
    const plain =
      parts.length > 1 && inParts.length === parts.length && inParts.some(({ text }) => !dec(text).isZero());
    const dilute = parts.some(({ composition }) => anhydrousShare(composition).isZero());
    if (!plain || dilute) return refuse(problem("product.unclear", path, { name: line, why: "no parts", ...shown() }));
    const inRatio = parts.map((part) => ({ ...part, parts: part.text }));
    const products = parts.map(({ composition }) => composition);
    return askedOfCrystals(line, reading, products, (ratioBy) => answer(mixInRatio(inRatio, ratioBy)));
  }
  if (!(rests === 0 ? stated.eq(HUNDRED) : rests === 1 && stated.lte(HUNDRED))) {
    return refuse(
      problem("product.unclear", path, { name: line, why: "not whole", total: decimalText(stated), ...shown() }),
    );
  }
  const share = ({ kind, text }: Amount) => (kind === "rest" ? HUNDRED.minus(stated) : text);
  return answer(mixture(parts.map((part) => ({ composition: part.composition, mass: share(part) }))));
}

/** Lines that show how a product is written. */
const usualLines = ["K2CO3", "Na2CO3 60 %, K2CO3 40 %", "K2CO3 6, Na2CO3 4 at 30 °Bé"];

const solutionWords = /(?<!\p{L})(?:solution|liquid|dissolved|in water)(?!\p{L})/giu;

/**
 * Up to three lines that are read, of the salts and the numbers that a line has: what may have been meant by it. Where
 * there are none, lines that show the form only, with figures of other products.
 */
function linesLike(line: string, reading: Reading): Shown {
  const plain = line
    .replaceAll(solutionWords, " ")
    .replaceAll(/[\s()]+/gu, " ")
    .trim();
  const salts = saltsOf(plain, reading);
  const own = readable(linesOf(line, plain, salts), reading);
  if (own.length > 0) return { lines: own };
  const strength = strengthIn(line) ?? percentsIn(line)[0];
  const [first = "K2CO3", second = first === "Na2CO3" ? "K2CO3" : "Na2CO3"] = salts;
  const both = `${first} 6, ${second} 4`;
  const forms =
    strength !== undefined
      ? [...(salts.length > 1 ? [] : [first, second]).map((salt) => `${salt} at ${strength}`), `${both} at ${strength}`]
      : salts.length === 1
        ? [`${first} at 20 %`, `${first} at 30 °Bé`]
        : salts.length > 1
          ? [both, `${first} 60 %, ${second} 40 %`, `${both} at 20 %`]
          : [];
  const shown = readable(forms, reading);
  return { lines: shown.length > 1 ? shown : [...shown, ...usualLines].slice(0, 3), others: true };
}

/** What a line may mean, in its own salts and numbers. */
function linesOf(line: string, plain: string, salts: readonly string[]): readonly string[] {
  const [strength, percents] = [strengthIn(line), percentsIn(line)];
  const [salt, second] = salts;
  if (salt === undefined) return [];
  if (strength !== undefined) return second === undefined ? [`${salt} at ${strength}`] : [];
  if (second !== undefined) {
    if (percents.length < 2) return [];
    const over = sum(percents.map((share) => dec(Number.parseFloat(share)))).gt(HUNDRED);
    return over ? [line.replaceAll(/ ?%/gu, "")] : [`${line}, water rest`, `${line}, inert rest`];
  }
  const [percent, other] = percents;
  if (other !== undefined) return [];
  if (percent !== undefined)
    return [
      `${salt} at ${percent}`,
      plain === line ? `${salt} ${percent}, inert rest` : "",
      `${salt} at ${percent} w/v`,
    ];
  const [bare, more] = line.replace(salt, " ").match(new RegExp(`(?<![\\w.])${number}(?![\\w.])`, "gu")) ?? [];
  return bare === undefined || more !== undefined ? [] : [`${salt} at ${bare} %`, `${salt} at ${bare} °Bé`];
}

function strengthIn(line: string): string | undefined {
  return inSolution.exec(line)?.[0].replace(endOfStrength, "");
}

function percentsIn(line: string): readonly string[] {
  return line.match(new RegExp(`(?<![\\w.])${number} ?%`, "gu")) ?? [];
}

/** Up to three of the lines that are read. */
function readable(lines: readonly string[], asked: Reading): readonly string[] {
  const reading = { ...asked, shown: () => ({ lines: [] }) };
  return lines.filter((one) => read(one, reading).ok).slice(0, 3);
}

/** The products in a line that stand for one thing. */
function saltsOf(line: string, asked: Reading): readonly string[] {
  const reading = { ...asked, shown: () => ({ lines: [] }) };
  const words =
    piecesOf(line, reading.own) ?? line.split(/[\s,;:+&()/]+/u).map((text) => ({ kind: "name", text }) as const);
  return words.flatMap((piece) => {
    const product = piece.kind === "name" && isName(piece.text, reading.own) ? byName(piece.text, reading) : undefined;
    return piece.kind === "name" && product?.ok && Object.keys(product.value.species).length > 0 ? [piece.text] : [];
  });
}

/** What goes with a material by name: its notes, and its cautions under the code `caution.material`. */
function remarksOn(name: string, { notes, cautions = [] }: KitchenMaterial, path: Path): readonly Note[] {
  return [
    ...notes.map((says) => note("materials.note", path, { name, says })),
    ...cautions.map((says) => note("caution.material", path, { says })),
  ];
}
