import { PartPlace } from "../parts/PartPlace";
import { useSettledWork } from "../session/useWork";
import { VERSIONS } from "./versionsPart";
import * as say from "../../words/versionsPart";

/** Versions of the work, once there is a trial to go back to. */
export function Versions() {
  const hasTrials = useSettledWork(({ trials }) => trials !== undefined && trials.length > 0);
  if (!hasTrials) return null;
  return (
    <div className="part-own" tabIndex={-1}>
      <PartPlace part={VERSIONS} name={say.theVersions}>
        {(View) => <View />}
      </PartPlace>
    </div>
  );
}
