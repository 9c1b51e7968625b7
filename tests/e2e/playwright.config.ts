import { join } from "node:path";
import { defineConfig } from "@playwright/test";
import { browserFlags, installedBrowser } from "../tools/browser.mjs";
import { built, port, root, site } from "./site";

// The tests run against a fresh build: their own, or that of the run they are part of.
const address = `http://127.0.0.1:${port}/`;

const report = process.env["BODICEWRIGHT_E2E_REPORT"] ?? join(root, "test-results", "e2e.json");

const browser = installedBrowser();

export default defineConfig({
  testDir: ".",
  testMatch: "**/*.e2e.{ts,tsx}",
  outputDir: join(root, "test-results", `e2e-${port}`),
  workers: 2,
  fullyParallel: true,
  retries: 0,
  forbidOnly: process.env["CI"] !== undefined,
  // These only end what hangs: a machine that has more to do is no fault of a test.
  timeout: 240_000,
  expect: { timeout: 60_000 },
  reporter: [["list"], ["json", { outputFile: report }]],
  use: {
    baseURL: address,
    locale: "en-GB",
    timezoneId: "Europe/London",
    viewport: { width: 1280, height: 800 },
    // Else all of the page would be fetched once more in each test; what works without a network allows it for itself.
    serviceWorkers: "block",
    launchOptions: {
      args: browserFlags(),
      ...(browser === undefined ? {} : { executablePath: browser }),
    },
  },
  projects: [{ name: "chromium" }],
  webServer: {
    command: [
      ...(built === undefined ? [`npx vite build --outDir "${site}" --emptyOutDir --logLevel warn`] : []),
      `npx vite preview --outDir "${site}" --port ${port} --strictPort --logLevel warn`,
    ].join(" && "),
    cwd: root,
    url: address,
    reuseExistingServer: false,
    timeout: 120_000,
    stdout: "pipe",
  },
});
