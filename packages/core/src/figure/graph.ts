import { type Figure, feedsOf, restingOn } from "./figure.ts";
import { frozen, isOfTable } from "./frozen.ts";
import { answer, type Note, type Outcome } from "./problem.ts";

/** The figures of a result by id, each once, what a figure rests on before it. It survives JSON. */
export type Graph = Readonly<Record<string, Figure>>;

/**
 * A result as it leaves the library: plain data with the graph of all its figures. A figure by itself has one, too; one taken
 * out of a copied result brings it along as `{ ...figure, graph: result.graph }`.
 */
export type Published<T> = T & { readonly graph: Graph };

/**
 * Figures and all that they rest on, what comes first in the calculation first; of figures with one id the first counts.
 *
 * @param known - graphs of results that know the figures which came through JSON
 * @throws {RangeError} on an id that no graph knows: a bug of the caller.
 * @example withOrigins([worked({ id: "b", label: "b", unit: "", places: 0 }, "2 * a", { a: given({ id: "a", label: "a", unit: "", places: 0 }, 3, "the spec") })]).map(({ id }) => id) // => ["a", "b"]
 */
export function withOrigins(figures: readonly Figure[], ...known: readonly Graph[]): readonly Figure[] {
  return Object.values(graphOf(figures, ...known));
}

/**
 * The graph of figures: these and all that they rest on.
 *
 * @throws {RangeError} as `withOrigins`
 * @example graphOf([example("school-noodle").formula.water.added], example("school-noodle").formula.graph)["water.added"].value // => "35"
 */
export function graphOf(figures: readonly Figure[], ...known: readonly Graph[]): Graph {
  return collected(figures, known, (id) => figureIn(id));
}

/** The graph of figures; of one that no graph knows, what is left of it. */
function collected(
  figures: readonly Figure[],
  known: readonly Graph[],
  left: (id: string) => Figure | undefined,
): Graph {
  const graph: Record<string, Figure> = {};
  const keepFrom = (whole: Figure, graphs: readonly Graph[]): void => {
    if (Object.hasOwn(graph, whole.id)) return;
    const [figure, own] = apart(whole);
    const from = own === undefined ? graphs : [own, ...graphs];
    const { behind = [] } = figure;
    for (const fed of behind) keepFrom(fed, from);
    for (const id of feedsOf(figure)) {
      const fed = Object.hasOwn(graph, id) ? undefined : (foundIn(id, from) ?? left(id));
      if (fed !== undefined) keepFrom(fed, from);
    }
    // The sources are constants that other results name, too.
    for (const source of figure.sources) frozen(source);
    graph[figure.id] = withoutBehind(figure);
  };
  for (const figure of figures) keepFrom(figure, known);
  return graph;
}

/** A figure as it is published: the same one where it is so already, since parts of a result are told by what they are. */
function withoutBehind(figure: Figure): Figure {
  if (figure.behind === undefined) return figure;
  const { behind: _behind, ...rest } = figure;
  return rest;
}

/** A figure, or another part of a result, without the graph that it brought along, and that graph. */
function apart<T extends object>(part: T): readonly [T, Graph | undefined] {
  if (!carriesGraph(part)) return [part, undefined];
  const { graph, ...rest } = part;
  return [rest as T, graph];
}

/** The figure of an id in the first of some graphs that knows it. */
export function figureIn(id: string, ...known: readonly Graph[]): Figure {
  const figure = foundIn(id, known);
  if (figure === undefined) throw new RangeError(`the graph does not know the figure "${id}"`);
  return figure;
}

/** A figure of a result, with the graph that knows what it rests on. */
export function inGraph(figure: Figure, graph: Graph): Published<Figure> {
  return { ...figure, graph };
}

/** The figures of a graph that were given: what a procedure that looked at all of it rests on. */
export function inputsOf(graph: Graph): readonly Figure[] {
  return Object.values(graph).filter(({ working }) => working.kind === "given");
}

function foundIn(id: string, known: readonly Graph[]): Figure | undefined {
  return known.find((graph) => Object.hasOwn(graph, id))?.[id];
}

/**
 * A result with the graph of its figures. The graphs that its parts bring along become one with it. What another result knows,
 * and none of `known` is, is left to the graph of the whole that this result goes into.
 *
 * @param known - graphs of results that it rests on
 */
