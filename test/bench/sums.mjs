// Prints how much time the formula and the batch of a noodle take, over the same sums, all of them, written by hand with the
// same decimals, in turns in one process. Then how much time the weights of a load take in doubles, worked out again by the graph,
// over the same sums written by hand in doubles, and by how much 100,000 of them make the memory grow.
// node test/bench/sums.mjs [runs] [--json FILE]
import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { Decimal } from "decimal.js";
import { planBatch } from "../../packages/core/dist/batch/batch.js";
import { fastGraph } from "../../packages/core/dist/figure/recalculate.js";
import { computeFormula } from "../../packages/core/dist/formula/formula.js";
import { readSpec } from "../../packages/core/dist/spec/read-spec.js";

const { values, positionals } = parseArgs({ allowPositionals: true, options: { json: { type: "string" } } });
const runs = Number(positionals[0] ?? 10_000);
const data = {
  name: "plain",
  flours: [
    { name: "bread flour", amount: "85 %" },
    { name: "whole wheat flour", amount: "15 %" },
  ],
  water: { added: "35 %" },
  alkali: [
    { name: "sodium carbonate", amount: "0.6 %" },
    { name: "potassium carbonate", amount: "0.4 %" },
  ],
  salt: "1 %",
  batch: { bowls: 320, rawWeight: "110 g" },
  losses: { mixing: "0.5 %", sheeting: "3 %", cutting: "1 %" },
  mixer: { smallest: "2 kg", largest: "12 kg" },
  scales: [{ division: "1 g" }, { division: "0.1 g", capacity: "500 g" }],
};
const spec = got(readSpec(data));

const D = Decimal.clone({ precision: 40 });
const read = (rows) =>
  rows.map((row) => Object.fromEntries(Object.entries(row).map(([key, text]) => [key, new D(text)])));
const flours = read([
  { parts: "85", moisture: "13.36", protein: "11.98", factor: "5.7", ash: "0.47", whole: "0" },
  { parts: "15", moisture: "10.74", protein: "13.21", factor: "5.83", ash: "1.58", whole: "1" },
]);
const salts = read([
  { parts: "0.6", moisture: "0", mass: "105.988" },
  { parts: "0.4", moisture: "0", mass: "138.204" },
  { parts: "1", moisture: "0.2" },
]);
const alkali = salts.slice(0, 2);
const losses = ["0.5", "3", "1"].map((text) => new D(text));
const [stated, bowls, raw, largest, heavy] = ["35", "320", "110", "12000", "500"].map((text) => new D(text));
const total = (list) => list.reduce((sum, one) => sum.plus(one), new D(0));
const percentOf = (one, whole) => one.times(100).div(whole);

