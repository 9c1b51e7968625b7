import { closeWedgeIntoDart } from "../../src/core/surgery/closeWedge";
import { piecePoint } from "../../src/core/geometry/point";
import { pointOf } from "../../src/core/pattern/piece";
import { cornerPiece, dartFor, type CornerOf } from "../support/cornerPiece";
import { seamByBezierJs } from "../support/independent";
const CORNERS: readonly CornerOf[] = [
  ["centreNeck", 0, 0, "neck"],
  ["sideNeck", 60, 0, "shoulder"],
  ["shoulderDartInner", 80, 0, "shoulder", "shoulderDart"],
  ["shoulderDartOuter", 120, 0, "shoulder"],
  ["shoulderTip", 160, 0, "armhole"],
  ["armholeTouch", 150, 80, "armhole"],
  ["underarm", 200, 100, "side"],
  ["sideBust", 200, 120, "side"],
  ["sideWaist", 200, 300, "waist"],
  ["waistDartOuter", 115, 300, "waist", "waistDart"],
  ["waistDartInner", 85, 300, "waist"],
  ["centreWaist", 0, 300, "centre"],
  ["centreBust", 0, 120, "centre"],
];
const front = cornerPiece({ corners: CORNERS, inside: { bustPoint: [100, 120], bustLineInner: [100, 120], bustLineOuter: [100, 120], shoulderDartApex: [105, 90], waistDartApex: [100, 150] },
  darts: [dartFor("shoulderDart", "shoulder", "bustPoint"), dartFor("waistDart", "waist", "bustPoint")] });
const show = (w: any, p = front) => {
  const d = closeWedgeIntoDart(p, w);
  if (!d.ok) { console.log(JSON.stringify(w), d.failure); return; }
  console.log(JSON.stringify(w), d.value.dart, d.value.turn, JSON.stringify(d.value.trace.cuts), d.value.trace.parts.map((x) => x.motion.angle), Object.fromEntries(Object.entries(d.value.piece.points).map(([n, q]) => [n, `${q.at.x.toFixed(3)},${q.at.y.toFixed(3)}`])), seamByBezierJs(p, w.seam) - seamByBezierJs(d.value.piece, w.seam));
};
show({ seam: "neck", amount: 0.4, point: piecePoint(100, 120) });
show({ seam: "neck", amount: 0.4, point: piecePoint(-30, 120) });
show({ seam: "neck", amount: 4, point: piecePoint(30, 120) });
show({ seam: "armhole", amount: 2, point: piecePoint(100, 120) });
show({ seam: "armhole", amount: 6, point: piecePoint(100, 120) });
show({ seam: "armhole", amount: 12, point: piecePoint(100, 120) });
