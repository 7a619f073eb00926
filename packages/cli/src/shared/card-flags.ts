import { problem } from "@noodlewright/core/figure";
import { isDay, type Paper } from "@noodlewright/core/render";
import type { PlacedProblem } from "../input/placed-problem.ts";
import type { Io } from "../io.ts";
import type { Asked, Flag } from "./command.ts";

/** Flags of every command that prints cards. */
export const cardFlags = {
  paper: { describe: "Paper", about: "answer", choices: ["a4", "letter"], fallback: "a4" },
  date: { describe: "Date on the card; today unless given", placeholder: "2026-11-25" },
  units: { describe: "Units to speak in", about: "answer", choices: ["metric", "us"], fallback: "metric" },
} as const satisfies Readonly<Record<string, Flag>>;

/** The paper asked for. */
export function paperOf(asked: Asked): Paper {
  return asked.text("paper") === "letter" ? "letter" : "a4";
}

export type DateReading =
  | { readonly ok: true; readonly date: string }
  | { readonly ok: false; readonly problem: PlacedProblem };

/** The date asked for, or today. */
export function dateOf(asked: Asked, io: Io): DateReading {
  const text = asked.text("date");
  if (text === undefined) return { ok: true, date: io.today() };
  if (isDay(text)) return { ok: true, date: text };
  return { ok: false, problem: { ...problem("card.date", [], { written: `"${text}"` }), flag: "--date" } };
}
