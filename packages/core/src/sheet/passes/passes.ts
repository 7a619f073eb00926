import { exact, type Figure } from "../../figure/figure.ts";
import { type Published, publish } from "../../figure/graph.ts";
import { measure } from "../../figure/in-system.ts";
import { answer, type Note, note, type Outcome, problem, refuse } from "../../figure/problem.ts";
import { commonPractice, definition, type Source } from "../../figure/source.ts";
import { decimalText, HUNDRED } from "../../number/decimal.ts";
import { asked, askedOr, type Usual } from "../inputs.ts";
import { type CompoundStep, compoundingSteps } from "./compounding.ts";
import { lengthFigure, reducingPasses, reductionFigure, runningOf, totalTime, tripsFigure } from "./pass-figures.ts";
import { type PassRequest, passRequestProblems } from "./pass-request.ts";
import { millimetres, type PassStep, type Way } from "./pass-step.ts";
import { stepsFor } from "./steps-for-gaps.ts";

/** One pass between the rolls. The crumb of the first rough pass has no thickness before. */
export interface Pass {
  readonly number: number;
  readonly kind: "rough" | "compound" | "reduce";
  readonly layers: number;
  readonly setting?: string;
  readonly gap: Figure;
  readonly thickness: Figure;
  readonly reduction?: Figure;
  readonly length?: Figure;
  /** Surface speed of the rolls, m/min. */
  readonly speed?: Figure;
  /** The speed that the volume asks for, where the machine states one for each stand, m/min. */
  readonly even?: Figure;
  readonly runningTime?: Figure;
}

/** All passes of a sheet. */
export interface PassSchedule {
  readonly passes: readonly Pass[];
  readonly largestReduction: Figure;
  readonly springBack: Figure;
  /** From the first thickness to the last, compounding left out. */
  readonly totalReduction: Figure;
  readonly trips: Figure;
  readonly runningTime?: Figure;
}

/** The passes of a sheet before anybody asks how long it gets. */
export interface PassPlan extends Way {
  readonly request: PassRequest;
  readonly folded: readonly CompoundStep[];
  readonly first: Figure;
  readonly springBack: Figure;
  readonly largestReduction: Figure;
}

const gapLists: Source = {
  cite: "laboratory gap lists 3.5-3-2.5-2-1.5-1 mm (appendix text of a Chinese sensory noodle method) and 2.75-2.5-2.0-1.5 mm (textbook copy), whose largest pass takes off one third",
  standing: "copy",
};
const noSpringBack: Usual = {
  value: "1",
  source: { ...definition, cite: "no spring-back until the kitchen has measured its own" },
};
const ONE_THIRD = decimalText(HUNDRED.div(3));

/**
 * Plans the passes that take a dough to its final thickness.
 *
 * With a free gap: the fewest passes of equal ratio. With fixed settings: the fewest passes, then the most even ones. With
 * a list of gaps: the passes as listed, with a note where one goes beyond the limit. Lengths are of the sheet after the pass,
 * its mass and width unchanged; running time is that length at the roll speed. Stands that a sheet is in at once run in one
 * trip, which takes as long as its longest pass.
 * Problems: `sheet.out-of-range`, `passes.not-thinner`, `passes.first-thickness`, `passes.no-gaps`, `passes.list-misses-final`, `passes.step-too-big`,
 * `passes.first-too-thick`, `passes.final-not-on-setting`, `passes.final-outside-gap`, `compounding.gap-not-there`, and those of the gaps.
 * Source: the limit of one third from published laboratory gap lists.
 *
 * @example passSchedule({ gaps: { kind: "free", least: "0.3", greatest: "12" }, firstThickness: "10", finalThickness: "1" }).value.passes.length // => 6
 */
export function passSchedule(request: PassRequest): Outcome<Published<PassSchedule>> {
  const plan = passPlan(request);
  if (!plan.ok) return plan;
  const schedule = scheduled(plan.value, request.sheet);
  return publish(schedule, [...plan.notes, ...unevenSpeeds(schedule)]);
}

