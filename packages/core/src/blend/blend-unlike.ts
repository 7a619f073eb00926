import { type Decimal, dec, ONE, sum, ZERO } from "../number/decimal.ts";
import type { Candidate } from "./blend-question.ts";

/** How far apart two flours count as one part more: common practice, no source. */
const oneMore = { protein: "5", ash: "0.5", wholegrain: "1", gluten: "1" } as const;

/**
 * How much a part of each flour counts where least is to be moved, in tenths: ten, and ten more for every 5 % of protein
 * or 0.5 % of ash that it is away from the blend, and for being wholegrain, or without gluten, where the blend is not.
 * A figure that is not known counts nothing.
 *
 * @param shares - the blend, % for each flour
 * @example unlikeness([{ name: "a", protein: "10", moisture: "14" }, { name: "b", protein: "12.5", moisture: "14" }], [dec(100), dec(0)]) // => [10, 15]
 */
export function unlikeness(flours: readonly Candidate[], shares: readonly Decimal[]): readonly number[] {
  const figures = flours.map(figuresOf);
  const used = figures.flatMap((figure, index) => {
    const share = shares[index] ?? ZERO;
    return share.isZero() ? [] : [{ figure, share }];
  });
  const whole = sum(used.map(({ share }) => share));
  const mean = (key: keyof typeof oneMore): Decimal | undefined => {
    const parts = used.map(({ figure, share }) => figure[key]?.times(share));
    const known = parts.filter((part) => part !== undefined);
    return known.length === used.length && used.length > 0 ? sum(known).div(whole) : undefined;
  };
  const blend = { protein: mean("protein"), ash: mean("ash"), wholegrain: mean("wholegrain"), gluten: mean("gluten") };
  return figures.map((figure) => {
    const more = (["protein", "ash", "wholegrain", "gluten"] as const).map((key) => {
      const [own, mixed] = [figure[key], blend[key]];
      return own === undefined || mixed === undefined ? ZERO : own.minus(mixed).abs().div(oneMore[key]);
    });
    return ONE.plus(sum(more)).times(10).toDecimalPlaces(0).toNumber();
  });
}

/** The figures that flours are told apart by; gluten as the part of the protein that forms it. */
function figuresOf({ protein, ash, wholegrain, glutenProtein }: Candidate) {
  const part = dec(protein).isZero() ? ZERO : dec(glutenProtein ?? 0).div(protein);
  return {
    protein: dec(protein),
    ash: ash === undefined ? undefined : dec(ash),
    wholegrain: wholegrain === true ? ONE : ZERO,
    gluten: glutenProtein === undefined ? undefined : part,
  };
}
