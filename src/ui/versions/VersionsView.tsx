import { useId, useMemo } from "react";
import type { Plan } from "../../core/plan/plan";
import { planOf } from "../../core/plan/planOf";
import type { Trial } from "../../core/decisions/trial";
import type { Work } from "../../core/decisions/work";
import { isSame } from "../../core/same";
import { linesAsking, type Asking } from "../../core/trial/linesAsking";
import { compareVersions, reasonsFor, type Comparison, type Reason } from "../../core/versions/compareVersions";
import { backInCopy, branchFrom, sewnAsNow, versionsOf, type Version } from "../../core/versions/versionsOf";
import {
  alterationLines,
  alterationName,
  backInCopyWords,
  backWords,
  branchAbout,
  branchName,
  branchWords,
  dartLines,
  reasonWords,
  sameInBoth,
  sizeLines,
  versionHead,
  versionTitle,
  verdictTag,
  VERSIONS_WORDS,
  type VersionLine,
} from "../../words/versions";
import { planFailureWords } from "../../words/plan";
import { copyName } from "../../words/storage";
import { Fractions } from "../fields/Fractions";
import { Select } from "../fields/Select";
import { FailureNote } from "../session/FailureNote";
import { usePageState } from "../session/pageState";
import { useRun, useSettledWork } from "../session/useWork";
import { useWorks } from "../works/useWorks";
import { LaidOverDrawing } from "./LaidOverDrawing";
import { lookedAt, NOTHING, useVersionsView } from "./versionsView";
import "./versions.css";
import * as say from "../../words/versionsStep";

/** All versions of the work in a row: one looked at, or two held against each other. */
export function VersionsView() {
  const id = useId();
  const work = useSettledWork((current) => current);
  const view = useVersionsView((chosen) => chosen);
  const versions = useMemo(() => versionsOf(work), [work]);
  const looked = lookedAt(versions, view);
  const same = sewnAsNow(work);
  if (looked === null) return null;
  const { shown, against } = looked;
  return (
    <section className="versions" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>{VERSIONS_WORDS.title}</h3>
      <p className="aside">{VERSIONS_WORDS.about}</p>
      <ul className="version-row" aria-label={VERSIONS_WORDS.look}>
        {versions.toReversed().map((version) => (
          <li key={version.key}>
            <button
              type="button"
              className="version"
              aria-pressed={version === shown}
              onClick={() => view.show(version.key)}
            >
              <span>{versionTitle(version)}</span>
              {version.trial !== null && (
                <span className="version-tag">
                  {verdictTag(version.trial)}
                  {version.trial === same && `, ${VERSIONS_WORDS.sameAsNow}`}
                </span>
              )}
            </button>
          </li>
        ))}
      </ul>
      <Select
        label={VERSIONS_WORDS.against}
        value={against?.key ?? NOTHING}
        options={[
          ...versions.filter((one) => one !== shown).map((one) => ({ value: one.key, label: versionTitle(one) })),
          { value: NOTHING, label: VERSIONS_WORDS.nothing },
        ]}
        onChange={view.holdAgainst}
      />
      <Held work={work} shown={shown} pair={looked.pair} />
      {shown.trial !== null && shown.number !== null && (
        <Turns
          work={work}
          trial={shown.trial}
          number={shown.number}
          isSewnNow={same !== null}
          isNow={shown.trial === same}
        />
      )}
    </section>
  );
}

interface HeldProps {
  readonly work: Work;
  readonly shown: Version;
  readonly pair: { readonly older: Version; readonly newer: Version } | null;
}

/** The pieces and figures of one version, or of two. */
function Held({ work, shown, pair }: HeldProps) {
  const newer = pair?.newer ?? shown;
  const older = pair?.older ?? shown;
  const plan = planOf(newer.decided);
  const old = planOf(older.decided);
  for (const [result, { decided }] of [
    [plan, newer],
    [old, older],
  ] as const)
    if (!result.ok)
      return <FailureNote words={planFailureWords(result.failure, work.unit, decided.pattern.chart.sizes.length)} />;
  if (!plan.ok || !old.ok) return null;
  return (
    <Compared
      work={work}
      older={{ ...older, plan: old.value }}
      newer={{ ...newer, plan: plan.value }}
      isOne={pair === null}
    />
  );
}

