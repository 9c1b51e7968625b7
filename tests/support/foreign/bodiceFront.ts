/** The front of a foreign nest: side or French dart and waist dart, a waist dart alone, or no dart at all. */
import { mouthStretch, sideLength, SIDE_BOW, stretch, waistOf } from "./bodiceBack";
import { lowerArmhole, necklineOf, sideOf, upperArmhole } from "./edges";
import type { ForeignDart, ForeignOutline, Stretch } from "./foreignTypes";
import { quarters, type Habit, type SizeNumbers } from "./habit";
import { apart, backwards, bisect, bowed, line, lengthOf, mix, turned, xy, type XY } from "./plane";
import { tapeOfFront } from "./tape";

/** What front and princess pieces begin with. */
export function upperFront(habit: Habit, n: SizeNumbers) {
  const q = quarters(habit, n);
  const sideNeck = xy(n.neckWidth, 0);
  const centreNeck = xy(0, n.neckDepth);
  const tip = xy(sideNeck.x + n.shoulder * Math.cos(n.slope), n.shoulder * Math.sin(n.slope));
  const bustPoint = xy(n.bustPointOut, n.bustPointDown);
  const underarm = xy(q.bust.front + 3, bustPoint.y - n.underarmAboveBust);
  const sideBust = xy(q.bust.front, bustPoint.y);
  const touch = xy(n.acrossFront, underarm.y - 66);
  return { q, sideNeck, centreNeck, tip, bustPoint, underarm, sideBust, touch, centreBust: xy(0, bustPoint.y) };
}

interface Lower {
  readonly side: readonly Stretch[];
  readonly waist: readonly Stretch[];
  readonly darts: readonly ForeignDart[];
  readonly centreWaist: XY;
}

/** All below the bust line, its side seam brought to a height where it is as long as asked. */
function lowerFront(habit: Habit, n: SizeNumbers, backSide: number): Lower {
  const { q, bustPoint, underarm, sideBust } = upperFront(habit, n);
  const dart = habit.options.front === "french" ? "frenchDart" : "sideDart";
  const centreWaist = xy(0, bustPoint.y + n.bustToWaist + n.bustDart * 0.8);
  const apexOfWaist = xy(bustPoint.x + habit.lean * 0.3, bustPoint.y + 24);
  const at = (sideY: number): Lower => {
    const darted =
      n.frontDart > 0
        ? waistOf(centreWaist, apexOfWaist, bustPoint.x + habit.lean, n.frontDart, sideY, q.waist.front)
        : null;
    const w = darted ?? waistWithout(centreWaist, sideY, q.waist.front);
    const waist: readonly Stretch[] =
      darted !== null
        ? [
            stretch("sideWaist", "waistDartOuter", "waist", backwards(darted.toSide)),
            mouthStretch("waistDartOuter", "waistDartInner", "waist", "waistDart", darted.outer, darted.inner),
            stretch("waistDartInner", "centreWaist", "waist", backwards(darted.toDart)),
          ]
        : [stretch("sideWaist", "centreWaist", "waist", backwards(w.toSide))];
    const waistDart: readonly ForeignDart[] =
      darted !== null
        ? [
            {
              name: "waistDart",
              seam: "waist",
              inner: "waistDartInner",
              outer: "waistDartOuter",
              apex: apexOfWaist,
              aimsAtBust: true,
            },
          ]
        : [];
    const above = stretch("underarm", "sideBust", "side", [line(underarm, sideBust)]);
    if (n.bustDart === 0)
      return {
        side: [above, stretch("sideBust", "sideWaist", "side", sideOf(habit, sideBust, w.side, SIDE_BOW.front))],
        waist,
        darts: waistDart,
        centreWaist,
      };
    const inner = mix(sideBust, w.side, n.bustDartDown / apart(sideBust, w.side));
    // Aimed at the bust point, ended short of it.
    const apex = mix(bustPoint, inner, (habit.options.front === "french" ? 38 : 27) / apart(bustPoint, inner));
    const outer = turned(inner, apex, 2 * Math.asin(n.bustDart / 2 / apart(apex, inner)));
    return {
      side: [
        above,
        stretch("sideBust", `${dart}Inner`, "side", sideOf(habit, sideBust, inner, SIDE_BOW.front * 0.3)),
        mouthStretch(`${dart}Inner`, `${dart}Outer`, "side", dart, inner, outer),
        stretch(`${dart}Outer`, "sideWaist", "side", sideOf(habit, outer, w.side, SIDE_BOW.front * 0.5)),
      ],
      waist,
      darts: [
        { name: dart, seam: "side", inner: `${dart}Inner`, outer: `${dart}Outer`, apex, aimsAtBust: true },
        ...waistDart,
      ],
      centreWaist,
    };
  };
  const sideY = bisect(sideBust.y + 30, sideBust.y + 420, (y) => sideLength({ ring: at(y).side }) - backSide);
  return at(sideY);
}

function waistWithout(centre: XY, sideY: number, sewn: number) {
  const drawn = (x: number) => [bowed(centre, xy(x, sideY), -1.5)];
  const x = bisect(20, 900, (side) => lengthOf(drawn(side)) - sewn);
  return { toSide: drawn(x), side: xy(x, sideY) };
}

/** @param backSide the sewn side seam of the back of the same size */
export function frontOutline(habit: Habit, n: SizeNumbers, backSide: number): ForeignOutline {
  const u = upperFront(habit, n);
  const isUnlike = habit.options.unlike && n.index === habit.sizes.length - 1;
  const lower = lowerFront(habit, n, backSide);
  const ring: Stretch[] = [
    stretch("centreNeck", "sideNeck", "neck", necklineOf(habit, u.centreNeck, u.sideNeck, isUnlike)),
    stretch("sideNeck", "shoulderTip", "shoulder", [line(u.sideNeck, u.tip)]),
    stretch("shoulderTip", "armholeTouch", "armhole", upperArmhole(u.tip, u.touch, n.slope)),
    stretch(
      "armholeTouch",
      "underarm",
      "armhole",
      lowerArmhole(habit, u.touch, u.underarm, habit.options.unlike && n.index === 0),
    ),
    ...lower.side,
    ...lower.waist,
    stretch("centreWaist", "centreBust", "centre", [line(lower.centreWaist, u.centreBust)]),
    stretch("centreBust", "centreNeck", "centre", [line(u.centreBust, u.centreNeck)]),
  ];
  const outline = {
    label: n.row.label,
    ring,
    darts: lower.darts,
    inside: { bustPoint: u.bustPoint, underBustCentre: xy(0, u.bustPoint.y + 74) },
    grain: [xy(u.q.bust.front * 0.25, u.bustPoint.y - 60), xy(u.q.bust.front * 0.25, u.bustPoint.y + 90)] as const,
    notches: [u.touch],
  };
  return { ...outline, tape: tapeOfFront(outline, u.sideBust, u.bustPoint) };
}