export function published<T extends object>(result: T, ...known: readonly Graph[]): Published<T> {
  const [whole, figures, graphs] = takenApart(result);
  return { ...whole, graph: collected(figures, [...known, ...graphs], () => undefined) };
}

/** A result without the graphs that its parts bring along and without what is behind its figures; its figures; those graphs. */
function takenApart<T extends object>(result: T): readonly [T, readonly Figure[], readonly Graph[]] {
  const figures: Figure[] = [];
  const graphs: Graph[] = [];
  const bare = <Part extends object>(part: Part): Part => {
    const [rest, graph] = apart(part);
    if (graph !== undefined) graphs.push(graph);
    return rest;
  };
  const keep = (figure: Figure): Figure => {
    figures.push(figure);
    return withoutBehind(bare(figure));
  };
  return [withFigures(result, keep, bare), figures, graphs];
}

/** What leaves the library as an answer: the result with its graph, and notes. */
export function publish<T extends object>(
  result: T,
  notes: readonly Note[] = [],
  ...known: readonly Graph[]
): Outcome<Published<T>> {
  return answer(published(result, ...known), notes);
}

function carriesGraph(part: object): part is { readonly graph: Graph } {
  return "graph" in part;
}

/** A result with each of its figures put anew, and each part that holds some. The tables of the library hold none. */
function withFigures<T extends object>(
  result: T,
  anew: (figure: Figure) => Figure,
  bare = <Part extends object>(part: Part): Part => part,
): T {
  const done = new Map<object, object>();
  const put = (part: unknown): unknown => (typeof part === "object" && part !== null ? putWhole(part) : part);
  const putWhole = (value: object): object => {
    if (isFigure(value)) return anew(value);
    if (isOfTable(value)) return value;
    const before = done.get(value);
    if (before !== undefined) return before;
    const part = bare(value);
    const after = Array.isArray(part) ? items(part, put) : parts(part as Readonly<Record<string, unknown>>, put);
    if (after !== value) done.set(value, after);
    return after;
  };
  // `put` changes nothing but the names of the figures and of what went into them
  return put(result) as T;
}

/**
 * A result whose figures, and all that they rest on, are under a name of their own, for several of a kind in one answer.
 *
 * @param shared - where all of the answer is of one noodle, what is known of it: that keeps its names, as every input does
 * @param known - graphs of results that it rests on
 * @example underScope("before", { dose: given({ id: "dose", label: "dose", unit: "g", places: 1 }, 3, "the spec") }).dose.id // => "before.dose"
 */
export function underScope<T extends object>(scope: string, result: T, shared?: Graph, ...known: readonly Graph[]): T {
  const [whole, figures, graphs] = takenApart(result);
  const own = withOrigins(figures, ...graphs, ...(shared ? [shared] : []), ...known).filter(
    ({ id, working }) => shared === undefined || (working.kind !== "given" && !Object.hasOwn(shared, id)),
  );
  const named = new Map(scoped(scope, own).map((figure, index) => [own[index]?.id, figure]));
  return withFigures(whole, (figure) => named.get(figure.id) ?? figure);
}

/**
 * A result in which other figures stand for those of their ids.
 *
 * @param known - graphs of results that know what the other figures rest on
 */
export function standingIn<T extends object>(
  result: T,
  figures: readonly Figure[],
  ...known: readonly Graph[]
): Published<T> {
  const instead = Object.fromEntries(figures.map((figure) => [figure.id, figure]));
  return published(
    withFigures(result, (figure) => instead[figure.id] ?? figure),
    instead,
    ...known,
  );
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
 * @example scoped("before", [given({ id: "dose", label: "dose", unit: "g", places: 1 }, 3, "the spec")])[0]?.id // => "before.dose"
 */
export function scoped(scope: string, figures: readonly Figure[]): readonly Figure[] {
  const own = new Map(figures.map((figure) => [figure.id, figure]));
  const named = new Map<string, Figure>();
  const under = (id: string): Figure | undefined => {
    const figure = own.get(id);
    return figure && (named.get(id) ?? rename(figure));
  };
  const rename = (figure: Figure): Figure => {
    const fresh = { ...restingOn(figure, under), id: `${scope}.${figure.id}` };
    named.set(figure.id, fresh);
    return fresh;
  };
  return figures.map((figure) => named.get(figure.id) ?? rename(figure));
}
