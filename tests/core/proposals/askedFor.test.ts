/**
 * What measures ask for, by hand. Back and front end at one waist: length is what both bear, the rest of each is its own shape;
 * what the bust depth says of it belongs above the bust. Nothing under 3 mm is worth a cut.
 */
import { describe, expect, it } from "vitest";
import type { PrintedLength } from "../../../src/core/decisions/pattern";
import { askedFor, type Asked, type ComparedBy, type GarmentKind } from "../../../src/core/proposals/askedFor";
import type { Compared } from "../../../src/core/proposals/compare";

const PLAIN: GarmentKind = { hasStraps: false, hasBand: false };
const STRAPS: GarmentKind = { hasStraps: true, hasBand: true };

const one = (measure: PrintedLength, off: number, doubt: number): Compared => ({
  measure,
  body: 400 + off,
  figure: 400,
  from: "draft",
  changed: { cup: 0, bust: 0, own: 0 },
  garment: 400,
  off,
  doubt,
  agrees: Math.abs(off) <= doubt,
});

/** Off by so much: the back surely known to 9, the front to 10, the depth to 5, widths to 6. */
interface Off {
  readonly back?: number;
  readonly front?: number;
  readonly depth?: number;
}
const DOUBTS = { back: 9, front: 10, depth: 5 };
const NAMES = { back: "backWaistLength", front: "frontWaistLength", depth: "sideNeckToBustPoint" } as const;
const offBy = (off: Off): ComparedBy =>
  Object.fromEntries(
    (["back", "front", "depth"] as const).flatMap((name) => {
      const by = off[name];
      return by === undefined ? [] : [[NAMES[name], one(NAMES[name], by, DOUBTS[name])]];
    }),
  );

/** "lengthBelowBust 12: backLength 12 (length; backWaistLength)" of each. */
const told = (asked: readonly Asked[]): readonly string[] =>
  asked.map(({ altered, by, parts, why, from, answers }) => {
    const sum = parts.map((part) => `${part.of} ${part.by}`).join(", ");
    const measures = from.map(({ measure }) => measure).join(" ");
    return `${altered.kind === "fit" ? altered.fit : altered.kind} ${by}: ${sum} (${why}; ${measures}; ${answers ?? "–"})`;
  });
const asked = (off: Off, kind = PLAIN): readonly string[] => told(askedFor(offBy(off), kind));

const [BACK, FRONT, DEPTH] = ["backWaistLength", "frontWaistLength", "sideNeckToBustPoint"];

