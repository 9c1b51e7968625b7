import { useEffect, useId, useMemo, useRef, useState } from "react";
import type { Piece } from "../../core/pattern/piece";
import { sewFront } from "../../core/sewn/sewFront";
import { SEWN_KEYS, SEWN_NOTE, SEWN_TITLES, SEWN_VIEWS, seenSentence, tipsSentences } from "../../words/sewn";
import { fitInto, paint, tonesOf } from "./paint";
import { modelOf, sceneOf, type Extent, type Model } from "./scene";
import "./sewn.css";

/** Degrees: the furthest turn to either side, a step of the arrow keys, of Page Up and Down, and of a drag of a pixel. */
const FURTHEST = 90;
const STEP = 5;
const LEAP = 30;
const PER_PIXEL = 0.6;

const VIEWS = [
  { name: SEWN_VIEWS.front, turn: 0 },
  { name: SEWN_VIEWS.threeQuarter, turn: 40 },
  { name: SEWN_VIEWS.side, turn: 90 },
] as const;

interface SewnViewProps {
  /** The pieces of one half of the front. Hand in the very same array while it has not changed. */
  readonly front: readonly Piece[];
  readonly label: string;
  /** A second front, shown beside it with the same turn. */
  readonly compareWith?: readonly Piece[] | undefined;
}

/** The front with its darts sewn shut, to be turned with a finger: what is pointed and what is soft can be seen. */
export function SewnView({ front, label, compareWith }: SewnViewProps) {
  const id = useId();
  const [turn, setTurn] = useState<number>(VIEWS[1].turn);
  const drawn = useModel(front);
  const wanted = useModel(compareWith);
  const extents = useMemo(
    () => [drawn, wanted].flatMap((model) => (model === null ? [] : [model.extent])),
    [drawn, wanted],
  );
  const by = (degrees: number): void => setTurn((now) => within(now + degrees));
  const models = [
    { model: drawn, title: SEWN_TITLES.drawn },
    { model: wanted, title: SEWN_TITLES.wanted },
  ].flatMap(({ model, title }) => (model === null ? [] : [{ model, title }]));
  const pair = models.length > 1;
  return (
    <section className="sewn" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>{label}</h3>
      <div className="sewn-fronts" data-pair={pair || undefined}>
        {models.map(({ model, title }) => (
          <figure key={title}>
            <Turned
              model={model}
              extents={extents}
              turn={turn}
              name={pair ? `${label}, ${title.toLowerCase()}` : label}
              onTurn={setTurn}
              onTurnBy={by}
            />
            <figcaption>
              {pair ? <strong>{title}</strong> : null}
              {tipsSentences(model.front.tips).map((sentence) => (
                <span key={sentence}>{sentence}</span>
              ))}
            </figcaption>
          </figure>
        ))}
      </div>
      <div className="sewn-views">
        {VIEWS.map(({ name, turn: to }) => (
          <button
            key={name}
            type="button"
            className="button"
            aria-pressed={Math.abs(turn) === Math.abs(to)}
            onClick={() => setTurn(to)}
          >
            {name}
          </button>
        ))}
        <span className="sewn-how">{SEWN_KEYS}</span>
      </div>
      <p className="sewn-note">{SEWN_NOTE}</p>
    </section>
  );
}

const within = (turn: number): number => Math.min(FURTHEST, Math.max(-FURTHEST, turn));

/** Sewn once for each set of pieces, not while it is turned. */
function useModel(pieces: readonly Piece[] | undefined): Model | null {
  return useMemo(() => (pieces === undefined || pieces.length === 0 ? null : modelOf(sewFront(pieces))), [pieces]);
}

interface TurnedProps {
  readonly model: Model;
  readonly extents: readonly Extent[];
  readonly turn: number;
  readonly name: string;
  readonly onTurn: (turn: number) => void;
  readonly onTurnBy: (degrees: number) => void;
}

function Turned({ model, extents, turn, name, onTurn, onTurnBy }: TurnedProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [size, setSize] = useState({ width: 0, height: 0 });
  const hand = useRef<{ readonly pointer: number; readonly x: number; readonly turn: number } | null>(null);

  useEffect(() => {
    const element = canvas.current;
    if (element === null) return undefined;
    const watch = new ResizeObserver(() => setSize({ width: element.clientWidth, height: element.clientHeight }));
    watch.observe(element);
    return () => watch.disconnect();
  }, []);

  useEffect(() => {
    const element = canvas.current;
    if (element === null || size.width === 0) return undefined;
    // More than one turn between two frames is painted once.
    const frame = requestAnimationFrame(() => {
      const sharpness = Math.min(3, window.devicePixelRatio);
      element.width = Math.round(size.width * sharpness);
      element.height = Math.round(size.height * sharpness);
      paint(element, sceneOf(model, turn), fitInto(size.width, size.height, extents), tonesOf(element), sharpness);
    });
    return () => cancelAnimationFrame(frame);
  }, [model, extents, turn, size]);

  const onKeyDown = (event: React.KeyboardEvent): void => {
    const act = KEYS[event.key];
    if (act === undefined) return;
    event.preventDefault();
    if ("by" in act) onTurnBy(act.by);
    else onTurn(act.to);
  };
  const onPointerDown = (event: React.PointerEvent<HTMLDivElement>): void => {
    if (event.button !== 0 || !event.isPrimary) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    hand.current = { pointer: event.pointerId, x: event.clientX, turn };
  };
  const onPointerMove = (event: React.PointerEvent): void => {
    const from = hand.current;
    if (from === null || from.pointer !== event.pointerId) return;
    onTurn(within(from.turn + (event.clientX - from.x) * PER_PIXEL));
  };
  const letGo = (): void => {
    hand.current = null;
  };
  return (
    <div
      className="sewn-turned kept-paper"
      role="slider"
      tabIndex={0}
      aria-label={name}
      aria-valuemin={-FURTHEST}
      aria-valuemax={FURTHEST}
      aria-valuenow={Math.round(turn)}
      aria-valuetext={seenSentence(turn, model.front.tips)}
      onKeyDown={onKeyDown}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={letGo}
      onPointerCancel={letGo}
      onLostPointerCapture={letGo}
    >
      <canvas ref={canvas} aria-hidden="true" />
    </div>
  );
}

const KEYS: Readonly<Record<string, { readonly by: number } | { readonly to: number }>> = {
  ArrowLeft: { by: -STEP },
  ArrowDown: { by: -STEP },
  ArrowRight: { by: STEP },
  ArrowUp: { by: STEP },
  PageDown: { by: -LEAP },
  PageUp: { by: LEAP },
  Home: { to: -FURTHEST },
  End: { to: FURTHEST },
};
