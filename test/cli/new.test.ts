import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { readNoodleData } from "@noodlewright/core";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { kitchenProblems, kitchenSections } from "#cli/input/new-sections.ts";
import { starterSpec } from "#cli/input/starter-spec.ts";
import { splitWords } from "../docs/console-blocks.ts";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";
import { runHere } from "./in-process.ts";

const handout = "Harbour class noodles for 40 bowls\n1 kg strong flour\n380 ml water\nkansui 12 g\nturmeric 2 g\n";

async function newSpec(
  args: readonly string[],
  more: { readonly answers?: readonly string[]; readonly input?: string } = {},
) {
  const { status, stdout, stderr } = await runHere(["new", "-", ...args], more);
  return { status, stderr, text: stdout, spec: parse(stdout) as Record<string, unknown> };
}

describe("without a terminal", () => {
  test("the example is written where nothing is said, and loads", async () => {
    const { status, text, spec } = await newSpec([]);
    expect([status, text, readNoodleData(spec).ok]).toEqual([0, starterSpec, true]);
  });

  test("a formula from standard input becomes a spec; what is open, left out or taken for something is told", async () => {
    const { status, stderr, spec, text } = await newSpec(["--from", "-"], { input: handout });
    expect(status).toBe(0);
    expect(stderr).toMatch(/To know:\n {2}- line 2: "strong flour" may be any wheat flour/u);
    expect(stderr).toMatch(/not understood:\n {2}- line 5: turmeric 2 g/u);
    expect(stderr).toMatch(/filled in before it can be worked out:\n {2}- line 4: kansui 12 g/u);
    expect(spec).toMatchObject({ name: "Harbour class noodles", alkali: [{ name: "kansui", amount: "12 g" }] });
    expect(text).toContain("#   bowls: 40");
  });

  test("a line that is kept as a note is told", async () => {
    const { stderr } = await newSpec(["--from", "-"], { input: `${handout}Method\nKnead.\nRest 30 min\n` });
    expect(stderr).toContain("\nKept as a note: lines 7, 8\n");
  });

  test("a flag answers what a formula leaves open, and the spec then loads", async () => {
    const flags =
      "--from - --alkali 'Na2CO3 60 %, K2CO3 40 %' --flour 'strong flour, protein 12 %' --scale '1 g' --scale '0.1 g up to 500 g'";
    const { spec, stderr } = await newSpec(splitWords(flags), { input: handout });
    expect(stderr).not.toContain("To be filled in");
    expect(spec).toMatchObject({
      flours: [{ name: "strong flour", amount: "1 kg", figures: { protein: "12 %" } }],
      alkali: [{ name: "kansui", amount: "12 g", figures: { composition: { Na2CO3: "60 %", K2CO3: "40 %" } } }],
      scales: [{ division: "1 g" }, { division: "0.1 g", capacity: "500 g" }],
    });
    expect(readNoodleData(spec).ok).toBe(true);
  });

  test("bowls are obeyed: with what the notes make, or with a weight that is said; else they are refused", async () => {
    const notes = "Strong flour 1 kg, water 350 ml, salt 10g, kansui powder 12 g, makes 10";
    const { spec, text, stderr } = await newSpec(["--from", "-", "--bowls", "40"], { input: notes });
    expect(spec).toMatchObject({ batch: { bowls: 40, rawWeight: "137.1 g" }, salt: "10 g" });
    const workedOut = "137.1 g a bowl is worked out from the notes: 1371.4 g of dough for 10 bowls";
    expect(text).toContain(`# ${workedOut}\nbatch:`);
    expect(stderr).toContain(workedOut);
    const said = await newSpec(["--from", "-", "--bowls", "40", "--raw-weight", "130 g"], { input: notes });
    expect([said.spec["batch"], said.text.includes("worked out")]).toEqual([{ bowls: 40, rawWeight: "130 g" }, false]);
    for (const [flag, missing] of [
      ["--bowls=40", "--raw-weight"],
      ["--raw-weight=130 g", "--bowls"],
    ] as const) {
      const refused = await newSpec(["--from", "-", flag], { input: "bread flour 1 kg\nwater 350 g" });
      expect([refused.status, refused.text, refused.stderr]).toEqual([2, "", expect.stringContaining(`${missing}: [`)]);
    }
  });

  test("flags alone make a formula", async () => {
    const kitchen = "--bowls 40 --raw-weight '130 g' --rolls '145 mm wide, 1 to 5 mm, cutter 2 mm'";
    const flours = "--name 'Evening noodle' --flour 'bread flour, protein 12 %' --water '36 %' --salt '1 %'";
    const { spec } = await newSpec(splitWords(`${flours} --alkali 'sodium carbonate 1 %' ${kitchen}`));
    expect(spec).toEqual({
      name: "Evening noodle",
      flours: [{ name: "bread flour", amount: "100 %", figures: { protein: "12 %", proteinBasis: "as is" } }],
      water: { tap: "36 %" },
      alkali: [{ name: "sodium carbonate", amount: "1 %" }],
      salt: "1 %",
      batch: { bowls: 40, rawWeight: "130 g" },
      machines: { rolls: { width: "145 mm", gap: { least: "1 mm", greatest: "5 mm" }, cutters: [{ size: "2 mm" }] } },
    });
    expect(readNoodleData(spec).ok).toBe(true);
  });

  test.each([
    { rolls: "6 in wide, gap 1/32 to 1/4 in, cutter 2 mm", least: "0.03125 in", greatest: "0.25 in" },
    { rolls: "6 1/2 in wide, 1⁄16–1½ in, cutter 20", least: "0.0625 in", greatest: "1.5 in" },
  ])("fractions of an inch are read in $rolls", ({ rolls, least, greatest }) => {
    const { sections } = kitchenSections({ rolls });
    expect(sections).toMatchObject({ machines: { rolls: { gap: { least, greatest } } } });
    expect(kitchenProblems({ rolls })).toEqual([]);
  });

  test("a style begins with the formula that a source prints for it, and a flag goes before it", async () => {
    const args = ["new", "-", "--style", "Yellow Alkaline", "--flour", "bread flour", "--salt", "2 %"];
    const { status, stdout } = await runHere(args);
    const spec = parse(stdout);
    expect([status, spec.style, spec.water, spec.salt]).toEqual([0, "yellow alkaline", { tap: "34 %" }, "2 %"]);
    expect(spec.alkali.map(({ amount }: { readonly amount: string }) => amount)).toEqual(["0.9 %", "0.1 %"]);
    expect(spec.notes).toContain("Hatcher");
    expect(spec.notes).toContain(": water, alkali. The rest is your own.");
    const own = [...args, "--water", "36 %", "--alkali", "sodium carbonate 1 %"];
    expect(parse((await runHere(own)).stdout).notes).toBeUndefined();
    const none = await runHere(["new", "-", "--style", "ramen", "--flour", "bread flour"]);
    expect([none.status, parse(none.stdout).alkali, parse(none.stdout).style]).toEqual([0, undefined, "ramen"]);
    const unknown = await runHere(["new", "-", "--style", "spaghetti"]);
    expect([unknown.status, unknown.stderr]).toEqual([2, expect.stringContaining("--style: [style.unknown]")]);
  });

  test("a flag that cannot be right is refused by its name, and nothing is written", async () => {
    const { status, text, stderr } = await newSpec(["--water", "36 %", "--scale", "5", "--bowls", "many"]);
    expect([status, text]).toEqual([2, ""]);
    expect(stderr).toMatch(/^--bowls: .*\n(.*\n)*--scale: /u);
    expect(stderr).toContain("nothing was written");
  });

  test("a file is named that there is not", async () => {
    const { status, stderr } = await newSpec(["--from", "no-such-notes.txt"]);
    expect([status, stderr]).toEqual([2, expect.stringContaining("no file of this name")]);
  });
});

