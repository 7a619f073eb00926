// The door to figures that explain themselves, to the graph that they make, and to problems of one's own.
export { type Figure, type Range, shown, shownValue, type Working } from "./figure.ts";
export { type Graph, graphOf, type Published, plainFigure } from "./graph.ts";
export { answer, pathText, problem } from "./problem.ts";
export { citation, type Source, type Standing } from "./source.ts";
export type { Told } from "./told.ts";
export { type WrittenWorking, writtenWorking } from "./written-working.ts";
