import { useState } from "react";
import type { PieceReading, ReadDart } from "../../core/ownPieces/ownReading";
import { DART_NAMES, dartName } from "../../core/pattern/dartNames";
import type { DartName, PieceName, PointName } from "../../core/pattern/piece";
import {
  dartForgotten,
  saidOfPiece,
  withBustPoint,
  withCorner,
  withoutCorner,
  withoutDart,
  withPieceSaid,
} from "../../core/plan/ownEdit";
import { cornerWords, dartByWords, foundByWords, OWN_WORDS } from "../../words/ownPattern";
import { capital, dartWords } from "../../words/terms/names";
import { Select } from "../fields/Select";
import { ownCorner } from "./ownCorner";
import { useOwnView } from "./ownView";
import { useEditOwn, type OwnAndReading } from "./useOwn";
import { sizeShown } from "./sizeShown";

export interface OwnMarksProps extends OwnAndReading {
  readonly piece: PieceReading;
}

/** Corners, darts and bust point of one piece in one size: proposed, and put right by a tap. The other sizes follow. */
export function OwnMarks({ piece, own, reading }: OwnMarksProps) {
  const chosen = useOwnView((view) => view.size);
  const showSize = useOwnView((view) => view.showSize);
  const size = sizeShown(piece, chosen);
  const name = piece.said.name;
  const here = piece.sizes.find((each) => each.size === size);
  if (name === null) return <p className="field-hint">{OWN_WORDS.nameFirst}</p>;
  return (
    <>
      {piece.sizes.length > 1 && (
        <div className="own-in-size">
          <Select
            label={OWN_WORDS.inSize}
            value={size}
            options={piece.sizes.map((each) => ({ value: each.size, label: each.size === "" ? "–" : each.size }))}
            onChange={showSize}
          />
          <p className="aside">{OWN_WORDS.follow}</p>
        </div>
      )}
      <Corners piece={piece} own={own} reading={reading} name={name} size={size} />
      <Darts piece={piece} own={own} reading={reading} name={name} size={size} darts={here?.darts ?? []} />
      <BustPoint piece={piece} own={own} reading={reading} size={size} isFound={(here?.bustPoint ?? null) !== null} />
    </>
  );
}

interface OfSizeProps extends OwnMarksProps {
  readonly name: PieceName;
  readonly size: string;
}

function Corners({ piece, own, name, size }: OfSizeProps) {
  const edit = useEditOwn();
  const pointing = useOwnView((view) => view.pointing);
  const point = useOwnView((view) => view.point);
  const said = saidOfPiece(own, piece.id);
  const found = piece.sizes.find((each) => each.size === size)?.corners ?? [];
  const none = (said.corners ?? []).filter(
    ({ at, name: corner }) => at === null && !found.some((f) => f.name === corner),
  );
  const lost = piece.problems.flatMap((problem) =>
    problem.code === "own/corner-missing" && !found.some((f) => f.name === problem.corner) ? [problem.corner] : [],
  );
  const rows: readonly {
    readonly corner: PointName;
    readonly by: string;
    readonly state: "found" | "none" | "lost";
  }[] = [
    ...found.map((corner) => ({ corner: corner.name, by: foundByWords(corner.by), state: "found" as const })),
    ...[...new Set(lost)].map((corner) => ({ corner, by: OWN_WORDS.notFound, state: "lost" as const })),
    ...none.map((corner) => ({ corner: corner.name, by: OWN_WORDS.noSuch, state: "none" as const })),
  ];
  return (
    <section className="own-marks" aria-label={OWN_WORDS.corners}>
      <h6>{OWN_WORDS.corners}</h6>
      <ul className="own-corners">
        {rows.map(({ corner, by, state }) => {
          const named = ownCorner(corner);
          const isPointing = pointing?.for === "corner" && pointing.corner === corner;
          const isHers = said.corners?.some((each) => each.name === corner) === true;
          return (
            <li key={corner} data-state={state}>
              <button
                type="button"
                className="own-corner"
                aria-pressed={isPointing}
                disabled={named === undefined}
                onClick={() => named !== undefined && point({ for: "corner", piece: piece.id, corner: named })}
              >
                {capital(cornerWords(corner, name))}{" "}
                <span className="aside">{isPointing ? OWN_WORDS.tapSheet : by}</span>
              </button>
              {isPointing && named !== undefined && (
                <span className="actions">
                  {state !== "none" && (
                    <button
                      type="button"
                      className="button small"
                      onClick={() => {
                        edit((now) =>
                          withPieceSaid(now, piece.id, (before) => withCorner(before, { name: named, size, at: null })),
                        );
                        point(null);
                      }}
                    >
                      {OWN_WORDS.noCorner}
                    </button>
                  )}
                  {isHers && (
                    <button
                      type="button"
                      className="button small"
                      onClick={() =>
                        edit((now) => withPieceSaid(now, piece.id, (before) => withoutCorner(before, named)))
                      }
                    >
                      {OWN_WORDS.asFound}
                    </button>
                  )}
                </span>
              )}
            </li>
          );
        })}
      </ul>
      <p className="field-hint">{OWN_WORDS.alongHint}</p>
    </section>
  );
}

