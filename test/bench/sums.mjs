// Prints how much time the formula and the batch of a noodle take, over the same sums written by hand with the same
// decimals, in turns in one process.
// node test/bench/sums.mjs [runs] [--json FILE]
import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { Decimal } from "decimal.js";
import { planBatch } from "../../packages/core/dist/batch/batch.js";
import { computeFormula } from "../../packages/core/dist/formula/formula.js";
import { readSpec } from "../../packages/core/dist/spec/read-spec.js";

const { values, positionals } = parseArgs({ allowPositionals: true, options: { json: { type: "string" } } });
const runs = Number(positionals[0] ?? 2000);
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

function got(outcome) {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

function sums(read) {
  return got(planBatch(read, got(computeFormula(read)), false));
}

const work = {
  "sums by hand": byHand,
  "formula and batch": () => sums(spec),
  "the same, the spec read too": () => sums(got(readSpec(data))),
};
const rounds = 9;
const times = Object.fromEntries(Object.keys(work).map((name) => [name, []]));
for (let round = 0; round <= rounds; round += 1) {
  for (const [name, run] of Object.entries(work)) {
    const before = process.cpuUsage();
    for (let count = 0; count < runs / rounds; count += 1) run();
    const { user, system } = process.cpuUsage(before);
    if (round > 0) times[name].push((user + system) / (runs / rounds));
  }
}
const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const base = median(times["sums by hand"]);
const rows = Object.entries(times).map(([name, list]) => ({ name, us: median(list), ratio: median(list) / base }));
for (const { name, us, ratio } of rows) {
  console.log(`${name.padEnd(30)} ${us.toFixed(0).padStart(5)} µs   ${ratio.toFixed(1).padStart(5)} × sums by hand`);
}
if (values.json !== undefined)
  writeFileSync(values.json, `${JSON.stringify({ node: process.version, runs, rows }, null, 2)}\n`);
