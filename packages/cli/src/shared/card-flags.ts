import { problem } from "@noodlewright/core/figure";
import { isDay, type Paper } from "@noodlewright/core/render";
import type { Placed } from "../input/placed-problem.ts";
import type { Io } from "../io.ts";
import type { Asked, Flag } from "./command.ts";
import { reportFlags } from "./flags.ts";

/** Flags of every command that prints cards. */
export const cardFlags = {
  paper: { describe: "Paper", about: "answer", choices: ["a4", "letter"], fallback: "a4" },
  date: { describe: "Date on the card; today unless given", placeholder: "2026-11-25" },
  units: reportFlags.units,
} as const satisfies Readonly<Record<string, Flag>>;

/** The paper asked for. */
export function paperOf(asked: Asked): Paper {
  return asked.text("paper") === "letter" ? "letter" : "a4";
}

/** The date asked for, or today. */
export function dateOf(asked: Asked, io: Io): Placed<{ date: string }> {
  const text = asked.text("date");
  if (text === undefined) return { ok: true, date: io.today() };
  if (isDay(text)) return { ok: true, date: text };
  return { ok: false, problems: [{ ...problem("card.date", [], { written: `"${text}"` }), flag: "--date" }] };
}
