import { memo } from "react";
import { Fractions } from "../fields/Fractions";
import { isWrittenAlike, textPixels, type Label } from "../../drawing/index";

export interface LabelLayerProps {
  readonly labels: readonly Label[];
  readonly mmPerPixel: number;
  /** Touched by hand: what a label tells is in the ledger too, where keys reach it. */
  readonly onLight?: (alterations: string) => void;
}

/** What is written beside the pieces, at one size on the screen whatever the zoom. */
export const LabelLayer = memo(({ labels, mmPerPixel, onLight }: LabelLayerProps) => (
  <g className="labels" aria-hidden="true">
    {labels.map((label) => (
      <Written
        key={label.id}
        label={label}
        mmPerPixel={mmPerPixel}
        // What lights nothing is drawn alike whoever listens.
        onLight={label.alterations === undefined ? undefined : onLight}
      />
    ))}
  </g>
));

interface WrittenProps {
  readonly label: Label;
  readonly mmPerPixel: number;
  readonly onLight: ((alterations: string) => void) | undefined;
}

/** One label. All are worked out anew at every move; what reads and stands as it did is left as it is. */
const Written = memo(
  ({ label, mmPerPixel, onLight }: WrittenProps) => {
    const size = textPixels(label) * mmPerPixel;
    const { alterations } = label;
    const light =
      alterations === undefined || onLight === undefined
        ? {}
        : { "data-kind": "slip", "data-slip": alterations, onPointerDown: () => onLight(alterations) };
    return (
      <g className={`label label-${label.kind}`} {...light}>
        {label.leader !== null && (
          <path
            className="leader"
            d={`M${label.leader.x} ${label.leader.y}L${label.x - size * 0.3} ${label.y + size * 0.2}`}
          />
        )}
        <text x={label.x} y={label.y} fontSize={size} textAnchor={label.anchor}>
          {label.lines.map((line, index) => (
            // By their place: another figure is written into the line that is there.
            <tspan key={index} x={label.x} dy={index === 0 ? 0 : "1.25em"}>
              <Fractions text={line} inDrawing />
            </tspan>
          ))}
        </text>
      </g>
    );
  },
  (was, is) => was.mmPerPixel === is.mmPerPixel && was.onLight === is.onLight && isWrittenAlike(was.label, is.label),
);
