/** Steps from the root of a spec to the place that is meant. */
export type Path = readonly (string | number)[];
