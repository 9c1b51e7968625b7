/** The table under a hand: fingers as the browser itself has them, so that what it makes of a touch is part of it. */
import { expect, test, type CDPSession, type Locator, type Page } from "@playwright/test";
import { boxAtRest, figuresOf } from "./support";

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });

interface Finger {
  readonly x: number;
  readonly y: number;
}

/**
 * A hand whose fingers are put down, moved and lifted. What it does is sent at once, and waited for afterwards: on a busy machine
 * a drag of which each move waits for the last one is a long press.
 */
class Hand {
  private readonly going: Promise<unknown>[] = [];

  constructor(
    private readonly session: CDPSession,
    private fingers: readonly Finger[] = [],
  ) {}

  private send(type: "touchStart" | "touchMove" | "touchEnd", fingers: readonly Finger[]): void {
    this.fingers = fingers;
    const touchPoints = fingers.map((finger, id) => ({ ...finger, id }));
    this.going.push(this.session.send("Input.dispatchTouchEvent", { type, touchPoints }));
  }

  /** One after the other, as fingers come. */
  down(...fingers: readonly Finger[]): void {
    for (const finger of fingers) this.send("touchStart", [...this.fingers, finger]);
  }

  move(to: readonly Finger[], steps = 10): void {
    const from = this.fingers;
    for (let step = 1; step <= steps; step += 1)
      this.send(
        "touchMove",
        to.map(({ x, y }, at) => {
          const start = from[at] ?? { x, y };
          return { x: start.x + ((x - start.x) * step) / steps, y: start.y + ((y - start.y) * step) / steps };
        }),
      );
  }

  lift(): void {
    this.send("touchEnd", []);
  }

  async done(): Promise<void> {
    await Promise.all(this.going.splice(0));
  }
}

const sheet = (page: Page): Locator => page.locator(".table-sheet");
const apex = (page: Page): Locator => page.getByTestId("handle-front-waistDart-apex");

async function openTable(page: Page): Promise<Hand> {
  await page.goto("./#darts");
  const show = page.getByRole("button", { name: "Show the pieces" });
  await expect(page.getByRole("heading", { level: 2, name: "Darts" })).toBeVisible();
  if ((await sheet(page).count()) === 0 && (await show.count()) > 0) await show.tap();
  await boxAtRest(apex(page));
  return new Hand(await page.context().newCDPSession(page));
}

const middleOf = ({ x, y, width, height }: { x: number; y: number; width: number; height: number }): Finger => ({
  x: x + width / 2,
  y: y + height / 2,
});

/** A place of the table where no dart's end is within a finger's reach, as far up and to the left as there is one. */
const freePlace = (page: Page): Promise<Finger> =>
  page.evaluate(() => {
    const svg = document.querySelector(".table-sheet");
    if (svg === null) throw new Error("no table");
    const { left, top, width, height } = svg.getBoundingClientRect();
    const bottom = Math.min(top + height, window.innerHeight);
    const isFree = (x: number, y: number): boolean =>
      [-40, 0, 40].every((dx) =>
        [-40, 0, 40].every((dy) => {
          const hit = document.elementFromPoint(x + dx, y + dy);
          return hit !== null && svg.contains(hit) && hit.closest(".handle") === null;
        }),
      );
    for (let y = top + 50; y < bottom - 50; y += 10)
      for (let x = left + 50; x < left + width - 50; x += 10) if (isFree(x, y)) return { x, y };
    throw new Error("no free place on the table");
  });

/** Which millimetre of the table lies at a place of the screen, and how many pixels it takes. */
const under = (page: Page, at: Finger): Promise<{ x: number; y: number; scale: number }> =>
  sheet(page).evaluate((svg, { x, y }) => {
    if (!(svg instanceof SVGSVGElement)) throw new Error("no sheet");
    const matrix = svg.getScreenCTM();
    if (matrix === null) throw new Error("not laid out");
    const there = new DOMPoint(x, y).matrixTransform(matrix.inverse());
    return { x: there.x, y: there.y, scale: matrix.a };
  }, at);

const scrolled = (page: Page): Promise<number> => page.evaluate(() => window.scrollY);
const seen = (page: Page): Promise<string | null> => sheet(page).getAttribute("viewBox");

/** Pixels on the screen between where a place of the table was and is. */
const movedBy = (
  was: { x: number; y: number },
  is: { x: number; y: number; scale: number },
): { x: number; y: number } => ({ x: (was.x - is.x) * is.scale, y: (was.y - is.y) * is.scale });

test("two fingers that part look closer, about their middle, and go back as far", async ({ page }) => {
  const hand = await openTable(page);
  const middle = await freePlace(page);
  const before = await under(page, middle);
  const apart = (by: number): readonly Finger[] => [
    { x: middle.x - by, y: middle.y },
    { x: middle.x + by, y: middle.y },
  ];
  hand.down(...apart(20));
  hand.move(apart(40));
  await hand.done();
  const near = await under(page, middle);
  expect(near.scale / before.scale).toBeGreaterThan(1.9);
  expect(near.scale / before.scale).toBeLessThan(2.1);
  const drift = movedBy(before, near);
  expect(Math.abs(drift.x)).toBeLessThan(1);
  expect(Math.abs(drift.y)).toBeLessThan(1);
  hand.move(apart(20));
  hand.lift();
  await hand.done();
  const back = await under(page, middle);
  expect(back.scale / before.scale).toBeCloseTo(1, 2);
  expect(await scrolled(page)).toBe(0);
  await expect(page.getByRole("menu")).toHaveCount(0);
});

