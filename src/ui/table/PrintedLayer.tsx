import { memo, useMemo } from "react";
import type { Nest } from "../../core/pattern/piece";
import { pieceMarks, placeKey, placeTransform, type Place } from "../../drawing/index";

/** As on printed multi-size tissue: each size its own dash, and the frame's line unbroken. */
const DASHES = ["7 3", "2 2", "10 2 2 2", "5 2", "1 2", "12 3", "6 2 1 2", "3 3", "9 2 1 2 1 2", "4 1"];

export interface PrintedLayerProps {
  readonly nest: Nest;
  readonly places: readonly Place[];
  /** Labels of the sizes shown; null: all. */
  readonly shown: readonly string[] | null;
  readonly baseSize: string | null;
}

/** The printed lines of all sizes. They stand still while something is dragged. */
export const PrintedLayer = memo(({ nest, places, shown, baseSize }: PrintedLayerProps) => {
  const marks = useMemo(() => nest.sizes.map((pieces) => pieces.map(pieceMarks)), [nest]);
  return (
    <g className="printed" aria-hidden="true">
      {places.map((place) => (
        <g key={placeKey(place)} transform={placeTransform(place)}>
          {marks.map((pieces, index) => {
            const label = nest.labels[index] ?? "";
            const found = pieces.find((p) => p.piece === place.piece);
            if (found === undefined || (shown !== null && !shown.includes(label))) return null;
            const isBaseSize = label === baseSize;
            return (
              <g
                key={label}
                className="printed-size"
                data-kind="printed"
                data-of={place.piece}
                data-size={label}
                data-frame={isBaseSize ? "" : undefined}
              >
                <path d={found.outline} strokeDasharray={isBaseSize ? undefined : DASHES[index % DASHES.length]} />
                {isBaseSize &&
                  found.darts.map((dart) => <path key={dart.dart} d={dart.legs} className="printed-dart" />)}
              </g>
            );
          })}
        </g>
      ))}
    </g>
  );
});
