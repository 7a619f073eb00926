import type { Product } from "../chemistry/carried.ts";
import {
  alkalinityM,
  alkalinityP,
  anhydrousShare,
  type Composition,
  isSesquicarbonate,
  sharesOf,
} from "../chemistry/composition.ts";
import { kansuiStandard } from "../chemistry/food-limits.ts";
import { additivesIn, hazardOf } from "../chemistry/hazard.ts";
import { species } from "../chemistry/species.ts";
import { citation } from "../figure/source.ts";
import type { KnownProduct } from "../materials/known-products.ts";
import { dec } from "../number/decimal.ts";
import { alkaliCautions, allLimits } from "./alkali-blocks.ts";
import { listing, numberColumn, report, section, wordColumn } from "./build.ts";
import type { Report, Table } from "./schema.ts";
import { alkalinityEnds, numberCell } from "./show.ts";

/** Lists the alkaline salts with their strength, additive numbers and hazard, and the limits that name them. */
export function alkaliListReport(products: readonly KnownProduct[], asked: string): Report {
  const compositions = products.map(({ composition }) => composition);
  const [limits, ...notKnown] = allLimits(compositions);
  return report({
    command: "alkali list",
    title: asked === "" ? "Alkaline salts and what goes with them" : `Alkaline salts: ${asked}`,
    main: "salts",
    sections: [
      section("salts", "Salts, as pure products", saltsTable(products), [alkalinityEnds]),
      section("hazard", "Additive numbers and hazard class", hazardTable(products)),
      section("limits", "Limits that name them", limits, [...notKnown, ...allowance(compositions)]),
    ],
    cautions: alkaliCautions(compositions),
  });
}

function saltsTable(products: readonly KnownProduct[]): Table {
  return listing("salts", products, [
    [wordColumn("name", "name"), ({ name }) => name],
    [wordColumn("formula", "formula"), ({ formula }) => formula],
    [numberColumn("anhydrous", "salts %"), ({ composition }) => numberCell(anhydrousShare(composition), "%", 2)],
    [numberColumn("water", "water %"), ({ composition }) => numberCell(dec(composition.water), "%", 2)],
    [numberColumn("m", "alkalinity M meq/g"), ({ composition }) => numberCell(alkalinityM(composition), "meq/g", 3)],
    [numberColumn("p", "alkalinity P meq/g"), ({ composition }) => numberCell(alkalinityP(composition), "meq/g", 3)],
  ]);
}

function hazardTable(products: readonly Product[]): Table {
  const numbers = ({ composition }: Product, book: "ins" | "eu") =>
    additivesIn(composition)
      .map((additive) => additive[book])
      .join(", ") || "–";
  const codesOf = ({ composition }: Product) => hazardOf(composition).statements.map(({ code }) => code);
  const signalOf = ({ composition }: Product) => hazardOf(composition).signal;
  return listing("hazard", products, [
    [wordColumn("name", "name"), ({ name }) => name],
    [wordColumn("ins", "INS"), (product) => numbers(product, "ins")],
    [wordColumn("eu", "E number"), (product) => numbers(product, "eu")],
    [wordColumn("signal", "signal word"), (one) => (signalOf(one) === "none" ? "not classified" : signalOf(one))],
    [wordColumn("codes", "statements"), (one) => codesOf(one).join(" ")],
  ]);
}

function allowance(compositions: readonly Composition[]): readonly string[] {
  const others = new Set(
    compositions.flatMap((composition) =>
      isSesquicarbonate(composition)
        ? ["sodium sesquicarbonate"]
        : sharesOf(composition)
            .map(([name]) => name)
            .filter((name) => species[name].kansui === "not named"),
    ),
  );
  const left = others.size === 0 ? "It names all of these." : `It does not name ${[...others].join(", ")}.`;
  return [`${citation(kansuiStandard)}. ${left}`, "Check the local code: limits differ between countries and change."];
}
