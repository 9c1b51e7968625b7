/** Causes that the trade mends by hand: they are told, and nothing of the pieces is altered for their signs (common practice). */
import { describe, expect, it } from "vitest";
import type { StyleName } from "../../../src/core/decisions/pattern";
import { isToTake } from "../../../src/core/trial/takenNow";
import type { RuleName } from "../../../src/core/trial/rules";
import { first, line, toile } from "../../support/trials";

const CASES: readonly (readonly [RuleName, StyleName, readonly ReturnType<typeof line>[]])[] = [
  [
    "neckStretched",
    "sideDart",
    [line("frontNeck", "gapes", { amount: 5 }), line("neckPoint", "gapes"), line("backNeck", "gapes", { amount: 4 })],
  ],
  [
    "seamPuckered",
    "sideDart",
    [line("sideSeam", "foldAcross", { half: "left" }), line("sideSeam", "dragLines", { half: "left" })],
  ],
  [
    "clothOffGrain",
    "sideDart",
    [
      line("sideSeam", "leansForward", { half: "left" }),
      line("frontAboveWaist", "dragLines", { half: "left" }),
      line("backAboveWaist", "dragLines", { half: "left" }),
    ],
  ],
  ["sideSeamsForward", "sideDart", [line("sideSeam", "leansForward", { amount: 9 }), line("underarm", "leansForward")]],
  ["sideSeamsBack", "sideDart", [line("sideSeam", "leansBack", { amount: 9 }), line("underarm", "leansBack")]],
  [
    "unevenHips",
    "sideDart",
    [
      line("frontHem", "ridesUp", { amount: 12, half: "left" }),
      line("backHem", "ridesUp", { amount: 12, half: "left" }),
      line("sideHip", "dragLines", { half: "left" }),
    ],
  ],
  [
    "prominentBlade",
    "sideDart",
    [line("blades", "pointed", { half: "right" }), line("backArmhole", "dragLines", { half: "right" })],
  ],
  [
    "roundAbdomen",
    "sideDart",
    [line("frontHip", "tight", { amount: 15 }), line("frontHem", "ridesUp"), line("sideHip", "leansForward")],
  ],
  [
    "flatSeat",
    "sideDart",
    [
      line("backHip", "foldAlong", { amount: 6 }),
      line("backHip", "foldAcross", { amount: 6 }),
      line("backHem", "drops"),
    ],
  ],
  ["flaringRibs", "sideDart", [line("frontAboveWaist", "tight", { amount: 12 }), line("frontAboveWaist", "dragLines")]],
  ["armsForward", "sideDart", [line("frontArmhole", "cutsIn"), line("backArmhole", "gapes")]],
  [
    "curvedSpine",
    "sideDart",
    [
      line("backAboveWaist", "dragLines", { half: "right" }),
      line("backWaist", "ridesUp", { amount: 14, half: "right" }),
      line("backHip", "foldAcross", { half: "right" }),
    ],
  ],
];

describe("what is mended by hand", () => {
  it.each(CASES)("%s", (rule, style, lines) => {
    const answer = first(toile(style, lines));
    expect(answer.causes.map((cause) => cause.rule)).toEqual([rule]);
    expect(answer).toMatchObject({ alterations: [], leaves: [] });
    expect(isToTake(answer)).toBe(false);
  });

  it("beside it, what can be altered is", () => {
    const answer = first(
      toile("sideDart", [
        line("frontAboveWaist", "tight", { amount: 12 }),
        line("frontAboveWaist", "dragLines"),
        line("blades", "foldAlong", { amount: 5 }),
      ]),
    );
    expect(answer.causes.map(({ rule }) => rule)).toEqual(["narrowBack", "flaringRibs"]);
    expect(answer.alterations).toMatchObject([{ fit: "backWidth", amount: -20 }]);
    expect(isToTake(answer)).toBe(true);
  });
});
