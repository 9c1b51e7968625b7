/** The main job in a real browser: measures in, size blend and darts out, checklist printed. */
import { readFile } from "node:fs/promises";
import { expect, test } from "@playwright/test";
import { dragHandle, expectNoAxeViolations, expectSaved, figuresOf, fill, goTo, STEPS } from "./support";

test("a first visit opens a demonstration that says it is invented, with its plan", async ({ page }) => {
  await page.goto("./");
  await expect(page.getByText("This is a demonstration,")).toBeVisible();
  await expect(page.getByText("Your measures stay in this browser.")).toBeVisible();
  await goTo(page, "Blend");
  await expect(page.getByText("Size 12", { exact: true })).toBeVisible();
  await expect(page.getByRole("heading", { name: /Checks all hold/ })).toBeVisible();
});

test("from a blank work, in inches, to a printed checklist with the right sizes", async ({ page }) => {
  await page.goto("./");
  await page.getByRole("button", { name: "Start with my own measures" }).click();
  await page.getByRole("radio", { name: "in", exact: true }).check();

  // 35 5/8 in = 904.9 mm, 33 1/2 in = 850.9 mm, 30 in = 762 mm: converted by hand.
  await fill(page, /^Bust girth/, "35 5/8");
  await fill(page, /^Upper chest girth/, "33½");
  await fill(page, /^Waist girth/, "76.2cm");
  await goTo(page, "Envelope");
  await page.getByRole("button", { name: "Wren bodice (invented)" }).click();
  await goTo(page, "Tape");
  await fill(page, /^Hip girth/, "39-1/2");

  await goTo(page, "Blend");
  // Chart: size 12 with cup C is drafted for 830 round the upper chest and 880 + 25 = 905 round the bust, hers; waist 762 + 40 = 802 lies 22/40
  // of the way from the 14 line (780) to the 16 line (820); hip 1003.3 + 50 lies 23.3/40 from 14 (1030) to 16 (1070).
  await expect(page.getByText("Size 12", { exact: true })).toBeVisible();
  await expect(page.getByRole("heading", { name: "Waist 55 % from 14 to 16" })).toBeVisible();
  await expect(page.getByRole("heading", { name: "Hip 58 % from 14 to 16" })).toBeVisible();

  await goTo(page, "Paper");
  await page.emulateMedia({ media: "print" });
  const sheet = page.locator(".printed-checklist");
  await expect(sheet).toBeVisible();
  await expect(page.locator(".head")).toBeHidden();
  await expect(sheet).toContainText("Alteration checklist");
  await expect(sheet).toContainText("55 % of the way from the 14 line to the 16 line");
  const pdf = await page.pdf({ preferCSSPageSize: true });
  expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
});

test("shortening a dart with its mouth held makes it fuller; holding the fullness does not", async ({ page }) => {
  await page.goto("./#darts");
  const end = page.getByTestId("handle-front-waistDart-apex");
  const before = await figuresOf(end);
  await dragHandle(page, end, 0, 30);
  // In her hand they stand over the table.
  await expect(page.locator(".table-readout")).toContainText(/fullness \d+ mm\+\d+ mm/);
  await page.mouse.up();
  await expect.poll(async () => (await figuresOf(end)).angle).toBeGreaterThan(before.angle + 2);
  const dragged = await figuresOf(end);
  expect(dragged.mouth).toBe(before.mouth);
  expect(dragged.fullness).toBeGreaterThan(before.fullness);
  await expect(
    page.getByRole("button", { name: /Shorten the waist dart by \d+ mm, its mouth held/ }).first(),
  ).toBeVisible();

  await page.getByRole("radio", { name: "Hold the fullness" }).check();
  await expect.poll(async () => (await figuresOf(end)).fullness).toBe(before.fullness);
  expect((await figuresOf(end)).mouth).toBeLessThan(before.mouth);
  await page.getByText("Where did the width go?").click();
  await expect(page.getByText("taken in at the side seam, at the waist")).toBeVisible();
  await expect(page.getByText(/Finished waist seam/)).toBeVisible();
});

