import {
  type Answer,
  askCard,
  askDay,
  askMend,
  askSheet,
  type Noodle,
  type Problem,
  type Report,
  told,
} from "@noodlewright/core";
import type { Batch, WeighedLine } from "@noodlewright/core/answers";
import { listSalts } from "@noodlewright/core/chemistry";
import { type Figure, fixedText, graphOf, type Path, pathText, toldIn } from "@noodlewright/core/figure";
import { inSystem, printableData, renderCard, renderHtml, shownGrouped, workings } from "@noodlewright/core/render";
import { isSection, textAt, valueAt } from "../input/put.ts";
import type {
  Answers,
  AnswerTo,
  Asked,
  Changes,
  First,
  Item,
  Kitchen,
  Loads,
  Mending,
  Place,
  Question,
  Rolled,
  Section,
  Shown,
  Stage,
  Told,
} from "./answers.ts";
import { dayOf } from "./clock.ts";
import { differences } from "./differences.ts";
import { followings } from "./follows.ts";
import { asWeighed, finest } from "./items.ts";
import type { PageData } from "./page-data.ts";
import { entryAt, freshState, isFound, keyOf, readEntry } from "./state.ts";
import { batchRecord, doughRows, specYaml } from "./take-along.ts";
import { proteinBasis, reckonedProtein, strengthPlace, type Today, workOut } from "./today.ts";
import { words } from "./words.ts";

type Graph = ReturnType<typeof graphOf>;

/** Answers what the page asks. */
export type Desk = { readonly [Q in Question]: (asked: Asked<Q>) => AnswerTo<Q> };

/** Reads the noodle of a page, and works out what is asked of it. */
export function openDesk(data: PageData): Desk {
  const before = workOut(data, freshState);
  let last = { key: keyOf(freshState), today: before };
  const todayOf = (changes: Changes): Today => {
    const key = keyOf(changes);
    if (key !== last.key) last = { key, today: workOut(data, changes, before.noodle) };
    return last.today;
  };
  const answers = (changes: Changes) => answersOf(before, todayOf(changes), changes);
  return {
    answers,
    roll: (changes) => rolled(todayOf(changes)),
    working: ({ changes, from, id }) => {
      const today = todayOf(changes);
      const graph = graphAt(today, from);
      const figures = [exactOf(today, id), graph[id]].filter((figure) => figure !== undefined);
      return printableData(workings(Object.values(graphOf(figures, graph)).reverse()));
    },
    mend: ({ changes, bowl }) => mended(data, todayOf(changes), bowl),
    card: ({ state, now }) => {
      const today = todayOf(state);
      const { noodle } = today;
      const said = [data.said, ...foundIn(today), ...differences(data.spec, today.spec, state)]
        .filter((one) => one !== "")
        .join(", ");
      const made = noodle && askCard(noodle, { date: dayOf(new Date(now)), files: data.files, said });
      return made?.ok ? renderCard(made.value.card, data.units === "us" ? "letter" : "a4") : "";
    },
    rows: ({ state, now }) => doughRows({ data, state, today: answers(state), now: new Date(now) }),
    record: ({ state, now }) => renderHtml(batchRecord({ data, state, today: answers(state), now: new Date(now) })),
    yaml: (changes) => specYaml(todayOf(changes).spec),
  };
}

/** What the page shows before its own core has started. */
export function firstAnswers(data: PageData): First {
  const { spec: _, ...answers } = openDesk(data).answers(freshState);
  return { kitchen: kitchenOf(data, workOut(data, freshState)), answers };
}

