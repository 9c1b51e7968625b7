/** What is sewn to what, told once more by hand for every kind of garment: the seams of each piece, and what meets. */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import type { Edge, Piece, PieceName, PointName, SeamName } from "../../../src/core/pattern/piece";
import { setOf } from "../../../src/core/pattern/pieceSet";
import { joinsOf, seamPairsOf } from "../../../src/core/pattern/sewnTogether";

/** A ring of the seams given, its corners named or numbered. */
function ring(name: PieceName, seams: readonly SeamName[], corners: readonly PointName[] = []): Piece {
  const all = corners.length > 0 ? corners : NUMBERED.slice(0, seams.length);
  const from = (at: number): PointName => all[at % all.length] ?? "corner00";
  return {
    name,
    points: Object.fromEntries(
      all.map((corner, at) => [corner, { at: piecePoint(at, at * at), level: "bust" as const }]),
    ),
    edges: all.map((corner, at): Edge => ({
      from: corner,
      to: from(at + 1),
      seam: seams[at] ?? "edge",
      curve: null,
      mouthOf: null,
    })),
    darts: [],
    levelLines: [],
    centreOnFold: true,
  };
}
const NUMBERED: readonly PointName[] = ["corner00", "corner01", "corner02", "corner03", "corner04", "corner05"];

const SEAMS: Readonly<Partial<Record<PieceName, readonly SeamName[]>>> = {
  front: ["neck", "shoulder", "armhole", "side", "waist", "centre"],
  centreFront: ["neck", "shoulder", "princess", "waist", "centre"],
  sideFront: ["shoulder", "armhole", "side", "waist", "princess"],
  cup: ["neck", "strap", "side", "underBust", "centre"],
  frontBand: ["underBust", "side", "waist", "centre"],
  back: ["neck", "shoulder", "armhole", "side", "waist", "centre"],
  backBand: ["underBust", "side", "waist", "centre"],
  frontBasque: ["waist", "side", "hem", "centre"],
  backBasque: ["waist", "side", "hem", "centre"],
  frontFacing: ["neck", "shoulder", "edge", "centre"],
  backFacing: ["neck", "shoulder", "edge", "centre"],
  frontArmholeFacing: ["shoulder", "armhole", "side", "edge"],
  backArmholeFacing: ["shoulder", "armhole", "side", "edge"],
  skirtFront: ["waist", "side", "hem", "centre"],
  skirtBack: ["waist", "side", "hem", "centre"],
  strap: ["strap", "edge", "strap", "edge"],
};
const whole = (name: PieceName, seams = SEAMS[name] ?? []): Piece => ring(name, seams);
const garment = (...names: readonly PieceName[]) => setOf(names.map((name) => whole(name)));

/** A back that ends at the under-bust, over a band. */
const shortBack = whole("back", ["neck", "shoulder", "armhole", "side", "underBust", "centre"]);

/** "seam: first = second", with the ease where there is some. */
const told = (pieces: Parameters<typeof seamPairsOf>[0]): readonly string[] =>
  seamPairsOf(pieces)
    .map(
      ({ seam, first, second, ease }) =>
        `${seam}: ${first.join("+")} = ${second.join("+")}${ease === 0 ? "" : ` ${ease}`}`,
    )
    .toSorted();

/** Panels of a gored skirt: the outer ones have the side seam. */
const PANELS = [
  ring("skirtFront", ["waist", "panel", "hem", "centre"]),
  ring("skirtSideFront", ["waist", "side", "hem", "panel"]),
  ring("skirtSideBack", ["waist", "side", "hem", "panel"]),
  ring("skirtBack", ["waist", "panel", "hem", "centre"]),
];

