import { type Counts, input, noAnswer, type Texts } from "./entry.ts";

export const sheet = {
  "cook.dried": input(({ cookedWater, rawWater }: Texts<"cookedWater" | "rawWater">) => ({
    found: `${cookedWater} %`,
    expected: `at least the ${rawWater} % of the raw noodles`,
    advice: "exchange the two, or measure again",
  })),
  "cook.range-reversed": input(({ low, gain, high }: Texts<"low" | "gain" | "high">) => ({
    found: `${low}, ${gain}, ${high}`,
    expected: "low, gain and high in rising order",
    advice: "put them in order",
  })),
  "plan.too-many-loads": input(({ loads, most }: Texts<"loads"> & Counts<"most">) => ({
    found: `${loads} loads`,
    expected: `at most ${most} in a day`,
    advice: "take a larger mixer, or plan the batch in parts",
  })),
  "plan.not-stated": input(() => ({
    found: "nothing about the day",
    expected: "a section `plan:`",
    advice: "write how long a load takes at each stage under `plan:`",
  })),
  "plan.serve-missing": input(() => ({
    found: "no time of service",
    expected: "a time of day",
    advice: "give --serve 12:15, or write `serve: 12:15` under `plan:`",
  })),
  // HAND sheet/day/day-plan.ts:139 "plan.whole-minutes" found: PropertyAccessExpression time.text
  "pot.water-out-of-range": input(({ water, basket }: Texts<"water" | "basket">) => ({
    found: `${water} for a basket of ${basket}`,
    expected: "2 to 50 g of water for each g of noodles",
    advice: "check the two and their units",
  })),
  "plan.serve-time": input(({ serve }: Texts<"serve">) => ({
    found: `"${serve}"`,
    expected: 'a time of day from "00:00" to "23:59"',
    advice: 'write it like "12:15"',
  })),
  "plan.open-ended": input(() => ({
    found: "a wait at an end, or no stages",
    expected: "a first and a last stage that take a machine or hands",
    advice: "begin with weighing or mixing and end with cutting or boiling",
  })),
  "plan.machine-twice": input(({ name }: Texts<"name">) => ({
    found: `"${name}" twice`,
    expected: "each kind once",
    advice: "add the counts up",
  })),
  // HAND sheet/day/plan-request.ts:92 "plan.machine-not-there" expected: ConditionalExpression names.length === 0 ? "a machine from the list" : `one of ${names.join(", ")}`
  "plan.stands-too-long": noAnswer(({ stands, longest, machine }: Texts<"machine"> & Counts<"stands" | "longest">) => ({
    found: `no order of work; in the one that begins latest the first load stands ${stands} min before service`,
    expected: `at most ${longest} min`,
    advice: `serve in sittings, add to the ${machine}, which sets the pace, or allow a longer wait`,
  })),
  // HAND sheet/inputs.ts:32 "sheet.out-of-range" found: CallExpression withUnit(String(limit.value), limit.unit) | expected: CallExpression expectedText(limit)
  // HAND sheet/passes/compounding.ts:54 "compounding.gap-not-there" expected: ConditionalExpression own === undefined ? expected : `${own} mm at the compounding rolls, or ${expected}` | advice: ConditionalExpression own === undefined ? "compound at a gap that the rolls have, or give rolls of their own under the machine's `compoundingGap:`" : "compound at a gap that the rolls have"
  "fits.rolls-too-narrow": noAnswer(({ width, rolls }: Texts<"width" | "rolls">) => ({
    found: `a sheet ${width} mm wide`,
    expected: `at most ${rolls} mm`,
    advice: `roll it ${rolls} mm wide; each sheet then gets longer by the same ratio`,
  })),
  "fits.cutter-too-narrow": noAnswer(
    ({ width, widest, cutter, strips, each }: Texts<"width" | "widest" | "cutter" | "strips" | "each">) => ({
      found: `a sheet ${width} mm wide`,
      expected: `at most ${widest} mm for the cutter ${cutter}`,
      advice: `slit the sheet lengthwise into ${strips} strips of about ${each} mm, or roll it ${widest} mm wide`,
    }),
  ),
  // HAND sheet/passes/fits.ts:63 "fits.cutter-not-there" found: CallExpression sizeText(cutter) | expected: ConditionalExpression cutters.length === 0 ? "a cutter that the machine has" : cutters.map(({ size }) => sizeText(size)).join(", ") | advice: ConditionalExpression nearest === undefined ? "list the cutters of the machine, or a knife by its strand width" : `the nearest is ${sizeText(nearest.size)}, ${fixedText(widthOf(nearest.size), 2)} mm`
  "fits.sheet-too-long": noAnswer(
    ({ length, longestSheet, sheets, each }: Texts<"length" | "longestSheet" | "sheets" | "each">) => ({
      found: `a sheet of ${length} mm`,
      expected: `at most ${longestSheet} mm`,
      advice: `divide the dough into ${sheets} sheets of ${each} mm`,
    }),
  ),
  // HAND sheet/passes/fixed-steps.ts:47 "passes.final-not-on-setting" found: CallExpression mm(final) | advice: ConditionalExpression choices === "" ? "measure the settings and list them" : `ask for ${choices}, or allow a larger difference`
  // HAND sheet/passes/fixed-steps.ts:62 "passes.step-too-big" advice: ConditionalExpression from === undefined ? `press or roll the dough to at most ${mm(downwards(to.thickness.div(ONE.minus(limit.div(HUNDRED)))))} first` : `find a setting between ${mm(thinnestAfter(before, limit
  "passes.final-outside-gap": noAnswer(
    ({ lastGap, least, greatest, possible }: Texts<"lastGap" | "least" | "greatest" | "possible">) => ({
      found: `a gap of ${lastGap} for the final thickness`,
      expected: `${least} to ${greatest}`,
      advice: `ask for a final thickness of ${possible}`,
    }),
  ),
  "passes.first-too-thick": noAnswer(
    ({ first, reduction, most, thickest }: Texts<"first" | "reduction" | "most" | "thickest">) => ({
      found: `${first}, of which the widest gap would take off ${reduction}`,
      expected: `at most ${most} in one pass`,
      advice: `press or roll the dough by hand to at most ${thickest} first`,
    }),
  ),
  // HAND sheet/passes/machine-of.ts:23 "machine.unknown" expected: ConditionalExpression names.length === 0 ? "a machine described under `machines:`" : `one of: ${names.join(", ")}` | advice: ConditionalExpression nearest.length > 0 ? `did you mean ${nearest.map((one) => `"${one}"`).join(" or ")}?` : "describe it under `machines:`, here or in an included file"
  // HAND sheet/passes/machine.ts:104 "machine.gaps-reversed" hand code
  "machine.too-many-settings": input(({ settings, most }: Counts<"most"> & Counts<"settings">) => ({
    found: `${settings}`,
    expected: `at most ${most} settings`,
    advice: "list only the settings that are used",
  })),
  "machine.no-settings": input(() => ({
    found: "no settings",
    expected: "the gap of every setting in mm",
    advice: "measure a sheet at each setting and list the thicknesses",
  })),
  "machine.same-setting": input(({ name }: Texts<"name">) => ({
    found: `"${name}" more than once`,
    expected: "a name for each setting",
    advice: "rename or drop one of them",
  })),
  // HAND sheet/passes/pass-request.ts:73 "passes.first-thickness" found: ConditionalExpression compounding === undefined ? "neither" : "both" | advice: ConditionalExpression compounding === undefined ? "measure the dough as it goes to the rolls and give it in mm" : "leave the thickness out: the compounding gap gives it"
  // HAND sheet/passes/passes.ts:112 "passes.not-thinner" hand code
  // HAND sheet/passes/steps-for-gaps.ts:41 "passes.not-thinner" hand code
  "passes.no-gaps": input(() => ({
    found: "an empty list",
    expected: "at least one gap in mm",
    advice: "list the gaps, widest first",
  })),
  // HAND sheet/passes/steps-for-gaps.ts:62 "passes.list-misses-final" advice: const used twice advice
  "sheet.not-stated": input(() => ({
    found: "nothing about the sheet",
    expected: "a section `sheet:`",
    advice: "write machine, thickness and cutter under `sheet:`",
  })),
  "geometry.no-cut": input(() => ({
    found: "neither",
    expected: "a raw portion in g, a strand length in mm, or both",
    advice: "say how much or how long a portion is",
  })),
  "geometry.too-narrow": noAnswer(({ width, strandWidth }: Texts<"width" | "strandWidth">) => ({
    found: `${width} mm of sheet for strands of ${strandWidth} mm`,
    expected: "at least one strand across",
    advice: "roll a wider sheet, trim less or take a narrower cutter",
  })),
  // HAND sheet/strands/geometry.ts:194 "geometry.too-short" found: ConditionalExpression short ? `cuts of ${fixedText(cutLength.value, 0)} mm from sheets of ${fixedText(length, 0)} mm` : `${fixedText(inStrands.value, 1)} g at the cutter for portions of ${fixedText(portion.value, 1 | advice: ConditionalExpression short ? `write a \`strandLength\` of at most ${fixedText(length.floor(), 0)} mm, or roll longer sheets or wider ones` : "take a larger load or a smaller portion"
  // HAND sheet/water/dough-water.ts:176 "temperature.unknown-ingredient" advice: ConditionalExpression nearest === undefined ? "name it as the formula does" : `did you mean "${nearest}"?`
  "temperature.no-flour-left": input(() => ({
    found: "none",
    expected: "at least one flour at the temperature of the flour",
    advice: "write the temperature of most of the flour as `flour:`, and only that of the others under `ingredients:`",
  })),
  // HAND sheet/water/dough-water.ts:300 "temperature.missing" expected: identifier expected
  "temperature.no-tap-water": noAnswer(() => ({
    found: "a dough without tap water",
    expected: "tap water to warm or cool",
    advice: "state more water, or fewer watery ingredients",
  })),
  "food.empty": input(() => ({
    found: "nothing",
    expected: "at least one component above zero",
    advice: "give the masses of the components",
  })),
  "food.denser-than-solid": input(({ measured, poreFree }: Texts<"measured" | "poreFree">) => ({
    found: `${measured} g/mL`,
    expected: `at most ${poreFree} g/mL, the dough without any air`,
    advice: "measure the sheet again: its thickness is most often the error",
  })),
  "inverse.no-stages": input(() => ({
    found: "no weighings",
    expected: "at least one stage",
    advice: "weigh the dough before and after a stage",
  })),
  "inverse.gained": input(({ after, before }: Texts<"after" | "before">) => ({
    found: `${after} g`,
    expected: `at most the ${before} g that went in`,
    advice: "weigh again, or name what was added, such as dusting starch",
  })),
  "measured.implausible": input(
    ({ label, figure, unit, least, most }: Texts<"label" | "figure" | "unit" | "least" | "most">) => ({
      found: `a ${label} of ${figure}${unit}`,
      expected: `${least} to ${most}${unit}`,
      advice: "check the weights, the lengths and their units, and measure again",
    }),
  ),
  // HAND sheet/water/measurements.ts:102 "measured.thickness-or-density" found: identifier found
  "measured.cook-pair": input(() => ({
    found: "no such pair",
    expected: "the raw and the cooked weight, or the water before and after cooking with the solids lost",
    advice: "give --raw '500 g' --cooked '880 g'",
  })),
  "temperature.too-warm": noAnswer(({ coolEnough }: Texts<"coolEnough">) => ({
    found: "a dough too warm even with all its water as ice",
    expected: "ice for part of the water at most",
    advice: `cool the flour to ${coolEnough} °C or below, or mix in less time`,
  })),
  "temperature.needs-ice": noAnswer(({ temperature }: Texts<"temperature">) => ({
    found: `water of ${temperature} °C`,
    expected: "liquid water",
    advice: "give the temperature of the tap, so that the share of ice can be worked out",
  })),
  "temperature.too-cold": noAnswer(({ temperature }: Texts<"temperature">) => ({
    found: `water of ${temperature} °C`,
    expected: "liquid water",
    advice: "let the flour come to a warmer room first",
  })),
};
