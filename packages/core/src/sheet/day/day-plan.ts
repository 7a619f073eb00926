import type { Batch } from "../../batch/batch.ts";
import { exact, type Figure, worked } from "../../figure/figure.ts";
import { type Graph, published } from "../../figure/graph.ts";
import {
  answer,
  type Note,
  note,
  type Outcome,
  type Path,
  type Problem,
  problem,
  problemsOf,
  refuse,
} from "../../figure/problem.ts";
import { commonPractice, definition, massBalance } from "../../figure/source.ts";
import type { Formula } from "../../formula/formula.ts";
import { type Decimal, type DecimalText, dec, fixedText, sum } from "../../number/decimal.ts";
import type { Quantity } from "../../number/quantity.ts";
import type { Spec } from "../../spec/spec.ts";
import { asked, askedOr, type Usual } from "../inputs.ts";
import type { SheetPlan } from "../sheet-plan.ts";
import { compositionOf } from "../water/dough-food.ts";
import { specificHeat } from "../water/food.ts";
import type { MachineCount, PlanRequest, PlanStage, StageName } from "./plan-request.ts";
import { potRecovery, potWater, rawInPot, rawTemperature } from "./pot.ts";
import { type TimePlan, timePlan } from "./timeplan.ts";

/** The day of a spec: when each load is at which stage, and what the pots do. */
export interface DayPlan {
  readonly time: TimePlan;
  readonly loads: Figure;
  readonly pot?: PotPlan;
  readonly graph: Graph;
}

/** A pot and one basket of noodles. */
export interface PotPlan {
  /** Baskets that a load is boiled in. */
  readonly baskets: Figure;
  readonly water: Figure;
  /** How far the pot falls and how long it takes to boil again, where its power is known. */
  readonly drop?: Figure;
  readonly recovery?: Figure;
}

type PlanFields = NonNullable<Spec["plan"]>;
type PotFields = NonNullable<PlanFields["pot"]>;

/** Where a stage is worked, by the trade's names. */
const stations = {
  weigh: "bench",
  mix: "mixer",
  compound: "sheeter",
  roll: "sheeter",
  cut: "sheeter",
  boil: "pot",
} as const;
const counts = {
  bench: "benches",
  mixer: "mixers",
  compounder: "compounders",
  sheeter: "sheeters",
  pot: "pots",
} as const;
const order: readonly StageName[] = ["weigh", "mix", "rest", "compound", "relax", "roll", "mature", "cut", "boil"];

/**
 * Plans the day of a spec backwards from service.
 *
 * @param sheet - the sheet of the same spec, where there is one, to hold its running time against the time for rolling
 * Problems: `plan.not-stated`, `plan.too-many-loads`, `plan.serve-missing`, `plan.whole-minutes`, those of `timePlan` and of the pot, each with its
 * place in the spec.
 */
export function planDay(spec: Spec, formula: Formula, batch: Batch, sheet?: SheetPlan): Outcome<DayPlan> {
  const { plan } = spec;
  const loads = batch.loads.count;
  if (plan === undefined || order.every((stage) => plan[stage] === undefined)) {
    return refuse(problem("plan.not-stated", ["plan"], {}));
  }
  if (exact(loads).gt(MOST_LOADS)) {
    return refuse(problem("plan.too-many-loads", ["mixer"], { loads: loads.value, most: MOST_LOADS }));
  }
  if (plan.serve === undefined) return refuse(problem("plan.serve-missing", ["plan", "serve"], {}));
  const fractions = unevenTimes(plan);
  if (fractions.length > 0) return refuse(...fractions);
  const time = timePlan(requestOf(plan, plan.serve, exact(loads).toNumber()));
  const pot = plan.pot && potOf(plan.pot, spec, formula, batch);
  if (!time.ok || pot?.ok === false) {
    return refuse(
      ...problemsOf(time).map((problem) => ({ ...problem, path: placeOf(problem.path, plan) })),
      ...problemsOf(pot),
    );
  }
  const day = { time: time.value, loads, ...(pot?.ok && { pot: pot.value }) };
  return answer(published(day, formula.graph, batch.graph), [
    ...time.notes,
    ...(pot?.ok ? pot.notes : []),
    ...(sheet === undefined ? [] : rollingNotes(plan, sheet)),
  ]);
}

/** As many as `timePlan` places. */
const MOST_LOADS = 200;

function timesOf(plan: PlanFields): readonly (readonly [path: Path, time: Quantity])[] {
  const { weigh, mix, compound, roll, cut, boil, longestStanding, longestHold, rest, relax, mature } = plan;
  const plain = { weigh, mix, compound, roll, cut, boil, longestStanding, longestHold };
  const waits = { rest, relax, mature };
  return [
    ...Object.entries(plain).flatMap(([key, time]) => (time === undefined ? [] : [[["plan", key], time] as const])),
    ...Object.entries(waits).flatMap(([key, wait]) =>
      Object.entries(wait ?? {}).flatMap(([end, time]) =>
        time === undefined ? [] : [[["plan", key, end], time] as const],
      ),
    ),
  ];
}

function unevenTimes(plan: PlanFields): readonly Problem[] {
  return timesOf(plan)
    .filter(([, time]) => !dec(time.value).mod(60).isZero())
    .map(([path, { text, value }]) =>
      problem("plan.whole-minutes", path, { written: text, minutes: dec(value).div(60).ceil().toFixed() }),
    );
}

function minutes(time: Quantity): number {
  return dec(time.value).div(60).toNumber();
}

