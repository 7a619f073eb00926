import { type Path, type Problem, problem } from "../figure/problem.ts";

/** The problem of an alkaline product whose composition nobody stated. */
export function notAlkaline(name: string, path: Path): Problem {
  return problem("alkali.no-composition", path, { name });
}
