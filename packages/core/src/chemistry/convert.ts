import { type Figure, renamed, worked } from "../figure/figure.ts";
import { type Published, publish } from "../figure/graph.ts";
import { measure } from "../figure/in-system.ts";
import { distinct, type Note, note, type Outcome, type Problem, problem, refuse } from "../figure/problem.ts";
import { massBalance } from "../figure/source.ts";
import { type DecimalText, dec, fixedText } from "../number/decimal.ts";
import { type Carried, carriedBy, phInWater, type Weighed } from "./carried.ts";
import { percentOf, pure, saltsIn } from "./composition.ts";
import { standardsWithoutHydroxides } from "./food-limits.ts";
import { named } from "./named.ts";
import { phTold } from "./ph.ts";
import { alkaliBeyond } from "./published-use.ts";
import { reactionNotes } from "./reaction.ts";
import { amountsFor, contentOf, doseOf, heldNames, type Swap, saltsOf, sharesOfFlour } from "./swap-amounts.ts";

/** What goes in for the dose of another product, and what both bring. */
export interface Swapped {
  /** What is replaced, g. */
  readonly dose: Figure;
  /** The dose and the amounts on the flour that they are for, % of flour, where it is known. */
  readonly shares?: readonly Figure[];
  /** g of each new product, in the order asked for. */
  readonly amounts: readonly Figure[];
  readonly before: Carried;
  readonly after: Carried;
  /** g to take off the tap water so that the dough's water stays; below zero: to add. */
  readonly waterOff: Figure;
  /** How far the share of potassium is off, in mol % points; zero where the ratio is met. */
  readonly ratioOff: Figure;
}

/**
 * Swaps a dose of one alkaline product for another or for a pair.
 *
 * One product holds the one thing asked for. A pair holds a second: of M and P the other one, where amounts of zero or
 * more can and the two differ in it; or else the ratio of sodium to potassium. Where they can hold neither, the one product
 * that comes nearer in ratio is taken, what is held stays exact, and a note says by how much the ratio is off.
 *
 * Salts beyond the greatest published use on the flour are told in a note.
 *
 * Problems: `convert.dose`, `convert.cannot-hold`; `quantity.out-of-range` for no flour and for salts
 * above half of it.
 * @example shown(convert({ from: { name: "soda", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: 10 }, to: [{ name: "crystals", composition: { species: { Na2CO3: "37" }, water: "63", inert: "0" } }], hold: "M" }).value.amounts[0]) // => "27.03 g"
 */
export function convert(swap: Swap): Outcome<Published<Swapped>> {
  const problem = problemWith(swap);
  if (problem !== undefined) return refuse(problem);
  const amounts = amountsFor(swap);
  const weighed = swap.to.map((product, index): Weighed => {
    const salts = saltsOf({ ...product, key: String(index + 1) });
    return { ...product, salts, mass: amounts[index]?.value ?? "0" };
  });
  const dose = doseOf(swap.from);
  const old = { ...swap.from, salts: saltsOf({ ...swap.from, key: "old" }) };
  const before = carriedWithPh([old], [dose], "before", swap);
  const after = carriedWithPh(weighed, amounts, "after", swap);
  const change = (id: string, label: string, unit: string, of: (carried: Carried) => Figure): Figure => {
    const from = { after: then(of(after.carried), "after"), before: then(of(before.carried), "before") };
    return worked({ id: `convert.${id}`, label, unit, places: 2 }, "after - before", from, massBalance);
  };
  const waterOff = change("water-off", "to take off the tap water", "g", ({ water }) => water);
  const ratioOff = change("ratio-off", "potassium share, after less before", "mol % points", ratio);
  const shares = swap.flour === undefined ? undefined : sharesOfFlour([dose, ...amounts], swap.flour);
  const carried = { before: before.carried, after: after.carried };
  const result = { dose, amounts, ...(shares && { shares }), ...carried, waterOff, ratioOff };
  const notes = distinct([...before.notes.filter(({ code }) => code !== "ph.classification"), ...after.notes]);
  const salts = saltsOnFlour(swap);
  return publish(result, [
    ...(salts === undefined ? [] : alkaliBeyond(salts)),
    ...ratioNote(swap, ratioOff),
    ...whatIsNotKept(result.before, result.after),
    ...reactionNotes(weighed.filter(({ mass }) => dec(mass).gt(0)).map(({ composition }) => composition)),
    ...notes,
  ]);
}

