import { alkalinityM, anhydrousShare, pure } from "../chemistry/composition.ts";
import { atomicWeightSource } from "../chemistry/species.ts";
import { type Figure, given, worked } from "../figure/figure.ts";
import { answer, inputProblem, type Note, type Outcome, type Path, type Problem, refuse } from "../figure/problem.ts";
import { definition, fromSpec, massBalance, type Source } from "../figure/source.ts";
import { type KitchenMaterial, type OwnMaterials, resolveMaterial } from "../materials/own.ts";
import { type Decimal, dec, decimalText, HUNDRED, sum, ZERO } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";
import { notAlkaline } from "./not-alkaline.ts";
import { type Replacement, replaceAlkali } from "./replace.ts";
import type { Spec, SpecAlkali } from "./spec.ts";

export type Role = "flour" | "water" | "alkali" | "salt" | "ingredient" | "dusting";

/** One ingredient of the formula on 100 parts of flour as weighed. */
export interface FormulaLine {
  /** `flour.1`, `alkali.2`, `salt`, `ingredient.1`, `water`. */
  readonly id: string;
  readonly role: Role;
  readonly name: string;
  /** Where the spec says so. */
  readonly path: Path;
  readonly material: KitchenMaterial;
  /** % of flour. */
  readonly parts: Figure;
  /** What the parts are worked out from. */
  readonly leaves: readonly Figure[];
}

/** The lines that a spec states: all but the tap water, which the balance gives. */
export interface StatedLines {
  readonly flours: readonly FormulaLine[];
  readonly others: readonly FormulaLine[];
  /** Alkaline products that the spec has replaced; `others` holds what takes their place. */
  readonly replacements: readonly Replacement[];
  readonly dusting?: FormulaLine;
  /** Flour of a formula written in masses, g. */
  readonly writtenFlour?: Figure;
  /** What amounts in % of flour are multiplied with because the formula was written on another flour moisture. */
  readonly referenceFactor?: Figure;
}

/**
 * Turns the amounts of a spec into parts on 100 of flour as weighed.
 *
 * Problems: `flours.shares-total`, `flours.mixed-amounts`, `flours.rest-twice`, `flours.rest-with-masses`, `flours.none`,
 * `amounts.mass-without-flour-mass`, and those of `resolveMaterial` and `replaceAlkali`.
 */
export function statedLines(
  spec: Pick<Spec, "flours"> & Partial<Spec>,
  extra: OwnMaterials = {},
): Outcome<StatedLines> {
  const own = { ...spec.materials, ...extra, ...spec.materials };
  const problems: Problem[] = [];
  const collect = <T>(outcome: Outcome<T>): T | undefined => {
    if (outcome.ok) return outcome.value;
    problems.push(...outcome.problems);
    return undefined;
  };
  const shares = collect(flourShares(spec.flours));
  const flourMaterials = spec.flours.map((flour, index) =>
    collect(resolveMaterial(flour.name, ["flours", index, "name"], flour.figures, own)),
  );
  const flours = spec.flours.flatMap((flour, index): FormulaLine[] => {
    const material = flourMaterials[index];
    const parts = shares?.parts[index];
    if (material === undefined || parts === undefined) return [];
    const path = ["flours", index];
    const leaves = shares?.written[index] === undefined ? [] : [shares.written[index]];
    return [{ id: `flour.${index + 1}`, role: "flour", name: flour.name, path, material, parts, leaves }];
  });
  const whole = problems.length === 0;
  const factor = whole ? referenceFactor(spec, flours) : undefined;
  const scale: Scaling = { flour: shares?.flour, factor };
  const notes: Note[] = [];
  const replacements: Replacement[] = [];
  const others = otherEntries(spec).map((entry): readonly FormulaLine[] | undefined => {
    const material = collect(resolveMaterial(entry.name, entry.namePath, entry.figures, own));
    if (material === undefined) return undefined;
    const amount = shares === undefined ? undefined : collect(entryParts(entry, material, scale));
    if (amount === undefined) return undefined;
    const line = { id: entry.id, role: entry.role, name: entry.name, path: entry.path, material, ...amount };
    if (entry.replaced === undefined) return [line];
    const replacement = replaceAlkali(line, entry.replaced, own);
    const swapped = collect(replacement);
    if (replacement.ok) notes.push(...replacement.notes);
    if (swapped !== undefined) replacements.push(swapped);
    return swapped?.lines;
  });
  if (problems.length > 0) return refuse(...problems);
  const lines = others.flatMap((entry) => entry ?? []);
  const dusting = lines.find((line) => line.role === "dusting");
  const stated = {
    flours,
    others: lines.filter((line) => line.role !== "dusting"),
    replacements,
    ...(dusting && { dusting }),
    ...(shares?.flour && { writtenFlour: shares.flour }),
    ...(factor && { referenceFactor: factor }),
  };
  return answer(stated, notes);
}

