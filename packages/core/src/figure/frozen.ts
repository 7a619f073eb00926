/** What all results share, and what holds no figures. */
const tables = new WeakSet<object>();

/** All of it frozen, so that nobody who is given it changes it for others. What is frozen already is so as a whole. */
export function frozen<T extends object>(whole: T): T {
  if (Object.isFrozen(whole)) return whole;
  for (const part of Object.values(whole)) if (typeof part === "object" && part !== null) frozen(part);
  return Object.freeze(whole);
}

/** A table without figures that every noodle shares, frozen. */
export function table<T extends object>(whole: T): T {
  tables.add(whole);
  for (const part of Object.values(whole)) if (typeof part === "object" && part !== null) table(part);
  return Object.freeze(whole);
}

/** Whether it is of a table, and therefore holds no figures. */
export function isOfTable(part: object): boolean {
  return tables.has(part);
}
