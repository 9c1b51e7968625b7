/** However and wherever the page is opened, something stands on it; and all that it asks for are its own files. */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test, type Page } from "@playwright/test";
import { browserFlags, installedBrowser } from "../tools/browser.mjs";
import { serve, site, type Served } from "./site";
import { expectNoAxeViolations, fill, goTo, STEPS } from "./support";

const executablePath = installedBrowser();

test.use({
  launchOptions: {
    // An address that is neither this machine's own nor a secure one, as that of another machine in the house.
    args: [...browserFlags(), "--host-resolver-rules=MAP bodice.test 127.0.0.1"],
    ...(executablePath === undefined ? {} : { executablePath }),
  },
});

/** What the page finds fault with: errors, warnings of its policy, requests that came to nothing. */
function faultsOf(page: Page): readonly string[] {
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") faults.push(message.text());
  });
  page.on("requestfailed", (request) => faults.push(`failed: ${request.url()}`));
  page.on("response", (response) => {
    if (response.status() >= 400) faults.push(`${response.status()}: ${response.url()}`);
  });
  return faults;
}

/** Goes through every step and makes a PDF. */
async function wholeRound(page: Page): Promise<void> {
  for (const step of STEPS) await goTo(page, step);
  expect(await page.evaluate(() => document.fonts.check('16px "Source Sans 3 Variable"'))).toBe(true);
  await page.getByRole("radio", { name: "True-scale pieces" }).check();
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 40_000 }),
    page.getByRole("button", { name: "Make the PDF" }).click(),
  ]);
  const bytes = await readFile(await download.path());
  expect(bytes.subarray(0, 5).toString()).toBe("%PDF-");
}

