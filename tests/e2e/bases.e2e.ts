/**
 * What stays of a garment that fits: a base that does not change with its work, what her body asked for offered on another pattern,
 * what can be forgotten, and photographs beside a trial. On a desk and on a phone, with axe.
 */
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test, type Locator, type Page } from "@playwright/test";
import { root } from "./site";
import { expectNoAxeViolations, expectSaved, goTo } from "./support";

const VIEWS = [
  ["a desk", { width: 1440, height: 900 }],
  ["a phone", { width: 390, height: 844 }],
] as const;

const works = (page: Page): Locator => page.getByRole("button", { name: "Works", exact: true });

async function startDemo(page: Page, name: string): Promise<void> {
  await works(page).click();
  await page.getByRole("button", { name: `Demo: ${name}` }).click();
  await expect(page.getByRole("textbox", { name: "Name of this work" })).toHaveValue(name);
}

/** The story's kept garment, as it would be with a shoulder further forward, and the left one sloping more. */
async function openKept(page: Page): Promise<void> {
  const file: unknown = JSON.parse(await readFile(join(root, "demo-data/siskin.json"), "utf8"));
  const text = JSON.stringify(file, (key: string, value: unknown) =>
    key === "alterations" && Array.isArray(value) && value.some((one) => isFit(one))
      ? [
          ...value.map((one: unknown): unknown => one),
          { kind: "fit", id: "fit-forwardShoulder", fit: "forwardShoulder", amount: 8 },
          { kind: "fit", id: "fit-shoulderSlope-left", half: "left", fit: "shoulderSlope", amount: 6 },
        ]
      : value,
  );
  await works(page).click();
  await page
    .getByLabel("Work file")
    .setInputFiles({ name: "kept.json", mimeType: "application/json", buffer: Buffer.from(text) });
  await expect(page.getByRole("textbox", { name: "Name of this work" })).toHaveValue(/^Siskin/);
}

const isFit = (one: unknown): boolean => typeof one === "object" && one !== null && "kind" in one && one.kind === "fit";

/** A photograph as a camera makes it, larger than what is kept. */
async function jpeg(page: Page, colour: string): Promise<Buffer> {
  const text = await page.evaluate(async (fill) => {
    const canvas = document.createElement("canvas");
    canvas.width = 1800;
    canvas.height = 2400;
    const context = canvas.getContext("2d");
    if (context === null) return "";
    context.fillStyle = fill;
    context.fillRect(0, 0, 1800, 2400);
    context.fillStyle = "white";
    context.fillRect(300, 300, 800, 1500);
    return canvas.toDataURL("image/jpeg", 0.9).split(",")[1] ?? "";
  }, colour);
  return Buffer.from(text, "base64");
}

