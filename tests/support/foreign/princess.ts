/**
 * Centre front and side front of a foreign nest. The side front's seam is the centre front's, turned about the bust point
 * above it and mirrored below it: so they are equally long by nature.
 */
import { sideLength, SIDE_BOW, stretch } from "./bodiceBack";
import { upperFront } from "./bodiceFront";
import { lowerArmhole, necklineOf, sideOf, upperArmhole } from "./edges";
import type { ForeignOutline, Stretch } from "./foreignTypes";
import { type Habit, type SizeNumbers } from "./habit";
import { backwards, bisect, bowed, cubic, cutAt, lengthOf, line, mapped, mix, turned, xy, type XY } from "./plane";
import { tapeOfFront } from "./tape";

/** What a bust dart would have turned, and half of the waist dart between them. */
const TURN = 0.16;

export function princessOutlines(
  habit: Habit,
  n: SizeNumbers,
  backSide: number,
): { readonly centreFront: ForeignOutline; readonly sideFront: ForeignOutline } {
  const u = upperFront(habit, n);
  const isUnlike = habit.options.unlike && n.index === habit.sizes.length - 1;
  const { bustPoint } = u;
  const atShoulder = habit.options.front === "princessShoulder";
  const [armhole] = upperArmhole(u.tip, u.touch, n.slope);
  if (armhole === undefined) throw new Error("an armhole");
  const [toTop, fromTop] = cutAt(armhole, 0.6);
  const top = atShoulder ? mix(u.sideNeck, u.tip, 0.5) : toTop.b;
  const opened = (p: XY): XY => turned(p, bustPoint, TURN);
  const mirrored = (p: XY): XY => xy(2 * bustPoint.x - p.x, p.y);
  const waistY = bustPoint.y + n.bustToWaist + 14;
  const upper = atShoulder
    ? cubic(top, xy(top.x - 2, top.y + 90), xy(bustPoint.x + 5, bustPoint.y - 70), bustPoint)
    : cubic(top, xy(top.x - 45, top.y + 5), xy(bustPoint.x + 8, bustPoint.y - 55), bustPoint);
  const waist = xy(bustPoint.x - n.frontDart / 2, waistY);
  const lower = cubic(bustPoint, xy(bustPoint.x - 7, bustPoint.y + 48), xy(waist.x + 2, waist.y - 50), waist);
  const centreWaist = xy(0, waistY - 2);
  const centreHem = [bowed(waist, centreWaist, -0.5)];
  const ofCentre: Stretch[] = [
    stretch("centreNeck", "sideNeck", "neck", necklineOf(habit, u.centreNeck, u.sideNeck, isUnlike)),
    ...(atShoulder
      ? [stretch("sideNeck", "princessTop", "shoulder", [line(u.sideNeck, top)])]
      : [
          stretch("sideNeck", "shoulderTip", "shoulder", [line(u.sideNeck, u.tip)]),
          stretch("shoulderTip", "princessTop", "armhole", [toTop]),
        ]),
    stretch("princessTop", "princessBust", "princess", [upper]),
    stretch("princessBust", "princessWaist", "princess", [lower]),
    stretch("princessWaist", "centreWaist", "waist", centreHem),
    stretch("centreWaist", "centreBust", "centre", [line(centreWaist, u.centreBust)]),
    stretch("centreBust", "centreNeck", "centre", [line(u.centreBust, u.centreNeck)]),
  ];
  // The side front as it lies in the frame of the front, beside the centre front.
  const sideTip = opened(u.tip);
  const touch = opened(u.touch);
  const sideWaistOf = (sideY: number): XY => {
    const from = mirrored(waist);
    const x = bisect(from.x + 5, from.x + 700, (at) => {
      return lengthOf([bowed(from, xy(at, sideY), -1.5)]) + lengthOf(centreHem) - u.q.waist.front;
    });
    return xy(x, sideY);
  };
  const sideAt = (sideY: number): Stretch[] => [
    stretch("underarm", "sideBust", "side", [line(u.underarm, u.sideBust)]),
    stretch("sideBust", "sideWaist", "side", sideOf(habit, u.sideBust, sideWaistOf(sideY), SIDE_BOW.front)),
  ];
  const sideY = bisect(bustPoint.y + 30, bustPoint.y + 420, (y) => sideLength({ ring: sideAt(y) }) - backSide);
  const sideWaist = sideWaistOf(sideY);
  const ofSide: Stretch[] = [
    ...(atShoulder
      ? [
          stretch("princessTop", "shoulderTip", "shoulder", [line(opened(top), sideTip)]),
          stretch("shoulderTip", "armholeTouch", "armhole", [mapped(armhole, opened)]),
        ]
      : [stretch("princessTop", "armholeTouch", "armhole", [mapped(fromTop, opened)])]),
    stretch(
      "armholeTouch",
      "underarm",
      "armhole",
      lowerArmhole(habit, touch, u.underarm, habit.options.unlike && n.index === 0),
    ),
    ...sideAt(sideY),
    stretch("sideWaist", "princessWaist", "waist", backwards([bowed(mirrored(waist), sideWaist, -1.5)])),
    stretch("princessWaist", "princessBust", "princess", backwards([mapped(lower, mirrored)])),
    stretch("princessBust", "princessTop", "princess", backwards([mapped(upper, opened)])),
  ];
  const shared = { label: n.row.label, darts: [], notches: [bustPoint] };
  const centreFront = {
    ...shared,
    ring: ofCentre,
    inside: { bustPoint, underBustCentre: xy(0, bustPoint.y + 74) },
    grain: [xy(30, bustPoint.y - 60), xy(30, bustPoint.y + 90)] as const,
  };
  const sideFront = {
    ...shared,
    ring: ofSide,
    inside: {},
    grain: [xy(bustPoint.x + 50, bustPoint.y - 30), xy(bustPoint.x + 50, bustPoint.y + 100)] as const,
  };
  return {
    centreFront: { ...centreFront, tape: tapeOfFront(centreFront, bustPoint, bustPoint) },
    sideFront: { ...sideFront, tape: { sideLength: sideLength(sideFront), bustWidth: u.sideBust.x - bustPoint.x } },
  };
}
