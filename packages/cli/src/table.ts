import type { Command, Group, Job, Listed } from "./shared/command.ts";

const listed = (job: Job, usage: string, describe: string, load: () => Promise<Command | Group>): Listed => ({
  job,
  usage,
  describe,
  load,
});

/** Every command, in the order of the help, which goes by what they are for. A command's file is read when it is asked for. */
export const commands: readonly Listed[] = [
  listed(
    "start",
    "new [file]",
    "Write a spec from your own notes, from a few answers, or an example; never overwrites",
    async () => {
      const { newCommand } = await import("./commands/new.ts");
      return newCommand;
    },
  ),
  listed("start", "formula <spec>", "The formula on 100 of flour: blend, water, alkali, allergens", async () => {
    const { formulaCommand } = await import("./commands/formula.ts");
    return formulaCommand;
  }),
  listed(
    "start",
    "materials [words..]",
    "List or search the catalogue of flours, starches, eggs and salts",
    async () => {
      const { materialsCommand } = await import("./commands/materials.ts");
      return materialsCommand;
    },
  ),
  listed("start", "words [word..]", "What the words of the answers mean, such as meq, % mb or division", async () => {
    const { wordsCommand } = await import("./commands/words.ts");
    return wordsCommand;
  }),
  listed(
    "start",
    "schema [of]",
    "Print the JSON Schema of the spec, of a kitchen file or of the JSON output",
    async () => {
      const { schemaCommand } = await import("./commands/schema.ts");
      return schemaCommand;
    },
  ),
  listed("adapt", "blend <spec>", "Find the flours for the noodle asked for, or what keeps them from it", async () => {
    const { blendCommand } = await import("./commands/blend.ts");
    return blendCommand;
  }),
  listed(
    "adapt",
    "settle <spec>",
    "Find every amount that a spec leaves open, and write it in if told to",
    async () => {
      const { settleCommand } = await import("./commands/settle.ts");
      return settleCommand;
    },
  ),
  listed(
    "adapt",
    "compare <specs..>",
    "Noodles side by side, or one as written and as set: what differs, and whether errors could make it",
    async () => {
      const { compareCommand } = await import("./commands/compare.ts");
      return compareCommand;
    },
  ),
  listed("adapt", "replace <spec>", "Replace a flour or an egg that is not to be had; the water follows", async () => {
    const { replaceCommand } = await import("./commands/replace.ts");
    return replaceCommand;
  }),
  listed("adapt", "lot <spec>", "The blend and the water for a new lot of a flour", async () => {
    const { lotCommand } = await import("./commands/lot.ts");
    return lotCommand;
  }),
  listed("adapt", "alkali", "Alkaline salts: swap, make up, dilute, strength, baked soda, stock, list", async () => {
    const { alkaliCommands } = await import("./commands/alkali/alkali.ts");
    return alkaliCommands;
  }),
  listed("make", "batch <spec>", "The weights of a batch: loads, scales, losses, stock solutions", async () => {
    const { batchCommand } = await import("./commands/batch.ts");
    return batchCommand;
  }),
  listed(
    "make",
    "mend <spec>",
    "Too much of something is in the bowl: what to add, and what the load becomes",
    async () => {
      const { mendCommand } = await import("./commands/mend.ts");
      return mendCommand;
    },
  ),
  listed("make", "water-temperature [spec]", "Water temperature, and ice, for a wanted dough temperature", async () => {
    const { waterTemperatureCommand } = await import("./commands/water-temperature.ts");
    return waterTemperatureCommand;
  }),
  listed("make", "sheet <spec>", "Passes, sheets, strands and portions on the machine at hand", async () => {
    const { sheetCommand } = await import("./commands/sheet.ts");
    return sheetCommand;
  }),
  listed("make", "plan <spec>", "The day, backwards from service: every load at every stage", async () => {
    const { planCommand } = await import("./commands/plan.ts");
    return planCommand;
  }),
  listed(
    "make",
    "card <spec>",
    "A page to hang by the machine: weights, boxes to tick, passes, times, cautions",
    async () => {
      const { cardCommand } = await import("./commands/card.ts");
      return cardCommand;
    },
  ),
  listed("make", "page <spec>", "A file for the phone at the bench that works the noodle out, offline", async () => {
    const { pageCommand } = await import("./commands/page.ts");
    return pageCommand;
  }),
  listed("make", "cards <folder>", "The cards of a folder of specs, with a page that lists them", async () => {
    const { cardsCommand } = await import("./commands/cards.ts");
    return cardsCommand;
  }),
  listed("make", "workbook <spec>", "A spreadsheet that works the noodle out by itself", async () => {
    const { workbookCommand } = await import("./commands/workbook.ts");
    return workbookCommand;
  }),
  listed(
    "shop",
    "cost <spec>",
    "What a batch costs by ingredient, load and bowl; what to buy, how far the store goes",
    async () => {
      const { costCommand } = await import("./commands/cost.ts");
      return costCommand;
    },
  ),
  listed("shop", "nutrition <spec>", "What a bowl contains, as a label would round it, and its allergens", async () => {
    const { nutritionCommand } = await import("./commands/nutrition.ts");
    return nutritionCommand;
  }),
  listed("measure", "trial <spec>", "Lay out three small doughs that show how much water a blend takes", async () => {
    const { trialCommand } = await import("./commands/trial.ts");
    return trialCommand;
  }),
  listed("measure", "calibrate", "The kitchen's own figures from what it measured", async () => {
    const { calibrateGroup } = await import("./commands/calibrate.ts");
    return calibrateGroup;
  }),
  listed("measure", "tolerance <spec>", "What errors do to a load, and which of them matters", async () => {
    const { toleranceCommand } = await import("./commands/tolerance.ts");
    return toleranceCommand;
  }),
];
