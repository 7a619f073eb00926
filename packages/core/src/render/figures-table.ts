import type { Figure } from "../figure/figure.ts";
import { shownGrouped } from "../figure/in-system.ts";
import type { Table } from "../report/schema.ts";

/** Figures as a table, for forms that know no list of figures. */
export function figuresTable(figures: readonly Figure[]): Table {
  return {
    kind: "table",
    id: "figures",
    columns: [
      { id: "figure", label: "figure", align: "left" },
      { id: "value", label: "value", align: "right" },
      { id: "unit", label: "unit", align: "left" },
    ],
    rows: figures.map((figure) => ({
      role: "item",
      cells: [{ text: figure.label }, { text: shownGrouped(figure), value: figure.value }, { text: figure.unit }],
    })),
  };
}