function kitchenOf(data: PageData, before: Today): Kitchen {
  const { noodle, spec } = before;
  const lines = noodle?.formula.lines ?? [];
  const salts = listSalts("");
  const products = salts.ok ? salts.value.filter(({ alkaline }) => alkaline).map(({ name }) => name) : [];
  const materials = valueAt(spec, ["materials"]);
  const own = Object.keys(materials ?? {}).filter((name) => textAt(materials, [name, "kind"]) === "alkali");
  const can = (path: Path, text: string): boolean =>
    workOut(data, { ...freshState, entries: [{ path: [...path], text, unit: "" }] }, noodle).problems.length === 0;
  return printableData({
    flours: lines
      .filter(({ role }) => role === "flour")
      .map((line) => {
        const { moisture, written } = line.material;
        const number = (text: string): string => text.replace(/\s*%$/u, "").slice(0, 6);
        return {
          name: line.name,
          path: line.path,
          moisture: number(written?.moisture ?? moisture),
          protein: number(written?.protein ?? reckonedProtein(spec, line)),
          basis: proteinBasis(spec, line),
        };
      }),
    // A product of several salts is one entry of the spec.
    alkali: lines.flatMap(({ role, path, name }, index) => {
      const isFirst = lines.findIndex((line) => pathText(line.path) === pathText(path)) === index;
      if (role !== "alkali" || !isFirst) return [];
      // Nothing is held of an amount that is found: another product is found anew by what is wanted.
      const isOpen = isFound(valueAt(spec, [...path, "amount"]));
      const place = [...path, isOpen ? "name" : "replaceWith"];
      const called = textAt(spec, [...path, "name"]) || name;
      const others = [...own.filter((one) => one !== called), ...products];
      const strength = strengthPlace(spec, path, called);
      return [
        {
          name: called,
          place,
          written: isOpen ? "" : textAt(spec, place),
          products: isOpen ? others.filter((one) => can(place, one)) : others,
          ...(strength && { strength }),
        },
      ];
    }),
  });
}

function answersOf(before: Today, today: Today, changes: Changes): Answers {
  const { spec, noodle, batch, water, problems } = today;
  const shown = noodle ?? before.noodle;
  const report = batch?.report();
  const units = noodle?.units ?? "metric";
  // What was found is no warning.
  const loud = batch?.notes.filter(({ loud, code }) => loud && code !== "settle.found").map(toldIn(units)) ?? [];
  const target = batch?.value.target;
  const loads = batch?.value.loads;
  const size = [target?.bowls, target?.dough, target?.strands, loads?.count, loads?.dough, loads?.flour];
  const allergens = report?.sections.find(({ id }) => id === "allergens");
  return {
    spec,
    ...printableData({
      name: shown?.formula.name ?? "",
      names: shown?.formula.lines.filter(({ parts }) => Number(parts.value) > 0).map(({ name }) => name) ?? [],
      stages: stagesOf(shown),
      problems: toldAll(problems, changes),
      loud,
      found: foundIn(today),
      ...(batch && report && { loads: loadsOf(batch.value, report, today) }),
      size: size.flatMap((figure) => (figure === undefined ? [] : [shownAt("batch", inSystem(figure, units))])),
      water: water ? [shownAt("water", inSystem(water.value.plan.temperature, units))] : [],
      follows: changes.entries.length === 0 ? [] : followings(before, today, changes, massesOf),
      allergens: allergens?.blocks.flatMap((block) => (block.kind === "text" ? block.lines : [])) ?? [],
      cautions: report?.cautions ?? [],
      notes: notesOf([report, water?.report()], loud),
    }),
  };
}

/** The amounts that were found for what is wanted, in words. */
function foundIn({ noodle }: Today): readonly string[] {
  return noodle?.notes.filter(({ code }) => code === "settle.found").map(told) ?? [];
}

/** The stages of the plan that are timed. */
function stagesOf(noodle: Noodle | undefined): readonly Stage[] {
  const { rest, mature, mix, boil } = noodle?.spec.plan ?? {};
  const times = { mix: mix && { least: mix }, rest, mature, boil: boil && { least: boil } };
  return (["mix", "rest", "mature", "boil"] as const).flatMap((stage) => {
    const { least, most }: Partial<NonNullable<typeof rest>> = times[stage] ?? {};
    return least === undefined ? [] : [{ stage, least: minutesOf(least), ...(most && { most: minutesOf(most) }) }];
  });
}

function minutesOf({ value }: { readonly value: string }): number {
  return Number(value) / 60;
}

/** The notes of reports, each once. */
function notesOf(reports: readonly (Report | undefined)[], before: readonly string[]): readonly string[] {
  const all = new Set(reports.flatMap((report) => report?.notes.map(({ text }) => text) ?? []));
  return [...all].filter((one) => !before.includes(one));
}

