import fc from "fast-check";
import { afterEach, beforeEach, expect, vi } from "vitest";

/** The same random cases in every run, so that a red test is of this change; SEED=random looks for new ones. */
if (process.env["SEED"] !== "random") fc.configureGlobal({ seed: Number(process.env["SEED"] ?? 20_261_125) });

/** Nothing in the project writes to the console behind the caller's back: a call fails the test. */
const methods = ["log", "info", "warn", "error", "debug"] as const;

beforeEach(() => {
  for (const method of methods) vi.spyOn(console, method).mockImplementation(() => undefined);
});

afterEach(() => {
  for (const method of methods) expect(console[method]).not.toHaveBeenCalled();
  vi.restoreAllMocks();
});
