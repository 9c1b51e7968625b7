import { useEffect, useMemo, type ReactNode } from "react";
import { useStore } from "zustand";
import type { Work } from "../../core/decisions/work";
import { blankPattern, blankWork } from "../../document/blank";
import type { WorkSession } from "../../store/workSession";
import { useViewState } from "../app/viewState";
import { useChoices } from "../paper/choicesState";
import { WorkStoreProvider, type WorkStore } from "../app/useWork";
import { WorksProvider, type Works } from "./useWorks";

export interface WorkSessionProviderProps {
  readonly store: WorkStore;
  readonly session: WorkSession;
  readonly demos: readonly Work[];
  readonly children: ReactNode;
}

/** Gives the page the open work and everything that can be done with whole works. */
export function WorkSessionProvider({ store, session, demos, children }: WorkSessionProviderProps) {
  const { entries, openId, shown, storage, messages } = useStore(session.state);

  useEffect(() => {
    // The last change must not be lost with the page.
    const keepNow = (): void => {
      if (document.visibilityState === "hidden") void session.flush();
    };
    document.addEventListener("visibilitychange", keepNow);
    window.addEventListener("pagehide", session.pageIsClosing);
    return () => {
      document.removeEventListener("visibilitychange", keepNow);
      window.removeEventListener("pagehide", session.pageIsClosing);
    };
  }, [session]);

  const actions = useMemo(
    () => ({
      demos,
      blankPattern: blankPattern(),
      open: (id: string) => {
        forgetView();
        void session.open(id);
      },
      startBlank: () => {
        forgetView();
        void session.create(blankWith(store.getState().work));
        window.location.hash = "#tape";
      },
      startDemo: (demo: Work) => {
        forgetView();
        void session.create(demo);
      },
      copy: (id: string) => void session.copy(id),
      remove: (id: string) => {
        forgetView();
        void session.remove(id);
      },
      download: () => offerFile(session.file()),
      openFile: async (file: File) => {
        forgetView();
        await session.openText(await file.text(), file.name);
      },
      dismiss: session.dismiss,
    }),
    [demos, session, store],
  );
  const works: Works = useMemo(
    () => ({ ...actions, entries, openId, storage, messages }),
    [actions, entries, openId, storage, messages],
  );

  return (
    <WorksProvider value={works}>
      <WorkStoreProvider value={store}>
        {/* Fields keep what is being typed; another work starts them afresh. */}
        <div key={shown} className="app-root">
          {children}
        </div>
      </WorkStoreProvider>
    </WorksProvider>
  );
}

/** A blank work for the same hands: their unit, and the paper and printer they have. */
function blankWith({ unit, sheetFormat, printerMargin }: Work): Work {
  return {
    ...blankWork(unit),
    ...(sheetFormat === undefined ? {} : { sheetFormat }),
    ...(printerMargin === undefined ? {} : { printerMargin }),
  };
}

/** What was selected belongs to the work that was open. */
function forgetView(): void {
  const { selectDart, lightSlip } = useViewState.getState();
  selectDart(null);
  lightSlip(null);
  useChoices.getState().reset();
}

function offerFile({ name, text }: { readonly name: string; readonly text: string }): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