/** Each problem once. What was typed and is no number is told as the page takes it, not as a spec is written. */
function toldAll(problems: readonly Problem[], changes?: Changes): readonly Told[] {
  const all = problems.map((problem): Told => {
    const { path } = problem;
    const entry = changes && entryAt(changes, path);
    const reading = entry && entry.unit !== "" ? readEntry(entry) : undefined;
    if (reading?.ok === false) return { path, found: `"${entry?.text}"`, expected: reading.needs };
    const { kind, found, expected, advice } = told(problem);
    return { path, found, expected: kind === "no-answer" ? `${expected}; ${advice}` : expected };
  });
  return [...new Map(all.map((one) => [`${one.found} ${one.expected}`, one])).values()];
}

function shownAt(from: Place, figure: Figure): Shown {
  return { from, id: figure.id, label: figure.label, text: `${shownGrouped(figure)} ${figure.unit}`.trim() };
}

function loadsOf(batch: Batch, report: Report, today: Today): Loads {
  const shown = ({ mass, ...item }: Massed): Item => {
    const figure = { from: "batch" as const, id: mass.id, label: item.name, text: asWeighed(item) };
    return { ...item, figure };
  };
  const items = massesOf(today).map((one) => {
    return { ...shown(one), ...(one.kind === "stock" && { plain: plainMasses(today).map(shown) }) };
  });
  const total = batch.totalWithStock ?? batch.loadTotal;
  const unit = items[0]?.unit ?? "g";
  const text = asWeighed({ unit, division: finest(items), grams: total.value });
  return {
    count: Number(batch.loads.count.value),
    items,
    total: { from: "batch", id: total.id, label: words.weigh.total, text },
    remedies: sectionsOf(report, "remedies", ({ id }) => id === "remedies"),
  };
}

type Massed = Omit<Item, "figure"> & { readonly mass: Figure };

/** Everything that is weighed for a load, each with its mass. */
function massesOf(today: Today): readonly Massed[] {
  const { withStock, remedies } = today.batch?.value ?? {};
  const plain = plainMasses(today);
  if (withStock === undefined) return plain;
  const { salts = [], carrier, stock } = remedies?.stock ?? {};
  const held = (line: WeighedLine["line"], figure: Figure | undefined) => {
    return figure === undefined ? [] : [{ id: line.id, name: line.name, grams: fixedText(figure.value, 6) }];
  };
  const holds = [
    ...salts.flatMap(({ line }, index) => held(line, stock?.delivered[index])),
    ...(carrier ? held(carrier.line, stock?.brought) : []),
  ];
  const stocked = withStock.map(({ weighed, mass, name, unit, division, scale }): Massed => {
    const dry = plain.find(({ id }) => id === (weighed?.line.id ?? mass.id));
    const grams = mass.value;
    if (dry) return { ...dry, mass, grams };
    return { id: mass.id, name, mass, grams, unit, division, scale, kind: "stock", holds };
  });
  return [...stocked, ...plain.filter(({ kind }) => kind === "dusting")];
}

/** The name of what is weighed: with its strength, where a solution is another today than the spec has it. */
function calledToday({ name, path }: WeighedLine["line"], { spec, written }: Today): string {
  const place = strengthPlace(spec, path, name);
  if (place === undefined || textAt(spec, [...path, "name"]) !== name) return name;
  const strength = textAt(spec, place);
  return strength === textAt(written, place) ? name : words.weigh.ofStrength(name, strength);
}

