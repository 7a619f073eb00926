import { type Figure, type Graph, type WrittenWorking, writtenWorking } from "@noodlewright/core/figure";
import { feedsOf } from "#core/figure/figure.ts";

interface Part {
  readonly graph?: unknown;
  readonly figures?: unknown;
}

function isPart(value: unknown): value is Part {
  return typeof value === "object" && value !== null;
}

function isFigure(value: unknown): value is Figure {
  return isPart(value) && "id" in value && "places" in value && "working" in value;
}

/** Whether it holds figures by their ids and nothing else. */
function isGraph(value: unknown): value is Graph {
  return (
    isPart(value) && !Array.isArray(value) && Object.entries(value).every(([id, one]) => isFigure(one) && one.id === id)
  );
}

/** Every figure of a result with the graph that stands beside or above it. */
function* withGraphs(value: unknown, above: Graph = {}): Generator<readonly [Figure, Graph]> {
  if (!isPart(value)) return;
  const own = [value, value.graph, value.figures].find(
    (one): one is Graph => isGraph(one) && Object.keys(one).length > 0,
  );
  const graph = own ?? above;
  if (isFigure(value)) yield [value, graph];
  for (const part of Object.values(value)) yield* withGraphs(part, graph);
}

type Telling = readonly [id: string, unknown: readonly string[], working: WrittenWorking | undefined];

/** What each figure of a result says of how it came about, by the graph of the result. */
function tellings(result: unknown): readonly Telling[] {
  return [...withGraphs(result)].map(([figure, graph]) => {
    const lacking = feedsOf(figure).filter((id) => !Object.hasOwn(graph, id));
    return [figure.id, lacking, lacking.length > 0 ? undefined : writtenWorking(figure, graph)];
  });
}

/** What a result cannot explain by its graph, and what a copy of it tells otherwise. */
export function unexplained(result: unknown): readonly string[] {
  const own = tellings(result);
  const copies = [tellings(JSON.parse(JSON.stringify(result))), tellings(structuredClone(result))];
  return own.flatMap(([id, lacking, working], index) => {
    const other = copies.some((copy) => JSON.stringify(copy[index]) !== JSON.stringify([id, lacking, working]));
    return [...lacking.map((one) => `${id}: ${one}`), ...(other ? [`${id} in a copy`] : [])];
  });
}
