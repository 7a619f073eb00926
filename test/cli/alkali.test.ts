import { describe, expect, it } from "vitest";
import { splitWords } from "../docs/console-blocks.ts";
import { reported, runBuilt } from "./built.ts";

/** Runs a line as a shell would take it apart. */
const alkali = (line: string) => runBuilt(splitWords(`alkali ${line}`));
const report = (line: string) => reported(splitWords(`alkali ${line}`));

const tray = "bake --before '500 g' --after '330 g'";

describe("the three everyday swaps", () => {
  it("a powder of one ratio becomes two pure salts", () => {
    const powder = "convert 'alkali powder 6 to 4' 'sodium carbonate' 'potassium carbonate' --dose '45 g'";
    const { figures, notes } = report(`${powder} --materials examples/harbour-store.yaml`);
    const grams = ["1", "2"].map((place) => figures[`convert.amount.${place}`]?.value);
    // 45 g of 58.8 % Na2CO3 and 39.2 % K2CO3, by hand
    expect(grams.map(Number)).toEqual([expect.closeTo(26.46, 9), expect.closeTo(17.64, 9)]);
    expect(Number(figures["convert.water-off"]?.value)).toBeCloseTo(-0.9, 9);
    expect(notes.map(({ code }) => code)).toEqual(["alkali.additive-limits"]);
  });

  it("a bottle of solution becomes powder, and its water goes back to the tap", () => {
    const { stdout } = alkali("convert 'K2CO3 30 %, water rest' 'potassium carbonate' --dose '3 %' --water '36 %'");
    expect(stdout).toMatch(/weigh +potassium carbonate +0\.90 g +0\.900/u);
    expect(stdout).toContain("Add 2.10 g to the tap water: the dough keeps the water it had.");
    expect(stdout).toMatch(/pH of the solution at 20 °C.* ± /u);
    expect(stdout).toContain("and not of the dough");
  });

  it("baked soda meets a written dose of sodium carbonate", () => {
    const { figures, cautions } = report(`${tray} --for 'sodium carbonate' --dose '40 g'`);
    // 170 g lost of the 184.58 g that a full conversion loses (NaHCO3 84.007, Na2CO3 105.99 g/mol), by hand
    expect(Number(figures["baking.conversion"]?.value)).toBeCloseTo(92.1, 1);
    expect(Number(figures["convert.amount.1"]?.value)).toBeCloseTo(41.85, 1);
    expect(cautions.join(" ")).toMatch(/label/u);
  });
});

describe("baked soda", () => {
  it("meets a dose of the salt that is named: 12 g of potassium carbonate are 9.20 g of sodium carbonate", () => {
    const { figures } = report(`${tray} --for 'potassium carbonate' --dose '12 g'`);
    // 12 × 105.988 / 138.204 g of Na2CO3 would do; the salt baked to 92.1 % is 0.9558 as strong by M, by hand
    expect(Number(figures["convert.amount.1"]?.value)).toBeCloseTo(9.628, 2);
  });

  it("asks of which salt a dose is", () => {
    const { status, stderr } = alkali(`${tray} --dose '12 g'`);
    expect(status).toBe(2);
    expect(stderr).toContain("the product that the dose is of");
  });

  it("comes with its assumption, oven and cautions where it is named", () => {
    const { notes, cautions } = report("convert 'baked soda' 'potassium carbonate' --dose '10 g'");
    expect(notes.filter(({ code }) => code === "materials.note")).toHaveLength(2);
    expect(cautions[0]).toMatch(/^Baked soda is far more alkaline/u);
  });
});

