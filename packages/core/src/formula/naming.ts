import { named } from "../figure/figure.ts";

/** What most figures of a formula are, each to two places. */
export const ofFlour = named("% of flour", 2);
export const ofDough = named("% of dough", 2);
export const percent = named("%", 2);
