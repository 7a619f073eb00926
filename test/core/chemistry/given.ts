import { type Composition, mixture, pure, type SpeciesName } from "@noodlewright/core/chemistry";
import fc from "fast-check";
import { waterOnly } from "#core/chemistry/composition.ts";
import { dec } from "#core/number/decimal.ts";

/** A number with two decimals as decimal text. */
export function amount(least: number, most: number): fc.Arbitrary<string> {
  return fc
    .integer({ min: Math.round(least * 100), max: Math.round(most * 100) })
    .map((cents) => dec(cents).div(100).toString());
}

const dissolving = ["Na2CO3", "K2CO3", "NaHCO3", "KHCO3"] as const satisfies readonly SpeciesName[];

/** Dry salts of one to four species in any ratio. */
export const drySalts: fc.Arbitrary<Composition> = fc
  .tuple(...dissolving.map(() => fc.integer({ min: 0, max: 100 })))
  .filter((parts) => parts.some((part) => part > 0))
  .map((parts) => mixture(dissolving.map((name, index) => ({ composition: pure(name), mass: parts[index] ?? 0 }))));

/** Neutral carbonates in any ratio, dry. */
export const carbonates: fc.Arbitrary<Composition> = fc.integer({ min: 0, max: 100 }).map((part) =>
  mixture([
    { composition: pure("Na2CO3"), mass: part },
    { composition: pure("K2CO3"), mass: 100 - part },
  ]),
);

/** A product with some water in it. */
export const wetProduct: fc.Arbitrary<Composition> = fc
  .tuple(drySalts, fc.integer({ min: 1, max: 300 }))
  .map(([composition, water]) =>
    mixture([
      { composition, mass: 100 },
      { composition: waterOnly, mass: water },
    ]),
  );

/** Relative distance of two decimal texts. */
export function apart(one: string, other: string): number {
  const greatest = dec(one).abs().plus(dec(other).abs());
  return greatest.isZero() ? 0 : dec(one).minus(other).abs().div(greatest).toNumber();
}

/** The greatest distance of two compositions, in % of the product. */
export function distance(one: Composition, other: Composition): number {
  const names = new Set([...Object.keys(one.species), ...Object.keys(other.species)]) as Set<SpeciesName>;
  const parts = [...names].map((name) => dec(one.species[name] ?? 0).minus(other.species[name] ?? 0));
  return Math.max(
    ...[...parts, dec(one.water).minus(other.water), dec(one.inert).minus(other.inert)].map((part) =>
      part.abs().toNumber(),
    ),
  );
}
