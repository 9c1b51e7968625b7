/** The works that are kept: renamed, copied, put in the bin and brought back, handed out and brought in elsewhere. */
import { readFile } from "node:fs/promises";
import { expect, test, type Page } from "@playwright/test";
import { expectNoAxeViolations, fill } from "./support";

const menu = (page: Page) => page.getByRole("region", { name: "Your works" });
const rows = (page: Page) => menu(page).locator(".works-kept > li");

async function openMenu(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Works", exact: true }).click();
  await expect(menu(page)).toBeVisible();
}

const named = (page: Page, name: string) => page.getByRole("button", { name, exact: true });

test("works are renamed, copied, binned, brought back, and come whole to another browser", async ({
  page,
  browser,
}) => {
  await page.goto("./");
  await page.getByRole("button", { name: "Start with my own measures" }).click();
  await expect(page.getByLabel("Name of this work")).toHaveValue("My bodice");
  await fill(page, "Name of this work", "Linen blouse");
  await fill(page, /^Waist girth/, "74.4");

  await openMenu(page);
  await named(page, "Copy Linen blouse").click();
  await expect(page.getByLabel("Name of this work")).toHaveValue("Linen blouse (copy)");
  await openMenu(page);
  await expect(rows(page)).toHaveCount(3);
  await expect(rows(page).filter({ hasText: "invented" }).locator("svg path").first()).toBeAttached();
  await expect(rows(page).filter({ hasText: "(copy)" })).toContainText("no pieces yet");
  await expectNoAxeViolations(page);

  await named(page, "Put in the bin: Linen blouse").click();
  await expect(rows(page)).toHaveCount(2);
  await menu(page).getByText("Bin (1)").click();
  await expectNoAxeViolations(page);
  await named(page, "Bring back: Linen blouse").click();
  await expect(page.getByLabel("Name of this work")).toHaveValue("Linen blouse");
  await expect(page.getByLabel(/^Waist girth/)).toHaveValue("74.4");

  await openMenu(page);
  const [download] = await Promise.all([page.waitForEvent("download"), named(page, "Download all my works").click()]);
  const file = {
    name: "works.json",
    mimeType: "application/json",
    buffer: await readFile(await download.path()),
  };

  const elsewhere = await browser.newPage();
  await elsewhere.goto("./");
  for (const said of [/works\.json: 2 works brought in; 1 was here already/, /no new work; 3 were here already/]) {
    await openMenu(elsewhere);
    await elsewhere.getByLabel("Work file").setInputFiles(file);
    await expect(elsewhere.getByText(said)).toBeVisible();
  }
  await openMenu(elsewhere);
  await expect(rows(elsewhere)).toHaveCount(3);
  await named(elsewhere, "Open Linen blouse").click();
  await expect(elsewhere.getByLabel(/^Waist girth/)).toHaveValue("74.4");
  await elsewhere.close();
});

for (const [width, height] of [
  [390, 844],
  [320, 640],
] as const) {
  test(`the menu is a sheet over a phone of ${width} by ${height}, by keys alone too`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await page.goto("./");
    const name = `${"Long".repeat(19)}name`;
    await fill(page, "Name of this work", name);
    await page.getByRole("button", { name: "Works", exact: true }).focus();
    await page.keyboard.press("Enter");
    await expect(rows(page)).toContainText(name);
    await expectNoAxeViolations(page);
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await expect.poll(() => menu(page).boundingBox()).toEqual({ x: 0, y: 0, width, height });
    const overflow = await menu(page).evaluate((sheet) => sheet.scrollWidth - sheet.clientWidth);
    expect(overflow).toBe(0);
    for (const target of await menu(page).getByRole("button").all())
      expect((await target.boundingBox())?.height).toBeGreaterThanOrEqual(44);

    await page.keyboard.press("Tab");
    await expect(menu(page).getByRole("button", { name: "Close" })).toBeFocused();
    await page.keyboard.press("Escape");
    await expect(menu(page)).toBeHidden();
    await expect(page.getByRole("button", { name: "Works", exact: true })).toBeFocused();
  });
}

test("the menu is a panel that stays on the screen, however wide it is", async ({ page }) => {
  await page.goto("./");
  for (const width of [840, 1000, 1180, 1190, 1600]) {
    await page.setViewportSize({ width, height: 700 });
    await openMenu(page);
    const box = await menu(page).boundingBox();
    expect(box?.x).toBeGreaterThanOrEqual(0);
    expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(width);
    expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(700);
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await page.keyboard.press("Escape");
  }
});

test("what comes up covers neither a field on a wide screen nor, once it is typed in, one on a phone", async ({
  page,
}) => {
  await page.goto("./");
  await openMenu(page);
  const file = { name: "song.json", mimeType: "application/json", buffer: Buffer.from('{"song": 1}') };
  await page.getByLabel("Work file").setInputFiles(file);
  const message = page.getByText(/^song\.json/);
  await expect(message).toBeVisible();
  const step = await page.getByRole("main").boundingBox();
  expect((await message.boundingBox())?.x).toBeGreaterThan((step?.x ?? 0) + (step?.width ?? 0));

  await page.setViewportSize({ width: 390, height: 844 });
  for (const name of [/^Hip girth/, /^Waist girth/]) {
    const field = page.getByLabel(name);
    await field.evaluate((element) => {
      window.scrollTo(0, element.getBoundingClientRect().bottom + window.scrollY - window.innerHeight + 4);
    });
    await field.press("1");
    const [over, typed] = [await page.locator(".message").boundingBox(), await field.boundingBox()];
    expect((typed?.y ?? 0) + (typed?.height ?? 0)).toBeLessThanOrEqual(over?.y ?? 0);
  }
});
