import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

/** Tests run the sources: the private export condition sends imports of the packages to `src`. */
const conditions = ["@noodlewright/source"];

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: {
    include: ["test/**/*.test.ts"],
    exclude: ["test/card/**", "test/workbook/**", "**/node_modules/**"],
    globalSetup: ["test/build.ts"],
    setupFiles: ["test/setup.ts"],
    maxWorkers: "100%",
    testTimeout: 60_000,
    hookTimeout: 120_000,
    env: { TZ: "UTC", LC_ALL: "C.UTF-8" },
    coverage: { provider: "v8", include: ["packages/*/src/**/*.ts"], reporter: ["text-summary", "text"] },
  },
});
