import "./tapeGuidance.css";
import { figureLandmarks, tapeFigure, type FigureSide } from "../../drawing/tapeFigure";
import type { MeasureName } from "../../core/measures/measure";
import { measureWords } from "../../words/measures";
import { landmarkWords, tapeGuide, tapeHelpWords, tapeNotes } from "../../words/tapeGuide";
import { useSettledWork } from "../session/useWork";

const SEEN: Readonly<Record<FigureSide, string>> = {
  front: "from the front",
  back: "from the back",
  side: "from the side",
  standing: "from the side, standing at a wall",
};

/** The same as the figure in words, for everyone, and how to go about it. */
export function TapeGuidance({ measure }: { readonly measure: MeasureName }) {
  const { how, help, helpHow } = tapeGuide(measure);
  return (
    <>
      <p className="tape-view">
        Seen{" "}
        {tapeFigure(measure)
          .views.map(({ side }) => SEEN[side])
          .join(" and ")}
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
      <summary>Before you begin</summary>
      <ul>
        {tapeNotes(unit).map(({ title, text }) => (
          <li key={title}>
            <b>{title}</b> {text}
          </li>
        ))}
      </ul>
    </details>
  );
}
