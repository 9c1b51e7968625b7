/** Without a network: all of the page after a first visit, and newer versions, which are offered and never forced. */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test, type Page } from "@playwright/test";
import { textOf } from "../support/poppler";
import { root, serve, type Served } from "./site";
import { dragHandle, expectNoAxeViolations, expectSaved, figuresOf, goTo, STEPS } from "./support";

test.use({ serviceWorkers: "allow" });
// All of the page is fetched twice, and every worker started: on a busy machine that takes its time.
test.describe.configure({ timeout: 600_000 });

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
  await expect(page.getByText(READY)).toBeVisible({ timeout: 240_000 });
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
    page.waitForEvent("download", { timeout: 240_000 }),
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
  await page.getByRole("button", { name: "Demo: Wren bodice to the waist, bust altered (invented)" }).click();
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

/** The build as it is, and from `next` on as a newer one, in which what makes paper has another name and the old is gone. */
async function serveTwoVersions() {
  let isNext = false;
  const two = await serve(FOLDER, {
    change: (file, bytes) => {
      if (!isNext) return bytes;
      if (file === "index.html") return bytes.toString().replace("<html ", '<html data-version="next" ');
      if (file.startsWith("assets/paperWorker-")) return null;
      if (file !== "offlineWorker.js") return bytes;
      return bytes
        .toString()
        .replace(/(\{"revision":")\w+(","url":"index\.html"\})/, "$1another$2")
        .replace(/\{"revision":null,"url":"assets\/paperWorker-[^"]*"\},?/, "");
    },
  });
  return {
    ...two,
    next: (): void => {
      isNext = true;
    },
  };
}

const lookForVersions = (page: Page): Promise<unknown> =>
  page.evaluate(async () => {
    await (await navigator.serviceWorker.getRegistration())?.update();
  });

const isNext = (page: Page): Promise<boolean> => page.evaluate(() => "version" in document.documentElement.dataset);

test("a newer version is offered and waits; what is typed is saved before it is taken, and another tab goes on", async ({
  page,
  context,
}) => {
  const two = await serveTwoVersions();
  served = two;
  const address = addressOf(two);
  await firstVisit(page, { address });
  const other = await context.newPage();
  await other.goto(address);
  await expect(other.getByRole("heading", { level: 2, name: "Tape" })).toBeVisible();
  await expect
    .poll(
      () =>
        other.evaluate(() =>
          performance.getEntriesByType("resource").some(({ name }) => name.includes("/keepPageHere-")),
        ),
      { timeout: 240_000 },
    )
    .toBe(true);

  two.next();
  await page.bringToFront();
  const name = page.getByRole("textbox", { name: "Name of this work" });
  await name.fill("Typed and not left");
  await lookForVersions(page);
  const offer = page.locator(".message").filter({ hasText: NEW });
  await expect(offer).toBeVisible();
  await expectNoAxeViolations(page);
  await expect(name).toBeFocused();
  await expect(other.locator(".message").filter({ hasText: NEW })).toBeVisible();

  // Left for later, nothing changes, even where the page is loaded again; and it is found under Works.
  await offer.getByRole("button", { name: /^Later/ }).click();
  await expect(offer).toHaveCount(0);
  await page.reload();
  await expect(page.getByRole("heading", { level: 2, name: "Tape" })).toBeVisible();
  expect(await isNext(page)).toBe(false);
  await expect(offer).toBeVisible({ timeout: 240_000 });
  await page.getByRole("button", { name: "Works", exact: true }).click();
  await expect(page.getByRole("button", { name: "Take the new version" })).toBeVisible();
  await page.getByRole("button", { name: "Close", exact: true }).first().click();

  // In the middle of typing, in both tabs: a press that leaves the field where it is.
  await other.bringToFront();
  const wearer = other.getByLabel("Whose measures these are");
  await wearer.fill("For Ada");
  await page.bringToFront();
  await name.fill("Still typing");
  await Promise.all([
    page.waitForEvent("load"),
    offer.getByRole("button", { name: "Take it now" }).dispatchEvent("click"),
  ]);
  await expect(name).toHaveValue("Still typing");
  expect(await isNext(page)).toBe(true);
  await expect(page.getByRole("button", { name: "Take it now" })).toHaveCount(0);

  // The other tab has what it began with, though the server and the newer version have it no more.
  await other.bringToFront();
  await expect(other.locator(".message").filter({ hasText: "taken in another tab" })).toBeVisible();
  await expect(other.locator(".message")).toHaveCount(1);
  expect(await isNext(other)).toBe(false);
  await expect(wearer).toHaveValue("For Ada");
  await goTo(other, "Paper");
  await other.getByRole("radio", { name: "True-scale pieces" }).check();
  expect((await download(other, "Make the PDF")).subarray(0, 5).toString()).toBe("%PDF-");
  await Promise.all([other.waitForEvent("load"), other.getByRole("button", { name: "Load it here too" }).click()]);
  await goTo(other, "Tape");
  await expect(wearer).toHaveValue("For Ada");
  expect(await isNext(other)).toBe(true);
});

test("a first visit that loses the network before all has come says what is missing, and blames nothing else", async ({
  page,
  context,
}) => {
  served = await serve(FOLDER, { change: (file, bytes) => (file === "offlineWorker.js" ? null : bytes) });
  await page.goto(`${addressOf(served)}#paper`);
  await expect(page.getByRole("heading", { level: 2, name: "Paper" })).toBeVisible();
  await expect(page.getByRole("radio", { name: "True-scale pieces" })).toBeVisible();
  await served.close();
  await context.setOffline(true);
  await page.getByRole("radio", { name: "True-scale pieces" }).check();
  await expect(page.getByText("The part that makes paper could not be loaded.")).toBeVisible();
  await expect(page.getByText("something is wrong in the planner")).toHaveCount(0);
});
