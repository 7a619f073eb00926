import { type Outcome, told } from "@noodlewright/core";
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

export const at14: MoistureBasis = { kind: "at", moisture: "14" };
export const asIs: MoistureBasis = { kind: "as is" };

/** The value of an outcome that has to be there. */
export function value<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

/** The shares of the blends found, as text. */
export function sharesOf(answer: BlendAnswer): readonly string[] {
  if (answer.kind !== "found") throw new Error(told(answer.problem).found);
  return answer.blends.map(({ shares }) => shares.map(({ name, share }) => `${name} ${share.value}`).join(", "));
}
