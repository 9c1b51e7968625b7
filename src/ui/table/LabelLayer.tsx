import { memo } from "react";
import { textPixels, type Label } from "../../drawing/index";

export interface LabelLayerProps {
  readonly labels: readonly Label[];
  readonly mmPerPixel: number;
  /** Touched by hand: what a label tells is in the ledger too, where keys reach it. */
  readonly onLight?: (alterations: string) => void;
}

/** What is written beside the pieces, at one size on the screen whatever the zoom. */
export const LabelLayer = memo(({ labels, mmPerPixel, onLight }: LabelLayerProps) => (
  <g className="labels" aria-hidden="true">
    {labels.map((label) => {
      const size = textPixels(label) * mmPerPixel;
      const { alterations } = label;
      const light =
        alterations === undefined || onLight === undefined ? {} : { onPointerDown: () => onLight(alterations) };
      return (
        <g key={label.id} className={`label label-${label.kind}`} {...light}>
          {label.leader !== null && (
            <path
              className="leader"
              d={`M${label.leader.x} ${label.leader.y}L${label.x - size * 0.3} ${label.y + size * 0.2}`}
            />
          )}
          <text x={label.x} y={label.y} fontSize={size} textAnchor={label.anchor}>
            {label.lines.map((line, index) => (
              <tspan key={`${index} ${line}`} x={label.x} dy={index === 0 ? 0 : "1.25em"}>
                {line}
              </tspan>
            ))}
          </text>
        </g>
      );
    })}
  </g>
));