interface Shares {
  readonly parts: readonly Figure[];
  /** Masses of the flours as written, where they are written as masses. */
  readonly written: readonly Figure[];
  readonly flour?: Figure;
}

function flourShares(flours: Spec["flours"]): Outcome<Shares> {
  const amounts = flours.map((flour) => flour.amount);
  const masses = amounts.filter((amount): amount is Quantity => amount !== "rest" && amount.dimension === "mass");
  const percents = amounts.filter((amount): amount is Quantity => amount !== "rest" && amount.dimension === "share");
  const rests = amounts.filter((amount) => amount === "rest").length;
  const path = ["flours"] as const;
  if (masses.length > 0 && percents.length > 0) {
    const expected = "all flours in %, or all in masses";
    return refuse(inputProblem("flours.mixed-amounts", path, "flours in % and in masses", expected, "write one way"));
  }
  if (rests > 1) {
    return refuse(
      inputProblem(
        "flours.rest-twice",
        path,
        `${rests} flours written as rest`,
        "at most one rest",
        "give their shares",
      ),
    );
  }
  if (masses.length > 0) {
    if (rests > 0) {
      const advice = "write its mass";
      return refuse(
        inputProblem("flours.rest-with-masses", path, "masses and a rest", "a mass for every flour", advice),
      );
    }
    return writtenShares(flours, masses);
  }
  const total = sum(percents.map((amount) => dec(amount.value)));
  const fits = rests === 0 ? total.eq(HUNDRED) : total.lt(HUNDRED);
  if (!fits) {
    const off = HUNDRED.minus(total);
    return refuse(
      inputProblem(
        "flours.shares-total",
        path,
        `shares that total ${decimalText(total)} %${rests > 0 ? " before the rest" : ""}`,
        rests > 0 ? "shares below 100 % beside a rest" : "shares that total 100 %",
        off.isNegative()
          ? `take ${decimalText(off.negated())} % away`
          : rests > 0
            ? "leave something for the rest, or remove it"
            : `add ${decimalText(off)} %, or write one flour as \`amount: rest\``,
      ),
    );
  }
  return answer({ parts: flours.map((flour, index) => percentShare(flour, index, percents)), written: [] });
}

function percentShare(flour: Spec["flours"][number], index: number, percents: readonly Quantity[]): Figure {
  const naming = { id: `flour.${index + 1}.parts`, label: flour.name, unit: "% of flour", places: 2 };
  if (flour.amount !== "rest") {
    return given({ ...naming, value: flour.amount.value, by: `spec, ${flour.amount.text}`, sources: [fromSpec] });
  }
  const formula = ["100", ...percents.map((_, other) => `share${other}`)].join(" - ");
  const from = Object.fromEntries(percents.map((amount, other) => [`share${other}`, amount.value]));
  return worked({ ...naming, formula, from, sources: [definition] });
}

