import "./tapeGuidance.css";
import { figureLandmarks, tapeFigure, type FigureSide } from "../../drawing/tapeFigure";
import type { MeasureName } from "../../core/measures/measure";
import { measureWords } from "../../words/measures";
import { landmarkWords, tapeGuide, tapeHelpWords, tapeNotes } from "../../words/tapeGuide";
import { useSettledWork } from "../session/useWork";
import * as say from "../../words/tapeStep";
import { Fractions } from "../fields/Fractions";

const SEEN: Readonly<Record<FigureSide, string>> = {
  front: say.fromTheFront,
  back: say.fromTheBack,
  side: say.fromTheSide,
  standing: say.fromTheSideAtAWall,
};

/** The same as the figure in words, for everyone, and how to go about it. */
export function TapeGuidance({ measure }: { readonly measure: MeasureName }) {
  const { how, help, helpHow } = tapeGuide(measure);
  return (
    <>
      <p className="tape-view">
        {say.seen(
          tapeFigure(measure)
            .views.map(({ side }) => SEEN[side])
            .join(" and "),
        )}
      </p>
      <p>{measureWords(measure).where}</p>
      <ul className="tape-letters">
        {figureLandmarks(measure).map(({ name, letter }) => (
          <li key={name}>
            <b>{letter.text}</b> {landmarkWords(name).name}: {landmarkWords(name).find}
          </li>
        ))}
      </ul>
      <p>{how}</p>
      <details>
        <summary>{tapeHelpWords(help)}</summary>
        <p>{helpHow}</p>
      </details>
    </>
  );
}

/** What holds for every measure. */
export function TapeNotes() {
  const unit = useSettledWork((work) => work.unit);
  return (
    <details className="tape-notes">
      <summary>{say.beforeYouBegin}</summary>
      <ul>
        {tapeNotes(unit).map(({ title, text }) => (
          <li key={title}>
            <b>{title}</b> <Fractions text={text} />
          </li>
        ))}
      </ul>
    </details>
  );
}
