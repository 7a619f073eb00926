import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exact } from "#core/figure/figure.ts";
import { writtenWorking } from "#core/figure/written-working.ts";
import { convertBasis, correctForMoisture, onMoisture } from "#core/materials/basis.ts";
import { catalogue } from "#core/materials/catalogue.ts";
import { convertFactor, nitrogenFactors, onFactor } from "#core/materials/nitrogen.ts";
import { dec } from "#core/number/decimal.ts";

const moisture = fc.integer({ min: 0, max: 9990 }).map((count) => dec(count).div(100));
const share = fc.integer({ min: 0, max: 10_000 }).map((count) => dec(count).div(100));

describe("moisture basis", () => {
  it("comes back from every basis as it went", () => {
    fc.assert(
      fc.property(share, moisture, moisture, (value, from, to) => {
        const back = onMoisture(onMoisture(value, from, to), to, from);
        expect(back.minus(value).abs().lt("1e-30")).toBe(true);
      }),
    );
  });

  it("goes the same way by a third basis", () => {
    fc.assert(
      fc.property(share, moisture, moisture, moisture, (value, a, b, c) => {
        const detour = onMoisture(onMoisture(value, a, b), b, c);
        expect(
          detour
            .minus(onMoisture(value, a, c))
            .abs()
            .lt("1e-28"),
        ).toBe(true);
      }),
    );
  });

  it("shows its working", () => {
    const figure = convertBasis({
      value: "11.98",
      from: { kind: "as is" },
      to: { kind: "at", moisture: "14" },
      moisture: "13.36",
      what: "protein",
    });
    expect(figure).toMatchObject({
      ok: true,
      value: {
        id: "basis.protein",
        label: "protein, at 14 % mb",
        sources: [{ cite: "mass balance" }, { cite: "Cereals Canada, Methods of Analysis" }],
      },
    });
    expect(figure.ok && writtenWorking(figure.value)).toEqual({
      names: "protein, as is × (100 − moisture at 14 % mb) ÷ (100 − moisture as is)",
      numbers: "11.98 × (100 − 14) ÷ (100 − 13.36)",
    });
  });

  it.each(["100", "140", "-1"])("refuses a moisture of %s %%", (wrong) => {
    const stated = { value: "12", from: { kind: "as is" }, to: { kind: "at", moisture: "14" }, what: "ash" } as const;
    const refused = convertBasis({ ...stated, moisture: wrong });
    expect(refused).toMatchObject({ ok: false, problems: [{ code: "basis.moisture-range" }] });
    expect(correctForMoisture({ flour: "100", water: "34", moisture: wrong }).ok).toBe(false);
    expect(correctForMoisture({ flour: "100", water: "34", basis: wrong, moisture: "13" }).ok).toBe(false);
  });

  it("keeps the dry matter and the water of the dough", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 50_000 }),
        fc.integer({ min: 0, max: 60 }),
        moisture,
        (flour, percent, actual) => {
          const water = dec(flour).times(percent).div(100);
          const corrected = correctForMoisture({
            flour: String(flour),
            water: water.toString(),
            moisture: actual.toString(),
          });
          if (!corrected.ok) throw new Error("refused");
          const [weighed, added] = [exact(corrected.value.flour), exact(corrected.value.water)];
          const dry = weighed.times(dec(100).minus(actual)).div(100);
          expect(dry.minus(dec(flour).times("0.86")).abs().lt("1e-20")).toBe(true);
          expect(weighed.plus(added).minus(dec(flour).plus(water)).abs().lt("1e-20")).toBe(true);
        },
      ),
    );
  });
});

describe("nitrogen factor", () => {
  it("has a line for every factor that the flours of the catalogue rest on", () => {
    const known = new Set(nitrogenFactors.map(({ factor }) => Number(factor)));
    const flours = catalogue().filter(({ key, kind }) => key.startsWith("usda") && kind === "flour");
    const used = new Set(flours.map(({ protein }) => Number(protein?.nitrogenFactor ?? 5.7)));
    expect([...used].filter((factor) => !known.has(factor))).toEqual([]);
    expect(used.size).toBeGreaterThan(3);
  });

  it("comes back as it went", () => {
    fc.assert(
      fc.property(share, (value) => {
        const there = onFactor(value, dec("5.7"), dec("6.25"));
        expect(onFactor(there, dec("6.25"), dec("5.7")).minus(value).abs().lt("1e-30")).toBe(true);
      }),
    );
  });

  it("shows its working", () => {
    expect(writtenWorking(convertFactor("12", "6.25", "5.70"))).toMatchObject({
      names: "protein, N × 6.25 × factor wanted ÷ factor of the figure",
      numbers: "12 × 5.7 ÷ 6.25",
    });
  });
});
