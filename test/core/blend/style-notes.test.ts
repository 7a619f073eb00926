import { styleNotes, styleRanges, styles } from "@noodlewright/core/explore";
import { expect, test } from "vitest";

test("a formula outside a range gets a note with the source, inside it gets none", () => {
  const outcome = styleNotes("okinawa soba", { protein: "10.8", ash: "0.40", water: "35", thickness: "1.8" });
  expect(outcome.ok && outcome.notes.map(({ code }) => code)).toEqual(["style.outside", "style.outside"]);
  expect(outcome.ok && outcome.notes[0]?.facts).toMatchObject({ quantity: "protein", range: "at least 11" });
});

test("a remembered range says so in its note", () => {
  const outcome = styleNotes("bamee", { protein: "10" });
  expect(outcome.ok && outcome.notes[0]?.facts).toMatchObject({ source: expect.stringContaining("[from memory]") });
});

test("every range has a side, and its low is not above its high", () => {
  expect(styles().length).toBeGreaterThan(8);
  for (const { style, quantity, low, high } of styleRanges()) {
    expect(low ?? high, `${style} ${quantity}`).toBeDefined();
    if (low !== undefined && high !== undefined)
      expect(Number(low), `${style} ${quantity}`).toBeLessThanOrEqual(Number(high));
  }
});
