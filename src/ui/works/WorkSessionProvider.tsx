import { useEffect, useMemo, useState, type ReactNode } from "react";
import { useStore } from "zustand";
import type { Work } from "../../core/decisions/work";
import { blankPattern, blankWork } from "../../document/blank";
import type { WorkSession } from "../../store/workSession";
import { createShowing, ShowingProvider } from "../session/ofWork";
import { WorkStoreProvider, type WorkStore } from "../session/useWork";
import { offerFile } from "./offerFile";
import { WorksProvider, type Works } from "./useWorks";

export interface WorkSessionProviderProps {
  readonly store: WorkStore;
  readonly session: WorkSession;
  readonly children: ReactNode;
}

/** Gives the page the open work and everything that can be done with whole works. */
export function WorkSessionProvider({ store, session, children }: WorkSessionProviderProps) {
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
      blankPattern: blankPattern(),
      open: (id: string) => {
        void session.open(id);
      },
      startBlank: () => {
        void session.create(blankWith(store.getState().work));
        window.location.hash = "#tape";
      },
      startDemo: (demo: Work) => {
        void session.create(demo);
      },
      copy: (id: string) => void session.copy(id),
      remove: (id: string) => {
        void session.remove(id);
      },
      download: () => offerFile(session.file()),
      openFile: async (file: File) => {
        await session.openText(await file.text(), file.name);
      },
      dismiss: session.dismiss,
    }),
    [session, store],
  );
  const works: Works = useMemo(
    () => ({ ...actions, entries, openId, storage, messages }),
    [actions, entries, openId, storage, messages],
  );

  return (
    <WorksProvider value={works}>
      <WorkStoreProvider value={store}>
        {/* All that the page remembers of the open work goes with it: what is in fields, what is selected, what was answered. */}
        <Shown key={shown}>{children}</Shown>
      </WorkStoreProvider>
    </WorksProvider>
  );
}

/** One showing of one work. */
function Shown({ children }: { readonly children: ReactNode }) {
  const [showing] = useState(createShowing);
  useEffect(() => {
    showing.stay();
    return showing.leave;
  }, [showing]);
  return (
    <ShowingProvider value={showing}>
      <div className="app-root">{children}</div>
    </ShowingProvider>
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
