import stringWidth from "string-width";
import { expect, test } from "vitest";
import { textWidth } from "#cli/render/text-width.ts";

test("each letter below U+10000 is as wide as the package of Unicode's widths says", () => {
  // Beginnings of pairs and joining marks have no width of their own: they stand between two letters.
  const letters = Array.from({ length: 0x1_0000 }, (_, code) => `a${String.fromCharCode(code)}a`);
  const wrong = letters.filter((text) => textWidth(text) !== stringWidth(text));
  expect(wrong.map((text) => text.charCodeAt(1).toString(16))).toEqual([]);
});
