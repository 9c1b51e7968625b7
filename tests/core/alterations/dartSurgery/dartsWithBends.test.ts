/** What is made of a dart on pieces with bends comes out as on those without: a line with a bend in it is the same line. */
import { describe, expect, it } from "vitest";
import type { Alteration } from "../../../../src/core/decisions/alteration";
import type { StyleName } from "../../../../src/core/decisions/pattern";
import type { DartHome, DartName, PieceName } from "../../../../src/core/pattern/piece";
import { unlikeWithBends, withAndWithout } from "../../../support/bentPieces";

type Without<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;
type OnDart = Without<Exclude<Alteration, { kind: "fit" }>, "id" | "dart">;

describe("a dart on pieces with bends", () => {
  const pivots = (["side", "french", "waist", "shoulder", "armhole", "neck", "centre"] satisfies DartHome[]).flatMap(
    (to) => [0.6, 1].map((share): OnDart => ({ kind: "dartPivot", to, share })),
  );
  const asked: readonly OnDart[] = [
    ...pivots,
    { kind: "dartSplit", into: 2 },
    { kind: "dartSplit", into: 3 },
    { kind: "dartGather" },
    { kind: "dartLegs", bow: 1 },
    { kind: "dartEnd", shorten: 10, across: 4, hold: "fullness", giveBack: {} },
    { kind: "dartEnd", shorten: -6, across: -3, hold: "mouth", giveBack: {} },
    ...(["centreSeam", "sideSeam", "otherDart", "underarm", "waistEnd"] as const).map((place): OnDart => ({
      kind: "dartMouth",
      inner: 3,
      outer: 2,
      giveBack: { [place]: 1 },
    })),
    { kind: "dartPlace", by: 6, how: "redraw", giveBack: {} },
    { kind: "dartPlace", by: 6, how: "offCentreSeam", giveBack: {} },
  ];
  const darts: readonly (readonly [StyleName, PieceName, DartName])[] = [
    ["sideDart", "front", "waistDart"],
    ["sideDart", "front", "sideDart"],
    ["sideDart", "back", "waistDart"],
    ["sideDart", "frontBasque", "waistDart"],
    ["midriff", "back", "underBustDart"],
  ];
  const onDart = (piece: PieceName, dart: DartName, one: OnDart): Alteration => ({
    ...one,
    id: "a",
    dart: { piece, dart },
  });

  it.each(darts)("of the style %s is what it is without: %s, %s", (style, piece, dart) => {
    const both = withAndWithout(style);
    const limits = { corner: 0.1, seam: 0.14, line: 0.95 };
    const off = asked.flatMap((one) => unlikeWithBends(both, onDart(piece, dart, one), limits, 0.18));
    expect(off).toEqual([]);
  });
});
