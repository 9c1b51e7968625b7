import { memo, useEffect, useRef } from "react";
import type { Half } from "../../core/decisions/alteration";
import type { Work } from "../../core/decisions/work";
import { piecePoint, type PiecePoint } from "../../core/geometry/point";
import { isSameDart, type DartRef } from "../../core/pattern/piece";
import type { Command } from "../../core/plan/commands";
import { dartOn } from "../../core/plan/dartHalves";
import { planOf } from "../../core/plan/planOf";
import { isSame } from "../../core/same";
import { onTable, type Place } from "../../drawing/index";
import { useGesture, useWorkStore } from "../session/useWork";
import { useViewState } from "../session/viewState";
import { HANDLE_ROLE } from "../../words/table";
import { alterationId, moverOf, snapStep, USUAL_HOLD, type HandleEnd } from "../../core/plan/dartEdit";

export interface HandleProps {
  readonly dart: DartRef;
  readonly end: HandleEnd;
  readonly x: number;
  readonly y: number;
  readonly place: Place;
  /** The half of the body that it is on. */
  readonly half: Half;
  readonly mmPerPixel: number;
  /** Pixels that are this handle's own before the next one's begin. */
  readonly room: number;
  /** Which dart and end it is. */
  readonly name: string;
  /** The figures that it changes. They stand still while it is moved, so that where it came to is told once. */
  readonly value: string;
  /** Of these the mouth, mm. */
  readonly mouth: number;
  readonly selected: boolean;
  /** One stop of the Tab key for each dart: Page Up and Page Down lead to its other ends. */
  readonly isStop: boolean;
  readonly onStop: (end: HandleEnd) => void;
}

/** Pixels: what is seen, and what a finger may touch. */
const SEEN = 7;
/** Where a whole garment stands on a small table, dots of the full size would hide a cup. */
const LEAST_SEEN = 3.5;
/** mm to a pixel up to which they are of the full size. */
const FULL_AT = 1.4;
const TOUCHED = 22;
const reachOf = (room: number): number => Math.max(SEEN, Math.min(TOUCHED, room));
/** A run of arrow keys is one step of undo until the keys rest this long. */
const KEY_REST = 900;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const OTHER_END: Readonly<Record<string, 1 | -1>> = { PageDown: 1, PageUp: -1 };

/** The focus on another end of the same dart, which shows all of them as it is chosen. */
function goToEnd(from: Element, by: 1 | -1): void {
  const ends = [...(from.parentElement?.querySelectorAll<SVGGElement>(".handle[data-selected]") ?? [])];
  ends.at((ends.findIndex((one) => one === from) + by) % ends.length)?.focus();
}

/** Pixels: a pen's point is as good as what is seen, and beside it draws on the table. */
const PEN_REACH = 11;

function isBeside({ currentTarget, clientX, clientY }: React.PointerEvent): boolean {
  const { left, top, width, height } = currentTarget.getBoundingClientRect();
  return Math.hypot(clientX - left - width / 2, clientY - top - height / 2) > PEN_REACH;
}

/** mm: no mouth is wider. The figures are told in words; a slider has to have a range. */
const MOST_MOUTH = 500;

/** A dart is named anew in every plan; all else is the very same or another one. */
const isSameHandle = (was: HandleProps, is: HandleProps): boolean =>
  was.x === is.x &&
  was.y === is.y &&
  was.name === is.name &&
  was.value === is.value &&
  was.isStop === is.isStop &&
  reachOf(was.room) === reachOf(is.room) &&
  was.selected === is.selected &&
  was.place === is.place &&
  was.half === is.half &&
  was.mmPerPixel === is.mmPerPixel &&
  was.end === is.end &&
  was.onStop === is.onStop &&
  isSameDart(was.dart, is.dart);

