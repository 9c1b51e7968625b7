import { useState } from "react";
import type { ClosedOutline, TestSquare } from "../../core/outlines/outlineReading";
import { apartInFile, mmOf, sideOfSquare } from "../../core/ownPieces/drawingPlaces";
import { withKnown } from "../../core/plan/ownEdit";
import {
  apartSentence,
  disagreeSentence,
  OWN_WORDS,
  scaleSentence,
  squareMeasures,
  squareWords,
  USUAL_SQUARES,
} from "../../words/ownPattern";
import { Fractions } from "../fields/Fractions";
import { LengthField } from "../fields/LengthField";
import { Select } from "../fields/Select";
import { useSettledWork } from "../session/useWork";
import { LightButton } from "./LightButton";
import { useOwnView } from "./ownView";
import { setOwn, useEditOwn, type OwnAndReading } from "./useOwn";

const KNOWN_FIELD = "own.known";

/** What proves how large the pattern is; where nothing does, she gives a length. */
export function OwnScale({ own, reading }: OwnAndReading) {
  const unit = useSettledWork((work) => work.unit);
  const { scale, outlines } = reading.outlines;
  // An entry that could not be read must not lie out of sight.
  const [hasUnread] = useState(useSettledWork((work) => work.unread[KNOWN_FIELD] !== undefined));
  return (
    <>
      <p>
        <Fractions text={scaleSentence(scale, unit)} />
      </p>
      {scale.disagree && <p className="field-warning">{disagreeSentence(scale.by)}</p>}
      {scale.squares.length > 0 && (
        <ul className="own-rows">
          {scale.squares.map((square) => {
            const outline = outlines.find(({ id }) => id === square.outline);
            return outline === undefined ? null : (
              <Square key={square.outline} own={own} reading={reading} square={square} outline={outline} />
            );
          })}
        </ul>
      )}
      {scale.mm === null || scale.disagree || own.known !== undefined ? (
        <KnownLength own={own} reading={reading} />
      ) : (
        <details className="own-known-fold" open={hasUnread}>
          <summary>{OWN_WORDS.known}</summary>
          <KnownLength own={own} reading={reading} />
        </details>
      )}
    </>
  );
}

interface SquareProps extends OwnAndReading {
  readonly square: TestSquare;
  readonly outline: ClosedOutline;
}

function Square({ own, reading, square, outline }: SquareProps) {
  const unit = useSettledWork((work) => work.unit);
  const edit = useEditOwn();
  const { scale } = reading.outlines;
  const side = sideOfSquare(outline, scale);
  const isScaled = scale.mm !== null;
  const isKnown =
    own.known !== undefined &&
    side !== null &&
    own.known.from.x === side.from.x &&
    own.known.from.y === side.from.y &&
    own.known.to.x === side.to.x;
  return (
    <li>
      <span>
        <Fractions text={squareWords(square, isScaled, unit)} />
      </span>
      <LightButton lit={{ kind: "outline", id: square.outline }} of={squareWords(square, isScaled, unit)} />
      {side !== null && (
        <Select
          label={squareMeasures(square, isScaled, unit)}
          labelHidden
          value={isKnown ? String(own.known?.length) : ""}
          options={[
            { value: "", label: OWN_WORDS.squareUnsaid },
            ...USUAL_SQUARES.map(({ mm, label }) => ({ value: String(mm), label })),
          ]}
          onChange={(value) => edit((now) => withKnown(now, value === "" ? null : { ...side, length: Number(value) }))}
        />
      )}
    </li>
  );
}

function KnownLength({ own, reading }: OwnAndReading) {
  const unit = useSettledWork((work) => work.unit);
  const edit = useEditOwn();
  const given = useOwnView((view) => view.ends);
  const putEnd = useOwnView((view) => view.putEnd);
  const pointing = useOwnView((view) => view.pointing);
  const point = useOwnView((view) => view.point);
  const { scale } = reading.outlines;
  const from = own.known?.from ?? given.from;
  const to = own.known?.to ?? given.to;
  return (
    <fieldset className="own-known">
      <legend className="field-label">{OWN_WORDS.known}</legend>
      <p className="field-hint">{OWN_WORDS.knownHint}</p>
      <div className="actions">
        {(["from", "to"] as const).map((which) => {
          const isHere = (which === "from" ? from : to) !== null;
          const isPointing = pointing?.for === which;
          return (
            <button
              key={which}
              type="button"
              className="button small"
              aria-pressed={isPointing}
              onClick={() => point({ for: which })}
            >
              {which === "from" ? OWN_WORDS.firstEnd : OWN_WORDS.secondEnd}:{" "}
              {isPointing ? OWN_WORDS.tapSheet.toLowerCase() : isHere ? OWN_WORDS.pointAgain : OWN_WORDS.pointAt}
            </button>
          );
        })}
      </div>
      {from === null || to === null ? (
        <p className="field-hint">{OWN_WORDS.knownFirst}</p>
      ) : (
        <>
          {scale.mm !== null && own.known === undefined && (
            <p className="field-hint">
              <Fractions text={apartSentence(apartInFile(from, to) * mmOf(scale), unit)} />
            </p>
          )}
          <LengthField
            label={OWN_WORDS.knownLength}
            field={KNOWN_FIELD}
            value={own.known?.length}
            set={(length) => setOwn(withKnown(own, length > 0 ? { from, to, length } : null))}
            clear={setOwn(withKnown(own, null))}
          />
        </>
      )}
      {own.known !== undefined && (
        <button
          type="button"
          className="link-button"
          onClick={() => {
            putEnd("from", null);
            putEnd("to", null);
            edit((now) => withKnown(now, null));
          }}
        >
          {OWN_WORDS.forget}
        </button>
      )}
    </fieldset>
  );
}
