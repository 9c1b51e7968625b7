/** Puts a part of the page up with a work in it, and gives the store to look into. */
import { render, type RenderResult } from "@testing-library/react";
import userEvent, { type UserEvent } from "@testing-library/user-event";
import type { ReactNode } from "react";
import type { Work } from "../../src/core/decisions/work";
import { demoWorks } from "../../src/document/demo";
import type { Library } from "../../src/store/library";
import { createWorkSession } from "../../src/store/workSession";
import { createWorkStore } from "../../src/store/workStore";
import type { WorkStore } from "../../src/ui/app/useWork";
import { useViewState } from "../../src/ui/app/viewState";
import { WorkSessionProvider } from "../../src/ui/works/WorkSessionProvider";
import { sampleWork } from "../support/sampleWork";

export interface Rendered extends RenderResult {
  readonly store: WorkStore;
  readonly user: UserEvent;
  readonly work: () => Work;
}

/** Without a library nothing is kept, which is all that most parts of the page need. */
export async function renderWork(
  ui: ReactNode,
  change: Partial<Work> = {},
  library: Library | null = null,
): Promise<Rendered> {
  useViewState.setState({ step: "tape", selectedDart: null, litSlip: null, sheet: "checklist" });
  window.location.hash = "";
  const first = { ...sampleWork, ...change };
  const store = createWorkStore(first);
  const session = createWorkSession(store, library, first);
  await session.start();
  const result = render(
    <WorkSessionProvider store={store} session={session} demos={demoWorks()}>
      {ui}
    </WorkSessionProvider>,
  );
  return { ...result, store, user: userEvent.setup(), work: () => store.getState().work };
}