describe("the other members", () => {
  it.each([
    [
      "make 'potassium carbonate' 'sodium carbonate' --ratio '6 to 4' --strength '20 %' --amount '2 kg'",
      [/potassium carbonate +240\.0/u, /sodium carbonate +160\.0/u, /water +1600\.0/u, /solution as weighed +2000\.0/u],
    ],
    ["dilute 'K2CO3 40 %, water rest' --amount '500 g' --strength '20 %'", [/water to add +500\.0/u]],
    [
      "blend 'Na2CO3 15 %, water rest' 'K2CO3 40 %, water rest' --strength '15 %' --potassium '60 %' --amount '1 kg'",
      [/Na2CO3 15 %, water rest +400\.0/u, /water +375\.0/u],
    ],
    [
      "correct 'Na2CO3 9 %, water rest' 'sodium carbonate' --amount '1 kg' --strength '10 %'",
      [/sodium carbonate to add +11\.1/u],
    ],
    [
      "strength 'Na2CO3 10 %, water rest'",
      [/strength by mass +10\.00 % w\/w/u, /density at 20 °C +1\.10/u, /pH of the solution/u],
    ],
    ["strength K2CO3 --weighed '124 g' --volume '100 mL'", [/From the reading/u, /reading error/u]],
    ["assay Na2CO3 --alkalinity '58 % as Na2O'", [/sodium carbonate, Na2CO3 +99\.1/u]],
    ["stock 'sodium carbonate' --dose '8 g' --loads 4", [/stock for a load/u, /stays? clear/u]],
    [
      "stock --spec examples/school-noodle.yaml --division '5 g' --storage '4 °C'",
      [/sodium carbonate +\d+/u, /potassium carbonate +\d+/u],
    ],
    ["list potassium hydroxide", [/KOH/u, /E 525/u, /Danger/u]],
  ] as const)("%s", (line, expected) => {
    const { status, stdout, stderr } = alkali(line);
    expect([status, stderr]).toEqual([0, ""]);
    for (const pattern of expected) expect(stdout).toMatch(pattern);
  });

  it("makes the stock that the batch asks for, with its scales, tolerance and loads", () => {
    const spec = "examples/barley-egg-noodle.yaml";
    const { figures } = report(`stock --spec ${spec}`);
    const told = reported(["batch", spec]);
    const shared = Object.keys(told.figures).filter((id) => id.startsWith("common-stock."));
    expect(shared).toContain("common-stock.per-load");
    const compared = shared.filter((id) => figures[id] !== undefined);
    expect(compared.length).toBeGreaterThan(4);
    for (const id of compared) expect(figures[id]?.value).toBe(told.figures[id]?.value);
  });

  it("takes a hydrometer at its own temperature unless one is named", () => {
    const percent = (more = "") =>
      Number(report(`strength K2CO3 --reading '20 °Bé' ${more}`).figures["hydrometer.mass-percent"]?.value);
    const [own, stated, warmer] = [percent(), percent("--temperature '15.6 °C'"), percent("--temperature '20 °C'")];
    expect(own).toBeCloseTo(stated, 2);
    expect(warmer).toBeGreaterThan(own + 0.05);
  });

  it("says when a scale is too coarse", () => {
    const coarse = report("make Na2CO3 --strength '10 %' --amount '30 g' --division '2 g'");
    expect(coarse.notes.map(({ code }) => code)).toContain("solutions.coarse-scale");
  });

  it("prints the working and CSV of one table", () => {
    expect(alkali(`${tray} --figure baking.conversion`).stdout).toContain(
      "= 100 × (500 − (330 − 0)) ÷ (500 × 100 ÷ 100",
    );
    expect(alkali(`${tray} --format csv`).stdout).toMatch(/^part,% of the product\r\n"sodium carbonate, Na2CO3",/u);
  });

  it("says in the help how to call each", () => {
    expect(alkali("--help").stdout).toMatch(/convert <from> <to\.\.>/u);
    expect(alkali("convert --help").stdout).toContain("a powder of one ratio to the two pure salts");
  });
});

it("corrects a batch by a reading as `strength` reads it, and says what overfills the tank", () => {
  const read = "--reading '16.4 °Bé' --temperature '12 °C'";
  const strength = report(`strength Na2CO3 ${read}`).figures["hydrometer.mass-percent"]?.value;
  const asked = "--amount '4.2 kg' --strength '11 %' --tank '4 L'";
  const { figures, notes } = report(`correct Na2CO3 'sodium carbonate' ${read} ${asked}`);
  // Water brings the mass up by the ratio of the strengths.
  expect(Number(figures["solutions.water"]?.value)).toBeCloseTo(4200 * (Number(strength) / 11 - 1), 6);
  expect(notes.map(({ code }) => code)).toEqual(
    expect.arrayContaining(["strength.read-at", "solutions.batch-within", "solutions.tank"]),
  );
});

it("replaces a product in a spec, with the water of the dough kept", () => {
  const { status, stdout } = runBuilt(["formula", "examples/one-bottle.yaml"]);
  expect(status).toBe(0);
  expect(stdout).toMatch(/added water +36\.00 % of flour/u);
  expect(stdout).toMatch(/potassium carbonate sesquihydrate +0\.55/u);
});

describe("bad input", () => {
  it.each([
    [
      "convert 'sodum carbonate' 'potassium carbonate' --dose 45",
      2,
      [/<from>.*\[product\.unknown\]/u, /--dose.*\[quantity\.unreadable\]/u, /2 problems/u],
    ],
    ["make Na2CO3 K2CO3 --ratio 6 --strength '20 %'", 2, [/--ratio/u, /--amount.*\[flag\.missing\]/u]],
    ["stock --spec examples/nothing.yaml", 2, [/no file/u]],
    ["list plutonium", 1, [/alkali\.none/u]],
  ] as const)("%s ends with %i", (line, ended, expected) => {
    const { status, stdout, stderr } = alkali(line);
    expect([status, stdout]).toEqual([ended, ""]);
    for (const pattern of expected) expect(stderr).toMatch(pattern);
  });
});