test("two fingers side by side move the table, up and down too, and the page stays", async ({ page }) => {
  const hand = await openTable(page);
  const at = await freePlace(page);
  const before = await under(page, at);
  const fingers = [
    { x: at.x - 25, y: at.y },
    { x: at.x + 25, y: at.y },
  ];
  hand.down(...fingers);
  hand.move(fingers.map(({ x, y }) => ({ x: x + 30, y: y + 60 })));
  hand.lift();
  await hand.done();
  const after = await under(page, at);
  expect(after.scale / before.scale).toBeCloseTo(1, 2);
  const by = movedBy(before, after);
  expect(Math.abs(by.x - 30)).toBeLessThan(2);
  expect(Math.abs(by.y - 60)).toBeLessThan(2);
  expect(await scrolled(page)).toBe(0);
});

test("one finger moves a dart’s end, and what it comes to stands over the table while it does", async ({ page }) => {
  const hand = await openTable(page);
  const start = middleOf(await boxAtRest(apex(page)));
  const before = await figuresOf(apex(page));
  const readout = page.locator(".table-readout");
  hand.down(start);
  hand.move([{ x: start.x, y: start.y + 30 }]);
  await hand.done();
  await expect(readout).toBeVisible();
  await expect(readout).toContainText("Front waist dart");
  await expect(readout).toContainText(/angle [\d.]+°\+[\d.]+°/);
  const box = await readout.boundingBox();
  // No finger's width of it lies under the finger.
  expect(box === null ? Infinity : box.y + box.height).toBeLessThan(start.y);
  hand.lift();
  await hand.done();
  await expect(readout).toHaveCount(0);
  await expect.poll(async () => (await figuresOf(apex(page))).angle).toBeGreaterThan(before.angle);
  const after = await figuresOf(apex(page));
  expect(after.mouth).toBe(before.mouth);
  await expect(page.locator("[data-said]")).toHaveText(/^In the ledger: Shorten the waist dart by \d+ mm/);
  expect(await scrolled(page)).toBe(0);
});

test("a second finger beside a dart that is held moves neither the table nor the dart", async ({ page }) => {
  const hand = await openTable(page);
  const beside = await freePlace(page);
  const start = middleOf(await boxAtRest(apex(page)));
  const view = await seen(page);
  const held = { x: start.x, y: start.y + 24 };
  hand.down(start);
  hand.move([held]);
  await hand.done();
  const readout = page.locator(".table-readout");
  await expect(readout).toBeVisible();
  const figures = await readout.textContent();
  hand.down(beside);
  hand.move([held, { x: beside.x + 60, y: beside.y + 40 }]);
  await hand.done();
  expect(await seen(page)).toBe(view);
  expect(await readout.textContent()).toBe(figures);
  hand.lift();
  await hand.done();
  expect(await seen(page)).toBe(view);
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeEnabled();
});

test("a long press says what lies there and what can be done with it; one that moves does not", async ({ page }) => {
  const hand = await openTable(page);
  const dart = middleOf(await boxAtRest(apex(page)));
  const menu = page.getByRole("menu");
  hand.down(dart);
  await hand.done();
  await page.waitForTimeout(900);
  // It may still become a drag.
  await expect(menu).toHaveCount(0);
  hand.lift();
  await hand.done();
  await expect(menu).toBeVisible();
  await expect(menu).toContainText("Front waist dart");
  const box = await menu.boundingBox();
  expect(box?.x ?? -1).toBeGreaterThanOrEqual(0);
  expect((box?.x ?? 390) + (box?.width ?? 390)).toBeLessThanOrEqual(390);
  await page.getByRole("menuitem", { name: "Show only the front" }).tap();
  await expect(menu).toHaveCount(0);
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();

  const at = await freePlace(page);
  hand.down(at);
  hand.move([{ x: at.x + 40, y: at.y }], 4);
  await hand.done();
  await page.waitForTimeout(900);
  await expect(menu).toHaveCount(0);
  hand.lift();
  await hand.done();
  await expect(menu).toHaveCount(0);
});

test("two taps look closely at a piece, two more at everything", async ({ page }) => {
  const hand = await openTable(page);
  const at = await page.evaluate(() => {
    const back = document.querySelector(".working [data-piece=back] .paper")?.getBoundingClientRect();
    if (back === undefined) throw new Error("no back");
    for (let y = back.top; y < Math.min(back.bottom, window.innerHeight); y += 6)
      for (let x = back.left; x < back.right; x += 6) {
        const hits = document.elementsFromPoint(x, y);
        if (hits[0]?.closest(".table-sheet, .handle")?.matches(".table-sheet") !== true) continue;
        if (hits.some((hit) => hit.closest("[data-kind=piece]")?.getAttribute("data-of") === "back")) return { x, y };
      }
    throw new Error("the back is nowhere to be touched");
  });
  const all = await under(page, at);
  // On a busy machine two taps may come too far apart to be two taps: she would tap again, after a moment.
  const twiceUntil = (isSo: (scale: number) => boolean): Promise<void> =>
    expect(async () => {
      for (let tap = 0; tap < 2; tap += 1) {
        hand.down(at);
        hand.lift();
      }
      await hand.done();
      await page.waitForTimeout(500);
      expect(isSo((await under(page, at)).scale)).toBe(true);
    }).toPass();
  await twiceUntil((scale) => scale > all.scale * 1.2);
  await twiceUntil((scale) => Math.abs(scale / all.scale - 1) < 0.001);
  await expect(page.getByRole("button", { name: "Undo", exact: true })).toBeDisabled();
});