function writtenShares(flours: Spec["flours"], masses: readonly Quantity[]): Outcome<Shares> {
  const total = sum(masses.map((mass) => dec(mass.value)));
  if (total.isZero()) {
    return refuse(inputProblem("flours.none", ["flours"], "no flour at all", "flour above zero", "write its mass"));
  }
  const figures = masses.map((mass, index) =>
    given({
      id: `flour.${index + 1}.written`,
      label: `${flours[index]?.name ?? "flour"} as written`,
      unit: "g",
      places: 1,
      value: mass.value,
      by: `spec, ${mass.text}`,
      sources: [fromSpec],
    }),
  );
  const flour = worked({
    id: "flour.written",
    label: "flour as written",
    unit: "g",
    places: 1,
    formula: "sum(flour)",
    from: { flour: figures },
    sources: [definition],
  });
  const parts = figures.map((mass, index) =>
    worked({
      id: `flour.${index + 1}.parts`,
      label: flours[index]?.name ?? "flour",
      unit: "% of flour",
      places: 2,
      formula: "100 * mass / flour",
      from: { mass, flour },
      sources: [definition],
    }),
  );
  return answer({ parts, written: figures, flour });
}

/** Constant dry matter: what 100 of the flour at hand is worth in flour of the reference moisture, over 100. */
const dryMatter: Source = {
  cite: "constant flour dry matter, mass (100 − M) the same on both moistures",
  standing: "definition",
};

function referenceFactor(spec: Partial<Spec>, flours: readonly FormulaLine[]): Figure | undefined {
  const reference = spec.water?.onFlourMoisture;
  if (reference === undefined) return undefined;
  return worked({
    id: "flour.reference-factor",
    label: "flour at hand over flour of the stated moisture",
    unit: "",
    places: 5,
    formula: "(100 - sum(share * moisture) / 100) / (100 - reference)",
    from: {
      share: flours.map((line) => line.parts),
      moisture: flours.map(moistureFigure),
      reference: reference.value,
    },
    sources: [dryMatter],
  });
}

/** Moisture of a line's material as a figure. */
export function moistureFigure(line: FormulaLine): Figure {
  const figure = given({
    id: `${line.id}.moisture`,
    label: `moisture of ${line.name}`,
    unit: "%",
    places: 2,
    value: line.material.moisture,
    by: "as stated for the material",
    sources: [line.material.figureSources.moisture],
  });
  const range = line.material.ranges?.moisture;
  return range === undefined ? figure : { ...figure, range };
}

interface Entry {
  readonly id: string;
  readonly role: Role;
  readonly name: string;
  readonly path: Path;
  readonly namePath: Path;
  readonly amount: Quantity;
  readonly as: NonNullable<SpecAlkali["as"]>;
  readonly figures: SpecAlkali["figures"];
  /** The entry of an alkaline product that is to be replaced. */
  readonly replaced: SpecAlkali | undefined;
}

function otherEntries(spec: Partial<Spec>): readonly Entry[] {
  const entry = (
    id: string,
    role: Role,
    path: Path,
    item: {
      readonly name: string;
      readonly amount: Quantity;
      readonly as?: Entry["as"] | undefined;
      readonly figures?: Entry["figures"];
    },
    replaced?: SpecAlkali,
  ): Entry => ({
    id,
    role,
    name: item.name,
    path,
    namePath: [...path, "name"],
    amount: item.amount,
    as: item.as ?? "product",
    figures: item.figures,
    replaced,
  });
  return [
    ...(spec.alkali ?? []).map((item, index) => {
      const replaced = item.replaceWith === undefined && item.holding === undefined ? undefined : item;
      return entry(`alkali.${index + 1}`, "alkali", ["alkali", index], item, replaced);
    }),
    ...(spec.salt === undefined ? [] : [entry("salt", "salt", ["salt"], { name: "table salt", amount: spec.salt })]),
    ...(spec.ingredients ?? []).map((item, index) =>
      entry(`ingredient.${index + 1}`, "ingredient", ["ingredients", index], item),
    ),
    ...(spec.dusting === undefined ? [] : [entry("dusting", "dusting", ["dusting"], spec.dusting)]),
  ];
}

interface Scaling {
  readonly flour: Figure | undefined;
  readonly factor: Figure | undefined;
}

