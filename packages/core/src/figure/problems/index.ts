// Every problem by its code, and its sentences: one file a room.
import { batch } from "./batch.ts";
import { blend } from "./blend.ts";
import { chemistry } from "./chemistry.ts";
import { explore } from "./explore.ts";
import { figure } from "./figure.ts";
import { formula } from "./formula.ts";
import { materials } from "./materials.ts";
import { noodle } from "./noodle.ts";
import { quantity } from "./quantity.ts";
import { render } from "./render.ts";
import { sheet } from "./sheet.ts";
import { spec } from "./spec.ts";

export const catalogue = {
  ...quantity,
  ...figure,
  ...chemistry,
  ...materials,
  ...spec,
  ...formula,
  ...batch,
  ...blend,
  ...sheet,
  ...explore,
  ...noodle,
  ...render,
};
