import { describe, expect, test } from "vitest";
import { batchCommand } from "#cli/commands/batch.ts";
import type { Command } from "#cli/shared/command.ts";
import { version } from "#cli/version.ts";
import manifest from "../../packages/cli/package.json" with { type: "json" };
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";
import { readProblems } from "./read-problems.ts";

const spec = "examples/school-noodle.yaml";

describe("a command line that is wrong", () => {
  test.each([
    { what: "an unknown command", args: ["frmula", spec], said: 'there is no command "frmula"; did you mean formula?' },
    { what: "a command like none", args: ["zzz"], said: 'there is no command "zzz"' },
    { what: "a name that every object has", args: ["constructor"], said: 'there is no command "constructor"' },
    { what: "no spec", args: ["formula"], said: "a word is missing; the command takes spec" },
    { what: "one word too many", args: ["formula", spec, "other.yaml"], said: "one word too many: other.yaml" },
    { what: "two commands", args: ["formula", spec, "batch"], said: "one word too many: batch" },
    { what: "an unknown flag", args: ["formula", spec, "--wrking"], said: "did you mean --working?" },
    { what: "a flag of another command", args: ["formula", spec, "--bowls", "3"], said: "there is no flag --bowls" },
    {
      what: "a form there is not",
      args: ["formula", spec, "--format", "yaml"],
      said: '--format takes table, json, csv, markdown, html, svg, and not "yaml"',
    },
    {
      what: "units there are not",
      args: ["batch", spec, "--units=imperial"],
      said: '--units takes metric, us, and not "imperial"',
    },
    {
      what: "a flag without its value",
      args: ["batch", spec, "--bowls"],
      said: '--bowls needs a value, such as "320"',
    },
    ...["constructor", "toString", "to-string", "hasOwnProperty=3"].map((name) => ({
      what: `a flag that every object has, ${name}`,
      args: ["formula", spec, `--${name}`],
      said: "there is no flag --",
    })),
    { what: "a prototype", args: ["formula", spec, "--__proto__", "1"], said: "there is no flag --__proto__" },
    {
      what: "a flag that is only said, with a value",
      args: ["formula", spec, "--working=no"],
      said: "--working takes no value",
    },
    { what: "an empty value", args: ["batch", spec, "--bowls="], said: "--bowls needs a value" },
    {
      what: "a flag before the command",
      args: ["--units", "us", "batch", spec],
      said: "--units stands before the command",
    },
    {
      what: "a bad flag and a bad form at once",
      args: ["formula", spec, "--dry", "--format", "yaml"],
      said: "there is no flag --dry",
    },
  ])("$what: no work is done, and the status is 2", async ({ args, said }) => {
    const { status, stdout, stderr } = await runHere(args);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(said);
    expect(stderr).toMatch(/See `noodlewright --help`\.\n$/u);
    expect(stderr).not.toMatch(/^ {4}at /mu);
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
      "noodlewright: there is no flag --wrking; did you mean --working?\nSee `noodlewright --help`.\n",
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
    { args: ["--bowls", "many"], flag: "--bowls", code: "spec.type", advice: "write it like --bowls '320'" },
    { args: ["--bowls", "2.5"], flag: "--bowls", code: "spec.type", advice: "write it like --bowls '320'" },
    { args: ["--bowls=-3"], flag: "--bowls", code: "spec.size", advice: "write it like --bowls '320'" },
    { args: ["--bowls", "1e3"], flag: "--bowls", code: "spec.type", advice: "write it like --bowls '320'" },
    { args: ["--bowls", "0"], flag: "--bowls", code: "spec.size", advice: "write it like --bowls '320'" },
    { args: ["--dough", "12"], flag: "--dough", code: "quantity.unreadable", advice: expect.stringContaining("12 kg") },
    { args: ["--dough=-1 kg"], flag: "--dough", code: "quantity.unreadable", advice: expect.stringContaining("zero") },
    {
      args: ["--raw-weight", "130 ml"],
      flag: "--raw-weight",
      code: "quantity.unreadable",
      advice: expect.stringContaining("measures volume"),
    },
    {
      args: ["--have", "nonsense"],
      flag: "--have",
      code: "spec.missing",
      advice: "write it like --have 'bread flour=3.2 kg'",
    },
    {
      args: ["--have", "rye flour=1 kg"],
      flag: "--have",
      code: "batch.unknown-ingredient",
      advice: expect.any(String),
    },
  ])("$args is refused by the name of the flag", async ({ args, flag, code, advice }) => {
    const { status, stdout, stderr } = await runHere(["batch", spec, ...args]);
    expect([status, stdout]).toEqual([2, ""]);
    expect(readProblems(stderr)).toMatchObject([{ where: flag, code, advice }]);
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

  test("a value below nothing is a value, and no flag", async () => {
    const { stderr } = await runHere(["batch", spec, "--dough", "-1 kg"]);
    expect(readProblems(stderr)).toMatchObject([{ where: "--dough", code: "quantity.unreadable" }]);
  });

  test("the help of a command tells each of its words, flags and examples, none broken where it is to be copied", async () => {
    const { status, stdout } = await runHere(["batch", "--help"]);
    expect(status).toBe(0);
    for (const name of ["spec", ...Object.keys(batchCommand.flags).map((flag) => `--${flag}`)]) {
      expect(stdout).toMatch(new RegExp(`^ +${name} {2,}\\S`, "mu"));
    }
    for (const [line] of batchCommand.examples) expect(stdout.split("\n")).toContain(`  ${line}`);
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
    examples: [],
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
