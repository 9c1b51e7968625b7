import { useEffect, useRef, useState } from "react";
import { STEPS, usePageState, type Step } from "../session/pageState";
import * as say from "../../words/page";

/** The running stitch that leads through the work. Sewn up to where the wearer is, tacked from there on. */
export function Thread() {
  const step = usePageState((page) => page.step);
  const at = STEPS.indexOf(step);
  const { strip, more, look } = useStrip(step);
  return (
    <nav className="thread" aria-label={say.steps}>
      <ol ref={strip} data-more={more} onScroll={look}>
        {STEPS.map((name, index) => (
          <li key={name} data-sewn={index <= at ? "" : undefined} data-here={name === step ? "" : undefined}>
            <a href={`#${name}`} aria-current={name === step ? "step" : undefined}>
              <svg
                className="stitch"
                viewBox="0 0 120 22"
                preserveAspectRatio="none"
                aria-hidden="true"
                focusable="false"
              >
                <path
                  d={index % 2 === 0 ? "M0 11 C30 4 90 4 120 11" : "M0 11 C30 18 90 18 120 11"}
                  vectorEffect="non-scaling-stroke"
                />
              </svg>
              {name === step && <Needle low={index % 2 !== 0} />}
              <span className="thread-title">{say.stepTitles[name]}</span>
              <span className="thread-about">{say.stepAbout[name]}</span>
            </a>
          </li>
        ))}
      </ol>
    </nav>
  );
}

/** Where there is no room for all steps the strip scrolls: the one she is at is brought into it, and where more follows is told. */
function useStrip(step: Step) {
  const strip = useRef<HTMLOListElement>(null);
  const [more, setMore] = useState<More>();
  useEffect(() => {
    const list = strip.current;
    if (list === null) return undefined;
    const show = (): void => {
      const here = list.children[STEPS.indexOf(step)];
      if (here instanceof HTMLElement) list.scrollLeft = here.offsetLeft - (list.clientWidth - here.offsetWidth) / 2;
      setMore(moreOf(list));
    };
    show();
    window.addEventListener("resize", show);
    return () => window.removeEventListener("resize", show);
  }, [step]);
  return { strip, more, look: (): void => setMore(strip.current === null ? undefined : moreOf(strip.current)) };
}

type More = "before" | "after" | "both" | undefined;

function moreOf({ scrollLeft, clientWidth, scrollWidth }: HTMLElement): More {
  const before = scrollLeft > 1;
  const after = scrollLeft + clientWidth < scrollWidth - 1;
  return before && after ? "both" : before ? "before" : after ? "after" : undefined;
}

function Needle({ low }: { readonly low: boolean }) {
  return (
    <svg
      className="needle"
      data-low={low ? "" : undefined}
      viewBox="0 0 58 10"
      width="58"
      height="10"
      aria-hidden="true"
      focusable="false"
    >
      <path d="M2 5 C2 2.6 6 2.4 12 2.8 L57 5 L12 7.2 C6 7.6 2 7.4 2 5 Z" />
      <path className="needle-eye" d="M5.5 5 L13 5" />
    </svg>
  );
}