/** Those that most patterns have; the others are behind a word. */
const USUAL_DARTS: readonly DartName[] = [
  dartName("side"),
  dartName("waist"),
  dartName("shoulder"),
  dartName("french"),
];

interface DartsProps extends OfSizeProps {
  readonly darts: readonly ReadDart[];
}

function Darts({ piece, own, darts }: DartsProps) {
  const edit = useEditOwn();
  const point = useOwnView((view) => view.point);
  const pointing = useOwnView((view) => view.pointing);
  const [next, setNext] = useState<DartName>(dartName("waist"));
  const [isAll, setAll] = useState(false);
  const said = saidOfPiece(own, piece.id);
  const begin = (dart: DartName): void => point({ for: "dart", piece: piece.id, dart, given: [] });
  const pointed = pointing?.for === "dart" ? pointing.dart : null;
  return (
    <section className="own-marks" aria-label={OWN_WORDS.darts}>
      <h6>{OWN_WORDS.darts}</h6>
      <ul className="own-rows">
        {darts.map(({ name: dart, by }) => (
          <li key={dart}>
            <span>
              {capital(dartWords(dart))} <span className="aside">{dartByWords(by)}</span>
            </span>
            <button
              type="button"
              className="button small"
              aria-label={`${capital(dartWords(dart))}: ${OWN_WORDS.moveDart}`}
              aria-pressed={pointed === dart}
              onClick={() => pointed !== dart && begin(dart)}
            >
              {pointed === dart ? OWN_WORDS.tapSheet : OWN_WORDS.moveDart}
            </button>
            <button
              type="button"
              className="button small"
              aria-label={`${capital(dartWords(dart))}: ${by === "her" ? OWN_WORDS.asFound : OWN_WORDS.noDart}`}
              onClick={() =>
                edit((now) =>
                  withPieceSaid(now, piece.id, (before) =>
                    by === "her" ? dartForgotten(before, dart) : withoutDart(before, dart),
                  ),
                )
              }
            >
              {by === "her" ? OWN_WORDS.asFound : OWN_WORDS.noDart}
            </button>
          </li>
        ))}
        {(said.notDarts ?? []).map((dart) => (
          <li key={dart}>
            <span className="aside">
              {capital(dartWords(dart))}: {OWN_WORDS.none}
            </span>
            <button
              type="button"
              className="button small"
              onClick={() => edit((now) => withPieceSaid(now, piece.id, (before) => dartForgotten(before, dart)))}
            >
              {OWN_WORDS.isDart}
            </button>
          </li>
        ))}
      </ul>
      <div className="own-add-dart">
        <Select
          label={OWN_WORDS.addDart}
          value={next}
          options={[
            ...(isAll ? DART_NAMES : USUAL_DARTS).map((dart) => ({ value: dart, label: dartWords(dart) })),
            ...(isAll ? [] : [{ value: "", label: OWN_WORDS.otherDarts }]),
          ]}
          onChange={(value) => {
            if (value === "") setAll(true);
            setNext(DART_NAMES.find((dart) => dart === value) ?? next);
          }}
        />
        <button
          type="button"
          className="button small"
          aria-label={`${OWN_WORDS.addDart}: ${dartWords(next)}`}
          aria-pressed={pointed === next}
          onClick={() => pointed !== next && begin(next)}
        >
          {pointed === next ? OWN_WORDS.tapSheet : OWN_WORDS.pointIt}
        </button>
      </div>
    </section>
  );
}

interface BustPointProps extends OwnMarksProps {
  readonly size: string;
  readonly isFound: boolean;
}

function BustPoint({ piece, own, isFound }: BustPointProps) {
  const edit = useEditOwn();
  const point = useOwnView((view) => view.point);
  const isPointing = useOwnView((view) => view.pointing?.for === "bustPoint");
  const isHers = saidOfPiece(own, piece.id).bustPoint !== undefined;
  return (
    <section className="own-marks" aria-label={OWN_WORDS.bustPoint}>
      <h6>
        {OWN_WORDS.bustPoint}{" "}
        <span className="aside">{isHers ? foundByWords("her") : isFound ? OWN_WORDS.found : OWN_WORDS.notFound}</span>
      </h6>
      <div className="actions">
        <button
          type="button"
          className="button small"
          aria-label={`${OWN_WORDS.bustPoint}: ${OWN_WORDS.pointIt}`}
          aria-pressed={isPointing}
          onClick={() => point({ for: "bustPoint", piece: piece.id })}
        >
          {isPointing ? OWN_WORDS.tapSheet : OWN_WORDS.pointIt}
        </button>
        {isHers && (
          <button
            type="button"
            className="button small"
            onClick={() => edit((now) => withPieceSaid(now, piece.id, (before) => withBustPoint(before, null)))}
          >
            {OWN_WORDS.asFound}
          </button>
        )}
      </div>
    </section>
  );
}
