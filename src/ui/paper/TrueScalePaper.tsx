import { useEffect, useId, useMemo } from "react";
import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import type { OldPieces, PaperFailure, PaperKind, PaperRequest } from "../../paper/request";
import { planDoubts } from "../../words/doubts";
import {
  BROWSER_PRINTS_CHECKLIST,
  beforeCuttingSentence,
  brokenWords,
  howToPrint,
  LAYING,
  paperFailureWords,
  previewSentence,
} from "../../words/paperChoices";
import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../session/FailureNote";
import { useIsKeptHere } from "../session/pageState";
import { useSettledPlan } from "../session/usePlan";
import { useSettledWork } from "../session/useWork";
import { Fractions } from "../fields/Fractions";
import { today } from "../session/today";
import { isNothingAsked, isSameRequest, requestFor } from "./paperRequest";
import { useChoices } from "./choicesState";
import { MakeFiles, Trouble } from "./MakeFiles";
import { PaperChoices } from "./PaperChoices";
import type { PreviewState } from "./paperRoom";
import { SheetMap } from "./SheetMap";
import { usePaperRoom, usePaperRoomState } from "./usePaperRoom";
import * as say from "../../words/paperStep";

/** True-scale pieces, or the overlay for tissue; or why there is no plan to take them from. */
export function TrueScalePaper({ kind }: { readonly kind: PaperKind }) {
  const work = useSettledWork((current) => current);
  const result = useSettledPlan();
  if (!result.ok)
    return <FailureNote words={planFailureWords(result.failure, work.unit, work.pattern.chart.sizes.length)} />;
  return <PlannedPaper work={work} plan={result.value} kind={kind} />;
}

/** Long enough that ticking one box after another draws one preview. */
const SETTLED_MS = 350;

interface PlannedProps {
  readonly work: Work;
  readonly plan: Plan;
  readonly kind: PaperKind;
  /** Of an overlay: the pieces it is laid on, in place of the printed tissue. */
  readonly old?: OldPieces;
}

/** What is chosen of it, what it comes to, and its files. */
export function PlannedPaper({ work, plan, kind, old }: PlannedProps) {
  const chosen = useChoices((choices) => choices);
  const day = today();
  const request = useMemo(
    () => ({ ...requestFor(work, plan, kind, chosen, day), ...(old === undefined ? {} : { old }) }),
    [work, plan, kind, chosen, day, old],
  );
  const preview = usePreview(request);
  const failure = failureOf(request, preview);
  return (
    <>
      <PaperChoices work={work} plan={plan} kind={kind} />
      <Preview request={request} preview={preview} failure={failure} />
      <BeforeMaking work={work} plan={plan} request={request} />
      <MakeFiles request={request} failure={failure} />
      <p className="aside">{BROWSER_PRINTS_CHECKLIST}</p>
    </>
  );
}

/** Asks for a preview once the choices have settled, and lets go of it when she looks at something else. */
function usePreview(request: PaperRequest): PreviewState {
  const room = usePaperRoom();
  useEffect(() => {
    if (isNothingAsked(request)) return undefined;
    const timer = window.setTimeout(() => room.preview(request), SETTLED_MS);
    return () => window.clearTimeout(timer);
  }, [room, request]);
  useEffect(() => room.leave, [room]);
  return usePaperRoomState((state) => state.preview);
}

function failureOf(request: PaperRequest, preview: PreviewState): PaperFailure | null {
  if (isNothingAsked(request)) return { code: "sheet/nothing-to-lay" };
  if (preview.kind !== "drawn" || preview.result.ok || !isSameRequest(preview.request, request)) return null;
  return preview.result.failure;
}

interface PreviewProps {
  readonly request: PaperRequest;
  readonly preview: PreviewState;
  readonly failure: PaperFailure | null;
}

/** The whole sheet in small, and how many pages it comes to; or what stands in the way. */
function Preview({ request, preview, failure }: PreviewProps) {
  const isKept = useIsKeptHere();
  const id = useId();
  const room = usePaperRoom();
  const { work, choices } = request;
  const drawn =
    preview.kind === "drawing"
      ? preview.last
      : preview.kind === "drawn" && preview.result.ok
        ? preview.result.value
        : null;
  const settled = preview.kind !== "none" && preview.kind !== "drawing" && isSameRequest(preview.request, request);
  const said =
    failure !== null || preview.kind === "broke"
      ? ""
      : drawn === null || !settled
        ? LAYING
        : previewSentence(
            drawn.pages,
            choices.format,
            drawn.map.width,
            drawn.map.height,
            work.unit,
            choices.kind,
            drawn.before,
          );
  return (
    <section className="sheet-preview" aria-labelledby={`${id}-title`} aria-busy={!settled && failure === null}>
      <h3 id={`${id}-title`}>{say.whatItComesTo}</h3>
      <p role="status" className="sheet-said">
        <Fractions text={said} />
      </p>
      {said === LAYING && <progress className="sheet-laying" aria-label={LAYING} />}
      {failure !== null && <Trouble words={paperFailureWords(failure, work.unit)} />}
      {preview.kind === "broke" && failure === null && (
        <Trouble words={brokenWords(preview.why, isKept)}>
          <button type="button" className="button" onClick={() => room.preview(request)}>
            {say.tryAgain}
          </button>
        </Trouble>
      )}
      {drawn !== null &&
        failure === null &&
        drawn.notes.map((note) => (
          <p key={note} className="field-hint">
            {note}
          </p>
        ))}
      {drawn !== null && failure === null && preview.kind !== "broke" && (
        <div className="sheet-map-place kept-paper" data-settled={settled || undefined}>
          <SheetMap page={drawn.map} label={say.pagesMap} />
        </div>
      )}
    </section>
  );
}

interface BeforeMakingProps {
  readonly work: Work;
  readonly plan: Plan;
  readonly request: PaperRequest;
}

/** Said before a file is made: what does not hold yet, and how to print. */
function BeforeMaking({ work, plan, request }: BeforeMakingProps) {
  const id = useId();
  const { failing } = planDoubts(plan, work.unit);
  return (
    <>
      {request.choices.size === null && failing.length > 0 && (
        <div className="note doubt">
          <p>{beforeCuttingSentence(failing.length)}</p>
          <ul>
            {failing.map((sentence) => (
              <li key={sentence}>
                <Fractions text={sentence} />
              </li>
            ))}
          </ul>
        </div>
      )}
      <section className="how-to-print" aria-labelledby={`${id}-how`}>
        <h3 id={`${id}-how`}>{say.whenYouPrintIt}</h3>
        <ol>
          {howToPrint(request.choices.format, request.choices.kind).map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </section>
    </>
  );
}
