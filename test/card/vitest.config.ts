import shared from "../vitest.config.ts";

/** Tests of the cards in a browser: they need Chromium, so they run apart from the others. */
export default {
  ...shared,
  test: { ...shared.test, include: ["test/card/**/*.test.ts"], exclude: [] },
};
