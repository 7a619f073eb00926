import * as z from "zod/mini";
import { frozen } from "../figure/frozen.ts";
import type { Outcome } from "../figure/problem.ts";
import { described } from "../materials/fields.ts";
import { readBy } from "../spec/read-spec.ts";

/** Reads what is wished beside a noodle; what is wrong with it where no compiler told is told as of a spec. */
export function readWish<Wish>(schema: z.ZodMiniType<Wish>, wish: unknown): Outcome<Wish> {
  const outcome = readBy(schema, wish);
  return outcome.ok ? outcome : frozen(outcome);
}

/** A text in a wish, with what it means and an example. */
export function wishedText(description: string, example: string) {
  return described(z.string(), { description, examples: [example] });
}
