/** Every step with all of it unfolded, and what comes up over it: by rule, by structure, by the Tab key. */
import { expect, test, type Page } from "@playwright/test";
import { boxAtRest, expectNoAxeViolations, fill, openStep, STEPS, unfold } from "./support";

const SCREENS = [
  { name: "a wide screen", width: 1280, height: 800 },
  { name: "a phone", width: 390, height: 844 },
] as const;

/** What is wrong with the way the page is built, beyond what axe looks for. */
const structureFaults = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const seen = (element: Element): boolean => element.checkVisibility();
    const named = (element: Element): boolean =>
      ["aria-label", "aria-labelledby"].some((name) => (element.getAttribute(name) ?? "") !== "");
    const all = (selector: string): Element[] => [...document.querySelectorAll(selector)].filter(seen);
    const faults: string[] = [];
    let last = 0;
    for (const heading of all("h1, h2, h3, h4, h5, h6")) {
      const level = Number(heading.tagName.slice(1));
      if (level > last + 1) faults.push(`heading ${level} after ${last}: ${heading.textContent}`);
      last = level;
    }
    const ids = [...document.querySelectorAll("[id]")].map(({ id }) => id);
    for (const id of new Set(ids)) if (ids.filter((other) => other === id).length > 1) faults.push(`id twice: ${id}`);
    for (const attribute of ["aria-describedby", "aria-labelledby", "aria-controls", "for"])
      for (const element of document.querySelectorAll(`[${attribute}]`))
        for (const id of (element.getAttribute(attribute) ?? "").split(/\s+/))
          if (
            document.getElementById(id) === null &&
            !(attribute === "aria-controls" && element.ariaExpanded === "false")
          )
            faults.push(`${attribute} of nothing: ${id}`);
    for (const drawing of all("svg, canvas, img"))
      if (
        drawing.closest("[aria-hidden=true]") === null &&
        !named(drawing) &&
        !(drawing.getAttribute("alt") ?? "").trim()
      )
        faults.push(`drawing without a name: ${drawing.outerHTML.slice(0, 80)}`);
    for (const table of all("table"))
      // A printed one stands under its heading, and its first column says it again.
      if (table.closest("article") === null && !named(table) && table.querySelector("caption") === null)
        faults.push(`table without a name: ${table.className} ${table.textContent.slice(0, 40)}`);
    for (const field of all("[aria-invalid=true]"))
      if ((field.getAttribute("aria-describedby") ?? "") === "")
        faults.push(`error beside no field: ${field.outerHTML}`);
    return faults;
  });

for (const { name, ...viewport } of SCREENS) {
  for (const step of STEPS)
    test(`${step} keeps the rules with all of it unfolded, on ${name}`, async ({ page }) => {
      test.slow();
      await page.setViewportSize(viewport);
      await openStep(page, step);
      await expect(page).toHaveTitle(new RegExp(`^${step} · .+ · Bodicewright$`));
      await unfold(page);
      expect(await structureFaults(page)).toEqual([]);
      await expectNoAxeViolations(page);
    });

  test(`so do an entry in error and one that is refused, on ${name}`, async ({ page }) => {
    test.slow();
    await page.setViewportSize(viewport);
    await openStep(page, "Darts");
    await page.getByRole("button", { name: "Front waist dart", exact: true }).click();
    await fill(page, "Shorten by", "some");
    await expect(page.getByLabel("Shorten by")).toHaveAttribute("aria-invalid", "true");
    expect(await structureFaults(page)).toEqual([]);
    await expectNoAxeViolations(page);
    await fill(page, "Shorten by", "900");
    await expect(page.locator(".slip-refusal").first()).toBeAttached();
    expect(await structureFaults(page)).toEqual([]);
    await expectNoAxeViolations(page);
  });

  test(`so do the table’s own menu, the page without its ledger, and the works, on ${name}`, async ({ page }) => {
    test.slow();
    await page.setViewportSize(viewport);
    await openStep(page, "Darts");
    await page.getByTestId("handle-front-waistDart-apex").focus();
    await page.keyboard.press("Shift+F10");
    await expect(page.getByRole("menu")).toBeVisible();
    expect(await structureFaults(page)).toEqual([]);
    await expectNoAxeViolations(page);
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Close the ledger" }).click();
    await expectNoAxeViolations(page);
    await page.getByRole("button", { name: /^Works/ }).click();
    expect(await structureFaults(page)).toEqual([]);
    await expectNoAxeViolations(page);
  });
}

