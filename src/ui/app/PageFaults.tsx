import { useEffect, useState } from "react";
import { useWorks } from "../works/useWorks";
import * as say from "../../words/page";

/** What is no fault of ours: something given up on purpose, or what browsers say of sizes that settle a moment later. */
function isFault(thrown: unknown): boolean {
  if (thrown === null || thrown === undefined) return false;
  return !(thrown instanceof DOMException && thrown.name === "AbortError");
}

/** What went wrong outside of what is drawn, as on a press of a button, and would else be seen by nobody. */
export function PageFaults() {
  const [isSaid, setSaid] = useState(false);
  const { download } = useWorks();
  useEffect(() => {
    const onError = ({ error }: ErrorEvent): void => {
      if (isFault(error)) setSaid(true);
    };
    const onRejection = ({ reason }: PromiseRejectionEvent): void => {
      if (isFault(reason)) setSaid(true);
    };
    window.addEventListener("error", onError);
    window.addEventListener("unhandledrejection", onRejection);
    return () => {
      window.removeEventListener("error", onError);
      window.removeEventListener("unhandledrejection", onRejection);
    };
  }, []);
  if (!isSaid) return null;
  return (
    <div className="note bad" role="alert">
      <p>
        <strong>{say.somethingFailed}</strong> {say.somethingFailedRemedy}
      </p>
      <div className="part-failed-answers">
        <button type="button" className="button small" onClick={() => window.location.reload()}>
          {say.loadAgain}
        </button>
        <button type="button" className="button small" onClick={download}>
          {say.downloadWork}
        </button>
        <button type="button" className="button small" onClick={() => setSaid(false)}>
          {say.dismiss}
        </button>
      </div>
    </div>
  );
}
