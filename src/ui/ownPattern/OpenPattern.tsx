import { useEffect, useRef, useState, type ChangeEvent } from "react";
import type { FileDrawing } from "../../core/decisions/fileDrawing";
import { LIMITS } from "../../core/decisions/limits";
import { openingFailureSentence, OWN_WORDS, readingWords, unchanged } from "../../words/ownPattern";
import { readingFailureSentence } from "../../words/reading";
import { usePageState } from "../session/pageState";
import { useRun } from "../session/useWork";
import { useOwnView } from "./ownView";
import { setOwn } from "./useOwn";
import { openPatternReader, readPatternApart, type OpenPatternReader, type PatternFailure } from "./readPatternApart";

type Opening =
  | { readonly kind: "none" }
  | { readonly kind: "reading"; readonly file: string; readonly stop: () => void };

export interface OpenPatternProps {
  readonly label: string;
  /** Whether it is all that there is to do. */
  readonly isMain: boolean;
  readonly reader?: OpenPatternReader;
}

/** Opens a file by its button, or by its being dropped on the page. */
export function OpenPattern({ label, isMain, reader = openPatternReader }: OpenPatternProps) {
  const [opening, setOpening] = useState<Opening>({ kind: "none" });
  const input = useRef<HTMLInputElement>(null);
  const run = useRun();
  const beginAfresh = useOwnView((view) => view.beginAfresh);
  const refuse = useOwnView((view) => view.refuse);
  const going = useRef<AbortController | null>(null);

  const take = (file: string, drawing: FileDrawing): void => {
    run(setOwn({ file: file.slice(0, LIMITS.text), drawing, pieces: [] }));
    beginAfresh();
  };

  const read = async (file: File): Promise<void> => {
    going.current?.abort();
    const stop = new AbortController();
    going.current = stop;
    refuse(null);
    setOpening({ kind: "reading", file: file.name, stop: () => stop.abort() });
    const answer = await readPatternApart(file, reader, stop.signal);
    // Another one was begun, or nobody waits any more.
    if (going.current !== stop) return;
    setOpening({ kind: "none" });
    if (answer === null) return;
    if (answer.ok) take(file.name, answer.value);
    else refuse(unchanged(refusalSentence(answer.failure)));
  };

  const isOver = useFileHeld();
  useDropped((file) => void read(file));
  useEffect(
    () => () => {
      going.current?.abort();
      going.current = null;
    },
    [],
  );

  const choose = ({ target }: ChangeEvent<HTMLInputElement>): void => {
    const [file] = target.files ?? [];
    if (file !== undefined) void read(file);
    // The same file again is a choice too.
    target.value = "";
  };

  return (
    <div className="own-open">
      <div className="actions">
        <button
          type="button"
          className={isMain ? "button main" : "button small"}
          // Not disabled: it would lose the focus.
          aria-disabled={opening.kind === "reading"}
          onClick={() => opening.kind !== "reading" && input.current?.click()}
        >
          {label}
        </button>
        {opening.kind === "reading" && (
          <button type="button" className={isMain ? "button" : "button small"} onClick={opening.stop}>
            {OWN_WORDS.giveUp}
          </button>
        )}
      </div>
      <input
        ref={input}
        type="file"
        accept=".svg,.dxf,image/svg+xml,image/vnd.dxf"
        hidden
        aria-label={OWN_WORDS.fileLabel}
        onChange={choose}
      />
      <p className="field-hint" role="status">
        {opening.kind === "reading" ? readingWords(opening.file) : ""}
      </p>
      {isOver && (
        <p className="own-drop" aria-hidden="true">
          {OWN_WORDS.dropHere}
        </p>
      )}
    </div>
  );
}

function refusalSentence(failure: PatternFailure): string {
  switch (failure.code) {
    case "opening/too-large":
    case "opening/too-slow":
    case "opening/out-of-reach":
    case "opening/broke":
      return openingFailureSentence(failure);
    default:
      return readingFailureSentence(failure);
  }
}

/** Takes the file that was dropped, wherever on the page and whenever that was. */
function useDropped(take: (file: File) => void): void {
  const dropped = usePageState((page) => page.dropped);
  const drop = usePageState((page) => page.drop);
  const latest = useRef(take);
  useEffect(() => {
    latest.current = take;
  });
  useEffect(() => {
    if (dropped === null) return;
    drop(null);
    latest.current(dropped);
  }, [dropped, drop]);
}

/** Whether a file is held over the page. */
function useFileHeld(): boolean {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const onOver = (event: DragEvent): void => setOver(event.dataTransfer?.types.includes("Files") === true);
    const onLeave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (): void => setOver(false);
    window.addEventListener("dragover", onOver);
    window.addEventListener("dragleave", onLeave);
    window.addEventListener("drop", onDrop);
    return () => {
      window.removeEventListener("dragover", onOver);
      window.removeEventListener("dragleave", onLeave);
      window.removeEventListener("drop", onDrop);
    };
  }, []);
  return isOver;
}