interface Stop {
  readonly what: string;
  /** What of it is not seen; empty where it is wholly. */
  readonly hidden: readonly string[];
}

/**
 * Goes on by one press of Tab, and says what has the focus and whether it is wholly seen: within the window and all that cuts off
 * what reaches out of it, with nothing laid over it. Of the table, and the handles that lie over one another there, some has to be.
 * null: nothing of the page any more.
 */
async function tabOn(page: Page): Promise<Stop | null> {
  await page.keyboard.press("Tab");
  return page.evaluate(() => {
    const on = document.activeElement;
    if (on === null || on === document.body) return null;
    const text = (on.getAttribute("aria-label") ?? on.textContent).trim().slice(0, 50);
    const what = `${on.tagName} ${on.getAttribute("class") ?? ""} ${text}`;
    const box = on.getBoundingClientRect();
    const style = getComputedStyle(on);
    const inner = (side: "Left" | "Right" | "Top" | "Bottom"): number =>
      // A name in a sentence is pressed beyond its letters too, where that of the next line lies over it.
      (Number.parseFloat(style[`padding${side}`]) || 0) + (Number.parseFloat(style[`border${side}Width`]) || 0) + 1;
    const [left, right] = [box.left + inner("Left"), box.right - inner("Right")];
    const [top, bottom] = [box.top + inner("Top"), box.bottom - inner("Bottom")];
    const over = [0, 0.5, 1].flatMap((down) =>
      [0, 0.25, 0.5, 0.75, 1].map((along) => {
        const hit = document.elementFromPoint(left + along * (right - left), top + down * (bottom - top));
        // A box with a label round it, or over it, is seen by what it is drawn as.
        const isSeen = hit !== null && (on.contains(hit) || hit.contains(on) || hit.closest("label")?.control === on);
        return isSeen ? null : `under ${hit?.tagName ?? "nothing"} ${hit?.getAttribute("class") ?? ""}`;
      }),
    );
    const hits = over.filter((one) => one !== null);
    if (!(on instanceof HTMLElement)) return { what, hidden: hits.length < over.length ? [] : [...new Set(hits)] };
    const cut: string[] = [];
    for (let round: Element | null = on.parentElement; round !== null; round = round.parentElement) {
      const isWindow = round === document.documentElement;
      if (!isWindow && (round === document.body || getComputedStyle(round).overflowX === "visible")) continue;
      const room = isWindow ? new DOMRect(0, 0, innerWidth, innerHeight) : round.getBoundingClientRect();
      const isIn =
        box.left > room.left - 1 &&
        box.right < room.right + 1 &&
        box.top > room.top - 1 &&
        box.bottom < room.bottom + 1;
      if (!isIn) cut.push(`cut off by ${round.tagName} ${round.className}`);
    }
    return { what, hidden: [...new Set([...cut, ...hits])] };
  });
}

/** A screen of 1280 × 1024, read at so much. */
const ZOOMED = [
  { name: "a screen seen at 200 %", width: 640, height: 512 },
  { name: "a screen seen at 400 %", width: 320, height: 256 },
] as const;

