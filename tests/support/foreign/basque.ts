/** The basque of a foreign nest, and a collar: a piece without a name of the planner's. */
import { mouthStretch, sideLength, stretch, waistOf } from "./bodiceBack";
import { hemOf } from "./edges";
import type { ForeignOutline, Stretch } from "./foreignTypes";
import { quarters, type Habit, type SizeNumbers } from "./habit";
import { backwards, bisect, cubic, line, xy } from "./plane";
import { tapeOfBasque } from "./tape";

const SIDE_RISE = -5;

/** @param sideLong length of the side seam asked for; null: what comes of the draft */
export function basqueOutline(
  habit: Habit,
  n: SizeNumbers,
  half: "front" | "back",
  sideLong: number | null,
): ForeignOutline {
  const q = quarters(habit, n);
  const intake = Math.max(10, (half === "front" ? n.frontDart : n.backDart) - 4);
  const middle = q.waist[half] * 0.44;
  const centreWaist = xy(0, 0);
  const apex = xy(middle, half === "front" ? 90 : 120);
  const sideHip = xy(q.hip[half], n.waistToHip);
  const sideHem = xy(q.hip[half] + 4, n.waistToHip + n.hemBelowHip);
  const drawn = (rise: number) => {
    const w = waistOf(centreWaist, apex, middle, intake, rise, q.waist[half]);
    const side: Stretch[] = [
      stretch("sideWaist", "sideHip", "side", [
        cubic(
          w.side,
          xy(w.side.x + (sideHip.x - w.side.x) * 0.5, n.waistToHip * 0.3),
          xy(sideHip.x - 1, n.waistToHip * 0.65),
          sideHip,
        ),
      ]),
      stretch("sideHip", "sideHem", "side", [line(sideHip, sideHem)]),
    ];
    return { w, side };
  };
  const rise =
    sideLong === null
      ? SIDE_RISE
      : // Further up is longer.
        bisect(-60, 60, (y) => sideLong - sideLength({ ring: drawn(y).side }));
  const { w, side } = drawn(rise);
  const centreHem = xy(0, sideHem.y + 2);
  const centreHip = xy(0, n.waistToHip);
  const ring: Stretch[] = [
    stretch("centreWaist", "waistDartInner", "waist", w.toDart),
    mouthStretch("waistDartInner", "waistDartOuter", "waist", "waistDart", w.inner, w.outer),
    stretch("waistDartOuter", "sideWaist", "waist", w.toSide),
    ...side,
    stretch("sideHem", "centreHem", "hem", hemOf(habit, sideHem, centreHem)),
    stretch("centreHem", "centreHip", "centre", [line(centreHem, centreHip)]),
    stretch("centreHip", "centreWaist", "centre", [line(centreHip, centreWaist)]),
  ];
  const outline = {
    label: n.row.label,
    ring,
    darts: [
      { name: "waistDart", seam: "waist", inner: "waistDartInner", outer: "waistDartOuter", apex, aimsAtBust: false },
    ],
    inside: {},
    grain: [xy(30, 30), xy(30, 150)] as const,
    notches: [sideHip],
  };
  return { ...outline, tape: tapeOfBasque(outline, sideHip) };
}

export function collarOutline(n: SizeNumbers): ForeignOutline {
  const [a, b, c, d] = [xy(0, 0), xy(n.neckWidth * 1.7, -22), xy(n.neckWidth * 1.7 + 18, 48), xy(0, 62)];
  const ring = [
    stretch("corner00", "corner01", "edge", backwards([cubic(b, xy(b.x - 50, 4), xy(40, 0), a)])),
    stretch("corner01", "corner02", "edge", [line(b, c)]),
    stretch("corner02", "corner03", "edge", [cubic(c, xy(c.x - 60, 70), xy(50, 62), d)]),
    stretch("corner03", "corner00", "edge", [line(d, a)]),
  ];
  return {
    label: n.row.label,
    ring,
    darts: [],
    inside: {},
    grain: [xy(20, 10), xy(20, 50)],
    notches: [],
    tape: {},
  };
}
