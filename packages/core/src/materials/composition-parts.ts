import { type Composition, fromMasses, hydrate } from "../chemistry/composition.ts";
import { type HydrateName, hydrateNames, type SpeciesName, speciesNames } from "../chemistry/species.ts";
import { answer, type Outcome, type Path, type Problem, problem, refuse } from "../figure/problem.ts";
import { said } from "../figure/said.ts";
import { type Decimal, dec, decimalText, HUNDRED, sum, ZERO } from "../number/decimal.ts";
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
    problems.push(problem("materials.composition", path, { total: decimalText(stated), rests }));
  }
  if (problems.length > 0) return refuse(...problems);
  const masses: Record<string, Decimal> = {};
  let water = ZERO;
  let inert = ZERO;
  for (const { part, share } of parts) {
    const percent = share === "rest" ? HUNDRED.minus(stated) : share;
    if (part.kind === "water") water = water.plus(percent);
    if (part.kind === "inert") inert = inert.plus(percent);
    if (part.kind === "species") masses[part.name] = (masses[part.name] ?? ZERO).plus(percent);
    if (part.kind === "hydrate") {
      const crystal = hydrate(part.name);
      for (const [name, inCrystal] of Object.entries(crystal.species)) {
        masses[name] = (masses[name] ?? ZERO).plus(percent.times(inCrystal).div(HUNDRED));
      }
      water = water.plus(percent.times(crystal.water).div(HUNDRED));
    }
  }
  return answer(fromMasses({ species: masses, water, inert }));
}

export type Part =
  | { readonly kind: "species"; readonly name: SpeciesName }
  | { readonly kind: "hydrate"; readonly name: HydrateName }
  | { readonly kind: "water" }
  | { readonly kind: "inert" };

/** The species, the hydrate, the water or the inert matter that a formula stands for. @example findPart("k2co3")?.kind // => "species" */
export function findPart(key: string): Part | undefined {
  const wanted = key.trim().toLowerCase().replaceAll("·", ".");
  if (wanted === "water" || wanted === "h2o") return { kind: "water" };
  if (wanted === "inert") return { kind: "inert" };
  const name = speciesNames.find((one) => one.toLowerCase() === wanted);
  if (name !== undefined) return { kind: "species", name };
  const crystal = hydrateNames.find((one) => one.toLowerCase() === wanted);
  return crystal === undefined ? undefined : { kind: "hydrate", name: crystal };
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
