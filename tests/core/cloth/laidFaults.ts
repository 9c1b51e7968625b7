/** A second opinion on lays: overlaps by an independent polygon library, widths, turns and pairs worked out afresh. */
import { Clipper, FillRule } from "clipper2-ts";
import type { ClothLay, LaidPart } from "../../../src/core/cloth/cutting";
import { cutRingOf } from "../../../src/core/cloth/cutRing";
import type { ClothAsked } from "../../../src/core/cloth/layCloth";
import type { Part } from "../../../src/core/parts/part";
import { invariant } from "../../../src/core/result";

/** mm², of two parts that touch: what rounding leaves along a metre. */
const TOUCH = 0.5;
/** Share of an area: what drawing arcs as straight stretches leaves. */
const ARCS = 1e-4;
/** mm. */
const NEAR = 1e-6;
const SELVAGE = 10;

type Spots = readonly { readonly x: number; readonly y: number }[];

const areaOf = (ring: Spots): number => Math.abs(Clipper.areaD(ring.map(({ x, y }) => ({ x, y }))));
const path = ({ ring }: LaidPart) => [ring.map(({ x, y }) => ({ x, y }))];

const overlap = (one: LaidPart, other: LaidPart): number =>
  Clipper.intersectD(path(one), path(other), FillRule.NonZero, 4).reduce(
    (sum, p) => sum + Math.abs(Clipper.areaD(p)),
    0,
  );

/** All that is wrong with a lay; none where it can be cut as it says. */
export function faultsOf(lay: ClothLay, asked: ClothAsked): readonly string[] {
  const faults: string[] = [];
  const { parts, width, onFold, length } = lay;
  parts.forEach((one, index) => {
    for (const other of parts.slice(index + 1)) {
      const common = overlap(one, other);
      if (common > TOUCH) faults.push(`${one.key} ${one.copy} lies on ${other.key} ${other.copy}: ${common} mm²`);
    }
    const [xs, ys] = [one.ring.map(({ x }) => x), one.ring.map(({ y }) => y)];
    const [left, right] = [Math.min(...xs), Math.max(...xs)];
    if (left < (onFold ? 0 : SELVAGE) - NEAR) faults.push(`${one.key} over the left edge: ${left}`);
    if (right > (onFold ? width / 2 : width) - SELVAGE + NEAR) faults.push(`${one.key} over the selvage: ${right}`);
    if (Math.min(...ys) < -NEAR || Math.max(...ys) > length + NEAR) faults.push(`${one.key} beyond the length`);
    if (one.atFold && (!onFold || Math.abs(left) > NEAR)) faults.push(`${one.key} off the fold: ${left}`);
    if (Math.abs(left - one.x) > NEAR || Math.abs(Math.min(...ys) - one.y) > NEAR)
      faults.push(`${one.key} measured amiss`);
  });
  for (const part of asked.parts) if (part.cloth === asked.name) faults.push(...faultsOfPart(part, lay, asked));
  return faults;
}

/** How often it is cut, which way up, which side up, and whether what lies there is the part at all. */
function faultsOfPart(part: Part, lay: ClothLay, asked: ClothAsked): readonly string[] {
  const faults: string[] = [];
  const own = lay.parts.filter(({ key }) => key === part.key);
  const folded = (one: LaidPart): boolean => one.atFold;
  const cut = own.reduce((sum, one) => sum + (folded(one) ? 1 : one.layers), 0);
  const isStrip = part.kind === "rectangle" && part.grain === "bias";
  if (isStrip ? cut % part.cut.count !== 0 : cut !== part.cut.count) faults.push(`${part.key} cut ${cut} times`);
  const allowed = { along: [0, 180], across: [90, 270], bias: [45, 135, 225, 315] }[part.grain];
  const isRound = part.kind === "sector";
  const isUneven = part.kind === "sector" && part.waistRadii !== undefined;
  for (const { turn, atFold, isTurnedOver } of own) {
    const up = lay.oneWay ? { along: [0], across: [90], bias: [45, 315] }[part.grain] : allowed;
    if (!up.includes(turn) && !(isRound && own.every((one) => (one.turn - turn) % 180 === 0)))
      faults.push(`${part.key} turned by ${turn}`);
    if (atFold && lay.oneWay && isTurnedOver) faults.push(`${part.key} upside down on the fold`);
  }
  if (!lay.onFold && (part.kind === "piece" || isUneven) && !part.cut.onFold) {
    const over = own.filter((one) => one.isTurnedOver).length;
    if (Math.abs(own.length - 2 * over) > 1) faults.push(`${part.key} no pairs: ${over} of ${own.length} turned over`);
  }
  if (isStrip) return faults;
  const { open } = cutRingOf(part, asked.allowances);
  for (const one of own) {
    const area = (one.atFold ? 2 : 1) * areaOf(one.ring);
    if (Math.abs(area - areaOf(open)) > TOUCH + ARCS * area) faults.push(`${part.key} is another shape`);
    if (!one.atFold && !isMoved(open, one)) faults.push(`${part.key} is not laid as said`);
  }
  return faults;
}

/** Whether the ring is the part turned over and turned as it says, then moved. */
function isMoved(open: Spots, { ring, turn, isTurnedOver }: LaidPart): boolean {
  const slant = (turn * Math.PI) / 180;
  const turned = open.map(({ x: drawn, y }) => {
    const x = isTurnedOver ? -drawn : drawn;
    return { x: x * Math.cos(slant) - y * Math.sin(slant), y: x * Math.sin(slant) + y * Math.cos(slant) };
  });
  const [a, b] = [invariant(turned[0], "point"), invariant(ring[0], "point")];
  return turned.every(({ x, y }, index) => {
    const at = invariant(ring[index], "point");
    return Math.hypot(at.x - b.x - (x - a.x), at.y - b.y - (y - a.y)) < 1e-6;
  });
}