/** Finds the way of the passes, with the problems and notes of `passSchedule` on them. */
export function passPlan(request: PassRequest): Outcome<PassPlan> {
  const problems = passRequestProblems(request);
  if (problems.length > 0) return refuse(...problems);
  const springNaming = { id: "passes.spring-back", label: "spring-back", unit: "", places: 2 };
  const springBack = askedOr(springNaming, request.springBack, noSpringBack);
  const folded = request.compounding === undefined ? [] : compoundingSteps(request.compounding, springBack);
  const first =
    folded.at(-1)?.thickness ??
    asked({ id: "passes.first", label: "first thickness", ...millimetres }, request.firstThickness ?? "0");
  const final = asked({ id: "passes.final", label: "final thickness", ...millimetres }, request.finalThickness);
  if (exact(final).gte(exact(first))) {
    const thicknesses = { final: exact(final).toString(), first: exact(first).toString() };
    return refuse(problem("passes.not-thinner", ["finalThickness"], thicknesses));
  }
  const limit = { id: "passes.largest-reduction", label: "largest reduction allowed in a pass", unit: "%", places: 1 };
  const largestReduction = askedOr(limit, request.largestReduction, { value: ONE_THIRD, source: gapLists });
  const slack = { id: "passes.final-tolerance", label: "tolerance of the final thickness", ...millimetres };
  const finalTolerance = askedOr(slack, request.finalTolerance, { value: "0.1", source: commonPractice });
  const passesBefore = folded.length;
  const way = stepsFor(request.gaps, { first, final, largestReduction, springBack, finalTolerance, passesBefore });
  if (!way.ok) return way;
  return answer({ ...way.value, request, folded, first, springBack, largestReduction }, way.notes);
}

/** Writes the passes of a plan out, with the lengths of a sheet where one is given; it keeps to the limits of a request. */
export function scheduled(plan: PassPlan, sheet: PassRequest["sheet"]): PassSchedule {
  const { folded, first, springBack, largestReduction } = plan;
  const request = { ...plan.request, ...(sheet && { sheet }) };
  const steps = plan.steps();
  const stands = request.stands ?? 1;
  const passes = numbered(request, folded, first, steps);
  const last = steps.at(-1)?.thickness ?? first;
  const times = tripsOf(passes, stands).map((trip) => trip.flatMap(({ runningTime }) => runningTime ?? []));
  return {
    passes,
    largestReduction,
    springBack,
    totalReduction: reductionFigure("passes.total-reduction", "total reduction", first, last),
    trips: tripsFigure(folded.length, reducingPasses(steps.length, [first, last]), stands),
    ...(times.flat().length > 0 && { runningTime: totalTime(times) }),
  };
}

function numbered(
  request: PassRequest,
  folded: readonly CompoundStep[],
  first: Figure,
  steps: readonly PassStep[],
): readonly Pass[] {
  const reduced = steps.map((step, index) => {
    const before = steps[index - 1]?.thickness ?? first;
    const pass = folded.length + index + 1;
    const reduction = reductionFigure(`pass-${pass}.reduction`, `reduction of pass ${pass}`, before, step.thickness);
    return { ...step, kind: "reduce" as const, layers: 1, reduction };
  });
  const rolled = [...folded, ...reduced].map((step, index): Pass => {
    const length = lengthFigure(request, step.thickness, index + 1);
    return { ...step, number: index + 1, ...(length && { length }) };
  });
  return tripsOf(rolled, request.stands ?? 1).flatMap((trip) => timed(trip, request.rollSpeed));
}

/** The trips: every pass of compounding is one, since the sheet is folded in between; the others share the stands. */
function tripsOf(passes: readonly Pass[], stands: number): readonly (readonly Pass[])[] {
  const reducing = passes.filter(({ kind }) => kind === "reduce");
  return [
    ...passes.filter(({ kind }) => kind !== "reduce").map((pass) => [pass]),
    ...Array.from({ length: Math.ceil(reducing.length / stands) }, (_, trip) =>
      reducing.slice(trip * stands, (trip + 1) * stands),
    ),
  ];
}

function timed(trip: readonly Pass[], rollSpeed: PassRequest["rollSpeed"]): readonly Pass[] {
  const rolled = trip.flatMap(({ number, thickness, length }) => (length ? [{ number, thickness, length }] : []));
  if (rollSpeed === undefined || rolled.length === 0) return trip;
  const running = runningOf(rolled, rollSpeed);
  return trip.map((pass, stand) => ({ ...pass, ...running[stand] }));
}

/** More than dough that is drawn or slack between two stands makes up for. */
const UNEVEN_PERCENT = 2;

/** Says where the stands of a trip do not take as much dough as the one before gives. */
export function unevenSpeeds({ passes }: PassSchedule): readonly Note[] {
  const measured = ({ value, unit, places }: Figure) => measure(value, unit, places);
  const uneven = passes.flatMap(({ number, speed, even }) => {
    if (speed === undefined || even === undefined) return [];
    const off = exact(speed).div(exact(even)).minus(1).times(100).abs();
    return off.gt(UNEVEN_PERCENT) ? [{ pass: number, even: measured(even), speed: measured(speed) }] : [];
  });
  if (uneven.length === 0) return [];
  return [note("passes.uneven-speeds", ["rollSpeed"], { passes: uneven, most: String(UNEVEN_PERCENT) })];
}
