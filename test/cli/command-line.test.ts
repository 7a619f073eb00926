import { describe, expect, test } from "vitest";
import { batchCommand } from "#cli/commands/batch.ts";
import type { Command } from "#cli/shared/command.ts";
import { version } from "#cli/version.ts";
import manifest from "../../packages/cli/package.json" with { type: "json" };
import { splitWords } from "../docs/console-blocks.ts";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";
import { readProblems } from "./read-problems.ts";

const spec = "examples/school-noodle.yaml";

describe("a command line that is wrong", () => {
  test.each([
    [
      "an unknown command",
      `frmula ${spec}`,
      'found     no command "frmula"\n  expected  a command that there is\n  do        did you mean formula?',
    ],
    ["a command like none", "zzz", 'no command "zzz"'],
    ["a name that every object has", "constructor", 'no command "constructor"'],
    ["no spec", "formula", "expected  spec (Spec file in YAML or JSON, or - for standard input)"],
    ["one word too many", `formula ${spec} other.yaml`, '"other.yaml", one word too many'],
    ["two commands", `formula ${spec} batch`, '"batch", one word too many'],
    ["an unknown flag", `formula ${spec} --wrking`, "did you mean --working?"],
    ["a flag of another command", `formula ${spec} --bowls 3`, "--bowls: [flag.unknown]"],
    [
      "a form there is not",
      `formula ${spec} --format yaml`,
      'found     "yaml"\n  expected  one of: table, json, csv, markdown, html, svg',
    ],
    ["units there are not", `batch ${spec} --units=imperial`, 'found     "imperial"\n  expected  one of: metric, us'],
    ["a flag without its value", `batch ${spec} --bowls`, "write it like --bowls '320'"],
    ...["constructor", "toString", "to-string", "hasOwnProperty=3"].map(
      (name) => [`a flag that every object has, ${name}`, `formula ${spec} --${name}`, "[flag.unknown]"] as const,
    ),
    ["a prototype", `formula ${spec} --__proto__ 1`, "--__proto__: [flag.unknown]"],
    ["a flag that is only said, with a value", `formula ${spec} --working=no`, "--working: [flag.switch]"],
    ["an empty value", `batch ${spec} --bowls=`, "--bowls: [flag.missing]"],
    ["a flag before the command", `--units us batch ${spec}`, "--units: [flag.early]"],
    ["a bad flag and a bad form at once", `formula ${spec} --dry --format yaml`, "--dry: [flag.unknown]"],
  ] as const)("%s: no work is done, and the status is 2", async (_, line, said) => {
    const { status, stdout, stderr } = await runHere(splitWords(line));
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(said);
    expect(stderr).toMatch(/problems?; nothing was worked out\.\n$/u);
    expect(stderr).not.toMatch(/^ {4}at /mu);
    if (line.endsWith("--format yaml")) return;
    const asData = await runHere([...splitWords(line), "--format", "json"]);
    expect(JSON.parse(asData.stdout)).toMatchObject({ noodlewright: "problems" });
  });

  test.each(["__proto__", "constructor", "toString"])("%s is no figure", async (figure) => {
    const { status, stdout, stderr } = await runHere(["formula", spec, "--figure", figure]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(`no figure "${figure}"`);
  });

  test.each([
    ["--seed", "abc"],
    ["--seed", "1e3"],
    ["--runs", "0x200"],
  ])("%s %s is told as it was written", (flag, value) => {
    const { status, stdout, stderr } = runBuilt(["tolerance", spec, flag, value]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(`found     "${value}"`);
  });

  test("the same as a process of its own", () => {
    const { status, stdout, stderr } = runBuilt(["formula", spec, "--wrking"]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toBe(
      "--wrking: [flag.unknown]\n  found     a flag that this command does not have\n  expected  one of its flags\n  do        did you mean --working?\n\n1 problem; nothing was worked out.\n",
    );
  });

  test("what a terminal would obey is not said back", async () => {
    const { stderr } = await runHere(["formula", spec, "--\u001B[31mred"]);
    expect(stderr).not.toContain("\u001B");
    expect((await runHere(["\u001B[2J"])).stderr).not.toContain("\u001B");
    expect((await runHere(["formula", "no\u001B[2Jfile"])).stderr).not.toContain("\u001B");
  });
});

describe("a dose beyond what is published", () => {
  const salty = "name: salty\nflours: [{ name: bread flour, amount: 500 g }]\nwater: { tap: 170 g }\nsalt: 25 g\n";

  test.each([
    ["table", /^salty\n\nFirst of all\n {2}- salt of 5\.00 % of flour/u],
    ["markdown", /^# salty\n\n## First of all\n\n- salt of 5/u],
    ["html", /<h1>salty<\/h1>\s*<section id="first-of-all">/u],
    ["json", /"loud": true/u],
  ])("is told at the head of the answer, as %s", (form, head) => {
    const { status, stdout } = runBuilt(["formula", "-", "--format", form], { input: salty });
    expect(status).toBe(0);
    expect(stdout).toMatch(head);
  });

  test("is no dose to swap", () => {
    const { status, stderr } = runBuilt(["alkali", "convert", "Na2CO3", "K2CO3", "--dose", "3 kg", "--flour", "5 kg"]);
    expect(status).toBe(2);
    expect(stderr).toContain("found     Na2CO3 with salts of 60.0 % of flour");
  });
});

describe("a dose in mL", () => {
  test("of a solution is taken by what it weighs", () => {
    const bottle = ["alkali", "convert", "K2CO3 28 %, water rest", "Na2CO3", "--dose", "20 mL"];
    const { status, stdout } = runBuilt([...bottle, "--format", "json"]);
    // 1.2755 g/mL at 28 % (Handbook of Chemistry and Physics), 1.30396 g of potassium carbonate for 1 g of sodium
    // carbonate (atomic weights of 2021): 5.477 g; the fit of the density lies within 0.45 %.
    const grams = Number(/"value": "(5\.4\d+|5\.5\d+)"/u.exec(stdout)?.[1]);
    expect([status, Math.abs(grams / 5.477 - 1) < 0.0046]).toEqual([0, true]);
  });

  test("of a powder is not", () => {
    const { status, stderr } = runBuilt(["alkali", "convert", "K2CO3", "Na2CO3", "--dose", "20 mL"]);
    expect(status).not.toBe(0);
    expect(stderr).toContain("--dose");
  });
});

describe("the flags of a batch", () => {
  test.each([
    { args: ["--bowls", "400"], line: /bowls +400\n/u },
    { args: ["--bowls", "400", "--raw-weight", "130 g"], line: /raw strands +52 000\.0 g\n/u },
    { args: ["--bowls", "400", "--cooked-weight", "234 g", "--cook-gain", "1.8"], line: /raw strands +52 000\.0 g\n/u },
    { args: ["--dough", "12 kg"], line: /dough to mix +12 000\.0 g\n/u },
    { args: ["--flour", "10 kg"], line: /flour to weigh|dough to mix +13 699\.8 g\n/u },
    { args: ["--load", "largest"], line: /loads +1\n/u },
    { args: ["--have", "whole wheat flour=1.2 kg"], line: /whole wheat flour +15\.00 +1200 /u },
  ])("$args", async ({ args, line }) => {
    const { status, stdout, stderr } = await runHere(["batch", spec, ...args]);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(line);
  });

  test.each([
    ...["--bowls many", "--bowls 2.5", "--bowls 1e3"].map((flags) => [flags, "spec.type", "write it like"] as const),
    ...["--bowls=-3", "--bowls 0"].map((flags) => [flags, "spec.size", "write it like --bowls '320'"] as const),
    ["--dough 12", "quantity.unreadable", "12 kg"],
    ["--dough '-1 kg'", "quantity.unreadable", "zero"],
    ["--raw-weight '130 ml'", "quantity.unreadable", "measures volume"],
    ["--have nonsense", "spec.missing", "write it like --have 'bread flour=3.2 kg'"],
    ["--have 'rye flour=1 kg'", "batch.unknown-ingredient", ""],
  ] as const)("%s is refused by the name of the flag", async (flags, code, advice) => {
    const { status, stdout, stderr } = await runHere(["batch", spec, ...splitWords(flags)]);
    expect([status, stdout]).toEqual([2, ""]);
    const [where] = flags.split(/[ =]/u);
    expect(readProblems(stderr)).toMatchObject([{ where, code, advice: expect.stringContaining(advice) }]);
  });

  test("all flags that are wrong are told at once", async () => {
    const { stderr } = await runHere(["batch", spec, "--bowls", "many", "--raw-weight", "130"]);
    expect(readProblems(stderr).map(({ where }) => where)).toEqual(["--bowls", "--raw-weight"]);
  });

  test("two flags that both set the size are told, and neither wins in silence", async () => {
    const { status, stderr } = await runHere(["batch", spec, "--bowls", "300", "--dough", "12 kg"]);
    expect(status).toBe(2);
    expect(readProblems(stderr)).toMatchObject([{ code: "batch.stated-twice", found: "bowls and dough" }]);
  });

  test("a batch that the mixer cannot take ends with 1, and says what it can take", async () => {
    const { status, stdout, stderr } = await runHere(["batch", spec, "--bowls", "4"]);
    expect([status, stdout]).toEqual([1, ""]);
    expect(readProblems(stderr)).toMatchObject([{ code: "mixer.no-equal-loads", pointed: "mixer" }]);
    expect(stderr).toContain("there is no such answer");
  });
});

describe("words and dashes", () => {
  const folder = folderFor({
    "-odd.yaml": "name: Odd\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\n",
  });

  test("after a double dash a name may begin with a dash (POSIX.1-2017, utility syntax guideline 10)", async () => {
    expect(await runHere(["formula", "--", "-odd.yaml"], { cwd: folder })).toMatchObject({ status: 0, stderr: "" });
    expect(await runHere(["formula", "--", spec])).toMatchObject({ status: 0, stderr: "" });
  });

  test("the help of a command tells each of its words, flags and examples, none broken where it is to be copied", async () => {
    const { status, stdout } = await runHere(["batch", "--help"]);
    expect(status).toBe(0);
    for (const name of ["spec", ...Object.keys(batchCommand.flags).map((flag) => `--${flag}`)]) {
      expect(stdout).toMatch(new RegExp(`^ +${name} {2,}\\S`, "mu"));
    }
    for (const line of Object.keys(batchCommand.examples)) expect(stdout.split("\n")).toContain(`  ${line}`);
  });

  test("the last of a flag said twice counts", async () => {
    const { stdout } = await runHere(["batch", spec, "--bowls", "300", "--bowls", "400"]);
    expect(stdout).toMatch(/bowls +400\n/u);
  });

  test("help and version go to standard output", () => {
    expect(runBuilt(["--version"])).toEqual({ status: 0, stdout: `${version}\n`, stderr: "" });
    const help = runBuilt(["--help"]);
    expect([help.status, help.stderr]).toEqual([0, ""]);
    for (const command of ["formula", "batch", "materials", "schema", "new"])
      expect(help.stdout).toMatch(new RegExp(`^ {2}${command} `, "mu"));
    for (const line of help.stdout.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  test("the version is that of the package", () => expect(version).toBe(manifest.version));
});

describe("a bug", () => {
  const folder = folderFor({ "break.cjs": 'JSON.stringify = () => { throw new TypeError("made to fail"); };\n' });
  const broken: Command = {
    positionals: {},
    flags: {},
    examples: {},
    run: () => Promise.reject(new TypeError("made to fail")),
  };

  test("is not taken for a wrong command line", async () => {
    const commands = [{ usage: "broken", describe: "", load: async () => broken }];
    await expect(runHere(["broken"], { commands })).rejects.toThrow("made to fail");
  });

  test("ends with 70 and no stack trace, unless one is asked for", () => {
    const env = { NODE_OPTIONS: `--require "${folder}/break.cjs"` };
    const { status, stdout, stderr } = runBuilt(["formula", spec, "--format", "json"], { env });
    expect([status, stdout]).toEqual([70, ""]);
    expect(stderr).toContain("a bug stopped the work: made to fail");
    expect(stderr).not.toMatch(/^ {4}at /mu);
    const traced = runBuilt(["formula", spec, "--format", "json"], { env: { ...env, NOODLEWRIGHT_TRACE: "1" } });
    expect(traced.stderr).toMatch(/^ {4}at /mu);
  });
});
