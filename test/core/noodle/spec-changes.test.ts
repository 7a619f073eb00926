import { askLot, readNoodleData } from "@noodlewright/core";
import type { Path } from "@noodlewright/core/figure";
import type { SpecChange } from "@noodlewright/core/spec";
import fc from "fast-check";
import { expect, test } from "vitest";
import { always } from "../../always.ts";
import { answered } from "../told-of.ts";

/** Plain data with changes made to it. */
function changed(data: unknown, changes: readonly SpecChange[]): unknown {
  return changes.reduce<unknown>((now, { path, value }) => put(now, path, value), data);
}

function put(data: unknown, [step, ...rest]: Path, value: unknown): unknown {
  if (step === undefined) return value;
  const copy = Array.isArray(data) ? [...data] : { ...(data as object) };
  const old: unknown = Reflect.get(copy, step);
  const fresh = put(old, rest, value);
  if (fresh !== undefined) Reflect.set(copy, step, fresh);
  else if (Array.isArray(copy)) copy.splice(Number(step), 1);
  else Reflect.deleteProperty(copy, step);
  return copy;
}

test("what is kept of the old lot holds at the moisture of the new one once it is written", () => {
  const tenths = (min: number, max: number) => fc.integer({ min, max }).map((value) => value / 10);
  always(
    25,
    [tenths(110, 160), tenths(110, 160), fc.constantFrom(undefined, "as is", "dry", "13 % mb")],
    (old, fresh, proteinBasis) => {
      fc.pre(old !== fresh);
      const figures = { protein: "12 %", proteinBasis, ash: "0.5 %", ashBasis: "as is", moisture: `${old} %` };
      const data = {
        name: "class noodle",
        flours: [{ name: "house flour", amount: "100 %", figures: { ...figures, absorption: "36 %" } }],
        water: { added: "36 %" },
        lot: { of: "house flour", figures: { moisture: `${fresh} %` } },
      };
      const before = answered(readNoodleData(data));
      const lot = askLot(before);
      expect(JSON.parse(JSON.stringify(lot))).not.toHaveProperty("changes");
      const after = answered(readNoodleData(changed(data, lot.ok ? lot.changes() : [])));
      const [flour, used] = [before, after].map(({ formula }) => formula.lines[0]?.material);
      const dry = (value = "0", moisture = "0"): number => Number(value) / (100 - Number(moisture));
      expect(dry(used?.protein?.value, used?.moisture)).toBeCloseTo(dry(flour?.protein?.value, flour?.moisture), 12);
      expect(dry(used?.ash, used?.moisture)).toBeCloseTo(dry(flour?.ash, flour?.moisture), 12);
      // the dough keeps its dry flour and its water; four digits are written
      const byHand = ((36 + old) * (100 - fresh)) / (100 - old) - fresh;
      expect(Math.abs(Number(used?.absorption?.percent) - byHand)).toBeLessThan(0.0051);
      expect(Math.abs(Number(after.formula.water.added.value) - byHand)).toBeLessThan(0.0051);
    },
  );
});
