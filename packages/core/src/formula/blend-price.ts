import { type Figure, given, worked } from "../figure/figure.ts";
import { fromSpec, massBalance } from "../figure/source.ts";
import type { FormulaLine } from "./line.ts";
import { whole } from "./whole.ts";

/** What a kilogram of the blend costs, and what that is worked out from. */
interface BlendPrice {
  readonly figure: Figure;
  readonly currency: string;
  readonly figures: readonly Figure[];
}

/** The price of the blend, where every flour has one and all are in one currency. */
export function blendPrice(flours: readonly FormulaLine[], share: readonly Figure[]): BlendPrice | undefined {
  const prices = whole(flours.map((line) => line.material.price));
  const currencies = new Set(prices?.map(({ currency }) => currency));
  const [currency] = currencies;
  if (prices === undefined || currencies.size !== 1 || currency === undefined) return undefined;
  const each = prices.map((price, index) =>
    given(
      {
        id: `flour.${index + 1}.price`,
        label: `price of ${flours[index]?.name ?? "flour"}`,
        unit: `${currency}/kg`,
        places: 2,
      },
      price.perKilogram,
      `spec, ${price.text}`,
      fromSpec,
    ),
  );
  const figure = worked(
    { id: "blend.price", label: "price of the blend", unit: `${currency}/kg`, places: 3 },
    "sum(share * price) / 100",
    { share, price: each },
    massBalance,
  );
  return { figure, currency, figures: [...each, figure] };
}
