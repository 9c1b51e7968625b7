import { useDeferredValue, useEffect, useRef } from "react";
import type { Message } from "../../store/sessionState";
import { useWorks } from "../works/useWorks";
import * as say from "../../words/page";

/** What passes: a work that was put in the bin and can come back, a file that could not be opened. */
export function Messages() {
  const { messages, dismiss } = useWorks();
  const place = useRef<HTMLDivElement>(null);
  // What is there from the outset is not read out: what is said before the first drawing comes a moment after it.
  const isUp = useDeferredValue(true, false);

  useEffect(() => {
    if (!isUp || messages.length === 0) return undefined;
    const { style } = document.documentElement;
    style.setProperty("--messages-height", `${place.current?.closest<HTMLElement>(".messages")?.offsetHeight ?? 0}px`);
    // What is being typed in is not covered by what comes up meanwhile.
    const { activeElement } = document;
    if (activeElement?.matches("input, textarea, select") === true) activeElement.scrollIntoView({ block: "nearest" });
    return () => void style.removeProperty("--messages-height");
  }, [messages, isUp]);

  return (
    <div ref={place} className="messages-said" role="status">
      {/* The newest first: where there are many, the others are scrolled to. */}
      {(isUp ? messages : []).toReversed().map((message) => (
        <div key={message.id} className="message">
          <p>{message.text}</p>
          <div className="message-actions">
            {message.actions.map(({ label, run }) => (
              <button key={label} type="button" className="button small" onClick={run}>
                {label}
              </button>
            ))}
            <DismissButton message={message} onDismiss={() => dismiss(message.id)} />
          </div>
        </div>
      ))}
    </div>
  );
}

interface DismissButtonProps {
  readonly message: Message;
  readonly onDismiss: () => void;
}

function DismissButton({ message: { text, isOffer, actions }, onDismiss }: DismissButtonProps) {
  // Only what can be done can be done later.
  const label = isOffer === true && actions.length > 0 ? say.later : say.dismiss;
  return (
    <button type="button" className="button small" aria-label={`${label}: ${text}`} onClick={onDismiss}>
      {label}
    </button>
  );
}
