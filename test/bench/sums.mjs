// Prints how much time the formula and the batch of a noodle take, over the same sums written by hand with the same
// decimals, in turns in one process. Then how much time the weights of a load take in doubles, worked out again by the graph,
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
const flours = [
  { share: "85", moisture: "13.36", protein: "11.98", factor: "5.7", ash: "0.47" },
  { share: "15", moisture: "10.74", protein: "13.21", factor: "5.83", ash: "1.58" },
].map((row) => Object.fromEntries(Object.entries(row).map(([key, text]) => [key, new D(text)])));
const [soda, potash, salt, added] = ["0.6", "0.4", "1", "35"].map((text) => new D(text));
const losses = ["0.5", "3", "1"].map((text) => new D(text));
const [largest, heavy, bowls, raw] = ["12000", "500", "320", "110"].map((text) => new D(text));
const [halfSoda, halfPotash] = ["52.994", "69.103"].map((text) => new D(text));

/** The blend, the water, the alkali and the weights of a load, as one would write them for this noodle alone. */
function byHand() {
  const blended = (key) => flours.reduce((sum, flour) => sum.plus(flour.share.times(flour[key]).div(100)), new D(0));
  const [moisture, protein, ash] = ["moisture", "protein", "ash"].map(blended);
  const at14 = protein.times(new D(100).minus(14)).div(new D(100).minus(moisture));
  const dough = [soda, potash, salt, added].reduce((sum, one) => sum.plus(one), new D(100));
  const lines = [...flours.map(({ share }) => share), added, soda, potash, salt];
  const shares = lines.map((line) => line.times(100).div(dough));
  const brought = flours.map(({ share, moisture: wet }) => share.times(wet).div(100));
  const water = brought.reduce((sum, one) => sum.plus(one), added);
  const inDough = water.times(100).div(dough);
  const onDry = water.times(100).div(dough.minus(water));
  const equivalents = soda.times(1000).div(halfSoda).plus(potash.times(1000).div(halfPotash));
  const asSoda = equivalents.times(halfSoda).div(1000);
  const ratio = soda.div(soda.plus(potash)).times(100);
  const strands = bowls.times(raw);
  const stages = losses.reduceRight(
    ([mass, ...later], loss) => [mass.times(100).div(new D(100).minus(loss)), mass, ...later],
    [strands],
  );
  const loads = stages[0].div(largest).ceil();
  const weights = lines.map((line) => {
    const all = line.times(stages[0]).div(dough);
    const load = all.div(loads);
    const division = new D(load.gt(heavy) ? "1" : "0.1");
    const weighed = load.div(division).round().times(division);
    return { all, load, weighed, off: weighed.minus(load).times(100).div(load) };
  });
  const weighed = weights.reduce((sum, one) => sum.plus(one.weighed), new D(0));
  return [moisture, ash, at14, shares, inDough, onDry, asSoda, ratio, weights, weighed].flat(2).map(String);
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
