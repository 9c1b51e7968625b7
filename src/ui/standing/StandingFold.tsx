import "./standing.css";
import { useEffect, useId, useMemo, useRef, useState } from "react";
import type { Work } from "../../core/decisions/work";
import type { Plan } from "../../core/plan/plan";
import { isOfWearer, keptGarments, type KeptGarment } from "../../core/standing/keptGarments";
import { forgottenKey, learntFrom, type LearntOf } from "../../core/standing/learnt";
import { standingAlterations, standingOffers, type StandingOffer } from "../../core/standing/standing";
import {
  begunFromSentence,
  dartEndSentence,
  easeSentence,
  offerStateWords,
  STANDING_WORDS,
  standingSentence,
  standingTitle,
} from "../../words/standing";
import { Fractions } from "../fields/Fractions";
import { useSaid } from "../session/useSaid";
import { useRunAll } from "../session/useRunAll";
import { useWorks } from "../works/useWorks";
import { useFoundWorks } from "../works/useFoundWorks";
import * as say from "../../words/standing";

interface StandingFoldProps {
  readonly plan: Plan;
  readonly work: Work;
}

/** What this wearer's body asked for in every garment that fits, each with one tap to take it; and how she likes them. */
export function StandingFold({ plan, work }: StandingFoldProps) {
  const { entries, openId } = useWorks();
  const wearer = (work.wearer ?? "").trim().toLowerCase();
  // The list tells whom each is for: only hers are read.
  const hers = entries.filter(
    (entry) => entry.id !== openId && wearer !== "" && (entry.wearer ?? "").trim().toLowerCase() === wearer,
  );
  const others = useFoundWorks(hers);
  const garments = useMemo(() => {
    const here = { id: openId, work };
    return keptGarments([here, ...(others ?? [])].filter((one) => isOfWearer(here, one)));
  }, [openId, work, others]);
  const id = useId();
  if (garments.length === 0 && work.begunFrom === undefined) return null;
  return (
    <section className="from-measures" aria-labelledby={garments.length > 0 ? id : undefined}>
      {work.begunFrom !== undefined && (
        <p className="aside">{begunFromSentence(work.begunFrom.name, work.begunFrom.day)}</p>
      )}
      {garments.length > 0 && (
        <details className="standing">
          <summary>
            <h3 id={id}>{STANDING_WORDS.title}</h3>
          </summary>
          <Offers garments={garments} plan={plan} work={work} />
          <Likes garments={garments} work={work} />
        </details>
      )}
    </section>
  );
}

interface OfGarments {
  readonly garments: readonly KeptGarment[];
  readonly work: Work;
}

