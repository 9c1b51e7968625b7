import { FIT_NAMES } from "../../src/core/decisions/fitNames";
import { fitOf } from "../../src/core/alterations/fit/index";
import { garment, bustPointOf, STYLE_NAMES } from "../support/garments";
import { pieceIn, piecesOf, setOf, type PieceSet } from "../../src/core/pattern/pieceSet";
import { pointNames, pointOf, isBend, type Edge, type Piece } from "../../src/core/pattern/piece";
import { edgePointAt, edgeSplit } from "../../src/core/geometry/edgeCurve";
import { curveOf } from "../../src/core/pattern/ring";

export function withBends(piece: Piece, t = 0.5, straight = false): Piece {
  let n = 0;
  const points = { ...piece.points } as any;
  const edges: Edge[] = [];
  for (const edge of piece.edges) {
    if (edge.mouthOf !== null || edge.seam === "princess" || (edge.curve === null && !straight)) { edges.push(edge); continue; }
    n += 1;
    const name = `bend${String(n).padStart(3, "0")}` as any;
    const c = curveOf(piece, edge);
    const [one, two] = edgeSplit(c, t);
    points[name] = { at: one.b, level: "bust" };
    edges.push({ ...edge, to: name, curve: edge.curve === null ? null : one.curve }, { ...edge, from: name, curve: edge.curve === null ? null : two.curve });
  }
  return { ...piece, points, edges };
}
const bentSet = (s: PieceSet, t: number, straight: boolean) => setOf(piecesOf(s).map((p) => withBends(p, t, straight)));
const samples = (p: Piece) => p.edges.flatMap((e) => { const c = curveOf(p, e); return Array.from({ length: 60 }, (_, i) => edgePointAt(c, i / 60)); });
export function off(a: Piece, b: Piece): number {
  let worst = 0;
  for (const n of pointNames(a)) if (!isBend(n)) { const q = b.points[n]; if (q === undefined) return 999; worst = Math.max(worst, Math.hypot(q.at.x - pointOf(a, n).x, q.at.y - pointOf(a, n).y)); }
  const sa = samples(a);
  for (const p of samples(b)) {
    let best = Infinity;
    for (let i = 0; i < sa.length; i += 1) {
      const u = sa[i]!, v = sa[(i + 1) % sa.length]!;
      const dx = v.x - u.x, dy = v.y - u.y, l2 = dx * dx + dy * dy;
      const s = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - u.x) * dx + (p.y - u.y) * dy) / l2));
      best = Math.min(best, Math.hypot(u.x + s * dx - p.x, u.y + s * dy - p.y));
    }
    worst = Math.max(worst, best);
  }
  return worst;
}
if (process.argv[1]?.endsWith("explore.ts")) for (const style of STYLE_NAMES) {
  const g = garment({ style });
  for (const straight of [false, true]) {
  const b = bentSet(g, 0.45, straight);
  for (const fit of FIT_NAMES) {
    const d = fitOf(fit);
    if (!d.applies(g)) { if (d.applies(b)) console.log(style, fit, "applies differs"); continue; }
    if (!d.applies(b)) { console.log(style, fit, straight, "not applies bent"); continue; }
    const out: string[] = [];
    for (const amount of [d.range.most / 3, d.range.least / 3]) {
      if (amount === 0) continue;
      const t0 = performance.now();
      const x = d.apply(g, amount, { bustPoint: bustPointOf(g) });
      const t1 = performance.now();
      const y = d.apply(b, amount, { bustPoint: bustPointOf(b) });
      const t2 = performance.now();
      if (!x.ok || !y.ok) { out.push(JSON.stringify([amount, x.ok ? "ok" : x.failure, y.ok ? "ok" : y.failure])); continue; }
      out.push(amount.toFixed(0) + ":" + piecesOf(x.value.pieces).filter((p) => g[p.name] !== p).map((p) => p.name + " " + off(p, pieceIn(y.value.pieces, p.name)).toFixed(3)).join(" ") + ` ${(t1 - t0).toFixed(0)}/${(t2 - t1).toFixed(0)}ms`);
    }
    console.log(style, fit, straight ? "S" : "C", out.join(" | "));
  }}
}
