import type { BlendTargets, Hold, StockedFlour } from "@noodlewright/core/explore";
import { describe, expect, test } from "vitest";
import { heldTargets } from "#core/blend/substitute-question.ts";
import { dec } from "#core/number/decimal.ts";
import { at14, soft, strong } from "../explore/kitchen.ts";

const old: readonly StockedFlour[] = [
  { ...strong, glutenProtein: "11.0" },
  { ...soft, glutenProtein: "7.0" },
];

/** Least and most; an open side is absent. */
type Ends = readonly [least: string | undefined, most: string | undefined];

/** The targets that hold the figures of 60 % strong and 40 % soft flour, at 14 % moisture. */
function held(hold: readonly Hold[], wanted?: BlendTargets, within?: string): BlendTargets {
  const question = { blend: [], flours: old, hold, basis: at14, water: "36", ...(within && { within }) };
  return heldTargets({ ...question, ...(wanted && { wanted }) }, old, [dec(60), dec(40)]);
}

/**
 * By hand: moisture 0.6 × 14.5 + 0.4 × 14.0 = 14.3, so that 1 as is becomes 86 / 85.7 at 14 %. Protein 10.88, ash 0.46 and
 * gluten-forming protein 9.4 become 10.918, 0.462 and 9.433.
 */
describe("what of a blend is held", () => {
  test("is the protein as a value to 0.05, to which the search comes as near as it can", () => {
    expect(held(["protein"])).toEqual({ protein: { value: "10.918", within: "0.05", basis: at14 } });
    expect(held(["protein"], undefined, "0.2")).toEqual({ protein: { value: "10.918", within: "0.2", basis: at14 } });
  });

  test("is ash to a fifth of that, and gluten-forming protein to as much", () => {
    expect(held(["ash", "gluten protein"])).toEqual({
      ash: { least: "0.452", most: "0.472", basis: at14 },
      glutenProtein: { least: "9.383", most: "9.483", basis: at14 },
    });
    expect(held(["ash"], undefined, "0.5")).toEqual({ ash: { least: "0.362", most: "0.562", basis: at14 } });
  });

  test("lies open on the side that may rise or fall", () => {
    expect(held(["protein or more", "ash or less"])).toEqual({
      protein: { least: "10.868", basis: at14 },
      ash: { most: "0.472", basis: at14 },
    });
    expect(held(["protein or less", "gluten protein or more"])).toEqual({
      protein: { most: "10.968", basis: at14 },
      glutenProtein: { least: "9.383", basis: at14 },
    });
    expect(held([])).toEqual({});
  });
});

describe("what is wanted beside what is held", () => {
  test.each<[what: string, wanted: Ends, met: Ends]>([
    ["narrows it from below", ["10.9", undefined], ["10.9", "10.968"]],
    ["narrows it from above", [undefined, "10.95"], ["10.868", "10.95"]],
    ["is left to it where it is wider", ["10", "12"], ["10.868", "10.968"]],
    ["may leave one figure", [undefined, "10.868"], ["10.868", "10.868"]],
    ["goes before it where both cannot be", ["11.6", undefined], ["11.6", undefined]],
  ])("%s", (_, [low, high], [least, most]) => {
    const wanted = { ...(low !== undefined && { least: low }), ...(high !== undefined && { most: high }), basis: at14 };
    expect(held(["protein"], { protein: wanted }).protein).toEqual({
      ...(least !== undefined && { least }),
      ...(most !== undefined && { most }),
      basis: at14,
    });
  });

  test("counts for ash and gluten-forming protein too, and keeps what is held of nothing", () => {
    const wanted: BlendTargets = {
      ash: { most: "0.46", basis: at14 },
      glutenProtein: { least: "9.4", basis: at14 },
      wholegrain: { least: "20" },
    };
    expect(held(["ash", "gluten protein or more"], wanted)).toEqual({
      ash: { least: "0.452", most: "0.46", basis: at14 },
      glutenProtein: { least: "9.4", basis: at14 },
      wholegrain: { least: "20" },
    });
  });
});
