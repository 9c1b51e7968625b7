import { useEffect, useRef, useState, type ChangeEvent } from "react";
import type { FileDrawing } from "../../core/decisions/fileDrawing";
import { LIMITS } from "../../core/decisions/limits";
import { openingFailureSentence, OWN_WORDS, readingWords } from "../../words/ownPattern";
import { useRun } from "../session/useWork";
import { useShowing } from "../session/ofWork";
import { useOwnView } from "./ownView";
import { setOwn } from "./useOwn";
import { openPatternReader, readPatternApart, type OpenPatternReader } from "./readPatternApart";

type Opening =
  | { readonly kind: "none" }
  | { readonly kind: "reading"; readonly file: string; readonly stop: () => void }
  | { readonly kind: "refused"; readonly text: string };

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
  const view = useOwnView.of(useShowing());
  const going = useRef<AbortController | null>(null);

  const take = (file: string, drawing: FileDrawing): void => {
    run(setOwn({ file: file.slice(0, LIMITS.text), drawing, pieces: [] }));
    // What was looked at was in the file before.
    view.setState(view.getInitialState());
    setOpening({ kind: "none" });
  };

  const read = async (file: File): Promise<void> => {
    going.current?.abort();
    const stop = new AbortController();
    going.current = stop;
    setOpening({ kind: "reading", file: file.name, stop: () => stop.abort() });
    const answer = await readPatternApart(file, reader, stop.signal);
    // Another one was begun, or nobody waits any more.
    if (going.current !== stop) return;
    if (answer === null) setOpening({ kind: "none" });
    else if (answer.ok) take(file.name, answer.value);
    else setOpening({ kind: "refused", text: openingFailureSentence(answer.failure) });
  };

  const isOver = useDrop((file) => void read(file));
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
          disabled={opening.kind === "reading"}
          onClick={() => input.current?.click()}
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
      {opening.kind === "refused" && (
        <p className="note bad" role="alert">
          {opening.text}
        </p>
      )}
      {isOver && (
        <p className="own-drop" aria-hidden="true">
          {OWN_WORDS.dropHere}
        </p>
      )}
    </div>
  );
}

/** Takes a file that is dropped anywhere on the page; says whether one is held over it. */
function useDrop(take: (file: File) => void): boolean {
  const [isOver, setOver] = useState(false);
  const latest = useRef(take);
  useEffect(() => {
    latest.current = take;
  });
  useEffect(() => {
    const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes("Files") === true;
    const onOver = (event: DragEvent): void => {
      if (!hasFiles(event)) return;
      // Else the browser would open it in place of the page.
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent): void => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file !== undefined) latest.current(file);
    };
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