describe("back and front waist length", () => {
  it("of which one was taken is length, beyond its doubt", () => {
    expect(asked({ back: 12 })).toEqual([`lengthBelowBust 12: backLength 12 (length; ${BACK}; –)`]);
    expect(asked({ front: -12 })).toEqual([`lengthBelowBust -12: frontLength -12 (length; ${FRONT}; –)`]);
    expect(asked({ back: 9 })).toEqual([]);
    expect(asked({ back: -9.5 })).toEqual([`lengthBelowBust -9.5: backLength -9.5 (length; ${BACK}; –)`]);
    expect(asked({})).toEqual([]);
  });

  it("off alike: as much as both bear", () => {
    expect(asked({ back: 12, front: 14 })).toEqual([
      `lengthBelowBust 12: bothLengths 12 (length; ${BACK} ${FRONT}; –)`,
    ]);
    expect(asked({ back: -20, front: -12 })).toEqual([
      `lengthBelowBust -12: bothLengths -12 (length; ${BACK} ${FRONT}; –)`,
    ]);
    // Apart by as much as the smaller doubt, 9.
    expect(asked({ back: 12, front: 21 })).toEqual([
      `lengthBelowBust 12: bothLengths 12 (length; ${BACK} ${FRONT}; –)`,
    ]);
    expect(asked({ back: 4, front: 11 })).toEqual([`lengthBelowBust 4: bothLengths 4 (length; ${BACK} ${FRONT}; –)`]);
    expect(asked({ back: 11, front: 4 })).toEqual([`lengthBelowBust 4: bothLengths 4 (length; ${BACK} ${FRONT}; –)`]);
  });

  it("each within its doubt, off together beyond that of both", () => {
    // Weighed by 1/81 and 1/100: the mean of 8 and 9 is 8.4, its doubt 1/√(1/81 + 1/100) = 6.7.
    expect(asked({ back: 8, front: 9 })).toEqual([`lengthBelowBust 8: bothLengths 8 (length; ${BACK} ${FRONT}; –)`]);
    expect(asked({ back: 6.6, front: 6.6 })).toEqual([]);
    expect(asked({ back: 6.7, front: 6.7 })).toEqual([
      `lengthBelowBust 6.7: bothLengths 6.7 (length; ${BACK} ${FRONT}; –)`,
    ]);
    expect(asked({ back: -5, front: -6 })).toEqual([]);
    // The back is the surer: 9 and 4 are 6.8 together, 4 and 9 6.2.
    expect(asked({ back: 9, front: 4 })).toEqual([`lengthBelowBust 4: bothLengths 4 (length; ${BACK} ${FRONT}; –)`]);
    expect(asked({ back: 4, front: 9 })).toEqual([]);
  });

  it("further apart: what both bear is length, the rest is of the one that is further off", () => {
    expect(asked({ back: 30, front: 12 })).toEqual([
      `lengthBelowBust 12: bothLengths 12 (length; ${BACK} ${FRONT}; –)`,
      `roundBack 18: backLength 30, length -12 (backAlone; ${BACK} ${FRONT}; ${BACK})`,
    ]);
    expect(asked({ back: -30, front: -12 })).toEqual([
      `lengthBelowBust -12: bothLengths -12 (length; ${BACK} ${FRONT}; –)`,
      `swayBack 18: backLength 30, length -12 (backAlone; ${BACK} ${FRONT}; ${BACK})`,
    ]);
    expect(asked({ back: 12, front: 30 })).toEqual([
      `lengthBelowBust 12: bothLengths 12 (length; ${BACK} ${FRONT}; –)`,
      `waistDropFront 18: frontLength 30, length -12 (frontAlone; ${FRONT} ${BACK}; ${FRONT})`,
    ]);
    expect(asked({ back: -12, front: -30 })).toEqual([
      `lengthBelowBust -12: bothLengths -12 (length; ${BACK} ${FRONT}; –)`,
      `waistDropFront -18: frontLength -30, length 12 (frontAlone; ${FRONT} ${BACK}; ${FRONT})`,
    ]);
  });

  it("one off alone: all of it is its own", () => {
    expect(asked({ back: 20, front: 2 })).toEqual([
      `roundBack 20: backLength 20 (backAlone; ${BACK} ${FRONT}; ${BACK})`,
    ]);
    expect(asked({ back: -20, front: 2 })).toEqual([
      `swayBack 20: backLength 20 (backAlone; ${BACK} ${FRONT}; ${BACK})`,
    ]);
    expect(asked({ back: 0, front: -20 })).toEqual([
      `waistDropFront -20: frontLength -20 (frontAlone; ${FRONT} ${BACK}; ${FRONT})`,
    ]);
  });

  it("off by contrary amounts: each its own", () =>
    expect(asked({ back: 15, front: -15 })).toEqual([
      `roundBack 15: backLength 15 (backAlone; ${BACK} ${FRONT}; ${BACK})`,
      `waistDropFront -15: frontLength -15 (frontAlone; ${FRONT} ${BACK}; ${FRONT})`,
    ]));

  it("off alike by less than is worth a cut: what each is off by itself", () => {
    expect(asked({ back: 2.9, front: 11 })).toEqual([
      `waistDropFront 11: frontLength 11 (frontAlone; ${FRONT} ${BACK}; ${FRONT})`,
    ]);
    expect(asked({ back: 3, front: 11 })).toEqual([`lengthBelowBust 3: bothLengths 3 (length; ${BACK} ${FRONT}; –)`]);
  });
});

describe("the bust depth", () => {
  const ALL = `${BACK} ${FRONT} ${DEPTH}`;

  it("puts as much of a length above the bust", () => {
    expect(asked({ back: 20, front: 20, depth: 10 })).toEqual([
      `lengthAboveBust 10: depth 10 (above; ${ALL}; –)`,
      `lengthBelowBust 10: bothLengths 20, above -10 (length; ${ALL}; –)`,
    ]);
    expect(asked({ back: -20, depth: -8 })).toEqual([
      `lengthAboveBust -8: depth -8 (above; ${BACK} ${DEPTH}; –)`,
      `lengthBelowBust -12: backLength -20, above 8 (length; ${BACK} ${DEPTH}; –)`,
    ]);
  });

  it("puts all of it there where what is left is not worth a cut", () => {
    expect(asked({ back: 12, front: 12, depth: 10 })).toEqual([
      `lengthAboveBust 12: bothLengths 12 (above; ${ALL}; –)`,
    ]);
    expect(asked({ back: 13, front: 13, depth: 10 })).toEqual([
      `lengthAboveBust 10: depth 10 (above; ${ALL}; –)`,
      `lengthBelowBust 3: bothLengths 13, above -10 (length; ${ALL}; –)`,
    ]);
    expect(asked({ back: 12, depth: 10 })).toEqual([`lengthAboveBust 12: backLength 12 (above; ${BACK} ${DEPTH}; –)`]);
  });

  it("beyond all the length, or the other way, is the place of the bust", () => {
    expect(asked({ back: 12, front: 12, depth: 25 })).toEqual([
      `lengthAboveBust 12: bothLengths 12 (above; ${ALL}; –)`,
      `bustPointLevel 13: depth 25, above -12 (bustDepth; ${DEPTH}; ${DEPTH})`,
    ]);
    expect(asked({ back: 12, front: 12, depth: -8 })).toEqual([
      `lengthBelowBust 12: bothLengths 12 (length; ${ALL}; –)`,
      `bustPointLevel -8: depth -8 (bustDepth; ${DEPTH}; ${DEPTH})`,
    ]);
    expect(asked({ depth: 8 })).toEqual([`bustPointLevel 8: depth 8 (bustDepth; ${DEPTH}; ${DEPTH})`]);
  });

  it("that agrees says nothing", () => {
    expect(asked({ depth: 5 })).toEqual([]);
    expect(asked({ back: 12, front: 12, depth: 5 })).toEqual([
      `lengthBelowBust 12: bothLengths 12 (length; ${ALL}; –)`,
    ]);
  });

  it("too small to be cut above, though surely known, is not", () => {
    const sure = (off: number): ComparedBy => ({
      ...offBy({ back: 20, front: 20 }),
      sideNeckToBustPoint: one("sideNeckToBustPoint", off, 1),
    });
    expect(told(askedFor(sure(2.9), PLAIN))).toEqual([`lengthBelowBust 20: bothLengths 20 (length; ${ALL}; –)`]);
    expect(told(askedFor(sure(3), PLAIN))[0]).toBe(`lengthAboveBust 3: depth 3 (above; ${ALL}; –)`);
  });
});

