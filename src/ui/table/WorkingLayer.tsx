import { memo, useId, useMemo } from "react";
import type { Piece } from "../../core/pattern/piece";
import type { DartRef } from "../../core/pattern/piece";
import type { PlanHalf } from "../../core/plan/plan";
import { ledgerGroup } from "../../words/ledger";
import { pieceMarks, placeKey, placeTransform, type PieceMarks, type Place } from "../../drawing/index";

const EVERYWHERE = "M-5000 -5000H5000V5000H-5000Z";

export interface WorkingLayerProps {
  readonly plan: PlanHalf;
  readonly places: readonly Place[];
  readonly mmPerPixel: number;
  readonly showBefore: boolean;
  readonly selected: DartRef | null;
  readonly onSelect: (dart: DartRef) => void;
  readonly onLight: (planned: string) => void;
}

/** The wearer's own pieces over the printed ones: the new line, what is added and taken, darts, grain, bust point. */
export const WorkingLayer = memo(
  ({ plan, places, mmPerPixel, showBefore, selected, onSelect, onLight }: WorkingLayerProps) => (
    <g className="working">
      {places.map((place) => {
        const drawn = plan.pieces.find((piece) => piece.name === place.piece);
        const printed = plan.printed.find((piece) => piece.name === place.piece);
        if (drawn === undefined) return null;
        return (
          <g
            key={placeKey(place)}
            data-kind="piece"
            data-of={place.piece}
            data-piece={place.piece}
            data-half={place.half}
            transform={placeTransform(place)}
          >
            <WorkingPiece
              drawn={drawn}
              printed={printed ?? null}
              before={showBefore ? (plan.blended.find((piece) => piece.name === place.piece) ?? null) : null}
              mmPerPixel={mmPerPixel}
              selected={selected?.piece === place.piece ? selected : null}
              onSelect={onSelect}
            />
            {place.piece === plan.bustPiece && (
              <BustPoints
                bustPoint={plan.bustPoint}
                changedBy={bustGroupOf(plan)}
                mmPerPixel={mmPerPixel}
                onLight={onLight}
              />
            )}
          </g>
        );
      })}
    </g>
  ),
);

interface WorkingPieceProps {
  readonly drawn: Piece;
  /** null: a piece that the pattern does not have, made of another. */
  readonly printed: Piece | null;
  readonly before: Piece | null;
  readonly mmPerPixel: number;
  readonly selected: DartRef | null;
  readonly onSelect: (dart: DartRef) => void;
}

const WorkingPiece = memo(({ drawn, printed, before, mmPerPixel, selected, onSelect }: WorkingPieceProps) => {
  const id = useId();
  const marks = useMemo(() => pieceMarks(drawn), [drawn]);
  const under = useMemo(() => (printed === null ? null : pieceMarks(printed)), [printed]);
  const old = useMemo(() => (before === null ? null : pieceMarks(before)), [before]);
  return (
    <>
      <clipPath id={`${id}new`}>
        <path d={EVERYWHERE + marks.outline} clipRule="evenodd" />
      </clipPath>
      {under !== null && (
        <clipPath id={`${id}old`}>
          <path d={EVERYWHERE + under.outline} clipRule="evenodd" />
        </clipPath>
      )}
      <path className="paper" d={marks.outline} />
      {under !== null && (
        <>
          <path className="added" d={marks.outline} clipPath={`url(#${id}old)`} />
          <path className="taken" d={under.outline} clipPath={`url(#${id}new)`} />
        </>
      )}
      {marks.levels.map((d, index) => (
        <path key={index} className="level" d={d} />
      ))}
      {old !== null && <path className="before" d={old.stitch} />}
      {old?.darts.map((dart) => (
        <path key={dart.dart} className="before" d={dart.legs} />
      ))}
      <path className="new-line" d={marks.stitch} />
      {marks.centreOnFold && <path className="fold" d={marks.centre} />}
      {marks.darts.map((dart) => {
        const ref: DartRef = { piece: drawn.name, dart: dart.dart };
        return (
          <g
            key={dart.dart}
            className="dart"
            data-kind="dart"
            data-of={drawn.name}
            data-dart={dart.dart}
            data-selected={selected?.dart === dart.dart ? "" : undefined}
          >
            {/* The dart is chosen by keyboard at its handles and in the panel; this is the larger target for a hand. */}
            <path className="dart-area" d={`${dart.legs}Z`} onPointerDown={() => onSelect(ref)} />
            <path className="dart-fold" d={dart.fold} />
            <path className="dart-legs" d={dart.legs} />
          </g>
        );
      })}
      <Grain marks={marks} mmPerPixel={mmPerPixel} />
    </>
  );
});

const ARROW = 5;

function Grain({ marks, mmPerPixel }: { readonly marks: PieceMarks; readonly mmPerPixel: number }) {
  const { from, to } = marks.grain;
  const a = ARROW * mmPerPixel;
  return (
    <path
      className="grain"
      d={`M${from.x - a} ${from.y + 1.6 * a}L${from.x} ${from.y}L${from.x + a} ${from.y + 1.6 * a}M${from.x} ${from.y}V${to.y}M${to.x - a} ${to.y - 1.6 * a}L${to.x} ${to.y}L${to.x + a} ${to.y - 1.6 * a}`}
    />
  );
}

const CROSS = 6;
const TOUCHED = 12;

/** What the ledger calls the alteration that changed the bust; null: none did. */
function bustGroupOf({ alterations }: PlanHalf): string | null {
  const planned = alterations.find(({ source }) => source === "bust");
  return planned === undefined ? null : ledgerGroup(planned);
}

interface BustPointsProps {
  readonly bustPoint: PlanHalf["bustPoint"];
  readonly changedBy: string | null;
  readonly mmPerPixel: number;
  readonly onLight: (planned: string) => void;
}

/** The bust point: hers over the pattern's. Touched, it lights the slip that changed the bust, if one did. */
const BustPoints = memo(({ bustPoint, changedBy, mmPerPixel, onLight }: BustPointsProps) => {
  const { printed, own, probable } = bustPoint;
  const r = CROSS * mmPerPixel;
  const mark = (x: number, y: number): string =>
    `M${x - 1.7 * r} ${y}H${x + 1.7 * r}M${x} ${y - 1.7 * r}V${y + 1.7 * r}M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
  const shown = own ?? printed;
  return (
    <g className="bust-points" aria-hidden="true">
      {probable !== null && (
        <ellipse
          className="bust-probable"
          cx={probable.centre.x}
          cy={probable.centre.y}
          rx={probable.across}
          ry={probable.down}
        />
      )}
      {own !== null && <path className="bust-point printed-point" d={mark(printed.x, printed.y)} />}
      <path className="bust-point" d={mark(shown.x, shown.y)} />
      {changedBy !== null && (
        <circle
          className="bust-touch"
          cx={shown.x}
          cy={shown.y}
          r={TOUCHED * mmPerPixel}
          onPointerDown={() => onLight(changedBy)}
        />
      )}
    </g>
  );
});