for (const [where, viewport] of VIEWS) {
  test.describe(`at ${where}`, () => {
    test.use({ viewport });

    test("another pattern of the same wearer is begun from what her body asked for; what was learnt is forgotten for good", async ({
      page,
    }) => {
      await page.goto("./#tape");
      await openKept(page);
      await expectSaved(page);
      await startDemo(page, "Sorrel princess bodice (invented)");
      await goTo(page, "Tape");
      await page.getByLabel("Whose measures these are").fill("Invented wearer");
      await page.getByLabel("Whose measures these are").press("Enter");
      await goTo(page, "Fit");
      const fold = page.locator("details.standing");
      await fold.locator("summary").first().press("Enter");
      const sway = fold.getByRole("listitem").filter({ hasText: "across the back waist" });
      const slope = fold.getByRole("listitem").filter({ hasText: "left half" });
      await expect(sway).toContainText("Right in the one garment you kept.");
      await expect(slope).toHaveCount(1);
      await expectNoAxeViolations(page);
      await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
      await sway.getByRole("button", { name: /^Take: / }).press("Enter");
      await expect(sway).toContainText("In the ledger already.");
      await slope.getByRole("button", { name: /^Not here/ }).press("Enter");
      await expect(slope).toContainText("Left out of this garment.");
      await slope.getByRole("button", { name: /^Offer it again/ }).press("Enter");
      await fold.getByRole("button", { name: "Take all" }).press("Enter");
      await expect(fold.getByText(/In the ledger already\./)).toHaveCount(3);
      await expect(
        page
          .locator(".ledger-place")
          .getByText(/on the left half/)
          .first(),
      ).toBeAttached();
      await page.getByRole("radio", { name: "in", exact: true }).check();
      await expect(sway).toContainText(/in out across the back waist/);
      await page.getByRole("radio", { name: "cm", exact: true }).check();
      await expect(fold.getByText(/^Ease at the waist: .* in 1 garment\.$/)).toBeVisible();
      await fold.getByRole("button", { name: "Forget the ease" }).press("Enter");
      await expect(fold.getByText(/^Forgotten\./)).toBeVisible();
      await expectSaved(page);
      await page.reload();
      await fold.locator("summary").first().press("Enter");
      await expect(fold.getByText(/ends .* short of the bust point/).first()).toBeVisible();
      await expect(fold.getByText(/^Ease at the waist/)).toHaveCount(0);
    });

    test("a photograph is added, enlarged, removed, brought back, and goes into a file only when asked", async ({
      page,
      browser,
    }) => {
      await page.goto("./#trial");
      await startDemo(page, "Siskin bodice and its two trials (invented)");
      await goTo(page, "Trial");
      const photos = page.getByRole("region", { name: "Photographs" });
      const files = await Promise.all(
        ["brown", "teal"].map(async (colour) => ({
          name: `${colour}.jpg`,
          mimeType: "image/jpeg",
          buffer: await jpeg(page, colour),
        })),
      );
      await photos.getByLabel("Photographs to add").setInputFiles(files);
      const faces = photos.getByRole("button", { name: /^Enlarge/ });
      await expect(faces).toHaveCount(2);
      // Scaled down to 1600 on the longer side, and drawn: the content policy lets it through.
      expect(
        await photos
          .locator("img")
          .first()
          .evaluate((image) => image instanceof HTMLImageElement && image.naturalHeight),
      ).toBe(1600);
      await faces.first().press("Enter");
      await expect(faces.first()).toHaveAttribute("aria-expanded", "true");
      expect((await photos.locator("img").first().boundingBox())?.height).toBeGreaterThan(300);
      await expectNoAxeViolations(page);
      await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(viewport.width);
      await faces.first().press("Enter");
      await photos
        .getByRole("button", { name: /^Remove/ })
        .first()
        .press("Enter");
      await expect(faces).toHaveCount(1);
      await page.keyboard.press("Tab");
      await expect(photos.getByRole("button", { name: "Bring it back" })).toBeFocused();
      await page.keyboard.press("Enter");
      await expect(faces).toHaveCount(2);
      await expectSaved(page);
      await page.reload();
      await expect(faces).toHaveCount(2);

      const download = page.waitForEvent("download");
      await photos.getByRole("button", { name: "Save the work with all its photographs" }).click();
      const bytes = await readFile(await (await download).path());
      expect(bytes.toString().match(/"type": ?"image\/jpeg"/g)).toHaveLength(2);
      await works(page).click();
      const plain = page.waitForEvent("download");
      await page.getByRole("button", { name: "Download this work" }).click();
      expect(await readFile(await (await plain).path(), "utf8")).not.toContain("image/jpeg");

      // Read back where nothing is kept yet.
      const elsewhere = await browser.newContext({ viewport });
      const other = await elsewhere.newPage();
      await other.goto(page.url());
      await works(other).click();
      await other
        .getByLabel("Work file")
        .setInputFiles({ name: "with.json", mimeType: "application/json", buffer: bytes });
      await expect(other.getByRole("textbox", { name: "Name of this work" })).toHaveValue(/^Siskin/);
      await goTo(other, "Trial");
      await expect(other.getByRole("region", { name: "Photographs" }).locator("img")).toHaveCount(2);
      await elsewhere.close();
    });
  });
}

test("a store of photographs that throws harms no trial", async ({ page }) => {
  await page.addInitScript(() => {
    const factory = globalThis.indexedDB;
    const open = factory.open.bind(factory);
    Object.defineProperty(factory, "open", {
      value: (name: string, version?: number) => {
        if (name === "bodicewright-photographs") throw new DOMException("out of order", "UnknownError");
        return open(name, version);
      },
    });
  });
  await page.goto("./#trial");
  await startDemo(page, "Siskin bodice and its two trials (invented)");
  await goTo(page, "Trial");
  const photos = page.getByRole("region", { name: "Photographs" });
  await expect(photos.getByText(/^Photographs cannot be kept or shown here just now\./)).toBeVisible();
  await photos
    .getByLabel("Photographs to add")
    .setInputFiles({ name: "one.jpg", mimeType: "image/jpeg", buffer: await jpeg(page, "teal") });
  await expect(photos.getByText(/The trial itself is not touched\.$/)).toBeVisible();
  await page.getByLabel("Because").fill("It still fits.");
  await page.getByLabel("Because").press("Tab");
  await expectSaved(page);
  await page.reload();
  await expect(page.getByLabel("Because")).toHaveValue("It still fits.");
});
