import { type Figure, given, summed, worked } from "../figure/figure.ts";
import { answer, type Outcome, problem, refuse } from "../figure/problem.ts";
import { definition, fromSpec } from "../figure/source.ts";
import { dec, decimalText, HUNDRED, sum } from "../number/decimal.ts";
import type { Quantity } from "../number/quantity.ts";
import type { Spec } from "../spec/spec.ts";
import { ofFlour } from "./naming.ts";

/** The flours of a spec, as shares of 100 parts. */
export interface Shares {
  /** % of flour, in the order of the spec. */
  readonly parts: readonly Figure[];
  readonly flour?: Figure;
}

/**
 * Reads the shares of the flours, stated in % or as masses.
 *
 * Problems: `flours.shares-total`, `flours.mixed-amounts`, `flours.rest-twice`, `flours.rest-with-masses`, `flours.none`.
 */
export function flourShares(flours: Spec["flours"]): Outcome<Shares> {
  const amounts = flours.map((flour) => flour.amount);
  const stated = amounts.filter((amount) => amount !== "rest");
  const masses = stated.filter(({ dimension }) => dimension === "mass");
  const percents = stated.filter(({ dimension }) => dimension === "share");
  const rests = amounts.length - stated.length;
  const path = ["flours"] as const;
  if (masses.length > 0 && percents.length > 0) return refuse(problem("flours.mixed-amounts", path, {}));
  if (rests > 1) return refuse(problem("flours.rest-twice", path, { rests }));
  if (masses.length > 0) {
    if (rests > 0) return refuse(problem("flours.rest-with-masses", path, {}));
    return writtenShares(flours, masses);
  }
  const total = sum(percents.map((amount) => dec(amount.value)));
  const fits = rests === 0 ? total.eq(HUNDRED) : total.lt(HUNDRED);
  if (!fits) {
    const off = decimalText(HUNDRED.minus(total));
    return refuse(problem("flours.shares-total", path, { total: decimalText(total), off, rests }));
  }
  return answer({ parts: percentShares(flours) });
}

function percentShares(flours: Spec["flours"]): readonly Figure[] {
  const naming = (index: number) => ({
    id: `flour.${index + 1}.parts`,
    label: flours[index]?.name ?? "flour",
    unit: "% of flour",
    places: 2,
    bounds: { least: "0", most: "100" },
  });
  const stated = flours.map(({ amount }, index) =>
    amount === "rest" ? undefined : given(naming(index), amount.value, `spec, ${amount.text}`, fromSpec),
  );
  const shares = stated.filter((share) => share !== undefined);
  const rest = shares.length === 0 ? "100" : "100 - sum(shares)";
  const from = shares.length === 0 ? {} : { shares };
  return stated.map((share, index) => share ?? worked(naming(index), rest, from, definition));
}

function writtenShares(flours: Spec["flours"], masses: readonly Quantity[]): Outcome<Shares> {
  const total = sum(masses.map((mass) => dec(mass.value)));
  if (total.isZero()) return refuse(problem("flours.none", ["flours"], {}));
  const figures = masses.map((mass, index) =>
    given(
      { id: `flour.${index + 1}.written`, label: `${flours[index]?.name ?? "flour"} as written`, unit: "g", places: 1 },
      mass.value,
      `spec, ${mass.text}`,
      fromSpec,
    ),
  );
  const flour = summed(
    { id: "flour.written", label: "flour as written", unit: "g", places: 1 },
    { flour: figures },
    definition,
  );
  const parts = figures.map((mass, index) =>
    worked(
      ofFlour(`flour.${index + 1}.parts`, flours[index]?.name ?? "flour"),
      "100 * mass / flour",
      { mass, flour },
      definition,
    ),
  );
  return answer({ parts, flour });
}