/** An amount as % of flour: the text of its formula and what it is fed with. */
function amountTerm(
  amount: Quantity,
  path: Path,
  scale: Scaling,
): Outcome<{ formula: string; from: Record<string, Figure | string> }> {
  if (amount.dimension !== "mass") {
    const formula = scale.factor === undefined ? "stated" : "stated * factor";
    return answer({ formula, from: { stated: amount.value, ...(scale.factor && { factor: scale.factor }) } });
  }
  if (scale.flour === undefined) {
    return refuse(
      inputProblem(
        "amounts.mass-without-flour-mass",
        path,
        `${amount.text}, while the flours are in %`,
        "an amount in % of flour",
        "write it in % of flour, or write every flour as a mass",
      ),
    );
  }
  const formula = scale.factor === undefined ? "100 * stated / flour" : "100 * stated / flour * factor";
  return answer({
    formula,
    from: { stated: amount.value, flour: scale.flour, ...(scale.factor && { factor: scale.factor }) },
  });
}

type Amount = Pick<FormulaLine, "parts" | "leaves">;

function entryParts(entry: Entry, material: KitchenMaterial, scale: Scaling): Outcome<Amount> {
  const naming = { id: `${entry.id}.parts`, label: entry.name, unit: "% of flour", places: 2 };
  const term = amountTerm(entry.amount, [...entry.path, ...(entry.role === "salt" ? [] : ["amount"])], scale);
  if (!term.ok) return term;
  const { formula, from } = term.value;
  const { composition } = material;
  const plain = (): Amount => ({
    parts:
      formula === "stated"
        ? given({ ...naming, value: entry.amount.value, by: `spec, ${entry.amount.text}`, sources: [fromSpec] })
        : worked({ ...naming, formula, from, sources: [massBalance] }),
    leaves: [],
  });
  if (entry.role !== "alkali") return answer(plain());
  if (composition === undefined) {
    return refuse(notAlkaline(entry.name, entry.namePath));
  }
  const meq = entry.amount.dimension === "alkalinity";
  if (entry.as === "product" && !meq) return answer(plain());
  const strength = entry.as === "anhydrous salts" ? anhydrousShare(composition) : alkalinityM(composition);
  if (strength.lte(ZERO)) {
    return refuse(
      inputProblem(
        "alkali.no-strength",
        entry.namePath,
        `"${entry.name}", which has no ${entry.as === "anhydrous salts" ? "alkaline salts" : "alkalinity"}`,
        "a product that can give the dose",
        "take another product or state the dose as product",
      ),
    );
  }
  return answer(doseFigure(naming, entry, { formula, from, meq, strength }));
}

interface Dose {
  readonly formula: string;
  readonly from: Record<string, Figure | string>;
  readonly meq: boolean;
  readonly strength: Decimal;
}

function doseFigure(naming: Pick<Figure, "id" | "label" | "unit" | "places">, entry: Entry, dose: Dose): Amount {
  if (entry.as === "anhydrous salts" && !dose.meq) {
    const anhydrous = given({
      id: `${entry.id}.anhydrous-share`,
      label: `anhydrous salts in ${entry.name}`,
      unit: "%",
      places: 2,
      value: dose.strength,
      by: "composition of the product",
      sources: [massBalance],
    });
    const formula = `(${dose.formula}) * 100 / anhydrous`;
    const parts = worked({ ...naming, formula, from: { ...dose.from, anhydrous }, sources: [massBalance] });
    return { parts, leaves: [anhydrous] };
  }
  const alkalinity = given({
    id: `${entry.id}.strength`,
    label: `alkalinity of ${entry.name}`,
    unit: "meq/g",
    places: 3,
    value: dose.strength,
    by: "composition of the product, molar masses",
    sources: [massBalance],
  });
  if (dose.meq) {
    const formula = `(${dose.formula}) / alkalinity`;
    const parts = worked({ ...naming, formula, from: { ...dose.from, alkalinity }, sources: [massBalance] });
    return { parts, leaves: [alkalinity] };
  }
  const soda = given({
    id: "sodium-carbonate.strength",
    label: "alkalinity of sodium carbonate",
    unit: "meq/g",
    places: 3,
    value: alkalinityM(pure("Na2CO3")),
    by: "molar mass",
    sources: [atomicWeightSource],
  });
  const formula = `(${dose.formula}) * soda / alkalinity`;
  const parts = worked({ ...naming, formula, from: { ...dose.from, soda, alkalinity }, sources: [massBalance] });
  return { parts, leaves: [soda, alkalinity] };
}
