import { type Counts, input, type Lists, noAnswer, type Texts } from "./entry.ts";
import { didYouMean, oneOf } from "./words.ts";

type Bounded = Texts<"value"> &
  Partial<Texts<"unit" | "above" | "least" | "below" | "most">> & { readonly whole?: true };

const withUnit = (text: string, unit = ""): string => (unit === "" ? text : `${text} ${unit}`);

const temperatures = {
  wanted: "the dough temperature wanted",
  flour: "the temperature of the flour",
  rework: "the temperature of the room, which rework has",
  others: "the temperature of the room, which all other ingredients have",
};

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
    advice: "write `serve: 12:15` under `plan:`",
  })),
  "plan.whole-minutes": input(({ written, minutes }: Texts<"written" | "minutes">) => ({
    found: written,
    expected: "whole minutes",
    advice: `write ${minutes} min`,
  })),
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
  "plan.machine-not-there": input(({ machine, names }: Texts<"machine"> & Lists<"names">) => ({
    found: `"${machine}"`,
    expected: names.length === 0 ? "a machine from the list" : `one of ${names.join(", ")}`,
    advice: "list the machine with its count, or name one of the list",
  })),
  "plan.stands-too-long": noAnswer(({ stands, longest, machine }: Texts<"machine"> & Counts<"stands" | "longest">) => ({
    found: `no order of work; in the one that begins latest the first load stands ${stands} min before service`,
    expected: `at most ${longest} min`,
    advice: `serve in sittings, add to the ${machine}, which sets the pace, or allow a longer wait`,
  })),
  "sheet.out-of-range": input(({ value, unit, above, least, below, most, whole }: Bounded) => {
    const bounds = [
      above === undefined ? [] : `above ${above}`,
      least === undefined ? [] : `at least ${least}`,
      below === undefined ? [] : `below ${below}`,
      most === undefined ? [] : `at most ${most}`,
    ].flat();
    return {
      found: withUnit(value, unit),
      expected: withUnit(`a ${whole === true ? "whole number" : "number"} ${bounds.join(" and ")}`, unit),
      advice: "correct the number or its unit",
    };
  }),
  "compounding.gap-not-there": noAnswer(({ gap, gaps, own }: Texts<"gap" | "gaps"> & Partial<Texts<"own">>) => ({
    found: `${gap} mm`,
    expected: own === undefined ? gaps : `${own} mm at the compounding rolls, or ${gaps}`,
    advice:
      own === undefined
        ? "compound at a gap that the rolls have, or give rolls of their own under the machine's `compoundingGap:`"
        : "compound at a gap that the rolls have",
  })),
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
  "fits.cutter-not-there": noAnswer(
    ({
      cutter,
      cutters,
      nearest,
      width,
    }: Texts<"cutter"> & Lists<"cutters"> & Partial<Texts<"nearest" | "width">>) => ({
      found: cutter,
      expected: cutters.length === 0 ? "a cutter that the machine has" : cutters.join(", "),
      advice:
        nearest === undefined
          ? "list the cutters of the machine, or a knife by its strand width"
          : `the nearest is ${nearest}, ${width} mm`,
    }),
  ),
  "fits.sheet-too-long": noAnswer(
    ({ length, longestSheet, sheets, each }: Texts<"length" | "longestSheet" | "sheets" | "each">) => ({
      found: `a sheet of ${length} mm`,
      expected: `at most ${longestSheet} mm`,
      advice: `divide the dough into ${sheets} sheets of ${each} mm`,
    }),
  ),
  "passes.final-not-on-setting": noAnswer(({ final, choices }: Texts<"final"> & Lists<"choices">) => ({
    found: final,
    expected: "a thickness that one of the settings gives",
    advice:
      choices.length === 0
        ? "measure the settings and list them"
        : `ask for ${choices.join(" or ")}, or allow a larger difference`,
  })),
  "passes.step-too-big": noAnswer(
    ({
      before,
      from,
      to,
      after,
      reduction,
      most,
      thickest,
      thinnest,
    }: Texts<"before" | "to" | "after" | "reduction" | "most" | "thickest" | "thinnest"> & Partial<Texts<"from">>) => ({
      found: `from ${from === undefined ? `the first thickness of ${before}` : `setting ${from} (${before})`} to setting ${to} (${after}) one pass takes off ${reduction}`,
      expected: `at most ${most} in one pass`,
      advice:
        from === undefined
          ? `press or roll the dough to at most ${thickest} first`
          : `find a setting between ${thinnest} and ${before}, or allow ${reduction}`,
    }),
  ),
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
  "machine.unknown": input(({ name, names, nearest }: Texts<"name"> & Lists<"names" | "nearest">) => ({
    found: `"${name}"`,
    expected: oneOf(names, "a machine described under `machines:`"),
    advice: didYouMean(nearest, "describe it under `machines:`, here or in an included file"),
  })),
  "weighing.unreadable": input(({ written, example }: Texts<"written" | "example">) => ({
    found: written,
    expected: `what went in and what came out, such as "${example}", or with what was added, "10 kg + 50 g to 9.9 kg"`,
    advice: "weigh before and after the stage and write both with their units",
  })),
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
  "passes.first-thickness": input(({ stated }: { readonly stated: "neither" | "both" }) => ({
    found: stated,
    expected: "the thickness of the dough before the first pass, or how it is compounded",
    advice:
      stated === "neither"
        ? "measure the dough as it goes to the rolls and give it in mm"
        : "leave the thickness out: the compounding gap gives it",
  })),
  "passes.not-thinner": input((facts: Texts<"final" | "first"> | Texts<"thickness" | "before">) =>
    "final" in facts
      ? {
          found: `${facts.final} mm from a dough of ${facts.first} mm`,
          expected: "a final thickness below the first",
          advice: "lower the final thickness or start thicker",
        }
      : {
          found: `${facts.thickness} after ${facts.before}`,
          expected: "no pass that leaves the sheet thicker",
          advice: "lower this gap",
        },
  ),
  "passes.no-gaps": input(() => ({
    found: "an empty list",
    expected: "at least one gap in mm",
    advice: "list the gaps, widest first",
  })),
  "passes.list-misses-final": input(({ last, final, within }: Texts<"last" | "final" | "within">) => ({
    found: `a last sheet of ${last}`,
    expected: `${final}, within ${within}`,
    advice: "change the last gap or the final thickness",
  })),
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
  "geometry.too-short": noAnswer((facts: Texts<"cut" | "sheet" | "longest"> | Texts<"dough" | "portion">) => ({
    ...("cut" in facts
      ? {
          found: `cuts of ${facts.cut} mm from sheets of ${facts.sheet} mm`,
          advice: `write a \`strandLength\` of at most ${facts.longest} mm, or roll longer sheets or wider ones`,
        }
      : {
          found: `${facts.dough} g at the cutter for portions of ${facts.portion} g`,
          advice: "take a larger load or a smaller portion",
        }),
    expected: "at least one portion of a load",
  })),
  "temperature.unknown-ingredient": input(({ name, names, nearest }: Texts<"name"> & Lists<"names" | "nearest">) => ({
    found: `"${name}"`,
    expected: `one of: ${names.join(", ")}`,
    advice: didYouMean(nearest, "name it as the formula does"),
  })),
  "temperature.no-flour-left": input(() => ({
    found: "none",
    expected: "at least one flour at the temperature of the flour",
    advice: "write the temperature of most of the flour as `flour:`, and only that of the others under `ingredients:`",
  })),
  "temperature.missing": input(({ key, of }: Texts<"key"> & { readonly of: keyof typeof temperatures }) => ({
    found: "nothing",
    expected: temperatures[of],
    advice: `write \`${key}: 20 °C\` under \`temperature:\``,
  })),
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
  "measured.thickness-or-density": input(({ stated }: { readonly stated: "neither" | "both" }) => ({
    found: stated,
    expected: "the thickness of the strip, or its density",
    advice: "give the thickness to find the density, or the density to find the mean thickness",
  })),
  "measured.cook-pair": input(() => ({
    found: "no such pair",
    expected: "the raw and the cooked weight, or the water before and after cooking with the solids lost",
    advice: "weigh the noodles raw and cooked",
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
