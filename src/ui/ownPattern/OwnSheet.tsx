/* oxlint-disable jsx-a11y/no-noninteractive-tabindex, jsx-a11y/no-noninteractive-element-interactions -- the sheet is moved with the keys, as a scrolled region is */
import { memo, useMemo, useRef, useState, type KeyboardEvent, type PointerEvent } from "react";
import type { FileDrawing, FilePlace } from "../../core/decisions/fileDrawing";
import type { OwnPattern } from "../../core/decisions/ownPattern";
import type { OutlineGroup, OutlineReading } from "../../core/outlines/outlineReading";
import type { PieceReading } from "../../core/ownPieces/ownReading";
import { mmOf, placesOf, snapped } from "../../core/ownPieces/drawingPlaces";
import { onOutline } from "../../core/ownPieces/pointedPlaces";
import { withBustPoint, withCorner, withDart, withKnown, withPieceSaid } from "../../core/plan/ownEdit";
import type { Box } from "../../drawing/index";
import { groupBox, lookInk, openLineInk, outlineInk, outlinesOf, placeInFile, sheetBox } from "../../drawing/ownSheet";
import { OWN_WORDS, pieceTitle, pointingWords, sheetLabel } from "../../words/ownPattern";
import { useTableView, ZOOM_STEP } from "../table/useTableView";
import { viewBoxOf } from "../table/view";
import { CornerHandles } from "./CornerHandles";
import { useOwnView, type Lit } from "./ownView";
import { placeUnder, sightOf } from "./sheetSight";
import { sizeShown } from "./sizeShown";
import { useEditOwn, type OwnAndReading } from "./useOwn";

/** Pixels: a press that moves less is a tap; a line's end nearer than that is meant; steps of the cross. */
const TAP = 6;
const SNAP = 14;
const CROSS_STEP = 10;

interface Close {
  readonly group: OutlineGroup;
  readonly piece: PieceReading;
}

/** The file as it was drawn, to look at and to point at: the whole sheet, or the piece that is looked at closely. */
export function OwnSheet({ own, reading }: OwnAndReading) {
  const id = useOwnView((view) => view.piece);
  const look = useOwnView((view) => view.look);
  const group = reading.outlines.groups.find((each) => each.id === id);
  const piece = reading.pieces.find((each) => each.id === id);
  const close = group === undefined || piece === undefined ? null : { group, piece };
  const sheet = useMemo(() => sheetBox(own.drawing), [own.drawing]);
  const near = close === null ? null : groupBox(reading.outlines, close.group);
  return (
    // Another piece is looked at from where all of it is seen.
    <Window
      key={close?.group.id ?? ""}
      own={own}
      reading={reading}
      close={close}
      sheet={sheet}
      box={near ?? sheet}
      onWhole={close === null ? null : () => look(null)}
    />
  );
}

interface WindowProps extends OwnAndReading {
  readonly close: Close | null;
  readonly sheet: Box;
  readonly box: Box;
  readonly onWhole: (() => void) | null;
}

