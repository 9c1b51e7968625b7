/** The body that a dress hangs on, off the tape and off what was measured for the dress. */
import type { Decided } from "../decisions/decided";
import { proportionAt } from "../draft/draftMeasures";
import { measuresOf } from "../measures/tape";
import type { DressBody } from "../parts/dressBody";

/** mm. Nobody's hip lies nearer to the waist or further below it (common practice, no source); what a file says beyond is read so. */
export const HIP_DEPTHS = { least: 100, most: 400 } as const;

export function dressedBody({ tapes, dress }: Decided): DressBody {
  const { bustGirth = 0, waistGirth = 0, hipGirth = null, height = null } = measuresOf(tapes);
  const { waistToHip, waistToFloorFront, waistToFloorSide, waistToFloorBack, shoulderGirth } = dress?.measures ?? {};
  return {
    bust: bustGirth,
    waist: waistGirth,
    hip: hipGirth,
    height,
    hipDepth: Math.min(
      Math.max(waistToHip ?? proportionAt("waistToHip", bustGirth), HIP_DEPTHS.least),
      HIP_DEPTHS.most,
    ),
    isHipDepthUsual: waistToHip === undefined,
    toFloor:
      waistToFloorFront === undefined || waistToFloorSide === undefined || waistToFloorBack === undefined
        ? null
        : { front: waistToFloorFront, side: waistToFloorSide, back: waistToFloorBack },
    shoulderGirth: shoulderGirth ?? null,
  };
}
