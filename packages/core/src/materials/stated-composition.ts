import { anhydrousShare, type Composition, hydrate, isChloride, pure, sharesOf } from "../chemistry/composition.ts";
import { mixInRatio, type RatioBy } from "../chemistry/ratio.ts";
import { holdsCrystals, staysClear } from "../chemistry/solubility.ts";
import { hydrates } from "../chemistry/species.ts";
import { countedAsWeighed, fitRange, solutionAt } from "../chemistry/stated-strength.ts";
import { assayed } from "../chemistry/titration.ts";
import { shown as figureText } from "../figure/figure.ts";
import { measure } from "../figure/in-system.ts";
import {
  answer,
  loudNote,
  type Note,
  type Outcome,
  type Path,
  type Problem,
  problem,
  problemsOf,
  refuse,
} from "../figure/problem.ts";
import { type DecimalText, dec, decimalText, digitsText } from "../number/decimal.ts";
import { alkalinityForms, readAlkalinity } from "./alkalinity-text.ts";
import { findPart, readParts, unknownPart } from "./composition-parts.ts";
import type { AssayFigures, CertificateFigures, MaterialFigures, SolutionFigures } from "./schema.ts";
import { readStrength, strengthForms } from "./strength-text.ts";

const ways = ["composition", "solution", "certificate", "assay"] as const;

/** Whether figures say in any way what a product is made of. */
export function statesComposition(figures: MaterialFigures): boolean {
  return ways.some((way) => figures[way] !== undefined);
}

/**
 * What a product is made of, from its composition, from the strength of a solution, from a stated alkalinity or from the
 * assay of one salt; undefined where nothing is said.
 *
 * @param path - of the figures
 * Problems: `materials.composition-twice`, `materials.strength`, `materials.alkalinity`, `materials.salts`, `materials.assay`,
 * and those of `readParts`, `solutionAt` and `assayed`.
 */
export function statedComposition(figures: MaterialFigures, path: Path): Outcome<Composition | undefined> {
  const said = ways.filter((way) => figures[way] !== undefined);
  if (said.length > 1) return refuse(problem("materials.composition-twice", path, { said }));
  const { composition, solution, certificate, assay } = figures;
  if (composition !== undefined) return readParts(composition, [...path, "composition"]);
  if (solution !== undefined) return ofSolution(solution, [...path, "solution"]);
  if (certificate !== undefined) return ofCertificate(certificate, [...path, "certificate"]);
  return assay === undefined ? answer(undefined) : ofAssay(assay, [...path, "assay"]);
}

/** ± % of the strength that the fits of density leave open, of a solution whose strength rests on a density. */
export function fitUncertainty({ solution }: MaterialFigures): DecimalText | undefined {
  const told = solution && saltsAndStrength(solution, ratioOf(solution) ?? "anhydrous", []);
  if (!told?.ok) return undefined;
  const { salts, strength } = told.value;
  const [range, middle] = [fitRange(salts, strength), solutionAt(salts, strength)];
  if (range === undefined || !middle.ok) return undefined;
  const off = range.high.minus(range.low).times(50).div(anhydrousShare(middle.value));
  return decimalText(off.toDecimalPlaces(2));
}

function ratioOf({ ratioBy }: SolutionFigures): RatioBy | undefined {
  return ratioBy && (ratioBy === "as weighed" ? "as-weighed" : "anhydrous");
}

function saltsAndStrength(stated: SolutionFigures, ratioBy: RatioBy, path: Path) {
  const salts = saltsInRatio(stated.salts, ratioBy, [...path, "salts"]);
  const temperature = stated.temperature?.value;
  const read = readStrength(stated.strength, { modulus: stated.modulus, temperature, readAt: temperature, ratioBy });
  const facts = { strength: stated.strength, strengthForms };
  const unread = read === undefined ? [problem("materials.strength", [...path, "strength"], facts)] : [];
  if (!salts.ok || read === undefined) return refuse(...problemsOf(salts), ...unread);
  const strength = ratioBy === "as-weighed" ? countedAsWeighed(read, salts.value) : read;
  return answer({ salts: salts.value, strength });
}

function ofSolution(stated: SolutionFigures, path: Path): Outcome<Composition> {
  const meant = (ratioBy: RatioBy): Outcome<Composition> => {
    const told = saltsAndStrength(stated, ratioBy, path);
    return told.ok ? placed(solutionAt(told.value.salts, told.value.strength), [...path, "strength"]) : told;
  };
  const products = Object.keys(stated.salts).flatMap((name) => findPart(name)?.composition ?? []);
  const unclear = (): Problem => problem("materials.crystals", path, { strength: stated.strength });
  return eitherWay(ratioOf(stated), products, meant, unclear);
}

