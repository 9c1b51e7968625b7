import "./parts.css";
import { Component, useEffect, useLayoutEffect, useRef, useState, type ReactNode } from "react";
import { useSettledWork } from "../session/useWork";
import { useLaterState, type Later } from "./later";

export interface PartPlaceProps<T> {
  readonly part: Later<T>;
  /** As a sentence begins: "The table". */
  readonly name: string;
  /** What stands here until it is loaded. */
  readonly placeholder?: ReactNode;
  /** Whether its turn to be loaded has come. */
  readonly inTurn?: boolean;
  readonly children: (value: T) => ReactNode;
}

/** The place of a part that is loaded after the page. What goes wrong in it stays in it. */
export function PartPlace<T>({ part, name, placeholder, inTurn = true, children }: PartPlaceProps<T>) {
  const state = useLaterState(part);
  const [tries, setTries] = useState(0);
  // Asked for once the page is up, so that what is on it already comes first.
  useEffect(() => {
    if (inTurn) void part.load();
  }, [part, inTurn]);
  if (state.kind === "here") return <PartBoundary name={name}>{children(state.value)}</PartBoundary>;
  if (state.kind === "waiting" && tries === 0) return placeholder === undefined ? <Loading /> : placeholder;
  return (
    <Failed
      title={`${name} could not be loaded.`}
      text="Your work is kept, and the rest of the page works. See whether you are connected."
      isTrying={state.kind === "waiting"}
      onRetry={() => {
        setTries(tries + 1);
        void part.load();
      }}
      // Some browsers never ask again for what they once failed to get, and a newer page has put away the old one's parts.
      hasReload={tries > 0}
    />
  );
}

/** Said only where it takes long enough to be wondered at. */
const Loading = () => (
  <p className="part-loading" role="status">
    One moment…
  </p>
);

interface PartBoundaryProps {
  readonly name: string;
  readonly children: ReactNode;
}

class PartBoundary extends Component<PartBoundaryProps, { readonly isBroken: boolean }> {
  override state = { isBroken: false };

  static getDerivedStateFromError() {
    return { isBroken: true };
  }

  readonly retry = (): void => this.setState({ isBroken: false });

  override render() {
    const { name, children } = this.props;
    return this.state.isBroken ? <Broken name={name} onRetry={this.retry} /> : children;
  }
}

/** Tries again by itself as soon as the work is another one, as after undo. */
function Broken({ name, onRetry }: { readonly name: string; readonly onRetry: () => void }) {
  const work = useSettledWork((current) => current);
  const before = useRef(work);
  useEffect(() => {
    if (work !== before.current) onRetry();
  }, [work, onRetry]);
  return (
    <Failed
      title={`${name} cannot be shown: something in it went wrong.`}
      text="Your work is kept, and the rest of the page works. If it does not help to try again, undo what you did last."
      isTrying={false}
      onRetry={onRetry}
    />
  );
}

interface FailedProps {
  readonly title: string;
  readonly text: string;
  readonly isTrying: boolean;
  readonly onRetry: () => void;
  /** Whether to load the whole page again is offered too. */
  readonly hasReload?: boolean;
}

function Failed({ title, text, isTrying, onRetry, hasReload = false }: FailedProps) {
  const button = useRef<HTMLButtonElement>(null);
  // Whoever works by keys is not left nowhere when the button goes.
  useLayoutEffect(() => {
    const pressed = button.current;
    const around = pressed?.closest<HTMLElement>("main, section, aside");
    return () => {
      if (pressed !== document.activeElement || around === null || around === undefined) return;
      if (!around.hasAttribute("tabindex")) around.tabIndex = -1;
      around.focus({ preventScroll: true });
    };
  }, []);
  return (
    <div className="note bad part-failed" role="alert">
      <p>
        <strong>{title}</strong> {text}
      </p>
      {/* Still to be reached while it is busy, so that the focus stays where it is. */}
      <button
        ref={button}
        type="button"
        className="button"
        aria-disabled={isTrying}
        onClick={isTrying ? undefined : onRetry}
      >
        {isTrying ? "Trying…" : "Try again"}
      </button>
      {hasReload && !isTrying && (
        <button type="button" className="button" onClick={() => window.location.reload()}>
          Load the whole page again
        </button>
      )}
    </div>
  );
}
