import { cubicIntersections } from "./src/core/geometry/bezierPair";
import { awkward, cubicOf, spreadCubics } from "./tests/support/curves";
const arch = cubicOf([0, 0], [0, 80], [100, 80], [100, 0]);
const near = cubicOf([0, 0], [0, 80.001], [100, 79.999], [100, 0]);
const time = (n: string, f: () => number) => { const t = performance.now(); const r = f(); console.log(n, r, (performance.now() - t).toFixed(1)); };
time("random", () => spreadCubics(13, 300).reduce((s, c, i) => s + cubicIntersections(c, spreadCubics(14, 300)[i]!).length, 0));
time("near", () => cubicIntersections(arch, near).length);
for (const [n, c] of awkward) for (const [m, d] of awkward) { console.log(n,"|",m); const t = performance.now(); const r = cubicIntersections(c, d).length; const e = performance.now() - t; if (e > 3) console.log(n, "|", m, r, e.toFixed(1)); }
