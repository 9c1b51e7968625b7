/** Everything that makes another thing of a dart: moved to another seam, split, gathered, bowed, joined into a seam. */
import {
  isMadeOn,
  type Alteration,
  type DartLegsAlteration,
  type DartPivotAlteration,
  type DartSurgery,
  type Half,
} from "../../core/decisions/alteration";
import { useId, useState } from "react";
import { hasHome } from "../../core/alterations/dartSurgery/places";
import { DART_HOMES, dartName, homeOf } from "../../core/pattern/dartNames";
import { isSameDart, type DartHome, type DartRef, type Piece } from "../../core/pattern/piece";
import type { Command } from "../../core/plan/commands";
import { halvesOf, type Plan, type PlannedDart } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import { bowHint, homeWords } from "../../words/dartSurgeryControls";
import { plannedAmount, plannedTitle } from "../../words/ledger";
import { alterationFailureSentence } from "../../words/planned";
import { useRun, useWork } from "../session/useWork";
import { useRunAll } from "../session/useRunAll";
import { useViewState } from "../session/viewState";
import { AmountField } from "../fields/AmountField";
import { Choice } from "../fields/Choice";
import { Select } from "../fields/Select";
import { Slider } from "../fields/Slider";
import { alterationId, snapStep } from "../../core/plan/dartEdit";
import * as say from "../../words/dartsStep";
import { Fractions } from "../fields/Fractions";

const isSurgery = (alteration: Alteration): alteration is DartSurgery =>
  alteration.kind === "dartPivot" ||
  alteration.kind === "dartSplit" ||
  alteration.kind === "dartGather" ||
  alteration.kind === "dartLegs" ||
  alteration.kind === "dartSeam";

function surgeryOf<K extends DartSurgery["kind"]>(
  work: Work,
  kind: K,
  dart: DartRef,
  on: Half | undefined,
): Extract<DartSurgery, { kind: K }> | undefined {
  const isOne = (a: Alteration): a is Extract<DartSurgery, { kind: K }> =>
    a.kind === kind && isSurgery(a) && isSameDart(a.dart, dart);
  return work.alterations.filter(isOne).find((a) => (on === undefined ? a.half === undefined : isMadeOn(a, on)));
}

const onHalf = (half: Half | undefined): { readonly half?: Half } => (half === undefined ? {} : { half });

function refusalOf(plan: Plan, alteration: DartSurgery | undefined, unit: Work["unit"]): string | null {
  const outcome = plan.ledger.find(({ id }) => id === alteration?.id)?.outcome;
  return outcome === undefined || outcome.ok ? null : alterationFailureSentence(outcome.failure, unit);
}

export interface DartSurgeryProps {
  readonly dart: PlannedDart;
  readonly plan: Plan;
  readonly work: Work;
  /** The half that is changed; undefined: both. */
  readonly on: Half | undefined;
}

/** Under the dart that is chosen. */
export function DartSurgeryControls({ dart, plan, work, on }: DartSurgeryProps) {
  const { ref } = dart;
  const half = useViewState((view) => view.half);
  const piece = plan[half].pieces.find(({ name }) => name === ref.piece);
  const [isUsed] = useState(() => work.alterations.some((a) => isSurgery(a) && isSameDart(a.dart, ref)));
  if (piece === undefined) return null;
  return (
    <details className="pointed dart-surgery" open={isUsed}>
      <summary>{say.surgeryTitle}</summary>
      <div className="pointed-body">
        <Pivot dart={ref} piece={piece} plan={plan} work={work} on={on} />
        <MadeOf dart={ref} piece={piece} plan={plan} work={work} on={on} />
        <Legs dart={ref} plan={plan} work={work} on={on} />
      </div>
    </details>
  );
}

interface PartProps {
  readonly dart: DartRef;
  readonly piece: Piece;
  readonly plan: Plan;
  readonly work: Work;
  readonly on: Half | undefined;
}

