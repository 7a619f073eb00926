import { dec } from "../number/decimal.ts";
import { reached } from "./blend-limits.ts";
import type { BlendQuestion, Check } from "./blend-question.ts";
import { setUp } from "./blend-setup.ts";

/** What a division may leave of a share that is whole. */
const rest = "1e-9";

/**
 * Whether a blend keeps all that a question asks, in whatever steps its shares are: its targets and the limits of each
 * flour, as `checks` hold it against them; ratios, stores, whole bags and the number of flours.
 *
 * @param shares - one for each flour, % of the blend
 */
export function meetsAsItIs(question: BlendQuestion, shares: readonly string[], checks: readonly Check[]): boolean {
  const setup = setUp(question);
  if (!("question" in setup)) return false;
  const parts = shares.map(dec);
  const { flours, flourMass = 0, mostFlours = flours.length } = question;
  const ratiosHold = setup.ratios.every(({ bottom, top, bound }) => {
    const [ratio, own] = [reached({ top, bottom }, parts), top.findIndex((one) => !one.isZero())];
    return ratio === undefined ? parts[own]?.isZero() === true : ratio.minus(bound).abs().lte(rest);
  });
  const isAtHand = flours.every(({ missing, store, bag }, index) => {
    const mass = dec(shares[index] ?? 0)
      .times(flourMass)
      .div(100);
    const bags = bag === undefined ? dec(0) : mass.div(bag);
    const isThere = mass.isZero() || missing !== true;
    return isThere && (store === undefined || mass.lte(store)) && bags.minus(bags.round()).abs().lte(rest);
  });
  const used = parts.filter((share) => !share.isZero()).length;
  return checks.every(({ holds }) => holds) && ratiosHold && isAtHand && used <= mostFlours;
}