describe("a garment on straps", () => {
  it("answers the depth by longer straps, which are part of the front", () => {
    expect(asked({ depth: 10 }, STRAPS)).toEqual([`strapLength 10: depth 10 (bustDepth; ${DEPTH}; –)`]);
    expect(asked({ front: 12, depth: 10 }, STRAPS)).toEqual([`strapLength 10: depth 10 (bustDepth; ${DEPTH}; –)`]);
    expect(asked({ back: 12, front: 40, depth: 10 }, STRAPS)).toEqual([
      `bandDepth 12: bothLengths 12 (length; ${BACK} ${FRONT}; –)`,
      `waistDropFront 18: frontLength 40, strap -10, length -12 (frontAlone; ${FRONT} ${BACK}; ${FRONT})`,
      `strapLength 10: depth 10 (bustDepth; ${DEPTH}; –)`,
    ]);
  });

  it("shortens no straps: those are shortened on the body", () => {
    expect(asked({ depth: -10 }, STRAPS)).toEqual([]);
    expect(asked({ front: -10, depth: -10 }, STRAPS)).toEqual([]);
    expect(asked({ front: 4, depth: -10 }, STRAPS)).toEqual([`bandDepth 14: frontLength 14 (length; ${FRONT}; –)`]);
  });

  it("has its length at the band where there is one, never above the bust", () => {
    expect(asked({ back: 20, front: 30, depth: 10 }, STRAPS)).toEqual([
      `bandDepth 20: bothLengths 20 (length; ${BACK} ${FRONT}; –)`,
      `strapLength 10: depth 10 (bustDepth; ${DEPTH}; –)`,
    ]);
    expect(asked({ back: 20 }, { hasStraps: true, hasBand: false })[0]).toContain("lengthBelowBust 20");
    expect(asked({ back: 20 }, { hasStraps: false, hasBand: true })[0]).toContain("bandDepth 20");
  });
});

describe("widths", () => {
  it.each<readonly [PrintedLength, string]>([
    ["acrossFront", "chestWidth 8: width 8 (width; acrossFront; –)"],
    ["acrossBack", "backWidth 8: width 8 (width; acrossBack; –)"],
    ["underBustGirth", "sideSeamUnderBust 8: width 8 (width; underBustGirth; –)"],
    ["shoulderLength", "shoulderWidth 8: width 8 (width; shoulderLength; –)"],
    ["bustPointWidth", "dartsOut 4: halfWidth 4 (bustWidth; bustPointWidth; –)"],
  ])("%s, from beyond its doubt on", (measure, wanted) => {
    expect(told(askedFor({ [measure]: one(measure, 8, 6) }, PLAIN))).toEqual([wanted]);
    expect(askedFor({ [measure]: one(measure, 6, 6) }, PLAIN)).toEqual([]);
    expect(askedFor({ [measure]: one(measure, 2.9, 1) }, PLAIN)).toEqual([]);
  });

  it("from 3 mm of the alteration on, in their order; others ask for nothing", () => {
    const all = (off: number) =>
      Object.fromEntries(
        (
          [
            "shoulderLength",
            "underBustGirth",
            "acrossBack",
            "acrossFront",
            "bustPointWidth",
            "neckBaseGirth",
            "height",
          ] as const
        ).map((measure) => [measure, one(measure, off, 1)]),
      );
    const names = (off: number) => told(askedFor(all(off), PLAIN)).map((line) => line.split(":")[0]);
    expect(names(-6)).toEqual([
      "dartsOut -3",
      "chestWidth -6",
      "backWidth -6",
      "sideSeamUnderBust -6",
      "shoulderWidth -6",
    ]);
    expect(names(3)).toEqual(["chestWidth 3", "backWidth 3", "sideSeamUnderBust 3", "shoulderWidth 3"]);
  });
});
