import { type Composition, hydrate, mixture, pure, waterOnly } from "../chemistry/composition.ts";
import { type HydrateName, hydrateNames, type SpeciesName, speciesNames } from "../chemistry/species.ts";
import { answer, type Outcome, type Path, type Problem, problem, refuse } from "../figure/problem.ts";
import { said } from "../figure/said.ts";
import { type Decimal, dec, HUNDRED, shortText, sum, ZERO } from "../number/decimal.ts";
import { parseQuantity } from "../number/quantity.ts";

/**
 * Reads what a product is made of, in % of it; formulas may carry crystal water, and one part may be `rest`.
 *
 * Problems: `materials.composition`, `materials.composition-part`, `quantity.unreadable`; paths end in the key of the part.
 * @example readParts({ K2CO3: "30 %", water: "rest" }, []).value.water // => "70"
 */
export function readParts(written: Readonly<Record<string, string>>, path: Path): Outcome<Composition> {
  const problems: Problem[] = [];
  const parts: { readonly part: Part; readonly share: Decimal | "rest" }[] = [];
  for (const [key, amount] of Object.entries(written)) {
    const place = [...path, key];
    const part = findPart(key);
    const share = readShare(amount, place, problems);
    if (part === undefined) problems.push(unknownPart(key, place));
    else if (share !== undefined) parts.push({ part, share });
  }
  const stated = sum(parts.map(({ share }) => (share === "rest" ? ZERO : share)));
  const rests = parts.filter(({ share }) => share === "rest").length;
  const whole = rests === 0 ? stated.eq(HUNDRED) : rests === 1 && stated.lte(HUNDRED);
  if (problems.length === 0 && !whole) {
    problems.push(problem("materials.composition", path, { total: shortText(stated, 4), rests }));
  }
  if (problems.length > 0) return refuse(...problems);
  const mass = (share: Decimal | "rest"): Decimal => (share === "rest" ? HUNDRED.minus(stated) : share);
  return answer(mixture(parts.map(({ part, share }) => ({ composition: part.composition, mass: mass(share) }))));
}

/** What a formula stands for, with what it is made of. */
export type Part = { readonly composition: Composition } & (
  | { readonly kind: "species"; readonly name: SpeciesName }
  | { readonly kind: "hydrate"; readonly name: HydrateName }
  | { readonly kind: "rest"; readonly name: "water" | "inert" }
);

let byFormula: ReadonlyMap<string, Part> | undefined;

/** The species, the hydrate, the water or the inert matter that a formula stands for. @example findPart("k2co3")?.kind // => "species" */
export function findPart(key: string): Part | undefined {
  byFormula ??= new Map(allParts().map((part) => [part.name.toLowerCase(), part]));
  const wanted = key.trim().toLowerCase().replaceAll("·", ".");
  return byFormula.get(wanted === "h2o" ? "water" : wanted);
}

function allParts(): readonly Part[] {
  return [
    { kind: "rest", name: "water", composition: waterOnly },
    { kind: "rest", name: "inert", composition: { species: {}, water: "0", inert: "100" } },
    ...speciesNames.map((name) => ({ kind: "species", name, composition: pure(name) }) as const),
    ...hydrateNames.map((name) => ({ kind: "hydrate", name, composition: hydrate(name) }) as const),
  ];
}

/** The problem of a part that nothing stands for. */
export function unknownPart(key: string, path: Path): Problem {
  return problem("materials.composition-part", path, { key, parts: [...speciesNames, ...hydrateNames] });
}

function readShare(written: string, path: Path, problems: Problem[]): Decimal | "rest" | undefined {
  if (written.trim().toLowerCase() === "rest") return "rest";
  const reading = parseQuantity(written, ["share"]);
  if (reading.ok) return dec(reading.quantity.value);
  problems.push(problem("quantity.unreadable", path, { written: said(written), ...reading.fault, rest: true }));
  return undefined;
}
