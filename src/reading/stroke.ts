/** One unbroken line, as it is put together. */
import { mapped, type Affine, type Place } from "./affine";

/** A straight part (only its end) or a cubic (both control points and its end). */
export type Part =
  | { readonly to: Place; readonly controls?: undefined }
  | { readonly to: Place; readonly controls: readonly [Place, Place] };

export interface Stroke {
  readonly from: Place;
  readonly parts: readonly Part[];
  readonly closed: boolean;
}

export const mappedStroke = (map: Affine, { from, parts, closed }: Stroke): Stroke => ({
  from: mapped(map, from),
  parts: parts.map(({ to, controls }) =>
    controls === undefined
      ? { to: mapped(map, to) }
      : { to: mapped(map, to), controls: [mapped(map, controls[0]), mapped(map, controls[1])] },
  ),
  closed,
});

export const straight = ([from, ...others]: readonly Place[], closed: boolean): Stroke | null =>
  from === undefined ? null : { from, parts: others.map((to) => ({ to })), closed };

/** Radians. A cubic over more of a circle than this leaves it by more than four millionths of its radius. */
const WIDEST_PART = Math.PI / 4;

/**
 * The part of an ellipse that is the image of the unit circle's from one angle to another (radians, either way round).
 *
 * @param frame takes the unit circle to the ellipse
 */
export function arcParts(frame: Affine, from: number, to: number): Part[] {
  const count = Math.max(1, Math.ceil(Math.abs(to - from) / WIDEST_PART));
  const step = (to - from) / count;
  const reach = (4 / 3) * Math.tan(step / 4);
  return Array.from({ length: count }, (_, i): Part => {
    const [start, end] = [from + i * step, from + (i + 1) * step];
    const [p, q] = [pointAt(start), pointAt(end)];
    return {
      controls: [
        mapped(frame, { x: p.x - reach * p.y, y: p.y + reach * p.x }),
        mapped(frame, { x: q.x + reach * q.y, y: q.y - reach * q.x }),
      ],
      to: mapped(frame, q),
    };
  });
}

const pointAt = (angle: number): Place => ({ x: Math.cos(angle), y: Math.sin(angle) });

/** A whole ellipse, beginning at angle 0. */
export const ellipse = (frame: Affine): Stroke => ({
  from: mapped(frame, { x: 1, y: 0 }),
  parts: arcParts(frame, 0, 2 * Math.PI),
  closed: true,
});
