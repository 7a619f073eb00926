import type { Problem } from "../figure/problem.ts";

/** A report in one form, or why it has no such form. */
export type Rendering =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: Problem };
