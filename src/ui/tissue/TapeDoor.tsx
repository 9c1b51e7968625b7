import { useEffect, useMemo, useRef, useState } from "react";
import type { TissueLength } from "../../core/decisions/tissue";
import type { PieceName } from "../../core/pattern/piece";
import { letterAt, tissueFigure } from "../../drawing/tissueFigure";
import { capital, centreWords, pieceWords } from "../../words/terms/names";
import { HOW_TO_MEASURE, standInEntry, tissueLengthWords } from "../../words/tissue";
import { LengthField } from "../fields/LengthField";
import { Select } from "../fields/Select";
import { useRun, useSettledWork } from "../session/useWork";
import { TissueDrawing } from "./TissueDrawing";
import { readTissue, type TissuePlaceShown, type TissueReading } from "./tissueReading";
import { useTissueView, type TissueField } from "./tissueView";

/** So many stand there at once: what is worth most. */
const FIRST = 10;
/** The room of the figure, pixels. */
const ROOM = { width: 176, height: 272 };

export const fieldOf = ({ piece, length }: TissueField): string => `tissue.${piece}.${length}`;
const isSame = (a: TissueField, b: TissueField | null): boolean => a.piece === b?.piece && a.length === b.length;

const lengthsOf = (places: readonly TissueField[], piece: PieceName): readonly TissueLength[] =>
  places.filter((place) => place.piece === piece).map(({ length }) => length);

const letterOf = (places: readonly TissueField[], { piece, length }: TissueField): string =>
  letterAt(lengthsOf(places, piece).indexOf(length));

/** Lengths of her tissue, beside the figure that shows where the tape is laid. */
export function TapeDoor() {
  const work = useSettledWork((current) => current);
  const size = useTissueView((view) => view.size);
  const reading = useMemo(() => readTissue(work, size), [work, size]);
  return reading === null ? (
    <p className="field-hint">The pieces to measure appear here once there is a size chart on Envelope.</p>
  ) : (
    <Places reading={reading} />
  );
}

function Places({ reading }: { readonly reading: TissueReading }) {
  const { places, size } = reading;
  const first = places.slice(0, FIRST);
  const more = places.slice(FIRST);
  const [shown, setShown] = useState<TissueField | null>(null);
  const { isMoreOpen, setMoreOpen, place } = useFields(more);
  const measured = useSettledWork((work) => work.pattern.tissue?.pieces);
  const isMeasured = ({ piece, length }: TissueField): boolean => measured?.[piece]?.[length] !== undefined;
  const lit = shown ?? places[0] ?? null;
  const drawn = useMemo(() => (isMoreOpen ? places : places.slice(0, FIRST)), [isMoreOpen, places]);
  const group = (all: readonly TissuePlaceShown[]) =>
    byPiece(all).map(([piece, own]) => (
      <section key={piece} className="tissue-piece-fields" aria-label={capital(pieceWords(piece))}>
        <h4>{capital(pieceWords(piece))}</h4>
        {own.map((one) => (
          <PlaceField
            key={fieldOf(one)}
            place={one}
            size={size}
            letter={letterOf(places, one)}
            isLit={lit !== null && isSame(one, lit)}
            onShow={setShown}
          />
        ))}
      </section>
    ));
  return (
    <div className="tissue-door" ref={place}>
      <p className="aside">{HOW_TO_MEASURE}</p>
      <SizeMeasured reading={reading} />
      <div className="tape">
        <div className="tape-fields">
          {group(first)}
          {more.length > 0 && (
            <details
              className="tape-more"
              open={isMoreOpen}
              onToggle={(event) => setMoreOpen(event.currentTarget.open)}
            >
              <summary>
                More lengths{" "}
                <span className="aside">
                  ({more.filter(isMeasured).length} of {more.length} measured)
                </span>
              </summary>
              <div>{group(more)}</div>
            </details>
          )}
        </div>
        {lit !== null && <Guide reading={reading} lit={lit} drawn={drawn} />}
      </div>
    </div>
  );
}

/** The pieces in the order in which they are first asked about: one is in hand at a time. */
function byPiece(all: readonly TissuePlaceShown[]): readonly (readonly [PieceName, readonly TissuePlaceShown[]])[] {
  const pieces = [...new Set(all.map(({ piece }) => piece))];
  return pieces.map((piece) => [piece, all.filter((one) => one.piece === piece)] as const);
}

