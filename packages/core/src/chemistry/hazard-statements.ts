import type { Source } from "../figure/source.ts";

/** Statements of the Globally Harmonised System that the salts here can call for. */
export const statements = {
  H290: "may be corrosive to metals",
  H302: "harmful if swallowed",
  H314: "causes severe skin burns and eye damage",
  H315: "causes skin irritation",
  H319: "causes serious eye irritation",
  H335: "may cause respiratory irritation",
} as const;

/** Codes of the hazard statements that salts here may call for. */
export type StatementCode = keyof typeof statements;

/** How the parts of a mixture are counted together. */
export const summing: Source = {
  cite: "Regulation (EC) No 1272/2008, Annex I, limits for mixtures (10 % for irritants, 20 % for the airways); unlike limits by the sum of share over limit",
  at: "parts 3.2 and 3.3, in a summary",
  standing: "copy",
};