interface Planned extends Version {
  readonly plan: Plan;
}

interface ComparedProps {
  readonly work: Work;
  readonly older: Planned;
  readonly newer: Planned;
  /** One version alone, which is then both. */
  readonly isOne: boolean;
}

function Compared({ work, older, newer, isOne }: ComparedProps) {
  const compared = compareVersions(older, newer);
  const { unit } = work;
  const alterations = alterationLines(compared.alterations, unit);
  const heads = isOne ? [versionHead(newer)] : [versionHead(older), versionHead(newer)];
  return (
    <>
      <LaidOverDrawing
        before={isOne ? null : older.plan}
        after={newer.plan}
        called={[versionTitle(older), versionTitle(newer)]}
      />
      {alterations.length === 0 ? (
        <p>{VERSIONS_WORDS.none}</p>
      ) : (
        <Lines title={VERSIONS_WORDS.alterations} heads={heads} lines={alterations} />
      )}
      {!isOne && <Reasons work={work} older={older} newer={newer} compared={compared} />}
      <Lines title={VERSIONS_WORDS.sizes} heads={heads} lines={sizeLines(compared, unit)} />
      <Lines title={VERSIONS_WORDS.darts} heads={heads} lines={dartLines(compared.darts, unit)} />
      {!isOne && <PrintSince from={older.key} to={newer.key} />}
    </>
  );
}

interface LinesProps {
  readonly title: string;
  /** One version, or two. */
  readonly heads: readonly string[];
  readonly lines: readonly VersionLine[];
}

/** Side by side: first what differs, and by how much; the rest folds out. */
function Lines({ title, heads, lines }: LinesProps) {
  if (lines.length === 0) return null;
  if (heads.length === 1) return <LinesTable title={title} heads={heads} lines={lines} />;
  const changed = lines.filter(({ isChanged }) => isChanged);
  const same = lines.filter(({ isChanged }) => !isChanged);
  return (
    <div className="version-lines">
      {changed.length > 0 && <LinesTable title={title} heads={heads} lines={changed} />}
      {same.length > 0 && (
        <details>
          <summary>
            {changed.length === 0 && `${title}. `}
            {sameInBoth(same.length)}
          </summary>
          <LinesTable title={title} heads={heads} lines={same} />
        </details>
      )}
    </div>
  );
}

