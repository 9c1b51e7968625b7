import type { DartSurgery } from "../../../src/core/decisions/alteration";
import { describe, expect, it } from "vitest";
import { applyAlteration } from "../../../src/core/alterations/applyAlteration";
import { draftBackBlock } from "../../../src/core/draft/backBlock";
import { draftMeasuresFor } from "../../../src/core/draft/draftMeasures";
import { draftFrontBlock } from "../../../src/core/draft/frontBlock";
import { pointOf, type DartName, type PieceName } from "../../../src/core/pattern/piece";
import type { LengthUnit } from "../../../src/core/decisions/work";
import { sideDartFront } from "../../../src/core/style/sideDartStyle";
import { dartSurgerySteps, dartSurgeryTitle } from "../../../src/words/alterations/dartSurgery/index";
import { endWords, placeWords } from "../../../src/words/terms/darts";

type Without<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;
const asked = (dart: DartName, what: Without<DartSurgery, "id" | "dart">, piece: PieceName = "front"): DartSurgery => ({
  ...what,
  id: "a",
  dart: { piece, dart },
});

const measures = draftMeasuresFor(
  { label: "x", bust: 880, waist: 700, hip: 940 },
  { sizes: [], draftedDifference: 50, cups: [] },
  { bust: 80, waist: 40, hip: 50 },
);
const made = sideDartFront(draftFrontBlock(measures), 50);
if (!made.ok) throw new Error("no front");
const pieces = { front: made.value, back: draftBackBlock(measures) };

function steps(
  alteration: DartSurgery,
  set: Parameters<typeof applyAlteration>[0] = pieces,
  unit: LengthUnit = "cm",
): string {
  const done = applyAlteration(set, alteration, {
    bustPoint: pointOf(made.ok ? made.value : pieces.back, "bustPoint"),
  });
  if (!done.ok) throw new Error(done.failure.code);
  return dartSurgerySteps(alteration, done.value.trace, unit).join("\n");
}

describe("titles", () => {
  it.each([
    [asked("sideDart", { kind: "dartPivot", to: "armhole", share: 1 }), "Move the whole side dart to the armhole"],
    [asked("sideDart", { kind: "dartPivot", to: "waist", share: 0.5 }), "Move half of the side dart to the waist dart"],
    [
      asked("waistDart", { kind: "dartPivot", to: "french", share: 0.33 }),
      "Move a third of the waist dart low on the side seam, as a French dart",
    ],
    [asked("waistDart", { kind: "dartPivot", to: "neck", share: 0.4 }), "Move 40 % of the waist dart to the neckline"],
    [
      asked("waistDart", { kind: "dartPivot", to: "centre", share: 2 / 3 }),
      "Move two thirds of the waist dart to the centre front",
    ],
    [asked("sideDart", { kind: "dartSplit", into: 2 }), "Split the side dart into two"],
    [asked("underBustDart", { kind: "dartGather" }, "cup"), "Gather the under-bust dart"],
    [asked("waistDart", { kind: "dartLegs", bow: 4 }), "Bow the legs of the waist dart by 4 mm"],
    [asked("waistDart", { kind: "dartLegs", bow: -4 }), "Bow the legs of the waist dart out by 4 mm"],
    [asked("armholeDart", { kind: "dartSeam" }), "Join the armhole dart and the waist dart into a seam"],
  ])("%o", (alteration, title) => {
    expect(dartSurgeryTitle(alteration, "cm")).toBe(title);
  });
});

