/** How the page is loaded: what comes first, what comes when it is idle, and what happens when something does not come. */
import { gzipSync } from "node:zlib";
import { expect, test, type Page } from "@playwright/test";
import { textOf } from "../support/poppler";
import { fill, goTo } from "./support";

/** Bytes after gzip of all scripts and styles until the first step can be used. */
const FIRST_VIEW = 156_000;

const FIRST_FIELD = ".measure input.field-input";

const scripts = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    performance
      .getEntriesByType("resource")
      .map(({ name }) => new URL(name).pathname)
      .filter((path) => /\.(?:js|css)$/.test(path)),
  );

/** Waits until everything has been fetched ahead: the last that is. */
async function idle(page: Page): Promise<void> {
  await expect
    .poll(async () => (await scripts(page)).some((path) => path.includes("/ChartFitView-")), { timeout: 120_000 })
    .toBe(true);
}

/** Fails every request for what matches, as a lost connection or as a file that is not there, until it is let through. */
async function failing(page: Page, file: RegExp, how: "lost" | "gone" = "lost") {
  let asked = 0;
  let isThrough = false;
  await page.route(file, (route) => {
    asked += 1;
    if (isThrough) return route.continue();
    return how === "lost" ? route.abort() : route.fulfill({ status: 404, body: "not here" });
  });
  return {
    asked: (): number => asked,
    letThrough: (): void => {
      isThrough = true;
    },
  };
}

test("what is asked for before the first measure can be typed is small", async ({ page, request }) => {
  // Noted by the page itself, at the very moment at which the first field stands there.
  await page.addInitScript((selector) => {
    const look = (): void => {
      const field = document.querySelector<HTMLInputElement>(selector);
      if (field === null || field.disabled || field.readOnly) return;
      watch.disconnect();
      document.documentElement.dataset["usable"] = String(performance.now());
    };
    const watch = new MutationObserver(look);
    watch.observe(document, { childList: true, subtree: true });
  }, FIRST_FIELD);
  await page.goto("./");
  await idle(page);
  const asked = await page.evaluate(() => {
    const usable = Number(document.documentElement.dataset["usable"]);
    return performance
      .getEntriesByType("resource")
      .filter(({ name, startTime }) => /\.(?:js|css)$/.test(new URL(name).pathname) && startTime <= usable)
      .map(({ name }) => name);
  });
  let bytes = 0;
  for (const file of new Set(asked)) bytes += gzipSync(await (await request.get(file)).body()).length;
  // React alone is more than 60 kB: less would mean that nothing was counted.
  expect(bytes).toBeGreaterThan(60_000);
  expect(bytes).toBeLessThanOrEqual(FIRST_VIEW);
});

test("the first measure can be typed while nothing else has come yet", async ({ page }) => {
  await page.route(/assets\/(?!index-|first-|rolldown-).*\.(?:js|css)$/, () => {
    // Never answered.
  });
  await page.goto("./", { waitUntil: "domcontentloaded" });
  await fill(page, /^Waist girth/, "74.4");
  await expect(page.getByLabel(/^Waist girth/)).toHaveValue("74.4");
});

test("everything else is fetched when the browser is idle, so that no step is waited for", async ({ page }) => {
  await page.goto("./");
  await idle(page);
  const before = await scripts(page);
  for (const part of ["Table", "Ledger", "EnvelopeStep", "BlendStep", "DartsPanel", "FitStep", "PaperStep", "SewnView"])
    expect(before.filter((path) => path.includes(`/${part}-`) && path.endsWith(".js"))).toHaveLength(1);
  await page.context().setOffline(true);
  for (const step of ["Envelope", "Blend", "Darts", "Fit", "Paper", "Tape"] as const) await goTo(page, step);
  await expect(page.getByRole("button", { name: "Try again" })).toHaveCount(0);
});