test.describe("served from elsewhere", () => {
  let served: Served | undefined;
  test.afterEach(async () => {
    await served?.close();
  });

  test("over plain http from another machine the page starts, saves a work and has it after a reload", async ({
    page,
  }) => {
    served = await serve("/");
    const faults = faultsOf(page);
    await page.goto(`http://bodice.test:${served.port}/`);
    expect(await page.evaluate(() => window.isSecureContext)).toBe(false);
    expect(await page.evaluate(() => "randomUUID" in crypto)).toBe(false);
    await page.getByRole("button", { name: "Start with my own measures" }).click();
    await fill(page, /^Bust girth/, "92.4");
    await expect(page.getByText("Saved here")).toBeVisible();
    // Saving waits for a rest in the typing.
    await page.waitForTimeout(900);
    await page.reload();
    await expect(page.getByLabel(/^Bust girth/).first()).toHaveValue("92.4");
    await page.getByRole("button", { name: "Works" }).click();
    // The demo of the first visit, and her own.
    await expect(page.getByRole("button", { name: /^Copy / })).toHaveCount(2);
    expect(faults).toEqual([]);
  });

  test("in a deep folder with blanks and umlauts in its name, all is there that is wanted, and nothing else asked for", async ({
    page,
  }) => {
    served = await serve("/für mich/Nähen & Zuschneiden (50 %)/");
    const faults = faultsOf(page);
    await page.goto(
      `http://127.0.0.1:${served.port}/${["für mich", "Nähen & Zuschneiden (50 %)"].map(encodeURIComponent).join("/")}/`,
    );
    await wholeRound(page);
    expect(faults).toEqual([]);
    for (const asked of served.asked) expect(asked).toMatch(/^GET \/für mich\/Nähen & Zuschneiden \(50 %\)\//);
  });
});

test.describe("opened where it cannot start", () => {
  for (const [name, width, height] of [
    ["a wide screen", 1280, 800],
    ["a phone", 390, 844],
  ] as const) {
    test(`as a file it says so, and what to do: ${name}`, async ({ page }) => {
      await page.setViewportSize({ width, height });
      await page.goto(pathToFileURL(join(site, "index.html")).href);
      await expect(page.getByRole("heading", { name: "This page can’t start from a file" })).toBeVisible();
      await expect(page.getByText("npm start")).toBeVisible();
      await expect(page.getByText("One moment…")).toBeHidden();
      await expect(page.getByText("could not be fetched")).toBeHidden();
      await expectNoAxeViolations(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    });
  }

  test("without JavaScript it says that it needs it", async ({ browser, baseURL }) => {
    const page = await browser.newPage({ javaScriptEnabled: false, ...(baseURL === undefined ? {} : { baseURL }) });
    await page.goto("./");
    await expect(page.getByText("Bodicewright needs JavaScript.")).toBeVisible();
    await expect(page.getByText("One moment…")).toBeHidden();
    await page.close();
  });

  for (const [what, file] of [
    ["its script", /assets\/first-.*\.js$/],
    ["its stylesheet", /assets\/first-.*\.css$/],
  ] as const) {
    for (const how of ["lost", "gone"] as const) {
      test(`${what} ${how === "lost" ? "lost on the way" : "not there"}: it says so, and starts when loaded again`, async ({
        page,
      }) => {
        await page.route(file, (route) => (how === "lost" ? route.abort() : route.fulfill({ status: 404, body: "" })));
        await page.goto("./");
        await expect(page.getByRole("heading", { name: "The page could not be fetched" })).toBeVisible();
        await expectNoAxeViolations(page);
        await page.unroute(file);
        await page.getByRole("link", { name: "Load the page again" }).click();
        await expect(page.getByRole("heading", { level: 2, name: "Tape" })).toBeVisible();
      });
    }
  }

  test("while its script and stylesheet are on their way there are words, and after a while help", async ({ page }) => {
    await page.clock.install();
    await page.route(/assets\//, () => {
      // Never answered.
    });
    await page.goto("./", { waitUntil: "commit" });
    await expect(page.getByText("One moment…")).toBeVisible();
    await expect(page.getByText("The page has not started yet")).toBeHidden();
    // The stylesheet alone keeps the time.
    await page.evaluate(() => {
      for (const animation of document.getAnimations()) animation.finish();
    });
    await expect(page.getByText("The page has not started yet")).toBeVisible();
    await expect(page.getByRole("link", { name: "Load the page again" })).toBeVisible();
  });

  test("even its small script and stylesheet may be missing", async ({ page }) => {
    await page.route(/\/opening\.(?:js|css)$/, (route) => route.abort());
    await page.goto("./");
    await expect(page.getByRole("heading", { level: 2, name: "Tape" })).toBeVisible();
    await page.route(/assets\//, (route) => route.abort());
    await page.reload();
    await expect(page.getByText("The page has not started yet")).toBeVisible();
  });

  test("a fault at the start is said, with its kind, and the works stay where they are", async ({ page }) => {
    await page.goto("./");
    await page.getByRole("button", { name: "Start with my own measures" }).click();
    await fill(page, /^Bust girth/, "92.4");
    await expect(page.getByText("Saved here")).toBeVisible();
    await page.waitForTimeout(900);
    await page.route(/assets\/first-.*\.js$/, async (route) => {
      const response = await route.fetch();
      await route.fulfill({ response, body: `${await response.text()}\nnull.nothing;` });
    });
    await page.addInitScript(() => {
      Object.defineProperty(window, "requestIdleCallback", {
        get: () => {
          throw new RangeError("no idle time here");
        },
      });
      // The first thing that the start looks at.
      const find = document.getElementById.bind(document);
      document.getElementById = (id: string) => {
        if (id === "root") throw new RangeError("no root today");
        return find(id);
      };
    });
    await page.reload();
    await expect(page.getByRole("heading", { name: "The page could not start" })).toBeVisible();
    await expect(page.getByText("(RangeError)")).toBeVisible();
    await expect(page.getByText("works kept in this browser are still there")).toBeVisible();
    await expectNoAxeViolations(page);
  });
});
