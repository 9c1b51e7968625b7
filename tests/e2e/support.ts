/** What several end-to-end tests do alike. */
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Locator, type Page } from "@playwright/test";

export const STEPS = ["Tape", "Envelope", "Tissue", "Blend", "Darts", "Fit", "Trial", "Dress", "Paper"] as const;
export type StepName = (typeof STEPS)[number];

export async function goTo(page: Page, step: StepName): Promise<void> {
  await page.getByRole("navigation", { name: "Steps of the work" }).getByRole("link", { name: step }).click();
  await expect(page.getByRole("heading", { level: 2, name: step })).toBeVisible();
}

/**
 * The printed lines are left out: hundreds of paths hidden from assistive technology, which only cost time. So does what is
 * found to be right, told node by node; and a second page in which what several frames have is put together: there is one.
 */
export async function expectNoAxeViolations(page: Page): Promise<void> {
  expect(page.frames()).toHaveLength(1);
  const { violations } = await new AxeBuilder({ page })
    .exclude(".printed")
    // A rule that axe leaves out unless it is asked for: targets of 24 pixels (WCAG 2.2 AA). And one that takes the steps
    // scrolled out of their strip for skip links that lead nowhere; ours is held by itself.
    .options({
      resultTypes: ["violations"],
      rules: { "target-size": { enabled: true }, "skip-link": { enabled: false } },
    })
    .setLegacyMode(true)
    .analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).join(", ")}`)).toEqual(
    [],
  );
}

/** Folds within folds are made when the one round them opens. */
export async function unfold(page: Page): Promise<void> {
  const shut = page.locator("details:not([open])");
  await expect
    .poll(
      async () => {
        await page.evaluate(() => {
          for (const one of document.querySelectorAll("details")) one.open = true;
        });
        return shut.count();
      },
      { intervals: [300] },
    )
    .toBe(0);
}

/** The step by its address, with all that is beside it. */
export async function openStep(page: Page, step: StepName): Promise<void> {
  await page.goto(`./#${step.toLowerCase()}`);
  await expect(page.locator(`#step[data-step=${step.toLowerCase()}] h2`).first()).toBeVisible();
  // On a phone on its side it is there and not seen.
  await expect(page.locator("#ledger-place h2")).toBeAttached();
  await expect(page.locator(".part-loading")).toHaveCount(0);
}

/** What of the step is cut off, or makes the page scroll sideways. Boxes that scroll by themselves may. */
export const cutOff = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const found = new Set<string>();
    const wide = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth > wide)
      found.add(`the page is ${document.documentElement.scrollWidth} wide, the screen ${wide}`);
    for (const one of document.querySelectorAll<HTMLElement>("body *")) {
      if (!one.checkVisibility() || one.closest("svg") !== null) continue;
      const { overflowX, overflowY, clipPath } = getComputedStyle(one);
      // Said and not seen.
      if (clipPath === "inset(50%)") continue;
      const isHidden = (way: string): boolean => way === "hidden" || way === "clip";
      const [across, down] = [one.scrollWidth - one.clientWidth, one.scrollHeight - one.clientHeight];
      const words = `${one.tagName} ${one.className} “${one.textContent.trim().slice(0, 30)}”`;
      // A name is as long as she likes; figures are wholly seen.
      const isFigure = one.matches(".field-entry > input");
      if (across > 1 && (isFigure || (isHidden(overflowX) && !one.matches("input"))))
        found.add(`${words} by ${across}`);
      // The sheet is shown in small, and whole once it is asked for.
      if (down > 1 && isHidden(overflowY) && !one.matches("input, .paper-preview"))
        found.add(`${words} down by ${down}`);
    }
    return [...found];
  });

/** What was done a moment ago is saved: the page says so when it is, which on a busy machine takes its time. */
export async function expectSaved(page: Page): Promise<void> {
  await page.waitForTimeout(300);
  await expect(page.getByRole("status").filter({ hasText: "Saved here" })).toBeVisible();
}

export async function fill(page: Page, label: string | RegExp, text: string): Promise<void> {
  const field = page.getByLabel(label);
  await field.fill(text);
  await field.press("Enter");
}

/**
 * Where something stands once it has stopped moving: parts that come later still push it about on a busy machine, and a finger
 * put down where it was meets nothing.
 */
export async function boxAtRest(target: Locator) {
  const read = async () => {
    const box = await target.boundingBox();
    return box === null ? null : { x: box.x, y: box.y, width: box.width, height: box.height };
  };
  let [last, since] = [await read(), 0];
  await expect
    .poll(
      async () => {
        const now = await read();
        since = now !== null && JSON.stringify(now) === JSON.stringify(last) ? since + 1 : 0;
        last = now;
        return since;
      },
      { intervals: [100] },
    )
    .toBeGreaterThanOrEqual(4);
  if (last === null) throw new Error("it is not on the page");
  return last;
}

/** Drags a handle by screen pixels and stops with the button still down. */
export async function dragHandle(page: Page, handle: Locator, dx: number, dy: number): Promise<void> {
  const box = await boxAtRest(handle);
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2, { steps: 4 });
  await page.mouse.move(x + dx, y + dy, { steps: 4 });
}

/** The figures a handle says: mouth in mm, angle in degrees, fullness in mm. */
export async function figuresOf(handle: Locator): Promise<{ mouth: number; angle: number; fullness: number }> {
  const label = (await handle.getAttribute("aria-valuetext")) ?? "";
  const found = /Mouth (\d+) mm, angle ([\d.]+)°, fullness (\d+) mm/.exec(label);
  if (found === null) throw new Error(`no figures in “${label}”`);
  return { mouth: Number(found[1]), angle: Number(found[2]), fullness: Number(found[3]) };
}
