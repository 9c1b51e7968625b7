import { TextField } from "../fields/TextField";
import { useWorks } from "../works/useWorks";
import { WorksMenu } from "../works/WorksMenu";
import { UndoRedo } from "./UndoRedo";
import { UnitSwitch } from "./UnitSwitch";
import { useSettledWork } from "../session/useWork";

export function Head() {
  const name = useSettledWork((work) => work.name);
  return (
    <header className="head">
      <h1 className="brand">Bodicewright</h1>
      <div className="head-work">
        <TextField
          className="work-name"
          label="Name of this work"
          labelHidden
          field="work.name"
          value={name}
          set={(text) => ({ kind: "setName", name: text })}
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

function StorageState() {
  const { storage } = useWorks();
  return (
    <p className="storage" role="status" data-state={storage.state}>
      {storage.words}
    </p>
  );
}
