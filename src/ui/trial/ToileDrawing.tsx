import { useMemo, useState, type KeyboardEvent } from "react";
import type { Half } from "../../core/decisions/alteration";
import type { Closure } from "../../core/decisions/pattern";
import type { Observation, TrialPlace } from "../../core/decisions/trial";
import type { DartRef } from "../../core/pattern/piece";
import type { Plan } from "../../core/plan/plan";
import { DISC, drawnSigns, toileFigures, type ToileFigure, type ToileNumber } from "../../drawing/toileFigure";
import { TOILE_VIEWS, type ToileViewName } from "../../core/toile/toilePlaces";
import { dartRefWords } from "../../words/terms/names";
import { MIRROR_NOTE, yourHalf } from "../../words/trial";
import { placeWords } from "../../words/trialPlaces";
import { aimWords, ofHalf, TAP_WORDS, viewName } from "../../words/trialStep";
import { Choice } from "../fields/Choice";
import * as say from "../../words/trialStep";

interface ToileDrawingProps {
  readonly plan: Plan;
  readonly closure: Closure;
  readonly lines: readonly Observation[];
  /** The line whose drag lines are aimed by the next tap. */
  readonly aimed: number | null;
  readonly onTap: (place: TrialPlace, half: Half | null, dart: DartRef | null) => void;
  /** No longer aiming. */
  readonly onLeave: () => void;
}

/** Her own toile with numbered places to tap on. */
export function ToileDrawing({ plan, closure, lines, aimed, onTap, onLeave }: ToileDrawingProps) {
  const figures = useMemo(() => toileFigures(plan, closure), [plan, closure]);
  const [view, setView] = useState<ToileViewName>("front");
  const figure = figures.find((one) => one.view === view);
  return (
    <div className="toile">
      <Choice
        legend={say.seenFrom}
        legendHidden
        options={TOILE_VIEWS.map((value) => ({ value, label: viewName(value) }))}
        value={view}
        onChange={setView}
      />
      <p className="field-hint" role="status">
        {aimed === null ? TAP_WORDS : aimWords(aimed)}{" "}
        {aimed !== null && (
          <button type="button" className="link-button" onClick={onLeave}>
            {say.leaveIt}
          </button>
        )}
      </p>
      {figure !== undefined && <Figure key={view} figure={figure} lines={lines} onTap={onTap} />}
      <p className="aside">{MIRROR_NOTE}</p>
    </div>
  );
}

interface FigureProps {
  readonly figure: ToileFigure;
  readonly lines: readonly Observation[];
  readonly onTap: ToileDrawingProps["onTap"];
}

const STEPS: Readonly<Record<string, 1 | -1>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };

function Figure({ figure, lines, onTap }: FigureProps) {
  const { view, box, halves, numbers } = figure;
  /** One stop of Tab for all numbers; arrow keys go from one to the next. */
  const [at, setAt] = useState(0);
  const signs = useMemo(() => drawnSigns(figure, lines), [figure, lines]);
  const seen = new Set(lines.flatMap(({ place }) => (place === undefined ? [] : [place])));

  const press = (event: KeyboardEvent<SVGGElement>, index: number): void => {
    const number = numbers[index];
    if ((event.key === "Enter" || event.key === " ") && number !== undefined) {
      event.preventDefault();
      onTap(number.place, number.half, number.dart ?? null);
      return;
    }
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = (index + step + numbers.length) % numbers.length;
    setAt(next);
    const all = event.currentTarget.parentElement?.querySelectorAll<SVGGElement>(".toile-number");
    all?.[next]?.focus();
  };

  const sides = [...new Map(halves.map((one) => [one.half, one])).keys()];
  return (
    <figure className="toile-figure light-paper" data-view={view}>
      <svg
        viewBox={[box.x, box.y, box.width, box.height].join(" ")}
        role="group"
        aria-label={say.placesToTap(viewName(view))}
      >
        {halves.map((half) => (
          <g key={`${half.half}-${half.mirrored}`} transform={half.mirrored ? "scale(-1 1)" : undefined}>
            {half.pieces.map(({ piece, outline, darts, levels, strap, down, across }) => (
              <g key={piece} transform={`translate(${across} ${down})`}>
                <path className="toile-cloth" d={outline} />
                {strap !== "" && <path className="toile-line" d={strap} />}
                <path className="toile-line" d={darts} />
                <path className="toile-level" d={levels} />
              </g>
            ))}
          </g>
        ))}
        {signs.map(({ id, line, path }, index) => (
          <path key={`${id}-${index}`} className="toile-sign" data-sign-of={line} d={path} />
        ))}
        <g>
          {numbers.map((number, index) => (
            <g
              key={keyOf(number)}
              className="toile-number"
              role="button"
              tabIndex={index === at ? 0 : -1}
              aria-label={numberLabel(number)}
              data-seen={seen.has(number.place) ? "" : undefined}
              onClick={() => {
                setAt(index);
                onTap(number.place, number.half, number.dart ?? null);
              }}
              onKeyDown={(event) => press(event, index)}
            >
              <path className="toile-lead" d={`M${number.of.x} ${number.of.y}L${number.at.x} ${number.at.y}`} />
              <circle cx={number.at.x} cy={number.at.y} r={DISC} />
              <text x={number.at.x} y={number.at.y} textAnchor="middle" dominantBaseline="central">
                {number.number}
              </text>
            </g>
          ))}
        </g>
      </svg>
      <figcaption>
        {sides.map((half) => (
          <b key={half}>{yourHalf(half)}</b>
        ))}
      </figcaption>
    </figure>
  );
}

const keyOf = ({ place, half, dart }: ToileNumber): string =>
  [place, half ?? "centre", dart === undefined ? "" : dartRefWords(dart)].join(" ");

const numberLabel = ({ number, place, half, dart }: ToileNumber): string =>
  `${number}, ${placeWords(place)}${dart === undefined ? "" : say.ofThe(dartRefWords(dart))}${ofHalf(half)}`;
