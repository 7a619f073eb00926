import type { Fed, Figure, Ref, Working } from "./figure.ts";
import { frozen, isOfTable } from "./frozen.ts";

/** A figure as it leaves the library. */
export type PlainFigure = Figure<string>;

/** The figures of a result by id, each once, what a figure rests on before it. It survives JSON. */
export type Graph = Readonly<Record<string, PlainFigure>>;

/** A result as it leaves the library: plain data with the graph of all its figures. */
export type Published<T> = T & { readonly graph: Graph };

/** The figures that went straight into a figure, in the order of the names of its formula or of what a procedure looked at. */
export function feedsOf<R>({ working }: Figure<R>): readonly R[] {
  if (working.kind === "procedure") return working.on ?? [];
  if (working.kind === "given") return [];
  const feeds: R[] = [];
  for (const fed of Object.values(working.from)) {
    if ("figure" in fed) feeds.push(fed.figure);
    else if ("figures" in fed) feeds.push(...fed.figures);
  }
  return feeds;
}

/** A working whose references are put anew. */
export function withRefs<R, S>(working: Working<R>, put: (ref: R) => S): Working<S> {
  if (working.kind === "given") return working;
  if (working.kind === "procedure") {
    const { kind, by, on } = working;
    return on === undefined ? { kind, by } : { kind, by, on: on.map(put) };
  }
  const from: Record<string, Fed<S>> = {};
  for (const [name, fed] of Object.entries(working.from)) {
    if ("figure" in fed) from[name] = { figure: put(fed.figure) };
    else from[name] = "figures" in fed ? { figures: fed.figures.map(put) } : fed;
  }
  return { kind: "formula", formula: working.formula, from };
}

/**
 * Figures and all that they rest on, what comes first in the calculation first; of figures with one id the first counts.
 *
 * @param known - graphs of results whose figures may be named by id
 * @throws {RangeError} on an id that no graph knows: a bug of the caller.
 * @example withOrigins([worked({ id: "b", label: "b", unit: "", places: 0, formula: "2 * a", from: { a: given({ id: "a", label: "a", unit: "", places: 0, value: 3, by: "the spec", sources: [] }) }, sources: [] })]).map(({ id }) => id) // => ["a", "b"]
 */
export function withOrigins(figures: readonly Figure[], ...known: readonly Graph[]): readonly Figure[] {
  const kept = new Map<string, Figure>();
  const keep = (figure: Figure): void => {
    if (kept.has(figure.id)) return;
    for (const ref of feedsOf(figure)) {
      if (!kept.has(idOf(ref))) keep(resolved(ref, known));
    }
    kept.set(figure.id, figure);
  };
  for (const figure of figures) keep(figure);
  return [...kept.values()];
}

function resolved(ref: Ref, known: readonly Graph[]): Figure {
  if (typeof ref !== "string") return ref;
  const figure = known.find((graph) => Object.hasOwn(graph, ref))?.[ref];
  if (figure === undefined) throw new RangeError(`no graph knows the figure "${ref}"`);
  return figure;
}

/**
 * The graph of figures: these and all that they rest on.
 *
 * @throws {RangeError} as `withOrigins`
 * @example graphOf([example("school-noodle").formula.water.added], example("school-noodle").formula.graph)["water.added"].value // => "35"
 */
export function graphOf(figures: readonly Figure[], ...known: readonly Graph[]): Graph {
  return Object.fromEntries(withOrigins(figures, ...known).map((figure) => [figure.id, plainFigure(figure)]));
}

/**
 * A figure that names what went into it by id; the same one where it does so already.
 *
 * @example plainFigure(example("school-noodle").formula.water.added).id // => "water.added"
 */
export function plainFigure(figure: Figure): PlainFigure {
  return isPlain(figure) ? figure : { ...figure, working: withRefs(figure.working, idOf) };
}

function isPlain(figure: Figure): figure is PlainFigure {
  return feedsOf(figure).every((ref) => typeof ref === "string");
}

function idOf(ref: Ref): string {
  return typeof ref === "string" ? ref : ref.id;
}

/**
 * A result as plain data: each figure in it names what went into it, and `graph` holds all of them once.
 *
 * @param known - graphs of the results it rests on
 * @throws {RangeError} as `withOrigins`
 */