function Window({ own, reading, close, sheet, box, onWhole }: WindowProps) {
  const svg = useRef<SVGSVGElement>(null);
  const isClose = close !== null;
  const sight = useMemo(() => sightOf(sheet, isClose), [sheet, isClose]);
  const { view, size, fit, zoom, onKeyDown, onPointerDown } = useTableView(svg, box, sight);
  const pointing = useOwnView((state) => state.pointing);
  const lit = useOwnView((state) => state.lit);
  const ends = useOwnView((state) => state.ends);
  const chosenSize = useOwnView((state) => state.size);
  const put = usePut(own, reading, close, SNAP / view.scale);
  const [cross, setCross] = useState<FilePlace | null>(null);
  const pressed = useRef<{ readonly x: number; readonly y: number } | null>(null);
  const shownSize = close === null ? "" : sizeShown(close.piece, chosenSize);
  const instruction = pointing === null ? "" : pointingWords(pointing, close?.piece.said.name ?? null);

  const onDown = (event: PointerEvent): void => {
    pressed.current = event.isPrimary ? { x: event.clientX, y: event.clientY } : null;
    onPointerDown(event);
  };
  const onUp = (event: PointerEvent): void => {
    const from = pressed.current;
    pressed.current = null;
    if (from === null || pointing === null || svg.current === null) return;
    if (Math.hypot(event.clientX - from.x, event.clientY - from.y) > TAP) return;
    const { left, top } = svg.current.getBoundingClientRect();
    setCross(null);
    put(placeUnder(view, event.clientX - left, event.clientY - top));
  };
  const onKeys = (event: KeyboardEvent): void => {
    if (event.target !== event.currentTarget) return;
    const arrow = ARROWS[event.key];
    if (pointing === null || (arrow === undefined && event.key !== "Enter")) return onKeyDown(event);
    event.preventDefault();
    const from = cross ?? placeUnder(view, size.width / 2, size.height / 2);
    if (arrow === undefined) return put(from);
    const step = (event.shiftKey ? 1 : CROSS_STEP) / view.scale;
    setCross({ x: from.x + arrow[0] * step, y: from.y + arrow[1] * step });
  };

  return (
    <div className="own-sheet-place" data-pointing={pointing === null ? undefined : ""}>
      <svg
        ref={svg}
        className="own-sheet kept-paper"
        viewBox={viewBoxOf(view, size)}
        tabIndex={0}
        role="group"
        aria-label={sheetLabel(
          close === null ? null : pieceTitle(close.piece.said.name, close.piece.said.label, close.group.nameInFile),
        )}
        onKeyDown={onKeys}
        onPointerDown={onDown}
        onPointerUp={onUp}
      >
        <Lines
          drawing={own.drawing}
          lit={lit}
          sortedBy={reading.outlines.sortedBy}
          isFaint={close !== null}
          thin={thinAt(view.scale / mmOf(reading.outlines.scale))}
        />
        {close !== null && <Outlines reading={reading.outlines} group={close.group} size={shownSize} />}
        <LitShape lit={lit} reading={reading.outlines} />
        <Known from={own.known?.from ?? ends.from} to={own.known?.to ?? ends.to} scale={view.scale} />
        {close !== null && <Marks piece={close.piece} size={shownSize} scale={view.scale} />}
        {pointing?.for === "dart" &&
          pointing.given.map((place, at) => <Spot key={at} place={place} scale={view.scale} />)}
        {close !== null && close.piece.said.name !== null && (
          <CornerHandles
            outlines={reading.outlines}
            group={close.group}
            piece={close.piece}
            name={close.piece.said.name}
            size={shownSize}
            scale={view.scale}
            middle={box.x + box.width / 2}
          />
        )}
        {pointing !== null && cross !== null && <Cross place={cross} scale={view.scale} />}
      </svg>
      <div className="own-sheet-tools" role="toolbar" aria-label={OWN_WORDS.sheet}>
        <button type="button" className="button small" aria-label={OWN_WORDS.nearer} onClick={() => zoom(ZOOM_STEP)}>
          +
        </button>
        <button
          type="button"
          className="button small"
          aria-label={OWN_WORDS.further}
          onClick={() => zoom(1 / ZOOM_STEP)}
        >
          −
        </button>
        <button type="button" className="button small" onClick={() => (onWhole === null ? fit(sheet) : onWhole())}>
          {OWN_WORDS.whole}
        </button>
      </div>
      <p className="own-instruction" role="status">
        {instruction !== "" && (
          <>
            <strong>{instruction}</strong> <span className="aside">{OWN_WORDS.onSheet}</span>
          </>
        )}
      </p>
    </div>
  );
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** What a tap says, by what is pointed at. @param within the file's units that the end of a line catches a tap from */
function usePut(
  own: OwnPattern,
  { outlines }: OwnAndReading["reading"],
  close: Close | null,
  within: number,
): (place: FilePlace) => void {
  const edit = useEditOwn();
  const pointing = useOwnView((view) => view.pointing);
  const point = useOwnView((view) => view.point);
  const putEnd = useOwnView((view) => view.putEnd);
  const ends = useOwnView((view) => view.ends);
  const chosen = useOwnView((view) => view.size);
  return (place) => {
    if (pointing === null) return;
    const caught = (): FilePlace => snapped(placesOf({ drawing: own.drawing }).ends, place, within);
    if (pointing.for === "from" || pointing.for === "to") {
      const at = caught();
      putEnd(pointing.for, at);
      edit((now) => (now.known === undefined ? now : withKnown(now, { ...now.known, [pointing.for]: at })));
      const other = pointing.for === "from" ? (own.known?.to ?? ends.to) : (own.known?.from ?? ends.from);
      return point(other === null ? { for: pointing.for === "from" ? "to" : "from" } : null);
    }
    if (close === null) return;
    const { group, piece } = close;
    const size = sizeShown(piece, chosen);
    const on = (): FilePlace => onOutline(outlines, group, size, place);
    switch (pointing.for) {
      case "corner": {
        const at = on();
        edit((now) => withPieceSaid(now, piece.id, (said) => withCorner(said, { name: pointing.corner, size, at })));
        return point(null);
      }
      case "bustPoint": {
        const at = caught();
        edit((now) => withPieceSaid(now, piece.id, (said) => withBustPoint(said, { size, at })));
        return point(null);
      }
      case "dart": {
        const [inner, outer] = pointing.given;
        if (inner === undefined || outer === undefined) return point({ ...pointing, given: [...pointing.given, on()] });
        const apex = caught();
        edit((now) =>
          withPieceSaid(now, piece.id, (said) => withDart(said, { name: pointing.dart, size, inner, outer, apex })),
        );
        return point(null);
      }
    }
  };
}

interface LinesProps {
  readonly drawing: FileDrawing;
  readonly lit: Lit | null;
  readonly sortedBy: OutlineReading["sortedBy"];
  readonly isFaint: boolean;
  /** Share of their width that lines are drawn at. */
  readonly thin: number;
}

/** Seen from afar, sizes lie a few pixels apart and must not run together. In steps, lest each turn of a wheel draws all anew. */
const thinAt = (pixelsToMm: number): number =>
  pixelsToMm < 0.5 ? 0.4 : pixelsToMm < 1 ? 0.6 : pixelsToMm < 2 ? 0.8 : 1;

/** All lines as they were drawn. */
const Lines = memo(({ drawing, lit, sortedBy, isFaint, thin }: LinesProps) => {
  const looks = useMemo(() => lookInk(drawing), [drawing]);
  const value = lit?.kind === "lines" ? lit.value : null;
  return (
    <g className="own-lines" data-faint={isFaint || lit !== null ? "" : undefined}>
      {looks.map(({ path, colour, dash, width, of }, at) => (
        <path
          key={at}
          d={path}
          stroke={colour}
          strokeDasharray={dash ?? undefined}
          strokeWidth={(of[sortedBy] === value ? 2 : 1) * width * thin}
          data-lit={of[sortedBy] === value ? "" : undefined}
        />
      ))}
    </g>
  );
});
Lines.displayName = "Lines";

interface OutlinesProps {
  readonly reading: OutlineReading;
  readonly group: OutlineGroup;
  readonly size: string;
}

/** The outlines of one piece as they were joined, the shown size over the others. */
const Outlines = memo(({ reading, group, size }: OutlinesProps) => (
  <g className="own-outlines">
    {outlinesOf(reading, group)
      .toSorted((a, b) => Number(a.size === size) - Number(b.size === size))
      .map(({ size: of, outline }) => (
        <path key={of} d={outlineInk(reading, outline.edges)} data-shown={of === size ? "" : undefined} />
      ))}
  </g>
));
Outlines.displayName = "Outlines";

function LitShape({ lit, reading }: { readonly lit: Lit | null; readonly reading: OutlineReading }) {
  if (lit === null || lit.kind === "lines") return null;
  if (lit.kind === "outline") {
    const outline = reading.outlines.find(({ id }) => id === lit.id);
    return outline === undefined ? null : <path className="own-lit" d={outlineInk(reading, outline.edges)} />;
  }
  const open = reading.unclosed.find(({ line }) => line.id === lit.id);
  if (open === undefined) return null;
  const { edges } = open.line;
  const [first, last] = [edges.at(0), edges.at(-1)];
  return (
    <>
      <path className="own-lit" d={openLineInk(reading, edges)} />
      {first !== undefined && last !== undefined && (
        <OpenEnds places={[first.a, last.b].map((at) => placeInFile(reading, at))} />
      )}
    </>
  );
}

/** Lines of no length with round ends: dots of one size at any zoom. */
const OpenEnds = ({ places }: { readonly places: readonly FilePlace[] }) => (
  <path className="own-open-ends" d={places.map(({ x, y }) => `M${x} ${y}h0`).join("")} />
);

interface PlacedProps {
  readonly place: FilePlace;
  readonly scale: number;
}

const at = ({ place, scale }: PlacedProps): string => `translate(${place.x} ${place.y}) scale(${1 / scale})`;

const Spot = (props: PlacedProps) => (
  <g className="own-spot" transform={at(props)}>
    <circle r="5" />
  </g>
);

const Cross = (props: PlacedProps) => (
  <g className="own-cross" transform={at(props)}>
    <path d="M-14 0H-4M4 0H14M0 -14V-4M0 4V14" />
  </g>
);

interface KnownProps {
  readonly from: FilePlace | null;
  readonly to: FilePlace | null;
  readonly scale: number;
}

function Known({ from, to, scale }: KnownProps) {
  return (
    <g className="own-known-line">
      {from !== null && to !== null && <path d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />}
      {from !== null && <Spot place={from} scale={scale} />}
      {to !== null && <Spot place={to} scale={scale} />}
    </g>
  );
}

interface MarksProps {
  readonly piece: PieceReading;
  readonly size: string;
  readonly scale: number;
}

/** Darts and bust point as they are taken. */
function Marks({ piece, size, scale }: MarksProps) {
  const here = piece.sizes.find((each) => each.size === size);
  if (here === undefined) return null;
  const { bustPoint } = here;
  return (
    <g className="own-darts">
      {here.darts.map(({ name, inner, outer, apex }) => (
        <path key={name} d={`M${inner.x} ${inner.y}L${apex.x} ${apex.y}L${outer.x} ${outer.y}`} />
      ))}
      {bustPoint !== null && (
        <g className="own-bust-point" transform={at({ place: bustPoint, scale })}>
          <circle r="7" />
          <path d="M-11 0H11M0 -11V11" />
        </g>
      )}
    </g>
  );
}
