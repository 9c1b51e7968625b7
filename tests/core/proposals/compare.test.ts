/** Her measures against the garment: which darts tell where it aims, and what her own redraws of them count for. */
import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../src/core/decisions/alteration";
import type { PrintedLength } from "../../../src/core/decisions/pattern";
import type { Work } from "../../../src/core/decisions/work";
import { tapesOf } from "../../../src/core/measures/tape";
import type { DartName, Piece, PieceName, SeamName } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { bustDartsOf, compareMeasures, type Compared } from "../../../src/core/proposals/compare";
import { cornerPiece, dartFor } from "../../support/cornerPiece";
import { planOf, testWork } from "../../support/works";

describe("the bust darts that tell where a garment aims", () => {
  const frontWith = (...darts: Piece["darts"]): Piece =>
    cornerPiece({ corners: [["centreNeck", 0, 0, "neck"]], inside: { bustPoint: [90, 200] }, darts });
  const told = (...darts: Piece["darts"]): readonly (string | undefined)[] => {
    const { upright, lying } = bustDartsOf(setOf([frontWith(...darts)]));
    return [upright?.dart, lying?.dart];
  };
  const aimed = (name: DartName, seam: SeamName) => dartFor(name, seam, "bustPoint");

  it("are one that stands upright and one that lies, of those that aim there", () => {
    expect(told(aimed("sideDart", "side"), aimed("waistDart", "waist"))).toEqual(["waistDart", "sideDart"]);
    expect(told(aimed("armholeDart", "armhole"))).toEqual([undefined, "armholeDart"]);
    expect(told(aimed("centreDart", "centre"), aimed("sideDart", "side"))).toEqual([undefined, "centreDart"]);
    expect(told(dartFor("waistDart", "waist"), dartFor("sideDart", "side"))).toEqual([undefined, undefined]);
    expect(told()).toEqual([undefined, undefined]);
  });

  it("are from below before one from above, and else the first", () => {
    expect(told(aimed("shoulderDart", "shoulder"), aimed("waistDart", "waist"))[0]).toBe("waistDart");
    expect(told(aimed("neckDart", "neck"), aimed("underBustDart", "underBust"))[0]).toBe("underBustDart");
    expect(told(aimed("shoulderDart", "shoulder"), aimed("neckDart", "neck"))[0]).toBe("shoulderDart");
  });

  it("are none that is gathered", () => {
    expect(told({ ...aimed("waistDart", "waist"), gathered: true }, { ...aimed("sideDart", "side") })).toEqual([
      undefined,
      "sideDart",
    ]);
  });

  it("are of the piece that has the bust point, and none where no piece has it", () => {
    const side: Piece = { ...frontWith(aimed("waistDart", "waist")), name: "sideFront", points: {} };
    expect(bustDartsOf(setOf([side]))).toEqual({ upright: null, lying: null });
    const middle: Piece = { ...frontWith(aimed("waistDart", "waist")), name: "centreFront" };
    expect(bustDartsOf(setOf([side, middle])).upright).toEqual({ piece: "centreFront", dart: "waistDart" });
  });
});

/** A body with the block's own figures at bust 880 (common practice, no source): its bust point lies 265 below the side neck. */
const OWN = {
  bustGirth: 880,
  upperChestGirth: 830,
  waistGirth: 700,
  hipGirth: 940,
  bustPointWidth: 190,
  sideNeckToBustPoint: 265,
} as const;
const workOf = (...alterations: readonly Alteration[]): Work => ({ ...testWork, tapes: tapesOf(OWN), alterations });
const comparedIn = (work: Work, measure: PrintedLength): Compared => {
  const found = compareMeasures(work, planOf(work)).compared.find((one) => one.measure === measure);
  if (found === undefined) throw new Error(`no ${measure}`);
  return found;
};
/** What her own alterations changed of the width from bust point to bust point, and of the depth. */
const own = (...alterations: readonly Alteration[]): readonly number[] =>
  (["bustPointWidth", "sideNeckToBustPoint"] as const).map(
    (measure) => comparedIn(workOf(...alterations), measure).changed.own,
  );

const end = (piece: PieceName, dart: DartName, across: number, id = "a"): Alteration => ({
  kind: "dartEnd",
  id,
  dart: { piece, dart },
  shorten: 0,
  across,
  hold: "mouth",
  giveBack: {},
});
const place = (dart: DartName, by: number, how: "redraw" | "offCentreSeam" = "redraw"): Alteration => ({
  kind: "dartPlace",
  id: "b",
  dart: { piece: "front", dart },
  by,
  how,
  giveBack: {},
});

