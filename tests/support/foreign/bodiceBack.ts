/** The back of a foreign nest: waist dart, centre seam straight. */
import { lowerArmhole, sideOf, upperArmhole } from "./edges";
import type { ForeignOutline, Stretch } from "./foreignTypes";
import { quarters, type Habit, type SizeNumbers } from "./habit";
import { bisect, bowed, apart, lengthOf, line, quarter, xy, type Segment, type XY } from "./plane";
import { tapeOfBack } from "./tape";

export const stretch = (from: string, to: string, seam: string, segments: readonly Segment[]): Stretch => ({
  from,
  to,
  seam,
  mouthOf: null,
  segments,
});
export const mouthStretch = (from: string, to: string, seam: string, dart: string, a: XY, b: XY): Stretch => ({
  from,
  to,
  seam,
  mouthOf: dart,
  segments: [line(a, b)],
});

/** The waist from the centre to the side, its dart open above it or below; its side end where the sewn waist is as long as asked. */
export function waistOf(centre: XY, apex: XY, middle: number, intake: number, sideY: number, sewn: number) {
  const down = apex.y < centre.y ? 1 : -1;
  const inner = xy(middle - intake / 2, centre.y + 3 * down);
  const leg = apart(apex, inner);
  const across = middle + intake / 2 - apex.x;
  const outer = xy(middle + intake / 2, apex.y + down * Math.sqrt(leg * leg - across * across));
  const toDart = [bowed(centre, inner, 0.4)];
  const drawn = (x: number): Segment[] => [bowed(outer, xy(x, sideY), -1.5)];
  const x = bisect(outer.x + 5, outer.x + 700, (side) => lengthOf(toDart) + lengthOf(drawn(side)) - sewn);
  return { inner, outer, toDart, toSide: drawn(x), side: xy(x, sideY) };
}

export const SIDE_BOW = { back: 2.5, front: 2 } as const;

export function backOutline(habit: Habit, n: SizeNumbers): ForeignOutline {
  const q = quarters(habit, n);
  const last = habit.sizes.length - 1;
  const sideNeck = xy(n.neckWidth + 4, 0);
  const nape = xy(0, n.backNeckDepth);
  const long = n.shoulder + habit.shoulderEase;
  const tip = xy(sideNeck.x + long * Math.cos(n.slope), long * Math.sin(n.slope));
  const bustY = n.bustPointDown - 30;
  const underarm = xy(q.bust.back + 3, bustY - n.underarmAboveBust);
  const touch = xy(n.acrossBack, underarm.y - 62);
  const sideBust = xy(q.bust.back, bustY);
  const centreBust = xy(0, bustY);
  const waistY = bustY + n.bustToWaist;
  const centreWaist = xy(0, waistY);
  const apex = xy(q.bust.back * 0.45, bustY + 12);
  const w = waistOf(centreWaist, apex, q.bust.back * 0.45, n.backDart, waistY + 4, q.waist.back);
  const ring: Stretch[] = [
    stretch("centreNeck", "sideNeck", "neck", quarter(nape, xy(sideNeck.x, nape.y), sideNeck, 1)),
    stretch("sideNeck", "shoulderTip", "shoulder", [line(sideNeck, tip)]),
    stretch("shoulderTip", "armholeTouch", "armhole", upperArmhole(tip, touch, n.slope)),
    stretch(
      "armholeTouch",
      "underarm",
      "armhole",
      lowerArmhole(habit, touch, underarm, habit.options.unlike && n.index === last),
    ),
    stretch("underarm", "sideBust", "side", [line(underarm, sideBust)]),
    stretch("sideBust", "sideWaist", "side", sideOf(habit, sideBust, w.side, SIDE_BOW.back)),
    stretch(
      "sideWaist",
      "waistDartOuter",
      "waist",
      w.toSide.map(({ a, b, c }) => turnBack(a, b, c)),
    ),
    mouthStretch("waistDartOuter", "waistDartInner", "waist", "waistDart", w.outer, w.inner),
    stretch(
      "waistDartInner",
      "centreWaist",
      "waist",
      w.toDart.map(({ a, b, c }) => turnBack(a, b, c)),
    ),
    stretch("centreWaist", "centreBust", "centre", [line(centreWaist, centreBust)]),
    stretch("centreBust", "centreNeck", "centre", [line(centreBust, nape)]),
  ];
  const outline = {
    label: n.row.label,
    ring,
    darts: [
      { name: "waistDart", seam: "waist", inner: "waistDartInner", outer: "waistDartOuter", apex, aimsAtBust: false },
    ],
    inside: { underBustCentre: xy(0, bustY + 72) },
    grain: [xy(q.bust.back * 0.3, bustY - 40), xy(q.bust.back * 0.3, bustY + 90)] as const,
    notches: [touch],
  };
  return { ...outline, tape: tapeOfBack(outline, sideBust) };
}

const turnBack = (a: XY, b: XY, c: Segment["c"]): Segment =>
  c === undefined ? line(b, a) : { a: b, b: a, c: [c[1], c[0]] };

/** The sewn side seam of a bodice piece. */
export const sideLength = (outline: Pick<ForeignOutline, "ring">): number =>
  lengthOf(outline.ring.filter(({ seam, mouthOf }) => seam === "side" && mouthOf === null).flatMap((s) => s.segments));
