import { halfWords } from "../../words/fits";
import {
  dartOfAlteration,
  isMadeOn,
  isRedraw,
  type Alteration,
  type DartRedraw,
  type Hold,
} from "../../core/decisions/alteration";
import { endFails, endsAsUsual } from "../../core/dart/dartEndReading";
import type { AlterationFailure } from "../../core/alterations/outcome/alterationFailure";
import "./darts.css";
import { createContext, useContext, useEffect, useMemo, useRef, type ReactNode } from "react";
import { isSameDart, type DartRef } from "../../core/pattern/piece";
import { halvesOf, type Plan, type PlannedDart } from "../../core/plan/plan";
import type { LengthUnit, Work } from "../../core/decisions/work";
import type { Mm } from "../../core/units";
import { dartOn } from "../../core/plan/dartHalves";
import { acrossWords } from "../../words/alterations/dartRedraw";
import {
  endWords,
  holdWords,
  ownBustPointSentence,
  settingWords,
  stopSentence,
  truingSentence,
  verdictSentence,
} from "../../words/terms/darts";
import { capital, centreWords, dartRefWords, dartWords, pieceWords } from "../../words/terms/names";
import { planFailureWords } from "../../words/plan";
import { refusedSentence } from "../../words/doubts";
import { alterationFailureSentence } from "../../words/planned";
import { FailureNote } from "../session/FailureNote";
import { useSettledPlan } from "../session/usePlan";
import { useInSight } from "../session/useInSight";
import { useRun, useSettledWork, useWorkInSight } from "../session/useWork";
import { useViewState } from "../session/viewState";
import { AmountField, type AmountFieldProps } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { DartHalves } from "./DartHalves";
import { DartFiguresTable } from "./DartFiguresTable";
import { DartSums } from "./DartSums";
import { DartsGone, DartSurgeryControls } from "./DartSurgery";
import { SewnFront } from "../sewn/SewnFront";
import { FoldedDisc } from "./FoldedDisc";
import { GiveBackShares } from "./GiveBackShares";
import { PointedDart } from "./PointedDart";
import { useDartNow } from "./useDartNow";
import { useSetting } from "./useSetting";
import { endOf, mouthOf, placeOf, putOrRemove, snapStep, USUAL_HOLD } from "../../core/plan/dartEdit";
import * as say from "../../words/dartsStep";
import { Fractions } from "../fields/Fractions";

/** The darts: what each is, what the wearer's cup asks, and every way to change it. */
export function DartsPanel() {
  const plan = useSettledPlan();
  const work = useSettledWork((w) => w);
  if (!plan.ok) {
    return (
      <>
        <DartsHead />
        <FailureNote
          words={planFailureWords(plan.failure, work.unit, work.pattern.chart.sizes.length)}
          picks={work.picks}
        />
      </>
    );
  }
  return (
    <>
      <DartsHead />
      <ChosenDart plan={plan.value} work={work} />
      <SewnFront />
    </>
  );
}

const DartsHead = () => (
  <header className="step-head">
    <h2>{say.darts}</h2>
    <p>{say.about}</p>
  </header>
);

interface ChosenDartProps {
  /** As it is while nothing moves: there is no other dart to choose, and no other warning, at every key. */
  readonly plan: Plan;
  readonly work: Work;
}

