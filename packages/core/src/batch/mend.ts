import { type Figure, summed, worked } from "../figure/figure.ts";
import { type Published, published } from "../figure/graph.ts";
import { answer, note, type Outcome } from "../figure/problem.ts";
import { definition, massBalance } from "../figure/source.ts";
import type { Formula } from "../formula/formula.ts";
import type { Spec } from "../spec/spec.ts";
import type { Batch } from "./batch.ts";
import { runStages } from "./losses.ts";
import { alreadyIn, type InBowl, isOver, loadFor, type Mended, mendedDusting, mendedRework } from "./mend-load.ts";
import { coarseNotes, dryNotes, loadNotes, mixerNotes, offNotes, reworkNotes, shortNotes } from "./mend-notes.ts";
import { type MendWish, readWish, reworkId } from "./mend-wish.ts";
import type { Scales } from "./weighing.ts";

/**
 * What to add of all else where too much of something is in the bowl. The load becomes the formula at the size that this
 * asks for: what is in is right by the exact shares of the formula, each weight is rounded to its scale, the total kept, and
 * nothing is ever less than what is in. Where a scale is so coarse that it shows the same for several sizes, the size is taken
 * that comes nearest to the formula. What there is no more of stays as it is: then all else goes by the flour that there is,
 * water that is missing with an ingredient is poured, and the figures tell how far off the formula the dough stays; where that
 * leads no nearer to the formula, only what the list still lacks is added. What a scale cannot tell is not too much. Rework is
 * the same dough: too much of it needs nothing else.
 *
 * Problems: `mend.nothing`, `mend.unknown`, `mend.several`, `mend.twice`, `mend.amount`, `mend.beyond`, `mend.stock`.
 */
export function mendLoad(
  spec: Spec,
  formula: Formula,
  batch: Batch,
  scales: Scales,
  wish: MendWish,
): Outcome<Published<Mended>> {
  const read = readWish(spec, formula, batch, wish);
  if (!read.ok) return read;
  const { masses, short } = read.value;
  const inBowl = batch.lines.map((line): InBowl => {
    const { name, id } = line.line;
    const already = alreadyIn(id, name, line.load, masses.get(id));
    return { line, already, isShort: short.has(id) };
  });
  const rework = batch.rework && mendedRework(batch.rework, masses.get(reworkId), short.has(reworkId), scales);
  const said = inBowl.filter(({ line }) => masses.has(line.line.id));
  const { load, grown } = loadFor({ formula, inBowl, over: said.filter(isOver), rework, scales });
  const { lines } = load;
  const weights = [...lines.map(({ total }) => total), ...(rework ? [rework.total] : [])];
  const places = Math.min(2, Math.max(...weights.map((weight) => weight.places)));
  const naming = { id: "mend.dough", label: "dough of the load when it is mended", unit: "g", places };
  const dough = summed(naming, { mass: weights }, massBalance);
  const { strands, bowls } = yieldOf(batch, dough);
  const becomes = worked(
    { id: "mend.grown", label: "the load becomes, times what was planned", unit: "", places: 3 },
    "dough / planned",
    { dough, planned: batch.loadTotal },
    massBalance,
  );
  const result: Mended = {
    lines,
    ...(rework && { rework }),
    ...(batch.dusting && { dusting: mendedDusting(batch.dusting, lines, scales) }),
    times: becomes,
    dough,
    planned: batch.loadTotal,
    strands,
    ...(bowls && { bowls }),
    figures: load.figures,
  };
  const own = [
    ...dryNotes(batch),
    ...shortNotes(inBowl, load, grown),
    ...(said.some(isOver) || short.size > 0 ? offNotes(inBowl, result.figures) : []),
    ...coarseNotes(spec, result),
    ...mixerNotes(spec, formula, result),
    ...reworkNotes(spec, result),
    ...loadNotes(batch, result),
  ];
  const isFine =
    load.isByList && !said.some(isOver) && !own.some(({ code }) => code === "mend.off" || code === "mend.rework");
  return answer(published(result, batch.graph, formula.graph), [
    ...own,
    ...(isFine ? [note("mend.fine", ["weighed"], {})] : []),
  ]);
}

function yieldOf({ target }: Batch, dough: Figure): Pick<Mended, "strands" | "bowls"> {
  const [mixing, sheeting, cutting] = target.stages.map(({ loss }) => loss);
  const losses = mixing && sheeting && cutting && { mixing, sheeting, cutting };
  const after = losses === undefined ? dough : (runStages(dough, losses).at(-1)?.after ?? dough);
  const strands = { ...after, id: "mend.strands", label: "raw strands of the load" };
  const raw = target.rawWeight;
  if (raw === undefined) return { strands };
  const naming = { id: "mend.bowls", label: "bowls of the load", unit: "", places: 0 };
  return { strands, bowls: worked(naming, "floor(strands / raw)", { strands, raw }, definition) };
}
