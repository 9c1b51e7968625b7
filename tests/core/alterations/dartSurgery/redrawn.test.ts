/** A dart that surgery has made can be redrawn like any other: what it sets free is given back on its own seam. */
import type { DartRedraw, GiveBackPlace } from "../../../../src/core/decisions/alteration";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { giveBackPlaces } from "../../../../src/core/alterations/redraw/giveBack";
import type { PieceSet } from "../../../../src/core/pattern/pieceSet";
import { redrawDart } from "../../../../src/core/alterations/redraw/redrawDart";
import { drawnStop, usualStop } from "../../../../src/core/dart/dartEnd";
import { draftFrontBlock } from "../../../../src/core/draft/frontBlock";
import { validateOutline } from "../../../../src/core/geometry/outline";
import { DART_NAMES, homeOf } from "../../../../src/core/pattern/dartNames";
import { pointOf, type DartHome, type DartRef, type SeamName } from "../../../../src/core/pattern/piece";
import { midriffStyle } from "../../../../src/core/style/midriffStyle";
import { outlineOf } from "../../../../src/core/pattern/ring";
import { anyAmount } from "../../../support/amounts";
import { seamByBezierJs } from "../../../support/independent";
import { backAt, done, frontAt, legsDiffer, measuresAt } from "./fronts";

type Made = readonly [PieceSet, DartRef];

function movedTo(bust: number, home: DartHome): Made {
  const set = { front: frontAt(bust), back: backAt(bust) };
  return [
    done(set, "front", { kind: "dartPivot", dart: "sideDart", to: home, share: 1 }).pieces,
    { piece: "front", dart: `${home}Dart` },
  ];
}

function cups(bust: number): PieceSet {
  const open = midriffStyle.open(draftFrontBlock(measuresAt(bust)), backAt(bust), 50, { strap: "thin" });
  if (!open.ok || open.value.cup === undefined) throw new Error("no cups");
  return midriffStyle.finish(open.value, pointOf(open.value.cup, "bustPoint"), 50);
}

const anyDart: fc.Arbitrary<Made> = fc
  .tuple(
    fc.constantFrom(800, 880, 1000),
    fc.constantFrom("french", "shoulder", "armhole", "neck", "centre", "waist", "cup", "back"),
  )
  .map(([bust, where]): Made => {
    if (where === "cup" || where === "back") return [cups(bust), { piece: where, dart: "underBustDart" }];
    return movedTo(bust, where);
  });

/** Small enough that a neck edge or an armhole can give it. */
const anyRedraw = (dart: DartRef, place: GiveBackPlace): fc.Arbitrary<DartRedraw> => {
  const common = { id: fc.constant("a"), dart: fc.constant(dart), giveBack: fc.constant({ [place]: 1 }) };
  return fc.oneof(
    fc.record({
      ...common,
      kind: fc.constant("dartEnd" as const),
      shorten: anyAmount(-8, 12),
      across: anyAmount(-3, 3),
      hold: fc.constantFrom("mouth" as const, "fullness" as const),
    }),
    fc.record({
      ...common,
      kind: fc.constant("dartMouth" as const),
      inner: anyAmount(-3, 2.5),
      outer: anyAmount(-3, 2.5),
    }),
    fc.record({
      ...common,
      kind: fc.constant("dartPlace" as const),
      by: anyAmount(-4, 2.5),
      how: fc.constant("redraw" as const),
    }),
  );
};

/** What a seam that is sewn to another piece must keep, whichever dart is redrawn; the lower edge of an armhole is free. */
const SEWN_TO_OTHERS: readonly SeamName[] = ["shoulder", "side", "waist", "underBust", "strap"];

describe("a dart of any home, redrawn", () => {
  it("keeps its own seam, all seams sewn to others, equal legs and a sound outline, wherever it is given back", () => {
    fc.assert(
      fc.property(
        anyDart.chain(([pieces, dart]) =>
          fc
            .constantFrom(...giveBackPlaces(pieces, dart).filter((place) => place !== "otherDart"))
            .chain((place) => anyRedraw(dart, place).map((asked) => ({ pieces, dart, asked }))),
        ),
        ({ pieces, dart, asked }) => {
          const redrawn = redrawDart(pieces, asked);
          if (!redrawn.ok) throw new Error(JSON.stringify(redrawn.failure));
          const [was, is] = [pieces[dart.piece], redrawn.value.pieces[dart.piece]];
          if (was === undefined || is === undefined) throw new Error("piece");
          const own = was.darts.find(({ name }) => name === dart.dart)?.seam ?? "side";
          for (const seam of [own, ...SEWN_TO_OTHERS])
            expect(Math.abs(seamByBezierJs(is, seam) - seamByBezierJs(was, seam))).toBeLessThan(0.05);
          expect(legsDiffer(is, dart.dart)).toBeLessThan(1);
          expect(validateOutline(outlineOf(is))).toEqual([]);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe("where a dart gives back", () => {
  const placesOf = (home: DartHome) => giveBackPlaces(...movedTo(880, home));

  it("is an end of its own seam", () => {
    expect(placesOf("shoulder")).toEqual(["armholeEnd", "neckEnd"]);
    expect(placesOf("armhole")).toEqual(["armholeEnd"]);
    expect(placesOf("neck")).toEqual(["neckEnd"]);
    expect(placesOf("centre")).toEqual(["centreEnd"]);
    expect(placesOf("french")).toEqual(["waistEnd", "underarm"]);
    expect(placesOf("waist")).toEqual(["sideSeam", "centreSeam", "otherDart"]);
  });

  it("is never another piece's dart where that piece, or its dart, is not there", () => {
    const [{ front, back }] = movedTo(880, "waist");
    if (front === undefined || back === undefined) throw new Error("pieces");
    expect(giveBackPlaces({ back }, { piece: "back", dart: "waistDart" })).toEqual(["sideSeam", "centreSeam"]);
    const without = done({ front, back }, "front", { kind: "dartPivot", dart: "waistDart", to: "armhole", share: 1 });
    expect(giveBackPlaces(without.pieces, { piece: "back", dart: "waistDart" })).toEqual(["sideSeam", "centreSeam"]);
    expect(giveBackPlaces(cups(880), { piece: "back", dart: "underBustDart" })).toEqual(["sideSeam", "centreSeam"]);
  });
});

describe("how far short of the bust point darts end", () => {
  // Common practice: published-figures.md section 2.2, waist or under-bust 15 to 25 mm, side or shoulder 25 to 38 and up to 50.
  it.each(DART_NAMES)("%s", (name) => {
    const isFromBelow = homeOf(name) === "waist" || homeOf(name) === "underBust";
    expect(usualStop(name)).toEqual(isFromBelow ? { least: 15, most: 25 } : { least: 20, most: 40 });
    expect(drawnStop(name, 50)).toBe(isFromBelow ? 20 : 30);
  });
});
