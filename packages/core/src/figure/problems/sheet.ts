import { type Measure, measure } from "../in-system.ts";
import { type Counts, input, type Lists, type Measures, noAnswer, remark, type Texts } from "./entry.ts";
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

/** A pass whose rolls run too fast or too slow. */
export interface UnevenPass extends Counts<"pass">, Measures<"even" | "speed"> {}

/** What the ends of sheets leave, and the strand lengths that would use the sheet up. */
export type LeftOver = Texts<"portions"> &
  Measures<"left" | "end"> & {
    readonly lengths: readonly Measure[];
    readonly loads: "one" | "several";
  };

/** A thickness that no setting gives, and the nearest that are there, mm. */
export type NoSuchSetting = Texts<"final"> &
  Partial<Texts<"meant">> & { readonly choices: readonly Texts<"setting" | "thickness">[] };

/** A compounding gap that the rolls do not have, mm, and those that they have. */
export type NoSuchGap = Texts<"gap"> &
  Partial<Texts<"own">> & {
    readonly gaps:
      | ({ readonly kind: "free" } & Texts<"least" | "greatest">)
      | { readonly kind: "dial" | "line" | "sticks"; readonly settings: readonly Texts<"gap" | "name">[] };
  };

/** Lengths that are not to be passed, whatever unit they are rounded in. */
const atMost = (length: string): Measure => ({ ...measure(length, "mm"), toward: "down" });
const atLeast = (length: string): Measure => ({ ...measure(length, "mm"), toward: "up" });

const meltingIce =
  "The ice has to melt while the dough is mixed: crush it or take flakes, and feel for pieces before the dough rests.";

