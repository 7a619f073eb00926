import { type Figure, summed, worked } from "../figure/figure.ts";
import { definition } from "../figure/source.ts";
import type { FormulaLine } from "./line.ts";
import { ofDough, ofFlour } from "./naming.ts";
import { carriedWater, type WaterBalance } from "./water.ts";

/** What each ingredient is of the dough, and the water that it brings; for the whole dough, too. */
export interface DoughTable {
  /** In the order of the lines of the formula. */
  readonly lines: readonly InDough[];
  readonly whole: InDough;
}

/** One line of the table of the dough. */
export interface InDough {
  /** % of dough. */
  readonly share: Figure;
  /** % of flour. */
  readonly water: Figure;
}

/** Works out the shares of a dough and where its water comes from. */
export function doughTable(lines: readonly FormulaLine[], { dough, flour, added }: WaterBalance): DoughTable {
  const rows = lines.map((line): InDough => {
    const share = worked(
      ofDough(`${line.id}.dough-share`, `${line.name}, share of the dough`),
      "100 * parts / dough",
      { parts: line.parts, dough },
      definition,
    );
    return { share, water: line.role === "water" ? line.parts : carriedWater(line) };
  });
  const share = summed(ofDough("dough.share", "whole dough"), { share: rows.map((one) => one.share) }, definition);
  const water = worked(ofFlour("dough.water-parts", "all water"), "flour + added", { flour, added }, definition);
  return { lines: rows, whole: { share, water } };
}
