import { alkalinityM, anhydrousShare, pure } from "../chemistry/composition.ts";
import { atomicWeightSource } from "../chemistry/elements.ts";
import { type Figure, given, worked } from "../figure/figure.ts";
import { answer, type Outcome, type Path, problem, refuse } from "../figure/problem.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import type { KitchenMaterial } from "../materials/own.ts";
import type { DoseBeside } from "../materials/several.ts";
import { dec, ZERO } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";
import { alkalinityFigure, anhydrousFigure } from "./content.ts";
import type { Entry } from "./entries.ts";
import { ofFlour } from "./naming.ts";

/** What amounts are brought to 100 of the flour at hand by. */
export interface Scaling {
  /** Flour of a formula written in masses, g. */
  readonly flour: Figure | undefined;
  /** What amounts are multiplied with because the formula was written on another flour moisture. */
  readonly factor: Figure | undefined;
}

interface Term {
  readonly formula: string;
  readonly from: Readonly<Record<string, Figure>>;
}

/** An amount as % of flour: the text of its formula and what it is fed with. */
function amountTerm(entry: Entry, { flour, factor }: Scaling): Outcome<Term> {
  const { amount } = entry;
  const stated = given(
    {
      id: `${entry.id}.stated`,
      label: `${entry.name} as stated`,
      unit: statedUnits[amount.dimension] ?? amount.unit,
      places: 2,
    },
    amount.value,
    `spec, ${amount.text}`,
    fromSpec,
  );
  const scaled = factor === undefined ? "" : " * factor";
  if (amount.dimension !== "mass")
    return answer({ formula: `stated${scaled}`, from: { stated, ...(factor && { factor }) } });
  if (flour === undefined) {
    return refuse(problem("amounts.mass-without-flour-mass", amountPath(entry), { amount: amount.text }));
  }
  return answer({ formula: `100 * stated / flour${scaled}`, from: { stated, flour, ...(factor && { factor }) } });
}

const statedUnits: Partial<Readonly<Record<Quantity["dimension"], string>>> = {
  mass: "g",
  share: "% of flour",
  alkalinity: "meq/100 g flour",
};

/**
 * Turns the amount of an ingredient into parts on 100 of flour; of an alkaline product by what its dose states.
 *
 * Problems: `amounts.mass-without-flour-mass`, `alkali.no-composition`, `alkali.dose-unit`, `alkali.no-strength`.
 */
export function entryParts(entry: Entry, material: KitchenMaterial, scale: Scaling): Outcome<Figure> {
  const naming = ofFlour(`${entry.id}.parts`, entry.name);
  const term = amountTerm(entry, scale);
  if (!term.ok) return term;
  const { formula, from } = term.value;
  const plain = (): Figure =>
    formula === "stated"
      ? given(naming, entry.amount.value, `spec, ${entry.amount.text}`, fromSpec)
      : worked(naming, formula, from, massBalance);
  if (entry.role !== "alkali") return answer(plain());
  const { composition } = material;
  if (composition === undefined) return refuse(problem("alkali.no-composition", entry.namePath, { name: entry.name }));
  const meq = entry.amount.dimension === "alkalinity";
  const states = entry.as ?? (meq ? "alkalinity" : "product");
  if (meq && states !== "alkalinity")
    return refuse(problem("alkali.dose-unit", [...entry.path, "as"], { as: states, amount: entry.amount.text }));
  if (states === "product") return answer(plain());
  const [strength, lacks] =
    states === "anhydrous salts"
      ? [anhydrousShare(composition), "alkaline salts"]
      : [alkalinityM(composition), "alkalinity"];
  if (strength.lte(ZERO)) return refuse(problem("alkali.no-strength", entry.namePath, { name: entry.name, lacks }));
  const product = { id: entry.id, name: entry.name, material };
  const dosed = (text: string, held: Readonly<Record<string, Figure>>) =>
    answer(worked(naming, `(${formula})${text}`, { ...from, ...held }, massBalance));
  if (states === "anhydrous salts")
    return dosed(" * 100 / anhydrous", { anhydrous: anhydrousFigure(product, composition, "anhydrous-share") });
  const alkalinity = alkalinityFigure(product, composition, "M", "strength");
  return meq
    ? dosed(" / alkalinity", { alkalinity })
    : dosed(" * soda / alkalinity", { soda: sodaStrength(), alkalinity });
}

/** Where the amount of an entry stands. */
export function amountPath({ path, role }: Entry): Path {
  return role === "salt" ? path : [...path, "amount"];
}

/** The dose of an alkaline product, for a name that stands for several. */
export function doseBeside({ role, amount, as }: Entry): DoseBeside | undefined {
  if (role !== "alkali") return undefined;
  const { text, value, dimension } = amount;
  if (dimension === "alkalinity") return { text, unit: "%", meq: dec(value) };
  const unit = dimension === "mass" ? "g" : "%";
  if (as === "anhydrous salts") return { text: `${text} of anhydrous salts`, unit, anhydrous: dec(value) };
  if (as === "alkalinity")
    return { text: `the alkalinity of ${text}`, unit, meq: alkalinityM(pure("Na2CO3")).times(value) };
  return { text, unit, ofIt: value };
}

function sodaStrength(): Figure {
  return given(
    { id: "sodium-carbonate.strength", label: "alkalinity of sodium carbonate", unit: "meq/g", places: 3 },
    alkalinityM(pure("Na2CO3")),
    "molar mass",
    atomicWeightSource,
  );
}
