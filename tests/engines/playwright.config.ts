import { join } from "node:path";
import { defineConfig } from "@playwright/test";
import { port, root } from "../e2e/site";
import { engines, skippedEngines } from "../tools/browser.mjs";

for (const said of skippedEngines()) console.error(said);

const found = (["chromium", "firefox", "webkit"] as const).filter((name) => engines()[name] !== undefined);

/** The whole job in every engine that this machine has, and then what they said beside one another. */
export default defineConfig({
  testDir: ".",
  outputDir: join(root, "test-results", `engines-${port}`),
  globalSetup: "./global.setup.ts",
  workers: 2,
  retries: 0,
  forbidOnly: process.env["CI"] !== undefined,
  // These only end what hangs, as in tests/e2e; a chart typed letter by letter takes minutes where the machine has more to do.
  timeout: 600_000,
  expect: { timeout: 180_000 },
  reporter: [
    ["list"],
    ["json", { outputFile: process.env["BODICEWRIGHT_E2E_REPORT"] ?? join(root, "test-results", "engines.json") }],
  ],
  projects: [
    ...found.map((name) => ({ name, testMatch: "job.engine.ts" })),
    { name: "alike", testMatch: "alike.engine.ts", dependencies: found },
  ],
});