test("Escape reverts a drag exactly, and one drag is one step of undo", async ({ page }) => {
  await page.goto("./#darts");
  const end = page.getByTestId("handle-front-sideDart-apex");
  const label = await end.getAttribute("aria-valuetext");
  await dragHandle(page, end, 25, 4);
  await expect(page.locator(".table-readout")).toBeVisible();
  await page.keyboard.press("Escape");
  await page.mouse.up();
  await expect(page.locator(".table-readout")).toHaveCount(0);
  await expect(end).toHaveAttribute("aria-valuetext", label ?? "");
  await expect(page.getByRole("button", { name: /^Undo/ })).toBeDisabled();

  await dragHandle(page, end, 25, 4);
  await page.mouse.up();
  await expect(end).not.toHaveAttribute("aria-valuetext", label ?? "");
  const moved = await end.getAttribute("aria-valuetext");
  await page.keyboard.press("Control+z");
  await expect(end).toHaveAttribute("aria-valuetext", label ?? "");
  await page.keyboard.press("Control+Shift+z");
  await expect(end).toHaveAttribute("aria-valuetext", moved ?? "");
});

test("a dart is moved by keyboard alone, and the work and its undo survive a reload", async ({ page }) => {
  await page.goto("./#darts");
  const end = page.getByTestId("handle-front-waistDart-apex");
  await end.focus();
  await page.keyboard.press("Shift+ArrowDown");
  await expect(page.getByRole("textbox", { name: "Shorten by" })).toHaveValue("10");
  await page.keyboard.press("Tab");
  await expectSaved(page);
  await page.reload();
  await page.getByRole("button", { name: "Front waist dart", exact: true }).click();
  await expect(page.getByRole("textbox", { name: "Shorten by" })).toHaveValue("10");
  await page.getByRole("button", { name: /^Undo/ }).click();
  await expect(page.getByRole("textbox", { name: "Shorten by" })).toHaveValue("0");
});

test("a work goes out to a file and comes back; a foreign file changes nothing", async ({ page }) => {
  await page.goto("./");
  await fill(page, /^Waist girth/, "74.4");
  await page.getByRole("button", { name: "Works" }).click();
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Download this work" }).click(),
  ]);
  const text = await readFile(await download.path(), "utf8");
  expect(JSON.parse(text)).toMatchObject({
    bodicewright: "work",
    version: 9,
    work: { tapes: [{ readings: { waistGirth: [744] } }] },
  });

  const file = (name: string, content: string) => ({
    name,
    mimeType: "application/json",
    buffer: Buffer.from(content),
  });
  await page.getByRole("button", { name: "Works" }).click();
  await page.getByLabel("Work file").setInputFiles(file("song.json", '{"song": 1}'));
  await expect(page.getByText(/song\.json: This is a file of something else/)).toBeVisible();
  await expect(page.getByLabel(/^Waist girth/)).toHaveValue("74.4");

  await page.getByRole("button", { name: "Works" }).click();
  await page.getByLabel("Work file").setInputFiles(file("mine.json", text.replace("744", "751")));
  await expect(page.getByLabel(/^Waist girth/)).toHaveValue("75.1");
});

test("where the browser keeps nothing the page says so and stays usable", async ({ page }) => {
  await page.addInitScript(() => {
    indexedDB.open = () => {
      throw new DOMException("blocked", "SecurityError");
    };
  });
  await page.goto("./");
  await expect(page.getByText(/does not let the page keep anything/)).toBeVisible();
  await fill(page, /^Waist girth/, "74.4");
  await expect(page.getByLabel(/^Waist girth/)).toHaveValue("74.4");
});

test("what cannot be read stays as typed, beside a kind word, and survives a reload", async ({ page }) => {
  await page.goto("./");
  await fill(page, /^Hip girth/, "ninety");
  await expect(page.getByText(/“ninety” does not read as a length/)).toBeVisible();
  await expectSaved(page);
  await page.reload();
  await expect(page.getByLabel(/^Hip girth/)).toHaveValue("ninety");
});

for (const [name, width, height] of [
  ["a wide screen", 1440, 900],
  ["a phone", 390, 844],
] as const) {
  test(`no step has accessibility faults, and none is wider than the page, on ${name}`, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await page.goto("./");
    // One page for all of them: to start it takes as long as to look at it.
    for (const step of STEPS)
      // oxlint-disable-next-line no-await-in-loop -- one step after the other
      await test.step(step, async () => {
        await goTo(page, step);
        await expectNoAxeViolations(page);
        await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      });
  });
}