/**
 * What is meant by salts whose parts and strength count them without their crystals or as weighed. Where that is not said
 * and crystals make a difference, it is asked.
 *
 * @param unclear - the question, with the compositions that may be meant as lines that are read, to four digits
 */
export function eitherWay(
  ratioBy: RatioBy | undefined,
  products: readonly Composition[],
  meant: (ratioBy: RatioBy) => Outcome<Composition>,
  unclear: (lines: readonly string[]) => Problem,
): Outcome<Composition> {
  const anhydrous = meant(ratioBy ?? "anhydrous");
  if (ratioBy !== undefined || !products.some(holdsCrystals)) return anhydrous;
  const lines = [anhydrous, meant("as-weighed")].flatMap((one) => (one.ok ? [inPercent(one.value)] : []));
  return lines.length === 0 || (new Set(lines).size < 2 && anhydrous.ok) ? anhydrous : refuse(unclear(lines));
}

function inPercent({ inert, ...composition }: Composition): string {
  const shares = [...sharesOf({ ...composition, inert }), ...(inert === "0" ? [] : [["inert", inert] as const])];
  return `${shares.map(([name, share]) => `${name} ${digitsText(share, 4)} %`).join(", ")}, water rest`;
}

function ofCertificate(stated: CertificateFigures, path: Path): Outcome<Composition> {
  const salts = saltsInRatio(stated.salts, "anhydrous", [...path, "salts"]);
  const place = [...path, "alkalinity"];
  const alkalinity = readAlkalinity(stated.alkalinity);
  const facts = { alkalinity: stated.alkalinity, forms: alkalinityForms };
  const unread = alkalinity === undefined ? [problem("materials.alkalinity", place, facts)] : [];
  if (!salts.ok || alkalinity === undefined) return refuse(...problemsOf(salts), ...unread);
  const outcome = placed(assayed(alkalinity, salts.value, stated.water?.value), place);
  return outcome.ok ? answer(outcome.value.composition, outcome.notes) : outcome;
}

function ofAssay(stated: AssayFigures, path: Path): Outcome<Composition> {
  const place = [...path, "of"];
  const part = findPart(stated.of);
  if (part === undefined) return refuse(unknownPart(stated.of, place));
  const drying = stated.lossOnDrying?.value;
  if (part.kind === "species") return answer(pure(part.name, stated.content.value, drying ?? 0));
  if (part.kind === "rest") return refuse(problem("materials.assay", place, { of: stated.of }));
  if (drying === undefined) return answer(hydrate(part.name, stated.content.value));
  const [salt, second] = Object.keys(hydrates[part.name].species);
  const dried = salt === undefined || second !== undefined ? undefined : findPart(salt);
  if (dried?.kind === "species") return answer(pure(dried.name, stated.content.value, drying));
  return refuse(problem("materials.assay", [...path, "lossOnDrying"], { drying: part.name }));
}

/** Salts in a ratio, as a composition: parts by their anhydrous mass, or as weighed with their crystal water. */
function saltsInRatio(parts: Readonly<Record<string, number>>, ratioBy: RatioBy, path: Path): Outcome<Composition> {
  const problems: Problem[] = [];
  const salts = Object.entries(parts).flatMap(([name, amount]) => {
    const part = findPart(name);
    if (part !== undefined && part.kind !== "rest") return [{ name, composition: part.composition, parts: amount }];
    problems.push(unknownPart(name, [...path, name]));
    return [];
  });
  if (problems.length > 0) return refuse(...problems);
  if (salts.every((salt) => dec(salt.parts).isZero())) {
    return refuse(problem("materials.salts", path, { chloride: false }));
  }
  const chlorideAlone = salts.some(({ composition }) => sharesOf(composition).some(([one]) => isChloride(one)));
  if (chlorideAlone && ratioBy === "anhydrous") return refuse(problem("materials.salts", path, { chloride: true }));
  return answer(mixInRatio(salts, ratioBy));
}

function placed<T>(outcome: Outcome<T>, path: Path): Outcome<T> {
  return outcome.ok ? outcome : refuse(...outcome.problems.map((problem) => ({ ...problem, path })));
}

/** °C that what dissolves is told of. */
const ROOM = "20";

/** % of water from which on a product is no longer a powder that drew some: common practice, no source. */
const wet = 25;

/** What is told of a solution that cannot be one: there is more salt in it than dissolves. */
export function undissolved(name: string, composition: Composition, path: Path): readonly Note[] {
  if (dec(composition.water).lt(wet)) return [];
  const clarity = staysClear(composition, ROOM);
  if (!clarity.ok || clarity.value.verdict !== "crystals") return [];
  const facts = { name, temperature: measure(ROOM, "°C", 0), taken: figureText(clarity.value.taken) };
  return [loudNote("strength.undissolved", path, facts)];
}