function LinesTable({ title, heads, lines }: LinesProps) {
  const isTwo = heads.length > 1;
  return (
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- it scrolls, by keys too
    <div className="version-scroll" role="group" aria-label={title} tabIndex={0}>
      <table className="version-table">
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="visually-hidden">{VERSIONS_WORDS.what}</span>
            </th>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
            {isTwo && <th scope="col">{VERSIONS_WORDS.more}</th>}
          </tr>
        </thead>
        <tbody>
          {lines.map(({ key, what, before, after, by }) => (
            <tr key={key}>
              <th scope="row">{what}</th>
              {isTwo && <Figure text={before} />}
              <Figure text={after} />
              {isTwo && <Figure text={by} />}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Letters: a figure with its unit is no longer, and is not broken. */
const LONGEST_FIGURE = 14;

const Figure = ({ text }: { readonly text: string }) => (
  <td data-words={text.length > LONGEST_FIGURE || undefined}>
    <Fractions text={text} />
  </td>
);

interface ReasonsProps {
  readonly work: Work;
  readonly older: Planned;
  readonly newer: Planned;
  readonly compared: Comparison;
}

/** Of an answer that explains several things, what asked for this one. */
function narrowed(reason: Reason, asking: Asking): Reason {
  const lines = linesAsking(reason.trial, reason.taken, asking);
  return { ...reason, because: reason.because.filter(({ id }) => lines.includes(id)) };
}

/** What was decided otherwise, each with the lines of the record that asked for it. */
function Reasons({ work, older, newer, compared }: ReasonsProps) {
  const id = useId();
  const { trials = [], unit } = work;
  const at = (version: Version): number => trials.findIndex((trial) => trial === version.trial);
  const between = [at(older), at(newer)] as const;
  const changed = compared.alterations.filter(({ isChanged }) => isChanged);
  const told = [
    ...changed.flatMap(({ before, after, half }) => {
      const known = after ?? before;
      if (known === null) return [];
      const ids = [before?.id, after?.id].filter((one) => one !== undefined);
      const reasons = reasonsFor(trials, between, ids).map((reason) => narrowed(reason, known));
      return [{ key: `${known.id} ${half}`, what: alterationName(known), reasons }];
    }),
    ...(compared.bust.before === compared.bust.after
      ? []
      : [
          {
            key: "bust",
            what: say.bustAdjustment,
            reasons: reasonsFor(trials, between, ["bust"]).map((reason) => narrowed(reason, "bust")),
          },
        ]),
  ];
  return (
    <section aria-labelledby={`${id}-why`}>
      <h4 id={`${id}-why`}>{VERSIONS_WORDS.why}</h4>
      {told.length === 0 ? (
        <p>
          {isSame(older.decided.picks, newer.decided.picks) ? VERSIONS_WORDS.unchanged : VERSIONS_WORDS.ownDecision}
        </p>
      ) : (
        <dl className="version-why">
          {told.map(({ key, what, reasons }) => (
            <div key={key}>
              <dt>{what}</dt>
              {reasons.length === 0 ? (
                <dd>{VERSIONS_WORDS.ownDecision}</dd>
              ) : (
                reasons.map((reason) => (
                  <dd key={`${reason.trial.id} ${reason.because.map(({ id: line }) => line).join(" ")}`}>
                    <Fractions text={reasonWords(reason, unit)} />
                  </dd>
                ))
              )}
            </div>
          ))}
        </dl>
      )}
    </section>
  );
}

/** To Paper, with these two versions chosen there. */
function PrintSince({ from, to }: { readonly from: string; readonly to: string }) {
  const showSheet = usePageState((page) => page.showSheet);
  const print = useVersionsView((view) => view.print);
  return (
    <p>
      <a
        className="button"
        href="#paper"
        onClick={() => {
          print(from, to);
          showSheet("since");
        }}
      >
        {VERSIONS_WORDS.print}
      </a>
    </p>
  );
}

interface TurnsProps {
  readonly work: Work;
  readonly trial: Trial;
  readonly number: number;
  /** What is decided now was sewn in some trial, and so cannot be lost. */
  readonly isSewnNow: boolean;
  /** This very trial is what is decided now. */
  readonly isNow: boolean;
}

/** Back to a trial, or on from it in a work of its own. */
function Turns({ work, trial, number, isSewnNow, isNow }: TurnsProps) {
  const id = useId();
  const run = useRun();
  const works = useWorks();
  const back = { kind: "returnToTrial", trial: trial.id } as const;
  return (
    <div className="version-turns">
      {!isNow && (
        <>
          {!isSewnNow && (
            <p className="note doubt" id={`${id}-lost`}>
              {VERSIONS_WORDS.neverSewn}
            </p>
          )}
          <p className="version-buttons">
            <button
              type="button"
              className="button"
              aria-describedby={isSewnNow ? undefined : `${id}-lost`}
              onClick={() => run(back)}
            >
              {backWords(number)}
            </button>
            {!isSewnNow && (
              <button
                type="button"
                className="button"
                onClick={() => works.begin({ ...backInCopy(work, trial), name: copyName(work.name) })}
              >
                {backInCopyWords(number)}
              </button>
            )}
          </p>
        </>
      )}
      <p className="version-buttons">
        <button
          type="button"
          className="button"
          aria-describedby={`${id}-branch`}
          onClick={() => works.begin({ ...branchFrom(work, trial), name: branchName(work.name, number) })}
        >
          {branchWords(number)}
        </button>
      </p>
      <p className="aside" id={`${id}-branch`}>
        {branchAbout(number)}
      </p>
    </div>
  );
}
