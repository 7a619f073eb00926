import { describe, expect, it } from "vitest";
import { classesIn } from "#core/materials/flour-classes.ts";

const typesOf = (flour: Parameters<typeof classesIn>[0]): readonly string[] =>
  classesIn(flour).map(({ flourClass }) => `${flourClass.system} ${flourClass.type}`);

describe("flour classes", () => {
  it("calls nothing a fit for want of figures", () => {
    expect(typesOf({ grain: "wheat", moisture: "13" })).toEqual([]);
    expect(typesOf({ grain: "wheat", moisture: "13", ash: "0.5" })).not.toContain("US flour");
  });

  it("compares only classes of the grain, and meal only with meal", () => {
    const types = (wholegrain?: boolean) =>
      typesOf({ grain: "rye", moisture: "11", ash: "0.7", ...(wholegrain !== undefined && { wholegrain }) });
    expect(types(false)).not.toContain("DE 1800 Backschrot");
    expect(types(true)).toContain("DE 1800 Backschrot");
    expect(types()).toContain("DE 1800 Backschrot");
    expect(types()).not.toContain("DE 812");
  });

  it("holds flour to its moisture limit", () => {
    const flour = {
      grain: "wheat",
      moisture: "14",
      ash: "0.4",
      protein: { value: "12", nitrogenFactor: "5.7" },
    } as const;
    expect(typesOf(flour)).toContain("IT 00");
    expect(typesOf({ ...flour, moisture: "15" })).not.toContain("IT 00");
  });
});
