/** A sheet to take to the mirror, or to whoever helps: each measure drawn, with boxes to write in. Needs no plan. */
import "./print.css";
import "./measureSheet.css";
import { figureLandmarks } from "../drawing/tapeFigure";
import { MEASURE_NAMES, type MeasureName } from "../core/measures/measure";
import { MEASURE_NEEDS } from "../core/measures/registry";
import { measuresOf } from "../core/measures/tape";
import type { Work } from "../core/decisions/work";
import type { Mm } from "../core/units";
import { formatLength } from "../words/terms/length";
import { measureNeedWords, measureWords } from "../words/measures";
import { capital } from "../words/terms/names";
import { landmarkWords, tapeGuide, tapeHelpWords, tapeNotes, type LandmarkName } from "../words/tapeGuide";
import { testSideWords } from "../words/testSquares";
import { Blank } from "./Blank";
import { PageSetup } from "./PageSetup";
import { TapeDrawing } from "./TapeDrawing";
import { Words } from "./Words";
import { WorkName } from "./WorkName";
import * as say from "../words/printedMeasures";
import { INVENTED_SHEET } from "../words/invented";

/** Those that are felt for and marked before the tape is laid on. */
const POINTS: readonly LandmarkName[] = [
  "sideNeck",
  "nape",
  "neckPit",
  "shoulderPoint",
  "armCrease",
  "bustPoint",
  "waist",
];

export interface MeasureSheetProps {
  readonly work: Work;
  /** Whether what was measured before stands beside the boxes. */
  readonly lastTime: boolean;
}

export function MeasureSheet({ work, lastTime }: MeasureSheetProps) {
  const measures = lastTime ? measuresOf(work.tapes) : {};
  return (
    <article className="printed-checklist measure-sheet" aria-label={say.measureSheet} data-paper={work.paper}>
      <PageSetup paper={work.paper} name={work.name} kind={say.measureSheet} />
      <Heading work={work} />
      <ul className="ms-notes">
        {tapeNotes(work.unit).map(({ title, text }) => (
          <li key={title}>
            <b>{title}</b> <Words>{text}</Words>
          </li>
        ))}
      </ul>
      <table className="ms-table">
        <colgroup>
          <col className="ms-figures" />
          <col />
          <col className="ms-readings" span={3} />
        </colgroup>
        <thead>
          <tr>
            <th scope="col" colSpan={2}>
              {say.measure}
            </th>
            {["First", "Second", "Mean"].map((reading) => (
              <th key={reading} scope="col" className="ms-reading">
                {reading}, {work.unit}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {MEASURE_NAMES.map((name) => (
            <Row key={name} name={name} last={measures[name]} work={work} />
          ))}
        </tbody>
      </table>
      <section className="ms-points">
        <h4>{say.pointsTitle}</h4>
        <ul>
          {POINTS.map(landmarkWords).map(({ name, find }) => (
            <li key={name}>
              <b>{capital(name)}:</b> {find}.
            </li>
          ))}
        </ul>
      </section>
    </article>
  );
}

function Heading({ work }: { readonly work: Work }) {
  return (
    <header className="pc-heading">
      <div className="pc-names">
        <p className="pc-kind">{say.sheetIn(work.unit === "cm" ? say.centimetres : say.inches)}</p>
        <WorkName work={work} />
        {work.invented && <p className="pc-invented">{INVENTED_SHEET}</p>}
      </div>
      <div className="pc-by-hand">
        <Blank label={say.date} />
        <Blank label={say.measuredBy} />
      </div>
      <p className="ms-test">
        <i aria-hidden="true" data-unit={work.unit} />
        <span>
          <Words>{say.testLine(testSideWords(work.unit))}</Words>
        </span>
      </p>
    </header>
  );
}

function Row({ name, last, work }: { readonly name: MeasureName; readonly last: Mm | undefined; readonly work: Work }) {
  const words = measureWords(name);
  const need = MEASURE_NEEDS[name];
  const { help } = tapeGuide(name);
  return (
    <tr>
      <td className="ms-figure">
        <TapeDrawing measure={name} />
      </td>
      <th scope="row" className="ms-what">
        <p>
          <b>{words.name}</b>
          {words.trade !== null && ` · ${words.trade}`}
        </p>
        {need !== "welcome" && <p className={need === "always" ? "ms-need" : undefined}>{measureNeedWords(need)}</p>}
        <p>{words.where}</p>
        <p className="ms-letters">
          {figureLandmarks(name).map(({ name: point, letter }) => (
            <span key={point}>
              <b>{letter.text}</b> {landmarkWords(point).name}
            </span>
          ))}
          {help !== "alone" && <span>{tapeHelpWords(help)}</span>}
        </p>
      </th>
      <td className="ms-box">
        <i aria-hidden="true" />
        {last !== undefined && (
          <small>
            {say.lastTime} <Words>{formatLength(last, work.unit)}</Words>
          </small>
        )}
      </td>
      {[say.secondReading, "mean"].map((what) => (
        <td key={what} className="ms-box">
          <i aria-hidden="true" />
          <span className="visually-hidden">{say.toWriteIn(what)}</span>
        </td>
      ))}
    </tr>
  );
}
