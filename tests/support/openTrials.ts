/** Works whose newest trial is open, invented: together they have all that a record can hold and all that is read of one. */
import type { Observation, Trial } from "../../src/core/decisions/trial";
import type { Work } from "../../src/core/decisions/work";
import { decidedIn } from "../../src/core/plan/trialCommands";
import { sampleWork } from "./sampleWork";

const bare: Work = { ...sampleWork, alterations: [] };

function withRecord(work: Work, observations: readonly Observation[], rest: Partial<Trial> = {}): Work {
  return { ...work, trials: [{ id: "open", day: "2026-11-07", sewn: decidedIn(work), observations, ...rest }] };
}

const seen = (lines: readonly Omit<Observation, "id">[]): readonly Observation[] =>
  lines.map((line, at) => ({ ...line, id: `line-${at + 1}` }));

const waistDart = { piece: "front", dart: "waistDart" } as const;

export const OPEN_TRIALS: readonly Work[] = [
  // A sway back, though the hem is ticked as level; the toile was sewn too narrow; an edge that no row explains.
  withRecord(
    bare,
    seen([
      { place: "backAboveWaist", sign: "foldAcross", way: "pinched", amount: 6, changed: "pinned out" },
      { place: "backWaist", sign: "drops" },
      { place: "frontHem", sign: "gapes" },
      { place: "bust", sign: "bustPoint", mark: { out: 0, down: 0 }, half: "left" },
    ]),
    {
      checks: { hemLevel: true, canSit: false },
      measured: { waistGirth: 700 },
      taken: [{ causes: ["swayBack-left"], half: "left", because: ["line-1"], alterations: [] }],
    },
  ),
  // A shoulder that slopes on the left alone, and a dart past its mark.
  withRecord(
    bare,
    seen([
      { place: "neckPoint", sign: "dragLines", towards: "frontArmhole", half: "left" },
      { place: "frontArmhole", sign: "foldAcross", half: "left" },
      { place: "shoulder", sign: "dragLines", way: "pinched", amount: 6, half: "left" },
      { place: "dartEnd", sign: "dartEnds", dart: waistDart, mark: { out: 0, down: 15 }, half: "right" },
    ]),
  ),
  // A fuller breast on the left, or on the right: another cup there.
  ...(["left", "right"] as const).map((half) =>
    withRecord(
      bare,
      seen([
        { place: "bust", sign: "tight", way: "letOut", amount: 12, half },
        { place: "bust", sign: "dragLines", half },
        { place: "frontWaist", sign: "ridesUp", half },
      ]),
    ),
  ),
  // Tight on the left: the garment there, or a fuller breast.
  withRecord(
    bare,
    seen([
      { place: "bust", sign: "tight", way: "letOut", amount: 10, half: "left" },
      { place: "closureBust", sign: "doesNotMeet", way: "off", amount: 10, half: "left" },
    ]),
  ),
];