/** Every sum of the formula and the batch, as one would write them for this noodle alone. */
function byHand() {
  const blended = (of) => total(flours.map((flour) => flour.parts.times(of(flour)))).div(100);
  const moisture = blended((flour) => flour.moisture);
  const onBases = (asIs) => [0, 14].map((at) => asIs.times(new D(100).minus(at)).div(new D(100).minus(moisture)));
  const protein = blended((flour) => flour.protein.times("5.7").div(flour.factor));
  const ash = blended((flour) => flour.ash);
  const wholegrain = total(flours.map((flour) => flour.parts.times(flour.whole)));
  const [proteins, ashes] = [protein, ash].map(onBases);
  const waters = [...flours, ...salts].map((one) => one.parts.times(one.moisture).div(100));
  const brought = total(waters.slice(0, 2));
  const carried = total(waters.slice(2));
  const tap = stated.minus(carried);
  const added = tap.plus(carried);
  const others = total(salts.map((one) => one.parts));
  const dough = tap.plus(others).plus(100);
  const water = brought.plus(added);
  const lines = [...flours.map((one) => one.parts), tap, ...salts.map((one) => one.parts)];
  const shares = lines.map((parts) => percentOf(parts, dough));
  const strengths = [2, 1].map((ends) => alkali.map((one) => new D(1000 * ends).div(one.mass)));
  const ofAlkali = (parts) => {
    const [sodium, potassium] = parts;
    const anhydrous = sodium.plus(potassium);
    return {
      anhydrous,
      strengths: strengths.map((list) => total(list.map((strength, at) => strength.times(parts[at])))),
      potassium: percentOf(potassium, anhydrous),
      sodium: percentOf(sodium, anhydrous),
    };
  };
  const asked = ofAlkali(alkali.map((one) => one.parts));
  const perKilogram = alkali.map((one) => one.parts.times(1_000_000).div(dough));

  const kept = losses.reduce((all, loss) => all.times(new D(1).minus(loss.div(100))), new D(1));
  const mixed = bowls.times(raw).div(kept);
  let left = mixed;
  const stages = losses.map((loss) => {
    const lost = left.times(loss).div(100);
    left = left.minus(lost);
    return [lost, left];
  });
  const loads = mixed.div(largest).ceil();
  const load = mixed.div(loads);
  const flour = percentOf(load, dough);
  const exact = lines.map((parts) => parts.times(flour).div(100));
  const divisions = exact.map((mass) => new D(mass.gt(heavy) ? "1" : "0.1"));
  const rounded = exact.map((mass, at) => mass.div(divisions[at]).round().times(divisions[at]));
  rounded[0] = rounded[0].plus(load.minus(total(rounded)).round());
  const weights = rounded.map((mass, at) => ({
    batch: mass.times(loads),
    off: percentOf(mass.minus(exact[at]), exact[at]),
    nearest: percentOf(divisions[at].div(2), exact[at]),
  }));
  const totals = [total(rounded), total(weights.map((one) => one.batch))];
  const flourWeighed = total(rounded.slice(0, 2));
  const [tapWeighed, ...saltsWeighed] = rounded.slice(2).map((mass) => percentOf(mass, flourWeighed));
  const saltWaters = saltsWeighed.map((parts, at) => parts.times(salts[at].moisture).div(100));
  const carriedWeighed = total(saltWaters);
  const addedWeighed = tapWeighed.plus(carriedWeighed);
  const weighed = ofAlkali(saltsWeighed.slice(0, 2));
  const pairs = [
    [addedWeighed, added],
    ...saltsWeighed.map((parts, at) => [parts, salts[at].parts]),
    [weighed.anhydrous, asked.anhydrous],
    [weighed.strengths[0], asked.strengths[0]],
    [weighed.potassium, asked.potassium],
  ];
  const changes = pairs.map(([now, before]) => [now.minus(before), percentOf(now.minus(before), before)]);
  const blend = [moisture, protein, proteins, ash, ashes, wholegrain];
  const balance = [
    waters,
    brought,
    carried,
    tap,
    added,
    others,
    dough,
    water,
    percentOf(water, dough),
    shares,
    total(shares),
  ];
  const dose = [asked, weighed].flatMap((one) => Object.values(one));
  const batch = [mixed, stages, loads, load, flour, exact, rounded, weights.map((one) => Object.values(one)), totals];
  const real = [tapWeighed, saltsWeighed, saltWaters, carriedWeighed, addedWeighed, changes];
  return [blend, balance, strengths, dose, perKilogram, batch, real].flat(4).map(String);
}

/** Every figure that is worked out has its sum by hand. */
const inputsToo = [...flours, ...salts].flatMap((one) => Object.values(one));
const byHandToo = new Set(
  [...inputsToo, 0, 100].concat(byHand()).map((text) => new D(text).toSignificantDigits(20).toString()),
);
const formula = got(computeFormula(spec));
for (const { graph } of [formula, got(planBatch(spec, formula, false))]) {
  for (const { id, value, working } of Object.values(graph)) {
    if (working.kind === "formula" && !byHandToo.has(new D(value).toSignificantDigits(20).toString()))
      throw new Error(`${id} is ${value}, and by hand no sum comes to that`);
  }
}

