import { listSalts } from "@noodlewright/core/chemistry";
import { reportFlags } from "../../shared/flags.ts";
import { member } from "./member.ts";

/** `noodlewright alkali list`: the salts, their additive numbers, hazard and limits. */
export const listCommand = member({
  positionals: { words: "Words that the name or formula must have; none lists all" },
  flags: reportFlags,
  examples: {
    "noodlewright alkali list carbonate": "the carbonates and their hydrates",
    "noodlewright alkali list --format csv --table hazard": "additive numbers and hazard of all",
  },
  read: (ask) => () => {
    const salts = listSalts(ask.list("words").join(" "));
    return salts.ok ? { ...salts, value: salts.report() } : salts;
  },
});
