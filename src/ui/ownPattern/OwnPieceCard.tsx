import { memo, useId, useState } from "react";
import type { OwnPieceSaid } from "../../core/decisions/ownPattern";
import type { OutlineGroup, OutlineReading } from "../../core/outlines/outlineReading";
import type { PieceReading } from "../../core/ownPieces/ownReading";
import { LEVEL_NAMES, type LevelName, type PieceName } from "../../core/pattern/piece";
import { PATTERN_PIECES } from "../../core/pattern/pieceSet";
import {
  freeOther,
  isOther,
  named,
  saidNow,
  saidOfPiece,
  seamsAllowed,
  withAllowance,
  withLabel,
  withPieceSaid,
} from "../../core/plan/ownEdit";
import { smallPiece } from "../../drawing/ownSheet";
import {
  allowanceOf,
  allowanceStep,
  nameOf,
  OWN_WORDS,
  pieceSummary,
  pieceTitle,
  problemSentences,
} from "../../words/ownPattern";
import { capital, levelWords, pieceWords } from "../../words/terms/names";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { Fractions } from "../fields/Fractions";
import { Select } from "../fields/Select";
import { TextField } from "../fields/TextField";
import { useSettledWork } from "../session/useWork";
import { OwnMarks } from "./OwnMarks";
import { useOwnView } from "./ownView";
import { setOwn, useEditOwn, type OwnAndReading } from "./useOwn";

export interface OwnPieceCardProps extends OwnAndReading {
  readonly group: OutlineGroup;
  readonly piece: PieceReading | null;
  readonly at: number;
}

/** One piece: what it is, in one line; all else once it is looked at closely. */
export function OwnPieceCard({ group, piece: read, at, own, reading }: OwnPieceCardProps) {
  const id = useId();
  const unit = useSettledWork((work) => work.unit);
  const edit = useEditOwn();
  const look = useOwnView((view) => view.look);
  const isClose = useOwnView((view) => view.piece === group.id);
  const piece = read === null ? null : { ...read, said: saidNow(own, read.said) };
  const raw = saidOfPiece(own, group.id);
  const said = piece?.said ?? raw;
  const { turns = 0, turnedOver = false } = said;
  const isOut = raw.leftOut === true || (group.isSquare && raw.name === null);
  const title = isOut ? capital(OWN_WORDS.nothing) : pieceTitle(said.name, said.label, group.nameInFile);
  const change = (next: (said: OwnPieceSaid) => OwnPieceSaid): void =>
    edit((now) => withPieceSaid(now, group.id, next));
  const rename = (value: string): void =>
    edit((now) =>
      withPieceSaid(now, group.id, (before) =>
        value === "other"
          ? named(before, freeOther(now, group.id))
          : named(before, value === "nothing" ? "nothing" : (NAMES.find((name) => name === value) ?? null)),
      ),
    );
  const problems = piece === null ? [] : problemSentences(piece);
  return (
    <li className="own-piece" data-piece={group.id} data-out={isOut ? "" : undefined} aria-labelledby={`${id}-title`}>
      <div className="own-piece-head">
        <SmallPiece outlines={reading.outlines} group={group} turns={turns} turnedOver={turnedOver} />
        <div className="own-piece-said">
          <h5 id={`${id}-title`}>{nameOf(title, at)}</h5>
          <Select
            label={`${OWN_WORDS.name}: ${nameOf(title, at)}`}
            labelHidden
            value={isOut ? "nothing" : said.name === null ? "" : isOther(said.name) ? "other" : said.name}
            options={NAME_OPTIONS}
            onChange={rename}
          />
          {piece !== null && !isOut && (
            <p className="aside">
              <Fractions text={pieceSummary(piece.said.extent, piece.said.line, commonAllowance(piece.said), unit)} />
            </p>
          )}
          {problems.map((problem) => (
            <p key={problem} className="field-warning">
              <Fractions text={problem} />
            </p>
          ))}
        </div>
        {piece !== null && !isOut && (
          <button
            type="button"
            className="button small"
            aria-expanded={isClose}
            aria-label={`${isClose ? OWN_WORDS.closerDone : OWN_WORDS.closer}: ${nameOf(title, at)}`}
            onClick={() => look(isClose ? null : group.id)}
          >
            {isClose ? OWN_WORDS.closerDone : OWN_WORDS.closer}
          </button>
        )}
      </div>
      {piece !== null && !isOut && isClose && (
        <div className="own-closer">
          {said.name !== null && isOther(said.name) && (
            <OtherFields said={said} id={group.id} own={own} change={change} />
          )}
          <Choice
            legend={OWN_WORDS.extent}
            options={EXTENTS}
            value={piece.said.extent}
            onChange={(extent) => change((before) => ({ ...before, extent }))}
          />
          <div className="actions own-turns">
            <button
              type="button"
              className="button small"
              onClick={() => change((before) => ({ ...before, turns: NEXT_TURN[turns] }))}
            >
              {OWN_WORDS.turn}
            </button>
            <label className="tick">
              <input
                type="checkbox"
                checked={turnedOver}
                onChange={({ target }) => change((before) => ({ ...before, turnedOver: target.checked }))}
              />
              {OWN_WORDS.over}
            </label>
            <label className="tick">
              <input
                type="checkbox"
                checked={piece.said.centreOnFold}
                onChange={({ target }) => change((before) => ({ ...before, centreOnFold: target.checked }))}
              />
              {OWN_WORDS.fold}
            </label>
          </div>
          <LineFields piece={piece} own={own} change={change} />
          <OwnMarks piece={piece} own={own} reading={reading} />
        </div>
      )}
    </li>
  );
}

