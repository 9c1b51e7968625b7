import { useEffect, useMemo, useRef, useState } from "react";
import type { TissueLength } from "../../core/decisions/tissue";
import type { PieceName } from "../../core/pattern/piece";
import type { Misfit, NextTissue, TissueChange, TissueDoubt, TissueRef } from "../../core/tissue/fitToTissue";
import { readTissue, type TissueReading } from "../../core/plan/tissueReading";
import type { TissuePlace } from "../../core/tissue/placesToMeasure";
import { letterAt, tissueFigure } from "../../drawing/tissueFigure";
import { capital, centreWords, pieceWords } from "../../words/terms/names";
import {
  HOW_TO_MEASURE,
  knownWords,
  misfitHead,
  misfitWords,
  nextGainWords,
  NOT_ON_PIECES,
  OWN_IN_USE,
  SIZE_GONE,
  standInEntry,
  tissueChangeWords,
  otherCutWords,
  unusualWords,
  tissueLengthWords,
  tissueRefWords,
  type TissueContext,
} from "../../words/tissue";
import { Fractions } from "../fields/Fractions";
import { useRunAll } from "../session/useRunAll";
import { LengthField } from "../fields/LengthField";
import { Select } from "../fields/Select";
import { useRun, useSettledWork } from "../session/useWork";
import { TissueDrawing } from "./TissueDrawing";
import { useTissueView } from "./tissueView";
import { listWords } from "../../words/terms/language";
import * as say from "../../words/tissueStep";

/** So many stand there at once: what is worth most. */
const FIRST = 10;
/** The room of the figure, pixels. */
const ROOM = { width: 176, height: 272 };

const fieldOf = ({ piece, length }: TissueRef): string => `tissue.${piece}.${length}`;
const isSame = (a: TissueRef, b: TissueRef | null): boolean => a.piece === b?.piece && a.length === b.length;

const lengthsOf = (places: readonly TissueRef[], piece: PieceName): readonly TissueLength[] =>
  places.filter((place) => place.piece === piece).map(({ length }) => length);

const letterOf = (places: readonly TissueRef[], { piece, length }: TissueRef): string =>
  letterAt(lengthsOf(places, piece).indexOf(length));

/** Lengths of her tissue, beside the figure that shows where the tape is laid. */
export function TapeDoor() {
  const work = useSettledWork((current) => current);
  const size = useTissueView((view) => view.size);
  const reading = useMemo(() => readTissue(work, size), [work, size]);
  return reading === null ? <p className="field-hint">{say.noPiecesYet}</p> : <Places reading={reading} />;
}