function ratio({ potassiumRatio }: Carried): Figure {
  const label = "potassium of sodium and potassium";
  return potassiumRatio ?? named("convert.potassium-ratio", label, "mol %", 0, "no sodium, no potassium");
}

function then(figure: Figure, when: string): Figure {
  return renamed(figure, `convert.${figure.id}`, `${figure.label} ${when}`);
}

/** Salts of a dose that are believed to be meant, % of flour. */
const mostSalts = 50;

/** Anhydrous salts of the dose, % of the flour that it is for. */
function saltsOnFlour({ from, flour }: Swap): DecimalText | undefined {
  return flour && percentOf(saltsIn(from.composition, from.mass), flour);
}

function problemWith(swap: Swap): Problem | undefined {
  const { from, to, hold } = swap;
  const what = heldNames[hold];
  if (dec(from.mass).lte(0)) return problem("convert.dose", [], { mass: dec(from.mass).toString() });
  if (swap.flour !== undefined && dec(swap.flour).lte(0)) {
    const facts = { written: `${swap.flour} g of flour`, limits: "more than 0 g" };
    return problem("quantity.out-of-range", ["flour"], facts);
  }
  const without = [[from], to].find((products) => products.every((product) => contentOf(product, hold).lte(0)));
  if (without) return problem("convert.cannot-hold", [], { names: without.map(({ name }) => name), what });
  const salts = saltsOnFlour(swap);
  if (salts === undefined || dec(salts).lte(mostSalts)) return undefined;
  const written = `${from.name} with salts of ${fixedText(salts, 1)} % of flour`;
  return problem("quantity.out-of-range", [], { written, limits: `salts of at most ${mostSalts} % of flour` });
}

function carriedWithPh(
  products: readonly Weighed[],
  masses: readonly Figure[],
  when: string,
  { doughWater, doughSalt, temperature }: Swap,
): { readonly carried: Carried; readonly notes: readonly Note[] } {
  if (doughWater === undefined) return { carried: carriedBy(products, when, undefined, masses), notes: [] };
  const salt: Weighed = { name: "salt", composition: pure("NaCl"), mass: doughSalt ?? 0 };
  const { ph, notes } = phTold(phInWater([...products, salt], doughWater, temperature ?? 25));
  return { carried: carriedBy(products, when, ph, masses), notes };
}

function ratioNote({ to, hold }: Swap, ratioOff: Figure): readonly Note[] {
  const off = dec(ratioOff.value);
  if (off.abs().lt("1e-9")) return [];
  const facts = { names: to.map(({ name }) => name), what: heldNames[hold], points: fixedText(off.abs(), 2) };
  return [note("convert.ratio-not-met", [], { ...facts, way: off.gt(0) ? "more" : "less" })];
}

/** What changes by less than this share of itself counts as kept: the doubt of the atomic weights is of this order. */
const KEPT = "0.0005";

const watched = ["anhydrous", "alkalinityM", "alkalinityP", "salt", "sodium", "potassium"] as const;

/** Says what a swap does not keep, in words; an empty list where it keeps everything. */
function whatIsNotKept(before: Carried, after: Carried): readonly Note[] {
  const changes = watched.flatMap((key) => changeOf(before[key], after[key]));
  const notes: Note[] = changes.length === 0 ? [] : [note("convert.not-kept", [], { changes })];
  if (differ(before.bicarbonate, after.bicarbonate)) notes.push(note("convert.bicarbonate", [], {}));
  if (differ(before.hydroxide, after.hydroxide)) {
    const more = dec(after.hydroxide.value).gt(before.hydroxide.value);
    notes.push(note("convert.hydroxide", [], more ? { without: standardsWithoutHydroxides } : {}));
  }
  return notes;
}

function changeOf(before: Figure, after: Figure) {
  if (!differ(before, after)) return [];
  const { label, unit } = before;
  return [{ label, before: measure(before.value, unit, 2), after: measure(after.value, unit, 2) }];
}

function differ(before: Figure, after: Figure): boolean {
  const greatest = dec(before.value).abs().plus(dec(after.value).abs());
  return dec(before.value).minus(after.value).abs().gt(greatest.div(2).times(KEPT));
}
