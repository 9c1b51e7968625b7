/** The step Trial: a toile is begun, its record typed as it was filled in by hand, read, answered and closed. */
import { act, fireEvent, render, screen, within } from "@testing-library/react";
import { describe, expect, it, vi } from "vitest";
import type { Observation, Trial } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { planOf } from "../../../src/core/plan/planOf";
import { decidedIn } from "../../../src/core/plan/trialCommands";
import { TrialRecord } from "../../../src/print/TrialRecord";
import { run, undo } from "../../../src/store/workStore";
import { TrialStep } from "../../../src/ui/trial/TrialStep";
import { testWork } from "../../support/works";
import { renderWork } from "../renderWork";

// They come out of a store of their own, later than what is looked at here.
vi.mock("../../../src/ui/trial/TrialPhotos", () => ({ TrialPhotos: () => null }));

const trialOf = (observations: readonly Observation[], part: Partial<Trial> = {}): Trial => ({
  id: "first",
  day: "2026-03-01",
  sewn: decidedIn(testWork),
  observations,
  ...part,
});
const withTrial = (observations: readonly Observation[], part: Partial<Trial> = {}): Partial<Work> => ({
  ...testWork,
  trials: [trialOf(observations, part)],
});

/** A fold across the back above the waist, 6 mm deep, and a hem that drops behind: a sway back. */
const SWAY: readonly Observation[] = [
  { id: "fold", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 6 },
  { id: "hem", place: "backHem", sign: "drops" },
];
/** Both front armholes gape. */
const GAPE: readonly Observation[] = [{ id: "gape", place: "frontArmhole", sign: "gapes", way: "pinched", amount: 5 }];

const box = (name: string | RegExp): HTMLInputElement => screen.getByRole<HTMLInputElement>("textbox", { name });
const place = (line: number): HTMLInputElement =>
  screen.getByRole<HTMLInputElement>("combobox", { name: `Line ${line}: Place` });
const choice = (name: string): HTMLSelectElement => screen.getByRole<HTMLSelectElement>("combobox", { name });
const answers = (): HTMLElement => screen.getByRole("region", { name: "What it comes to" });

describe("beginning a trial", () => {
  it("keeps what is decided now with it, and is one step of undo", async () => {
    const { user, work, store } = await renderWork(<TrialStep />, testWork);
    const before = work();
    await user.click(screen.getByRole("button", { name: "I have sewn this" }));
    const [trial, ...more] = work().trials ?? [];
    expect(more).toEqual([]);
    expect(trial?.sewn).toEqual(decidedIn(before));
    expect(trial?.day).toMatch(/^\d{4}-\d\d-\d\d$/u);
    expect(screen.getByRole("heading", { name: "Trial 1" })).toBeDefined();
    act(() => undo(store));
    expect(work().trials).toBeUndefined();
    expect(screen.getByRole("button", { name: "I have sewn this" })).toBeDefined();
  });

  it("shows the newest open one first, and an older one when it is asked for", async () => {
    const trials = [
      trialOf([], { id: "third", cloth: "calico", verdict: "again" }),
      trialOf([], { id: "second", cloth: "muslin" }),
      trialOf([], { id: "first", cloth: "an old sheet", verdict: "again" }),
    ];
    const { user } = await renderWork(<TrialStep />, { ...testWork, trials });
    expect(box("Cloth").value).toBe("muslin");
    const tags = within(screen.getByRole("list", { name: /^Trials/u })).getAllByRole("button");
    expect(tags.map((tag) => tag.textContent)).toEqual([
      "Trial 1 1 March 2026, try again",
      "Trial 2 1 March 2026, open",
      "Trial 3 1 March 2026, try again",
    ]);
    await user.click(screen.getByRole("button", { name: /^Trial 1/u }));
    expect(box("Cloth").value).toBe("an old sheet");
  });
});