function Offers({ garments, plan, work }: OfGarments & { readonly plan: Plan }) {
  const { unit } = work;
  const standing = useMemo(() => standingAlterations(garments), [garments]);
  const offers = useMemo(() => standingOffers(standing, work, plan), [standing, work, plan]);
  const open = offers.filter(({ state }) => state === "offered");
  const runAll = useRunAll();
  const list = useRef<HTMLUListElement>(null);
  const tell = useSaid((said) => said.say);
  const take = (taken: readonly StandingOffer[]): void => {
    runAll(taken.map(({ command }) => command));
    tell(say.inTheLedger(taken.map((one) => standingTitle(one.standing, unit)).join("; ")));
    // The row changes, and the button that was pressed goes with it.
    list.current?.focus({ preventScroll: true });
  };
  const leave = ({ standing: { key } }: StandingOffer, isLeft: boolean): void =>
    runAll([{ kind: "leaveStanding", key, isLeft }]);
  return (
    <>
      {open.length > 1 && (
        <button type="button" className="button small" onClick={() => take(open)}>
          {STANDING_WORDS.putAll}
        </button>
      )}
      {offers.length > 0 && (
        <ul ref={list} tabIndex={-1} className="proposals">
          {offers.map((offer) => {
            const title = standingTitle(offer.standing, unit);
            const { key } = offer.standing;
            return (
              <li key={key} className="proposal">
                <div className="proposal-head">
                  <b>
                    <Fractions text={title} />
                  </b>
                  {offer.state === "offered" && (
                    <span className="standing-actions">
                      <button
                        type="button"
                        className="button small"
                        aria-label={`${STANDING_WORDS.put}: ${title}`}
                        onClick={() => take([offer])}
                      >
                        {STANDING_WORDS.put}
                      </button>
                      <button
                        type="button"
                        className="button quiet small"
                        aria-label={`${STANDING_WORDS.leave}: ${title}`}
                        onClick={() => leave(offer, true)}
                      >
                        {STANDING_WORDS.leave}
                      </button>
                    </span>
                  )}
                  {offer.state === "left" && (
                    <button
                      type="button"
                      className="button quiet small"
                      aria-label={`${STANDING_WORDS.again}: ${title}`}
                      onClick={() => leave(offer, false)}
                    >
                      {STANDING_WORDS.again}
                    </button>
                  )}
                </div>
                <p>
                  <Fractions
                    text={`${standingSentence(offer.standing, unit)}${offer.state === "offered" ? "" : ` ${offerStateWords(offer.state)}`}`}
                  />
                </p>
              </li>
            );
          })}
        </ul>
      )}
      {standing.anew.length > 0 && <p className="aside">{STANDING_WORDS.anew}</p>}
      {standing.blamed.length > 0 && (
        <details className="agreeing">
          <summary>{STANDING_WORDS.blamedTitle}</summary>
          <ul>
            {standing.blamed.map((one) => (
              <li key={one.key}>
                <Fractions text={`${standingTitle(one, unit)}: ${standingSentence(one, unit).toLowerCase()}`} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Likes({ garments, work }: OfGarments) {
  const { unit } = work;
  const { forgotten, forget } = useWorks();
  const [keys, setKeys] = useState<readonly string[]>([]);
  const [said, setSaid] = useState("");
  const runAll = useRunAll();
  useEffect(() => {
    let isOver = false;
    void forgotten().then((known) => {
      if (!isOver) setKeys((now) => [...new Set([...known, ...now])]);
    });
    return () => {
      isOver = true;
    };
  }, [forgotten]);
  const { ease, dartEnds } = useMemo(() => learntFrom(garments, keys), [garments, keys]);
  const status = useRef<HTMLParagraphElement>(null);
  const forgetAll = async (of: LearntOf): Promise<void> => {
    const gone = garments.map((garment) => forgottenKey(of, garment));
    setKeys((now) => [...now, ...gone]);
    status.current?.focus({ preventScroll: true });
    setSaid((await forget(gone)) ? STANDING_WORDS.forgot : STANDING_WORDS.notKept);
  };
  return (
    <>
      <h4>{STANDING_WORDS.likesTitle}</h4>
      <p ref={status} role="status" tabIndex={-1} className="aside">
        {said}
      </p>
      {ease.length > 0 && (
        <>
          <ul className="standing-likes">
            {ease.map((one) => (
              <li key={one.level}>
                <Fractions text={easeSentence(one, unit)} />
              </li>
            ))}
          </ul>
          <p className="standing-actions">
            <button
              type="button"
              className="button small"
              onClick={() =>
                runAll([
                  {
                    kind: "setEaseWanted",
                    ease: Object.fromEntries(ease.map((one) => [one.level, one.ease])),
                  },
                ])
              }
            >
              {STANDING_WORDS.want}
            </button>
            <button type="button" className="button quiet small" onClick={() => void forgetAll("ease")}>
              {STANDING_WORDS.forgetEase}
            </button>
          </p>
        </>
      )}
      {dartEnds.length > 0 && (
        <>
          <ul className="standing-likes">
            {dartEnds.map((one) => (
              <li key={`${one.dart.piece} ${one.dart.dart}`}>
                <Fractions text={dartEndSentence(one, unit)} />
              </li>
            ))}
          </ul>
          <p className="standing-actions">
            <button type="button" className="button quiet small" onClick={() => void forgetAll("dartEnds")}>
              {STANDING_WORDS.forgetEnds}
            </button>
          </p>
        </>
      )}
    </>
  );
}