/** Opens what an entry lies in that could not be read, or that a link leads to, and comes to that field. */
function useFields(more: readonly TissueField[]) {
  const place = useRef<HTMLDivElement>(null);
  const hasUnread = useSettledWork((work) => more.some((one) => work.unread[fieldOf(one)] !== undefined));
  const wanted = useTissueView((view) => view.wanted);
  const want = useTissueView((view) => view.want);
  const [isOpen, setMoreOpen] = useState(hasUnread);
  const isInMore = more.some((one) => isSame(one, wanted));
  useEffect(() => {
    if (wanted === null) return;
    if (isInMore && !isOpen) setMoreOpen(true);
    else {
      place.current?.querySelector<HTMLElement>(`[data-place="${fieldOf(wanted)}"] input`)?.focus();
      want(null);
    }
  }, [wanted, want, isInMore, isOpen]);
  return { isMoreOpen: isOpen, setMoreOpen, place };
}

function SizeMeasured({ reading: { sizes, size } }: { readonly reading: TissueReading }) {
  const run = useRun();
  const takeSize = useTissueView((view) => view.takeSize);
  const isMeasured = useSettledWork((work) => work.pattern.tissue !== undefined);
  const labels = sizes.includes(size) ? sizes : [size, ...sizes];
  return (
    <Select
      label="Measure along the line of size"
      value={size}
      options={labels.map((label) => ({
        value: label,
        label: sizes.includes(label) ? label : `${label}, not in the chart`,
      }))}
      onChange={(label) => (isMeasured ? run({ kind: "setTissueSize", size: label }) : takeSize(label))}
    />
  );
}

interface PlaceFieldProps {
  readonly place: TissuePlaceShown;
  readonly size: string;
  readonly letter: string;
  readonly isLit: boolean;
  readonly onShow: (place: TissueField) => void;
}

function PlaceField({ place, size, letter, isLit, onShow }: PlaceFieldProps) {
  const { piece, length, standIn } = place;
  const unit = useSettledWork((work) => work.unit);
  const value = useSettledWork((work) => work.pattern.tissue?.pieces[piece]?.[length]);
  return (
    <div
      className="tissue-place"
      data-place={fieldOf(place)}
      data-measured={value === undefined ? undefined : ""}
      data-lit={isLit ? "" : undefined}
    >
      <LengthField
        label={
          <>
            <span className="tissue-key" aria-hidden="true">
              {letter}
            </span>{" "}
            <span className="visually-hidden">{capital(pieceWords(piece))}: </span>
            {tissueLengthWords(place).name}
          </>
        }
        field={fieldOf(place)}
        value={value}
        set={(measured) => ({ kind: "setTissueLength", piece, length, size, value: measured })}
        clear={{ kind: "setTissueLength", piece, length, size, value: null }}
        otherwise={standInEntry(standIn, unit)}
        onFocus={() => onShow(place)}
      />
    </div>
  );
}

interface GuideProps {
  readonly reading: TissueReading;
  readonly lit: TissueField;
  /** The places whose letters are drawn. */
  readonly drawn: readonly TissueField[];
}

/** The figure of the piece in hand, and in words where the tape lies. */
function Guide({ reading: { pieces, next, places }, lit, drawn }: GuideProps) {
  const measured = useSettledWork((work) => work.pattern.tissue?.pieces[lit.piece]);
  const piece = pieces.find(({ name }) => name === lit.piece);
  const larger = next.find(({ name }) => name === lit.piece) ?? null;
  const figure = useMemo(() => {
    if (piece === undefined) return null;
    const shown = lengthsOf(drawn, piece.name);
    return tissueFigure(piece, larger, lengthsOf(places, piece.name), (length) => shown.includes(length), ROOM);
  }, [piece, larger, places, drawn]);
  const taken = useMemo(
    () =>
      new Set((figure?.tapes ?? []).map(({ length }) => length).filter((length) => measured?.[length] !== undefined)),
    [figure, measured],
  );
  if (figure === null) return null;
  return (
    <aside className="tape-guide tissue-guide" aria-label="Where the tape is laid" aria-live="polite">
      <TissueDrawing
        figure={figure}
        lit={lit.length}
        measured={taken}
        title={capital(pieceWords(lit.piece))}
        centreWords={figure.centre.onFold ? `${centreWords(lit.piece)}, fold` : centreWords(lit.piece)}
      />
      <p>
        <b className="tissue-key">{letterOf(places, lit)}</b> {tissueLengthWords(lit).how}
      </p>
    </aside>
  );
}
