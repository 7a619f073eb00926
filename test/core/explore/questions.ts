import type { BlendQuestion, Candidate } from "@noodlewright/core/explore";
import fc from "fast-check";

/** Random questions as somebody in a kitchen might put them: figures with the digits a certificate has. */
const decimal = (low: number, high: number, places: number): fc.Arbitrary<string> =>
  fc
    .integer({ min: low * 10 ** places, max: high * 10 ** places })
    .map((value) => (value / 10 ** places).toFixed(places));

const flour = (index: number): fc.Arbitrary<Candidate> =>
  fc
    .record({
      protein: fc.oneof({ weight: 8, arbitrary: decimal(6, 15, 2) }, { weight: 1, arbitrary: decimal(70, 76, 2) }),
      moisture: decimal(8, 15, 2),
      ash: decimal(0, 2, 2),
      glutenProtein: decimal(0, 9, 1),
      wholegrain: fc.boolean(),
      price: decimal(0, 5, 2),
      least: fc.option(fc.integer({ min: 0, max: 15 }).map(String), { freq: 2, nil: undefined }),
      most: fc.option(fc.integer({ min: 15, max: 100 }).map(String), { freq: 2, nil: undefined }),
    })
    .map(({ least, most, ...figures }) => ({
      name: `flour ${index + 1}`,
      ...figures,
      ...(least === undefined ? {} : { least }),
      ...(most === undefined ? {} : { most }),
    }));

const flours = fc
  .integer({ min: 2, max: 8 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, index) => flour(index))));

const targets = fc.record({
  low: decimal(8, 12, 1),
  width: fc.constantFrom("0.1", "0.3", "1", "none"),
  basis: fc.constantFrom("as is" as const, "14", "0"),
  ash: fc.option(decimal(0.7, 2, 2), { freq: 2, nil: undefined }),
  gluten: fc.option(decimal(0, 5, 1), { freq: 2, nil: undefined }),
  wholegrain: fc.option(fc.integer({ min: 0, max: 60 }).map(String), { freq: 2, nil: undefined }),
  price: fc.option(decimal(2, 4, 2), { freq: 2, nil: undefined }),
});

/** A question with a protein range, as shares in whole per cents or coarser or half per cents. */
export const blendQuestion: fc.Arbitrary<BlendQuestion> = fc
  .record({
    flours,
    targets,
    step: fc.constantFrom("0.5", "1", "2", "5"),
    prefer: fc.nat(3),
    cuts: fc.array(fc.nat(100)),
  })
  .map(({ flours: list, targets: wish, step, prefer, cuts }) => {
    const basis = wish.basis === "as is" ? { kind: "as is" as const } : { kind: "at" as const, moisture: wish.basis };
    const most = wish.width === "none" ? {} : { most: (Number(wish.low) + Number(wish.width)).toFixed(1) };
    return {
      flours: list,
      step,
      prefer: preference(list, prefer, cuts),
      targets: {
        protein: { least: wish.low, ...most, basis },
        ...(wish.ash === undefined ? {} : { ash: { most: wish.ash, basis } }),
        ...(wish.gluten === undefined
          ? {}
          : { glutenProtein: { least: wish.gluten, basis: { kind: "as is" as const } } }),
        ...(wish.wholegrain === undefined ? {} : { wholegrain: { least: wish.wholegrain } }),
        ...(wish.price === undefined ? {} : { price: { most: wish.price } }),
      },
    };
  });

function preference(list: readonly Candidate[], kind: number, cuts: readonly number[]): BlendQuestion["prefer"] {
  if (kind === 0) return { kind: "cheapest" };
  if (kind === 1) return { kind: "fewest" };
  if (kind === 2) return { kind: "most", flour: list[0]?.name ?? "" };
  const points = [0, ...cuts.slice(0, list.length - 1).toSorted((a, b) => a - b), 100];
  const to = points.slice(1).map((point, index) => ({
    name: list[index]?.name ?? "",
    share: String(point - (points[index] ?? 0)),
  }));
  return { kind: "nearest", to };
}