/** Seams of the piece that a dart can be moved to. */
const homesFor = (piece: Piece, dart: DartRef): readonly DartHome[] =>
  DART_HOMES.filter((home) => hasHome(piece, home) && home !== homeOf(dart.dart));

const NOWHERE = "";

function Pivot({ dart, piece, plan, work, on }: PartProps) {
  const run = useRun();
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const selectDart = useViewState((view) => view.selectDart);
  const own = surgeryOf(work, "dartPivot", dart, on);
  const homes = homesFor(piece, dart);
  const refusal = refusalOf(plan, own, work.unit);
  const choose = (value: string): void => {
    const id = own?.id ?? alterationId("dartPivot", dart, on);
    const to = homes.find((home) => home === value);
    if (to === undefined) return run({ kind: "removeAlteration", id, ...onHalf(on) });
    run({
      kind: "putAlteration",
      alteration: { kind: "dartPivot", id, dart, to, share: own?.share ?? 1, ...onHalf(on) },
    });
    lightAlteration(id);
    // Moved whole, it is the dart of that seam from now on.
    if (own === undefined) selectDart({ piece: dart.piece, dart: dartName(to) });
  };
  if (homes.length === 0 && own === undefined) return null;
  return (
    <div className="surgery-part">
      <Select
        label={say.moveItToThe}
        value={own?.to ?? NOWHERE}
        options={[
          { value: NOWHERE, label: say.leaveItHere },
          ...[...new Set([...(own === undefined ? [] : [own.to]), ...homes])].map((home) => ({
            value: home,
            label: homeWords(home, dart.piece),
          })),
        ]}
        onChange={choose}
      />
      {own !== undefined && <Share key={on ?? "both"} pivot={{ ...own, ...onHalf(on) }} />}
      {refusal !== null && (
        <p className="field-error" role="alert">
          <Fractions text={refusal} />
        </p>
      )}
    </div>
  );
}

const STEP = 5;

/** How much of the dart goes. */
function Share({ pivot }: { readonly pivot: DartPivotAlteration }) {
  const id = useId();
  const now = useWork((work) => surgeryOf(work, "dartPivot", pivot.dart, pivot.half));
  const percent = Math.round((now ?? pivot).share * 100);
  return (
    <div className="surgery-share">
      <label htmlFor={id}>{say.howMuchOfIt}</label>
      <Slider
        id={id}
        min={STEP}
        max={100}
        step={STEP}
        value={percent}
        valueText={percent === 100 ? say.theWholeOfIt : `${percent} %`}
        set={(next) => [{ kind: "putAlteration", alteration: { ...pivot, share: next / 100 } }]}
      />
      <span aria-hidden="true">{percent === 100 ? say.whole : `${percent} %`}</span>
    </div>
  );
}

type Made = "fold" | "two" | "three" | "gathers" | "seam";

/** Folded as it is, or split, gathered, or joined with the waist dart into a seam: one of these. */
function MadeOf({ dart, piece, plan, work, on }: PartProps) {
  const runAll = useRunAll();
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const own = [
    surgeryOf(work, "dartSplit", dart, on),
    surgeryOf(work, "dartGather", dart, on),
    surgeryOf(work, "dartSeam", dart, on),
  ].find((alteration) => alteration !== undefined);
  const home = homeOf(dart.dart);
  const isJoinable =
    piece.name === "front" &&
    (home === "shoulder" || home === "armhole") &&
    piece.darts.some(({ name }) => homeOf(name) === "waist");
  const options: readonly { readonly value: Made; readonly label: string }[] = [
    { value: "fold", label: say.oneDart },
    { value: "two", label: "two" },
    { value: "three", label: "three" },
    { value: "gathers", label: "gathers" },
    ...(isJoinable || own?.kind === "dartSeam" ? [{ value: "seam" as const, label: say.seamWithWaistDart }] : []),
  ];
  const choose = (value: Made): void => {
    const put = alterationFor(value, dart, on);
    runAll([
      ...(own === undefined ? [] : [{ kind: "removeAlteration", id: own.id, ...onHalf(on) } as const]),
      ...(put === null ? [] : [{ kind: "putAlteration", alteration: put } as const]),
    ]);
    lightAlteration(put?.id ?? null);
  };
  const refusal = refusalOf(plan, own, work.unit);
  return (
    <div className="surgery-part">
      <Choice legend={say.sewItAs} options={options} value={madeOf(own)} onChange={choose} />
      {refusal !== null && (
        <p className="field-error" role="alert">
          <Fractions text={refusal} />
        </p>
      )}
    </div>
  );
}

