import { useId } from "react";
import type { LengthUnit } from "../../core/decisions/work";
import type { PaperFailure, PaperFile, PaperKind, PaperRequest } from "../../paper/request";
import {
  brokenWords,
  cancelledSentence,
  FILE_BUTTONS,
  FILE_NAMES,
  fileAbout,
  madeSentence,
  paperFailureWords,
  progressWords,
  STALE_FILE,
  type PaperFailureWords,
} from "../../words/paperChoices";
import { useIsKeptHere } from "../session/pageState";
import { isSameRequest } from "./paperRequest";
import type { MakingState } from "./paperRoom";
import { usePaperRoom, usePaperRoomState } from "./usePaperRoom";
import * as say from "../../words/paperStep";

const FILES: Readonly<Record<PaperKind, readonly PaperFile[]>> = {
  pieces: ["pdf", "svg", "dxf"],
  overlay: ["pdf", "svg"],
};

/** What only pages stand in the way of: a drawing has none. */
const OF_PAGES: ReadonlySet<PaperFailure["code"]> = new Set([
  "sheet/page-too-small",
  "sheet/too-many-pages",
  "sheet/piece-too-wide",
]);

interface MakeFilesProps {
  readonly request: PaperRequest;
  /** Why no pages can be made of it. */
  readonly failure: PaperFailure | null;
}

/** The buttons that make files, what each is for, and how far the making has come. */
export function MakeFiles({ request, failure }: MakeFilesProps) {
  const id = useId();
  const room = usePaperRoom();
  const making = usePaperRoomState((state) => state.making);
  const busy = making.kind === "making";
  const isBlocked = (file: PaperFile): boolean =>
    busy || (failure !== null && (file === "pdf" || !OF_PAGES.has(failure.code)));
  return (
    <section className="make-files" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>{say.makeTheFile}</h3>
      <ul className="make-list">
        {FILES[request.choices.kind].map((file) => (
          <li key={file}>
            {/* Still to be reached while it can do nothing, so that the focus stays where it is. */}
            <button
              type="button"
              className={file === "pdf" ? "button main" : "button"}
              aria-disabled={isBlocked(file)}
              aria-describedby={`${id}-${file}`}
              onClick={() => {
                if (!isBlocked(file)) room.make(request, file);
              }}
            >
              {FILE_BUTTONS[file]}
            </button>
            <p id={`${id}-${file}`}>{fileAbout(file, request.choices.format, request.choices.kind)}</p>
          </li>
        ))}
      </ul>
      <Progress making={making} request={request} unit={request.work.unit} isBlocked={isBlocked} />
    </section>
  );
}

interface ProgressProps {
  readonly making: MakingState;
  readonly request: PaperRequest;
  readonly unit: LengthUnit;
  readonly isBlocked: (file: PaperFile) => boolean;
}

function Progress({ making, request, unit, isBlocked }: ProgressProps) {
  const room = usePaperRoom();
  const isKept = useIsKeptHere();
  const stale = making.kind !== "none" && !isSameRequest(making.request, request);
  return (
    <>
      <p role="status" className="make-status">
        {spoken(making, stale)}
      </p>
      {making.kind === "making" && (
        <div className="make-progress">
          <progress aria-label={say.makingThe(FILE_NAMES[making.file])} value={making.progress.share} max={1} />
          <span>{progressWords(making.progress.stage, making.progress.share)}</span>
          <button type="button" className="button" onClick={room.cancel}>
            {say.cancel}
          </button>
        </div>
      )}
      {making.kind === "made" && (
        <p>
          <button type="button" className="link-button" onClick={room.offerAgain}>
            {say.saveItAgain}
          </button>
        </p>
      )}
      {making.kind === "failed" && !stale && <Trouble words={paperFailureWords(making.failure, unit)} />}
      {making.kind === "broke" && (
        <Trouble words={brokenWords(making.why, isKept)}>
          {FILES[request.choices.kind].includes(making.file) && !isBlocked(making.file) && (
            <button type="button" className="button" onClick={() => room.make(request, making.file)}>
              {say.tryAgain}
            </button>
          )}
        </Trouble>
      )}
    </>
  );
}

/** Said aloud when it begins and when it ends, not at every step between. */
function spoken(making: MakingState, stale: boolean): string {
  const behind = stale ? ` ${STALE_FILE}` : "";
  if (making.kind === "making") return say.makingPart(FILE_NAMES[making.file], behind);
  if (making.kind === "made") return `${madeSentence(making.made.fileName, making.made.pages)}${behind}`;
  return making.kind === "cancelled" && !stale ? cancelledSentence(making.file) : "";
}

interface TroubleProps {
  readonly words: PaperFailureWords;
  readonly children?: React.ReactNode;
}

/** What stands in the way, and what to do about it. */
export function Trouble({ words, children }: TroubleProps) {
  return (
    <div className="note bad" role="alert">
      <p>
        <strong>{words.title}</strong> {words.remedy}
      </p>
      {children}
    </div>
  );
}
