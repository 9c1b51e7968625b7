/** Puts a part of the page up with a work in it, and gives the store to look into. */
import { render, type RenderResult } from "@testing-library/react";
import userEvent, { type UserEvent } from "@testing-library/user-event";
import type { ReactNode } from "react";
import type { StoreApi } from "zustand";
import type { Work } from "../../src/core/decisions/work";
import { invariant } from "../../src/core/result";
import type { Library } from "../../src/store/library";
import { createWorkSession } from "../../src/store/workSession";
import { createWorkStore } from "../../src/store/workStore";
import type { WorkStore } from "../../src/ui/session/useWork";
import { useShowing, type Showing } from "../../src/ui/session/ofWork";
import { usePageState } from "../../src/ui/session/pageState";
import { useViewState, type ViewState } from "../../src/ui/session/viewState";
import { WorkSessionProvider } from "../../src/ui/works/WorkSessionProvider";
import { sampleWork } from "../support/sampleWork";
import { alone, type AloneOptions } from "../support/surroundings";

export interface Rendered extends RenderResult {
  readonly store: WorkStore;
  readonly user: UserEvent;
  readonly work: () => Work;
  /** The showing of the work that is open now: what the page remembers of it hangs on it. */
  readonly showing: () => Showing;
}

let shown: Showing | null = null;

/** What the page remembers of the work that was rendered last, its selection and the like. */
export const viewNow = (): StoreApi<ViewState> => useViewState.of(invariant(shown, "a work on the page"));

/** Without a library nothing is kept, which is all that most parts of the page need. */
export async function renderWork(
  ui: ReactNode,
  change: Partial<Work> = {},
  library: Library | null = null,
  around: Omit<AloneOptions, "library"> = {},
): Promise<Rendered> {
  usePageState.setState(usePageState.getInitialState());
  window.location.hash = "";
  const first = { ...sampleWork, ...change };
  const store = createWorkStore(first);
  const session = createWorkSession(store, alone({ ...around, library }), first);
  await session.start();
  const Probe = () => {
    shown = useShowing();
    return null;
  };
  const result = render(
    <WorkSessionProvider store={store} session={session}>
      <Probe />
      {ui}
    </WorkSessionProvider>,
  );
  return {
    ...result,
    store,
    user: userEvent.setup(),
    work: () => store.getState().work,
    showing: () => invariant(shown, "a work on the page"),
  };
}
