import { useEffect, useState, type ReactNode } from "react";
import { notLoadedRemedy } from "../../words/offline";
import { useIsKeptHere } from "../session/pageState";
import { useLaterState, type Later } from "./later";
import { Failed, PartBoundary } from "./PartBoundary";
import * as say from "../../words/page";

export interface PartPlaceProps<T> {
  readonly part: Later<T>;
  /** As a sentence begins: "The table". */
  readonly name: string;
  /** What stands here until it is loaded. */
  readonly placeholder?: ReactNode;
  /** Whether its turn to be loaded has come. */
  readonly inTurn?: boolean;
  readonly children: (value: T) => ReactNode;
}

/** The place of a part that is loaded after the page. What goes wrong in it stays in it. */
export function PartPlace<T>({ part, name, placeholder, inTurn = true, children }: PartPlaceProps<T>) {
  const state = useLaterState(part);
  const [tries, setTries] = useState(0);
  const isKept = useIsKeptHere();
  // Asked for once the page is up, so that what is on it already comes first.
  useEffect(() => {
    if (inTurn) void part.load();
  }, [part, inTurn]);
  if (state.kind === "here") return <PartBoundary name={name}>{children(state.value)}</PartBoundary>;
  if (state.kind === "waiting" && tries === 0) return placeholder === undefined ? <Loading /> : placeholder;
  return (
    <Failed
      title={say.partNotLoaded(name)}
      text={notLoadedRemedy(isKept)}
      isTrying={state.kind === "waiting"}
      onRetry={() => {
        setTries(tries + 1);
        void part.load();
      }}
      // Some browsers never ask again for what they once failed to get, and a newer page has put away the old one's parts.
      hasReload={tries > 0}
    />
  );
}

/** Said only where it takes long enough to be wondered at. */
const Loading = () => (
  <p className="part-loading" role="status">
    {say.oneMoment}
  </p>
);
