/** True-scale paper in a real browser: files made in the page, downloaded, and measured by programs of others. */
import { readFileSync } from "node:fs";
import { DOMParser } from "@xmldom/xmldom";
import { expect, test, type Page } from "@playwright/test";
import DxfReader from "dxf-parser";
import { linesOf, pageSizes, textOf } from "../support/poppler";
import { expectNoAxeViolations, goTo } from "./support";

// Every page of a file is read by a program of its own.
test.describe.configure({ timeout: 150_000 });

async function choose(page: Page, sheet: string): Promise<void> {
  await goTo(page, "Paper");
  await page.getByRole("radio", { name: sheet }).check();
}

/** Presses a button that makes a file, and reads what is downloaded. */
async function fileOf(page: Page, button: string): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  const [download] = await Promise.all([
    page.waitForEvent("download", { timeout: 120_000 }),
    page.getByRole("button", { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: new Uint8Array(readFileSync(await download.path())) };
}

/** Whether a page has the four corners of a square of each of these sides, mm. */
function hasSquares(pdf: Uint8Array, page: number, ...sides: readonly number[]): boolean {
  const corners = linesOf(pdf, page).flatMap(({ steps }) =>
    steps.filter(({ command }) => command !== "Z").map(({ numbers: [x = 0, y = 0] }) => ({ x, y })),
  );
  const has = (x: number, y: number): boolean =>
    corners.some((corner) => Math.abs(corner.x - x) < 0.05 && Math.abs(corner.y - y) < 0.05);
  return sides.every((side) =>
    corners.some(({ x, y }) => has(x + side, y) && has(x + side, y - side) && has(x, y - side)),
  );
}

/** One stretch across and one down, each of one of the lengths. */
function hasRules(pdf: Uint8Array, page: number, lengths: readonly number[]): boolean {
  const stretches = linesOf(pdf, page).flatMap(({ steps }) =>
    steps.slice(1).map(({ numbers: [x = NaN, y = NaN] }, at) => {
      const [fromX = NaN, fromY = NaN] = steps[at]?.numbers ?? [];
      return { across: Math.abs(x - fromX), down: Math.abs(y - fromY) };
    }),
  );
  const isLong = (length: number): boolean => lengths.some((one) => Math.abs(one - length) < 0.05);
  return (
    stretches.some(({ across, down }) => isLong(across) && down < 0.05) &&
    stretches.some(({ across, down }) => isLong(down) && across < 0.05)
  );
}

test("the pieces of the demo are made as a PDF, to scale, and told of before", async ({ page }) => {
  await page.goto("./");
  await choose(page, "True-scale pieces");
  const said = page.getByText(/pages with pieces, and a first page with this map/);
  await expect(said).toBeVisible({ timeout: 120_000 });
  const told = Number(/^\d+/.exec((await said.textContent()) ?? "")?.[0]);
  await expectNoAxeViolations(page);

  const { name, bytes } = await fileOf(page, "Make the PDF");
  expect(name).toMatch(/\.pdf$/u);
  const sizes = pageSizes(bytes);
  expect(sizes).toHaveLength(told + 1);
  for (let index = 1; index <= sizes.length; index += 1) {
    // ISO 216: A4 is 210 × 297 mm.
    expect(sizes[index - 1]?.map(Math.round)).toEqual([210, 297]);
    expect(hasSquares(bytes, index, 100, 101.6)).toBe(true);
  }
  expect(textOf(bytes)).toContain("FRONT BASQUE");
  await expect(page.getByText(/is made: \d+ pages/)).toBeVisible();
  await expectNoAxeViolations(page);
});

test("her own allowance, other paper and a printed size beneath are what is made", async ({ page }) => {
  await page.goto("./");
  await choose(page, "True-scale pieces");
  await page.getByLabel("Paper", { exact: true }).selectOption({ label: await optionLike(page, "Letter") });
  await page.getByText(/Seam and hem allowances: /).click();
  const allowance = async (seam: string, text: string): Promise<void> => {
    const field = page.getByRole("textbox", { name: seam, exact: true });
    await field.fill(text);
    await field.press("Enter");
  };
  await allowance("Hem", "4");
  await allowance("Side seam", "much");
  // What cannot be read is said beside the field, and the usual stands until it is put right.
  await expect(page.getByRole("alert").first()).toBeVisible();
  await allowance("Side seam", "2");
  await page.getByRole("checkbox", { name: "16", exact: true }).check();
  await expect(page.getByText(/pages with pieces/)).toBeVisible({ timeout: 120_000 });
  const { bytes } = await fileOf(page, "Make the PDF");
  // ANSI/ASME Y14.1: size A is 8.5 × 11 in.
  for (const size of pageSizes(bytes)) expect(size.map((mm) => Math.round(mm * 10) / 10)).toEqual([215.9, 279.4]);
  const first = textOf(bytes, 1);
  expect(first).toContain("15 mm, but");
  expect(first).toContain("40 mm at the hem");
  expect(first).toContain("20 mm at the side seam");
  expect(first).toContain("size 16");
  // The choices are the work's own: they are there after a reload.
  await page.reload();
  await choose(page, "True-scale pieces");
  await page.getByText(/Seam and hem allowances: 2 of your own/).click();
  await expect(page.getByRole("textbox", { name: "Hem", exact: true })).toHaveValue("4");
});

/** The label of the option that begins so: its size is told beside it in the wearer's unit. */
async function optionLike(page: Page, name: string): Promise<string> {
  const labels = await page.getByLabel("Paper", { exact: true }).locator("option").allTextContents();
  return labels.find((label) => label.startsWith(name)) ?? name;
}

test("the same pieces come as SVG in millimetres and as DXF that a general reader reads", async ({ page }) => {
  await page.goto("./");
  await choose(page, "True-scale pieces");
  const svg = await fileOf(page, "Make the SVG");
  const root = new DOMParser().parseFromString(new TextDecoder().decode(svg.bytes), "image/svg+xml").documentElement;
  expect(root?.getAttribute("width")).toMatch(/mm$/u);
  expect([...(root?.getElementsByTagName("g") ?? [])].map((group) => group.getAttribute("id"))).toEqual(
    expect.arrayContaining(["front", "back", "frontBasque", "backBasque"]),
  );
  const dxf = await fileOf(page, "Make the DXF");
  const read = new DxfReader().parseSync(new TextDecoder().decode(dxf.bytes));
  expect(Object.keys(read?.blocks ?? {}).length).toBeGreaterThanOrEqual(4);
});

test("the overlay shows what changed, and a making can be stopped, by keyboard alone", async ({ page }) => {
  await page.goto("./");
  await choose(page, "Tissue overlay");
  await expect(page.getByText(/pages? with strips/)).toBeVisible({ timeout: 120_000 });
  await expect(page.getByRole("button", { name: "Make the DXF" })).toHaveCount(0);
  const make = page.getByRole("button", { name: "Make the PDF" });
  await make.focus();
  const waiting = page.waitForEvent("download", { timeout: 120_000 });
  await page.keyboard.press("Enter");
  const bytes = new Uint8Array(readFileSync(await (await waiting).path()));
  expect(textOf(bytes, 1)).toContain("Tissue overlay");
  // Where a strip would lie in their corners, there are two rules in their place.
  expect(hasSquares(bytes, 2, 100) || hasRules(bytes, 2, [101.6, 50.8])).toBe(true);

  await choose(page, "True-scale pieces");
  await expect(page.getByText(/pages with pieces/)).toBeVisible({ timeout: 120_000 });
  await make.focus();
  await page.keyboard.press("Enter");
  const cancel = page.getByRole("button", { name: "Cancel" });
  await cancel.focus();
  await page.keyboard.press("Enter");
  await expect(page.getByText("The PDF was not made: you stopped it.")).toBeVisible();
});

test("a sheet too small, and no piece at all, are said before anything is made", async ({ page }) => {
  await page.goto("./");
  await choose(page, "True-scale pieces");
  for (const name of ["Front", "Back", "Front basque", "Back basque"])
    await page.getByRole("checkbox", { name, exact: true }).uncheck();
  await expect(page.getByRole("alert")).toContainText("No piece is chosen.");
  await expect(page.getByRole("button", { name: "Make the PDF" })).toHaveAttribute("aria-disabled", "true");
  await expectNoAxeViolations(page);
});