function ChosenDart({ plan, work }: ChosenDartProps) {
  const selected = useViewState((view) => view.selectedDart);
  const selectDart = useViewState((view) => view.selectDart);
  // As on the table.
  const half = useViewState((view) => view.half);
  const { darts } = plan[half];
  const chosen =
    darts.find(({ ref }) => selected !== null && isSameDart(ref, selected)) ??
    darts.find(({ ref }) => ref.dart === "sideDart") ??
    darts[0];
  const place = useFocusKept(chosen === undefined ? "" : `${chosen.ref.piece}-${chosen.ref.dart}`);
  if (chosen === undefined) {
    return (
      <>
        <p>{say.thisPatternHasNoDarts}</p>
        <DartsGone plan={plan} work={work} />
      </>
    );
  }
  const isDoubted = ({ ref, verdict, endJudged }: PlannedDart): boolean =>
    verdict !== "asWanted" ||
    (endJudged !== null && endFails(endJudged)) ||
    plan.ledger.some(({ what, outcome }) => !outcome.ok && what.kind === "alteration" && isOf(what.alteration, ref));
  return (
    <>
      <ul ref={place} tabIndex={-1} className="dart-list" aria-label={say.dartsByPiece}>
        {darts.map((dart) => (
          <li key={`${dart.ref.piece}-${dart.ref.dart}`}>
            <button
              type="button"
              className="dart-choice"
              aria-pressed={dart === chosen}
              data-doubt={isDoubted(dart) ? "" : undefined}
              onClick={() => selectDart(dart.ref)}
            >
              <span>{capital(pieceWords(dart.ref.piece))}</span> {dartWords(dart.ref.dart)}
              {isDoubted(dart) && <span className="visually-hidden">{say.toLookAt}</span>}
            </button>
          </li>
        ))}
      </ul>
      <DartsGone plan={plan} work={work} />
      <LeftOut plan={plan} chosen={chosen.ref} unit={work.unit} />
      <DartEditor key={`${chosen.ref.piece}-${chosen.ref.dart}`} dart={chosen} plan={plan} work={work} />
    </>
  );
}

const isOf = (alteration: Alteration, dart: DartRef): boolean => {
  const of = dartOfAlteration(alteration);
  return of !== null && isSameDart(of, dart);
};

/** What was decided about darts and had to be left out; redraws of the chosen one are told by their own fields. */
function LeftOut({ plan, chosen, unit }: { readonly plan: Plan; readonly chosen: DartRef; readonly unit: LengthUnit }) {
  const has = (dart: DartRef): boolean =>
    halvesOf(plan).some(({ darts }) => darts.some(({ ref }) => isSameDart(ref, dart)));
  // Of darts made into something else it is told beside them.
  const isTold = (alteration: Alteration): boolean => {
    const dart = dartOfAlteration(alteration);
    if (dart === null) return false;
    return isRedraw(alteration) ? !isSameDart(dart, chosen) : has(dart);
  };
  const told = plan.ledger.filter(
    ({ what, outcome }) => !outcome.ok && what.kind === "alteration" && isTold(what.alteration),
  );
  return told.map((planned) => (
    <p key={planned.id} className="field-warning">
      <Fractions text={refusedSentence(planned, unit) ?? ""} />
    </p>
  ));
}

/** A dart moved away whole takes its controls along: whoever used them by keys is taken to the list of darts. */
function useFocusKept(chosen: string) {
  const place = useRef<HTMLUListElement>(null);
  const last = useRef(chosen);
  useEffect(() => {
    if (last.current === chosen) return;
    last.current = chosen;
    if (document.activeElement === document.body) place.current?.focus({ preventScroll: true });
  }, [chosen]);
  return place;
}

interface DartEditorProps extends ChosenDartProps {
  readonly dart: PlannedDart;
}

