// Prints how much processor time a run of the built command takes, over that of bare `node -e 0`. The commands take
// turns, so that a change in the machine's speed falls on all alike; medians are printed. Where the release of Node.js
// keeps compiled code, the first round, which is not counted, fills its cache.
// node test/bench/start-up.mjs [rounds] [--json FILE]
import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";

const { values, positionals } = parseArgs({ allowPositionals: true, options: { json: { type: "string" } } });
const rounds = Number(positionals[0] ?? 21);
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const cli = here("../../packages/cli/bin/noodlewright.cjs");
const plain = here("../../examples/written-in-grams.yaml");
const kitchen = here("../../examples/school-noodle.yaml");
const bare = "node -e 0";
const commands = {
  [bare]: ["-e", "0"],
  "--help": [cli, "--help"],
  formula: [cli, "formula", plain],
  "formula, with a kitchen file": [cli, "formula", kitchen],
  "batch, with a kitchen file": [cli, "batch", kitchen],
  "sheet, with a kitchen file": [cli, "sheet", kitchen],
  "plan, with a kitchen file": [cli, "plan", kitchen, "--serve", "12:15"],
};

/** Processor time of a run and its children, in ms, as the shell tells it. */
function time(args) {
  const { status, stderr } = spawnSync(
    "bash",
    ["-c", 'TIMEFORMAT="%3U %3S"; time "$@" >&2', "bash", process.execPath, ...args],
    {
      encoding: "utf8",
    },
  );
  if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}: ${stderr}`);
  const [user, system] = stderr.trimEnd().split("\n").at(-1).split(" ").map(Number);
  return (user + system) * 1000;
}

const times = Object.fromEntries(Object.keys(commands).map((name) => [name, []]));
for (const args of Object.values(commands)) time(args);
for (let round = 0; round < rounds; round += 1) {
  for (const [name, args] of Object.entries(commands)) times[name].push(time(args));
}

const median = (list) => [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)];
const base = median(times[bare]);
const rows = Object.entries(times).map(([name, list]) => ({ name, ms: median(list), ratio: median(list) / base }));
console.log(`Processor time on Node.js ${process.version}, the median of ${rounds} runs`);
for (const { name, ms, ratio } of rows) {
  console.log(`${name.padEnd(30)} ${ms.toFixed(0).padStart(5)} ms   ${ratio.toFixed(2).padStart(5)} × ${bare}`);
}
if (values.json !== undefined)
  writeFileSync(values.json, `${JSON.stringify({ node: process.version, rounds, rows }, null, 2)}\n`);