describe("steps on the tissue", () => {
  it("for a whole dart moved: mark, cut both ways, close, paper, end, true", () => {
    const text = steps(asked("sideDart", { kind: "dartPivot", to: "armhole", share: 1 }));
    const order = [
      "on to the bust point",
      "Mark the new place on the armhole",
      "Cut along that line",
      "Cut the upper leg of the side dart",
      "Close the side dart",
      "opened to the armhole dart",
      "End the armhole dart 30 mm short",
      "Fold the armhole dart shut",
    ];
    const places = order.map((words) => text.indexOf(words));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  it("for a share: how much is closed and what is left, and the old end as before", () => {
    const text = steps(asked("sideDart", { kind: "dartPivot", to: "waist", share: 0.5 }));
    // 17.5° on legs of 154 mm is 46.9 mm wide.
    expect(text).toContain("Close 23 mm of the side dart at its mouth, so that 23 mm are left");
    expect(text).toContain("Cut the leg nearer the side seam of the waist dart");
    expect(text).toContain("Cut the lower leg of the side dart");
    expect(text).toContain("End the side dart as far short of the bust point as before");
  });

  it("for the centre front: it becomes a seam", () => {
    expect(steps(asked("waistDart", { kind: "dartPivot", to: "centre", share: 1 }))).toContain("not on the fold");
  });

  it("for a back dart: about its own end, no bust point named", () => {
    const text = steps(asked("waistDart", { kind: "dartPivot", to: "shoulder", share: 0.4 }, "back"));
    expect(text).toContain("the end of the waist dart");
    expect(text).not.toContain("bust point");
  });

  it("for two and for three darts", () => {
    expect(steps(asked("waistDart", { kind: "dartSplit", into: 2 }))).toContain("mark 14 mm to each side of the mouth");
    expect(steps(asked("waistDart", { kind: "dartSplit", into: 3 }))).toContain(
      "until a third of the mouth of the waist dart is left",
    );
  });

  it("for gathers and bowed legs", () => {
    expect(steps(asked("sideDart", { kind: "dartGather" }))).toContain("gathering rows");
    expect(steps(asked("sideDart", { kind: "dartGather" }))).toContain("30 mm outside each end");
    expect(steps(asked("waistDart", { kind: "dartLegs", bow: 4 }))).toContain("set off 4 mm into the dart");
    expect(steps(asked("waistDart", { kind: "dartLegs", bow: -3 }))).toContain("set off 3 mm out of the dart");
  });

  it("for a seam over the bust", () => {
    const moved = applyAlteration(pieces, asked("sideDart", { kind: "dartPivot", to: "armhole", share: 1 }), {
      bustPoint: pointOf(pieces.front, "bustPoint"),
    });
    if (!moved.ok) throw new Error("not moved");
    expect(steps(asked("armholeDart", { kind: "dartSeam" }), moved.value.pieces)).toContain(
      "it becomes a centre front and a side front",
    );
  });

  // 30 mm is 1.18 in, which is nearest to 1 1/8.
  it("in inches alone where the tape has inches", () => {
    const all = [
      asked("sideDart", { kind: "dartPivot", to: "armhole", share: 0.5 }),
      asked("waistDart", { kind: "dartSplit", into: 3 }),
      asked("sideDart", { kind: "dartGather" }),
      asked("waistDart", { kind: "dartLegs", bow: 4 }),
    ];
    for (const alteration of all) expect(steps(alteration, pieces, "in")).not.toMatch(/\b(?:mm|cm)\b|metre/);
    expect(steps(asked("sideDart", { kind: "dartGather" }), pieces, "in")).toContain("1 1/8 in outside each end");
  });

  it("are none where nothing was to do", () => {
    const straight = asked("waistDart", { kind: "dartLegs", bow: 0 });
    expect(steps(straight)).toBe("");
  });

  it("never name a number that is not one, nor two blanks", () => {
    for (const to of ["french", "waist", "shoulder", "armhole", "neck", "centre"] as const) {
      expect(steps(asked("sideDart", { kind: "dartPivot", to, share: 0.6 }))).not.toMatch(/NaN|undefined| {2}|\{/);
    }
  });
});

describe("ends and places of every kind of dart", () => {
  it("are named by how the dart lies", () => {
    expect(endWords("armholeDart", "front", "inner")).toBe("upper mouth end");
    expect(endWords("frenchDart", "front", "outer")).toBe("lower mouth end");
    expect(endWords("sideDart2", "front", "inner")).toBe("upper mouth end");
    expect(endWords("shoulderDart", "front", "outer")).toBe("mouth end nearer the armhole");
    expect(endWords("neckDart", "back", "inner")).toBe("mouth end nearer the centre back");
    expect(placeWords("armholeEnd", "front")).toBe("corner where the shoulder meets the armhole");
    expect(placeWords("neckEnd", "cup")).toBe("corner where the strap meets the neckline");
    expect(placeWords("centreEnd", "front")).toBe("lower end of the centre front seam");
  });
});
