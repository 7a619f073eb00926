import type { Noodle } from "@noodlewright/core";
import {
  convert,
  convertReport,
  equivalentsIn,
  gramsOf,
  type Held,
  hundredOfFlour,
  onFlour,
  type Product,
  type Weighed,
} from "@noodlewright/core/chemistry";
import { answer, type Quantity } from "@noodlewright/core/figure";
import { type SpecChange, type Swapped, standingDose } from "@noodlewright/core/spec";
import { ownProblem } from "../../input/problem.ts";
import { setFlag } from "../../shared/flags.ts";
import { writeFlags } from "../../shared/write-spec.ts";
import type { Asking } from "./asking.ts";
import { memberFlags, productHelp } from "./flags.ts";
import { member } from "./member.ts";

const held: Readonly<Record<string, Held>> = {
  "anhydrous salts": "anhydrous",
  "alkalinity M": "M",
  "alkalinity P": "P",
  "sodium and potassium": "cations",
};

/** `noodlewright alkali convert`: one product for another, or for a pair. */
export const convertCommand = member({
  positionals: {
    from: `The product that the formula names: ${productHelp}`,
    to: "One product to take in its place, or two, which hold both alkalinities where they can, or else the ratio of sodium to potassium as well",
  },
  flags: {
    dose: { describe: "Dose to swap: a mass, % of flour, or the volume of a solution", placeholder: "45 g" },
    holding: { describe: "What to hold exactly", choices: Object.keys(held), fallback: "alkalinity M" },
    flour: { describe: "Flour that the dose is for; 100 g for a dose in %", placeholder: "5 kg" },
    water: { describe: "Water of the dough but the flour's own; with it the pH is estimated", placeholder: "36 %" },
    salt: { describe: "Table salt in that water", placeholder: "1 %" },
    spec: {
      describe: "Spec with the product in its dough: dose, water and salt come from it",
      placeholder: "noodle.yaml",
    },
    ...writeFlags,
    ...setFlag,
    ...memberFlags,
  },
  examples: {
    "noodlewright alkali convert 'Na2CO3 60 %, K2CO3 40 %' 'sodium carbonate' 'potassium carbonate' --dose '45 g'":
      "a powder of one ratio to the two pure salts",
    "noodlewright alkali convert 'K2CO3 6, Na2CO3 4 at 30 °Bé' 'sodium carbonate' --dose '3 %' --water '36 %'":
      "a bottle of solution to powder, on 100 g of flour",
    "noodlewright alkali convert 'sodium carbonate' 'baking soda' --dose '1 %' --water '36 %'": "and what is not kept",
    "noodlewright alkali convert 'sodium carbonate' 'baking soda' --spec noodle.yaml --write":
      "the dose of a spec, and the new one written into it",
  },
  read: (ask, noodle) => {
    const asked = noodle === undefined ? saidDose(ask) : doseOf(noodle, ask);
    const { written, product: from, unit, dose, flour, water, salt } = asked;
    const [first, second, third] = ask.list("to");
    if (third !== undefined) ask.wrong("<to>", ownProblem("convert.products", {}));
    if (second !== undefined && second === first) ask.wrong("<to>", ownProblem("convert.products", { twice: second }));
    const meq = equivalentsIn(from.composition, from.mass);
    const wanted = { text: `the alkalinity of ${dose} ${from.name}`, unit, meq } as const;
    const product = (name: string | undefined): Product =>
      ask.product(name, "<to>", from.name === "" ? undefined : wanted);
    const one = product(first);
    const to: readonly [Product] | readonly [Product, Product] = second === undefined ? [one] : [one, product(second)];
    return () => {
      const question = {
        from,
        to,
        hold: held[ask.text("holding") ?? ""] ?? "M",
        temperature: ask.temperature,
        flour,
        ...(water && { doughWater: water }),
        ...(salt && { doughSalt: salt }),
      };
      const swapped = convert(question);
      if (!swapped.ok) return swapped;
      const names = to.map(({ name }) => name);
      return {
        ...answer(convertReport(question, swapped.value, swapped.notes, ask.units)),
        changes: written?.(names, swapped.value) ?? [],
      };
    };
  },
});

/** A dose to be converted, and the flour, water and salt beside it, g. */
interface Dose {
  /** What other products change where it stands in a spec. */
  readonly written?: (names: readonly string[], swapped: Swapped) => readonly SpecChange[];
  readonly product: Weighed;
  /** As it was said. */
  readonly dose: string;
  readonly unit: "%" | "g";
  readonly flour: string | undefined;
  readonly water: string | undefined;
  readonly salt: string | undefined;
}

/** The dose that the flags say. */
function saidDose(ask: Asking): Dose {
  const stated = ask.quantity("dose", ["mass", "share", "volume"]);
  const unit = stated.dimension === "share" ? "%" : "g";
  const ofIt = stated.dimension === "volume" ? undefined : ({ text: stated.text, unit, ofIt: stated.value } as const);
  const from = ask.product(ask.text("from"), "<from>", ofIt);
  const dose = weighed(stated, from, ask);
  const [water, salt] = [ask.maybe("water", ["share", "mass"]), ask.maybe("salt", ["share", "mass"])];
  const ofFlour = [dose, water, salt].some((amount) => amount?.dimension === "share");
  const flour = ask.maybe("flour", ["mass"])?.value ?? (ofFlour ? hundredOfFlour : undefined);
  const grams = (amount: Quantity): string => onFlour(amount, flour ?? hundredOfFlour);
  return {
    product: { ...from, mass: grams(dose) },
    dose: dose.text,
    unit,
    flour,
    water: water && grams(water),
    salt: salt && grams(salt),
  };
}

/** The dose that stands in a spec, on its flour in g, or on 100 g where that is in %. */
function doseOf(noodle: Noodle, ask: Asking): Dose {
  for (const flag of ["dose", "flour", "water", "salt"])
    if (ask.text(flag) !== undefined) ask.wrong(`--${flag}`, ownProblem("flag.beside-spec", {}));
  const standing = standingDose(noodle, ask.text("from") ?? "");
  if (!standing.ok) ask.wrong("<from>", ...standing.problems);
  const { product, doughWater, doughSalt, flour } = standing.ok ? standing.value : nothingStands;
  const unit = flour === undefined ? "%" : "g";
  return {
    ...(standing.ok && { written: standing.changes }),
    product,
    dose: `${Number(Number(product.mass).toPrecision(4))} ${unit}`,
    unit,
    flour: flour ?? hundredOfFlour,
    water: doughWater,
    salt: doughSalt,
  };
}

const nothingStands = {
  product: { name: "", composition: { species: { Na2CO3: "100" }, water: "0", inert: "0" }, mass: "1" },
  doughWater: "0",
  doughSalt: "0",
  flour: undefined,
};

/** A dose in mL by what it weighs at the working temperature. */
function weighed(dose: Quantity, { name, composition }: Product, ask: Asking): Quantity {
  if (dose.dimension !== "volume" || name === "") return dose;
  const mass = gramsOf(composition, { millilitres: dose.value }, ask.temperature);
  if (!mass.ok) ask.wrong("--dose", ...mass.problems);
  return { text: dose.text, dimension: "mass", value: mass.ok ? mass.value : "1", unit: "g" };
}
