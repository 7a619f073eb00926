import type { Reading, StatedStrength } from "@noodlewright/core/chemistry";
import { ownProblem } from "../../input/problem.ts";
import type { Asking } from "./asking.ts";

/** What a hydrometer or a density meter shows, and how far it may be off, in its unit; undefined where no reading is given. */
export function readingOf(ask: Asking) {
  if (ask.text("reading") === undefined) return undefined;
  const reading = ask.strength("reading");
  if (reading.measure !== "density" && reading.measure !== "degrees-baume") {
    ask.wrong("--reading", ownProblem("strength.reading", { written: `"${ask.text("reading")}"` }));
    return undefined;
  }
  const error = ask.text("error") === undefined ? undefined : ask.strength("error");
  if (error !== undefined && error.measure !== reading.measure) {
    ask.wrong("--error", ownProblem("strength.error", { written: `"${ask.text("error")}"` }));
  }
  const usual = reading.measure === "density" ? "0.001" : "0.2";
  return { reading: asReading(reading), error: error?.value ?? usual };
}

function asReading(stated: StatedStrength): Reading {
  if (stated.measure === "degrees-baume") return stated;
  const { value, temperature } = stated;
  return { measure: "density", value, ...(temperature !== undefined && { temperature }) };
}