function Places({ reading }: { readonly reading: TissueReading }) {
  const { places, size } = reading;
  const first = places.slice(0, FIRST);
  const more = places.slice(FIRST);
  const [shown, setShown] = useState<TissueRef | null>(null);
  const { isMoreOpen, setMoreOpen, place } = useFields(more);
  const measured = useSettledWork((work) => work.pattern.tissue?.pieces);
  const isMeasured = ({ piece, length }: TissueRef): boolean => measured?.[piece]?.[length] !== undefined;
  const lit = shown ?? places[0] ?? null;
  const drawn = useMemo(() => (isMoreOpen ? places : places.slice(0, FIRST)), [isMoreOpen, places]);
  const group = (all: readonly TissuePlace[]) =>
    byPiece(all).map(([piece, own]) => (
      <div key={piece} className="tissue-piece-fields">
        <h4>{capital(pieceWords(piece))}</h4>
        {own.map((one) => (
          <PlaceField
            key={fieldOf(one)}
            place={one}
            size={size}
            letter={letterOf(places, one)}
            change={reading.fit.changed.find((other) => isSame(one, other))}
            misfit={reading.fit.misfits.find((other) => isSame(one, other))}
            isLit={lit !== null && isSame(one, lit)}
            onShow={setShown}
          />
        ))}
      </div>
    ));
  return (
    <div className="tissue-door" ref={place}>
      <WhatCameOfIt reading={reading} />
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
                {say.moreLengths}{" "}
                <span className="aside">{say.measuredOf(more.filter(isMeasured).length, more.length)}</span>
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
function byPiece(all: readonly TissuePlace[]): readonly (readonly [PieceName, readonly TissuePlace[]])[] {
  const pieces = [...new Set(all.map(({ piece }) => piece))];
  return pieces.map((piece) => [piece, all.filter((one) => one.piece === piece)] as const);
}

/** Opens what an entry lies in that could not be read, or that a link leads to, and comes to that field. */
function useFields(more: readonly TissueRef[]) {
  const place = useRef<HTMLDivElement>(null);
  const hasUnread = useSettledWork((work) => more.some((one) => work.unread[fieldOf(one)] !== undefined));
  const wanted = useTissueView((view) => view.wanted);
  const want = useTissueView((view) => view.want);
  const [isOpen, setMoreOpen] = useState(hasUnread);
  const isInMore = more.some((one) => isSame(one, wanted));
  if (isInMore && !isOpen) setMoreOpen(true);
  useEffect(() => {
    if (wanted === null) return;
    place.current?.querySelector<HTMLElement>(`[data-place="${fieldOf(wanted)}"] input`)?.focus();
    want(null);
  }, [wanted, want]);
  return { isMoreOpen: isOpen, setMoreOpen, place };
}

function useContextOf(): TissueContext {
  const unit = useSettledWork((work) => work.unit);
  const style = useSettledWork((work) => work.pattern.style);
  return useMemo(() => ({ unit, style }), [unit, style]);
}

/** What must be measured again, how well the pieces are known by now, and what is worth measuring next. */
function WhatCameOfIt({ reading: { fit } }: { readonly reading: TissueReading }) {
  const context = useContextOf();
  const { unit } = context;
  const isOwn = useSettledWork((work) => work.pattern.own?.inUse === true);
  const known = knownWords(fit.doubt, unit);
  const again = fit.misfits.filter(({ withinTape }) => !withinTape);
  const next = fit.next[0];
  return (
    <div className="tissue-said">
      {isOwn && <p className="note">{OWN_IN_USE}</p>}
      {fit.measured === null && <p className="note doubt">{SIZE_GONE}</p>}
      {again.map((misfit) => (
        <p key={fieldOf(misfit)} className="note doubt">
          <Fractions text={misfitHead(misfit, context)} />
        </p>
      ))}
      {fit.unused.length > 0 && <NotOnPieces unused={fit.unused} />}
      {fit.otherCut.length > 0 && <p className="note">{otherCutWords(fit.otherCut, context.style)}</p>}
      {known !== null && (
        <p>
          <Fractions text={known} />
        </p>
      )}
      {next !== undefined && <NextBest next={next} doubt={fit.doubt} />}
    </div>
  );
}

/** What the next number would save, and the way to its field. */
function NextBest({ next, doubt }: { readonly next: NextTissue; readonly doubt: TissueDoubt }) {
  const { unit, style } = useContextOf();
  const want = useTissueView((view) => view.want);
  return (
    <p>
      {say.nextBest}{" "}
      <button type="button" className="link-button" onClick={() => want(next)}>
        {tissueRefWords(next, style)}
      </button>
      <Fractions text={nextGainWords(next, doubt, unit)} />
    </p>
  );
}

/** What was measured on pieces that another style has no more. */
function NotOnPieces({ unused }: { readonly unused: readonly TissueRef[] }) {
  const { style } = useContextOf();
  const runAll = useRunAll();
  const size = useSettledWork((work) => work.pattern.tissue?.size ?? "");
  return (
    <p className="note">
      {NOT_ON_PIECES} {listWords(unused.map((ref) => tissueRefWords(ref, style)))}.{" "}
      <button
        type="button"
        className="link-button"
        onClick={() =>
          runAll(unused.map(({ piece, length }) => ({ kind: "setTissueLength", piece, length, size, value: null })))
        }
      >
        {say.forgetThem}
      </button>
    </p>
  );
}

function SizeMeasured({ reading: { sizes, size } }: { readonly reading: TissueReading }) {
  const run = useRun();
  const takeSize = useTissueView((view) => view.takeSize);
  const isMeasured = useSettledWork((work) => work.pattern.tissue !== undefined);
  const labels = sizes.includes(size) ? sizes : [size, ...sizes];
  return (
    <Select
      label={say.measureAlongSize}
      value={size}
      options={labels.map((label) => ({
        value: label,
        label: sizes.includes(label) ? label : say.notInTheChart(label),
      }))}
      onChange={(label) => (isMeasured ? run({ kind: "setTissueSize", size: label }) : takeSize(label))}
    />
  );
}

interface PlaceFieldProps {
  readonly place: TissuePlace;
  readonly size: string;
  readonly letter: string;
  readonly change: TissueChange | undefined;
  readonly misfit: Misfit | undefined;
  readonly isLit: boolean;
  readonly onShow: (place: TissueRef) => void;
}

function PlaceField({ place, size, letter, change, misfit, isLit, onShow }: PlaceFieldProps) {
  const { piece, length, standIn } = place;
  const context = useContextOf();
  const { unit, style } = context;
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
            {tissueLengthWords(place, style).name}
          </>
        }
        field={fieldOf(place)}
        value={value}
        set={(measured) => ({ kind: "setTissueLength", piece, length, size, value: measured })}
        clear={{ kind: "setTissueLength", piece, length, size, value: null }}
        otherwise={standInEntry(standIn, unit)}
        {...(change === undefined ? {} : { hint: <Fractions text={tissueChangeWords(change, unit)} /> })}
        warnings={[
          ...(misfit === undefined ? [] : [misfitWords(misfit, context)]),
          ...(change === undefined ? [] : [unusualWords(change, unit)].filter((said) => said !== null)),
        ]}
        onFocus={() => onShow(place)}
      />
    </div>
  );
}

interface GuideProps {
  readonly reading: TissueReading;
  readonly lit: TissueRef;
  /** The places whose letters are drawn. */
  readonly drawn: readonly TissueRef[];
}

/** The figure of the piece in hand, and in words where the tape lies. */
function Guide({ reading: { pieces, next, places }, lit, drawn }: GuideProps) {
  const measured = useSettledWork((work) => work.pattern.tissue?.pieces[lit.piece]);
  const { style } = useContextOf();
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
    <aside className="tape-guide tissue-guide" aria-label={say.whereTheTapeIsLaid} aria-live="polite">
      <TissueDrawing
        figure={figure}
        lit={lit.length}
        measured={taken}
        title={capital(pieceWords(lit.piece))}
        centreWords={figure.centre.onFold ? `${centreWords(lit.piece)}, fold` : centreWords(lit.piece)}
      />
      <p>
        <b className="tissue-key">{letterOf(places, lit)}</b> {tissueLengthWords(lit, style).how}
      </p>
    </aside>
  );
}
