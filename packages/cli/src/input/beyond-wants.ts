import { type Beyond, missed, settle } from "@noodlewright/core";

/** For a spec that leaves amounts to be found, or says what it wants. */
export const wants: Beyond = { settle, missed };