describe("the seams of a garment by pairs", () => {
  it("nothing is sewn to what is not there", () => {
    expect(told({})).toEqual([]);
    expect(told(garment("front"))).toEqual([]);
    expect(told(garment("front", "strap"))).toEqual([]);
  });

  it("a front and a back: at the side, and at the shoulder, where the back is eased on by 6 mm", () => {
    expect(told(garment("front", "back"))).toEqual(["shoulder: back = front 6", "side: back = front"]);
  });

  it("a princess front: its two pieces together, and to the back", () => {
    expect(told(garment("centreFront", "sideFront", "back"))).toEqual([
      "princess: sideFront = centreFront",
      "shoulder: back = centreFront+sideFront 6",
      "side: back = sideFront",
    ]);
  });

  it("a princess seam from the armhole leaves the whole shoulder on one of its pieces", () => {
    const sideFront = ring("sideFront", ["armhole", "side", "waist", "princess"]);
    expect(told(setOf([whole("centreFront"), sideFront, whole("back")]))).toContain(
      "shoulder: back = centreFront+sideFront 6",
    );
    const centreFront = ring("centreFront", ["neck", "princess", "waist", "centre"]);
    expect(told(setOf([centreFront, whole("sideFront"), whole("back")]))).toContain(
      "shoulder: back = centreFront+sideFront 6",
    );
    // And where neither has one there is none.
    expect(told(setOf([centreFront, sideFront, whole("back")]))).toEqual([
      "princess: sideFront = centreFront",
      "side: back = sideFront",
    ]);
    // A piece of the princess front that is missing leaves no front to sew the shoulder to.
    expect(told(garment("centreFront", "back"))).toEqual([]);
  });

  it("a cup over a band", () => {
    expect(told(setOf([whole("cup"), whole("frontBand"), shortBack, whole("backBand")]))).toEqual([
      "side: back = cup",
      "side: backBand = frontBand",
      "underBust: back = backBand",
      "underBust: cup = frontBand",
    ]);
  });

  it.each<readonly [readonly PieceName[], string, string]>([
    [["front", "back"], "front", "back"],
    [["centreFront", "sideFront", "back"], "centreFront+sideFront", "back"],
    [["frontBand", "backBand"], "frontBand", "backBand"],
  ])("basques on %j", (bodice, front, back) => {
    const waist = told(garment(...bodice, "frontBasque", "backBasque")).filter(
      (pair) => !told(garment(...bodice)).includes(pair),
    );
    expect(waist).toEqual(
      ["side: backBasque = frontBasque", `waist: ${back} = backBasque`, `waist: ${front} = frontBasque`].toSorted(),
    );
  });

  it.each<readonly [readonly PieceName[], string, string]>([
    [["front", "back"], "front", "back"],
    [["centreFront", "sideFront", "back"], "centreFront+sideFront", "back"],
    [["frontBand", "backBand"], "frontBand", "backBand"],
  ])("a skirt on %j, in one piece on each half or in panels", (bodice, front, back) => {
    const alone = told(garment(...bodice));
    const added = (skirt: readonly Piece[]): readonly string[] =>
      told({ ...garment(...bodice), ...setOf(skirt) }).filter((pair) => !alone.includes(pair));
    expect(added([whole("skirtFront"), whole("skirtBack")])).toEqual(
      ["side: skirtBack = skirtFront", `waist: ${front} = skirtFront`, `waist: ${back} = skirtBack`].toSorted(),
    );
    expect(added(PANELS)).toEqual(
      [
        "panel: skirtBack = skirtSideBack",
        "panel: skirtFront = skirtSideFront",
        "side: skirtSideBack = skirtSideFront",
        `waist: ${front} = skirtFront+skirtSideFront`,
        `waist: ${back} = skirtBack+skirtSideBack`,
      ].toSorted(),
    );
  });

  it.each<readonly [readonly PieceName[], string]>([
    [["front"], "front"],
    [["centreFront", "sideFront"], "centreFront+sideFront"],
    [["cup"], "cup"],
  ])("facings of the neck and the armhole, on %j", (front, sewn) => {
    const pairs = told({
      ...garment(...front, "back", "frontFacing", "backFacing", "frontArmholeFacing", "backArmholeFacing"),
    }).filter((pair) => pair.includes("Facing"));
    expect(pairs).toEqual([
      "neck: backFacing = back",
      `neck: frontFacing = ${sewn}`,
      "shoulder: backArmholeFacing = frontArmholeFacing",
      "shoulder: backFacing = frontFacing",
      "side: backArmholeFacing = frontArmholeFacing",
    ]);
  });

  it("facings of an upper edge without shoulders meet at the side", () => {
    const facings = [ring("frontFacing", ["neck", "side", "edge"]), ring("backFacing", ["neck", "side", "edge"])];
    expect(told(setOf(facings))).toEqual(["side: backFacing = frontFacing"]);
  });

  it("a seam that only one of the two has is sewn to nothing", () => {
    const sleeveless = ring("front", ["neck", "shoulder", "armhole", "waist", "centre"]);
    expect(told(setOf([sleeveless, whole("back")]))).toEqual(["shoulder: back = front 6"]);
    expect(told(setOf([whole("front"), ring("back", ["neck", "shoulder", "waist"])]))).toEqual([
      "shoulder: back = front 6",
    ]);
  });

  it("the pattern's own ease goes before ours, none too, on whichever piece of the longer side", () => {
    const back = (seamEase: NonNullable<Piece["seamEase"]>): Piece => ({ ...whole("back"), seamEase });
    expect(told(setOf([whole("front"), back({ shoulder: 4, side: 1 })]))).toEqual([
      "shoulder: back = front 4",
      "side: back = front 1",
    ]);
    expect(told(setOf([whole("front"), back({ shoulder: 0 })]))).toEqual([
      "shoulder: back = front",
      "side: back = front",
    ]);
    expect(told(setOf([whole("front"), back({ waist: 3 })]))).toEqual([
      "shoulder: back = front 6",
      "side: back = front",
    ]);
    // It says nothing on the shorter side.
    expect(told(setOf([{ ...whole("front"), seamEase: { shoulder: 2 } }, whole("back")]))).toContain(
      "shoulder: back = front 6",
    );
    const sideFront: Piece = { ...whole("sideFront"), seamEase: { waist: 2 } };
    expect(told(setOf([whole("centreFront"), sideFront, whole("frontBasque")]))).toContain(
      "waist: centreFront+sideFront = frontBasque 2",
    );
  });
});