function madeOf(alteration: DartSurgery | undefined): Made {
  switch (alteration?.kind) {
    case "dartSplit":
      return alteration.into === 2 ? "two" : "three";
    case "dartGather":
      return "gathers";
    case "dartSeam":
      return "seam";
    default:
      return "fold";
  }
}

function alterationFor(made: Made, dart: DartRef, on: Half | undefined): DartSurgery | null {
  switch (made) {
    case "two":
    case "three":
      return {
        kind: "dartSplit",
        id: alterationId("dartSplit", dart, on),
        ...onHalf(on),
        dart,
        into: made === "two" ? 2 : 3,
      };
    case "gathers":
      return { kind: "dartGather", id: alterationId("dartGather", dart, on), ...onHalf(on), dart };
    case "seam":
      return { kind: "dartSeam", id: alterationId("dartSeam", dart, on), ...onHalf(on), dart };
    case "fold":
      return null;
  }
}

function Legs({ dart, plan, work, on }: Omit<PartProps, "piece">) {
  const own: DartLegsAlteration = {
    ...(surgeryOf(work, "dartLegs", dart, on) ?? {
      kind: "dartLegs",
      id: alterationId("dartLegs", dart, on),
      dart,
      bow: 0,
    }),
    ...onHalf(on),
  };
  const change = (bow: number): Command =>
    bow === 0
      ? { kind: "removeAlteration", id: own.id, ...onHalf(on) }
      : { kind: "putAlteration", alteration: { ...own, bow } };
  return (
    <AmountField
      label={say.bowItsLegsBy}
      key={on ?? "both"}
      field={`dart.${dart.piece}.${dart.dart}${on === undefined ? "" : `-${on}`}.legs`}
      hint={bowHint(work.unit)}
      value={own.bow}
      unit={work.unit}
      step={snapStep(work.unit)}
      set={(bow) => [change(bow)]}
      refusal={refusalOf(plan, own, work.unit)}
    />
  );
}

/** What was made of darts that are not there any more to be chosen: moved away whole, or joined into a seam. */
export function DartsGone({ plan, work }: { readonly plan: Plan; readonly work: Work }) {
  const run = useRun();
  const lightAlteration = useViewState((view) => view.lightAlteration);
  const gone = work.alterations
    .filter(isSurgery)
    .filter((a) => !halvesOf(plan).some(({ darts }) => darts.some(({ ref }) => isSameDart(ref, a.dart))));
  const alterations = plan.ledger.filter(({ id }) => gone.some((a) => a.id === id));
  if (alterations.length === 0) return null;
  return (
    <section aria-labelledby="darts-gone">
      <h3 id="darts-gone">{say.dartsMadeIntoSomethingElse}</h3>
      <ul className="darts-gone">
        {alterations.map((planned) => {
          const title = plannedTitle(planned, work.unit);
          return (
            <li key={planned.id}>
              <button type="button" className="link-button" onClick={() => lightAlteration(planned.id)}>
                <Fractions text={title} />
              </button>
              {plannedAmount(planned, work.unit) !== "" && (
                <span>
                  {" "}
                  <Fractions text={plannedAmount(planned, work.unit)} />
                </span>
              )}
              <button
                type="button"
                className="button small"
                aria-label={say.takeOutOf(title)}
                onClick={() => run({ kind: "removeAlteration", id: planned.id })}
              >
                {say.takeOut}
              </button>
              {!planned.outcome.ok && (
                <p className="field-error">
                  <Fractions text={alterationFailureSentence(planned.outcome.failure, work.unit)} />
                </p>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
