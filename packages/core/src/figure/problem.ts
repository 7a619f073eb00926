/** Steps from the root of a spec to the place that is meant. */
export type Path = readonly (string | number)[];

/** Something that keeps an answer from being given. It is data: only bugs throw. */
export interface Problem {
  /** Stable code of the kind `area.what`, such as `flours.shares-total`. */
  readonly code: string;
  /** `input`: the spec or the flags are wrong. `no-answer`: they are right, and what they ask cannot be had. */
  readonly kind: "input" | "no-answer";
  readonly path: Path;
  /** What was found there, in words. */
  readonly found: string;
  /** What would have been right. */
  readonly expected: string;
  /** What to do. */
  readonly advice: string;
}

/** Something worth knowing that does not keep the answer from being given. */
export interface Note {
  readonly code: string;
  readonly path: Path;
  readonly text: string;
  /** To be said before anything else: somebody may come to harm, or the answer may not be what was asked for. */
  readonly loud?: true;
}

/** An answer with its notes, or all the problems that stand in its way. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T; readonly notes: readonly Note[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Makes the answer. */
export function answer<T>(value: T, notes: readonly Note[] = []): Outcome<T> {
  return { ok: true, value, notes };
}

/** Makes the refusal. */
export function refuse(...problems: readonly Problem[]): Outcome<never> {
  return { ok: false, problems };
}

/** Builds a problem with what the spec says. */
export function inputProblem(code: string, path: Path, found: string, expected: string, advice: string): Problem {
  return { code, kind: "input", path, found, expected, advice };
}

/** Builds a problem for a question that has no answer. */
export function noAnswer(code: string, path: Path, found: string, expected: string, advice: string): Problem {
  return { code, kind: "no-answer", path, found, expected, advice };
}

/** Writes a path the way people say it. @example pathText(["flours", 0, "amount"]) // => "flours[0].amount" */
export function pathText(path: Path): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === "number") return `${text}[${step}]`;
    const name = /^[\w-]+$/u.test(step) ? step : `"${step}"`;
    return text === "" ? name : `${text}.${name}`;
  }, "");
}