describe("corners that make a straight line together", () => {
  const joined = (...pieces: readonly Piece[]): readonly string[] =>
    joinsOf(setOf(pieces))
      .map(({ point, first, second }) => `${point}: ${first} & ${second}`)
      .toSorted();
  const corners = (name: PieceName, ...points: readonly PointName[]): Piece => ring(name, [], points);

  const back = corners("back", "centreNeck", "sideNeck", "shoulderTip", "underarm", "sideWaist", "centreWaist");

  it("of a front and a back: neck, shoulder, underarm and waist", () => {
    const front = corners("front", "centreNeck", "sideNeck", "shoulderTip", "underarm", "sideWaist", "centreWaist");
    expect(joined(front, back)).toEqual([
      "shoulderTip: front & back",
      "sideNeck: front & back",
      "sideWaist: front & back",
      "underarm: front & back",
    ]);
    expect(joined(front)).toEqual([]);
    expect(joined(back)).toEqual([]);
  });

  it("of a princess front, with the seam from the shoulder or from the armhole", () => {
    const centre = corners("centreFront", "centreNeck", "sideNeck", "princessTop", "princessWaist", "centreWaist");
    const side = corners("sideFront", "princessTop", "shoulderTip", "underarm", "sideWaist", "princessWaist");
    expect(joined(centre, side, back)).toEqual([
      "princessTop: centreFront & sideFront",
      "princessWaist: centreFront & sideFront",
      "shoulderTip: sideFront & back",
      "sideNeck: centreFront & back",
      "sideWaist: sideFront & back",
      "underarm: sideFront & back",
    ]);
    const fromArmhole = corners("centreFront", "sideNeck", "shoulderTip", "princessTop", "princessWaist");
    expect(joined(fromArmhole, back)).toEqual(["shoulderTip: centreFront & back", "sideNeck: centreFront & back"]);
    // From the neck, the whole shoulder lies on the side piece.
    expect(joined(corners("sideFront", "princessTop", "sideNeck", "shoulderTip"), back)).toEqual([
      "shoulderTip: sideFront & back",
      "sideNeck: sideFront & back",
    ]);
  });

  it("of a cup, its band and what hangs below", () => {
    expect(
      joined(
        corners("cup", "strapInner", "underarm", "sideUnderBust"),
        corners("back", "strapInner", "underarm", "sideUnderBust"),
        corners("frontBand", "underBustCentre", "sideUnderBust", "sideWaist", "centreWaist"),
        corners("backBand", "underBustCentre", "sideUnderBust", "sideWaist", "centreWaist"),
        corners("frontBasque", "centreWaist", "sideWaist", "sideHem"),
        corners("backBasque", "centreWaist", "sideWaist", "sideHem"),
      ),
    ).toEqual(
      [
        "sideHem: frontBasque & backBasque",
        "sideUnderBust: cup & back",
        "sideUnderBust: frontBand & backBand",
        "sideWaist: frontBand & backBand",
        "sideWaist: frontBasque & backBasque",
        "underarm: cup & back",
      ].toSorted(),
    );
  });

  it("of a skirt's panels", () => {
    expect(
      joined(
        corners("skirtFront", "sideWaist", "sideHem", "centreHem"),
        corners("skirtBack", "sideWaist", "sideHem", "centreHem"),
      ),
    ).toEqual(["sideHem: skirtFront & skirtBack", "sideWaist: skirtFront & skirtBack"]);
    expect(
      joined(
        corners("skirtFront", "panelWaist", "panelHem", "centreHem"),
        corners("skirtSideFront", "panelWaist", "sideWaist", "sideHem", "panelHem"),
        corners("skirtSideBack", "panelWaist", "sideWaist", "sideHem", "panelHem"),
        corners("skirtBack", "panelWaist", "panelHem", "centreHem"),
      ),
    ).toEqual([
      "panelHem: skirtBack & skirtSideBack",
      "panelHem: skirtFront & skirtSideFront",
      "panelWaist: skirtBack & skirtSideBack",
      "panelWaist: skirtFront & skirtSideFront",
      "sideHem: skirtSideFront & skirtSideBack",
      "sideWaist: skirtSideFront & skirtSideBack",
    ]);
  });

  it("only where both have the corner on their outline", () => {
    // A mark within a piece is no corner.
    const marked: Piece = { ...corners("front", "sideNeck", "centreNeck"), points: back.points };
    expect(joined(marked, back)).toEqual(["sideNeck: front & back"]);
    expect(joined(corners("front", "underarm"), corners("back", "sideNeck"))).toEqual([]);
  });
});