test("the step that the address names is asked for before the table and the ledger", async ({ page }) => {
  await page.goto("./#darts");
  await idle(page);
  const all = await scripts(page);
  const at = (part: string): number => all.findIndex((path) => path.includes(`/${part}-`));
  expect(at("DartsPanel")).toBeGreaterThan(0);
  expect(at("DartsPanel")).toBeLessThan(at("Table"));
  expect(at("DartsPanel")).toBeLessThan(at("Ledger"));
});

test("nothing jumps while parts are loaded", async ({ page }) => {
  let go = (): void => {};
  const held = new Promise<void>((resolve) => {
    go = resolve;
  });
  await page.route(/assets\/(?:Table|Ledger|DartsPanel)-.*\.js$/, async (route) => {
    await held;
    await route.continue();
  });
  await page.setViewportSize({ width: 1440, height: 900 });
  await page.goto("./#darts", { waitUntil: "domcontentloaded" });
  const boxes = () =>
    Promise.all(
      [".step", ".table-place", ".ledger-place", ".thread"].map((place) => page.locator(place).boundingBox()),
    );
  await expect(page.getByText("One moment…").first()).toBeVisible();
  const before = await boxes();
  go();
  await expect(page.getByRole("heading", { level: 2, name: "Darts" })).toBeVisible();
  await expect(page.getByRole("heading", { level: 2, name: "Ledger" })).toBeVisible();
  await expect.poll(() => boxes()).toEqual(before);
});

for (const [what, file, how] of [
  ["its script, lost on the way", /assets\/DartsPanel-.*\.js$/, "lost"],
  ["its script, not there", /assets\/DartsPanel-.*\.js$/, "gone"],
  ["its style, lost on the way", /assets\/DartsPanel-.*\.css$/, "lost"],
  ["its style, not there", /assets\/DartsPanel-.*\.css$/, "gone"],
] as const) {
  test(`a step that could not be loaded is loaded by trying again: ${what}`, async ({ page }) => {
    const road = await failing(page, file, how);
    await page.goto("./#darts");
    const note = page.getByRole("alert").filter({ hasText: "Darts could not be loaded." });
    await expect(note).toBeVisible();
    // The rest of the page is alive, and the work safe.
    await expect(page.getByRole("heading", { level: 2, name: "Ledger" })).toBeVisible();
    await page.getByRole("textbox", { name: "Name of this work" }).fill("Kept all the same");
    await page.getByRole("textbox", { name: "Name of this work" }).press("Enter");
    await expect(page.getByText("Saved here")).toBeVisible();
    const before = road.asked();
    road.letThrough();
    await note.getByRole("button", { name: "Try again" }).press("Enter");
    await expect(page.getByRole("heading", { level: 2, name: "Darts" })).toBeVisible();
    expect(road.asked()).toBeGreaterThan(before);
    await expect(page.locator("main")).toBeFocused();
    // Its style has come too: darts stand side by side as buttons of their own.
    await expect(page.locator(".dart-list")).toHaveCSS("display", "flex");
    await expect(page.getByRole("textbox", { name: "Name of this work" })).toHaveValue("Kept all the same");
  });
}

test("what several parts share is loaded by trying again too, by each of them", async ({ page }) => {
  const road = await failing(page, /assets\/shared-.*\.js$/);
  await page.goto("./");
  // Tape needs nothing of it.
  await fill(page, /^Waist girth/, "74.4");
  const table = page.getByRole("alert").filter({ hasText: "The table could not be loaded." });
  const ledger = page.getByRole("alert").filter({ hasText: "The ledger could not be loaded." });
  await expect(table).toBeVisible();
  await expect(ledger).toBeVisible();
  road.letThrough();
  await table.getByRole("button", { name: "Try again" }).click();
  await expect(page.getByRole("button", { name: "Front", exact: true })).toBeVisible();
  await ledger.getByRole("button", { name: "Try again" }).click();
  await expect(page.getByRole("heading", { level: 2, name: "Ledger" })).toBeVisible();
  await expect(page.getByLabel(/^Waist girth/)).toHaveValue("74.4");
});

