import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { expect, test } from "vitest";
import manifest from "../../packages/core/package.json" with { type: "json" };

// What the library shows: every name of every door with its declaration. A change of it is made on purpose:
// UPDATE_API=1 npx vitest run --config test/vitest.config.ts test/docs/api.test.ts

const core = new URL("../../packages/core/", import.meta.url);
const report = new URL("api.md", core);

interface Named {
  readonly name: string;
  /** Its name in the file that it comes from. */
  readonly own: string;
  readonly file: URL;
}

/** The names that a file takes from others of the library to use them, or passes on, in alphabetical order. */
function namesOf(file: URL, what: "import" | "export"): readonly Named[] {
  const lists = readFileSync(file, "utf8").matchAll(
    new RegExp(`^${what} (?:type )?\\{([^}]*)\\} from "(\\.[^"]+)\\.ts";`, "gmu"),
  );
  return [...lists]
    .flatMap(([, list = "", target = ""]) =>
      [...list.matchAll(/(?:\btype )?(\w+)(?: as (\w+))?/gu)].map(([, own = "", name = own]) => ({
        name,
        own,
        file: new URL(`${target}.d.ts`, file),
      })),
    )
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Where a name is declared that a file passes on. */
function declared(one: Named): Named {
  const [passedOn] = namesOf(one.file, "export").filter(({ name }) => name === one.own);
  return passedOn === undefined ? one : declared(passedOn);
}

/** Declarations that stand behind names of doors without a comment of their own. */
const uncommented = new Set<string>();

/** The declaration of a name, its comments left out. */
function declarationOf(shown: Named): string {
  const { name } = shown;
  const { own, file } = declared(shown);
  const whole = readFileSync(file, "utf8");
  const text = whole.replace(/^\s*\/\*\*[\s\S]*?\*\/\n/gmu, "");
  const start = new RegExp(
    `^export (?:declare )?(?:abstract )?(?:function|const|class|interface|type) ${own}\\b`,
    "mu",
  );
  const from = text.search(start);
  if (from < 0) throw new Error(`${file.pathname} declares no ${own}`);
  const commented = whole.slice(0, whole.search(start)).endsWith("*/\n");
  if (!commented) uncommented.add(own);
  const rest = text.slice(from);
  // The declarations of a function that has several follow one another.
  const next = `export (?!declare function ${own}\\b)|declare |interface |type |import |//#|// `;
  const end = rest.search(new RegExp(`\\n(?=${next})`, "u"));
  const declaration = (end < 0 ? rest : rest.slice(0, end)).trim().replace(/^export (?:declare )?/gmu, "");
  return name === own ? declaration : `// as ${name}\n${declaration}`;
}

const doors = Object.entries(manifest.exports).flatMap(([path, entry]) =>
  typeof entry === "string" ? [] : [{ path, names: namesOf(new URL(entry.types, core), "export") }],
);

function written(): string {
  const chapters = doors.map(({ path, names }) => {
    const declarations = names.map(declarationOf).join("\n");
    return `## @noodlewright/core${path.slice(1)}\n\n${names.length} names.\n\n\`\`\`ts\n${declarations}\n\`\`\`\n`;
  });
  return `# What the library shows\n\nIn the examples of the comments, \`example("school-noodle")\` stands for the noodle that \`readNoodleData\` gives for \`examples/school-noodle.yaml\`.\n\n${chapters.join("\n")}`;
}

test("what the library shows is what its report says", () => {
  const now = written();
  if (process.env["UPDATE_API"] === "1") writeFileSync(report, now);
  expect(existsSync(report) ? readFileSync(report, "utf8") : "").toBe(now);
});

test("the first door shows no more than a program needs", () => {
  expect(doors.find(({ path }) => path === ".")?.names.length).toBeLessThanOrEqual(45);
});

/** A declaration is known by its file and its name there. */
function placeOf(one: Named): string {
  const { own, file } = declared(one);
  return `${file.pathname.slice(core.pathname.length)} ${own}`;
}

/** The types of the library that the declaration of a name needs. */
function typesIn(shown: Named): readonly string[] {
  const { file } = declared(shown);
  const own = [...readFileSync(file, "utf8").matchAll(/^(?:export |declare )*(?:class|interface|type) (\w+)/gmu)];
  const known = [...namesOf(file, "import"), ...own.map(([, name = ""]) => ({ name, own: name, file }))];
  const words = new Set(
    declarationOf(shown)
      .replace(/"[^"]*"/gu, "")
      .match(/(?<![\w.#])[A-Z]\w*/gu),
  );
  return known.filter(({ name }) => words.has(name)).map(placeOf);
}

test("every name has one door, and every type in a declaration can be imported", () => {
  const names = doors.flatMap((door) => door.names);
  const shown = names.map(placeOf);
  expect(shown.filter((place, index) => shown.indexOf(place) !== index)).toEqual([]);
  expect([...new Set(names.flatMap(typesIn))].filter((place) => !shown.includes(place))).toEqual([]);
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
