import { useEffect, useLayoutEffect, useMemo, useRef, useState, type ReactNode } from "react";
import { useStore } from "zustand";
import type { Work } from "../../core/decisions/work";
import { blankWork } from "../../document/blank";
import type { PhotographInFile } from "../../document/photographsFile";
import { photographsNotKept } from "../../words/storage";
import type { WorkSession } from "../../store/workSession";
import { createShowing, ShowingProvider } from "../session/ofWork";
import { WorkStoreProvider, type WorkStore } from "../session/useWork";
import { photographStore } from "./photographStore";
import { readFileApart } from "./openFileReader";
import { WorksProvider, type Works } from "./useWorks";

export interface WorkSessionProviderProps {
  readonly store: WorkStore;
  readonly session: WorkSession;
  readonly children: ReactNode;
}

/** Gives the page the open work and everything that can be done with whole works. */
export function WorkSessionProvider({ store, session, children }: WorkSessionProviderProps) {
  const { entries, binned, openId, shown, storage, isLasting, messages } = useStore(session.state);

  const hadFocus = useRef<Focused>("none");

  useEffect(() => {
    // The last change must not be lost with the page, and another page may have made one while this one was away.
    const keepNow = (): void => {
      if (document.visibilityState === "hidden") void session.flush();
      else void session.pageIsBack();
    };
    const lookAgain = (): void => void session.pageIsBack();
    document.addEventListener("visibilitychange", keepNow);
    window.addEventListener("pagehide", session.pageIsClosing);
    // Back from where the browser keeps pages that were left.
    window.addEventListener("pageshow", lookAgain);
    window.addEventListener("focus", lookAgain);
    return () => {
      document.removeEventListener("visibilitychange", keepNow);
      window.removeEventListener("pagehide", session.pageIsClosing);
      window.removeEventListener("pageshow", lookAgain);
      window.removeEventListener("focus", lookAgain);
    };
  }, [session]);

  const actions = useMemo(
    () => ({
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
      begin: (work: Work) => void session.create(work),
      copy: (id: string) => void session.copy(id),
      bin: (id: string) => void session.bin(id),
      bringBack: (id: string) => void session.bringBack(id),
      removeForGood: (id: string) => void session.removeForGood(id),
      peek: session.peek,
      forgotten: session.forgotten,
      forget: session.forget,
      download: () => void session.download(),
      downloadWith: (photographs: readonly PhotographInFile[]) => void session.download(photographs),
      downloadAll: () => void session.downloadAll(),
      openFile: async (file: File) => {
        const read = await readFileApart(file);
        const photographs = read.ok ? read.value.works.flatMap((one) => one.photographs ?? []) : [];
        const lost = photographs.length > 0 ? await photographStore.keep(photographs) : 0;
        await session.bringIn(read, file.name);
        if (lost > 0) session.offer("photographs", photographsNotKept(lost, file.name));
      },
      tell: (text: string) => session.offer("photographs", text),
      dismiss: session.dismiss,
    }),
    [session, store],
  );
  const works: Works = useMemo(
    () => ({ ...actions, entries, binned, openId, storage, isLasting, messages }),
    [actions, entries, binned, openId, storage, isLasting, messages],
  );

  return (
    <WorksProvider value={works}>
      <WorkStoreProvider value={store}>
        {/* All that the page remembers of the open work goes with it: what is in fields, what is selected, what was answered. */}
        <Shown key={shown} hadFocus={hadFocus}>
          {children}
        </Shown>
      </WorkStoreProvider>
    </WorksProvider>
  );
}

interface ShownProps {
  readonly hadFocus: { current: Focused };
  readonly children: ReactNode;
}

/** Where the focus was as a work was shown, and where it goes on to in the next one. */
type Focused = "menu" | "step" | "none";
const AGAIN: Readonly<Record<Focused, string | null>> = { menu: ".works > button", step: ".step", none: null };

/** One showing of one work. Where the works menu has brought the next one about, the focus is at its button again. */
function Shown({ hadFocus, children }: ShownProps) {
  const [showing] = useState(createShowing);
  const root = useRef<HTMLDivElement>(null);
  useEffect(() => {
    showing.stay();
    return showing.leave;
  }, [showing]);
  useLayoutEffect(() => {
    const again = AGAIN[hadFocus.current];
    if (again !== null) root.current?.querySelector<HTMLElement>(again)?.focus({ preventScroll: true });
    return () => {
      const focused = document.activeElement;
      hadFocus.current =
        (focused?.closest(".works") ?? null) !== null
          ? "menu"
          : (focused?.closest(".step") ?? null) !== null
            ? "step"
            : "none";
    };
  }, [hadFocus]);
  return (
    <ShowingProvider value={showing}>
      <div ref={root} className="app-root">
        {children}
      </div>
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
