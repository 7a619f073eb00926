// Prints how long the published command takes to start, over the time of bare `node -e 0`.
// The commands take turns, so that a change in the machine's speed falls on all alike; medians are printed.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const rounds = Number(process.argv[2] ?? 21);
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const cli = here("../../packages/cli/bin/noodlewright.mjs");
const spec = here("../../examples/written-in-grams.yaml");
const kitchen = here("../../examples/school-noodle.yaml");
const commands = {
  "node -e 0": ["-e", "0"],
  "noodlewright --help": [cli, "--help"],
  "noodlewright formula": [cli, "formula", spec],
  "  with a kitchen file": [cli, "formula", kitchen],
};

function time(args) {
  const start = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, args, { stdio: ["ignore", "pipe", "pipe"] });
  const end = process.hrtime.bigint();
  if (status !== 0) throw new Error(`${args.join(" ")} ended with ${status}: ${stderr}`);
  return Number(end - start) / 1e6;
}

const times = Object.fromEntries(Object.keys(commands).map((name) => [name, []]));
for (const args of Object.values(commands)) time(args);
for (let round = 0; round < rounds; round += 1) {
  for (const [name, args] of Object.entries(commands)) times[name].push(time(args));
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const base = median(times["node -e 0"]);
for (const [name, values] of Object.entries(times)) {
  const middle = median(values);
  console.log(
    `${name.padEnd(22)} ${middle.toFixed(1).padStart(7)} ms   ${(middle / base).toFixed(2).padStart(5)} × node -e 0`,
  );
}
