import { useEffect } from "react";
import { useStore } from "zustand";
import { canRedo, canUndo, redo, undo } from "../../store/workStore";
import { useWorkStore } from "../session/useWork";
import * as say from "../../words/page";

/** In a field the keys belong to the text being typed. */
function isTyping(target: EventTarget | null): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.isContentEditable || target instanceof HTMLTextAreaElement) return true;
  return target instanceof HTMLInputElement && !["radio", "checkbox", "range", "button"].includes(target.type);
}

export function UndoRedo() {
  const store = useWorkStore();
  const hasPast = useStore(store, canUndo);
  const hasFuture = useStore(store, canRedo);

  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent): void => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || isTyping(event.target)) return;
      const key = event.key.toLowerCase();
      if (key !== "z" && key !== "y") return;
      event.preventDefault();
      if (key === "y" || event.shiftKey) redo(store);
      else undo(store);
    };
    document.addEventListener("keydown", onKeyDown);
    return () => document.removeEventListener("keydown", onKeyDown);
  }, [store]);

  return (
    <div className="undo-redo" role="group" aria-label={say.undoAndRedo}>
      <button
        type="button"
        className="button quiet icon"
        // Not disabled: after the last step it would lose the focus.
        aria-disabled={!hasPast}
        onClick={() => undo(store)}
        aria-label={say.undo}
        title={say.undoKeys}
      >
        <Arrow />
        <span className="bar-word" aria-hidden="true">
          {say.undo}
        </span>
      </button>
      <button
        type="button"
        className="button quiet icon"
        aria-disabled={!hasFuture}
        onClick={() => redo(store)}
        aria-label={say.redo}
        title={say.redoKeys}
      >
        <Arrow mirrored />
        <span className="bar-word" aria-hidden="true">
          {say.redo}
        </span>
      </button>
    </div>
  );
}

function Arrow({ mirrored }: { readonly mirrored?: boolean }) {
  return (
    <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false">
      <g
        transform={mirrored === true ? "matrix(-1 0 0 1 20 0)" : undefined}
        fill="none"
        stroke="currentColor"
        strokeWidth="1.8"
        strokeLinecap="round"
        strokeLinejoin="round"
      >
        <path d="M7 4 L3 8 L7 12" />
        <path d="M3 8 L11 8 C15.5 8 17 11 17 13 C17 15 15.8 16.4 14.4 16.8" strokeDasharray="3.4 2.6" />
      </g>
    </svg>
  );
}
