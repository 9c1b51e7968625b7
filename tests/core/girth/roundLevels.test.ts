/**
 * Levels round garments of a few straight edges. Sides that slant are three by four by five, so that every place along them is
 * worked out in the head: so far up the slant, three fifths of it out and four fifths up.
 */
import { describe, expect, it } from "vitest";
import { piecePoint } from "../../../src/core/geometry/point";
import { roundLevels, type OpenSeam } from "../../../src/core/girth/roundLevels";
import type { Dart, DartName, Edge, Piece, PieceName, PointName, SeamName } from "../../../src/core/pattern/piece";
import { setOf, type PieceSet } from "../../../src/core/pattern/pieceSet";

type At = readonly [x: number, y: number];
interface Seams {
  /** Each from above downwards. */
  readonly inner: readonly At[];
  readonly outer: readonly At[];
  /** What the seams are: the inner, the outer, above, below. */
  readonly names?: readonly [SeamName, SeamName, SeamName, SeamName];
  /** Which stretch of the outer seam is the mouth of a side dart, counted from above. */
  readonly mouth?: number;
  readonly darts?: readonly { readonly apex: At; readonly inner: At; readonly outer: At }[];
}

/** A ring clockwise on screen: above from the inner seam to the outer, down that, back below, up the inner one. */
function drawn(
  name: PieceName,
  { inner, outer, names = ["centre", "side", "neck", "waist"], mouth, darts = [] }: Seams,
): Piece {
  const places = [...outer, ...inner.toReversed()];
  const numbered = (at: number): PointName => `cut${ONE_TO_EIGHT[at % places.length] ?? 1}`;
  const nameOf = (at: number): DartName => (at === 0 ? "waistDart" : "waistDart2");
  const points = Object.fromEntries(
    [
      ...places.map((at, i) => [numbered(i), at] as const),
      ...darts.flatMap((dart, at) => [
        [`${nameOf(at)}Apex`, dart.apex] as const,
        [`${nameOf(at)}Inner`, dart.inner] as const,
        [`${nameOf(at)}Outer`, dart.outer] as const,
      ]),
    ].map(([point, [x, y]]) => [point, { at: piecePoint(x, y), level: "waist" as const }]),
  );
  const [innerSeam, outerSeam, above, below] = names;
  const seamAt = (i: number): SeamName =>
    i < outer.length - 1 ? outerSeam : i === outer.length - 1 ? below : i < places.length - 1 ? innerSeam : above;
  return {
    name,
    points,
    edges: places.map((_, i): Edge => ({
      from: numbered(i),
      to: numbered(i + 1),
      seam: seamAt(i),
      curve: null,
      mouthOf: i === mouth ? "sideDart" : null,
    })),
    darts: darts.map((_dart, at): Dart => ({
      name: nameOf(at),
      seam: "waist",
      inner: `${nameOf(at)}Inner`,
      outer: `${nameOf(at)}Outer`,
      apex: `${nameOf(at)}Apex`,
      aimsAt: null,
    })),
    levelLines: [],
    centreOnFold: true,
  };
}
const ONE_TO_EIGHT = [1, 2, 3, 4, 5, 6, 7, 8] as const;

/** Girth, way along the opening, seam; rounded to a millionth, where 0 has no sign. */
const told = (
  halves: readonly [PieceSet, PieceSet],
  opens: OpenSeam,
  end = 25,
): readonly (readonly [girth: number, below: number, seam: string | null])[] =>
  roundLevels(halves, opens, end).map(({ girth, below, seam }) => [clean(girth), clean(below), seam]);
const clean = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;
const alike = (...pieces: readonly Piece[]): readonly [PieceSet, PieceSet] => {
  const half = setOf(pieces);
  return [half, half];
};

