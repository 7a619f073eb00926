import type { Figure } from "@noodlewright/core/figure";

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null;
}

function isFigure(value: unknown): value is Figure {
  return isRecord(value) && "id" in value && "value" in value && "working" in value;
}

/** Everything in a result, with the key it stands under, whatever the depth. */
export function* everythingIn(value: unknown, key = ""): Generator<readonly [key: string, value: unknown]> {
  yield [key, value];
  if (!isRecord(value)) return;
  for (const [inner, part] of Object.entries(value)) yield* everythingIn(part, Array.isArray(value) ? key : inner);
}

/** Every figure in a result. */
export function figuresIn(value: unknown): readonly Figure[] {
  return [...everythingIn(value)].flatMap(([, part]) => (isFigure(part) ? [part] : []));
}
