/**
 * Greatest parts on 100 of flour that are believed of one ingredient, whether they are written in % or as masses. An
 * alkaline product may be a thin liquor, of which a published formula takes 133 %; what its salts come to is held apart.
 */
export const mostParts = { alkali: "200", salt: "20", ingredient: "200", dusting: "200", water: "200" } as const;

/** What a spec may accept that is refused otherwise. */
export const acceptable = ["high alkali", "high salt"] as const;

export type Acceptable = (typeof acceptable)[number];