// 80 wide above, 50 at the waist: so far up the side, 0.6 of it out.
const FRONT: Seams = {
  inner: [
    [0, -10],
    [0, 40],
  ],
  outer: [
    [80, 0],
    [50, 40],
  ],
};
const front = drawn("front", FRONT);
// 60 at the waist; its centre slants in by 30 on the way up, and ends 10 below its side.
const BACK: Seams = {
  inner: [
    [30, 10],
    [0, 50],
  ],
  outer: [
    [60, 0],
    [60, 50],
  ],
};
const back = drawn("back", BACK);

describe("levels of a bodice", () => {
  // At the waist 50 and 60; 40 up the side 74 and 30, which is 50 up the centre back. Further up the back has no centre.
  const WAIST = [220, 0, "waist"] as const;

  it("lie at every bend of a piece, as far as they run from centre to centre", () => {
    expect(told(alike(front, back), "side")).toEqual([WAIST, [220, 0, null], [208, -40, null]]);
    expect(told(alike(front, back), "centreBack")).toEqual([WAIST, [220, 0, null], [208, -50, null]]);
  });

  it("do not hang on how the ring is drawn: where it begins, which way it goes", () => {
    const begun = (piece: Piece, at: number): Piece => ({
      ...piece,
      edges: [...piece.edges.slice(at), ...piece.edges.slice(0, at)],
    });
    const round = (piece: Piece): Piece => ({
      ...piece,
      edges: piece.edges.toReversed().map((edge) => ({ ...edge, from: edge.to, to: edge.from })),
    });
    const bent = drawn("front", {
      ...FRONT,
      inner: [
        [0, -10],
        [0, 0],
        [0, 40],
      ],
      outer: [
        [80, 0],
        [65, 20],
        [50, 40],
      ],
    });
    const wanted = told(alike(bent, back), "centreBack");
    // One more level than above, at the bend 25 up the side: 65 and 60 − 18.75, at 31.25 of the centre.
    expect(wanted).toEqual([WAIST, [220, 0, null], [212.5, -31.25, null], [208, -50, null]]);
    for (let at = 0; at < 5; at += 1) {
      expect(told(alike(begun(bent, at), back), "centreBack")).toEqual(wanted);
      expect(told(alike(begun(round(bent), at), begun(back, at % 4)), "centreBack")).toEqual(wanted);
    }
  });

  it("are two beside a dart of the side, of which the tighter counts, and the sewn side goes on over its mouth", () => {
    // 40 up to the mouth, then 20 to the underarm. At its lower end 50, at its upper 56.
    const darted = drawn("front", {
      inner: [
        [0, 0],
        [0, 70],
      ],
      outer: [
        [56, 0],
        [56, 20],
        [50, 30],
        [50, 70],
      ],
      mouth: 1,
    });
    const straight = drawn("back", {
      inner: [
        [0, 0],
        [0, 60],
      ],
      outer: [
        [60, 0],
        [60, 60],
      ],
    });
    expect(told(alike(darted, straight), "side")).toEqual([WAIST, [220, 0, null], [220, -40, null], [232, -60, null]]);
  });

  it("are the one nearer the waist where both beside a dart are as tight", () => {
    const upright = drawn("back", {
      inner: [
        [0, 0],
        [0, 60],
      ],
      outer: [
        [60, 0],
        [60, 20],
        [60, 30],
        [60, 60],
      ],
      mouth: 1,
    });
    const square = drawn("front", {
      inner: [
        [0, 0],
        [0, 50],
      ],
      outer: [
        [50, 0],
        [50, 50],
      ],
    });
    // 30 up the side the level is 30 or 40 up the centre back.
    expect(told(alike(square, upright), "centreBack")).toEqual([
      WAIST,
      [220, 0, null],
      [220, -30, null],
      [220, -60, null],
    ]);
  });

  it("are the tightest where the centre stands back", () => {
    // The centre steps in by 10 half-way up: there both ends of the step are met.
    const stepped = drawn("back", {
      inner: [
        [0, 0],
        [0, 20],
        [10, 20],
        [10, 40],
      ],
      outer: [
        [60, 0],
        [60, 40],
      ],
    });
    const square = drawn("front", {
      inner: [
        [0, 0],
        [0, 40],
      ],
      outer: [
        [50, 0],
        [50, 40],
      ],
    });
    // 50 and 50 below; 50 at the step, 20 up: its lower end comes first along the centre, and it stays; 60 above.
    expect(told(alike(square, stepped), "centreBack")).toEqual([
      [200, 0, "waist"],
      [200, 0, null],
      [200, -20, null],
      [220, -50, null],
    ]);
  });

  it("leave out what darts take, and lie at their ends", () => {
    const mouthed = drawn("front", { ...FRONT, darts: [{ apex: [20, 8], inner: [16, 40], outer: [24, 40] }] });
    // The dart's end lies 32 above the waist, 40 up the side, and its mouth takes 8.
    const straight = drawn("back", {
      inner: [
        [0, 0],
        [0, 50],
      ],
      outer: [
        [60, 0],
        [60, 50],
      ],
    });
    expect(told(alike(mouthed, straight), "side")).toEqual([WAIST, [204, 0, null], [268, -40, null], [280, -50, null]]);
  });
});