/** The same without a stock solution. */
function plainMasses(today: Today): readonly Massed[] {
  const { noodle, batch, water } = today;
  if (batch === undefined) return [];
  const { lines, rework, dusting, remedies } = batch.value;
  const { finer: others, stock } = remedies;
  const tooLittle = remedies.tooLittle.map(({ line }) => line.id);
  const waterId = lines.find(({ line }) => line.role === "water")?.line.id;
  type Scale = Pick<Item, "unit" | "division" | "scale" | "lots">;
  const item = (id: string, name: string, mass: Figure, on: Scale, kind: Item["kind"]) => {
    const { unit, division, scale, lots = 1 } = on;
    const isDry = tooLittle.includes(id) && stock?.salts.some(({ line }) => line.id === id);
    const finer = isDry ? stock?.dry.value : others.find(({ weighed }) => weighed.line.id === id)?.division.value;
    const { plan, weighed } = (id === waterId ? water?.value : undefined) ?? {};
    const ice = weighed?.ice?.ice.value;
    const warm = plan && !ice && shownAt("water", inSystem(plan.temperature, noodle?.units ?? "metric")).text;
    const listed = { id, name, mass, grams: mass.value, unit, division, scale, kind };
    return {
      ...listed,
      ...(finer && { finer: asWeighed({ unit, division: finer, grams: finer }) }),
      ...(warm && { warm: words.weigh.warm(warm) }),
      ...(ice && { ice: asWeighed({ unit, division, grams: ice }) }),
      ...(lots > 1 && { lots }),
    };
  };
  return [
    ...lines.map((one) => item(one.line.id, calledToday(one.line, today), one.load, one, "ingredient")),
    ...(rework ? [item(rework.mass.id, rework.name, rework.mass, rework, "ingredient")] : []),
    ...(dusting ? [item(dusting.line.id, dusting.line.name, dusting.load, dusting, "dusting")] : []),
  ];
}

/** The figure that was rounded to a scale to come to the one of an id. */
function exactOf({ batch, water }: Today, id: string): Figure | undefined {
  const { lines = [], dusting } = batch?.value ?? {};
  if (water && id === water.value.weighed.ice?.ice.id) return water.value.plan.ice?.ice;
  return [...lines, ...(dusting ? [dusting] : [])].find(({ load }) => load.id === id)?.exact;
}

type Reporting = Answer<unknown>;

function rolled({ noodle, batch, water, problems }: Today): Rolled {
  const sheet = noodle?.spec.sheet === undefined ? undefined : askSheet(noodle);
  const day = noodle?.spec.plan?.serve === undefined ? undefined : askDay(noodle);
  const reportOf = (answer: Reporting | undefined) => (answer?.ok ? answer.report() : undefined);
  const reports = [sheet, day].map(reportOf);
  const weighing = [batch, water].map(reportOf);
  const parts = (report: Report | undefined, from: Place) =>
    report ? sectionsOf(report, from, ({ id }) => id !== "account") : [];
  const wrong = (answer: Reporting | undefined, before: readonly Told[]) =>
    toldAll(answer?.ok === false ? answer.problems : []).filter(({ found }) =>
      before.every((one) => one.found !== found),
    );
  const { sheetsPerLoad, portionsPerSheet, portionsPerLoad } = (sheet?.ok && sheet.value.strands?.cut) || {};
  const oneByOne = Number(sheetsPerLoad?.value) * Number(portionsPerSheet?.value);
  const pooled = oneByOne < Number(portionsPerLoad?.value) ? portionsPerLoad : undefined;
  const already = toldAll(problems);
  const sheetProblems = wrong(sheet, already);
  return printableData({
    sheet: parts(reports[0], "sheet").map((section): Section => {
      const figures = section.blocks.flatMap((block) => (block.kind === "figures" ? block.figures : []));
      if (!pooled || figures.every(({ id }) => id !== pooled.id)) return section;
      return { ...section, blocks: [...section.blocks, { kind: "text", lines: [words.roll.pooled] }] };
    }),
    day: parts(reports[1], "day"),
    sheetProblems,
    dayProblems: wrong(day, [...already, ...sheetProblems]),
    notes: notesOf(reports, notesOf(weighing, [])),
    cautions: [...new Set(reports.flatMap((report) => report?.cautions ?? []))].filter((one) =>
      weighing.every((report) => !report?.cautions.includes(one)),
    ),
  });
}

function sectionsOf(
  report: Report,
  from: Place,
  choose: (section: Report["sections"][number]) => boolean,
): readonly Section[] {
  return report.sections.filter(choose).map(({ id, heading, blocks }): Section => {
    return { id, from, heading, blocks: blocks.flatMap((block) => shownBlock(block, report, from)) };
  });
}

