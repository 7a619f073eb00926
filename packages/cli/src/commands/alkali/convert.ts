import {
  alkaliBeyond,
  convert,
  convertReport,
  equivalentsIn,
  gramsOf,
  type Held,
  hundredOfFlour,
  onFlour,
  type Product,
  percentOf,
  saltsIn,
} from "@noodlewright/core/chemistry";
import { answer, fixedText, problem, type Quantity } from "@noodlewright/core/figure";
import { ownProblem } from "../../input/problem.ts";
import type { Asking } from "./asking.ts";
import { memberFlags, productHelp } from "./flags.ts";
import { member } from "./member.ts";

/** Salts of a dose that are believed to be meant, % of flour. */
const mostSalts = 50;

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
    dose: {
      describe: "Dose to swap: a mass, % of flour, or the volume of a solution",
      kind: "text",
      placeholder: "45 g",
    },
    holding: {
      describe: "What to hold exactly",
      kind: "text",
      choices: Object.keys(held),
      fallback: "alkalinity M",
    },
    flour: { describe: "Flour that the dose is for; 100 g for a dose in %", kind: "text", placeholder: "5 kg" },
    water: {
      describe: "Water of the dough but the flour's own; with it the pH is estimated",
      kind: "text",
      placeholder: "36 %",
    },
    salt: { describe: "Table salt in that water", kind: "text", placeholder: "1 %" },
    ...memberFlags,
  },
  examples: [
    [
      "noodlewright alkali convert 'Na2CO3 60 %, K2CO3 40 %' 'sodium carbonate' 'potassium carbonate' --dose '45 g'",
      "a powder of one ratio to the two pure salts",
    ],
    [
      "noodlewright alkali convert 'K2CO3 6, Na2CO3 4 at 30 °Bé' 'sodium carbonate' --dose '3 %' --water '36 %'",
      "a bottle of solution to powder, on 100 g of flour",
    ],
    [
      "noodlewright alkali convert 'sodium carbonate' 'baking soda' --dose '1 %' --water '36 %'",
      "and what is not kept",
    ],
  ],
  read: (ask) => {
    const stated = ask.quantity("dose", ["mass", "share", "volume"]);
    const unit = stated.dimension === "share" ? "%" : "g";
    const ofIt = stated.dimension === "volume" ? undefined : ({ text: stated.text, unit, ofIt: stated.value } as const);
    const from = ask.product(ask.text("from"), "<from>", ofIt);
    const dose = weighed(stated, from, ask);
    const water = ask.maybe("water", ["share", "mass"]);
    const salt = ask.maybe("salt", ["share", "mass"]);
    const ofWhat = ask.maybe("flour", ["mass"])?.value;
    const ofFlour = [dose, water, salt].some((amount) => amount?.dimension === "share");
    const flour = ofWhat ?? (ofFlour ? hundredOfFlour : undefined);
    const [first, second, third] = ask.list("to");
    if (third !== undefined) {
      ask.wrong("<to>", ownProblem("convert.products", {}));
    }
    if (second !== undefined && second === first) {
      ask.wrong("<to>", ownProblem("convert.products", { twice: second }));
    }
    const wanted = {
      text: `the alkalinity of ${dose.text} ${from.name}`,
      unit,
      meq: equivalentsIn(from.composition, dose.value),
    } as const;
    const product = (name: string | undefined): Product =>
      ask.product(name, "<to>", from.name === "" ? undefined : wanted);
    const one = product(first);
    const to: readonly [Product] | readonly [Product, Product] = second === undefined ? [one] : [one, product(second)];
    const parts = flour && percentOf(onFlour(dose, flour), flour);
    if (parts !== undefined && Number(saltsIn(from.composition, parts)) > mostSalts) {
      ask.wrong(
        "--dose",
        problem("quantity.out-of-range", [], {
          written: `"${dose.text}", ${fixedText(parts, 1)} % of flour`,
          limits: `salts of at most ${mostSalts} % of flour`,
        }),
      );
    }
    const grams = (amount: typeof dose): string => onFlour(amount, flour ?? hundredOfFlour);
    return {
      from: { ...from, mass: grams(dose) },
      to,
      hold: held[ask.text("holding") ?? ""] ?? "M",
      temperature: ask.temperature,
      flour,
      units: ask.units,
      ...(water && { doughWater: grams(water) }),
      ...(salt && { doughSalt: grams(salt) }),
    };
  },
  answer: ({ units, ...question }) => {
    const swapped = convert(question);
    if (!swapped.ok) return swapped;
    const { from, flour } = question;
    const salts = saltsIn(from.composition, from.mass);
    const notes = flour === undefined ? [] : alkaliBeyond(percentOf(salts, flour));
    return answer(convertReport(question, swapped.value, [...notes, ...swapped.notes], units));
  },
});

/** A dose in mL by what it weighs at the working temperature. */
function weighed(dose: Quantity, { name, composition }: Product, ask: Asking): Quantity {
  if (dose.dimension !== "volume" || name === "") return dose;
  const mass = gramsOf(composition, { millilitres: dose.value }, ask.temperature);
  if (!mass.ok) {
    ask.wrong("--dose", ...mass.problems);
  }
  return { text: dose.text, dimension: "mass", value: mass.ok ? mass.value : "1", unit: "g" };
}
