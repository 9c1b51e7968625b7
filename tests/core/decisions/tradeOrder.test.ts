/**
 * The trade's order, told once more by hand: lengths first, since every other amount is measured at a level that a length
 * moves; then the bust, darts, widths, and last the edges. Common practice, no source.
 */
import type { Alteration } from "../../../src/core/decisions/alteration";
import { FIT_NAMES, type FitName } from "../../../src/core/decisions/fitNames";
import { phaseOf, placeInOrder, type Phase } from "../../../src/core/decisions/tradeOrder";
import { inTradeOrder, outOfTradeOrder } from "../../../src/core/plan/outOfTradeOrder";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

/** What each does on the body: to a length or a wedge of it, to the bust, to a width, or to an edge. */
const BY_HAND: readonly (readonly [Phase, readonly FitName[]])[] = [
  [
    "length",
    [
      "lengthAboveBust",
      "lengthBelowBust",
      "lengthBasque",
      "bandDepth",
      "roundBack",
      "swayBack",
      "waistDropFront",
      "waistDropBack",
    ],
  ],
  ["bust", ["bustPointLevel"]],
  ["darts", []],
  ["widths", ["chestWidth", "backWidth", "sideSeamBust", "sideSeamUnderBust", "sideSeamWaist", "sideSeamHip"]],
  [
    "edges",
    [
      "strapLength",
      "strapWidth",
      "strapPlace",
      "necklineGape",
      "edgeGape",
      "armholeGape",
      "backNeckGape",
      "shoulderSlope",
      "forwardShoulder",
      "shoulderWidth",
      "armholeDepth",
    ],
  ],
];
const PHASES = BY_HAND.map(([phase]) => phase);
const phaseByHand = (alteration: Alteration): Phase =>
  alteration.kind === "fit"
    ? (BY_HAND.find(([, fits]) => fits.includes(alteration.fit))?.[0] ?? "widthsTraced")
    : "darts";
const rankByHand = (alteration: Alteration): number => PHASES.indexOf(phaseByHand(alteration));

const fit = (name: FitName): Alteration => ({ kind: "fit", id: name, fit: name, amount: 5 });
const dart = { piece: "front", dart: "waistDart" } as const;
const DARTS: readonly Alteration[] = [
  { kind: "dartEnd", id: "end", dart, shorten: 5, across: 0, hold: "mouth", giveBack: {} },
  { kind: "dartMouth", id: "mouth", dart, inner: 2, outer: 2, giveBack: {} },
  { kind: "dartPlace", id: "place", dart, by: 5, how: "redraw", giveBack: {} },
  { kind: "dartPivot", id: "pivot", dart, to: "shoulder", share: 1 },
  { kind: "dartSplit", id: "split", dart, into: 2 },
  { kind: "dartGather", id: "gather", dart },
  { kind: "dartSeam", id: "seam", dart },
  { kind: "dartLegs", id: "legs", dart, bow: 2 },
];
const ALL: readonly Alteration[] = [...FIT_NAMES.map(fit), ...DARTS];

describe("the trade's order", () => {
  it("has a phase for every alteration", () => {
    expect(ALL.map((one) => [one.id, phaseOf(one)])).toEqual(ALL.map((one) => [one.id, phaseByHand(one)]));
  });

  it("puts each phase wholly before the next", () => {
    const wrong = ALL.flatMap((a) =>
      ALL.filter((b) => rankByHand(a) < rankByHand(b) && placeInOrder(a) >= placeInOrder(b)).map((b) => [a.id, b.id]),
    );
    expect(wrong).toEqual([]);
  });

  it("does whole lengths before wedges, and leaves records of darts in the order they are in", () => {
    const places = BY_HAND.find(([phase]) => phase === "length")?.[1].map((name) => placeInOrder(fit(name))) ?? [];
    expect(places).toEqual([...new Set(places)].toSorted((a, b) => a - b));
    expect(new Set(DARTS.map(placeInOrder)).size).toBe(1);
  });

  const anyLedger = fc.shuffledSubarray([...ALL]);

  it("is broken by exactly those that stand before one of an earlier phase, the earliest of which is named", () => {
    fc.assert(
      fc.property(anyLedger, (ledger) => {
        const expected = ledger.flatMap((one, at): readonly (readonly [string, Phase])[] => {
          const earliest = Math.min(...ledger.slice(at + 1).map(rankByHand));
          const phase = PHASES[earliest];
          return earliest < rankByHand(one) && phase !== undefined ? [[one.id, phase]] : [];
        });
        expect([...outOfTradeOrder(ledger)]).toEqual(expected);
      }),
    );
  });

  it("is whole again when it is put right: nothing lost, nothing out of order, what stands alike left as it was", () => {
    fc.assert(
      fc.property(anyLedger, (ledger) => {
        const put = inTradeOrder(ledger);
        expect(new Set(put)).toEqual(new Set(ledger));
        expect(put).toHaveLength(ledger.length);
        expect([...outOfTradeOrder(put)]).toEqual([]);
        const darts = (of: readonly Alteration[]): readonly string[] =>
          of.filter(({ kind }) => kind !== "fit").map(({ id }) => id);
        expect(darts(put)).toEqual(darts(ledger));
      }),
    );
  });
});
