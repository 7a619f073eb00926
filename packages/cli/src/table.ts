import { type Command, type Group, type Job, jobs, type Listed } from "./shared/command.ts";

/** The file of each command, which is read when it is asked for. */
const load = {
  new: async () => (await import("./commands/new.ts")).newCommand,
  formula: async () => (await import("./commands/formula.ts")).formulaCommand,
  materials: async () => (await import("./commands/materials.ts")).materialsCommand,
  words: async () => (await import("./commands/words.ts")).wordsCommand,
  schema: async () => (await import("./commands/schema.ts")).schemaCommand,
  blend: async () => (await import("./commands/blend.ts")).blendCommand,
  settle: async () => (await import("./commands/settle.ts")).settleCommand,
  compare: async () => (await import("./commands/compare.ts")).compareCommand,
  replace: async () => (await import("./commands/replace.ts")).replaceCommand,
  lot: async () => (await import("./commands/lot.ts")).lotCommand,
  alkali: async () => (await import("./commands/alkali/alkali.ts")).alkaliCommands,
  batch: async () => (await import("./commands/batch.ts")).batchCommand,
  mend: async () => (await import("./commands/mend.ts")).mendCommand,
  "water-temperature": async () => (await import("./commands/water-temperature.ts")).waterTemperatureCommand,
  sheet: async () => (await import("./commands/sheet.ts")).sheetCommand,
  plan: async () => (await import("./commands/plan.ts")).planCommand,
  card: async () => (await import("./commands/card.ts")).cardCommand,
  page: async () => (await import("./commands/page.ts")).pageCommand,
  cards: async () => (await import("./commands/cards.ts")).cardsCommand,
  workbook: async () => (await import("./commands/workbook.ts")).workbookCommand,
  cost: async () => (await import("./commands/cost.ts")).costCommand,
  nutrition: async () => (await import("./commands/nutrition.ts")).nutritionCommand,
  trial: async () => (await import("./commands/trial.ts")).trialCommand,
  calibrate: async () => (await import("./commands/calibrate.ts")).calibrateGroup,
  tolerance: async () => (await import("./commands/tolerance.ts")).toleranceCommand,
};

type Row = readonly [usage: string, describe: string, load: () => Promise<Command | Group>];

const rows: Readonly<Record<Job, readonly Row[]>> = {
  start: [
    ["new [file]", "Write a spec from your own notes, from a few answers, or an example; never overwrites", load.new],
    ["formula <spec>", "The formula on 100 of flour: blend, water, alkali, allergens", load.formula],
    ["materials [words..]", "List or search the catalogue of flours, starches, eggs and salts", load.materials],
    ["words [word..]", "What the words of the answers mean, such as meq, % mb or division", load.words],
    ["schema [of]", "Print the JSON Schema of the spec, of a kitchen file or of the JSON output", load.schema],
  ],
  adapt: [
    ["blend <spec>", "Find the flours for the noodle asked for, or what keeps them from it", load.blend],
    ["settle <spec>", "Find every amount that a spec leaves open, and write it in if told to", load.settle],
    [
      "compare <specs..>",
      "Noodles side by side, or one as written and as set: what differs, and whether errors could make it",
      load.compare,
    ],
    ["replace <spec>", "Replace a flour or an egg that is not to be had; the water follows", load.replace],
    ["lot <spec>", "The blend and the water for a new lot of a flour", load.lot],
    ["alkali", "Alkaline salts: swap, make up, dilute, strength, baked soda, stock, list", load.alkali],
  ],
  make: [
    ["batch <spec>", "The weights of a batch: loads, scales, losses, stock solutions", load.batch],
    ["mend <spec>", "Too much of something is in the bowl: what to add, and what the load becomes", load.mend],
    [
      "water-temperature [spec]",
      "Water temperature, and ice, for a wanted dough temperature",
      load["water-temperature"],
    ],
    ["sheet <spec>", "Passes, sheets, strands and portions on the machine at hand", load.sheet],
    ["plan <spec>", "The day, backwards from service: every load at every stage", load.plan],
    ["card <spec>", "A page to hang by the machine: weights, boxes to tick, passes, times, cautions", load.card],
    ["page <spec>", "A file for the phone at the bench that works the noodle out, offline", load.page],
    ["cards <folder>", "The cards of a folder of specs, with a page that lists them", load.cards],
    ["workbook <spec>", "A spreadsheet that works the noodle out by itself", load.workbook],
  ],
  shop: [
    ["cost <spec>", "What a batch costs by ingredient, load and bowl; what to buy, how far the store goes", load.cost],
    ["nutrition <spec>", "What a bowl contains, as a label would round it, and its allergens", load.nutrition],
  ],
  measure: [
    ["trial <spec>", "Lay out three small doughs that show how much water a blend takes", load.trial],
    ["calibrate", "The kitchen's own figures from what it measured", load.calibrate],
    ["tolerance <spec>", "What errors do to a load, and which of them matters", load.tolerance],
  ],
};

/** Every command, in the order of the help, which goes by what they are for. */
export const commands: readonly Listed[] = jobs.flatMap((job) =>
  rows[job].map(([usage, describe, read]) => ({ job, usage, describe, load: read })),
);