/** All of it stands still in the middle of a drag, but for the parts that ask for what is moving themselves. */
function DartEditor({ dart, plan, work }: DartEditorProps) {
  const { ref } = dart;
  const { unit } = work;
  const half = useViewState((view) => view.half);
  const alone = useViewState((view) => view.alone);
  const run = useRun();
  // The half that is changed; undefined: both.
  const on = dartOn(work, plan, ref, half, alone);
  const end = endOf(work, ref, USUAL_HOLD, on);
  const mouth = mouthOf(work, ref, on);
  const place = placeOf(work, ref, on);
  const redraws = useMemo(
    () => work.alterations.filter(isRedraw).filter((a) => isSameDart(a.dart, ref) && isMadeOn(a, half)),
    [work.alterations, ref, half],
  );
  const failureOf = (kind: DartRedraw["kind"]): AlterationFailure | null => {
    const planned = plan.ledger.find(
      ({ what }) =>
        what.kind === "alteration" &&
        isRedraw(what.alteration) &&
        what.alteration.kind === kind &&
        isSameDart(what.alteration.dart, ref) &&
        isMadeOn(what.alteration, half),
    );
    return planned === undefined || planned.outcome.ok ? null : planned.outcome.failure;
  };
  const said = (failure: AlterationFailure | null): string | null =>
    failure === null ? null : alterationFailureSentence(failure, unit);
  const endFailure = failureOf("dartEnd");
  const mouthFailure = failureOf("dartMouth");
  // Said beside the field that did it: an end off the piece went the way it was moved most, a mouth where it was moved most.
  const isAcross = endFailure?.code === "alteration/end-outside-piece" && Math.abs(end.across) > Math.abs(end.shorten);
  const isOuter = Math.abs(mouth.outer) > Math.abs(mouth.inner);
  const placeRefusal = said(failureOf("dartPlace"));

  const editor = useRef<HTMLElement>(null);
  const isSought = useViewState((view) => view.sought === "dart");
  const seek = useViewState((view) => view.seek);
  useEffect(() => {
    if (!isSought) return;
    seek(null);
    editor.current?.querySelector<HTMLInputElement>(":scope > .amounts input")?.focus();
  }, [isSought, seek]);

  const amount = (
    what: string,
    label: string,
    read: (work: Work) => Mm,
    change: (value: Mm) => DartRedraw,
    more: { hint?: string; refusal?: string | null } = {},
  ) => (
    <AmountOfDart
      label={label}
      // Of each half its own, so that an entry that cannot be read waits where it was written.
      key={`${what}-${on ?? "both"}`}
      field={`dart.${ref.piece}.${ref.dart}${on === undefined ? "" : `-${on}`}.${what}`}
      read={read}
      unit={unit}
      change={change}
      {...more}
    />
  );
  const up = acrossWords(ref, 1);
  const own = dart.drawn.end === null ? null : ownBustPointSentence(plan.bustPoint, ref, unit);
  const isAlone = on !== undefined;
  const setting = useSetting(work, ref, half, isAlone);

  return (
    <section ref={editor} className="dart-editor" aria-label={dartRefWords(ref)}>
      <h3>
        {capital(dartRefWords(ref))}
        {plan.left !== plan.right && `, ${halfWords(half)}`}
      </h3>
      <DartFiguresTable dart={dart} unit={unit} />
      <DartHalves dart={ref} work={work} on={on} />
      <div className="verdicts">
        <VerdictWords dart={dart} unit={unit}>
          {own !== null && (
            <p className="field-hint">
              <Fractions text={own} />
            </p>
          )}
          {setting !== null && (
            <p>
              <button type="button" className="button small" onClick={() => run(setting.command)}>
                {settingWords(setting)}
              </button>
            </p>
          )}
        </VerdictWords>
        <FoldedDisc dart={dart} unit={unit} />
      </div>

      {dart.drawn.end !== null && <PointedDart dart={dart} work={work} alone={on !== undefined} />}

      <Amounts>
        {amount(
          "shorten",
          say.shortenBy,
          (w) => endOf(w, ref, USUAL_HOLD, on).shorten,
          (shorten) => ({ ...end, shorten }),
          {
            hint: say.lessThanLengthens,
            refusal: isAcross ? null : said(endFailure),
          },
        )}
        {amount(
          "across",
          say.moveItsEndBy(up),
          (w) => endOf(w, ref, USUAL_HOLD, on).across,
          (across) => ({ ...end, across }),
          {
            refusal: isAcross ? said(endFailure) : null,
          },
        )}
        {amount(
          "inner",
          `Widen: ${endWords(ref.dart, ref.piece, "inner")}`,
          (w) => mouthOf(w, ref, on).inner,
          (inner) => ({ ...mouth, inner }),
          {
            hint: say.lessThanNarrows,
            refusal: isOuter ? null : said(mouthFailure),
          },
        )}
        {amount(
          "outer",
          `Widen: ${endWords(ref.dart, ref.piece, "outer")}`,
          (w) => mouthOf(w, ref, on).outer,
          (outer) => ({ ...mouth, outer }),
          {
            refusal: isOuter ? said(mouthFailure) : null,
          },
        )}
        {amount(
          "place",
          say.moveTheWholeDartBy(up),
          (w) => placeOf(w, ref, on).by,
          (by) => ({ ...place, by }),
          {
            refusal: placeRefusal,
          },
        )}
      </Amounts>
      {(end.shorten !== 0 || end.across !== 0) && (
        <>
          <Choice
            legend={say.whenItsEndMoves}
            options={HOLDS.map((value) => ({ value, label: holdWords(value).name }))}
            value={end.hold}
            onChange={(hold) => run({ kind: "putAlteration", alteration: { ...end, hold } })}
          />
          <p className="field-hint">{holdWords(end.hold).what}</p>
        </>
      )}
      {ref.piece === "front" && ref.dart === "waistDart" && place.by !== 0 && (
        <Choice
          legend={say.movedNearerBy(centreWords(ref.piece))}
          options={[
            { value: "redraw", label: say.redrawingOnSeam },
            { value: "offCentreSeam", label: say.takingOffCentre },
          ]}
          value={place.how}
          onChange={(how) => run({ kind: "putAlteration", alteration: { ...place, how } })}
        />
      )}
      {redraws.length > 0 && (
        <>
          <GiveBackShares dart={dart} on={on} />
          <DartSums dart={ref} alterations={plan[half].alterations} unit={unit} />
          <p>
            {redraws.map((alteration) => (
              <button
                key={alteration.id}
                type="button"
                className="link-button"
                onClick={() =>
                  run({ kind: "removeAlteration", id: alteration.id, ...(on === undefined ? {} : { half: on }) })
                }
              >
                {say.putBackAsPrinted(WHAT[alteration.kind], on === undefined ? "" : say.onYourHalf(on))}
              </button>
            ))}
          </p>
        </>
      )}
      <DartSurgeryControls dart={dart} plan={plan} work={work} on={on} />
    </section>
  );
}

