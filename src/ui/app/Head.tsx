import { OFFLINE_WORDS } from "../../words/offline";
import { WORKS_WORDS } from "../../words/works";
import { TextField } from "../fields/TextField";
import { PartBoundary } from "../parts/PartBoundary";
import { useWorks } from "../works/useWorks";
import { WorksMenu } from "../works/WorksMenu";
import { UndoRedo } from "./UndoRedo";
import { UnitSwitch } from "./UnitSwitch";
import { useThumbBar } from "../session/useScreen";
import { usePageState } from "../session/pageState";
import { useSettledWork } from "../session/useWork";
import * as say from "../../words/page";

/** Each tool stands by itself: whichever fails, the others are there. */
export function Head() {
  const inBar = useThumbBar();
  return (
    <header className="head">
      <h1 className="brand">{say.bodicewright}</h1>
      <div className="head-work">
        <PartBoundary name={say.PARTS.workName} isSmall>
          <WorkName />
        </PartBoundary>
        <PartBoundary name={say.PARTS.works} isSmall answer={<DownloadWork />}>
          <WorksMenu />
        </PartBoundary>
        <PartBoundary name={say.PARTS.storage} isSmall>
          <StorageState />
        </PartBoundary>
      </div>
      <div className="head-tools">
        {!inBar && (
          <PartBoundary name={say.undoAndRedo} isSmall>
            <UndoRedo />
          </PartBoundary>
        )}
        <PartBoundary name={say.PARTS.unit} isSmall>
          <UnitSwitch />
        </PartBoundary>
      </div>
    </header>
  );
}

function WorkName() {
  const name = useSettledWork((work) => work.name);
  return (
    <TextField
      className="work-name"
      label={say.nameOfWork}
      labelHidden
      field="work.name"
      value={name}
      set={(text) => ({ kind: "setName", name: text })}
    />
  );
}

function DownloadWork() {
  const { download } = useWorks();
  return (
    <button type="button" className="button small" onClick={download}>
      {WORKS_WORDS.download}
    </button>
  );
}

/** Where saving fails, the work can be had as a file right there. */
function StorageState() {
  const { storage } = useWorks();
  const isNew = usePageState((page) => page.offline === "new");
  const hasFailed = storage.state === "failed";
  return (
    <div className={hasFailed ? "storage-failed" : undefined}>
      {/* That all is well is there to be read; only what is not is told. */}
      <p
        key={hasFailed ? "failed" : "well"}
        className="storage"
        role={hasFailed ? "alert" : "status"}
        aria-live={hasFailed ? undefined : "off"}
        data-state={storage.state}
      >
        {storage.words}
        {isNew && storage.state === "saved" && ` · ${OFFLINE_WORDS.fromNowOn}`}
      </p>
      {hasFailed && <DownloadWork />}
    </div>
  );
}
