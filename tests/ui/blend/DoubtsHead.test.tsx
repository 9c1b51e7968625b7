/** What is doubted of the tape is said in the same sentence wherever sizes are read off it, until it is answered. */
import { cleanup, render, screen, within } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { planReport } from "../../../src/cli/report";
import { checklistText } from "../../../src/cli/text";
import type { Work } from "../../../src/core/decisions/work";
import { measuresOf, tapesOf } from "../../../src/core/measures/tape";
import type { MeasureName } from "../../../src/core/measures/measure";
import { PrintedChecklist } from "../../../src/print/PrintedChecklist";
import { undo } from "../../../src/store/workStore";
import { BlendStep } from "../../../src/ui/blend/BlendStep";
import { sampleWork } from "../../support/sampleWork";
import { planOf } from "../../support/works";
import { renderWork } from "../renderWork";
import { showTape } from "../tape/showTape";

afterEach(cleanup);

const reading = (values: Readonly<Partial<Record<MeasureName, number>>>): Work["tapes"] =>
  tapesOf({ ...measuresOf(sampleWork.tapes), ...values });

/** The sample has a bust of 930 over an upper chest of 860: here each is written down for the other. */
const SWAPPED = reading({ bustGirth: 860, upperChestGirth: 930 });
/** Half the under-bust of 790. */
const HALF = reading({ underBustGirth: 395 });
/** 100 mm more than the bust is; nothing but another reading is asked for. */
const TOO_MUCH = reading({ bustGirth: 1030 });

const head = (): HTMLElement => screen.getByRole("region", { name: "First, the tape" });
const plain = (text: string | null): string => (text ?? "").replaceAll(/\s+/g, " ");

describe("the head of Blend", () => {
  it("is not there where nothing is doubted", async () => {
    await renderWork(<BlendStep />);
    expect(screen.queryByRole("region", { name: "First, the tape" })).toBeNull();
  });

  it("comes before all picks, asks of a pair once, and can set it right", async () => {
    const { user, work } = await renderWork(<BlendStep />, { tapes: SWAPPED });
    expect(plain(head().textContent)).toContain("Are bust and upper chest in each other’s place?");
    expect(within(head()).getAllByRole("link", { name: "Take it again" })).toHaveLength(1);
    const frame = screen.getByRole("region", { name: "Frame" });
    expect(head().compareDocumentPosition(frame) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
    await user.click(within(head()).getByRole("button", { name: "Swap them" }));
    expect(measuresOf(work().tapes)).toMatchObject({ bustGirth: 930, upperChestGirth: 860 });
    expect(screen.queryByRole("region", { name: "First, the tape" })).toBeNull();
  });

  it("goes when she says it is right: one step, of both, that can be undone", async () => {
    const { user, work, store } = await renderWork(<BlendStep />, { tapes: SWAPPED });
    await user.click(within(head()).getByRole("button", { name: "It is right: bust and upper chest" }));
    expect(work().trusted).toEqual({ bustGirth: 860, upperChestGirth: 930 });
    expect(screen.queryByRole("region", { name: "First, the tape" })).toBeNull();
    undo(store);
    expect(work().trusted).toBeUndefined();
  });

  it("comes back when the reading is another one, still out", async () => {
    await renderWork(<BlendStep />, { tapes: HALF, trusted: { underBustGirth: 396 } });
    expect(plain(head().textContent)).toContain("Measure the under-bust again: 39.5 cm is less");
  });

  it("asks gently where a girth is merely out of keeping, until it is taken again", async () => {
    await renderWork(<BlendStep />, { tapes: TOO_MUCH });
    expect(plain(head().textContent)).toMatch(
      /Take the bust once more: 103\.0 cm is more .*If it reads the same, it stands\./,
    );
    cleanup();
    const [set] = TOO_MUCH;
    await renderWork(<BlendStep />, { tapes: [{ readings: { ...set?.readings, bustGirth: [1030, 1028] } }] });
    expect(screen.queryByRole("region", { name: "First, the tape" })).toBeNull();
  });
});

describe("the same sentence", () => {
  it.each([
    ["swapped", SWAPPED, "Are bust and upper chest in each other’s place?"],
    ["half", HALF, "Measure the under-bust again: 39.5 cm is less than"],
    ["too much", TOO_MUCH, "Take the bust once more: 103.0 cm is more than"],
  ])("%s: on Blend, Tape, the checklist, the printed text and in the plan", async (_, tapes, sentence) => {
    const work: Work = { ...sampleWork, tapes };
    const plan = planOf(work);
    await renderWork(<BlendStep />, { tapes });
    const said = plain(head().querySelector("p")?.textContent ?? null);
    expect(said).toContain(sentence);
    cleanup();
    const { container } = await showTape({ tapes });
    for (const part of said.split(/(?<=[.?]) (?=[A-Z])/u)) expect(plain(container.textContent)).toContain(part);
    cleanup();
    render(<PrintedChecklist work={work} plan={plan} />);
    const sheet = plain(screen.getByRole("article", { name: "Alteration checklist" }).textContent);
    expect(sheet).toContain(said);
    expect(sheet.indexOf(said)).toBeLessThan(sheet.indexOf("How sure"));
    expect(plain(checklistText(work, plan))).toContain(plain(said).slice(0, 40));
    expect(planReport(work, plan).tape_doubts.map((doubt) => plain(doubt.said))).toContain(said);
  });

  it("is nowhere once it is answered", () => {
    const work: Work = { ...sampleWork, tapes: HALF, trusted: { underBustGirth: 395 } };
    const plan = planOf(work);
    expect(checklistText(work, plan)).not.toContain("FIRST, THE TAPE");
    expect(planReport(work, plan).tape_doubts).toEqual([]);
  });
});

describe("Tape", () => {
  it("takes the answer too, and says that it stands", async () => {
    const { user, work } = await showTape({ tapes: HALF });
    await user.click(screen.getByRole("button", { name: "It is right: under-bust" }));
    expect(work().trusted).toEqual({ underBustGirth: 395 });
    expect(screen.getByText(/You said it is right, so it stands/)).toBeTruthy();
    expect(screen.queryByText(/To take again/)).toBeNull();
  });
});
