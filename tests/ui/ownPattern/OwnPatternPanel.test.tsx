/** From an opened file to a plan on its pieces: what is found, what is asked for, and what she says of it. */
import { act, fireEvent, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { Pattern } from "../../../src/core/decisions/pattern";
import type { OwnPattern } from "../../../src/core/decisions/ownPattern";
import { invariant } from "../../../src/core/result";
import { undo } from "../../../src/store/workStore";
import { OwnPatternPanel } from "../../../src/ui/ownPattern/OwnPatternPanel";
import { renderWork, type Rendered } from "../renderWork";
import { thornfield, workWith } from "./ownFile";

const withoutUnit = (svg: string): string => svg.replace(' width="700mm" height="640mm"', "");
const withoutSquare = (svg: string): string => svg.replace(/<rect id="test-square".*\/>/, "");

interface Shown extends Rendered {
  readonly own: () => OwnPattern;
}

async function shown(
  change?: (svg: string) => string,
  pattern: (pattern: Pattern) => Pattern = (same) => same,
): Promise<Shown> {
  const work = workWith(thornfield(change));
  const page = await renderWork(<OwnPatternPanel />, {
    ...work,
    pattern: pattern(invariant(work.pattern, "a pattern")),
  });
  return { ...page, own: () => invariant(page.work().pattern.own, "a file") };
}

const section = (name: string): HTMLElement => screen.getByRole("group", { name });
async function open(page: Shown, name: string): Promise<HTMLElement> {
  const part = section(name);
  if (!part.hasAttribute("open")) await page.user.click(within(part).getByText(name));
  return part;
}
const closer = async (page: Shown, piece: RegExp): Promise<void> => {
  await open(page, "Pieces");
  await page.user.click(screen.getByRole("button", { name: piece }));
};
const sheet = (): HTMLElement => screen.getByRole("group", { name: /as drawn\. Arrow keys/ });
const asked = (): readonly string[] =>
  [...document.querySelectorAll(".own-missing button")].map((button) => button.textContent ?? "");

describe("a pattern that is found whole", () => {
  it("begins with the answer, and is used at one press; undo and a button take that back", async () => {
    const page = await shown();
    expect(screen.getByText("Your own pieces: front and back, in sizes 10 to 14.")).toBeTruthy();
    expect(screen.getByText("Only one cup was traced, so other cups cannot be compared.")).toBeTruthy();
    expect(asked()).toEqual([]);
    await page.user.click(screen.getByRole("button", { name: "Make the plan on these pieces" }));
    expect(page.own().inUse).toBe(true);
    act(() => undo(page.store));
    expect(page.own().inUse).toBeUndefined();
    await page.user.click(screen.getByRole("button", { name: "Make the plan on these pieces" }));
    await page.user.click(screen.getByRole("button", { name: "Back to our draft of the chart" }));
    expect("inUse" in page.own()).toBe(false);
  });

  // Half widths with darts shut, by hand of size 12: front 248 + back 242 less the dart's share at that height.
  it("tells the ease that it finds, from the pieces", async () => {
    await shown();
    const said = document.querySelector(".own-pieces-said")?.textContent ?? "";
    // Waist of size 12: front 90.5 + (225 − 114.5), back 82.5 + (215 − 106.5), twice, less 700.
    expect(said).toMatch(/Ease found: bust 8[0-9] to 8[0-9] mm and waist 85 mm\./);
  });

  it("is put away and back by undo", async () => {
    const page = await shown();
    await page.user.click(screen.getByRole("button", { name: "Put the file away" }));
    expect(page.work().pattern.own).toBeUndefined();
    act(() => undo(page.store));
    expect(page.own().file).toBe("thornfield.svg");
  });
});

/** Each step by its state, and what stands there. */
const steps = (): readonly (readonly [string, string])[] =>
  [...document.querySelectorAll<HTMLElement>(".own-steps > li")].map((step) => [
    step.dataset.state ?? "",
    step.textContent ?? "",
  ]);

describe("what is still to say", () => {
  const unsaid = ({ own, ...pattern }: Pattern): Pattern => {
    const { cup: _, ...rest } = invariant(own, "a file");
    return { ...pattern, own: rest };
  };

  it("is the cup that is drawn, where the chart has several: asked for, never guessed", async () => {
    const page = await shown(undefined, unsaid);
    expect(screen.queryByRole("button", { name: "Make the plan on these pieces" })).toBeNull();
    expect(steps()).toEqual([
      ["done", "Done: The size chart"],
      ["done", "Done: How large it is: true size, proven by the 10 cm square"],
      ["done", "Done: Sizes: 10, 12 and 14"],
      ["next", "Which cup is drawn?Cup BCup CCup D"],
      ["done", "Done: Pieces: front, back"],
      ["done", "Done: Corners, darts and bust point"],
    ]);
    await page.user.click(screen.getByRole("button", { name: "Cup C" }));
    expect(page.own().cup).toBe("C");
    expect(steps()).toEqual([]);
    // Cup C is drafted for 25 mm more at the bust than the chart's column, so the ease is as much less.
    expect(document.querySelector(".own-pieces-said")?.textContent).toMatch(/bust [56][0-9] to [56][0-9] mm/);
    act(() => undo(page.store));
    expect(page.own().cup).toBeUndefined();
  });

  it("proposes the cup that the file writes", async () => {
    await shown((svg) => svg.replace("</svg>", '<text x="10" y="10">Size 10 to 14, cup C</text></svg>'), unsaid);
    expect(steps()[3]).toEqual(["next", "Which cup is drawn? The file says cup C.Cup CCup BCup D"]);
  });

  it("asks again for a cup that the chart has no more", async () => {
    await shown(undefined, (pattern) => ({ ...pattern, own: { ...invariant(pattern.own, "a file"), cup: "E" } }));
    expect(steps()[3]?.[1]).toContain("Your chart has no cup E any more.");
  });

  it("begins with the chart where there is none; no size is missing from it then", async () => {
    const page = await shown(undefined, (pattern) => ({
      ...pattern,
      chart: { ...pattern.chart, sizes: [], cups: [] },
    }));
    expect(steps()[0]).toEqual(["next", "The pattern’s size chart: type it on Envelope."]);
    expect(screen.getByRole("link", { name: /type it on Envelope/ }).getAttribute("href")).toBe("#envelope");
    expect(
      steps()
        .slice(1)
        .filter(([state]) => state === "next"),
    ).toEqual([]);
    await open(page, "Lines and sizes");
    expect(document.body.textContent).not.toMatch(/size size|not in the chart/i);
  });

  it("is told in order: what is next, and the rest later", async () => {
    await shown((svg) => withoutSquare(withoutUnit(svg)));
    expect(steps().map(([state]) => state)).toEqual(["done", "next", "later", "done", "later", "later"]);
  });

  it("names the basques that a plan to the waist leaves, with the way to take them", async () => {
    const page = await shown((svg) => svg.replaceAll(/Back\b/g, "Back basque"));
    expect(screen.getByText("The file has a back basque; the plan goes to the waist.")).toBeTruthy();
    await page.user.click(screen.getByRole("button", { name: "To the hip" }));
    expect(page.work().pattern.length).toBe("hip");
    expect(screen.queryByText(/the plan goes to the waist/)).toBeNull();
  });
});

describe("how large it is", () => {
  it("is asked for where nothing proves it, by two places and a length", async () => {
    const page = await shown((svg) => withoutSquare(withoutUnit(svg)));
    expect(asked()[0]).toBe("How large it is: give one length that you know.");
    const part = section("How large it is");
    expect(part.hasAttribute("open")).toBe(true);
    await page.user.click(within(part).getByRole("button", { name: "First end: point at it" }));
    expect(screen.getByText("Tap one end of the length that you know.")).toBeTruthy();
    // By keys: the cross begins in the middle.
    act(() => sheet().focus());
    await page.user.keyboard("{Enter}");
    expect(screen.getByText("Tap its other end.")).toBeTruthy();
    await page.user.keyboard("{ArrowRight}{ArrowRight}{ArrowRight}{ArrowRight}{ArrowRight}{Enter}");
    expect(page.own().known).toBeUndefined();
    await page.user.type(within(part).getByRole("textbox", { name: "It measures" }), "10{Enter}");
    const { from, to, length } = invariant(page.own().known, "a length");
    expect(length).toBe(100);
    expect(to.x).toBeGreaterThan(from.x);
    expect(asked()).not.toContain("How large it is: give one length that you know.");
    act(() => undo(page.store));
    expect(page.own().known).toBeUndefined();
  });

  it("is told by what a square of it measures: never guessed", async () => {
    const page = await shown(withoutUnit);
    const part = await open(page, "How large it is");
    const choice = within(part).getByRole<HTMLSelectElement>("combobox", { name: /square.*measures across/ });
    await page.user.selectOptions(choice, "4 in");
    expect(page.own().known?.length).toBeCloseTo(101.6, 9);
    expect(page.own().known?.from.x).toBeCloseTo(40, 6);
    expect(page.own().known?.to.x).toBeCloseTo(140, 6);
    await page.user.selectOptions(choice, "measures …");
    expect(page.own().known).toBeUndefined();
  });

  it("a place is not pointed at after Escape", async () => {
    const page = await shown((svg) => withoutSquare(withoutUnit(svg)));
    const end = screen.getByRole("button", { name: "First end: point at it" });
    await page.user.click(end);
    expect(end.getAttribute("aria-pressed")).toBe("true");
    await page.user.keyboard("{Escape}");
    expect(end.getAttribute("aria-pressed")).toBe("false");
  });
});

describe("which lines are which size", () => {
  it("is proposed by name, and put right in a list", async () => {
    const page = await shown();
    const part = await open(page, "Lines and sizes");
    const kind = within(part).getByRole<HTMLSelectElement>("combobox", { name: /^size-14: / });
    expect(kind.value).toBe("size 14");
    await page.user.selectOptions(kind, "size 16");
    expect(page.own().lines).toEqual({ "size-14": { of: "size", size: "16" } });
    expect(screen.getByText("Your own pieces: front and back, in sizes 10 to 16.")).toBeTruthy();
    await page.user.selectOptions(kind, "not part of it");
    expect(screen.getByText("Your own pieces: front and back, in sizes 10 to 12.")).toBeTruthy();
    act(() => undo(page.store));
    expect(kind.value).toBe("size 16");
  });

  it("can be sorted by another feature; what was said of the kinds before goes", async () => {
    const page = await shown();
    const part = await open(page, "Lines and sizes");
    await page.user.selectOptions(within(part).getByRole("combobox", { name: /^size-14: / }), "size 16");
    await page.user.click(within(part).getByRole("radio", { name: /^colour/ }));
    expect(page.own().sortBy).toBe("colour");
    expect(page.own().lines).toBeUndefined();
    expect(within(part).getByRole("combobox", { name: /^#b23a48: / })).toBeTruthy();
  });

  it("says how far apart ends may lie", async () => {
    const page = await shown();
    const part = await open(page, "Lines and sizes");
    const field = within(part).getByRole<HTMLInputElement>("textbox", { name: "Gaps in a line are closed up to" });
    expect(field.value).toBe("0.5");
    await page.user.clear(field);
    await page.user.type(field, "1.5{Enter}");
    expect(page.own().joinWithin).toBe(1.5);
  });

  it("lights the lines of a kind on the sheet", async () => {
    const page = await shown();
    const part = await open(page, "Lines and sizes");
    await page.user.click(within(part).getByRole("button", { name: "Show: size-12" }));
    expect(document.querySelectorAll(".own-lines path[data-lit]").length).toBe(1);
  });
});

describe("pieces", () => {
  it("are named in a list; what is missing leads there", async () => {
    const page = await shown();
    await open(page, "Pieces");
    await page.user.selectOptions(
      screen.getByRole("combobox", { name: /^Name: \d\. Front/ }),
      "nothing of the pattern",
    );
    expect(asked()).toContain("Which piece is the front.");
    const part = section("Pieces");
    await page.user.click(within(part).getByText("Pieces"));
    expect(part.hasAttribute("open")).toBe(false);
    await page.user.click(screen.getByRole("button", { name: "Which piece is the front." }));
    expect(part.hasAttribute("open")).toBe(true);
    act(() => undo(page.store));
    expect(asked()).toEqual([]);
  });

  it("without a name of ours keep her word for it", async () => {
    const page = await shown();
    await open(page, "Pieces");
    await page.user.selectOptions(screen.getByRole("combobox", { name: /^Name: \d\. Back/ }), "another piece");
    await closer(page, /^Corners and darts: \d\. Other piece 1/);
    await page.user.type(screen.getByRole("textbox", { name: "Your word for it" }), "yoke{Enter}");
    expect(page.own().pieces.map(({ name, label }) => [name, label])).toEqual([["other1", "yoke"]]);
  });

  it("on the cutting line have an allowance, one for all seams or each its own", async () => {
    const page = await shown();
    await closer(page, /^Corners and darts: \d\. Front/);
    await page.user.click(screen.getByRole("radio", { name: "the cutting line" }));
    const field = screen.getByRole("textbox", { name: "Allowance beyond the stitch line" });
    await page.user.clear(field);
    await page.user.type(field, "10{Enter}");
    await page.user.click(screen.getByText("Seam by seam"));
    const neck = screen.getByRole("textbox", { name: "Neck edge" });
    await page.user.clear(neck);
    await page.user.type(neck, "6{Enter}");
    const [front] = page.own().pieces;
    expect(front?.line).toBe("cutting");
    expect(front?.allowances).toMatchObject({ neck: 6, side: 10, waist: 10 });
  });
});

describe("corners, darts and bust point", () => {
  it("are put right with the keys: the chosen corner moves along the outline by a millimetre", async () => {
    const page = await shown();
    await closer(page, /^Corners and darts: \d\. Front/);
    const handle = screen.getByRole("button", { name: /^Neck end of the shoulder\. Arrow keys/ });
    fireEvent.keyDown(handle, { key: "ArrowRight" });
    fireEvent.blur(handle);
    const [said] = page.own().pieces[0]?.corners ?? [];
    // Size 12: from (109.5, 60) along the shoulder, which ends at (233, 102), or the other way along the neck.
    expect([said?.name, said?.size]).toEqual(["sideNeck", "12"]);
    const { x, y } = invariant(said?.at ?? undefined, "a place");
    expect(Math.hypot(x - 109.5, y - 60)).toBeCloseTo(1, 2);
    expect((x - 109.5) / (233 - 109.5)).toBeCloseTo((y - 60) / (102 - 60), 6);
    fireEvent.keyDown(handle, { key: "ArrowLeft", shiftKey: true });
    fireEvent.blur(handle);
    expect(page.own().pieces[0]?.corners?.[0]?.at?.x).toBeLessThan(109.5);
    act(() => undo(page.store));
    expect(page.own().pieces[0]?.corners?.[0]?.at).toEqual({ x, y });
  });

  it("are put right by a tap on the outline, which it need not hit", async () => {
    const page = await shown();
    await closer(page, /^Corners and darts: \d\. Front/);
    await page.user.click(
      within(screen.getByRole("region", { name: "Corners" })).getByRole("button", { name: /^Underarm/ }),
    );
    expect(screen.getByText("Tap the outline: underarm.")).toBeTruthy();
    fireEvent.pointerDown(sheet(), { clientX: 400, clientY: 60, button: 0, isPrimary: true, pointerId: 1 });
    fireEvent.pointerUp(sheet(), { clientX: 401, clientY: 60, button: 0, isPrimary: true, pointerId: 1 });
    const said = page.own().pieces[0]?.corners?.[0];
    expect(said?.name).toBe("underarm");
    // Nearest to a tap above the piece is its shoulder or neck, in the upper part of it.
    expect(said?.at?.y).toBeLessThan(105);
    expect(screen.queryByText("Tap the outline: underarm.")).toBeNull();
  });

  it("is pointed at until it is tapped: pressing its button again does not switch that off", async () => {
    const page = await shown();
    await closer(page, /^Corners and darts: \d\. Front/);
    const button = screen.getByRole("button", { name: "Bust point: Point at it" });
    await page.user.click(button);
    expect(button.textContent).toBe("Tap the sheet");
    await page.user.click(button);
    expect(button.getAttribute("aria-pressed")).toBe("true");
    const corner = within(screen.getByRole("region", { name: "Corners" })).getByRole("button", { name: /^Underarm/ });
    await page.user.click(corner);
    await page.user.click(corner);
    expect(corner.getAttribute("aria-pressed")).toBe("true");
    await page.user.keyboard("{Escape}");
    expect(corner.getAttribute("aria-pressed")).toBe("false");
  });

  it("the usual darts are offered, the others behind a word", async () => {
    const page = await shown();
    await closer(page, /^Corners and darts: \d\. Back/);
    const choice = screen.getByRole("combobox", { name: "Point at a dart" });
    const offered = () =>
      within(choice)
        .getAllByRole("option")
        .map(({ textContent }) => textContent);
    expect(offered()).toEqual(["side dart", "waist dart", "shoulder dart", "French dart", "others …"]);
    await page.user.selectOptions(choice, "others …");
    expect(offered().length).toBe(24);
  });

  it("a drag of the sheet is no tap", async () => {
    const page = await shown();
    await closer(page, /^Corners and darts: \d\. Front/);
    await page.user.click(
      within(screen.getByRole("region", { name: "Corners" })).getByRole("button", { name: /^Underarm/ }),
    );
    fireEvent.pointerDown(sheet(), { clientX: 400, clientY: 60, button: 0, isPrimary: true, pointerId: 1 });
    fireEvent.pointerUp(sheet(), { clientX: 430, clientY: 60, button: 0, isPrimary: true, pointerId: 1 });
    expect(page.own().pieces).toEqual([]);
  });

  it("can be none, and go back to what was found", async () => {
    const page = await shown();
    await closer(page, /^Corners and darts: \d\. Front/);
    const corners = screen.getByRole("region", { name: "Corners" });
    await page.user.click(within(corners).getByRole("button", { name: /^Hollow of the armhole/ }));
    await page.user.click(within(corners).getByRole("button", { name: "There is none" }));
    expect(page.own().pieces[0]?.corners).toEqual([{ name: "armholeTouch", size: "12", at: null }]);
    const darts = screen.getByRole("region", { name: "Darts" });
    await page.user.click(within(darts).getByRole("button", { name: "Waist dart: It is no dart" }));
    expect(page.own().pieces[0]?.notDarts).toEqual(["waistDart"]);
    await page.user.click(within(darts).getByRole("button", { name: "It is a dart after all" }));
    expect(page.own().pieces[0]?.notDarts).toBeUndefined();
  });

  it("a dart is pointed at in three places, the bust point in one", async () => {
    const page = await shown();
    await closer(page, /^Corners and darts: \d\. Back/);
    const darts = screen.getByRole("region", { name: "Darts" });
    await page.user.selectOptions(within(darts).getByRole("combobox", { name: "Point at a dart" }), "shoulder dart");
    await page.user.click(within(darts).getByRole("button", { name: "Point at a dart: shoulder dart" }));
    act(() => sheet().focus());
    await page.user.keyboard("{Enter}{ArrowRight>20/}{Enter}");
    expect(screen.getByText("Shoulder dart: tap where it ends.")).toBeTruthy();
    await page.user.keyboard("{ArrowDown}{Enter}");
    expect(page.own().pieces[0]?.darts?.[0]).toMatchObject({ name: "shoulderDart", size: "12" });
    await closer(page, /^Corners and darts: \d\. Front/);
    await page.user.click(screen.getByRole("button", { name: "Bust point: Point at it" }));
    act(() => sheet().focus());
    await page.user.keyboard("{Enter}");
    expect(page.own().pieces.find(({ bustPoint }) => bustPoint !== undefined)?.bustPoint?.size).toBe("12");
  });
});
