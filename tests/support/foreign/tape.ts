/** What a tape shows on a foreign outline, without error: names as of `TissueLength`. */
import type { ForeignOutline } from "./foreignTypes";
import { apart, lengthOf, mix, xy, type XY } from "./plane";

type Bare = Omit<ForeignOutline, "tape">;

/** A corner of the ring, or a point inside. */
function cornerOf(outline: Bare, name: string): XY | null {
  const on = outline.ring.find(({ from }) => from === name)?.segments[0]?.a;
  return on ?? outline.inside[name] ?? outline.darts.find((d) => `${d.name}Apex` === name)?.apex ?? null;
}

const along = (outline: Bare, seam: string): number =>
  lengthOf(outline.ring.filter((s) => s.seam === seam && s.mouthOf === null).flatMap((s) => s.segments));

function dartTape(outline: Bare, dart: string, as: "waistDart" | "bustDart"): Record<string, number> {
  const found = outline.darts.find(({ name }) => name === dart);
  if (found === undefined) return {};
  const [inner, outer] = [cornerOf(outline, found.inner), cornerOf(outline, found.outer)];
  if (inner === null || outer === null) return {};
  const middle = mix(inner, outer, 0.5);
  return {
    [`${as}Mouth`]: apart(inner, outer),
    // Down its middle, from the straight across its mouth to its end.
    [`${as}Length`]: apart(middle, found.apex),
    ...(as === "waistDart" ? { waistDartFromCentre: inner.x } : {}),
  };
}

/** From the underarm along the side seam to the first leg of the dart there. */
function fromUnderarm(outline: Bare, inner: string): number {
  const start = outline.ring.findIndex(({ from }) => from === "underarm");
  let sum = 0;
  for (const s of outline.ring.slice(start)) {
    if (s.from === inner) break;
    sum += lengthOf(s.segments);
  }
  return sum;
}

function shared(outline: Bare, bust: XY): Record<string, number> {
  const at = (name: string): XY => cornerOf(outline, name) ?? xy(0, 0);
  return {
    ...dartTape(outline, "waistDart", "waistDart"),
    centreLength: apart(at("centreNeck"), at("centreWaist")),
    sideLength: along(outline, "side"),
    shoulderLength: along(outline, "shoulder"),
    neckWidth: at("sideNeck").x,
    neckDepth: at("centreNeck").y - at("sideNeck").y,
    acrossWidth: at("armholeTouch").x,
    bustWidth: bust.x,
    waistWidth: along(outline, "waist"),
  };
}

export const tapeOfBack = (outline: Bare, sideBust: XY): Record<string, number> => shared(outline, sideBust);

export function tapeOfFront(outline: Bare, sideBust: XY, bustPoint: XY): Record<string, number> {
  const side = outline.darts.find(({ seam }) => seam === "side");
  const neck = cornerOf(outline, "sideNeck") ?? xy(0, 0);
  return {
    ...shared(outline, sideBust),
    ...(side === undefined
      ? {}
      : { ...dartTape(outline, side.name, "bustDart"), bustDartFromUnderarm: fromUnderarm(outline, side.inner) }),
    bustPointFromCentre: bustPoint.x,
    bustPointFromSideNeck: apart(neck, bustPoint),
  };
}

export function tapeOfBasque(outline: Bare, sideHip: XY): Record<string, number> {
  return {
    ...dartTape(outline, "waistDart", "waistDart"),
    sideLength: along(outline, "side"),
    waistWidth: along(outline, "waist"),
    hipWidth: sideHip.x,
  };
}