export const sheet = {
  "cook.dried": input(({ cookedWater, rawWater }: Texts<"cookedWater" | "rawWater">) => ({
    found: `${cookedWater} %`,
    expected: `at least the ${rawWater} % of the raw noodles`,
    advice: "swap the two, or measure again",
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
    expected: "when the noodles are served, and how long a load takes at each stage",
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
    advice: "check both numbers and their units",
  })),
  "plan.serve-time": input(({ serve }: Texts<"serve">) => ({
    found: `"${serve}"`,
    expected: 'a time of day from "00:00" to "23:59"',
    advice: `write it like "${onClock(serve) ?? "12:15"}"`,
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
    expected: oneOf(names, "a machine from the list"),
    advice: "list the machine with its count, or name one of the list",
  })),
  "plan.stands-too-long": noAnswer(({ stands, longest, machine }: Texts<"machine"> & Counts<"stands" | "longest">) => ({
    found: `no order of work that keeps the wait short enough: in the one that begins latest the first load stands ${stands} min before service`,
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
  "compounding.gap-not-there": noAnswer(({ gap, gaps, own }: NoSuchGap, _, tell) => {
    const there =
      gaps.kind === "free"
        ? `${tell(atLeast(gaps.least))} to ${tell(atMost(gaps.greatest))}`
        : `one of ${gaps.settings.map(({ gap, name }) => `${tell(measure(gap, "mm"))} (${name})`).join(", ")}`;
    return {
      found: tell(measure(gap, "mm")),
      expected: own === undefined ? there : `${tell(measure(own, "mm"))} at the compounding rolls, or ${there}`,
      advice:
        own === undefined
          ? "compound at a gap that the rolls have, or give rolls of their own under the machine's `compoundingGap:`"
          : "compound at a gap that the rolls have",
    };
  }),
  "fits.rolls-too-narrow": noAnswer(({ width, rolls }: Texts<"width" | "rolls">, _, tell) => ({
    found: `a sheet ${tell(measure(width, "mm"))} wide`,
    expected: `at most ${tell(measure(rolls, "mm"))}`,
    advice: `roll it ${tell(measure(rolls, "mm"))} wide; each sheet then gets longer by the same ratio`,
  })),
  "fits.cutter-too-narrow": noAnswer(
    ({ width, widest, cutter, strips, each }: Texts<"width" | "widest" | "cutter" | "strips" | "each">, _, tell) => ({
      found: `a sheet ${tell(measure(width, "mm"))} wide`,
      expected: `at most ${tell(measure(widest, "mm"))} for the cutter ${cutter}`,
      advice: `slit the sheet lengthwise into ${strips} strips of about ${tell(measure(each, "mm"))}, or roll it ${tell(measure(widest, "mm"))} wide`,
    }),
  ),
  "fits.cutter-not-there": noAnswer(
    (
      {
        cutter,
        cutters,
        nearest,
        width,
      }: Texts<"cutter"> &
        Lists<"cutters"> &
        Partial<Texts<"nearest" | "width">> & { readonly meant?: string | number },
      _,
      tell,
    ) => ({
      found: sizeTold(cutter, tell),
      expected: `a cutter that the machine has${cutters.length === 0 ? "" : `: ${cutters.map((one) => sizeTold(one, tell)).join(", ")}`}`,
      advice:
        nearest === undefined || width === undefined
          ? "list the cutters of the machine; a knife is one too, by the width of its strands"
          : `take ${sizeTold(nearest, tell)}, the nearest, which cuts strands of ${tell(measure(width, "mm"))}, or list this one under \`cutters:\` of the machine`,
    }),
  ),
  "fits.sheet-too-long": noAnswer(
    ({ length, longestSheet, sheets, each }: Texts<"length" | "longestSheet" | "sheets" | "each">, _, tell) => ({
      found: `a sheet of ${tell(measure(length, "mm"))}`,
      expected: `at most ${tell(measure(longestSheet, "mm"))}`,
      advice: `divide the dough into ${sheets} sheets of ${tell(measure(each, "mm"))}`,
    }),
  ),
  "passes.final-not-on-setting": noAnswer(({ final, choices }: NoSuchSetting, _, tell) => ({
    found: tell(measure(final, "mm")),
    expected: "a thickness that one of the settings gives",
    advice:
      choices.length === 0
        ? "measure the settings and list them"
        : `ask for ${choices.map(({ setting, thickness }) => `${tell(measure(thickness, "mm"))} (setting ${setting})`).join(" or ")}, or allow a larger difference`,
  })),
  "passes.step-too-big": noAnswer(
    (
      {
        before,
        from,
        to,
        after,
        reduction,
        most,
        thickest,
        thinnest,
      }: Texts<"before" | "to" | "after" | "reduction" | "most" | "thickest" | "thinnest"> & Partial<Texts<"from">>,
      _,
      tell,
    ) => ({
      found: `from ${from === undefined ? `the first thickness of ${tell(measure(before, "mm"))}` : `setting ${from} (${tell(measure(before, "mm"))})`} to setting ${to} (${tell(measure(after, "mm"))}) one pass takes off ${reduction}`,
      expected: `at most ${most} in one pass`,
      advice:
        from === undefined
          ? `press or roll the dough to at most ${tell(atMost(thickest))} first`
          : `find a setting between ${tell(atLeast(thinnest))} and ${tell(measure(before, "mm"))}, or allow ${reduction}`,
    }),
  ),
  "passes.final-outside-gap": noAnswer(
    (
      {
        lastGap,
        least,
        greatest,
        thinnest,
        thickest,
      }: Texts<"lastGap" | "least" | "greatest" | "thinnest" | "thickest" | "meant">,
      _,
      tell,
    ) => ({
      found: `a thickness that needs a last gap of ${tell(measure(lastGap, "mm"))}, as the sheet springs back after it`,
      expected: `a gap that the rolls of this machine open to: ${tell(atLeast(least))} to ${tell(atMost(greatest))}`,
      advice: `ask for a final thickness of ${tell(atLeast(thinnest))} to ${tell(atMost(thickest))}`,
    }),
  ),
  "passes.first-too-thick": noAnswer(
    (
      {
        first,
        reduction,
        most,
        thickest,
      }: Texts<"first" | "reduction" | "most" | "thickest"> & Partial<Texts<"meant">>,
      _,
      tell,
    ) => ({
      found: `${tell(measure(first, "mm"))}, of which the widest gap would take off ${reduction}`,
      expected: `at most ${most} in one pass`,
      advice: `press or roll the dough by hand to at most ${tell(atMost(thickest))} first`,
    }),
  ),
  "machine.unknown": input(
    ({ name, names, nearest }: Texts<"name"> & Lists<"names" | "nearest"> & Partial<Texts<"meant">>) => ({
      found: `"${name}"`,
      expected: oneOf(names, "a machine described under `machines:`"),
      advice: didYouMean(nearest, "describe it under `machines:`, here or in an included file"),
    }),
  ),
  "weighing.unreadable": input(({ written, example }: Texts<"written" | "example">) => ({
    found: written,
    expected: `what went in and what came out, such as "${example}", or with what was added, "10 kg + 50 g to 9.9 kg"`,
    advice: "weigh before and after the stage and write both with their units",
  })),
  "machine.too-many-settings": input(({ settings, most }: Counts<"most"> & Counts<"settings">) => ({
    found: `${settings} settings`,
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
  "passes.first-thickness": input(
    ({ stated, meant }: { readonly stated: "neither" | "both" } & Partial<Texts<"meant">>) => ({
      found: stated === "neither" ? "neither `start` nor `compounding`" : "both `start` and `compounding`",
      expected: "the thickness of the dough before the first pass, or how it is compounded",
      advice:
        stated === "neither"
          ? `measure the dough as it goes to the rolls and give it in mm, such as \`start: ${meant}\``
          : "leave the thickness out: the compounding gap gives it",
    }),
  ),
  "passes.not-thinner": input((facts: Texts<"final" | "first"> | Texts<"thickness" | "before">, _, tell) =>
    "final" in facts
      ? {
          found: `${tell(measure(facts.final, "mm"))} from a dough of ${tell(measure(facts.first, "mm"))}`,
          expected: "a final thickness below the first",
          advice: "lower the final thickness or start thicker",
        }
      : {
          found: `${tell(measure(facts.thickness, "mm"))} after ${tell(measure(facts.before, "mm"))}`,
          expected: "no pass that leaves the sheet thicker",
          advice: "lower this gap",
        },
  ),
  "passes.no-gaps": input(() => ({
    found: "an empty list",
    expected: "at least one gap in mm",
    advice: "list the gaps, widest first",
  })),
  "passes.list-misses-final": input(({ last, final, within }: Texts<"last" | "final" | "within">, _, tell) => ({
    found: `a last sheet of ${tell(measure(last, "mm"))}`,
    expected: `${tell(measure(final, "mm"))}, within ${tell(measure(within, "mm"))}`,
    advice: "change the last gap or the final thickness",
  })),
  "sheet.not-stated": input<{ readonly meant?: Readonly<Record<string, string | number>> }>(() => ({
    found: "nothing about the sheet",
    expected: "the machine, the thickness of the sheet and the cutter",
    advice: "write machine, thickness and cutter under `sheet:`",
  })),
  "geometry.no-cut": input<Texts<"meant">>(() => ({
    found: "neither a portion nor a strand length",
    expected: "a raw portion in g, a strand length in mm, or both",
    advice: "say how much or how long a portion is",
  })),
  "geometry.too-narrow": noAnswer(({ width, strandWidth }: Texts<"width" | "strandWidth">, _, tell) => ({
    found: `${tell(measure(width, "mm"))} of sheet for strands of ${tell(measure(strandWidth, "mm"))}`,
    expected: "at least one strand across",
    advice: "roll a wider sheet, trim less or take a narrower cutter",
  })),
  "geometry.too-short": noAnswer((facts: Texts<"cut" | "sheet" | "longest"> | Texts<"dough" | "portion">, _, tell) => ({
    ...("cut" in facts
      ? {
          found: `cuts of ${tell(measure(facts.cut, "mm"))} from sheets of ${tell(measure(facts.sheet, "mm"))}`,
          advice: `write a \`strandLength\` of at most ${tell(measure(facts.longest, "mm"))}, or roll longer sheets or wider ones`,
        }
      : {
          found: `${tell(measure(facts.dough, "g"))} at the cutter for portions of ${tell(measure(facts.portion, "g"))}`,
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
    found: "a temperature of its own for every flour",
    expected: "at least one flour left that has the temperature of the flour at large",
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
  "food.denser-than-solid": input(({ measured, poreFree }: Texts<"measured" | "poreFree">, _, tell) => ({
    found: tell(measure(measured, "g/mL")),
    expected: `at most ${tell(measure(poreFree, "g/mL"))}, the dough without any air`,
    advice: "measure the sheet again: its thickness is most often the error",
  })),
  "inverse.no-stages": input(() => ({
    found: "no weighings",
    expected: "at least one stage",
    advice: "weigh the dough before and after a stage",
  })),
  "inverse.gained": input(({ after, before }: Texts<"after" | "before">, _, tell) => ({
    found: tell(measure(after, "g")),
    expected: `at most the ${tell(measure(before, "g"))} that went in`,
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
    found: `${stated} of the two`,
    expected: "the thickness of the strip, or its density",
    advice: "give the thickness to find the density, or the density to find the mean thickness",
  })),
  "measured.cook-pair": input(() => ({
    found: "no pair to work from",
    expected: "the raw and the cooked weight, or the water before and after cooking with the solids lost",
    advice: "weigh the noodles raw and cooked",
  })),
  "temperature.too-warm": noAnswer(({ coolEnough }: Texts<"coolEnough">, _, tell) => ({
    found: "a dough too warm even with all its water as ice",
    expected: "ice for part of the water at most",
    advice: `cool the flour to ${tell(measure(coolEnough, "°C"))} or below, or mix in less time`,
  })),
  "temperature.needs-ice": noAnswer(({ temperature }: Texts<"temperature">, _, tell) => ({
    found: `water of ${tell(measure(temperature, "°C"))}`,
    expected: "liquid water",
    advice: "give the temperature of the tap, so that the share of ice can be worked out",
  })),
  "temperature.too-cold": noAnswer(({ temperature }: Texts<"temperature">, _, tell) => ({
    found: `water of ${tell(measure(temperature, "°C"))}`,
    expected: "liquid water",
    advice: "let the flour come to a warmer room first",
  })),

  "passes.uneven-speeds": remark(
    ({ passes, most }: { readonly passes: readonly UnevenPass[] } & Texts<"most">, tell) =>
      `The stands do not pass on the same volume. To keep pace with the last stand: ${passes.map(({ pass, even, speed }) => `pass ${pass} at ${tell(even)} in place of ${tell(speed)}`).join(", ")}. Where a stand is too fast the sheet piles up after it; where it is too slow the next one draws the sheet thin. Up to ${most} % is let through (common practice, no source).`,
  ),
  "passes.above-limit": remark(
    ({ pass, reduction, limit }: Counts<"pass"> & Texts<"reduction" | "limit">) =>
      `Pass ${pass} takes off ${reduction}, more than the limit of ${limit}.`,
  ),
  "sheet.portions-short": remark(
    ({ fewer, wanted, lost, counted }: Texts<"fewer" | "wanted" | "lost" | "counted">) =>
      `The sheets give ${fewer} ${fewer === "1" ? "portion" : "portions"} fewer than the ${wanted} wanted: trim and leftover take ${lost} % of the dough at the rolls, and the batch counts on ${counted} %. Count on a greater loss at the sheeter, trim less or roll longer sheets.`,
  ),
  "sheet.much-left-over": remark(
    ({ left, loads, portions, end, lengths }: LeftOver, tell) =>
      `${tell(left)} of ${loads === "several" ? "each load" : "the dough"} are left over, enough for ${portions} more ${portions === "1" ? "portion" : "portions"}: the last ${tell(end)} of each sheet are shorter than a strand. Strands of ${lengths.map((length) => tell(length)).join(" or ")} use the sheet up; or knead what is left over and roll it again.`,
  ),
  "sheet.no-cutter": remark(
    "No cutter is stated, so these are the passes and the sheets alone: strands, cuts and portions need one.",
  ),
  "sheet.strand-length": remark(
    ({ length }: Measures<"length">, tell) =>
      `The strands come out ${tell(length)} long: no length is stated, so a portion is one cut across the whole width.`,
  ),
  "sheet.spring-back-unmeasured": remark(
    "No spring-back is counted: the sheet is taken to be as thick as the gap. Measure a sheet behind the rolls to know how much thicker it is.",
  ),
  "sheet.layers": remark("Pressing folded layers into one is not checked against the largest reduction of a pass."),
  "sheet.cooked-range": remark(
    ({ low, high }: Measures<"low" | "high">, tell) =>
      `A cooked portion may weigh from ${tell(low)} to ${tell(high)}, the range of the usual cook gain; weigh one raw and cooked to know your own.`,
  ),
  "sheet.denser-than-solid": remark(
    ({ density, dough, poreFree }: Measures<"density" | "poreFree"> & Texts<"dough">, tell) =>
      `A density of ${tell(density)} cannot be: without any air ${dough} has ${tell(poreFree)}. Most often the thickness was read too thin, with a gauge that presses into the dough or at one place only; measure several places of a larger strip, and weigh it again.`,
  ),
  "sheet.thinner-than-gap": remark(
    ({ springBack }: Texts<"springBack">) =>
      `A spring-back of ${springBack} means a sheet thinner than the gap that it came through: rolls cannot do that. Measure the gap with dough between the rolls and the thickness with a gauge that does not press, and see that nothing draws the sheet out as it leaves.`,
  ),
  "dough.density-estimate": remark(
    "The density is estimated from composition; a measured sheet gives the kitchen's own figure.",
  ),
  "food.not-stated": remark(
    ({ name, solids: missing }: Texts<"name"> & Lists<"solids">) =>
      `${name}: no figure for ${missing.join(", ")}, which ${missing.length === 1 ? "counts" : "count"} as carbohydrate in the estimate of the density.`,
  ),
  "toasted.gluten": remark(
    "whether protein of a toasted flour still forms gluten is not known: it is not counted as forming any unless the spec says so",
  ),
  "temperature.textbook-hydration": remark(
    "The heat of hydration is a textbook figure for one dough; the temperatures of one measured mix give this kitchen's own.",
  ),
  "temperature.no-mixer-work": remark(
    "No work of a mixer is counted. A machine warms the dough as it mixes: where one is used, state its power and the mixing time, or a measured heat of mixing.",
  ),
  "temperature.friction-alone": remark(
    (
      {
        friction,
        rule,
        apart,
        colder,
      }: Measures<"friction"> & Partial<Measures<"rule" | "apart">> & { readonly colder?: boolean },
      tell,
    ) => {
      const beside =
        rule && apart
          ? `, by which the water would be at ${tell(rule)}, ${tell(apart)} ${colder === true ? "colder" : "warmer"}`
          : ", which needs the temperature of the room too";
      return `Friction of ${tell(friction)} counts in the rule of three alone${beside}; the heat balance, whose water this is, counts no work of a mixer. Measure one mix, which gives the heat of mixing beside the friction, and state that heat of mixing.`;
    },
  ),
  "temperature.hot-water": remark(
    (_, tell) =>
      `Water above about ${tell(measure("45", "°C"))} scalds hands and begins to harm flour protein where it first meets it (common practice, no source); warm the flour instead.`,
  ),
  "temperature.no-heat-of-solution": remark(({ name, salts }: Texts<"name"> & Partial<Lists<"salts">>) =>
    salts === undefined
      ? `${name} holds water, so no heat of solution is counted for it.`
      : `${name} holds ${salts.join(" and ")}, whose heat of solution is not known here, so none is counted for it.`,
  ),
  "temperature.far-apart": remark(
    ({ apart, inputs, power }: Measures<"apart"> & Lists<"inputs"> & { readonly power: boolean }, tell) => {
      const only = power ? " Only the power that goes into the dough counts, not all that the motor is rated for." : "";
      return `The rule of three and the heat balance are ${tell(apart)} apart, more than the masses, which the rule does not know, account for in most doughs. Check ${inputs.join(", ")}.${only} One measured mix gives both the heat of mixing and the friction.`;
    },
  ),
  "temperature.ice-melts": remark(meltingIce),
  "temperature.much-ice": remark(
    ({ ice }: Texts<"ice">) =>
      `${ice} % of the water is ice, more than melts in time in most mixers (common practice, no source), and the flour meets too little water at first. Cool the flour and the other ingredients, or heat the dough less by mixing less; check the power stated for the mixer. ${meltingIce}`,
  ),
  "temperature.rule-without-masses": remark(
    "The bakers' rule of three temperatures knows no masses and was made for bread with about 60 % water: where it differs from the heat balance, go by the heat balance.",
  ),
  "measured.cold-mix": remark(
    "The dough came out colder than its ingredients explain: a cold bowl or room took heat, or a reading is off. Measure again before the figure is used.",
  ),
  "cook.lighter": remark(
    ({ gain }: Texts<"gain">) =>
      `A cook gain of ${gain} means noodles that weigh less cooked than raw: boiling adds water. See that the two weights were not swapped and that none of the noodles was left in the pot, and weigh again.`,
  ),
  "pot.estimate": remark(
    "Estimate: the noodles take the pot's temperature at once, starch takes up no heat as it gelatinises, no steam leaves, and the power into the water stays what was measured.",
  ),
  "plan.rolling-too-short": remark(
    ({ stage, running, planned }: { readonly stage: "compound" | "roll" } & Texts<"running" | "planned">) =>
      `To ${stage} the sheets of a load, the rolls alone run ${running} min, more than the ${planned} min planned.`,
  ),
  "plan.not-proved": remark(
    ({ minutes }: Counts<"minutes">) =>
      `Stages take turns at machines in too many ways to try them all: a day that begins up to ${minutes} min later is not ruled out.`,
  ),
  "plan.no-dusting": remark("The spec names no dusting starch; 1 to 3 % of the sheet is common practice, no source."),

  "caution.rolls": remark(
    "Rolls draw in fingers, hair, sleeves and apron strings faster than they can be stopped: tie back and roll up, keep guards and stop bars in place, feed with the flat hand or a tool, and switch off and unplug before clearing or cleaning. Children turn the handle only beside somebody who has been shown how. The machine's manual and the local rules for its use come first.",
  ),
  "caution.cutter": remark(
    "Cutters pull in and cut: catch strands well below them, never pick dough out of turning blades, and take them out to clean only with the machine unplugged. The machine's manual comes first.",
  ),
  "caution.dust": remark(
    "Flour and dusting starch irritate lungs and, thrown up thickly near a flame or spark, can burn at once: pour low, dust by hand and thinly, wipe or vacuum instead of blowing. Local workplace limits for flour dust apply.",
  ),
  "caution.pot": remark(
    "Boiling pots scald and alkaline noodles make them foam: leave headroom, lower baskets slowly, lift them away from the body, keep the way to the sink clear and children at a distance. The pot's manual and local kitchen rules come first.",
  ),
  "caution.standing-dough": remark(
    "Germs grow in wet dough and wet noodles that stand warm; alkali does not stop them. Keep waiting times short and cool, boil before eating, wash hands and tools. The local rules for time and temperature decide.",
  ),
  "caution.packed": remark(
    "Noodles that are packed for later, most of all without air, need a food safety plan of their own with limits set by somebody competent; nothing worked out here is a keeping time. Local rules decide.",
  ),
};

/** A time of day by the half of the day, as the clock of 24 hours shows it: `17:30` for `5:30 pm`. */
function onClock(said: string): string | undefined {
  const form = /^(?<hour>1[0-2]|0?[1-9])(?:[:.](?<minute>[0-5]\d))? ?(?<half>[ap])\.?m\.?$/iu;
  const { hour, minute = "00", half } = form.exec(said.trim())?.groups ?? {};
  if (hour === undefined) return undefined;
  const hours = (Number(hour) % 12) + (half?.toLowerCase() === "p" ? 12 : 0);
  return `${String(hours).padStart(2, "0")}:${minute}`;
}

/** A cutter by its number, or by the width of its strands in the units asked for. */
function sizeTold(size: string, tell: (measure: Measure) => string): string {
  const [, width] = /^([\d.]+) mm$/u.exec(size) ?? [];
  return width === undefined ? size : tell(measure(width, "mm"));
}
