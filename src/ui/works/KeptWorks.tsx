import { useEffect, useMemo, useState, type ReactNode } from "react";
import { useStore } from "zustand";
import type { Work } from "../../core/plan/work";
import { blankPattern, blankWork } from "../../document/blank";
import type { Keeper } from "../../store/keeper";
import { createShowing, ShowingProvider } from "../app/ofWork";
import { WorkStoreProvider, type WorkStore } from "../app/useWork";
import { WorksProvider, type Works } from "./useWorks";

export interface KeptWorksProps {
  readonly store: WorkStore;
  readonly keeper: Keeper;
  readonly children: ReactNode;
}

/** Gives the page the open work and everything that can be done with whole works. */
export function KeptWorks({ store, keeper, children }: KeptWorksProps) {
  const { entries, openId, shown, storage, messages } = useStore(keeper.state);

  useEffect(() => {
    // The last change must not be lost with the page.
    const keepNow = (): void => {
      if (document.visibilityState === "hidden") void keeper.flush();
    };
    document.addEventListener("visibilitychange", keepNow);
    window.addEventListener("pagehide", keeper.part);
    return () => {
      document.removeEventListener("visibilitychange", keepNow);
      window.removeEventListener("pagehide", keeper.part);
    };
  }, [keeper]);

  const actions = useMemo(
    () => ({
      blankPattern: blankPattern(),
      open: (id: string) => {
        void keeper.open(id);
      },
      startBlank: () => {
        void keeper.create(blankWith(store.getState().work));
        window.location.hash = "#tape";
      },
      startDemo: (demo: Work) => {
        void keeper.create(demo);
      },
      copy: (id: string) => void keeper.copy(id),
      remove: (id: string) => {
        void keeper.remove(id);
      },
      download: () => offerFile(keeper.file()),
      openFile: async (file: File) => {
        await keeper.openText(await file.text(), file.name);
      },
      dismiss: keeper.dismiss,
    }),
    [keeper, store],
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
  useEffect(() => showing.end, [showing]);
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

function offerFile({ name, text }: { readonly name: string; readonly text: string }): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
