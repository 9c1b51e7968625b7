/** Pieces at true scale made by hand, for the tests of the files written from them. Invented, and no garment. */
import type { RingPoint, TruePiece } from "../../src/core/cutting/truePiece";
import { lineEdge, type EdgeCurve } from "../../src/core/geometry/edgeCurve";
import { piecePoint } from "../../src/core/geometry/point";
import { radians } from "../../src/core/units";

const p = piecePoint;

const corner = (x: number, y: number): RingPoint => ({ at: p(x, y), corner: true });
const onCurve = (x: number, y: number): RingPoint => ({ at: p(x, y), corner: false });

const SCOOP: EdgeCurve<"piece"> = { a: p(150, 0), b: p(200, 80.5), curve: { c1: p(150, 40.25), c2: p(160, 80.5) } };

/** A front on the fold: straight but for a scoop at its upper right corner, with a dart from below. */
export const HAND_FRONT: TruePiece = {
  key: "front",
  name: "front",
  half: null,
  size: null,
  number: [1, 2],
  cutting: [
    corner(0, -10),
    corner(160, -10),
    onCurve(163.5, 30),
    onCurve(180.25, 68),
    corner(210, 72),
    corner(210, 315),
    corner(0, 315),
  ],
  stitch: [
    lineEdge(p(0, 0), p(150, 0)),
    SCOOP,
    lineEdge(p(200, 80.5), p(200, 300)),
    lineEdge(p(200, 300), p(0, 300)),
    lineEdge(p(0, 300), p(0, 0)),
  ],
  fold: [lineEdge(p(0, 300), p(0, 0))],
  centreSeam: [],
  seams: [{ seam: "waist", edges: [lineEdge(p(200, 300), p(110, 300))], opens: null }],
  lengthen: [[p(0, 240), p(200, 240)]],
  darts: [
    {
      name: "waistDart",
      legs: [
        lineEdge(p(80, 300), p(95, 160)),
        { a: p(110, 300), b: p(95, 160), curve: { c1: p(112, 250), c2: p(98, 200) } },
      ],
      fold: [p(95, 160), p(95, 315)],
      end: p(95, 160),
      mouth: [p(80, 300), p(110, 300)],
      gathered: false,
    },
  ],
  notches: [
    { kind: "seam", number: 1, seam: "side", outward: radians(0), stitch: p(200, 200), cut: p(210, 200) },
    { kind: "centre", number: 0, seam: "neck", outward: radians(-Math.PI / 2), stitch: p(0, 0), cut: p(0, -10) },
    { kind: "dart", number: 0, seam: "waist", outward: radians(Math.PI / 2), stitch: p(80, 300), cut: p(80, 315) },
  ],
  grain: [p(40, 60), p(40, 260)],
  levels: [
    { level: "bust", points: [p(0, 140), p(200, 140)] },
    { level: "waist", points: [p(0, 290), p(90, 292), p(200, 295)] },
  ],
  bustPoint: p(95, 140),
  drills: [{ at: p(95, 172), what: "dartEnd" }],
  dots: [],
  ventFold: null,
  tacking: [],
  cut: { onFold: true, count: 1 },
  title: { centre: p(130, 220), width: 60, height: 20 },
};

/** A slanting strap without allowances, cut twice, of a printed size; it lies far off and left of the centre line. */
export const HAND_STRAP: TruePiece = {
  key: "strap-left-12",
  name: "strap",
  half: "left",
  size: "12",
  number: [2, 2],
  cutting: [corner(-530, 410), corner(-500, 400), corner(-480, 640), corner(-510, 650)],
  stitch: [
    lineEdge(p(-530, 410), p(-500, 400)),
    lineEdge(p(-500, 400), p(-480, 640)),
    lineEdge(p(-480, 640), p(-510, 650)),
    lineEdge(p(-510, 650), p(-530, 410)),
  ],
  fold: [],
  centreSeam: [],
  seams: [],
  lengthen: [],
  darts: [],
  notches: [
    { kind: "seam", number: 4, seam: "strap", outward: radians(Math.PI), stitch: p(-515, 405), cut: p(-515, 405) },
  ],
  grain: [p(-512, 430), p(-498, 620)],
  levels: [],
  bustPoint: null,
  drills: [{ what: "button", at: p(-494, 472), hole: [p(-491.01, 471.75), p(-505.96, 473)] }],
  dots: [],
  ventFold: null,
  tacking: [],
  cut: { onFold: false, count: 2 },
  title: { centre: p(-505, 520), width: 20, height: 100 },
};
