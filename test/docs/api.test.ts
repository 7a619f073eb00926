import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import manifest from "../../packages/core/package.json" with { type: "json" };

// What the library shows: every name of every door with its declaration. A change of it is made on purpose:
// UPDATE_API=1 npx vitest run --config test/vitest.config.ts test/docs/api.test.ts

const core = new URL("../../packages/core/", import.meta.url);
const report = new URL("api.md", core);

interface Exported {
  readonly name: string;
  /** Its name in the file that declares it. */
  readonly own: string;
  readonly file: URL;
}

/** The names that a door shows, in alphabetical order. */
function exportedBy(door: URL): readonly Exported[] {
  const lists = [...readFileSync(door, "utf8").matchAll(/^export (?:type )?\{([^}]*)\} from "([^"]+)\.ts";/gmu)];
  return lists
    .flatMap(([, list = "", target = ""]) =>
      list.split(",").map((item) => {
        const [own = "", name = own] = item
          .trim()
          .replace(/^type /u, "")
          .split(" as ");
        return { name, own, file: new URL(`${target}.d.ts`, door) };
      }),
    )
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Declarations that stand behind names of doors without a comment of their own. */
const uncommented = new Set<string>();

/** The declaration of a name, its comments left out. */
function declarationOf({ name, own, file }: Exported): string {
  const whole = readFileSync(file, "utf8");
  const text = whole.replace(/^\s*\/\*\*[\s\S]*?\*\/\n/gmu, "");
  const start = new RegExp(
    `^export (?:declare )?(?:abstract )?(?:function|const|class|interface|type) ${own}\\b`,
    "mu",
  );
  const from = text.search(start);
  const [passedOn] = from < 0 ? exportedBy(file).filter((one) => one.name === own) : [];
  if (passedOn !== undefined) return declarationOf({ ...passedOn, name });
  if (from < 0) throw new Error(`${file.pathname} declares no ${own}`);
  const commented = whole.slice(0, whole.search(start)).endsWith("*/\n");
  if (!commented) uncommented.add(own);
  const rest = text.slice(from);
  const end = rest.search(/\n(?=export |declare |interface |type |import |\/\/#|\/\/ )/u);
  const declaration = (end < 0 ? rest : rest.slice(0, end)).trim().replace(/^export (?:declare )?/u, "");
  return name === own ? declaration : `// as ${name}\n${declaration}`;
}

function written(): string {
  const doors = Object.entries(manifest.exports).flatMap(([path, entry]) =>
    typeof entry === "string" ? [] : [{ path, door: new URL(entry.types, core) }],
  );
  const chapters = doors.map(({ path, door }) => {
    const names = exportedBy(door);
    const declarations = names.map(declarationOf).join("\n");
    return `## @noodlewright/core${path.slice(1)}\n\n${names.length} names.\n\n\`\`\`ts\n${declarations}\n\`\`\`\n`;
  });
  return `# What the library shows\n\n${chapters.join("\n")}`;
}

test("what the library shows is what its report says", () => {
  const now = written();
  if (process.env["UPDATE_API"] === "1") writeFileSync(report, now);
  expect(existsSync(report) ? readFileSync(report, "utf8") : "").toBe(now);
});

test("every name of a door says what it is", () => {
  written();
  expect([...uncommented]).toEqual([]);
});

test("no function of a door gives a number that is not plain data", () => {
  const functions = written()
    .split(/\n(?=function )/u)
    .filter((one) => one.startsWith("function "));
  expect(functions.length).toBeGreaterThan(100);
  const results = functions.map((one) => one.slice(0, one.indexOf(";\n"))).filter((one) => /\): Decimal\b/u.test(one));
  expect(results).toEqual([]);
});