describe("of two trials that are open", () => {
  it("the one that is judged stays where it is, and the other is not judged by a second press", async () => {
    const trials = [
      trialOf([], { id: "second", cloth: "muslin" }),
      trialOf([], { id: "first", cloth: "an old sheet" }),
    ];
    const { user, work } = await renderWork(<TrialStep />, { ...testWork, trials });
    const again = screen.getByRole("button", { name: "Try again" });
    await user.click(again);
    expect(box("Cloth").value).toBe("muslin");
    expect(again.isConnected).toBe(true);
    await user.click(again);
    expect(work().trials?.map(({ id, verdict }) => [id, verdict])).toEqual([
      ["second", "again"],
      ["first", undefined],
    ]);
  });
});

describe("a trial that is removed", () => {
  it("is looked at again when it is brought back", async () => {
    const trials = [
      trialOf([], { id: "second", cloth: "muslin" }),
      trialOf([], { id: "first", cloth: "an old sheet" }),
    ];
    const { store } = await renderWork(<TrialStep />, { ...testWork, trials });
    expect(box("Cloth").value).toBe("muslin");
    act(() => run(store, { kind: "removeTrial", trial: "second" }));
    expect(box("Cloth").value).toBe("an old sheet");
    act(() => undo(store));
    expect(box("Cloth").value).toBe("muslin");
  });
});