function requestOf(plan: PlanFields, serve: string, loads: number): PlanRequest {
  const { longestStanding, longestHold } = plan;
  const stages = order.flatMap((name) => stageOf(name, plan));
  const used = new Set(stages.flatMap((stage) => (stage.kind === "work" ? [stage.machine] : [])));
  const machines = Object.entries(counts)
    .filter(([name]) => used.has(name))
    .map(([name, key]): MachineCount => ({ name, count: plan[key] ?? 1 }));
  return {
    serve,
    loads,
    stages,
    machines,
    ...(longestStanding && { longestGap: minutes(longestStanding) }),
    ...(longestHold && { longestHold: minutes(longestHold) }),
  };
}

function stageOf(name: StageName, plan: PlanFields): readonly PlanStage[] {
  if (name === "rest" || name === "relax" || name === "mature") {
    const wait = plan[name];
    if (wait === undefined) return [];
    const { least, most } = wait;
    return [{ kind: "wait", name, least: minutes(least), ...(most && { greatest: minutes(most) }) }];
  }
  const time = plan[name];
  // A slitter in line cuts as the sheet leaves the rolls, in no time of its own.
  if (time === undefined || (name === "cut" && dec(time.value).isZero())) return [];
  const machine = name === "compound" && plan.compounders !== undefined ? "compounder" : stations[name];
  return [{ kind: "work", name, machine, minutes: minutes(time) }];
}

/** Where in the spec the names of the request stand. */
function placeOf(path: Path, plan: PlanFields): Path {
  const [first, index, key] = path;
  if (first === "stages" && typeof index === "number") {
    const name = order.flatMap((one) => stageOf(one, plan))[index]?.name ?? "";
    return key === "greatest" ? ["plan", name, "most"] : ["plan", name];
  }
  const names: Readonly<Record<string, string>> = { longestGap: "longestStanding", stages: "weigh" };
  return ["plan", names[String(first)] ?? String(first)];
}

function potOf(pot: PotFields, spec: Spec, formula: Formula, batch: Batch): Outcome<PotPlan> {
  const basket = rawInPot(pot.basket.value);
  const share = pot.water && waterForEachGram(pot.water.value, basket);
  const water = potWater(basket, share);
  if (!water.ok) {
    const stated = { water: pot.water?.text ?? "no water", basket: pot.basket.text };
    return refuse(problem("pot.water-out-of-range", ["plan", "pot", "water"], stated));
  }
  const baskets = basketsOf(basket, batch);
  if (pot.power === undefined) return answer({ baskets, water: water.value });
  const own = askedOr(rawTemperature, spec.temperature?.room?.value, usualRoom);
  const { composition } = compositionOf(formula.lines);
  const heat = specificHeat({ composition, temperature: own.value });
  if (!heat.ok) return refuse(...heat.problems.map((problem) => ({ ...problem, path: ["temperature", "room"] })));
  const recovery = potRecovery({
    water: water.value,
    raw: basket,
    rawTemperature: own,
    rawSpecificHeat: heat.value,
    power: pot.power.value,
    ...(pot.boilsAt && { boilingPoint: pot.boilsAt.value }),
  });
  if (!recovery.ok) return refuse(...recovery.problems.map((problem) => ({ ...problem, path: ["plan", "pot"] })));
  return answer({ baskets, water: water.value, ...recovery.value }, recovery.notes);
}

/** What stands in the pot, as the kitchen states it, on each gram of noodles. */
function waterForEachGram(stated: DecimalText, raw: Figure): Figure {
  const water = asked({ id: "pot.water-stated", label: "water in a pot", unit: "g", places: 0 }, stated);
  const naming = { id: "pot.share", label: "water for a gram of noodles", unit: "g/g", places: 0 };
  return worked(naming, "water / raw", { water, raw }, definition);
}

function basketsOf(basket: Figure, { target, loads }: Batch): Figure {
  const naming = { id: "pot.baskets", label: "baskets of a load", unit: "", places: 0 };
  const from = { strands: target.strands, loads: loads.count, basket };
  return worked(naming, "ceil(strands / loads / basket)", from, massBalance);
}

/** Temperature of the noodles that go into the pot where the room's is not stated, °C. */
const usualRoom: Usual = {
  value: "20",
  source: { ...commonPractice, cite: "a kitchen of 20 °C where no temperature of the room is stated" },
};

/** The rolls alone take so long, to compound and to roll, each in its own time; feeding and folding come on top. */
function rollingNotes({ compound, roll }: PlanFields, { schedule, sheets }: SheetPlan): readonly Note[] {
  const { passes, runningTime } = schedule;
  if (runningTime === undefined || roll === undefined) return [];
  const compounding = sum(
    passes.flatMap(({ kind, runningTime: time }) => (kind === "reduce" || time === undefined ? [] : [exact(time)])),
  );
  const rolling = exact(runningTime).minus(compounding);
  const late = (stage: "compound" | "roll", running: Decimal, planned: Decimal): readonly Note[] => {
    const seconds = running.times(exact(sheets.sheetsPerLoad));
    if (seconds.lte(planned)) return [];
    const minutes = { running: fixedText(seconds.div(60), 1), planned: fixedText(planned.div(60), 0) };
    return [note("plan.rolling-too-short", ["plan", stage], { stage, ...minutes })];
  };
  return compound === undefined
    ? late("roll", exact(runningTime), dec(roll.value))
    : [...late("compound", compounding, dec(compound.value)), ...late("roll", rolling, dec(roll.value))];
}