export function published<T extends object>(result: T, ...known: readonly Graph[]): Published<T> {
  const graph: Record<string, PlainFigure> = {};
  const plain = new Map<Figure, PlainFigure>();
  const plainly = (figure: Figure): PlainFigure => {
    const before = plain.get(figure);
    if (before !== undefined) return before;
    const after = plainFigure(figure);
    // The sources are constants that other results name, too.
    after.sources.forEach(frozen);
    plain.set(figure, after);
    if (Object.hasOwn(graph, figure.id)) return after;
    for (const ref of feedsOf(figure)) {
      if (!Object.hasOwn(graph, idOf(ref))) plainly(resolved(ref, known));
    }
    graph[figure.id] = after;
    return after;
  };
  return { ...withFigures(result, plainly), graph };
}

/** A result with each of its figures put anew. The tables of the library hold none. */
function withFigures<T extends object>(result: T, anew: (figure: Figure) => Figure): T {
  const done = new Map<object, object>();
  const put = (part: unknown): unknown => (typeof part === "object" && part !== null ? putWhole(part) : part);
  const putWhole = (value: object): object => {
    if (isFigure(value)) return anew(value);
    if (isOfTable(value)) return value;
    const before = done.get(value);
    if (before !== undefined) return before;
    const after = Array.isArray(value) ? items(value, put) : parts(value as Readonly<Record<string, unknown>>, put);
    if (after !== value) done.set(value, after);
    return after;
  };
  // `put` changes nothing but the names of the figures and of what went into them
  return put(result) as T;
}

/**
 * A result whose figures, and all that they rest on, are under a name of their own, for several of a kind in one answer.
 *
 * @example underScope("before", { dose: given({ id: "dose", label: "dose", unit: "g", places: 1, value: 3, by: "the spec", sources: [] }) }).dose.id // => "before.dose"
 */
export function underScope<T extends object>(scope: string, result: T): T {
  const all: Figure[] = [];
  withFigures(result, (figure) => {
    all.push(figure);
    return figure;
  });
  const named = new Map(scoped(scope, withOrigins(all)).map((figure) => [figure.id, figure]));
  return withFigures(result, (figure) => named.get(`${scope}.${figure.id}`) ?? figure);
}

/** A list with each of its items put anew; the same one where none changes. */
function items(list: readonly unknown[], put: (item: unknown) => unknown): readonly unknown[] {
  const after = list.map(put);
  return after.every((item, index) => item === list[index]) ? list : after;
}

/** An object with each of its parts put anew; the same one where none changes. */
function parts(value: Readonly<Record<string, unknown>>, put: (part: unknown) => unknown): object {
  let fresh: Record<string, unknown> | undefined;
  for (const key of Object.keys(value)) {
    const after = put(value[key]);
    if (after === value[key]) continue;
    fresh ??= { ...value };
    fresh[key] = after;
  }
  return fresh ?? value;
}

function isFigure(value: object): value is Figure {
  return "working" in value && "places" in value && "id" in value;
}

/**
 * Figures under a name of their own, for two of a kind in one result: `before` makes `before.solution.ph` of `solution.ph`.
 * What they rest on among the figures given is renamed with them.
 *
 * @example scoped("before", [given({ id: "dose", label: "dose", unit: "g", places: 1, value: 3, by: "the spec", sources: [] })])[0]?.id // => "before.dose"
 */
export function scoped(scope: string, figures: readonly Figure[]): readonly Figure[] {
  const ids = new Set(figures.map(({ id }) => id));
  const named = new Map<string, Figure>();
  const under = (ref: Ref): Ref => {
    if (typeof ref === "string") return ids.has(ref) ? `${scope}.${ref}` : ref;
    return ids.has(ref.id) ? rename(ref) : ref;
  };
  const rename = (figure: Figure): Figure => {
    const known = named.get(figure.id);
    if (known !== undefined) return known;
    const fresh = { ...figure, id: `${scope}.${figure.id}`, working: withRefs(figure.working, under) };
    named.set(figure.id, fresh);
    return fresh;
  };
  return figures.map(rename);
}
