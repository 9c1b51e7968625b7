import { FIT_NAMES, type FitName } from "../../core/decisions/fitNames";
import "./fit.css";
import { useId, useMemo, useState, type ReactNode } from "react";
import type { Plan } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import { FIT_WORDS } from "../../words/alterations/index";
import { fitCount, fitHeading, isFitFound } from "../../words/fitStep";
import { planFailureWords } from "../../words/plan";
import { FailureNote } from "../session/FailureNote";
import { useSettledPlan } from "../session/usePlan";
import { useSettledWork } from "../session/useWork";
import { PartPlace } from "../parts/PartPlace";
import { STANDING } from "../standing/standingPart";
import { FitRow } from "./FitRow";
import { FromMeasures } from "./FromMeasures";
import { appliesTo, fitsByPhase, usesOf } from "../../core/plan/fitEdit";
import * as say from "../../words/fitStep";

/** What a first fitting shows, and what answers it on the pieces. */
export function FitStep() {
  const plan = useSettledPlan();
  const work = useSettledWork((w) => w);
  return (
    <>
      <header className="step-head">
        <h2>{say.fit}</h2>
        <p>{say.fitAbout}</p>
      </header>
      {plan.ok ? (
        <>
          <FromMeasures plan={plan.value} work={work} />
          <PartPlace part={STANDING} name={say.standingTitle} placeholder={null}>
            {(StandingFold) => <StandingFold plan={plan.value} work={work} />}
          </PartPlace>
          <Fits plan={plan.value} work={work} />
        </>
      ) : (
        <FailureNote
          words={planFailureWords(plan.failure, work.unit, work.pattern.chart.sizes.length)}
          picks={work.picks}
        />
      )}
    </>
  );
}

function Fits({ plan, work }: { readonly plan: Plan; readonly work: Work }) {
  const id = useId();
  const [typed, setTyped] = useState("");
  // What was in use when she came here stands first; a row does not jump there from under her hand.
  const [first] = useState(() => FIT_NAMES.filter((fit) => usesOf(work, fit).length > 0));
  const here = useMemo(() => FIT_NAMES.filter((fit) => appliesTo(plan, fit)), [plan]);
  // What is in use stays even where the garment no longer has what it was made on, so that it can be taken out.
  const shown = FIT_NAMES.filter((fit) => here.includes(fit) || usesOf(work, fit).length > 0);
  const elsewhere = FIT_NAMES.filter((fit) => !shown.includes(fit));
  const search = typed.trim();
  const found = (fit: FitName): boolean => search === "" || isFitFound(fit, search);
  const inUse = shown.filter((fit) => first.includes(fit) && found(fit));
  const others = shown.filter((fit) => !first.includes(fit) && found(fit));
  const row = (fit: FitName) => <FitRow key={fit} fit={fit} plan={plan} work={work} />;
  return (
    <>
      <div className="field fit-search">
        <label htmlFor={id} className="field-label">
          {say.whatDoYouSee}
        </label>
        <input
          id={id}
          className="field-input"
          type="search"
          autoComplete="off"
          autoCapitalize="none"
          enterKeyHint="search"
          placeholder={say.seenExamples}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        <p role="status" className="field-hint">
          {search === "" ? "" : fitCount(inUse.length + others.length)}
        </p>
      </div>
      {inUse.length > 0 && (
        <section className="fit-group" aria-labelledby={`${id}-used`}>
          <h3 id={`${id}-used`}>{say.inUseHead}</h3>
          <ul className="fits">{inUse.map(row)}</ul>
        </section>
      )}
      {fitsByPhase(others).map(({ phase, fits }) => (
        <FitGroup key={phase} title={fitHeading(phase)} fits={fits} searched={search !== ""}>
          {fits.map(row)}
        </FitGroup>
      ))}
      {search === "" && elsewhere.length > 0 && (
        <details className="aside">
          <summary>{say.notOnThisStyle(elsewhere.length)}</summary>
          <p>{elsewhere.map((fit) => FIT_WORDS[fit].name).join("; ")}.</p>
        </details>
      )}
    </>
  );
}

interface FitGroupProps {
  readonly title: string;
  readonly fits: readonly FitName[];
  /** While something is searched for, what was found is in view. */
  readonly searched: boolean;
  readonly children: ReactNode;
}

/** One heading and the names under it; what each looks like on the body folds out. */
function FitGroup({ title, fits, searched, children }: FitGroupProps) {
  const [isOpen, setOpen] = useState(false);
  return (
    <section className="fit-group" aria-label={title}>
      <details open={isOpen || searched} onToggle={(event) => !searched && setOpen(event.currentTarget.open)}>
        <summary>
          <h3>{title}</h3>
          <span className="aside fit-names">{fits.map((fit) => FIT_WORDS[fit].name).join(" · ")}</span>
        </summary>
        <ul className="fits">{children}</ul>
      </details>
    </section>
  );
}
