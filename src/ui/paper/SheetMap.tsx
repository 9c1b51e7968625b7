import { useId } from "react";
import { chainPath, outlinePath } from "../../core/geometry/svgPath";
import type { Ink, InkGroup, InkPage } from "../../drawing/ink";

/** A sheet in small, its lines as thin as the screen draws them. */
export function SheetMap({ page, label }: { readonly page: InkPage; readonly label: string }) {
  const id = useId();
  return (
    <svg className="sheet-map" viewBox={`0 0 ${page.width} ${page.height}`} role="img" aria-label={label}>
      {page.groups.map((group) => (
        <Group key={group.id} group={group} clipId={`${id}-${group.id}`} />
      ))}
    </svg>
  );
}

function Group({ group, clipId }: { readonly group: InkGroup; readonly clipId: string }) {
  const { clip, dx, dy } = group;
  // Writing last, so that no line runs over the name of a page.
  const ink = group.ink.toSorted((a, b) => Number(a.kind === "text") - Number(b.kind === "text"));
  const drawn = (
    <g transform={`translate(${dx} ${dy})`}>
      {ink.map((one, at) => (
        <Mark key={at} ink={one} />
      ))}
    </g>
  );
  if (clip === null) return drawn;
  return (
    <>
      <clipPath id={clipId}>
        <rect x={clip.x} y={clip.y} width={clip.width} height={clip.height} />
      </clipPath>
      <g clipPath={`url(#${clipId})`}>{drawn}</g>
    </>
  );
}

const DEGREES = 180 / Math.PI;

function Mark({ ink }: { readonly ink: Ink<"sheet"> }) {
  if (ink.kind === "line") {
    return (
      <path
        className="sheet-line"
        data-role={ink.role}
        data-filled={ink.filled}
        d={ink.closed ? outlinePath(ink.edges) : chainPath(ink.edges)}
      />
    );
  }
  const { x, y } = ink.at;
  return (
    <text
      className="sheet-text"
      data-role={ink.role}
      x={x}
      y={y}
      fontSize={ink.size}
      fontWeight={ink.bold === true ? 700 : undefined}
      textAnchor={ink.anchor}
      transform={ink.turn === 0 ? undefined : `rotate(${ink.turn * DEGREES} ${x} ${y})`}
    >
      {ink.text}
    </text>
  );
}