describe("the record typed from its sheet", () => {
  it("has the fields of the printed one in the same order", async () => {
    const { container, unmount } = await renderWork(<TrialStep />, withTrial([]));
    // Of the screen: what is written or ticked, as it stands on the page.
    const words = (element: Element | null | undefined): string => (element?.textContent ?? "").trim();
    const asked = [
      ...container.querySelectorAll<HTMLElement>(
        ".trial-one label, .bust-mark > .aside, .bust-mark label, .toile-lengths label, .trial-check legend, .record-line .field-label, .trial-verdict .button, .trial-because label",
      ),
    ].map((element) => words(element).replace(/^(?:Bust point, \w+|Line 1): /u, ""));
    unmount();
    const plan = planOf(testWork);
    if (!plan.ok) throw new Error(plan.failure.code);
    const { container: sheet } = render(<TrialRecord work={testWork} plan={plan.value} />);
    const printed = [
      ...sheet.querySelectorAll(
        ".pc-blank > span, .tr-points p > b, .tr-blank, .tr-lengths p > span:first-child, .tr-balance li > span, .tr-seen thead th, .tr-tick",
      ),
    ].map((element) =>
      words(element)
        .replaceAll("\u00A0", " ")
        .replace(/,? *mm$/u, ""),
    );
    const onlyOnPaper = new Set(["Trial no.", "Line"]);
    expect(asked.map((word) => word.toLowerCase())).toEqual(
      printed.filter((word) => !onlyOnPaper.has(word)).map((word) => word.toLowerCase()),
    );
    expect(asked).toHaveLength(5 + 6 + 6 + 8 + 6 + 3);
  });

  it("goes from field to field by Tab alone, line after line", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([]));
    place(1).focus();
    await user.keyboard("21");
    await user.tab();
    expect(document.activeElement).toBe(choice("Line 1: What is seen"));
    await user.selectOptions(choice("Line 1: What is seen"), "fold across");
    await user.tab();
    expect(document.activeElement).toBe(choice("Line 1: How told"));
    await user.tab();
    expect(document.activeElement).toBe(box("Line 1: How much"));
    await user.keyboard("6");
    await user.tab();
    expect(document.activeElement).toBe(choice("Line 1: Half"));
    await user.selectOptions(choice("Line 1: Half"), "left");
    await user.tab();
    expect(document.activeElement).toBe(box("Line 1: What I changed"));
    await user.keyboard("pinned at the back");
    await user.tab();
    await user.tab();
    expect(document.activeElement).toBe(place(2));
    await user.keyboard("24");
    await user.tab();
    const [first, second] = work().trials?.[0]?.observations ?? [];
    expect(first).toMatchObject({
      place: "backAboveWaist",
      sign: "foldAcross",
      way: "pinched",
      amount: 6,
      half: "left",
      changed: "pinned at the back",
    });
    expect(second).toMatchObject({ place: "backHem" });
    expect(screen.getByText("2 × 6 mm = 12 mm of cloth")).toBeDefined();
    expect(place(3).value).toBe("");
  });

  it("takes a place by its name too, and says where there is none of that number", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([]));
    await user.type(place(1), "back hem{Enter}");
    expect(work().trials?.[0]?.observations[0]?.place).toBe("backHem");
    await user.tab();
    expect(place(1).value).toBe("24");
    await user.clear(place(1));
    await user.type(place(1), "40");
    await user.tab();
    expect(screen.getByText("No place of this toile has that number.")).toBeDefined();
    expect(place(1).getAttribute("aria-invalid")).toBe("true");
    // It stands in the work as it was typed.
    expect(Object.values(work().unread)).toEqual(["40"]);
  });

  it("offers only signs that make sense there, and ways that fit the sign", async () => {
    await renderWork(<TrialStep />, withTrial([{ id: "a", place: "strap", sign: "slips" }]));
    const options = (name: string) => [...choice(name).options].map(({ text }) => text);
    expect(options("Line 1: What is seen")).not.toContain("leans forward");
    expect(options("Line 1: What is seen")).toContain("cuts in");
    expect(options("Line 1: How told")).toEqual(["off by", "cannot say"]);
    expect(screen.getByText("A usual first try is taken.")).toBeDefined();
  });

  it("asks of a mark how far out and how far down, in and up being less than nothing", async () => {
    const { user, work } = await renderWork(
      <TrialStep />,
      withTrial([{ id: "a", place: "dartEnd", sign: "dartEnds", dart: { piece: "front", dart: "waistDart" } }]),
    );
    expect(screen.queryByRole("textbox", { name: "Line 1: How much" })).toBeNull();
    await user.type(box("Line 1: Out"), "−4");
    await user.type(box("Line 1: Down"), "8");
    await user.tab();
    expect(work().trials?.[0]?.observations[0]?.mark).toEqual({ out: -4, down: 8 });
  });

  it("marks both bust points above the lines, each half by itself, and takes a mark away again", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial(GAPE));
    await user.type(box("Bust point, left: Out"), "5");
    await user.type(box("Bust point, right: Down"), "0");
    await user.tab();
    const marks = (work().trials?.[0]?.observations ?? []).filter(({ sign }) => sign === "bustPoint");
    expect(marks.map(({ half, mark }) => [half, mark])).toEqual([
      ["left", { out: 5, down: 0 }],
      ["right", { out: 0, down: 0 }],
    ]);
    // They take no number of the lines.
    expect(place(1).value).toBe("5");
    expect(place(2).value).toBe("");
    await user.clear(box("Bust point, left: Out"));
    await user.tab();
    expect((work().trials?.[0]?.observations ?? []).map(({ half }) => half)).toEqual([undefined, "right"]);
  });

  it("holds lengths as sewn against the plan's, and names what is off before anything is altered", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([]));
    const plan = planOf(testWork);
    const waist = plan.ok ? (plan.value.levels.find(({ level }) => level === "waist")?.finished ?? 0) : 0;
    expect(screen.getByText(`plan ${(waist / 10).toFixed(1)} cm`)).toBeDefined();
    await user.type(box("Waist"), ((waist - 20) / 10).toFixed(1));
    await user.tab();
    expect(Math.abs((work().trials?.[0]?.measured?.waistGirth ?? 0) - (waist - 20))).toBeLessThan(0.6);
    expect(screen.getByText("20 mm shorter than planned")).toBeDefined();
    expect(within(answers()).getByText(/^Waist: sewn 20 mm too short\./u)).toBeDefined();
  });

  it("ticks how it hangs: yes, no or not looked at", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([]));
    const hem = screen.getByRole("group", { name: "Hem level all round" });
    await user.click(within(hem).getByRole("radio", { name: "no" }));
    expect(work().trials?.[0]?.checks).toEqual({ hemLevel: false });
    await user.click(within(hem).getByRole("radio", { name: /not looked at/u }));
    expect(work().trials?.[0]?.checks).toBeUndefined();
  });

  it("says of a no that what is seen there is written as a line, and of none but a no", async () => {
    const { user } = await renderWork(<TrialStep />, withTrial([]));
    const sit = within(screen.getByRole("group", { name: "Can sit" }));
    await user.click(sit.getByRole("radio", { name: "yes" }));
    expect(screen.queryByText(/^Where it is no/)).toBeNull();
    await user.click(sit.getByRole("radio", { name: "no" }));
    expect(screen.getByText(/^Where it is no/).textContent).toContain("as a line below");
  });

  it("takes what could not be read along when a line above goes", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([...SWAY]));
    await user.clear(box("Line 2: How much"));
    await user.type(box("Line 2: How much"), "much");
    await user.tab();
    expect(box("Line 2: How much").getAttribute("aria-invalid")).toBe("true");
    await user.click(screen.getByRole("button", { name: "Remove line 1" }));
    expect(work().trials?.[0]?.observations.map(({ id }) => id)).toEqual(["hem"]);
    expect(box("Line 1: How much").value).toBe("much");
    expect(box("Line 2: How much").value).toBe("");
  });
});

