import { costOf } from "../batch/cost.ts";
import { scalesOf, weighingTolerance } from "../batch/weighing.ts";
import { styleFacts } from "../blend/style-notes.ts";
import { formulaStyle } from "../explore/spec-style.ts";
import { heldWants } from "../explore/wanted-checks.ts";
import type { Figure } from "../figure/figure.ts";
import { frozen } from "../figure/frozen.ts";
import { type Graph, graphOf } from "../figure/graph.ts";
import { answer, type Outcome } from "../figure/problem.ts";
import { toldIn } from "../figure/told.ts";
import { pricedAnew } from "../formula/formula.ts";
import type { FormulaLine } from "../formula/line.ts";
import type { Price } from "../materials/fields.ts";
import type { Workbook } from "../render/workbook/cells.ts";
import { workbookOf } from "../render/workbook/workbook.ts";
import { formulaCautions } from "../report/cautions.ts";
import { formulaRanges } from "../report/formula-report.ts";
import type { Noodle } from "./noodle.ts";
import { plannedBatch } from "./planned-batch.ts";
import { checks } from "./workbook/checks.ts";
import { inputGroups } from "./workbook/inputs.ts";
import { batchWithTries, triesOf } from "./workbook/limits.ts";
import type { Made } from "./workbook/made.ts";
import { resultGroups } from "./workbook/results.ts";
import { costRules, roundings, weighingRules } from "./workbook/rules.ts";
import { mixerFigures } from "./workbook/scales.ts";
import { wantsInOne } from "./workbook/wants.ts";

/**
 * The noodle as a workbook that works itself out: what may be changed, what comes of it, and every figure as a formula.
 *
 * Problems: those of `askBatch`.
 * @example askWorkbook(example("school-noodle")).value.sheets.length // => 4
 */
export function askWorkbook(noodle: Noodle): Outcome<Workbook> {
  const planned = plannedBatch(noodle);
  if (!planned.ok) return planned;
  const { batch, tries } = batchWithTries(noodle);
  if (!batch.ok) return frozen(batch);
  const scales = scalesOf(noodle.spec, noodle.units === "us");
  if (!scales.ok) return frozen(scales);
  const stated = costOf(noodle.spec, noodle.formula, batch.value);
  const unpriced = stated.ok ? stated.value.unpriced : [];
  // What has no price yet is counted as free, so that a price can be typed for it.
  const currency = stated.ok ? stated.value.currency : "";
  const none: Price = { text: "none yet", currency, perKilogram: "0", pack: "1000", amount: "0" };
  const free = Object.fromEntries(unpriced.map((name) => [name, none]));
  const spec = { ...noodle.spec, prices: { ...noodle.spec.prices, ...free } };
  const formula = pricedAnew(noodle.formula, { prices: free });
  const cost = costOf(spec, formula, batch.value);
  const { lines, dusting } = batch.value;
  const { held: wants, notes: untold } = heldWants(spec, formula, batch.value, noodle.kitchen.materials);
  const wanted = wants.flatMap(({ want: { reached, least, most } }) => [reached, least, most]);
  const made: Made = {
    noodle,
    batch: batch.value,
    cost: cost.ok ? cost.value : undefined,
    unpriced,
    scales: scales.value,
    wants: wantsInOne(wants),
    untold: untold.map(toldIn(noodle.units)),
    weighed: [...lines, ...(dusting ? [dusting] : [])],
    graph: withTwinsNumbered(
      {
        ...formula.graph,
        ...batch.value.graph,
        ...(cost.ok && cost.value.graph),
        ...mixerFigures(noodle.spec),
        ...graphOf(
          [
            ...scales.value.flatMap(({ figures }) => figures),
            weighingTolerance(noodle.spec),
            ...wanted.filter((figure) => figure !== undefined),
          ],
          formula.graph,
          batch.value.graph,
          ...(cost.ok ? [cost.value.graph] : []),
        ),
      },
      noodle.formula.lines,
    ),
  };
  const notes = [...noodle.notes, ...planned.notes, ...(stated.ok ? stated.notes : []), ...untold];
  const rules = { ...weighingRules(made), ...costRules(made) };
  const workbook = workbookOf({
    title: noodle.formula.name,
    paper: noodle.units === "us" ? "letter" : "A4",
    about: [
      "Change the coloured cells; everything else follows. The sheets are protected without a password.",
      ...(noodle.spec.notes ?? "").split("\n").filter((line) => line.trim() !== ""),
    ],
    graph: made.graph,
    inputs: inputGroups(made, rules),
    results: resultGroups(made),
    rules,
    roundings: roundings(made),
    tries: triesOf(made, tries),
    checks: checks(made),
    notes: [...new Set(notes.map(toldIn(noodle.units)))],
    ranges: [...formulaRanges(noodle.formula), ...styleLines(noodle)],
    cautions: [...new Set(formulaCautions(noodle.formula))],
  });
  return frozen(answer(workbook, notes));
}

/** A graph in which ingredients of one name are numbered, but where one figure is for all of them. */
function withTwinsNumbered(graph: Graph, lines: readonly FormulaLine[]): Graph {
  const twins = lines.flatMap(({ id, name }) => {
    const alike = lines.filter((one) => one.name === name);
    const number = alike.findIndex((one) => one.id === id) + 1;
    return alike.length === 1 ? [] : [{ part: `.${id}.`, name, numbered: `${name} (${number})` }];
  });
  if (twins.length === 0) return graph;
  const named = (figure: Figure): Figure => {
    const twin = twins.find(({ part }) => `.${figure.id}.`.includes(part));
    const forAll = twin === undefined || /^shopping\.|\.price$/u.test(figure.id);
    return forAll ? figure : { ...figure, label: figure.label.replace(twin.name, twin.numbered) };
  };
  return Object.fromEntries(Object.entries(graph).map(([id, figure]) => [id, named(figure)]));
}

/** What is published for the style of a noodle. */
function styleLines({ spec, formula }: Noodle): readonly string[] {
  const checks = formulaStyle(spec, formula);
  if (!checks.ok) return [];
  return checks.value.map(({ range: published }) => {
    const { style, quantity, range, unit, source } = styleFacts(published);
    return `${style}, ${quantity}: ${range} ${unit}, as published (${source})`;
  });
}