describe("levels over a princess front", () => {
  const sideFront = drawn("sideFront", {
    inner: [
      [0, 0],
      [0, 50],
    ],
    outer: [
      [30, 0],
      [30, 50],
    ],
    names: ["princess", "side", "shoulder", "waist"],
  });
  const straightBack = drawn("back", {
    inner: [
      [0, 0],
      [0, 50],
    ],
    outer: [
      [60, 0],
      [60, 50],
    ],
  });
  const names = ["centre", "princess", "shoulder", "waist"] as const;

  it("go on where they meet the seam on the other piece, and lie at its bends too", () => {
    // Its dart ends 16 above the waist, 20 up the seam, where it is 58 wide; at the waist 70 less a mouth of 10.
    const centreFront = drawn("centreFront", {
      inner: [
        [0, -5],
        [0, 45],
      ],
      outer: [
        [40, 0],
        [70, 40],
      ],
      names,
      darts: [{ apex: [20, 24], inner: [15, 40], outer: [25, 40] }],
    });
    expect(told(alike(centreFront, sideFront, straightBack), "side")).toEqual([
      // Below it is as long as it goes from (70, 40) to (0, 45).
      [clean(2 * (90 + Math.hypot(70, 5))), 0, "waist"],
      [300, 0, null],
      [296, -20, null],
      [260, -50, null],
    ]);
  });

  it("are none where the other piece does not go on to the centre", () => {
    const short = drawn("centreFront", {
      inner: [
        [0, 20],
        [0, 50],
      ],
      outer: [
        [40, 0],
        [40, 50],
      ],
      names,
    });
    expect(told(alike(short, sideFront, straightBack), "side")).toEqual([
      [260, 0, "waist"],
      [260, 0, null],
      [260, -30, null],
    ]);
  });
});

describe("levels below the waist", () => {
  const frontBasque = drawn("frontBasque", {
    inner: [
      [0, 0],
      [0, 40],
    ],
    outer: [
      [52, 0],
      [82, 40],
    ],
    names: ["centre", "side", "waist", "hem"],
  });
  const backBasque = drawn("backBasque", {
    inner: [
      [0, 0],
      [30, 40],
    ],
    outer: [
      [60, 0],
      [60, 50],
    ],
    names: ["centre", "side", "waist", "hem"],
  });

  it("come first, one of them just where the opening ends; the waist is that of the basques", () => {
    const bodice = [
      [220, 0, null],
      [208, -40, null],
    ];
    // 25 down the side: 67, and 60 less 18.75; 40 down: 76 and 30. 50 down the back has no centre.
    expect(told(alike(frontBasque, backBasque, front, back), "side")).toEqual([
      [224, 0, "waist"],
      [224, 0, null],
      [216.5, 25, null],
      [212, 40, null],
      ...bodice,
    ]);
    // 25 down the centre is 20 below the waist: 20 down the side, 64 and 45.
    expect(told(alike(frontBasque, backBasque, front, back), "centreBack")).toEqual([
      [224, 0, "waist"],
      [224, 0, null],
      [218, 25, null],
      [212, 50, null],
      [220, 0, null],
      [208, -50, null],
    ]);
  });

  it("are none where one of the basques is not there: the waist is the bodice's", () => {
    for (const one of [frontBasque, backBasque])
      expect(told(alike(one, front, back), "side")).toEqual([
        [220, 0, "waist"],
        [220, 0, null],
        [208, -40, null],
      ]);
  });
});