interface SmallPieceProps {
  readonly outlines: OutlineReading;
  readonly group: OutlineGroup;
  readonly turns: 0 | 1 | 2 | 3;
  readonly turnedOver: boolean;
}

const SmallPiece = memo(({ outlines, group, turns, turnedOver }: SmallPieceProps) => {
  const small = smallPiece(outlines, group, turns, turnedOver);
  if (small === null) return null;
  const { x, y, width, height } = small.box;
  return (
    <svg className="own-small" viewBox={`${x} ${y} ${width} ${height}`} aria-hidden="true">
      {small.paths.map(({ path, is }, index) => (
        <path key={index} d={path} data-is={is} />
      ))}
    </svg>
  );
});
SmallPiece.displayName = "SmallPiece";

const NAMES: readonly PieceName[] = PATTERN_PIECES.filter((name) => !isOther(name));
const NAME_OPTIONS = [
  { value: "", label: OWN_WORDS.notSaid },
  ...NAMES.map((name) => ({ value: name, label: pieceWords(name) })),
  { value: "other", label: OWN_WORDS.other },
  { value: "nothing", label: OWN_WORDS.nothing },
];

const EXTENTS = [
  { value: "half", label: OWN_WORDS.half },
  { value: "whole", label: OWN_WORDS.bothHalves },
] as const;
const LINES = [
  { value: "stitch", label: OWN_WORDS.stitch },
  { value: "cutting", label: OWN_WORDS.cutting },
] as const;
const NEXT_TURN = { 0: 1, 1: 2, 2: 3, 3: 0 } as const;

/** Of all seams alike; null: they differ, or none is said. */
function commonAllowance(said: OwnPieceSaid): number | null {
  const [first, ...others] = seamsAllowed(said).map((seam) => said.allowances?.[seam]);
  return first !== undefined && others.every((other) => other === first) ? first : null;
}

type Change = (next: (said: OwnPieceSaid) => OwnPieceSaid) => void;

interface LineFieldsProps {
  readonly piece: PieceReading;
  readonly own: OwnAndReading["own"];
  readonly change: Change;
}

/** Which line was drawn, and how far outside the stitch line it lies. */
function LineFields({ piece, own, change }: LineFieldsProps) {
  const unit = useSettledWork((work) => work.unit);
  const { said, id } = piece;
  const seams = seamsAllowed(said);
  const common = commonAllowance(said);
  // An entry that could not be read must not lie out of sight.
  const [hasUnread] = useState(
    useSettledWork((work) => seams.some((seam) => work.unread[`own.${id}.allowance.${seam}`] !== undefined)),
  );
  const allowed = (of: typeof seams, value: number) => [
    setOwn(withPieceSaid(own, id, (before) => withAllowance(before, of, value))),
  ];
  return (
    <>
      <Choice
        legend={OWN_WORDS.line}
        options={LINES}
        value={said.line}
        onChange={(line) => change((before) => ({ ...before, line }))}
      />
      {said.line === "cutting" && (
        <>
          <AmountField
            label={OWN_WORDS.allowance}
            field={`own.${id}.allowance`}
            value={common ?? Math.max(0, ...seams.map((seam) => said.allowances?.[seam] ?? 0))}
            {...(common === null && seams.length > 0 ? { hint: OWN_WORDS.seamsDiffer } : {})}
            unit={unit}
            step={allowanceStep(unit)}
            set={(value) => allowed(seams, value)}
          />
          <details className="own-seams" open={hasUnread}>
            <summary>{OWN_WORDS.eachSeam}</summary>
            <div className="field-row">
              {seams.map((seam) => (
                <AmountField
                  key={seam}
                  label={allowanceOf(seam, said.name)}
                  field={`own.${id}.allowance.${seam}`}
                  value={said.allowances?.[seam] ?? 0}
                  unit={unit}
                  step={allowanceStep(unit)}
                  set={(value) => allowed([seam], value)}
                />
              ))}
            </div>
          </details>
        </>
      )}
    </>
  );
}

interface OtherFieldsProps {
  readonly said: OwnPieceSaid;
  readonly id: string;
  readonly own: OwnAndReading["own"];
  readonly change: Change;
}

/** A piece without a name of ours: her word for it, and where it is blended. */
function OtherFields({ said, id, own, change }: OtherFieldsProps) {
  const levels = said.levels ?? { top: "bust", bottom: "bust" };
  return (
    <>
      <TextField
        label={OWN_WORDS.label}
        field={`own.${id}.label`}
        value={said.label ?? ""}
        set={(label) => setOwn(withPieceSaid(own, id, (before) => withLabel(before, label)))}
        clear={setOwn(withPieceSaid(own, id, (before) => withLabel(before, null)))}
      />
      {(["top", "bottom"] as const).map((end) => (
        <Select
          key={end}
          label={OWN_WORDS[end]}
          value={levels[end]}
          options={LEVEL_OPTIONS}
          onChange={(value) => {
            const level = LEVEL_NAMES.find((name) => name === value);
            if (level !== undefined) change((before) => ({ ...before, levels: withEnd(before, end, level) }));
          }}
        />
      ))}
    </>
  );
}

const LEVEL_OPTIONS = LEVEL_NAMES.map((level) => ({ value: level, label: levelWords(level) }));

const withEnd = ({ levels }: OwnPieceSaid, end: "top" | "bottom", level: LevelName) => ({
  top: levels?.top ?? "bust",
  bottom: levels?.bottom ?? "bust",
  [end]: level,
});
