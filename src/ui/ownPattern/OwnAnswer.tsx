import { useMemo } from "react";
import { easeFound } from "../../core/ownPieces/easeFound";
import type { Missing } from "../../core/ownPieces/ownReading";
import { OWN_CORNERS } from "../../core/decisions/ownPattern";
import { withInUse } from "../../core/plan/ownEdit";
import { answerSentence, easeSentence, missingWords, onlySentences, OWN_WORDS } from "../../words/ownPattern";
import { Fractions } from "../fields/Fractions";
import { useSettledWork } from "../session/useWork";
import { sectionOf } from "./OwnSection";
import { useOwnView } from "./ownView";
import { useEditOwn, type OwnAndReading } from "./useOwn";

/** The answer first: what the plan is made on, or what is still to be said before it can be. */
export function OwnAnswer({ own, reading }: OwnAndReading) {
  const unit = useSettledWork((work) => work.unit);
  const chart = useSettledWork((work) => work.pattern.chart);
  const edit = useEditOwn();
  const { nest, missing } = reading;
  const ease = useMemo(() => (nest === null ? [] : easeFound(nest, chart)), [nest, chart]);
  const said = easeSentence(ease, unit);
  return (
    <div className="own-answer note" data-in-use={own.inUse === true && nest !== null ? "" : undefined}>
      {nest !== null && (
        <>
          <p className="own-pieces-said">
            <strong>{answerSentence(nest)}</strong>
            {said !== null && (
              <>
                {" "}
                <Fractions text={said} />
              </>
            )}
          </p>
          {onlySentences(nest, chart.cups.length, chart.sizes.length).map((sentence) => (
            <p key={sentence} className="aside">
              {sentence}
            </p>
          ))}
        </>
      )}
      {missing.length > 0 && <MissingList reading={reading} own={own} />}
      {own.inUse === true ? (
        <button type="button" className="button small" onClick={() => edit((now) => withInUse(now, false))}>
          {OWN_WORDS.standIn}
        </button>
      ) : (
        nest !== null && (
          <button type="button" className="button main" onClick={() => edit((now) => withInUse(now, true))}>
            {OWN_WORDS.use}
          </button>
        )
      )}
    </div>
  );
}

function MissingList({ reading }: OwnAndReading) {
  const unit = useSettledWork((work) => work.unit);
  const lead = useLead(reading);
  return (
    <>
      <h4>{OWN_WORDS.missing}</h4>
      <ol className="own-missing">
        {reading.missing.map((missing) => {
          const { text } = missingWords(missing, unit);
          return (
            <li key={text}>
              <button type="button" className="link-button" onClick={() => lead(missing)}>
                <Fractions text={text} />
              </button>
            </li>
          );
        })}
      </ol>
    </>
  );
}

/** Leads to where that is said: opens its part, and for a corner its piece, and begins to point. */
function useLead(reading: OwnAndReading["reading"]): (missing: Missing) => void {
  const unit = useSettledWork((work) => work.unit);
  const open = useOwnView((view) => view.open);
  const look = useOwnView((view) => view.look);
  const point = useOwnView((view) => view.point);
  const showSize = useOwnView((view) => view.showSize);
  return (missing) => {
    const { where, piece: name } = missingWords(missing, unit);
    const section = sectionOf(where);
    open(section, true);
    const piece = name === null ? undefined : reading.pieces.find(({ said }) => said.name === name);
    if (piece !== undefined) {
      look(piece.id);
      if (missing.code === "missing/problem" && missing.problem.size !== "") showSize(missing.problem.size);
      const corner = cornerOf(missing);
      if (missing.code === "missing/bust-point") point({ for: "bustPoint", piece: piece.id });
      else if (corner !== undefined) point({ for: "corner", piece: piece.id, corner });
    }
    // Once it is on the page.
    requestAnimationFrame(() => {
      const place = document.querySelector<HTMLElement>(
        piece === undefined ? `[data-section="${section}"]` : `[data-piece="${CSS.escape(piece.id)}"]`,
      );
      place?.scrollIntoView({ block: "start" });
      place?.querySelector<HTMLElement>("select, input, button, summary")?.focus({ preventScroll: true });
    });
  };
}

function cornerOf(missing: Missing) {
  const name =
    missing.code === "missing/corner"
      ? missing.corner
      : missing.code === "missing/problem" && missing.problem.code === "own/corner-missing"
        ? missing.problem.corner
        : null;
  return OWN_CORNERS.find((corner) => corner === name);
}