test("commas that can only stand before decimals are read in what the kitchen says, as in the formula", () => {
  const words = {
    bowls: "4",
    rawWeight: "120,5 g",
    scales: ["0,1 g up to 1,5 kg"],
    rolls: "145,5 mm wide, cutter 1,5 mm",
  };
  expect([kitchenSections(words).sections, kitchenProblems({ ...words, scales: ["1,250 kg"] }).length]).toEqual([
    {
      batch: { bowls: 4, rawWeight: "120.5 g" },
      scales: [{ division: "0.1 g", capacity: "1.5 kg" }],
      machines: { rolls: { width: "145.5 mm", cutters: [{ size: "1.5 mm" }] } },
    },
    expect.toSatisfy((problems: number) => problems > 0),
  ]);
});

describe("at a terminal", () => {
  test("the cook is asked what the formula leaves open, then what the kitchen has", async () => {
    const { status, spec, stderr } = await newSpec([], {
      answers: [handout, "60 % Na2CO3, 40 % K2CO3", "protein 12 %, moisture 13.5 %", "130 g", "5", "1 g, 0,1 g", ""],
    });
    expect(status).toBe(0);
    expect(spec).toMatchObject({
      flours: [{ name: "strong flour", figures: { protein: "12 %", moisture: "13.5 %" } }],
      alkali: [{ name: "kansui", figures: { composition: { Na2CO3: "60 %", K2CO3: "40 %" } } }],
      batch: { bowls: 40, rawWeight: "130 g" },
      scales: [{ division: "1 g" }, { division: "0.1 g" }],
    });
    expect(spec).not.toHaveProperty("machines");
    expect(stderr).toContain('Add the unit: "5 g" or "5 kg".');
    expect(readNoodleData(spec).ok).toBe(true);
  });

  test("what a bag says without a word of what it is, is asked again", async () => {
    const { spec } = await newSpec([], {
      answers: ["bread flour 1 kg\nwater 380 g\nsoda ash 8 g", "12,5 %", "protein 12,5 %", "", "", "", ""],
    });
    expect(spec).toMatchObject({ flours: [{ name: "bread flour", amount: "1 kg", figures: { protein: "12.5 %" } }] });
  });

  test("an answer that is not given leaves its key out or its place open, and invents no figure", async () => {
    const { spec, text } = await newSpec([], { answers: ["2 cups flour\nwater 90 g", "", "", "", "", "", "", ""] });
    expect(spec).toEqual({
      name: "Noodles",
      flours: [{ name: "flour", amount: null, figures: { kind: "flour", allergens: ["wheat"] } }],
      water: { tap: "90 g" },
    });
    expect(text).toContain("180 to 325 g");
  });

  test("an empty line alone writes the example", async () => {
    expect((await newSpec([], { answers: [""] })).text).toBe(starterSpec);
  });

  test("to break off writes nothing", async () => {
    const { status, text, stderr } = await newSpec([], { answers: [handout] });
    expect([status, text]).toEqual([2, ""]);
    expect(stderr).toContain("nothing was written");
  });

  const pseudoTerminal =
    spawnSync("script", ["--version"], { encoding: "utf8" }).stdout?.includes("util-linux") === true;

  test.runIf(pseudoTerminal)("a real one: a pasted text with an empty line in it, then the answers", async () => {
    const folder = folderFor({});
    const command = fileURLToPath(new URL("../../packages/cli/bin/noodlewright.cjs", import.meta.url));
    const script = spawn("script", ["-qec", `'${process.execPath}' '${command}' new`, "/dev/null"], {
      cwd: folder,
      env: { ...process.env, NO_COLOR: "1" },
    });
    // Each answer is typed when its question stands there, however long the machine takes to ask it.
    const typed: readonly (readonly [question: string, answer: string])[] = [
      ["What do you have written down?", "bread flour 1 kg\n\nwater 380 g\nsoda ash 8 g\n\n"],
      ["What does the bag of bread flour say?", "protein 12 %\n"],
      ["For how many bowls?", "40\n"],
      ["goes into a bowl?", "130 g\n"],
      ["smallest step", "1 g\n"],
      ["What rolls and cutter?", "\n"],
    ];
    let shown = "";
    let next = 0;
    script.stdout.on("data", (text: Buffer) => {
      shown += text.toString();
      const [question, answer] = typed[next] ?? [];
      if (question === undefined || answer === undefined || !shown.includes(question)) return;
      next += 1;
      script.stdin.write(answer);
    });
    await once(script, "close");
    expect(next).toBe(typed.length);
    expect(existsSync(join(folder, "noodle.yaml"))).toBe(true);
    expect(parse(readFileSync(join(folder, "noodle.yaml"), "utf8"))).toMatchObject({
      flours: [{ name: "bread flour", amount: "1 kg", figures: { protein: "12 %" } }],
      alkali: [{ name: "soda ash", amount: "8 g" }],
      batch: { bowls: 40, rawWeight: "130 g" },
    });
  });
});

test("the built command neither waits nor asks where there is no terminal", () => {
  const { status, stdout } = runBuilt(["new", "-"]);
  expect([status, stdout]).toEqual([0, starterSpec]);
});

test("flours with shares of their own are taken at them, and a misspelt one is asked about", async () => {
  const two = ["new", "-", "--flour", "bread flour 80 %", "--flour", "rye flour 20 %", "--water", "36 %"];
  const { stdout, stderr } = await runHere(two);
  expect(stderr).toBe("");
  expect(parse(stdout).flours).toEqual([
    { name: "bread flour", amount: "80 %" },
    { name: "rye flour", amount: "20 %" },
  ]);
  for (const flours of [
    ["bread flour", "semolina 30 %"],
    ["semolina 30 %", "bread flour"],
  ]) {
    const rest = await runHere(["new", "-", ...flours.flatMap((one) => ["--flour", one]), "--water", "36 %"]);
    expect(rest.stdout).toContain("  - name: bread flour\n    amount: rest\n");
  }
  const misspelt = await runHere(["new", "-", "--flour", "bred flour", "--water", "36 %"]);
  expect(misspelt.stderr).toContain('did you mean "bread flour"');
  expect(parse(misspelt.stdout).name).toBe("Noodles");
});
