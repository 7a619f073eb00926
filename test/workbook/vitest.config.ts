import shared from "../vitest.config.ts";

/** Tests of the workbooks in an office suite without a screen: they need LibreOffice, so they run apart from the others. */
export default {
  ...shared,
  test: { ...shared.test, include: ["test/workbook/**/*.test.ts"], exclude: [] },
};
