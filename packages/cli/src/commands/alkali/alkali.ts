import type { Command, Group, Member } from "../../shared/command.ts";
import { assayCommand } from "./assay.ts";
import { bakeCommand } from "./bake.ts";
import { blendCommand } from "./blend.ts";
import { convertCommand } from "./convert.ts";
import { correctCommand } from "./correct.ts";
import { diluteCommand } from "./dilute.ts";
import { listCommand } from "./list.ts";
import { makeCommand } from "./make.ts";
import { stockCommand } from "./stock.ts";
import { strengthCommand } from "./strength.ts";

const named = (usage: string, describe: string, command: Command): Member => ({ usage, describe, command });

/** `noodlewright alkali`: everything about the alkaline salts that needs no spec. */
export const alkaliCommands: Group = {
  commands: [
    named("convert <from> <to..>", "Swap a dose of one product for another, or for a pair", convertCommand),
    named("make <products..>", "Make up a solution of products at hand", makeCommand),
    named("dilute <stock>", "Bring a stock down to a strength", diluteCommand),
    named("blend <one> <other>", "Blend two stocks to a strength and a ratio", blendCommand),
    named("correct <batch> <salts>", "Mend a solution that came out too strong or too weak", correctCommand),
    named("strength <product>", "Strength in every measure, from a reading or any of them", strengthCommand),
    named("bake", "Bicarbonate in the oven: how far it went, and the dose of it", bakeCommand),
    named("assay <salts>", "Composition from a certificate, a label or a titration", assayCommand),
    named("stock [product]", "A solution to keep, so that little can be weighed", stockCommand),
    named("list [words..]", "The salts: strength, additive numbers, hazard, limits", listCommand),
  ],
};
