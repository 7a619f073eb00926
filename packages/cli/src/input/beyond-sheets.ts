import { type Beyond, shortPortions } from "@noodlewright/core";

/** For what is done with a batch, whose sheets may fall short of it. */
export const sheets: Beyond = { shortPortions };