describe("tapping on the toile", () => {
  it("begins a line of that place and half, and goes on with what is seen", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([]));
    await user.click(screen.getByRole("button", { name: "5, front armhole, your left half" }));
    expect(work().trials?.[0]?.observations).toMatchObject([{ place: "frontArmhole", half: "left" }]);
    expect(document.activeElement).toBe(choice("Line 1: What is seen"));
    await user.click(screen.getByRole("radio", { name: "Back" }));
    await user.click(screen.getByRole("button", { name: "26, closure at the waist" }));
    expect(work().trials?.[0]?.observations[1]).not.toHaveProperty("half");
  });

  it("says of a dart's end which dart it is", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([]));
    await user.click(screen.getByRole("button", { name: /^8, dart’s end of the front side dart, your right half/u }));
    expect(work().trials?.[0]?.observations).toMatchObject([
      { place: "dartEnd", half: "right", dart: { piece: "front", dart: "sideDart" } },
    ]);
  });

  it("aims drag lines by a second tap, and leaves off", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([]));
    await user.click(screen.getByRole("button", { name: "1, neck point, your right half" }));
    await user.selectOptions(choice("Line 1: What is seen"), "drag lines");
    expect(screen.getByText(/^Line 1: tap where the drag lines point\./u)).toBeDefined();
    await user.click(screen.getByRole("button", { name: "5, front armhole, your right half" }));
    expect(work().trials?.[0]?.observations).toMatchObject([
      { place: "neckPoint", sign: "dragLines", towards: "frontArmhole", half: "right" },
    ]);
    expect(screen.queryByText(/tap where the drag lines point/u)).toBeNull();
    await user.click(screen.getByRole("button", { name: "6, upper chest, your right half" }));
    expect(work().trials?.[0]?.observations).toHaveLength(2);
  });

  it("is one stop of Tab, its numbers reached by arrow keys and pressed by Enter", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([]));
    const numbers = [...document.querySelectorAll<SVGGElement>(".toile-number")];
    expect(numbers.filter((one) => one.tabIndex === 0)).toHaveLength(1);
    act(() => numbers[0]?.focus());
    await user.keyboard("{ArrowRight}{ArrowRight}{ArrowLeft}{Enter}");
    const said = numbers[1]?.getAttribute("aria-label");
    expect(said).toMatch(/^2, /u);
    expect(work().trials?.[0]?.observations).toMatchObject([{ place: "frontNeck" }]);
  });

  it("draws what was seen where it was seen", async () => {
    await renderWork(<TrialStep />, withTrial(GAPE));
    expect(document.querySelectorAll(".toile-sign")).toHaveLength(2);
    fireEvent.click(screen.getByRole("radio", { name: "Back" }));
    expect(document.querySelectorAll(".toile-sign")).toHaveLength(0);
  });
});

