import { type Beyond, goesBeyond } from "@noodlewright/core";

/** What a spec asks for beyond its own sums is read only where it does. */
export async function beyond(data: unknown, needs?: "materials" | "machines"): Promise<Beyond> {
  const wants = goesBeyond(data) ? (await import("./beyond-wants.ts")).wants : {};
  return needs === "machines" ? { ...wants, ...(await import("./beyond-sheets.ts")).sheets } : wants;
}
