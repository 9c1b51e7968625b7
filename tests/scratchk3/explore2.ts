import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import { fitOf } from "../../src/core/alterations/fit/index";
import { applyAlteration } from "../../src/core/alterations/applyAlteration";
import { garment, bustPointOf, STYLE_NAMES } from "../support/garments";
import { pieceIn, piecesOf, setOf, type PieceSet } from "../../src/core/pattern/pieceSet";
import { pointNames, pointOf, isBend, type Edge, type Piece } from "../../src/core/pattern/piece";
import { seamByBezierJs } from "../support/independent";
import { withBends, off } from "./explore";
const bentSet = (s: PieceSet, t: number) => setOf(piecesOf(s).map((p) => withBends(p, t)));
const SEAMS = ["neck", "shoulder", "armhole", "side", "waist", "centre", "underBust", "strap"] as const;
export function compare(x: PieceSet, y: PieceSet, g: PieceSet): string {
  return piecesOf(x).filter((p) => g[p.name] !== p).map((a) => {
    const b = pieceIn(y, a.name);
    let worst = 0, who = "";
    for (const n of pointNames(a)) { const q = b.points[n]; if (q === undefined) { if (!n.startsWith("cut")) return `${a.name} no ${n}`; continue; } const d = Math.hypot(q.at.x - pointOf(a, n).x, q.at.y - pointOf(a, n).y); if (d > worst) { worst = d; who = n; } }
    let seam = 0, sw = "";
    for (const s of SEAMS) { const d = Math.abs(seamByBezierJs(a, s) - seamByBezierJs(b, s)); if (d > seam) { seam = d; sw = s; } }
    return `${a.name} pt ${worst.toFixed(3)} ${who} seam ${seam.toFixed(4)} ${sw} line ${off(a, b).toFixed(2)}`;
  }).join("; ");
}
function values(a: any, b: any): string {
  let w = ""; let m = 0;
  for (const k of new Set([...Object.keys(a), ...Object.keys(b)])) { const d = Math.abs((a[k] ?? NaN) - (b[k] ?? NaN)); if (!(d <= m)) { m = d; w = k; } }
  return `values ${m.toFixed(3)} ${w}`;
}
for (const style of STYLE_NAMES) {
  const g = garment({ style });
  const b = bentSet(g, 0.45);
  const run = (label: string, alteration: any) => {
    const c = { bustPoint: bustPointOf(g) };
    const t0 = performance.now();
    const x = applyAlteration(g, alteration, c);
    const t1 = performance.now();
    const y = applyAlteration(b, alteration, c);
    const t2 = performance.now();
    if (!x.ok || !y.ok) { console.log(style, label, JSON.stringify([x.ok ? "ok" : x.failure, y.ok ? "ok" : y.failure])); return; }
    console.log(style, label, compare(x.value.pieces, y.value.pieces, g), values(x.value.trace.values, y.value.trace.values), `${(t1 - t0).toFixed(0)}/${(t2 - t1).toFixed(0)}ms`);
  };
  for (const fit of FIT_NAMES) {
    const d = fitOf(fit);
    if (!d.applies(g)) continue;
    run(fit, { kind: "fit", id: "a", fit, amount: Math.round(d.range.most / 3) });
  }
  for (const piece of piecesOf(g)) for (const { name } of piece.darts) {
    const dart = { piece: piece.name, dart: name };
    for (const to of ["side", "french", "waist", "underBust", "shoulder", "armhole", "neck", "centre"]) run(`${piece.name} ${name} to ${to}`, { kind: "dartPivot", id: "a", dart, to, share: 0.6 });
    for (const to of ["side", "waist", "shoulder"]) run(`${piece.name} ${name} whole to ${to}`, { kind: "dartPivot", id: "a", dart, to, share: 1 });
    for (const into of [2, 3]) run(`${piece.name} ${name} into ${into}`, { kind: "dartSplit", id: "a", dart, into });
    run(`${piece.name} ${name} gather`, { kind: "dartGather", id: "a", dart });
    run(`${piece.name} ${name} bow`, { kind: "dartLegs", id: "a", dart, bow: 1 });
    run(`${piece.name} ${name} end`, { kind: "dartEnd", id: "a", dart, shorten: 10, across: 4, hold: "fullness", giveBack: {} });
    for (const pl of ["centreSeam", "sideSeam", "otherDart", "underarm", "waistEnd"]) run(`${piece.name} ${name} mouth ${pl}`, { kind: "dartMouth", id: "a", dart, inner: 3, outer: 2, giveBack: { [pl]: 1 } });
    run(`${piece.name} ${name} place`, { kind: "dartPlace", id: "a", dart, by: 6, how: "redraw", giveBack: {} });
    run(`${piece.name} ${name} off centre`, { kind: "dartPlace", id: "a", dart, by: 6, how: "offCentreSeam", giveBack: {} });
  }
}
