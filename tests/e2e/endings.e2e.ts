/**
 * What is typed and not left outlasts other tabs, a killed browser and the want of room. All other endings of a page, and all
 * kinds of fields, are tried by `npm run endings`.
 */
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test, type Page } from "@playwright/test";
import { launchKillable } from "../support/killable";
import { expectSaved } from "./support";

const waist = (page: Page) => page.getByRole("textbox", { name: /^Waist girth/ });
const hip = (page: Page) => page.getByRole("textbox", { name: /^Hip girth/ });
const nameOf = (page: Page) => page.getByRole("textbox", { name: "Name of this work" });

async function open(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await expect(page.getByRole("status").filter({ hasText: "Saved here" })).toBeVisible();
}

async function typeIn(field: ReturnType<typeof waist>, text: string): Promise<void> {
  await field.press("Control+a");
  await field.pressSequentially(text);
}

/** Nothing is saved in any page until it is let go. */
async function holdDatabase(page: Page): Promise<() => Promise<void>> {
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open("bodicewright");
        opening.addEventListener("success", () => {
          const db = opening.result;
          const works = db.transaction("works", "readwrite").objectStore("works");
          const hold = (): void => {
            resolve();
            if (document.documentElement.dataset["letGo"] === undefined)
              works.count().addEventListener("success", hold);
            else db.close();
          };
          works.count().addEventListener("success", hold);
        });
      }),
  );
  return () => page.evaluate(() => void (document.documentElement.dataset["letGo"] = ""));
}

async function withProfile(use: (profile: string) => Promise<void>): Promise<void> {
  const profile = await mkdtemp(join(tmpdir(), "bodicewright-e2e-"));
  try {
    await use(profile);
  } finally {
    await rm(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

test("two tabs show each other’s fields, and one that both typed in goes on in a copy", async ({ page, context }) => {
  const other = await context.newPage();
  await open(page, "./");
  await open(other, "./");
  const name = await nameOf(page).inputValue();

  // Neither field is left, and no page is loaded again.
  await typeIn(waist(page), "77.7");
  await typeIn(hip(other), "104.4");
  await expect(waist(other)).toHaveValue("77.7");
  await expect(hip(page)).toHaveValue("104.4");

  // Typed over with the other's text before the eyes: the other shows it too.
  await typeIn(waist(other), "78.8");
  await expect(waist(page)).toHaveValue("78.8");
  await expect(page.locator(".message")).toHaveCount(0);

  // Typed in both before either can have heard of the other.
  const letGo = await holdDatabase(page);
  await typeIn(waist(page), "71.5");
  await typeIn(waist(other), "72.5");
  await letGo();
  const said = (of: Page) => of.getByText(/was changed in another tab too \(the waist/);
  await expect.poll(async () => (await said(page).count()) + (await said(other).count())).toBe(1);
  const [copy, original] = (await said(page).count()) > 0 ? [page, other] : [other, page];
  await expect(said(copy)).toContainText(`is kept beside it, as “${name} (copy)”`);
  await expect(nameOf(copy)).toHaveValue(`${name} (copy)`);
  await expect(nameOf(original)).toHaveValue(name);
  await expect(waist(page)).toHaveValue("71.5");
  await expect(waist(other)).toHaveValue("72.5");

  await page.close();
  await other.close();
  const next = await context.newPage();
  await open(next, "./");
  await next.getByRole("button", { name: "Works", exact: true }).click();
  const rows = next.getByRole("region", { name: "Your works" }).locator(".works-kept > li");
  await expect(rows).toHaveCount(2);
});

test("what was typed is there after the browser was killed a moment later", async ({ baseURL }) => {
  await withProfile(async (profile) => {
    const first = await launchKillable(profile);
    const page = await first.context.newPage();
    await open(page, baseURL ?? "");
    await typeIn(waist(page), "77.7");
    await expectSaved(page);
    await first.kill();

    const second = await launchKillable(profile);
    const next = await second.context.newPage();
    await next.goto(baseURL ?? "");
    await expect(waist(next)).toHaveValue("77.7");
    await second.context.close();
  });
});

test("where there is no room it is said, the work can be downloaded, and the next page has what was typed", async ({
  baseURL,
}) => {
  const address = baseURL ?? "";
  const { origin } = new URL(address);
  await withProfile(async (profile) => {
    const first = await launchKillable(profile);
    await open(await first.context.newPage(), address);
    await first.context.close();

    // A browser asks how much room there is but once, when it is started.
    const second = await launchKillable(profile);
    const page = await second.context.newPage();
    const session = await second.context.newCDPSession(page);
    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1 });
    await page.goto(address);
    await typeIn(waist(page), "77.7");
    await expect(page.getByText("There is no room left to save in this browser.")).toBeVisible();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Download this work" }).click(),
    ]);
    expect(download.suggestedFilename()).toMatch(/\.json$/);

    // There still is none: it is shown all the same.
    await page.reload();
    await expect(waist(page)).toHaveValue("77.7");
    await expect(page.getByText("There is no room left to save in this browser.")).toBeVisible();

    await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 1e9 });
    await page.reload();
    await expect(waist(page)).toHaveValue("77.7");
    await expect(page.getByRole("status").filter({ hasText: "Saved here" })).toBeVisible();
    await second.context.close();
  });
});
