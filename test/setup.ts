import { afterEach, beforeEach, expect, vi } from "vitest";

/** Nothing in the project writes to the console behind the caller's back: a call fails the test. */
const methods = ["log", "info", "warn", "error", "debug"] as const;

beforeEach(() => {
  for (const method of methods) vi.spyOn(console, method).mockImplementation(() => undefined);
});

afterEach(() => {
  for (const method of methods) expect(console[method]).not.toHaveBeenCalled();
  vi.restoreAllMocks();
});
