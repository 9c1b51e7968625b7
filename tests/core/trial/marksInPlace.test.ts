/** A mark that lies where it was sewn or drawn asks for nothing: both bust points are marked on every toile. */
import { describe, expect, it } from "vitest";
import type { Observation } from "../../../src/core/decisions/trial";
import type { Work } from "../../../src/core/decisions/work";
import { decidedIn } from "../../../src/core/plan/trialCommands";
import { invariant } from "../../../src/core/result";
import { readTrial } from "../../../src/core/trial/readTrial";
import { sampleWork } from "../../support/sampleWork";

const bare: Work = { ...sampleWork, alterations: [] };

function readingOf(observations: readonly Observation[]) {
  const read = readTrial({ id: "one", sewn: decidedIn(bare), observations });
  return invariant(read.ok ? read.value : null, "reading");
}

const SWAY: readonly Observation[] = [
  { id: "fold", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 6 },
  { id: "hem", place: "backHem", sign: "drops" },
];
const bustMarks = (out: number, down: number): readonly Observation[] =>
  (["left", "right"] as const).map((half) => ({
    id: half,
    place: "bust",
    sign: "bustPoint",
    half,
    mark: { out, down },
  }));

describe("a mark that lies where it was drawn", () => {
  it.each([
    [0, 0],
    [1, -2],
  ])("%d out and %d down, changes no answer", (out, down) => {
    expect(readingOf([...bustMarks(out, down), ...SWAY])).toEqual(readingOf(SWAY));
  });

  it("makes no answer by itself, and nothing that is not explained", () => {
    expect(readingOf(bustMarks(0, 0))).toMatchObject({ answers: [], unexplained: [] });
  });

  it("but one 20 mm lower does", () => {
    expect(readingOf(bustMarks(0, 20)).answers[0]?.causes.map(({ rule }) => rule)).toEqual(["bustPointElsewhere"]);
  });
});
