import { WORKS_WORDS } from "../../words/works";
import { TextField } from "../fields/TextField";
import { useWorks } from "../works/useWorks";
import { WorksMenu } from "../works/WorksMenu";
import { UndoRedo } from "./UndoRedo";
import { UnitSwitch } from "./UnitSwitch";
import { useRun, useSettledWork } from "../session/useWork";

export function Head() {
  const name = useSettledWork((work) => work.name);
  const run = useRun();
  return (
    <header className="head">
      <h1 className="brand">Bodicewright</h1>
      <div className="head-work">
        <TextField
          className="work-name"
          label="Name of this work"
          labelHidden
          value={name}
          onCommit={(text) => run({ kind: "setName", name: text })}
        />
        <WorksMenu />
        <StorageState />
      </div>
      <div className="head-tools">
        <UndoRedo />
        <UnitSwitch />
      </div>
    </header>
  );
}

/** Where saving fails, the work can be had as a file right there. */
function StorageState() {
  const { storage, download } = useWorks();
  const hasFailed = storage.state === "failed";
  return (
    <div className={hasFailed ? "storage-failed" : undefined}>
      <p className="storage" role="status" data-state={storage.state}>
        {storage.words}
      </p>
      {hasFailed && (
        <button type="button" className="button small" onClick={download}>
          {WORKS_WORDS.download}
        </button>
      )}
    </div>
  );
}