/** A dart's end or mouth end: dragged with mouse, finger or pen, moved with the arrow keys, put back with Escape. */
export const Handle = memo((props: HandleProps) => {
  const { dart, end, x, y, place, half, mmPerPixel, room, name, value, mouth, selected, isStop, onStop } = props;
  const store = useWorkStore();
  const gesture = useGesture();
  const selectDart = useViewState((view) => view.selectDart);
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const showHalf = useViewState((view) => view.showHalf);
  const alone = useViewState((view) => view.alone);
  const across = place.mirrored === true ? -1 : 1;
  const stop = useRef<(() => void) | null>(null);
  const keys = useRef<{ mover: (to: PiecePoint) => Command; to: PiecePoint; rest: number } | null>(null);

  const choose = (): void => {
    selectDart(dart);
    showHalf(half);
    onStop(end);
  };
  const take = (): void => {
    choose();
    lightAlteration(alterationId(end === "apex" ? "dartEnd" : "dartMouth", dart, onOf(store.getState().work)));
  };
  const onOf = (work: Work): Half | undefined => {
    const plan = planOf(work);
    return plan.ok ? dartOn(work, plan.value, dart, half, alone) : undefined;
  };
  const moverFor = (work: Work) => moverOf(work, dart, end, USUAL_HOLD, half, onOf(work));

  const onPointerDown = (event: React.PointerEvent<SVGGElement>): void => {
    if (event.button !== 0 || (event.pointerType === "pen" && isBeside(event))) return;
    // A second finger is for the table, and for nothing while a dart is in the first one's hand.
    if (!event.isPrimary) {
      if (store.getState().gesture?.hand.kind === "drag") event.stopPropagation();
      return;
    }
    event.stopPropagation();
    finishKeys();
    take();
    const mover = moverFor(store.getState().work);
    const group = event.currentTarget;
    const svg = group.ownerSVGElement;
    const toTable = svg?.getScreenCTM()?.inverse();
    if (mover === null || toTable === undefined) return;
    group.setPointerCapture(event.pointerId);
    const start = { x: event.clientX, y: event.clientY };
    let latest: { x: number; y: number } | null = null;
    let frame = 0;
    let begun = false;
    let asked: Command | null = null;
    const show = (): void => {
      frame = 0;
      if (latest === null) return;
      // What is held is the spot she touched, so the handle does not jump under the finger.
      const to = piecePoint(x + across * (latest.x - start.x) * toTable.a, y + (latest.y - start.y) * toTable.d);
      const command = mover(to);
      // It goes by whole steps: most moves of a slow hand ask for what is shown already.
      if (asked !== null && isSame(command, asked)) return;
      asked = command;
      gesture.preview([command]);
    };
    const onMove = (move: PointerEvent): void => {
      if (move.pointerId !== event.pointerId) return;
      if (!begun) {
        begun = true;
        gesture.begin("drag");
      }
      latest = { x: move.clientX, y: move.clientY };
      // At most one new plan for each frame that is shown.
      if (frame === 0) frame = requestAnimationFrame(show);
    };
    const finish = (how: "commit" | "cancel"): void => {
      if (frame !== 0) {
        cancelAnimationFrame(frame);
        if (how === "commit") show();
      }
      group.removeEventListener("pointermove", onMove);
      group.removeEventListener("pointerup", onUp);
      group.removeEventListener("pointercancel", onCancel);
      window.removeEventListener("keydown", onEscape, true);
      stop.current = null;
      if (begun) gesture[how]();
    };
    const onUp = (up: PointerEvent): void => {
      if (up.pointerId === event.pointerId) finish("commit");
    };
    const onCancel = (cancelled: PointerEvent): void => {
      if (cancelled.pointerId === event.pointerId) finish("cancel");
    };
    const onEscape = (key: KeyboardEvent): void => {
      if (key.key !== "Escape") return;
      key.preventDefault();
      key.stopPropagation();
      finish("cancel");
    };
    group.addEventListener("pointermove", onMove);
    group.addEventListener("pointerup", onUp);
    group.addEventListener("pointercancel", onCancel);
    window.addEventListener("keydown", onEscape, true);
    stop.current = () => finish("cancel");
  };

  const finishKeys = (how: "commit" | "cancel" = "commit"): void => {
    if (keys.current === null) return;
    window.clearTimeout(keys.current.rest);
    keys.current = null;
    gesture[how]();
  };

  const onKeyDown = (event: React.KeyboardEvent): void => {
    if (event.key === "Escape" && keys.current !== null) {
      event.preventDefault();
      event.stopPropagation();
      return finishKeys("cancel");
    }
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      finishKeys();
      return take();
    }
    const other = OTHER_END[event.key];
    if (other !== undefined) {
      event.preventDefault();
      finishKeys();
      return goToEnd(event.currentTarget, other);
    }
    const arrow = ARROWS[event.key];
    if (arrow === undefined || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    event.stopPropagation();
    take();
    const { work } = store.getState();
    // Undo may have ended the run: the next key begins another.
    if (!gesture.isGoingOn()) finishKeys();
    if (keys.current === null) {
      const mover = moverFor(work);
      if (mover === null) return;
      gesture.begin("keys");
      keys.current = { mover, to: piecePoint(x, y), rest: 0 };
    }
    const run = keys.current;
    window.clearTimeout(run.rest);
    const step = snapStep(work.unit) * (event.shiftKey ? 10 : 1);
    run.to = piecePoint(run.to.x + across * arrow[0] * step, run.to.y + arrow[1] * step);
    gesture.preview([run.mover(run.to)]);
    run.rest = window.setTimeout(() => finishKeys(), KEY_REST);
  };

  // A handle that goes away in the middle of a move leaves nothing behind that would go on with it.
  useEffect(
    () => () => {
      stop.current?.();
      window.clearTimeout(keys.current?.rest);
      keys.current = null;
    },
    [],
  );

  const shown = onTable(place, { x, y });
  const r = (selected ? SEEN : Math.max(LEAST_SEEN, SEEN * Math.min(1, FULL_AT / mmPerPixel))) * mmPerPixel;
  return (
    <g
      className="handle"
      data-kind="dart"
      data-of={dart.piece}
      data-dart={dart.dart}
      data-half={half}
      data-end={end}
      data-selected={selected ? "" : undefined}
      data-testid={`handle-${dart.piece}-${dart.dart}-${end}${place.half === undefined ? "" : `-${place.half}`}`}
      transform={`translate(${shown.x} ${shown.y})`}
      role="slider"
      aria-roledescription={HANDLE_ROLE}
      tabIndex={isStop ? 0 : -1}
      aria-label={name}
      aria-valuemin={0}
      aria-valuemax={MOST_MOUTH}
      aria-valuenow={mouth}
      aria-valuetext={value}
      aria-describedby="table-handle-help"
      onPointerDown={onPointerDown}
      onKeyDown={onKeyDown}
      onBlur={() => finishKeys()}
      onFocus={choose}
    >
      <circle className="handle-touch" r={reachOf(room) * mmPerPixel} />
      <Dot end={end} r={r} />
    </g>
  );
}, isSameHandle);

/** What is seen of a handle stays as it is wherever it goes. */
const Dot = memo(({ end, r }: { readonly end: HandleEnd; readonly r: number }) => (
  <>
    <circle className="handle-focus" r={r * 1.9} />
    {end === "apex" ? (
      <circle className="handle-dot" r={r} />
    ) : (
      <rect className="handle-dot" x={-r * 0.85} y={-r * 0.85} width={r * 1.7} height={r * 1.7} />
    )}
  </>
));
