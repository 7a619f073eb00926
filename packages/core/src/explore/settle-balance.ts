import { bowlWeight } from "../batch/bowl.ts";
import { keptInBoiling } from "../batch/nutrition-cooked.ts";
import { alkalinityM, anhydrousShare, pure } from "../chemistry/composition.ts";
import { answer, note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import type { Formula } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import { type Decimal, dec, decimalText, fixedText, HUNDRED, sum, ZERO } from "../number/decimal.ts";
import type { Bounds } from "../spec/blend-schema.ts";
import type { Spec } from "../spec/spec.ts";
import type { FoundAmount, OpenPlaces } from "./settle-places.ts";

/** Decimal places of a found amount in %, far below what any scale shows. */
const places = 6;

/**
 * Finds the alkaline products, the salt and the water that a spec leaves open, exactly: every target is a linear equation in
 * the parts on 100 of flour, and all are solved together, since salt and water share the dough.
 *
 * @param formula - that of the spec with the open alkaline products and salt at 0
 * Problems: `settle.alkali`, `settle.salt`, `settle.water` (what is missing in the spec); `settle.alike`,
 * `settle.below-zero` (no answer).
 */
export function balanceAmounts(spec: Spec, formula: Formula, open: OpenPlaces): Outcome<readonly FoundAmount[]> {
  const unknowns = unknownsOf(formula, open);
  const sums = known(formula, unknowns);
  const asked = [alkaliEquations(spec, open), saltEquations(spec, open), waterEquations(spec, formula, open)];
  const problems = asked.flatMap((one): readonly Problem[] => (one.ok ? [] : one.problems));
  if (problems.length > 0) return refuse(...problems);
  const equations = asked.flatMap((one) => (one.ok ? one.value : []));
  const rows = equations.map(({ per, target }) => ({
    coefficients: unknowns.map(({ part }) => per(part)),
    right: target.minus(per(sums)),
  }));
  const solution = solve(rows);
  if (solution === undefined)
    return refuse(problem("settle.alike", ["alkali"], { names: namesOf(unknowns, "alkali") }));
  const below = unknowns.flatMap(({ line }, index) => {
    const parts = solution[index] ?? ZERO;
    return parts.isNegative() && !parts.isZero() ? [belowZero(line, parts, unknowns)] : [];
  });
  if (below.length > 0) return refuse(...below);
  const solved = { spec, formula, open, sums, unknowns };
  const found = unknowns.flatMap((unknown, index) => amountOf(unknown, solution[index] ?? ZERO, solution, solved));
  return answer(
    found,
    asked.flatMap((one) => (one.ok ? one.notes : [])),
  );
}

/** What one part of something brings into the dough, or what several bring together, on 100 of flour. */
interface Brought {
  readonly mass: Decimal;
  readonly water: Decimal;
  readonly tap: Decimal;
  readonly salt: Decimal;
  readonly alkalinity: Decimal;
  readonly anhydrous: Decimal;
  readonly sodium: Decimal;
  readonly potassium: Decimal;
}

interface Unknown {
  readonly line: FormulaLine;
  readonly part: Brought;
}

/** `per` of all that is in the dough comes to the target. What the flours bring is in it as a constant. */
interface Equation {
  readonly per: (brought: Brought) => Decimal;
  readonly target: Decimal;
}

function partOf({ material, role }: FormulaLine): Brought {
  const composition = role === "alkali" ? material.composition : undefined;
  return {
    mass: dec(1),
    water: dec(material.moisture).div(HUNDRED),
    tap: dec(role === "water" ? 1 : 0),
    salt: dec(material.kind === "salt" ? 1 : 0),
    alkalinity: composition === undefined ? ZERO : alkalinityM(composition),
    anhydrous: composition === undefined ? ZERO : anhydrousShare(composition).div(HUNDRED),
    sodium: dec(composition?.species.Na2CO3 ?? 0).div(HUNDRED),
    potassium: dec(composition?.species.K2CO3 ?? 0).div(HUNDRED),
  };
}

/** Lines whose amounts are sought. The tap water always is: where the spec states the water, that is its equation. */
function unknownsOf({ lines }: Formula, open: OpenPlaces): readonly Unknown[] {
  const isOpen = ({ role, path }: FormulaLine): boolean =>
    role === "water" || (role === "salt" && open.salt) || (role === "alkali" && open.alkali.includes(Number(path[1])));
  return lines.filter(isOpen).map((line) => ({ line, part: partOf(line) }));
}

/** What all the rest brings beside the flours. */
function known({ lines }: Formula, unknowns: readonly Unknown[]): Brought {
  const sought = new Set(unknowns.map(({ line }) => line.id));
  const rest = lines.filter(({ id, role }) => role !== "flour" && !sought.has(id));
  const brought = rest.map((line) => ({ parts: dec(line.parts.value), part: partOf(line) }));
  const total = (name: keyof Brought): Decimal => sum(brought.map(({ parts, part }) => parts.times(part[name])));
  return {
    mass: total("mass"),
    water: total("water"),
    tap: total("tap"),
    salt: total("salt"),
    alkalinity: total("alkalinity"),
    anhydrous: total("anhydrous"),
    sodium: total("sodium"),
    potassium: total("potassium"),
  };
}

/** What is aimed at: a value, the middle of a range, or the one end that is stated. */
function wantedValue(bounds: Bounds | undefined): Decimal | undefined {
  const { value, least, most } = bounds ?? {};
  if (value !== undefined) return dec(value);
  if (least !== undefined && most !== undefined) return dec(least).plus(most).div(2);
  const end = least ?? most;
  return end === undefined ? undefined : dec(end);
}

/** As many equations as there are products to be found: a strength first, then the ratio of potassium to sodium. */
function alkaliEquations({ wanted = {} }: Spec, { alkali: open }: OpenPlaces): Outcome<readonly Equation[]> {
  if (open.length === 0) return answer([]);
  const alkalinity = wantedValue(wanted.alkalinity);
  const anhydrous = wantedValue(wanted.anhydrousSalts);
  const share = wantedValue(wanted.potassiumShare);
  const strengths: readonly Equation[] = [
    ...(alkalinity ? [{ per: (one: Brought) => one.alkalinity, target: alkalinity }] : []),
    ...(anhydrous ? [{ per: (one: Brought) => one.anhydrous, target: anhydrous }] : []),
  ];
  const ratio: readonly Equation[] = share
    ? [
        {
          per: ({ potassium, sodium }) => potassium.times(100).minus(share.times(potassium.plus(sodium))),
          target: ZERO,
        },
      ]
    : [];
  const equations = [...strengths.slice(0, 1), ...ratio, ...strengths.slice(1)].slice(0, open.length);
  if (equations.length === open.length) return answer(equations);
  return refuse(problem("settle.alkali", ["wanted"], { open: open.length, stated: equations.length }));
}

function saltEquations(spec: Spec, { salt }: OpenPlaces): Outcome<readonly Equation[]> {
  if (!salt) return answer([]);
  const { saltInDough, saltInBowl } = spec.wanted ?? {};
  const inDough = wantedValue(saltInDough);
  if (inDough !== undefined) {
    return answer([
      { per: ({ salt: of, mass }) => of.times(100).minus(inDough.times(mass)), target: inDough.times(100) },
    ]);
  }
  const inBowl = wantedValue(saltInBowl);
  const bowl = bowlWeight(spec);
  if (!bowl.ok) return bowl;
  const { raw } = bowl.value;
  if (inBowl === undefined || raw === undefined) {
    return refuse(
      problem("settle.salt", ["wanted"], { bowl: inBowl === undefined ? "" : "without the weight of a bowl" }),
    );
  }
  const kept = dec(raw.value).times(keptInBoiling().sodium.value).div(100);
  return answer(
    [{ per: ({ salt: of, mass }) => of.times(kept).minus(inBowl.times(mass)), target: inBowl.times(100) }],
    [boiledNote],
  );
}

const boiledNote = note("settle.boiled", ["wanted", "saltInBowl"], {});

/** The water as stated; or, where it is open, as wanted; or as the flours take it by the kitchen's own figures. */
function waterEquations(spec: Spec, formula: Formula, open: OpenPlaces): Outcome<readonly Equation[]> {
  const { water } = formula;
  const flourWater = dec(water.flour.value);
  const added = (target: Decimal): Equation => ({ per: (one) => one.water, target });
  const dough = (of: Decimal): Equation => ({
    per: ({ water: carried, mass }) => carried.times(100).minus(of.times(mass)),
    target: of.times(100).minus(flourWater.times(100)),
  });
  if (open.water === undefined) {
    if (spec.water.dough !== undefined) return answer([dough(dec(water.doughWater.value))]);
    if (spec.water.added !== undefined) return answer([added(dec(water.added.value))]);
    return answer([{ per: (one) => one.tap, target: dec(water.tap.value) }]);
  }
  const { doughWater, addedWater } = spec.wanted ?? {};
  const [inDough, inAdded] = [wantedValue(doughWater), wantedValue(addedWater)];
  if (inDough !== undefined) return answer([dough(inDough)]);
  if (inAdded !== undefined) return answer([added(inAdded)]);
  const flours = formula.lines.filter(({ role, parts }) => role === "flour" && !dec(parts.value).isZero());
  const unknown = flours.filter(({ material }) => material.absorption === undefined).map(({ name }) => name);
  if (unknown.length > 0) return refuse(problem("settle.water", ["water", open.water], { names: unknown }));
  const taken = flours.map(({ parts, material }) =>
    dec(parts.value)
      .times(material.absorption?.percent ?? 0)
      .div(100),
  );
  return answer([added(sum(taken))], [ownWaterNote]);
}

const ownWaterNote = note("settle.own-water", ["water"], {});

/** Solves as many linear equations as there are unknowns; nothing where they do not tell the unknowns apart. */
export function solve(
  rows: readonly { readonly coefficients: readonly Decimal[]; readonly right: Decimal }[],
): readonly Decimal[] | undefined {
  const work = rows.map(({ coefficients, right }) => [...coefficients, right]);
  const size = work.length;
  for (let column = 0; column < size; column += 1) {
    const leadOf = (row: number): Decimal => work[row]?.[column]?.abs() ?? ZERO;
    const pivot = Array.from({ length: size - column }, (_, index) => column + index).reduce((best, row) =>
      leadOf(row).gt(leadOf(best)) ? row : best,
    );
    const [top, swapped] = [work[pivot], work[column]];
    const lead = top?.[column];
    if (top === undefined || swapped === undefined || lead === undefined || lead.abs().lt(smallest)) return undefined;
    work[pivot] = swapped;
    work[column] = top;
    for (const [index, row] of work.entries()) {
      if (index === column) continue;
      const times = (row[column] ?? ZERO).div(lead);
      work[index] = row.map((value, at) => value.minus(times.times(top[at] ?? ZERO)));
    }
  }
  return work.map((row, index) => (row[size] ?? ZERO).div(row[index] ?? 1));
}

/** A coefficient below this is what rounding to 40 digits leaves of zero. */
const smallest = "1e-25";

function namesOf(unknowns: readonly Unknown[], role: FormulaLine["role"]): readonly string[] {
  return unknowns.flatMap(({ line }) => (line.role === role ? [line.name] : []));
}

/** Of what less than nothing would have to go in, and what the products to be found can reach. */
function belowZero({ name, role, path }: FormulaLine, amount: Decimal, unknowns: readonly Unknown[]): Problem {
  const shares = unknowns.flatMap(({ line, part: { sodium, potassium } }) => {
    const both = sodium.plus(potassium);
    return line.role !== "alkali" || both.isZero() ? [] : [potassium.times(100).div(both)];
  });
  const [least, most] = [shares.toSorted((a, b) => a.cmp(b)).at(0), shares.toSorted((a, b) => a.cmp(b)).at(-1)];
  const reach = role === "alkali" && least && most ? [fixedText(least, 1), fixedText(most, 1)] : [];
  return problem("settle.below-zero", role === "water" ? ["water"] : path, {
    name,
    amount: fixedText(amount, 3),
    reach,
  });
}

interface Solved {
  readonly spec: Spec;
  readonly formula: Formula;
  readonly open: OpenPlaces;
  readonly sums: Brought;
  readonly unknowns: readonly Unknown[];
}

/** The amount as the spec states it: on flour of the stated moisture, and by what the dose or the water states. */
function amountOf(
  { line }: Unknown,
  parts: Decimal,
  solution: readonly Decimal[],
  solved: Solved,
): readonly FoundAmount[] {
  const { spec, formula, open } = solved;
  const factor = dec(formula.referenceFactor?.value ?? 1);
  const write = (path: FoundAmount["path"], name: string, percent: Decimal): readonly FoundAmount[] => [
    { path, name, text: `${decimalText(percent.toDecimalPlaces(places))} %` },
  ];
  if (line.role === "salt") return write(["salt"], line.name, parts.div(factor));
  if (line.role === "alkali") {
    const as = spec.alkali?.[Number(line.path[1])]?.as;
    const { composition } = line.material;
    const stated =
      composition === undefined
        ? dec(1)
        : as === "anhydrous salts"
          ? anhydrousShare(composition).div(100)
          : as === "alkalinity"
            ? alkalinityM(composition).div(alkalinityM(pure("Na2CO3")))
            : dec(1);
    return write([...line.path, "amount"], line.name, parts.times(stated).div(factor));
  }
  if (open.water === undefined) return [];
  return write(["water", open.water], `${open.water} water`, statedWater(open.water, parts, solution, solved));
}

/** The water of the dough as one of the three ways states it. */
function statedWater(
  way: "added" | "tap" | "dough",
  tap: Decimal,
  solution: readonly Decimal[],
  { formula, sums, unknowns }: Solved,
): Decimal {
  const all = (name: "water" | "mass"): Decimal =>
    sums[name].plus(sum(unknowns.map(({ part }, index) => part[name].times(solution[index] ?? ZERO))));
  if (way === "dough") return all("water").plus(formula.water.flour.value).times(100).div(all("mass").plus(100));
  const onFlour = way === "added" ? all("water") : tap;
  const factor = formula.referenceFactor;
  return factor === undefined ? onFlour : onFlour.plus(100).div(factor.value).minus(100);
}
