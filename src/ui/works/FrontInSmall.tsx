import { memo } from "react";
import { WORKS_WORDS } from "../../words/works";
import type { Look } from "./looks";

/** The front of a work, to know it again by; nothing is in it that the row does not say. */
export const FrontInSmall = memo(({ front }: { readonly front: Look["front"] }) => {
  if (front === "noPieces" || front === "unreadable") return <p className="work-front none">{WORKS_WORDS[front]}</p>;
  if (front === undefined) return <div className="work-front" />;
  const { box, halves } = front;
  return (
    <svg
      className="work-front"
      viewBox={[box.x, box.y, box.width, box.height].join(" ")}
      aria-hidden="true"
      focusable="false"
    >
      {halves.map(({ mirrored, pieces }) =>
        pieces.map(({ outline, darts, down }, at) => (
          <g key={`${mirrored} ${at}`} transform={`matrix(${mirrored ? -1 : 1} 0 0 1 0 ${down})`}>
            <path d={outline} />
            <path className="work-front-darts" d={darts} />
          </g>
        )),
      )}
    </svg>
  );
});
FrontInSmall.displayName = "FrontInSmall";
