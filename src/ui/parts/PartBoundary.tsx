import "./parts.css";
import { Component, useEffect, useLayoutEffect, useRef, type ReactNode } from "react";
import { useSettledWork } from "../session/useWork";
import * as say from "../../words/page";

export interface PartBoundaryProps {
  /** As a sentence begins: "The table". */
  readonly name: string;
  /** Whether it is one of several in a row, with no room for much to say. */
  readonly isSmall?: boolean;
  /** What else can be done about it, as where the part is the way to something that is wanted all the more now. */
  readonly answer?: ReactNode;
  readonly children: ReactNode;
}

interface PartBoundaryState {
  readonly isBroken: boolean;
  readonly tries: number;
}

/** What goes wrong in a part of the page stays in it. */
export class PartBoundary extends Component<PartBoundaryProps, PartBoundaryState> {
  override state: PartBoundaryState = { isBroken: false, tries: 0 };

  static getDerivedStateFromError(): Partial<PartBoundaryState> {
    return { isBroken: true };
  }

  readonly heal = (): void => this.setState({ isBroken: false });

  readonly retry = (): void => this.setState(({ tries }) => ({ isBroken: false, tries: tries + 1 }));

  override render() {
    const { name, isSmall = false, answer, children } = this.props;
    const { isBroken, tries } = this.state;
    if (!isBroken) return children;
    return (
      <Broken name={name} isSmall={isSmall} onHeal={this.heal} onRetry={this.retry} hasReload={tries > 0}>
        {answer}
      </Broken>
    );
  }
}

interface BrokenProps {
  readonly name: string;
  readonly isSmall: boolean;
  readonly onHeal: () => void;
  readonly onRetry: () => void;
  readonly hasReload: boolean;
  readonly children: ReactNode;
}

/** Tries again by itself as soon as the work is another one, as after undo. */
function Broken({ name, isSmall, onHeal, onRetry, hasReload, children }: BrokenProps) {
  const work = useSettledWork((current) => current);
  const before = useRef(work);
  useEffect(() => {
    if (work !== before.current) onHeal();
  }, [work, onHeal]);
  return (
    <Failed
      title={say.partFailed(name)}
      text={isSmall ? say.workIsKept : say.partFailedRemedy}
      isTrying={false}
      onRetry={onRetry}
      hasReload={hasReload}
    >
      {children}
    </Failed>
  );
}

interface FailedProps {
  readonly title: string;
  readonly text: string;
  readonly isTrying: boolean;
  readonly onRetry: () => void;
  /** Whether to load the whole page again is offered too. */
  readonly hasReload?: boolean;
  readonly children?: ReactNode;
}

export function Failed({ title, text, isTrying, onRetry, hasReload = false, children }: FailedProps) {
  const note = useRef<HTMLDivElement>(null);
  // Whoever works by keys is not left nowhere when the button goes: what holds the part is its place.
  useLayoutEffect(() => {
    const going = note.current;
    const place = going?.parentElement;
    return () => {
      if (going === null || place === null || place === undefined || !going.contains(document.activeElement)) return;
      if (!place.hasAttribute("tabindex")) place.tabIndex = -1;
      place.focus({ preventScroll: true });
    };
  }, []);
  return (
    <div ref={note} className="note bad part-failed" role="alert">
      <p>
        <strong>{title}</strong> {text}
      </p>
      <div className="part-failed-answers">
        {/* Still to be reached while it is busy, so that the focus stays where it is. */}
        <button type="button" className="button" aria-disabled={isTrying} onClick={isTrying ? undefined : onRetry}>
          {isTrying ? say.trying : say.tryAgain}
        </button>
        {hasReload && !isTrying && (
          <button type="button" className="button" onClick={() => window.location.reload()}>
            {say.loadWholeAgain}
          </button>
        )}
        {children}
      </div>
    </div>
  );
}