/** From 26 out and √(265² − 26²) down, so much further down. */
const deeper = (by: number): number => Math.hypot(26, Math.sqrt(265 ** 2 - 26 ** 2) + by) - 265;

describe("what her redraws of the bust darts count for", () => {
  const near = (...values: readonly number[]) => values.map((value) => expect.closeTo(value, 6) as number);

  it("is nothing where there are none", () => expect(own()).toEqual(near(0, 0)));

  it("is of the upright one twice its way inwards, in the width alone, and how it comes the depth", () => {
    const width = (across: number) => own(end("front", "waistDart", across))[0];
    expect(width(4)).toBeCloseTo(-8, 6);
    expect(width(-3)).toBeCloseTo(6, 6);
    // 26 out of the side neck's own line, and 4 less.
    expect(own(end("front", "waistDart", 4))[1]).toBeCloseTo(Math.hypot(22, Math.sqrt(265 ** 2 - 26 ** 2)) - 265, 6);
  });

  it("is of the one that lies its way upwards, in the depth alone", () => {
    expect(own(end("front", "sideDart", 5))).toEqual(near(0, deeper(-5)));
    expect(own(end("front", "sideDart", -5))).toEqual(near(0, deeper(5)));
  });

  it("is of a dart redrawn elsewhere as much as it was moved, and of one taken off at the centre what the piece itself lost", () => {
    expect(own(place("waistDart", 6))[0]).toBeCloseTo(-12, 6);
    expect(own(end("front", "waistDart", 4), place("waistDart", 6))[0]).toBeCloseTo(-20, 6);
    // The bust point comes nearer with the cloth, once.
    expect(own(place("waistDart", 6, "offCentreSeam"))[0]).toBeCloseTo(-12, 6);
    expect(own(place("sideDart", 6))).toEqual(near(0, deeper(-6)));
  });

  it("is nothing of another dart, or of a redraw that cannot be made", () => {
    expect(own(end("back", "waistDart", 4))).toEqual(near(0, 0));
    expect(own(end("front", "waistDart", 4000))).toEqual(near(0, 0));
    expect(own(place("waistDart", 4000))).toEqual(near(0, 0));
  });

  it("is on one half half of it", () => {
    expect(own({ ...end("front", "waistDart", 4), half: "left" })[0]).toBeCloseTo(-4, 6);
    expect(
      own(
        { ...end("front", "waistDart", 4), half: "left" },
        { ...end("front", "waistDart", -2, "c"), half: "right" },
      )[0],
    ).toBeCloseTo(-2, 6);
  });
});

describe("a measure held against the garment", () => {
  it("is off by what it is more than the figure with all that changed, in doubt by tape and draft together", () => {
    const work: Work = { ...workOf(end("front", "waistDart", 4)), tapes: tapesOf({ ...OWN, bustPointWidth: 170 }) };
    // 190 less twice 4. A tape good to 3.5 for this width counts twice, the draft 8.
    const { body, figure, from, garment, off, doubt, agrees } = comparedIn(work, "bustPointWidth");
    expect({ body, figure, from, agrees }).toEqual({
      body: 170,
      figure: expect.closeTo(190, 6),
      from: "draft",
      agrees: true,
    });
    expect(garment).toBeCloseTo(182, 6);
    expect(off).toBeCloseTo(-12, 6);
    expect(doubt).toBeCloseTo(Math.hypot(14, 8), 9);
  });

  it("is said not to be on pieces that have nothing of it, and is nothing where it was not taken", () => {
    const work: Work = { ...workOf(), tapes: tapesOf({ ...OWN, underBustGirth: 760, height: 1680 }) };
    const { compared, notOnPieces } = compareMeasures(work, planOf(work));
    expect(compared.map(({ measure }) => measure).toSorted()).toEqual(["bustPointWidth", "sideNeckToBustPoint"]);
    expect([...notOnPieces].toSorted()).toEqual(["height", "underBustGirth"]);
  });

  it("of her height is held against what the pattern is drafted for, whatever was altered", () => {
    const work: Work = {
      ...workOf({ kind: "fit", id: "f", fit: "lengthBelowBust", amount: 20 }),
      tapes: tapesOf({ ...OWN, height: 1690 }),
      pattern: { ...testWork.pattern, lengths: { height: { all: 1680 } } },
    };
    expect(comparedIn(work, "height")).toMatchObject({
      figure: 1680,
      from: "printed",
      changed: { cup: 0, bust: 0, own: 0 },
      garment: 1680,
      off: 10,
    });
  });
});
