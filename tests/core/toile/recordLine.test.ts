import { describe, expect, it } from "vitest";
import { TRIAL_SIGNS, type Observation } from "../../../src/core/decisions/trial";
import {
  isBustMark,
  lineMarked,
  lineOfAmount,
  lineOfSign,
  lineOnHalf,
  linePlaced,
  lineTold,
  numberedLines,
  signsFor,
} from "../../../src/core/toile/recordLine";

const line: Observation = { id: "a" };
const fold: Observation = { id: "a", place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 6 };

describe("a line of the record", () => {
  it("takes an amount in the usual way of its sign, and keeps the way that was said", () => {
    expect(lineOfAmount({ id: "a", place: "bust", sign: "tight" }, 8)).toMatchObject({ way: "letOut", amount: 8 });
    expect(lineOfAmount({ id: "a", place: "bust", sign: "dragLines", way: "pinched" }, 8).way).toBe("pinched");
    expect(lineOfAmount(line, 8)).toEqual({ id: "a", amount: 8 });
  });

  it("keeps no amount where she cannot say", () => {
    expect(lineTold(fold, null)).toEqual({ id: "a", place: "backAboveWaist", sign: "foldAcross" });
    expect(lineOfAmount(fold, null)).toEqual({ id: "a", place: "backAboveWaist", sign: "foldAcross", way: "pinched" });
  });

  it("drops what another sign is not told by", () => {
    expect(lineOfSign(fold, "drops")).toEqual({ ...fold, sign: "drops", way: "off" });
    expect(lineOfSign(fold, "dartEnds")).toEqual({ id: "a", place: "backAboveWaist", sign: "dartEnds" });
    const drag: Observation = { id: "a", place: "bust", sign: "dragLines", towards: "frontArmhole" };
    expect(lineOfSign(drag, "tight")).toEqual({ id: "a", place: "bust", sign: "tight" });
    expect(lineOfSign(drag, null)).toEqual({ id: "a", place: "bust" });
  });

  it("is of a dart only at a dart's end", () => {
    const dart = { piece: "front", dart: "waistDart" } as const;
    const ended = linePlaced(line, "dartEnd", dart);
    expect(ended).toEqual({ id: "a", place: "dartEnd", dart });
    expect(linePlaced(ended, "dartEnd")).toEqual(ended);
    expect(linePlaced(ended, "bust")).toEqual({ id: "a", place: "bust" });
    expect(linePlaced(ended, null)).toEqual(line);
  });

  it("marks one direction at a time, and is none where both are gone", () => {
    const out = lineMarked(line, "out", 4);
    expect(out.mark).toEqual({ out: 4, down: 0 });
    expect(lineMarked(out, "down", 6).mark).toEqual({ out: 4, down: 6 });
    expect(lineMarked(out, "out", null)).toEqual(line);
  });

  it("offers the signs of its place, and the one that stands there", () => {
    expect(signsFor({ id: "a", place: "strap" }, TRIAL_SIGNS)).not.toContain("leansForward");
    expect(signsFor({ id: "a", place: "strap", sign: "leansForward" }, TRIAL_SIGNS)).toContain("leansForward");
    expect(signsFor(line, TRIAL_SIGNS)).toEqual(TRIAL_SIGNS);
    // Bust points are asked for above the lines.
    expect(signsFor({ id: "a", place: "bust" }, TRIAL_SIGNS)).not.toContain("bustPoint");
  });

  it("has no number where it marks the bust point of one half", () => {
    const mark: Observation = { id: "m", place: "bust", sign: "bustPoint", mark: { out: 5, down: 0 } };
    expect(isBustMark(mark)).toBe(false);
    const left = lineOnHalf(mark, "left");
    expect(isBustMark(left)).toBe(true);
    expect(numberedLines([left, fold, mark])).toEqual([fold, mark]);
  });
});