for (const { name, ...viewport } of [...SCREENS, ...ZOOMED])
  for (const step of ["Darts", "Tape"] as const)
    test(`the Tab key goes once through all of ${step} and what has the focus is wholly seen, on ${name}`, async ({
      page,
    }) => {
      test.slow();
      await page.setViewportSize(viewport);
      await openStep(page, step);
      const stops: Stop[] = [];
      for (let press = 0; press < 400; press += 1) {
        const stop = await tabOn(page);
        if (stop === null) break;
        stops.push(stop);
      }
      expect(stops.length).toBeGreaterThan(30);
      expect(stops.length).toBeLessThan(400);
      expect(stops.filter(({ hidden }) => hidden.length > 0)).toEqual([]);
      expect(stops[0]?.what).toContain("Skip to the work");
    });

test("the skip link leads to the work, and the focus is never lost", async ({ page }) => {
  await openStep(page, "Darts");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await expect(page.locator("#step")).toBeFocused();
  await page.getByRole("button", { name: "Front waist dart", exact: true }).click();
  await fill(page, "Shorten by", "8");
  const out = page.getByRole("button", { name: /^Take out: Shorten the waist dart/ });
  await out.focus();
  await page.keyboard.press("Enter");
  await expect(out).toHaveCount(0);
  expect(await page.evaluate(() => document.activeElement?.closest(".ledger-place, #step") !== null)).toBe(true);
  const works = page.getByRole("button", { name: /^Works/ });
  await works.focus();
  await page.keyboard.press("Enter");
  await page.keyboard.press("Escape");
  await expect(works).toBeFocused();
});

/** What assistive technology is given of the table. */
async function treeOf(page: Page, selector: string) {
  const session = await page.context().newCDPSession(page);
  const { root } = await session.send("DOM.getDocument");
  const { nodeId } = await session.send("DOM.querySelector", { nodeId: root.nodeId, selector });
  const { node } = await session.send("DOM.describeNode", { nodeId });
  const { nodes } = await session.send("Accessibility.getFullAXTree");
  const byId = new Map(nodes.map((one) => [one.nodeId, one]));
  const start = nodes.find(({ backendDOMNodeId }) => backendDOMNodeId === node.backendNodeId);
  const found: { role: string; name: string; focusable: boolean }[] = [];
  const walk = (id: string): void => {
    const one = byId.get(id);
    if (one === undefined) return;
    const text = (value: { value?: unknown } | undefined): string =>
      typeof value?.value === "string" ? value.value : "";
    if (!one.ignored)
      found.push({
        role: text(one.role),
        name: text(one.name),
        focusable: one.properties?.some((property) => property.name === "focusable") ?? false,
      });
    for (const child of one.childIds ?? []) walk(child);
  };
  if (start !== undefined) walk(start.nodeId);
  return found;
}

test("of the table all is named that can be reached, each by its own name, with its amounts", async ({ page }) => {
  await openStep(page, "Darts");
  await page.getByRole("button", { name: "Front side dart", exact: true }).click();
  await boxAtRest(page.getByTestId("handle-front-sideDart-inner"));
  const tree = await treeOf(page, ".table");
  const reached = tree.filter(({ focusable }) => focusable);
  expect(reached.length).toBeGreaterThan(12);
  expect(reached.filter(({ name }) => name === "")).toEqual([]);
  const names = reached.map(({ name }) => name);
  expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  const handles = tree.filter(({ role }) => role === "slider");
  expect(handles).toHaveLength(7);
  const values = await page
    .locator(".handle")
    .evaluateAll((all) => all.map((one) => one.getAttribute("aria-valuetext")));
  for (const value of values) expect(value).toMatch(/Mouth \d+ mm, angle [\d.]+°, fullness \d+ mm$/);
  const groups = tree.filter(({ role, name }) => role === "group" && name.includes("frame size"));
  expect(groups.map(({ name }) => name.split(",")[0])).toEqual(["Front", "Front basque", "Back", "Back basque"]);
  expect(
    tree.filter(({ role, name }) => ["image", "graphics-document", "graphics-symbol"].includes(role) && name === ""),
  ).toEqual([]);
});
