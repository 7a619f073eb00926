import { describe, expect, it } from "vitest";
import { flourClasses } from "#core/materials/flour-classes.ts";

describe("flour classes", () => {
  it("puts the best fit first", () => {
    const order = ["all", "some", "unknown", "none"];
    const ranks = flourClasses({ grain: "wheat", moisture: "13", ash: "0.5", protein: { value: "11" } }).map(
      ({ within }) => order.indexOf(within),
    );
    expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
    expect(new Set(ranks).size).toBeGreaterThan(2);
  });

  it("names what is missing and calls nothing a fit for want of figures", () => {
    const fits = flourClasses({ grain: "wheat", moisture: "13" });
    const french = fits.find(({ flourClass }) => flourClass.type === "T55");
    expect(french).toMatchObject({ within: "unknown", missing: ["ash"], limits: [] });
    const us = flourClasses({ grain: "wheat", moisture: "13", ash: "0.5" }).find(
      ({ flourClass }) => flourClass.system === "US",
    );
    expect(us).toMatchObject({ within: "unknown", missing: ["ash"] });
  });

  it("compares only classes of the grain, and meal only with meal", () => {
    const types = (wholegrain?: boolean) =>
      flourClasses({ grain: "rye", moisture: "11", ash: "1.2", ...(wholegrain !== undefined && { wholegrain }) }).map(
        ({ flourClass }) => flourClass.type,
      );
    expect(types(false)).not.toContain("1800 Backschrot");
    expect(types(true)).toContain("1800 Backschrot");
    expect(types()).toContain("1800 Backschrot");
    expect(types()).not.toContain("405");
  });

  it("holds flour to its moisture limit", () => {
    const moist = flourClasses({
      grain: "wheat",
      moisture: "15",
      ash: "0.4",
      protein: { value: "12", nitrogenFactor: "5.7" },
    });
    const italian = moist.find(({ flourClass }) => flourClass.system === "IT" && flourClass.type === "00");
    expect(italian?.within).toBe("none");
    expect(italian?.limits.find(({ what }) => what === "moisture")?.within).toBe("none");
  });
});