/** What is to be said of the dart as it is just now, about what is said of it while nothing moves. */
function VerdictWords({
  dart,
  unit,
  children,
}: {
  readonly dart: PlannedDart;
  readonly unit: LengthUnit;
  readonly children: ReactNode;
}) {
  const place = useRef<HTMLDivElement>(null);
  const now = useDartNow(dart, useInSight(place, true));
  const stop = stopSentence(now, unit);
  const trued = truingSentence(now, unit);
  const usual = now.endJudged === null || endsAsUsual(now.endJudged);
  return (
    <div ref={place} className="verdict-words">
      <p className="verdict" data-verdict={now.verdict}>
        <Fractions text={verdictSentence(now, unit)} />
      </p>
      {stop !== null && (
        <p className="verdict" data-verdict={usual ? "asWanted" : "tooSharp"}>
          <Fractions text={stop} />
        </p>
      )}
      {children}
      {trued !== null && (
        <p className="field-hint">
          <Fractions text={trued} />
        </p>
      )}
    </div>
  );
}

const AmountsInSight = createContext(true);

/** The amounts of a dart, which follow a drag while any of them is seen. */
function Amounts({ children }: { readonly children: ReactNode }) {
  const place = useRef<HTMLDivElement>(null);
  const isInSight = useInSight(place, true);
  return (
    <AmountsInSight value={isInSight}>
      <div ref={place} className="amounts" data-run="">
        {children}
      </div>
    </AmountsInSight>
  );
}

interface AmountOfDartProps extends Pick<AmountFieldProps, "label" | "field" | "unit" | "hint" | "refusal"> {
  readonly read: (work: Work) => Mm;
  readonly change: (value: Mm) => DartRedraw;
}

/** An amount that follows what moves: only the one that changes is drawn anew. */
function AmountOfDart({ read, change, ...field }: AmountOfDartProps) {
  const value = useWorkInSight(useContext(AmountsInSight), read);
  return (
    <AmountField {...field} value={value} step={snapStep(field.unit)} set={(next) => [putOrRemove(change(next))]} />
  );
}

const HOLDS: readonly Hold[] = ["mouth", "fullness"];

const WHAT: Readonly<Record<DartRedraw["kind"], string>> = {
  dartEnd: say.itsEnd,
  dartMouth: say.itsMouth,
  dartPlace: say.itsPlace,
};
