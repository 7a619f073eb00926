import { inputProblem, type Path, type Problem } from "../figure/problem.ts";

/** The problem of an alkaline product whose composition nobody stated. */
export function notAlkaline(name: string, path: Path): Problem {
  return inputProblem(
    "alkali.no-composition",
    path,
    `"${name}"`,
    "an alkaline product, whose composition is known",
    "give its composition under `figures:`, or list it under `ingredients:`",
  );
}