function shownBlock(
  block: Report["sections"][number]["blocks"][number],
  { figures }: Report,
  from: Place,
): Section["blocks"] {
  switch (block.kind) {
    case "table": {
      const known = block.rows.map(({ role, cells }) => ({
        role,
        cells: cells.map(({ figure, ...cell }) =>
          figure !== undefined && Object.hasOwn(figures, figure) ? { ...cell, figure } : cell,
        ),
      }));
      return [{ ...block, rows: known }];
    }
    case "figures":
      return [{ kind: "figures", figures: block.figures.map((figure) => shownAt(from, figure)) }];
    case "text":
      return [block];
    case "working":
    case "picture":
      return [];
  }
}

/** Every figure that stands in an answer, and what they rest on. */
function graphAt({ noodle, batch, water }: Today, from: Place): Graph {
  const ofReport = (answer: Reporting | undefined): Graph => (answer?.ok ? answer.report().figures : {});
  switch (from) {
    case "batch":
      return batch?.value.graph ?? {};
    case "water":
      return water?.value.graph ?? {};
    case "remedies":
      return ofReport(batch);
    case "sheet":
      return ofReport(noodle && askSheet(noodle));
    case "day":
      return ofReport(noodle && askDay(noodle));
  }
}

/** What is weighed for one load of so much dough, with the ice of its water. */
function weightsOf(data: PageData, { spec }: Today, dough: Figure): readonly Massed[] {
  const { mixer: _, ...whole } = isSection(spec) ? spec : {};
  return plainMasses(workOut({ ...data, spec: { ...whole, batch: { dough: `${dough.value} g` } } }, freshState));
}

function mended(data: PageData, today: Today, bowl: Asked<"mend">["bowl"]): Mending {
  const { weigh } = words;
  const { noodle, batch } = today;
  if (noodle === undefined || batch === undefined) return { problems: [], items: [], becomes: [] };
  const planned = batch.value.rework?.mass.id;
  const names = [...batch.value.lines.map(({ line: { id } }) => [id, id]), ...(planned ? [[planned, "rework"]] : [])];
  // The page asks for what goes without its stock solution only where salts of it went in dry.
  const dry = batch.value.remedies.stock?.salts ?? [];
  const weighed = names.flatMap(([id = "", name = ""]) => {
    const grams = bowl[id] ?? dry.find(({ line }) => line.id === id)?.load.value;
    return grams === undefined ? [] : [{ name, amount: `${grams} g` }];
  });
  const answer = askMend(noodle, { weighed });
  if (!answer.ok) return { problems: toldAll(answer.problems), items: [], becomes: [] };
  const { lines, rework, dusting, times, bowls, dough } = answer.value;
  const pouring = weightsOf(data, today, dough);
  const items = plainMasses(today).flatMap(({ mass, ...whole }): readonly Item[] => {
    const { ice: _, ...item } = whole;
    const ofDough = item.id === planned ? rework : lines.find((one) => one.planned.line.id === item.id);
    const line = item.kind === "dusting" ? dusting : ofDough;
    if (line === undefined) return [];
    // What is all in stays on its own scale; the other weighs what is still to go in.
    const isIn = Number(ofDough?.add.value) === 0;
    const scaled = isIn ? item : { ...item, scale: line.scale, division: line.division };
    const grams = line.total.value;
    const figure = { from: "batch" as const, id: mass.id, label: item.name, text: asWeighed(scaled, grams) };
    // Of water that is poured in part already, nothing tells how warm it was.
    const ice = Number(ofDough?.already.value) === 0 && pouring.find(({ id }) => id === item.id)?.ice;
    return [{ ...scaled, grams, figure, ...(ice && { ice }) }];
  });
  const becomes = [weigh.becomes(shownGrouped(times)), bowls ? weigh.bowls(shownGrouped(bowls)) : ""];
  const notes = answer.notes.filter(({ loud, code }) => code !== "mend.dry" && (loud || code.startsWith("mend.")));
  return printableData({
    problems: [],
    items,
    becomes: [becomes.join(" ").trim(), ...notes.map(toldIn(noodle.units))],
  });
}
