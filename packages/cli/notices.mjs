import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Folders of the packages of which something is in the bundle, by the bytes of each file in it. */
export function bundledPackages(parts) {
  const used = parts.flatMap(([path, bytes]) => (bytes > 0 ? [path] : []));
  const folders = used.flatMap((path) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(path) ?? []);
  return [...new Set(folders)].sort();
}

/** Name, version and licence text of each package; a package that has none may not be handed on. */
export function notices(folders) {
  const parts = folders.map((folder) => {
    const { name, version } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
    const files = readdirSync(folder)
      .filter((file) => /^(?:licen[cs]e|copying|notice)/i.test(file))
      .sort();
    if (files.length === 0) throw new Error(`${name} ${version} is in the bundle and has no licence file`);
    const texts = files.map((file) => readFileSync(join(folder, file), "utf8").trim());
    return [`${name} ${version}`, ...texts].join("\n\n");
  });
  return `${["The command holds code of these packages.", ...parts].join(`\n\n${"-".repeat(72)}\n\n`)}\n`;
}
