import * as z from "zod/mini";
import {
  count,
  described,
  massField,
  numberField,
  optional,
  quantityField,
  section,
  shareField,
  word,
} from "../materials/fields.ts";
import { cutterField, densityField, lengthField, trimField } from "../materials/machine-schema.ts";

const compoundingSchema = section({ id: "Compounding", description: "How the crumb becomes one sheet" }, () => ({
  gap: lengthField("Gap that the crumb goes through and the folded sheet again", ["4 mm"], "100"),
  folds: described(count(0, 20), {
    description: "How often the sheet is folded, or sheets are joined, and rolled again",
    examples: [2],
  }),
  layers: optional(count(2, 4), "Layers laid on each other each time; 2 unless stated", [2]),
}));

/** The ways to state the dough that goes to the rolls. */
export const startWays = ["start", "compounding"] as const;

/** The `sheet:` section: from dough to strands, on the machine at hand. */
export const sheetSchema = section(
  {
    id: "Sheet",
    description: "From dough to strands, on the machine at hand",
    examples: [{ machine: "bench rolls", thickness: "1.4 mm", cutter: 20, start: "12 mm" }],
    ways: [{ keys: startWays }],
  },
  () => ({
    machine: described(word(80), {
      description: "Name of a machine of `machines:`, here or in an included file",
      examples: ["bench rolls"],
    }),
    thickness: lengthField("Thickness of the finished sheet", ["1.4 mm"], "100"),
    cutter: z.optional(
      cutterField("A cutter number (strands from 30 mm of width), or the width of a strand such as 2 mm"),
    ),
    strandLength: z.optional(
      lengthField("Length of the strands; what a portion needs unless stated", ["250 mm"], "100000"),
    ),
    portion: z.optional(massField("Raw portion; the raw bowl of the batch unless stated", ["110 g"])),
    width: z.optional(lengthField("Width of the sheet; that of the rolls unless stated", ["220 mm"], "3000")),
    start: z.optional(
      lengthField("Thickness of the dough as it goes to the rolls, where it is not compounded", ["12 mm"], "500"),
    ),
    compounding: z.optional(compoundingSchema),
    gaps: optional(
      z.array(lengthField("Gap", ["3 mm"], "200")).check(z.minLength(1), z.maxLength(60)),
      "The kitchen's own list of gaps, widest first, in place of the best one",
    ),
    largestReduction: z.optional(
      quantityField(["share"], "Most of the thickness that a pass takes off; one third unless stated", ["30 %"], {
        least: "1",
        most: "90",
      }),
    ),
    springBack: z.optional(
      numberField("Thickness of a sheet over the gap it came through, measured; 1 unless stated", [1.1], {
        above: 0.5,
        most: 3,
      }),
    ),
    tolerance: z.optional(
      trimField("How far a fixed setting may lie from the thickness; 0.1 mm unless stated", ["0.1 mm"]),
    ),
    density: z.optional(densityField("Measured density of the sheet", ["1.24 g/mL"])),
    air: z.optional(
      shareField(
        "Air in the sheet, % of its volume, where its density is not measured; none unless stated",
        ["4 %"],
        "50",
      ),
    ),
    edgeTrim: z.optional(trimField("Cut off each edge; none unless stated", ["3 mm"])),
    endTrim: z.optional(trimField("Cut off each end of a sheet; none unless stated", ["30 mm"])),
  }),
);