describe("levels of a cup over a band", () => {
  const cup = drawn("cup", { ...FRONT, names: ["centre", "side", "neck", "underBust"] });
  const overBand = drawn("back", { ...BACK, names: ["centre", "side", "neck", "underBust"] });
  const names = ["centre", "side", "underBust", "waist"] as const;
  const frontBand = drawn("frontBand", {
    inner: [
      [0, 0],
      [0, 30],
    ],
    outer: [
      [50, 0],
      [50, 30],
    ],
    names,
  });
  // 16 in over 30: the centre is 34 long.
  const backBand = drawn("backBand", {
    inner: [
      [16, 0],
      [0, 30],
    ],
    outer: [
      [60, 0],
      [60, 30],
    ],
    names,
  });

  it("go up the band first, and on from its length", () => {
    expect(told(alike(cup, frontBand, backBand, overBand), "side")).toEqual([
      [220, 0, "waist"],
      [188, -30, "underBust"],
      [220, 0, null],
      [188, -30, null],
      [220, -30, null],
      [208, -70, null],
    ]);
    expect(told(alike(cup, frontBand, backBand, overBand), "centreBack")).toEqual([
      [220, 0, "waist"],
      [188, -34, "underBust"],
      [220, 0, null],
      [188, -34, null],
      [220, -34, null],
      [208, -84, null],
    ]);
  });

  it("take the lower of the two sides where the halves are not alike, and the middle of the two centres", () => {
    const lower = drawn("backBand", {
      inner: [
        [16, 0],
        [0, 30],
      ],
      outer: [
        [60, 0],
        [60, 24],
      ],
      names,
    });
    const lowerFront = drawn("frontBand", {
      inner: [
        [0, 0],
        [0, 30],
      ],
      outer: [
        [50, 0],
        [50, 24],
      ],
      names,
    });
    const halves = (which: readonly Piece[]): PieceSet => setOf([cup, overBand, ...which]);
    const uneven = [halves([frontBand, backBand]), halves([lowerFront, lower])] as const;
    // Bands of 30 and of 24 at the side; 40 further up, where both have a level.
    const side = told(uneven, "side");
    expect(side[1]).toEqual([188, -27, "underBust"]);
    expect(side.at(-1)).toEqual([208, -64, null]);
    expect(told([uneven[1], uneven[0]], "side").at(-1)).toEqual([208, -64, null]);
    expect(told(uneven, "centreBack")[1]).toEqual([188, -34, "underBust"]);
  });
});

describe("levels of two halves that are not alike", () => {
  it("add both up, each at the same way along its side", () => {
    const wider = drawn("front", {
      inner: [
        [0, -10],
        [0, 40],
      ],
      outer: [
        [90, 0],
        [60, 40],
      ],
    });
    const square = drawn("back", {
      inner: [
        [0, 0],
        [0, 50],
      ],
      outer: [
        [60, 0],
        [60, 50],
      ],
    });
    const halves = [setOf([front, back]), setOf([wider, square])] as const;
    // 110 and 120 at the waist; 40 up 104 and 84 + 60, at 50 and 40 up the two centres.
    expect(told(halves, "centreBack")).toEqual([
      [230, 0, "waist"],
      [230, 0, null],
      [248, -45, null],
    ]);
    expect(told(halves, "side").at(-1)).toEqual([248, -40, null]);
  });
});
