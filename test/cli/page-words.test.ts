import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { words } from "#cli/page/words.ts";

const cli = fileURLToPath(new URL("../../packages/cli/src", import.meta.url));
const sources = readdirSync(cli, { recursive: true, encoding: "utf8" })
  .filter((name) => /(?:^page.+|bench-page)\.tsx?$/u.test(name) && !name.endsWith("words.ts"))
  .map((name) => readFileSync(`${cli}/${name}`, "utf8"))
  .join("\n");

/** Every word with the group it stands in: `["weigh", "lot"]`. */
function placesIn(group: object, name: string): readonly (readonly [string, string])[] {
  return Object.entries(group).flatMap(([key, value]): readonly (readonly [string, string])[] =>
    typeof value === "object" && value !== null ? placesIn(value, key) : [[name, key]],
  );
}

test("every word of the page is one that it says", () => {
  // By name, `weigh.lot`, or from a list of keys, `size[stage]`.
  const isSaid = ([group, key]: readonly [string, string]): boolean => {
    const byName = new RegExp(String.raw`\b${group}\.${key}\b`, "u").test(sources);
    const listed = sources.includes(`${group}[`) && new RegExp(String.raw`"${key}"|\b${key}:`, "u").test(sources);
    return byName || listed;
  };
  const all = placesIn(words, "words");
  expect(all.length).toBeGreaterThan(150);
  expect(all.filter((place) => !isSaid(place))).toEqual([]);
});
