import "./ownPattern.css";
import { useEffect, useRef, type KeyboardEvent } from "react";
import { fileTitle, OWN_WORDS } from "../../words/ownPattern";
import { useRun } from "../session/useWork";
import { OpenPattern } from "./OpenPattern";
import { OwnAnswer } from "./OwnAnswer";
import { OwnPieces } from "./OwnPieces";
import { OwnScale } from "./OwnScale";
import { OwnSection } from "./OwnSection";
import { OwnSheet } from "./OwnSheet";
import { OwnSizes } from "./OwnSizes";
import { useOwnView } from "./ownView";
import type { OpenPatternReader } from "./readPatternApart";
import { setOwn, useOwnAndReading, type OwnAndReading } from "./useOwn";

export interface OwnPatternPanelProps {
  readonly reader?: OpenPatternReader;
}

/** Her own pattern from a file: opened, sorted, named, and put in place of our draft of the chart. */
export function OwnPatternPanel({ reader }: OwnPatternPanelProps) {
  const both = useOwnAndReading();
  const opened = reader === undefined ? {} : { reader };
  return (
    <section className="own-pattern" aria-label={OWN_WORDS.title} data-open={both === null ? undefined : ""}>
      <Refusal />
      {both === null ? (
        <>
          <p>{OWN_WORDS.intro}</p>
          <OpenPattern label={OWN_WORDS.open} isMain {...opened} />
          <p className="aside">
            {OWN_WORDS.drop} {OWN_WORDS.private}
          </p>
        </>
      ) : (
        <AtWork {...both} {...opened} />
      )}
    </section>
  );
}

/** Why the file that was opened last could not be: where she looks, whatever stands open beneath. */
function Refusal() {
  const refusal = useOwnView((view) => view.refusal);
  const place = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    if (refusal === null) return;
    place.current?.focus({ preventScroll: true });
    place.current?.scrollIntoView({ block: "nearest" });
  }, [refusal]);
  return refusal === null ? null : (
    <p ref={place} className="note bad own-refusal" role="alert" tabIndex={-1}>
      {refusal}
    </p>
  );
}

function AtWork({ own, reading, reader }: OwnAndReading & OwnPatternPanelProps) {
  const run = useRun();
  const pointing = useOwnView((view) => view.pointing);
  const point = useOwnView((view) => view.point);
  const isInUse = own.inUse === true;
  const lines = own.drawing.lines.reduce((sum, { paths }) => sum + paths.length, 0);
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.key !== "Escape" || pointing === null) return;
    event.stopPropagation();
    point(null);
  };
  return (
    <div className="own-work" onKeyDown={onKeyDown} role="presentation">
      <OwnAnswer own={own} reading={reading} />
      <OwnSheet own={own} reading={reading} />
      <OwnSection section="scale" title={OWN_WORDS.scale} reading={reading} isInUse={isInUse}>
        <OwnScale own={own} reading={reading} />
      </OwnSection>
      <OwnSection section="sizes" title={OWN_WORDS.sizes} reading={reading} isInUse={isInUse}>
        <OwnSizes own={own} reading={reading} />
      </OwnSection>
      <OwnSection section="pieces" title={OWN_WORDS.pieces} reading={reading} isInUse={isInUse}>
        <OwnPieces own={own} reading={reading} />
      </OwnSection>
      <div className="own-file">
        <p className="aside">
          {fileTitle(own.file, lines)} {OWN_WORDS.private}
        </p>
        <OpenPattern label={OWN_WORDS.another} isMain={false} {...(reader === undefined ? {} : { reader })} />
        <button type="button" className="button small quiet" onClick={() => run(setOwn(null))}>
          {OWN_WORDS.putAway}
        </button>
      </div>
    </div>
  );
}
