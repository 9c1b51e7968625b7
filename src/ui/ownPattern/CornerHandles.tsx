import { useEffect, useRef, useState, type KeyboardEvent, type PointerEvent } from "react";
import type { FilePlace } from "../../core/decisions/fileDrawing";
import type { OwnCorner } from "../../core/decisions/ownPattern";
import type { OutlineGroup, OutlineReading } from "../../core/outlines/outlineReading";
import type { PieceReading } from "../../core/ownPieces/ownReading";
import { alongOutline, onOutline } from "../../core/ownPieces/pointedPlaces";
import type { PieceName } from "../../core/pattern/piece";
import { snapStep } from "../../core/plan/dartEdit";
import { saidOfPiece, withCorner, withPieceSaid } from "../../core/plan/ownEdit";
import { invariant } from "../../core/result";
import { cornerWords, handleWords } from "../../words/ownPattern";
import { capital } from "../../words/terms/names";
import { useGesture, useWork, useWorkStore } from "../session/useWork";
import { ownCorner } from "./ownCorner";
import { useOwnView } from "./ownView";
import { setOwn, useEditOwn } from "./useOwn";

export interface CornerHandlesProps {
  readonly outlines: OutlineReading;
  readonly group: OutlineGroup;
  readonly piece: PieceReading;
  readonly name: PieceName;
  readonly size: string;
  /** Pixels to a unit of the file. */
  readonly scale: number;
  /** Of the window: words stand on the side where the piece is. */
  readonly middle: number;
}

/** The corners of a piece as handles on its outline. */
export function CornerHandles(props: CornerHandlesProps) {
  const { piece, size } = props;
  const own = useWork((work) => work.pattern.own);
  const said = own === undefined ? [] : (saidOfPiece(own, piece.id).corners ?? []);
  const found = piece.sizes.find((each) => each.size === size)?.corners ?? [];
  return (
    <g className="own-handles">
      {found.flatMap((corner) => {
        const name = ownCorner(corner.name);
        if (name === undefined) return [];
        // Where she has it at this very moment, before it is read again.
        const hers = said.find((each) => each.name === name && each.size === size)?.at;
        return [<CornerHandle key={name} {...props} corner={name} place={hers ?? corner.at} />];
      })}
    </g>
  );
}

interface CornerHandleProps extends CornerHandlesProps {
  readonly corner: OwnCorner;
  readonly place: FilePlace;
}

const ALONG: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };
/** A run of arrow keys is one step of undo until the keys rest this long, ms. */
const KEY_REST = 900;

/** Moves along the outline by arrow keys, or is dragged along it. */
function CornerHandle(props: CornerHandleProps) {
  const { outlines, group, piece, name, size, scale, middle, corner, place } = props;
  const store = useWorkStore();
  const gesture = useGesture();
  const edit = useEditOwn();
  const point = useOwnView((view) => view.point);
  const isChosen = useOwnView((view) => view.pointing?.for === "corner" && view.pointing.corner === corner);
  const [dragged, setDragged] = useState<FilePlace | null>(null);
  const run = useRef<{ to: FilePlace; rest: number } | null>(null);
  const stop = useRef<(() => void) | null>(null);
  useEffect(
    () => () => {
      stop.current?.();
      window.clearTimeout(run.current?.rest);
    },
    [],
  );
  const choose = (): void => point({ for: "corner", piece: piece.id, corner });

  const finish = (how: "commit" | "cancel"): void => {
    if (run.current === null) return;
    window.clearTimeout(run.current.rest);
    run.current = null;
    gesture[how]();
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key === "Escape" && run.current !== null) {
      event.stopPropagation();
      return finish("cancel");
    }
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      event.stopPropagation();
      finish("commit");
      return choose();
    }
    const way = ALONG[event.key];
    if (way === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    if (!gesture.isGoingOn()) {
      finish("commit");
      gesture.begin("keys");
      run.current = { to: place, rest: 0 };
    }
    const going = invariant(run.current ?? undefined, "a run of keys");
    window.clearTimeout(going.rest);
    const { work } = store.getState();
    const by = way * snapStep(work.unit) * (event.shiftKey ? 10 : 1);
    going.to = alongOutline(outlines, group, size, going.to, by);
    const { own } = work.pattern;
    if (own !== undefined) gesture.preview([setOwn(put(own, going.to))]);
    going.rest = window.setTimeout(() => finish("commit"), KEY_REST);
  };

  const put = (own: Parameters<typeof withPieceSaid>[0], at: FilePlace) =>
    withPieceSaid(own, piece.id, (said) => withCorner(said, { name: corner, size, at }));

  const onPointerDown = (event: PointerEvent<SVGGElement>): void => {
    if (event.button !== 0 || !event.isPrimary) return;
    event.stopPropagation();
    finish("commit");
    const handle = event.currentTarget;
    const toSheet = handle.ownerSVGElement?.getScreenCTM()?.inverse();
    if (toSheet === undefined) return choose();
    handle.setPointerCapture(event.pointerId);
    const start = { x: event.clientX, y: event.clientY };
    let to: FilePlace | null = null;
    const onMove = (move: globalThis.PointerEvent): void => {
      if (move.pointerId !== event.pointerId) return;
      const aim = {
        x: place.x + (move.clientX - start.x) * toSheet.a,
        y: place.y + (move.clientY - start.y) * toSheet.d,
      };
      if (to === null && Math.hypot(move.clientX - start.x, move.clientY - start.y) < 4) return;
      to = onOutline(outlines, group, size, aim);
      setDragged(to);
    };
    const end = (isTaken: boolean): void => {
      handle.removeEventListener("pointermove", onMove);
      handle.removeEventListener("pointerup", onUp);
      handle.removeEventListener("pointercancel", onCancel);
      window.removeEventListener("keydown", onEscape, true);
      stop.current = null;
      setDragged(null);
      const at = to;
      if (isTaken && at !== null) edit((own) => put(own, at));
      else if (isTaken) choose();
    };
    const onUp = (): void => end(true);
    const onCancel = (): void => end(false);
    const onEscape = (key: globalThis.KeyboardEvent): void => {
      if (key.key !== "Escape") return;
      key.preventDefault();
      key.stopPropagation();
      end(false);
    };
    handle.addEventListener("pointermove", onMove);
    handle.addEventListener("pointerup", onUp);
    handle.addEventListener("pointercancel", onCancel);
    window.addEventListener("keydown", onEscape, true);
    stop.current = onCancel;
  };

  const { x, y } = dragged ?? place;
  const isLeft = x < middle;
  return (
    <g
      className="own-handle"
      data-chosen={isChosen ? "" : undefined}
      transform={`translate(${x} ${y}) scale(${1 / scale})`}
      role="button"
      tabIndex={0}
      aria-label={handleWords(corner, name)}
      aria-pressed={isChosen}
      onPointerDown={onPointerDown}
      onKeyDown={onKeyDown}
      onBlur={() => finish("commit")}
    >
      <circle className="own-handle-touch" r="16" />
      <circle className="own-handle-dot" r={isChosen ? 7 : 5} />
      <text x={isLeft ? 11 : -11} y={isLeft ? 15 : -7} textAnchor={isLeft ? "start" : "end"} aria-hidden="true">
        {capital(cornerWords(corner, name))}
      </text>
    </g>
  );
}
