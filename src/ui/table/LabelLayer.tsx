import { memo } from "react";
import { TEXT_PIXELS, type Label } from "../../drawing/index";

/** What is written beside the pieces, at one size on the screen whatever the zoom. */
export const LabelLayer = memo(({ labels, mmPerPixel }: { readonly labels: readonly Label[]; readonly mmPerPixel: number }) => {
  const size = TEXT_PIXELS * mmPerPixel;
  return (
    <g className="labels" aria-hidden="true">
      {labels.map((label) => (
        <g key={label.id} className={`label label-${label.kind}`}>
          {label.leader !== null && (
            <path className="leader" d={`M${label.leader.x} ${label.leader.y}L${label.x - size * 0.3} ${label.y + size * 0.2}`} />
          )}
          <text x={label.x} y={label.y} fontSize={size} textAnchor={label.anchor}>
            {label.lines.map((line, index) => (
              <tspan key={line} x={label.x} dy={index === 0 ? 0 : "1.25em"}>
                {line}
              </tspan>
            ))}
          </text>
        </g>
      ))}
    </g>
  );
});
