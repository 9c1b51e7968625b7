/** Without a network: all of the page after a first visit, and newer versions, which are offered and never forced. */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test, type Page } from "@playwright/test";
import { textOf } from "../support/poppler";
import { root, serve, type Served } from "./site";
import { dragHandle, expectNoAxeViolations, expectSaved, figuresOf, fill, goTo, STEPS } from "./support";

test.use({ serviceWorkers: "allow" });

const FOLDER = "/für mich/Nähen & Zuschneiden/";
const PATTERN = join(root, "tests/e2e/fixtures/thornfield.svg");
const READY = "Works without a network from now on";
const NEW = "A new version of Bodicewright is ready.";

let served: Served | undefined;
test.afterEach(async () => {
  await served?.close();
});

/** The page of a server of the test's own. */
const addressOf = ({ port }: Served): string => `http://127.0.0.1:${port}${encodeURI(FOLDER)}`;

/** The first visit, until all of the page lies on the device. */
async function firstVisit(page: Page, { address, hash = "" }: { address: string; hash?: string }): Promise<void> {
  await page.goto(`${address}${hash}`);
  await expect(page.getByText(READY)).toBeVisible({ timeout: 120_000 });
}

/** What the page itself finds fault with. */
function faultsOf(page: Page): readonly string[] {
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") faults.push(message.text());
  });
  return faults;
}

async function download(page: Page, button: string): Promise<Buffer> {
  const [file] = await Promise.all([
    page.waitForEvent("download", { timeout: 120_000 }),
    page.getByRole("button", { name: button }).click(),
  ]);
  return readFile(await file.path());
}

const moved = (page: Page) => page.getByTestId("handle-front-waistDart-apex");

test("after the first visit all of it works while nothing answers any more", async ({ page, context }) => {
  served = await serve(FOLDER);
  const address = addressOf(served);
  await firstVisit(page, { address });
  for (const asked of served.asked) expect(asked.startsWith(`GET ${FOLDER}`)).toBe(true);
  // What README shows is no part of the page.
  expect(served.asked.filter((asked) => /screenshot|floors/.test(asked))).toEqual([]);

  await served.close();
  await context.setOffline(true);
  const faults = faultsOf(page);
  await page.reload();
  await expect(page.getByRole("heading", { level: 2, name: "Tape" })).toBeVisible();
  for (const step of STEPS) await goTo(page, step);
  await expect.poll(() => page.evaluate(() => document.fonts.check('16px "Source Sans 3 Variable"'))).toBe(true);

  await goTo(page, "Darts");
  const before = await figuresOf(moved(page));
  await dragHandle(page, moved(page), 0, 30);
  await page.mouse.up();
  await expect.poll(async () => (await figuresOf(moved(page))).angle).not.toBe(before.angle);
  const after = await figuresOf(moved(page));
  await expectSaved(page);

  await goTo(page, "Paper");
  expect(textOf(await page.pdf({ preferCSSPageSize: true }))).toMatch(/Page 1 of \d/);
  await page.getByRole("radio", { name: "True-scale pieces" }).check();
  expect((await download(page, "Make the PDF")).subarray(0, 5).toString()).toBe("%PDF-");
  expect((await download(page, "Make the DXF")).toString()).toContain("SECTION");
  expect((await download(page, "Make the SVG")).toString()).toContain("<svg");

  // A demonstration, and lays on cloth, made by a worker of their own.
  await page.getByRole("button", { name: "Works", exact: true }).click();
  await expect(page.getByText("works without a network on this device")).toBeVisible();
  await expectNoAxeViolations(page);
  await page.getByRole("button", { name: "Demo: Siskin bodice and its two trials (invented)" }).click();
  await goTo(page, "Dress");
  await expect(page.getByText(/To buy|to buy/).first()).toBeVisible();

  // A file of outlines, and a work from a file, each read by a worker of its own.
  await page.getByRole("button", { name: "Works", exact: true }).click();
  const saved = await download(page, "Download this work");
  await page.getByRole("button", { name: "Works", exact: true }).click();
  await page.getByRole("button", { name: "New blank work" }).click();
  await goTo(page, "Envelope");
  await page.getByRole("radio", { name: "To the waist" }).check();
  await goTo(page, "Tissue");
  await page.getByText("From a file", { exact: false }).first().click();
  await page.locator('input[type="file"][accept*="svg"]').setInputFiles(PATTERN);
  await page.getByRole("button", { name: "Cup B" }).click();
  await expect(page.getByText("Your own pieces: front and back, in sizes 10 to 14.")).toBeVisible();
  await page.getByRole("button", { name: "Works", exact: true }).click();
  await page.getByLabel("Work file").setInputFiles({ name: "again.json", mimeType: "application/json", buffer: saved });
  await expect(page.getByText(/is here already, the very same/)).toBeVisible();

  // What was made of the first work is there again.
  await page.reload();
  await page.getByRole("button", { name: "Works", exact: true }).click();
  await page.getByRole("button", { name: "Open Wren bodice to the hip (invented)" }).click();
  await goTo(page, "Darts");
  expect(await figuresOf(moved(page))).toEqual(after);
  expect(faults).toEqual([]);
});
