import { expect, test } from "vitest";
import { answered } from "./built.ts";

const sized = (size: string): string =>
  `name: test\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\nbatch: { ${size}, rawWeight: 110 g }\ntemperature: { dough: 25 °C, flour: 20 °C, room: 20 °C, tap: 10 °C }\n`;

// a dough and a flour are a size of the batch, and have a temperature: flags about the one leave the other alone
test.each([
  { size: "dough: 20 kg", flags: ["--bowls", "40", "--dough-at", "26 °C"], dough: "4400 g" },
  { size: "flour: 20 kg", flags: ["--bowls", "40", "--flour-at", "21 °C"], dough: "4400 g" },
  { size: "bowls: 20", flags: ["--dough", "5kg"], dough: "5000 g" },
])("$flags takes the place of $size in the spec", ({ size, flags, dough }) => {
  const shown = answered(["water-temperature", "-", ...flags], { input: sized(size) });
  expect(shown).toMatch(new RegExp(`dough +${dough}\\n`, "u"));
});
