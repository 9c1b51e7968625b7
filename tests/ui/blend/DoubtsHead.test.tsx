/** What is doubted of the tape is said in the same sentence wherever sizes are read off it, until it is answered. */
import { cleanup, render, screen, within } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { planReport } from "../../../src/cli/report";
import { checklistText } from "../../../src/cli/text";
import { openDoubts } from "../../../src/core/bodies/tapeDoubts";
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

/** Bust and upper chest as two plain readings of hers: the chest 50 mm over the bust, which no pattern is drafted for. */
const CHEST_OVER_BUST = tapesOf({ bustGirth: 830, upperChestGirth: 880, waistGirth: 700, hipGirth: 960 });
/** The waist 120 mm more than the sample's. */
const WAIST_OUT = reading({ waistGirth: 870, underBustGirth: 790, height: 1680 });

const suretyIn = (pick: string): string | null | undefined =>
  screen.getByRole("region", { name: pick }).querySelector(".pick-surety")?.textContent;
const doubtedOf = (work: Work): readonly string[] => openDoubts(work).map(({ measure }) => measure);

describe("while a reading is doubted", () => {
  const everywhere = async (work: Work): Promise<readonly string[]> => {
    const plan = planOf(work);
    render(<PrintedChecklist work={work} plan={plan} />);
    const sheet = plain(screen.getByRole("article", { name: "Alteration checklist" }).textContent);
    cleanup();
    const report = planReport(work, plan);
    expect(report.sure?.next).toBeNull();
    await renderWork(<BlendStep />, work);
    return [
      sheet,
      plain(checklistText(work, plan)),
      report.sure?.said.join(" ") ?? "",
      plain(document.body.textContent),
    ];
  };

  it("no screen, sheet or door says what to measure next, how sure frame, cup and bust are, or to cut it", async () => {
    const work: Work = { ...sampleWork, tapes: CHEST_OVER_BUST };
    expect(doubtedOf(work)).toContain("upperChestGirth");
    for (const text of await everywhere(work)) {
      expect(text).not.toMatch(/Cut it this way|would settle|that settles most|nothing need be measured/);
      expect(text).toMatch(/Size \w+: doubted\.\s?Cup \w+: doubted\./);
      expect(text).not.toMatch(/(?:Size|Cup|adjustment)[^.]*about \d+ of 100/);
    }
    for (const pick of ["Frame", "Cup", "Bust"]) expect(suretyIn(pick)).toBe("doubted");
    expect(suretyIn("Waist")).not.toBe("doubted");
    expect(plain(head().textContent)).toMatch(
      /Frame, cup and bust stand on (?:it|them)\. Settle (?:it|them) before you cut\./,
    );
  });

  it("of the waist alone, only the waist line is doubted", async () => {
    const work: Work = { ...sampleWork, tapes: WAIST_OUT };
    expect(doubtedOf(work)).toEqual(["waistGirth"]);
    for (const text of await everywhere(work)) {
      expect(text).not.toMatch(/Cut it this way|would settle|that settles most|nothing need be measured/);
      expect(text).toContain("Waist line: doubted.");
      expect(text).not.toMatch(/true waist/);
    }
    expect(suretyIn("Waist")).toBe("doubted");
    for (const pick of ["Frame", "Cup", "Bust", "Hip"]) expect(suretyIn(pick)).not.toBe("doubted");
    expect(plain(head().textContent)).toContain("Waist line stands on it. Settle it before you cut.");
  });

  it("answered, it is told again", async () => {
    const work: Work = { ...sampleWork, tapes: WAIST_OUT, trusted: { waistGirth: 870 } };
    expect(planReport(work, planOf(work)).sure?.next).toMatch(/[a-z]/);
    await renderWork(<BlendStep />, work);
    expect(suretyIn("Waist")).not.toBe("doubted");
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