describe("answers", () => {
  it("tells the first in full: what is amiss, what is altered, what it explains and leaves", async () => {
    await renderWork(<TrialStep />, withTrial([...SWAY, { id: "odd", place: "chest", sign: "flat" }]));
    const [first] = within(answers()).getAllByRole("group");
    const text = first?.textContent ?? "";
    // A fold 6 mm deep holds 12 mm of cloth.
    expect(text).toContain("The back is 12 mm too long at its centre");
    expect(text).toContain("Take 12 mm out across the back waist");
    expect(text).toContain("Explains lines 1 and 2. It leaves line 3.");
    expect(within(answers()).getByText(/^Line 3: not explained\./u)).toBeDefined();
  });

  it("is taken for both halves as one step, shown as taken, and taken back by undo", async () => {
    const { user, work, store } = await renderWork(<TrialStep />, withTrial(SWAY));
    const before = work();
    await user.click(screen.getByRole("button", { name: "Take it: Sway back" }));
    expect(work().alterations).toMatchObject([{ kind: "fit", fit: "swayBack", amount: 12 }]);
    expect(work().trials?.[0]?.taken).toMatchObject([{ causes: ["swayBack"], because: ["fold", "hem"] }]);
    expect(screen.queryByRole("button", { name: "Take it: Sway back" })).toBeNull();
    expect(within(answers()).getByText("Taken.")).toBeDefined();
    // What lies on the centre back is of both halves.
    expect(screen.queryByRole("button", { name: "Try it on the left: Sway back" })).toBeNull();
    act(() => undo(store));
    expect(work()).toEqual(before);
  });

  it("is tried on one half alone, and on the other after it", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial(GAPE));
    await user.click(screen.getByRole("button", { name: /^Try it on the left: / }));
    expect(work().alterations).toMatchObject([{ kind: "fit", fit: "armholeGape", amount: 10, half: "left" }]);
    expect(within(answers()).getByText("Tried on the left.")).toBeDefined();
    await user.click(screen.getByRole("button", { name: /^Try it on the right: / }));
    expect(within(answers()).getByText("Tried on the left and right.")).toBeDefined();
  });

  it("says that nothing was read, and that nothing is made of what no row explains", async () => {
    const { user } = await renderWork(<TrialStep />, withTrial([]));
    expect(within(answers()).getByText(/^Write a line with a place/u)).toBeDefined();
    await user.type(place(1), "14");
    await user.tab();
    await user.selectOptions(choice("Line 1: What is seen"), "gapes");
    expect(within(answers()).getByText(/Nothing is altered for it\.$/u)).toBeDefined();
  });
});

describe("the verdict", () => {
  it("closes the trial with its reason, and is taken back by opening it again", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial(SWAY));
    await user.type(box("Because"), "the back still folds");
    await user.click(screen.getByRole("button", { name: "Try again" }));
    expect(work().trials?.[0]).toMatchObject({ verdict: "again", because: "the back still folds" });
    expect(screen.queryByRole("button", { name: "Keep it as your base" })).toBeNull();
    await user.click(screen.getByRole("button", { name: "Open it again" }));
    expect(work().trials?.[0]).not.toHaveProperty("verdict");
  });

  it("makes what is kept her base, and no base again", async () => {
    const { user, work } = await renderWork(<TrialStep />, withTrial([]));
    await user.click(screen.getByRole("button", { name: "Keep" }));
    await user.click(screen.getByRole("button", { name: "Keep it as your base" }));
    expect(work().trials?.[0]).toMatchObject({ verdict: "keep", base: true });
    await user.click(screen.getByRole("button", { name: "It is no base" }));
    expect(work().trials?.[0]).not.toHaveProperty("base");
  });

  it("is gone with its trial, which undo brings back", async () => {
    const { user, work, store } = await renderWork(<TrialStep />, withTrial(SWAY));
    await user.click(screen.getByRole("button", { name: "Remove trial 1" }));
    expect(work().trials).toBeUndefined();
    act(() => undo(store));
    expect(work().trials?.[0]?.observations).toHaveLength(2);
  });
});
