import { describe, expect, test } from "vitest";
import { answered, reported, runBuilt } from "./built.ts";
import { readCsv } from "./read-csv.ts";

const school = ["nutrition", "examples/school-noodle.yaml"];

function shown(args: readonly string[]): string {
  return answered(args).replace(/\s+/gu, " ");
}

describe("noodlewright nutrition", () => {
  test("tells milligrams without tenths", () => {
    const rows = runBuilt(school)
      .stdout.split("\n")
      .filter((line) => line.includes(", mg "));
    expect(rows.length).toBeGreaterThanOrEqual(2);
    for (const row of rows) expect(row).toMatch(/, mg(?: +\d+(?: \d{3})*)+$/u);
  });

  test("tells raw and cooked, declared by the rules, and that it is no label", () => {
    const text = shown(school);
    expect(text).toContain("As the rules of the European Union round it, for 100 g");
    expect(text).toContain("Contains: wheat (cereal containing gluten), in mill strong flour and whole wheat flour.");
    expect(text).toContain("ask for the certificate: barley");
    expect(text).toContain("not a label: the law of the place and an accredited laboratory decide");
  });

  test("declares a serving in the United States, and goes by the list of another place", () => {
    const text = shown([...school, "--rules", "US", "--jurisdiction", "CA"]);
    expect(text).toContain("As the rules of the United States round it, for a bowl");
    expect(text).toContain("Allergens, by the list of Canada");
    const rows = readCsv(runBuilt([...school, "--rules", "US", "--table", "declared", "--format", "csv"]).stdout);
    // 110 g of 137: (1 × 387.58 + 0.6 × 433.82 + flour 2) × 110/137 = 522 mg; to 10 mg above 140, 21 CFR 101.9(c)(4)
    expect(rows.find(([name]) => name === "sodium, mg")?.[2]).toBe("520");
  });

  test("tells fish, nuts and refined oil by what the list of the place names", () => {
    const ingredient = (name: string, tag: string): string =>
      `{ name: ${name}, amount: 1 %, figures: { kind: other, moisture: 5 %, allergens: [${tag}] } }`;
    const foods = [ingredient("bonito powder", "fish"), ingredient("almond flour", "almond")].join(", ");
    const input = `name: t\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\ningredients: [${foods}, { name: soybean oil, amount: 1 % }]\n`;
    const by = (place: string): string =>
      runBuilt(["nutrition", "-", "--jurisdiction", place], { input }).stdout.replace(/\s+/gu, " ");
    expect(by("JP")).toContain("Contains: wheat, in bread flour.");
    expect(by("JP")).toContain(
      "should be named: almond, in almond flour; soybeans: refined soybean oil, in soybean oil.",
    );
    expect(by("JP")).toContain(
      "ask which it is: fish (the list names salmon roe, salmon, mackerel), in bonito powder.",
    );
    expect(by("US")).toContain("tree nuts: almond (the nut has to be named), in almond flour; wheat");
    expect(by("US")).toContain("Exempt where it is highly refined, ask the supplier: soybeans, in soybean oil.");
    expect(by("CN")).toContain("cereals containing gluten: wheat, in bread flour; fish, in bonito powder");
    expect(by("CODEX")).toContain("where the country says so: soybeans: refined soybean oil, in soybean oil.");
  });

  test("takes the weight of a bowl and the cook gain from the flags", () => {
    const report = reported([...school, "--cooked-weight", "230 g", "--cook-gain", "2"]);
    expect(report.figures["bowl.raw"]?.value).toBe("115");
    const [raw, cooked] = ["raw.fat", "cooked.fat"].map((id) => Number(report.figures[id]?.value));
    expect((raw ?? 0) / (cooked ?? 1)).toBeCloseTo(2, 9);
  });

  test("the working of salt leads to sodium, the parts and the tables", () => {
    const text = shown([...school, "--figure", "raw.salt"]);
    for (const word of ["sodium × 2.5", "Annex I point 11", "its composition and atomic weights", "NDB 02047"])
      expect(text).toContain(word);
  });

  test.each([
    [["--rules", "UK"], "one of: US, EU, JP"],
    [["--jurisdiction", "FR"], "--jurisdiction: [spec.choice]"],
    [["--cook-gain", "much"], "--cook-gain"],
    [["--cooked-weight", "230"], "add the unit"],
  ] as const)("%s is refused", (flags, words) => {
    const { status, stderr } = runBuilt([...school, ...flags]);
    expect(status).toBe(2);
    expect(stderr).toContain(words);
  });
});
