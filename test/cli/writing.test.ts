import { spawnSync } from "node:child_process";
import { linkSync, lstatSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { runBuilt } from "./built.ts";
import { folderFor } from "./folder.ts";

const command = fileURLToPath(new URL("../../packages/cli/bin/noodlewright.cjs", import.meta.url));
const spec = {
  name: "Noodle",
  flours: [{ name: "bread flour", amount: "100 %" }],
  water: { added: "36 %" },
  batch: { dough: "5 kg" },
};
const text = JSON.stringify(spec);
const written = 'content="noodlewright"';

/** Runs the command in a folder with files that no more than so many blocks may be written of, as on a full disk. */
function onFullDisk(folder: string, args: readonly string[]) {
  const line = `trap '' XFSZ; ulimit -f 2; exec "$0" "$@"`;
  const shell = spawnSync("bash", ["-c", line, process.execPath, command, ...args], { cwd: folder, encoding: "utf8" });
  return { status: shell.status, stderr: shell.stderr };
}

describe("a file is written whole or not at all", () => {
  test("a disk that fills up leaves the good card, and nothing beside it", () => {
    const folder = folderFor({ "noodle.json": text });
    expect(runBuilt(["card", "noodle.json", "-o", "card.html"], { cwd: folder }).status).toBe(0);
    const good = readFileSync(join(folder, "card.html"), "utf8");
    const { status, stderr } = onFullDisk(folder, ["card", "noodle.json", "-o", "card.html", "--dough", "6 kg"]);
    expect([status, stderr]).toEqual([2, expect.stringContaining("a file that cannot be written (EFBIG)")]);
    expect(readFileSync(join(folder, "card.html"), "utf8")).toBe(good);
    expect(readdirSync(folder).sort()).toEqual(["card.html", "noodle.json"]);
  });

  test("of the cards of a folder, none is written where one cannot be", () => {
    const folder = folderFor({ "a.json": text, "b.json": text });
    mkdirSync(join(folder, "out"));
    writeFileSync(join(folder, "out", "b.html"), "somebody's notes");
    const { status, stderr } = runBuilt(["cards", ".", "-o", "out"], { cwd: folder });
    expect([status, stderr]).toEqual([2, expect.stringContaining("[file.foreign]")]);
    expect(stderr).toContain("1 problem; nothing was written.");
    expect(readdirSync(join(folder, "out"))).toEqual(["b.html"]);
  });

  test("a new spec leaves nothing where the disk is full", () => {
    const folder = folderFor();
    const { status } = onFullDisk(folder, ["new"]);
    expect([status, readdirSync(folder)]).toEqual([2, []]);
  });

  test("a link stays a link, and the file behind it is written; its rights stay", () => {
    const folder = folderFor({ "noodle.json": text });
    symlinkSync("real.html", join(folder, "link.html"));
    for (const dough of ["5 kg", "6 kg"]) {
      const { status } = runBuilt(["card", "noodle.json", "-o", "link.html", "--dough", dough], { cwd: folder });
      expect(status).toBe(0);
    }
    expect(lstatSync(join(folder, "link.html")).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(folder, "real.html"), "utf8")).toContain("dough 6 kg");
  });
});

describe("what is never written over", () => {
  const kitchen = JSON.stringify({ materials: { "own flour": { like: "bread flour" } } });

  test.each(["noodle.json", "soft.html", "hard.html", "kitchen.json"])("an input by the name of %s", (out) => {
    const folder = folderFor({
      "noodle.json": JSON.stringify({ ...spec, include: ["kitchen.json"] }),
      "kitchen.json": kitchen,
    });
    symlinkSync("noodle.json", join(folder, "soft.html"));
    linkSync(join(folder, "noodle.json"), join(folder, "hard.html"));
    const before = readFileSync(join(folder, out), "utf8");
    for (const force of [[], ["--force"]]) {
      const { status, stderr } = runBuilt(["card", "noodle.json", "-o", out, ...force], { cwd: folder });
      expect([status, stderr]).toEqual([2, expect.stringContaining("[file.input]")]);
    }
    expect(readFileSync(join(folder, out), "utf8")).toBe(before);
  });

  test("a spec that comes in by standard input from its file", () => {
    const folder = folderFor({ "noodle.json": text });
    const line = `"$0" "$1" card - -o noodle.json < noodle.json`;
    const { status, stderr } = spawnSync("bash", ["-c", line, process.execPath, command], {
      cwd: folder,
      encoding: "utf8",
    });
    expect([status, stderr]).toEqual([2, expect.stringContaining("[file.input]")]);
    expect(readFileSync(join(folder, "noodle.json"), "utf8")).toBe(text);
  });

  test("a file that was written elsewhere, unless that is asked for; our own at once", () => {
    const folder = folderFor({ "noodle.json": text, "notes.html": "<p>somebody's notes</p>" });
    const write = (...more: readonly string[]) =>
      runBuilt(["card", "noodle.json", "-o", "notes.html", ...more], { cwd: folder });
    expect(write()).toMatchObject({ status: 2, stderr: expect.stringContaining("[file.foreign]") });
    expect(readFileSync(join(folder, "notes.html"), "utf8")).toBe("<p>somebody's notes</p>");
    expect(write("--force").status).toBe(0);
    expect(write().status).toBe(0);
    expect(readFileSync(join(folder, "notes.html"), "utf8")).toContain(written);
  });

  test("a folder, a device, a pipe", () => {
    const folder = folderFor({ "noodle.json": text });
    spawnSync("mkfifo", [join(folder, "pipe")]);
    for (const out of [".", "/dev/null", "pipe"]) {
      const { status, stderr } = runBuilt(["card", "noodle.json", "-o", out, "--force"], { cwd: folder });
      expect([out, status, stderr]).toEqual([out, 2, expect.stringContaining("a folder, a pipe or a device")]);
    }
  });
});

describe("what is no file", () => {
  test("a named pipe is refused at once: as a spec, in a folder of specs, and as an include", () => {
    const folder = folderFor({ "noodle.json": text, "more.json": JSON.stringify({ ...spec, include: ["pipe.yaml"] }) });
    spawnSync("mkfifo", [join(folder, "pipe.yaml")]);
    for (const args of [
      ["formula", "pipe.yaml"],
      ["formula", "more.json"],
      ["cards", ".", "-o", "out"],
    ]) {
      const { status, stderr } = runBuilt(args, { cwd: folder });
      expect([status, stderr]).toEqual([2, expect.stringContaining("a pipe or a device")]);
    }
    expect(readdirSync(join(folder, "out")).sort()).toEqual(["index.html", "noodle.html"]);
  });
});

test("a file name that a terminal would obey is printed as marks", () => {
  const folder = folderFor({ "noodle.json": text });
  const name = "red\u001B[31m.yaml";
  const { status, stderr } = runBuilt(["new", name], { cwd: folder });
  expect([status, stderr]).toEqual([0, expect.stringContaining("Wrote red·[31m.yaml.")]);
  for (const args of [
    ["new", name],
    ["card", `no ${name}`],
    ["card", "noodle.json", "-o", name],
  ]) {
    const said = runBuilt(args, { cwd: folder });
    expect([said.status, said.stderr]).toEqual([2, expect.stringContaining("red·[31m")]);
    expect(said.stderr).not.toContain("\u001B");
  }
});
