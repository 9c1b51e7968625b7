import { useMemo } from "react";
import { openDoubts } from "../../core/bodies/tapeDoubts";
import { askedHere, TAPE_DOUBTS_HEAD, tapeDoubtsWhy, tapeDoubtWords } from "../../words/tapeDoubts";
import { Fractions } from "../fields/Fractions";
import { useSettledWork } from "../session/useWork";
import { ItIsRight } from "../tape/ItIsRight";
import { MisreadingRemedy } from "../tape/MisreadingRemedy";
import * as say from "../../words/blendStep";

/** Doubts about the tape before any pick that stands on it, until they are answered. */
export function DoubtsHead() {
  const work = useSettledWork((current) => current);
  const doubts = useMemo(() => openDoubts(work), [work]);
  const { unit } = work;
  if (doubts.length === 0) return null;
  return (
    <section className="note doubt doubts-head" aria-label={TAPE_DOUBTS_HEAD}>
      <h3>{TAPE_DOUBTS_HEAD}</h3>
      {askedHere(doubts).map((doubt) => (
        <div key={doubt.measure} className="doubt-one">
          <p>
            <Fractions text={tapeDoubtWords(doubt, unit)} />
          </p>
          <p className="doubt-answers">
            <a className="button small" href="#tape">
              {say.takeItAgain}
            </a>
            {doubt.misreading !== null && (
              <MisreadingRemedy suspicion={doubt} misreading={doubt.misreading} unit={unit} />
            )}
            <ItIsRight suspicion={doubt} />
          </p>
        </div>
      ))}
      <p className="aside">{tapeDoubtsWhy(doubts, work.pattern)}</p>
    </section>
  );
}
