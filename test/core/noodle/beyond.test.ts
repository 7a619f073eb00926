import {
  askBatch,
  goesBeyond,
  missed,
  type Noodle,
  readNoodleData,
  readStatedNoodle,
  settle,
} from "@noodlewright/core";
import { describe, expect, it } from "vitest";
import { cellsOf, workbookFor } from "../workbook/kit.ts";

const plain = {
  name: "plain",
  flours: [{ name: "bread flour", amount: "100 %" }],
  water: { added: "36 %" },
  batch: { dough: "2 kg" },
};

/** Codes of the notes on the batch of a noodle. */
function notesOf(reading: ReturnType<typeof readStatedNoodle>): readonly string[] {
  const answer = reading.ok ? askBatch(reading.value) : reading;
  return answer.ok ? answer.notes.map(({ code }) => code) : answer.problems.map(({ code }) => code);
}

describe("what a noodle is read with beyond its own sums", () => {
  it("is asked for by an amount to be found and by what is wanted, and by nothing else", () => {
    expect(goesBeyond(plain)).toBe(false);
    expect(goesBeyond({ ...plain, notes: "find the large bowl" })).toBe(false);
    expect(goesBeyond({ ...plain, salt: "find" })).toBe(true);
    expect(goesBeyond({ ...plain, wanted: { addedWater: "38 %" } })).toBe(true);
  });

  it("refuses an amount left open where nothing finds it", () => {
    const open = { ...plain, water: { added: "find" }, wanted: { addedWater: "38 %" } };
    expect(notesOf(readStatedNoodle(open))).toEqual(["quantity.unreadable"]);
    expect(notesOf(readStatedNoodle(open, {}, { settle }))).toContain("settle.found");
  });

  it("tells what is missed only where the program takes that in, and all of it by `readNoodleData`", () => {
    const wishful = { ...plain, wanted: { addedWater: "40 %" } };
    expect(notesOf(readStatedNoodle(wishful))).not.toContain("wanted.missed");
    expect(notesOf(readStatedNoodle(wishful, {}, { missed }))).toEqual(notesOf(readNoodleData(wishful)));
    expect(notesOf(readNoodleData(wishful))).toContain("wanted.missed");
  });
});

describe("what is wanted where a price is missing", () => {
  const noodle = (wanted: object, prices?: object): Noodle => {
    const bread = { name: "bread flour", amount: "rest", figures: { protein: "12 %", proteinBasis: "14 % mb" } };
    const batch = { bowls: 20, rawWeight: "150 g" };
    const data = { name: "harbour", flours: [bread], water: { added: "36 %" }, salt: "1 %", batch, wanted };
    const reading = readNoodleData(prices === undefined ? data : { ...data, prices });
    if (!reading.ok) throw new Error("the spec is refused");
    return reading.value;
  };
  const codes = (one: Noodle): readonly string[] => missed(one).map(({ code }) => code);

  it("a want of protein is held though a flour has no price", () => {
    expect(codes(noodle({ protein: "at least 15 %", price: "1 EUR/kg" }))).toEqual([
      "wanted.missed",
      "wanted.no-blend",
    ]);
    expect(codes(noodle({ protein: "at least 11 %", price: "1 EUR/kg" }))).toEqual(["wanted.no-blend"]);
  });

  it("a bowl is never within its price while an ingredient has none", () => {
    expect(codes(noodle({ bowlPrice: "0.05 EUR" }, { salt: "1 EUR/kg" }))).toEqual(["wanted.prices"]);
    expect(codes(noodle({ bowlPrice: "0.05 EUR" }, { salt: "1000 EUR/kg" }))).toEqual([
      "wanted.missed",
      "wanted.prices",
    ]);
    const cells = cellsOf(workbookFor(noodle({ bowlPrice: "0.05 EUR" }, { salt: "1 EUR/kg" })));
    const texts = cells.filter(({ sheet }) => sheet === "Noodle").map(({ cell }) => cell.value);
    expect(texts).not.toContain("met");
    expect(texts).toContain("cannot be told: prices are missing");
  });
});
