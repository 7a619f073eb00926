import { readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { bundledPackages, notices } from "./notices.mjs";

// Bundles the command. Each command, and what only some runs need, is a chunk that is read when it is asked for; what
// several of them use is shared. The licences of the packages in it go beside it.

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

/** Imports from a door of the core go straight to the files behind it: a chunk then holds what its command needs only. */
const pastTheDoor = {
  name: "past-the-door",
  setup(bundler) {
    bundler.onLoad({ filter: /cli.src.*\.ts$/ }, ({ path }) => ({
      loader: "ts",
      contents: readFileSync(path, "utf8").replace(
        /^import \{([^}]*)\} from "(@noodlewright\/core[^"]*)";/gm,
        (_, list, door) =>
          namesIn(list)
            .map(([name, here]) => ({ here, ...doors[door].get(name) }))
            .map(({ from, here, file }) => `import { ${from} as ${here} } from ${JSON.stringify(file)};`)
            .join(""),
      ),
    }));
  },
};

/** Commands that share most of their work share a chunk: each file that a run opens takes its time. */
const families = {
  flours: "blend settle compare replace lot trial tolerance new",
  day: "batch mend cost nutrition sheet plan water-temperature calibrate",
  cards: "card cards page",
  lists: "materials schema",
};
const familyOf = new Map(
  Object.entries(families).flatMap(([family, names]) => names.split(" ").map((name) => [name, family])),
);

const byFamily = {
  name: "by-family",
  setup(bundler) {
    bundler.onResolve({ filter: /^\.\/commands\/[\w-]+\.ts$/ }, ({ path, kind }) => {
      const family = kind === "dynamic-import" ? familyOf.get(basename(path, ".ts")) : undefined;
      return family === undefined ? undefined : { path: family, namespace: "by-family" };
    });
    bundler.onLoad({ filter: /.*/, namespace: "by-family" }, ({ path }) => ({
      contents: families[path]
        .split(" ")
        .map((name) => `export * from "./commands/${name}.ts";`)
        .join(""),
      resolveDir: here("src"),
    }));
  },
};

/** Modules of Node.js are asked for by a call: an import of one makes ready all that it exports, streams and all. */
const builtIns = {
  name: "built-ins",
  setup(bundler) {
    bundler.onResolve({ filter: /^node:/ }, ({ path }) => ({ path, namespace: "built-ins" }));
    bundler.onLoad({ filter: /.*/, namespace: "built-ins" }, ({ path }) => ({
      contents: [
        `const all = process.getBuiltinModule(${JSON.stringify(path)});`,
        "const named = (name) => all[name];",
        ...Object.keys(process.getBuiltinModule(path)).map(
          (name) => `export const ${name} = /* @__PURE__ */ named(${JSON.stringify(name)});`,
        ),
      ].join("\n"),
    }));
  },
};

// A build that fails leaves the last good bundle where it is.
const fresh = here("bundle-fresh");
rmSync(fresh, { recursive: true, force: true });
const { metafile } = await build({
  entryPoints: [here("src/main.ts")],
  outdir: fresh,
  chunkNames: "[name]-[hash]",
  bundle: true,
  splitting: true,
  minify: true,
  format: "esm",
  platform: "node",
  target: "node20.19",
  conditions: ["@noodlewright/source"],
  alias: { yaml: here("../../node_modules/yaml/browser/index.js") },
  plugins: [builtIns, byFamily, pastTheDoor],
  legalComments: "none", // the notices hold the licences whole
  metafile: true,
  logLevel: "warning",
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
const outputs = { ...metafile.outputs, ...page.metafile.outputs };
writeFileSync(join(fresh, "notices.txt"), notices(bundledPackages(outputs)));
rmSync(here("bundle"), { recursive: true, force: true });
renameSync(fresh, here("bundle"));
