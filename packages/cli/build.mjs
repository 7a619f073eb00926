import { readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { deflateSync } from "node:zlib";
import { build } from "esbuild";
import { rolldown } from "rolldown";
import { bundledPackages, notices } from "./notices.mjs";

// Bundles the command. What is needed together is one file, which is read when it is asked for: each file that a run opens
// takes its time, and so does each line that it has no use for. The files are CommonJS modules, which Node.js starts faster.
// The licences of the packages in it go beside it.

const here = (path) => fileURLToPath(new URL(path, import.meta.url));

const core = here("../core/src/");

/** The values of a list as `a, type B, c as d`, each with its name inside and outside. */
const namesIn = (list) =>
  list.split(",").flatMap((entry) => {
    const [, from, to = from] = /^\s*(?!type )(\w+)(?: as (\w+))?\s*$/.exec(entry) ?? [];
    return from === undefined ? [] : [[from, to]];
  });

/** Behind each name that a door of the core exports: its name in the file, and the file. */
function behind(door) {
  const lists = readFileSync(join(core, door), "utf8").matchAll(/^export \{([^}]*)\} from "([^"]+)";/gm);
  return new Map(
    [...lists].flatMap(([, list, file]) =>
      namesIn(list).map(([from, to]) => [to, { from, file: join(core, door, "..", file) }]),
    ),
  );
}

const { exports: openings } = JSON.parse(readFileSync(join(core, "../package.json"), "utf8"));
const doors = Object.fromEntries(
  Object.entries(openings).flatMap(([path, { "@noodlewright/source": file }]) =>
    file === undefined ? [] : [[`@noodlewright/core${path.slice(1)}`, behind(join("..", file))]],
  ),
);

/** Imports from a door of the core go straight to the files behind it: a file of the bundle then holds what it needs only. */
const pastTheDoor = {
  name: "past-the-door",
  transform: {
    filter: { id: /cli.src.*\.ts$/ },
    handler: (code) =>
      code.replace(/^import \{([^}]*)\} from "(@noodlewright\/core[^"]*)";/gm, (_, list, door) =>
        namesIn(list)
          .map(([name, here]) => ({ here, ...doors[door].get(name) }))
          .map(({ from, here, file }) => `import { ${from} as ${here} } from ${JSON.stringify(file)};`)
          .join(""),
      ),
  },
};

/** Modules of Node.js are asked for by a call: an import of one makes ready all that it exports, streams and all. */
const builtIns = {
  name: "built-ins",
  resolveId: { filter: { id: /^node:/ }, handler: (id) => `\0${id}` },
  load: {
    filter: { id: /^\0node:/ },
    handler: (id) => {
      const path = id.slice(1);
      return [
        `const all = process.getBuiltinModule(${JSON.stringify(path)});`,
        "const named = (name) => all[name];",
        ...Object.keys(process.getBuiltinModule(path)).map(
          (name) => `export const ${name} = /* @__PURE__ */ named(${JSON.stringify(name)});`,
        ),
      ].join("\n");
    },
  },
};

/** Files of the bundle: what they are for and all that this imports, less what is in a file before. */
const groups = [
  ["start", /cli.src.main\.ts$/],
  ["formula", commands("formula")],
  ["batch", /beyond-sheets\.ts$|cli.src.commands.batch\.ts$/],
  ["day", commands("sheet|plan|water-temperature|calibrate")],
  ["costs", commands("mend|cost|nutrition")],
  ["wants", /beyond-wants\.ts$/],
  ["cards", commands("card|cards|page")],
  ["flours", commands("blend|settle|compare|replace|lot|trial|tolerance|new")],
  ["lists", commands("materials|schema|words")],
].map(([name, test], index) => ({ name, test, priority: 100 - index }));

function commands(names) {
  return new RegExp(`cli.src.commands.(?:${names})\\.ts$`);
}

// A build that fails leaves the last good bundle where it is.
const fresh = here("bundle-fresh");
rmSync(fresh, { recursive: true, force: true });
const command = await rolldown({
  input: here("src/main.ts"),
  platform: "node",
  resolve: {
    conditionNames: ["@noodlewright/source", "import"],
    alias: { yaml: here("../../node_modules/yaml/browser/index.js") },
  },
  transform: { target: "node20.19" },
  plugins: [builtIns, pastTheDoor],
});
const { output } = await command.write({
  dir: fresh,
  format: "cjs",
  entryFileNames: "[name].cjs",
  chunkFileNames: "[name]-[hash].cjs",
  minify: true,
  comments: { legal: false }, // the notices hold the licences whole
  codeSplitting: { groups },
});

// What the command puts into a page of the bench: what shows it, the same core that works beside it, and its style.
const page = await build({
  entryPoints: {
    page: here("src/page/main.tsx"),
    "page-core": here("src/page/core.ts"),
    "page-style": here("src/page/page.css"),
  },
  outdir: fresh,
  bundle: true,
  minify: true,
  charset: "utf8",
  format: "iife",
  platform: "browser",
  target: "es2022",
  jsx: "automatic",
  jsxImportSource: "preact",
  conditions: ["@noodlewright/source"],
  legalComments: "none",
  metafile: true,
  logLevel: "warning",
});
const parts = [
  ...output.flatMap(({ modules = {} }) =>
    Object.entries(modules).map(([path, { renderedLength }]) => [path, renderedLength]),
  ),
  ...Object.values(page.metafile.outputs).flatMap(({ inputs }) =>
    Object.entries(inputs).map(([path, { bytesInOutput }]) => [resolve(path), bytesInOutput]),
  ),
];
// A page carries the core compressed, and so does the package.
const pageCore = join(fresh, "page-core.js");
writeFileSync(join(fresh, "page-core.deflate"), deflateSync(readFileSync(pageCore), { level: 9 }));
rmSync(pageCore);
writeFileSync(join(fresh, "notices.txt"), notices(bundledPackages(parts)));
rmSync(here("bundle"), { recursive: true, force: true });
renameSync(fresh, here("bundle"));
