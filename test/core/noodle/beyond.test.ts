import { askBatch, goesBeyond, missed, readNoodleData, readStatedNoodle, settle } from "@noodlewright/core";
import { describe, expect, it } from "vitest";

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
