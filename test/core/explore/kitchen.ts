import { told } from "@noodlewright/core";
import type { MoistureBasis } from "@noodlewright/core/answers";
import type { BlendAnswer, Candidate } from "@noodlewright/core/explore";

/** The store of the harbour school's kitchen; figures from the food composition tables named in the outside tests. */
export const strong: Candidate = { name: "strong flour", protein: "12.6", moisture: "14.5", ash: "0.5", price: "1.10" };
export const soft: Candidate = { name: "soft flour", protein: "8.3", moisture: "14.0", ash: "0.4", price: "0.90" };
export const whole: Candidate = {
  name: "wholegrain flour",
  protein: "12.8",
  moisture: "14.5",
  ash: "1.6",
  price: "1.30",
  wholegrain: true,
};
export const barley: Candidate = {
  name: "barley flour",
  protein: "10.5",
  moisture: "12.11",
  ash: "1.28",
  price: "1.20",
  wholegrain: true,
};
export const gluten: Candidate = { name: "dry gluten", protein: "72.0", moisture: "6.5", ash: "1.2", price: "4.00" };

/** Flours of six places each, no two of them alike. */
export const spreadFlours = (count: number): readonly Candidate[] =>
  Array.from({ length: count }, (_, index) => {
    const spread = (least: number, prime: number, by: number) => (least + ((index * prime) % 997) / by).toFixed(6);
    return {
      name: `flour ${index + 1}`,
      moisture: "14",
      price: spread(1, 31, 700),
      protein: spread(8, 7919, 131),
      ash: spread(0.3, 104_729, 811),
      glutenProtein: spread(5, 1_299_709, 217),
    };
  });

export const at14: MoistureBasis = { kind: "at", moisture: "14" };
export const asIs: MoistureBasis = { kind: "as is" };

/** A narrow target. */
export const between = (least: string, most: string) => ({ least, most, basis: asIs });

/** The shares of the blends found, as text. */
export function sharesOf(answer: BlendAnswer): readonly string[] {
  if (answer.kind !== "found") throw new Error(told(answer.problem).found);
  return answer.blends.map(({ shares }) => shares.map(({ name, share }) => `${name} ${share.value}`).join(", "));
}