const inputs = {
  "batch.bowls": 320,
  "bowl.raw": 110,
  "loss.mixing": 0.5,
  "loss.sheeting": 3,
  "loss.cutting": 1,
  "water.added-stated": 35,
  "alkali.1.parts": 0.6,
  "alkali.2.parts": 0.4,
  "salt.parts": 1,
  "flour.1.parts": 85,
  "flour.2.parts": 15,
};
const weighed = ["flour.1", "flour.2", "water", "alkali.1", "alkali.2", "salt"].map((line) => `${line}.exact`);
const outputs = ["batch.dough", "loads.count", ...weighed, "alkali.alkalinity-m", "alkali.potassium-share"];
const fast = fastGraph(got(planBatch(spec, got(computeFormula(spec)), false)).graph, Object.keys(inputs), outputs);

/** The weights of a load and its alkali in doubles, as one would write them for this noodle alone; table salt is 0.2 % water. */
function inDoubles([bowls, raw, mixing, sheeting, cutting, added, soda, potash, salt, strong, whole]) {
  const dough = (bowls * raw) / ((1 - mixing / 100) * (1 - sheeting / 100) * (1 - cutting / 100));
  const tap = added - (salt * 0.2) / 100;
  const loads = Math.ceil(dough / 12000);
  const flour = ((dough / loads) * 100) / (100 + tap + soda + potash + salt);
  const masses = [strong, whole, tap, soda, potash, salt].map((parts) => (parts * flour) / 100);
  const meq = soda * (2000 / 105.988) + potash * (2000 / 138.204);
  return [dough, loads, ...masses, meq, (100 * potash) / (soda + potash)];
}

/** The inputs with other bowls each time. */
function asked(count) {
  const values = Object.values(inputs);
  values[0] += count % 100;
  return values;
}

for (let count = 0; count < 100; count += 1) {
  const byGraph = fast.valuesAt(asked(count));
  for (const [index, value] of inDoubles(asked(count)).entries()) {
    const off = Math.abs(byGraph[index] / value - 1);
    if (!(off < 1e-12)) throw new Error(`${outputs[index]} is ${byGraph[index]}, by hand ${value}`);
  }
}

/** Bytes that 100,000 rounds of the graph leave behind. */
function growth() {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc");
  const used = () => {
    collect();
    return process.memoryUsage().heapUsed;
  };
  const before = used();
  for (let count = 0; count < 100_000; count += 1) fast.valuesAt(asked(count));
  return used() - before;
}

function got(outcome) {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

function sums(read) {
  return got(planBatch(read, got(computeFormula(read)), false));
}

const rounds = 9;
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];

/** Times some work in turns, over the first of it. */
function timed(work, each) {
  const times = Object.fromEntries(Object.keys(work).map((name) => [name, []]));
  for (let round = 0; round <= rounds; round += 1) {
    for (const [name, run] of Object.entries(work)) {
      const before = process.cpuUsage();
      for (let count = 0; count < each; count += 1) run(count);
      const { user, system } = process.cpuUsage(before);
      if (round > 0) times[name].push((user + system) / each);
    }
  }
  const [base] = Object.keys(work);
  const by = median(times[base]);
  return Object.entries(times).map(([name, list]) => {
    const [us, ratio] = [median(list), median(list) / by];
    console.log(`${name.padEnd(30)} ${us.toFixed(1).padStart(8)} µs   ${ratio.toFixed(1).padStart(5)} × ${base}`);
    return { name, us, ratio };
  });
}

const decimals = {
  "sums by hand": byHand,
  "formula and batch": () => sums(spec),
  "the same, the spec read too": () => sums(got(readSpec(data))),
};
const doubles = {
  "doubles by hand": (count) => inDoubles(asked(count)),
  "the graph in doubles": (count) => fast.valuesAt(asked(count)),
};
const rows = [...timed(decimals, runs / rounds), ...timed(doubles, runs * 10)];
const grown = growth();
console.log(`100,000 rounds of the graph leave ${(grown / 1024).toFixed(0)} KiB behind`);
if (values.json !== undefined)
  writeFileSync(values.json, `${JSON.stringify({ node: process.version, runs, rows, grown }, null, 2)}\n`);
