import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { runBuilt } from "./built.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const command = fileURLToPath(new URL("../../packages/cli/bin/noodlewright.cjs", import.meta.url));
const spec = "examples/school-noodle.yaml";

/** Runs a line of the shell with `$nw` standing for the command. */
function shell(line: string): { readonly status: number | null; readonly stdout: string; readonly stderr: string } {
  const nw = `"${process.execPath}" "${command}"`;
  return spawnSync("bash", ["-c", line.replaceAll("$nw", nw)], { cwd: root, encoding: "utf8", maxBuffer: 64_000_000 });
}

describe("pipes", () => {
  test("a reader that has seen enough is no failure", () => {
    const { stdout, stderr } = shell("set -o pipefail; $nw schema report | head -1; echo $?");
    expect(stdout).toBe("{\n0\n");
    expect(stderr).toBe("");
  });

  test("more than a pipe holds goes through whole", () => {
    const { stdout } = shell(`$nw formula ${spec} --format json --working | (sleep 1; cat)`);
    expect(Buffer.byteLength(stdout)).toBeGreaterThan(65_536);
    expect(JSON.parse(stdout)).toMatchObject({ noodlewright: "report" });
  });

  test("a spec comes in by standard input, also with JSON", () => {
    const yaml = "name: Piped\nflours: [{ name: bread flour, amount: 100 % }]\nwater: { added: 36 % }\n";
    const flours = [{ name: "bread flour", amount: "100 %" }];
    const fromYaml = runBuilt(["formula", "-"], { input: yaml });
    const fromJson = runBuilt(["formula", "-"], {
      input: JSON.stringify({ name: "Piped", flours, water: { added: "36 %" } }),
    });
    expect(fromYaml).toMatchObject({ status: 0, stderr: "" });
    expect(fromJson).toEqual(fromYaml);
  });

  test("nothing in it, and too much of it", () => {
    const empty = runBuilt(["formula", "-"]);
    expect([empty.status, empty.stdout]).toEqual([2, ""]);
    expect(empty.stderr).toContain("standard input: [file.empty]");
    const endless = shell("yes 'a: 1' | $nw formula -");
    expect([endless.status, endless.stdout]).toEqual([2, ""]);
    expect(endless.stderr).toContain("standard input: [file.too-large]");
  });

  test.runIf(existsSync("/dev/full"))("an answer that cannot be written is told, without a stack trace", () => {
    const { status, stderr } = shell(`$nw formula ${spec} > /dev/full`);
    expect(status).toBe(2);
    expect(stderr).toBe("noodlewright: the answer could not be written (ENOSPC)\n");
  });
});

describe("colour", () => {
  const bold = "\u001B[1m";

  test("none into a pipe, none with NO_COLOR, some with FORCE_COLOR, and the words stay the same", () => {
    const piped = shell(`env -u NO_COLOR -u FORCE_COLOR $nw formula ${spec}`);
    expect(piped.stdout).not.toContain("\u001B");
    const forced = shell(`env -u NO_COLOR FORCE_COLOR=1 $nw formula ${spec}`);
    expect(forced.stdout).toContain(`${bold}School noodle`);
    const escapes = new RegExp(String.raw`${"\u001B"}\[\d+m`, "gu");
    expect(forced.stdout.replaceAll(escapes, "")).toBe(piped.stdout);
    const refused = shell(`env -u FORCE_COLOR NO_COLOR=1 $nw formula ${spec}`);
    expect(refused.stdout).toBe(piped.stdout);
  });

  test("JSON and CSV have none, whatever is forced", () => {
    for (const format of ["json", "csv", "markdown"]) {
      expect(shell(`env -u NO_COLOR FORCE_COLOR=1 $nw formula ${spec} --format ${format}`).stdout).not.toContain(
        "\u001B",
      );
    }
  });
});