test("the sewn view, lost on the way, is loaded by trying again", async ({ page }) => {
  const road = await failing(page, /assets\/SewnView-.*\.js$/);
  await page.goto("./#darts");
  await page.getByText("See it sewn").click();
  const note = page.getByRole("alert").filter({ hasText: "The sewn view could not be loaded." });
  await expect(note).toBeVisible();
  road.letThrough();
  await note.getByRole("button", { name: "Try again" }).click();
  await expect(page.getByRole("slider", { name: /The front, sewn/ }).first()).toBeVisible();
});

test("what makes true-scale paper, lost on the way, says so, and is loaded by trying again", async ({ page }) => {
  const lost = await failing(page, /\/paperWorker-/);
  await page.goto("./#paper");
  await page.getByRole("radio", { name: "True-scale pieces" }).check();
  const alert = page.getByRole("alert").filter({ hasText: "The part that makes paper could not be loaded." });
  await expect(alert).toBeVisible();
  lost.letThrough();
  await alert.getByRole("button", { name: "Try again" }).click();
  await expect(alert).toHaveCount(0);
  await expect(page.getByText(/pages with pieces, and a first page with this map/)).toBeVisible({ timeout: 120_000 });
});

test("the typefaces of a PDF, lost on the way, are said and loaded by trying again", async ({ page }) => {
  const lost = await failing(page, /\/SourceSans3_700Bold-/);
  await page.goto("./#paper");
  await page.getByRole("radio", { name: "True-scale pieces" }).check();
  await page.getByRole("button", { name: "Make the PDF" }).click();
  await expect(page.getByText(/The typefaces for the PDF could not be loaded/)).toBeVisible({ timeout: 120_000 });
  expect(lost.asked()).toBeGreaterThan(0);
  lost.letThrough();
  await Promise.all([
    page.waitForEvent("download", { timeout: 120_000 }),
    page.getByRole("button", { name: "Make the PDF" }).click(),
  ]);
});

test("the focus goes into the step to which a link that has gone led, though the step is still loading", async ({
  page,
}) => {
  await page.goto("./");
  await page.getByRole("link", { name: "On to Envelope" }).focus();
  await page.keyboard.press("Enter");
  await expect(page.locator("main[data-step=envelope]")).toBeFocused();
  await expect(page.getByRole("heading", { level: 2, name: "Envelope" })).toBeVisible();
  await expect(page.locator("main[data-step=envelope]")).toBeFocused();
});

/** The words of what the browser's own command prints. */
const printed = async (page: Page): Promise<string> => textOf(await page.pdf({ preferCSSPageSize: true }));

test("from any step but Tape the browser's own command prints the checklist, though Paper was never opened", async ({
  page,
}) => {
  await page.goto("./#blend");
  await expect(page.getByText("Size 12", { exact: true })).toBeVisible();
  await idle(page);
  const text = await printed(page);
  expect(text).toContain("Alteration checklist");
  expect(text).toContain("Cup and bust");
});

test("from Tape it prints the measure sheet", async ({ page }) => {
  await page.goto("./");
  await idle(page);
  const text = await printed(page);
  expect(text).toContain("Measure sheet");
  expect(text).toContain("Upper chest girth");
  expect(text).not.toContain("Alteration checklist");
});

test("printed before the sheets have come it says so, on paper and on the page, and prints the next time", async ({
  page,
}) => {
  const road = await failing(page, /assets\/PaperStep-.*\.js$/);
  await page.goto("./#blend");
  await expect(page.getByText("Size 12", { exact: true })).toBeVisible();
  const first = await printed(page);
  expect(first).toContain("The sheet was not loaded yet");
  expect(first).not.toContain("Alteration checklist");
  expect(first).not.toContain("Bodicewright");
  await expect(page.getByRole("status").filter({ hasText: "Print again" })).toBeVisible();
  road.letThrough();
  await page.getByRole("button", { name: "Try again" }).click();
  await expect(page.getByRole("article", { name: "Alteration checklist" })).toBeVisible();
  await expect.poll(() => printed(page)).toContain("Alteration checklist");
  await expect(page.getByText("The sheet was not loaded yet")).toHaveCount(0);
});
