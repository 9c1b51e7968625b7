import { useEffect, useMemo, type ReactNode } from "react";
import { useStore } from "zustand";
import type { Work } from "../../core/decisions/work";
import { blankPattern, blankWork } from "../../document/blank";
import type { Keeper } from "../../store/keeper";
import { useViewState } from "../app/viewState";
import { useChoices } from "../paper/choicesState";
import { WorkStoreProvider, type WorkStore } from "../app/useWork";
import { WorksProvider, type Works } from "./useWorks";

export interface KeptWorksProps {
  readonly store: WorkStore;
  readonly keeper: Keeper;
  readonly demos: readonly Work[];
  readonly children: ReactNode;
}

/** Gives the page the open work and everything that can be done with whole works. */
export function KeptWorks({ store, keeper, demos, children }: KeptWorksProps) {
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
      demos,
      blankPattern: blankPattern(),
      open: (id: string) => {
        forgetView();
        void keeper.open(id);
      },
      startBlank: () => {
        forgetView();
        void keeper.create(blankWith(store.getState().work));
        window.location.hash = "#tape";
      },
      startDemo: (demo: Work) => {
        forgetView();
        void keeper.create(demo);
      },
      copy: (id: string) => void keeper.copy(id),
      remove: (id: string) => {
        forgetView();
        void keeper.remove(id);
      },
      download: () => offerFile(keeper.file()),
      openFile: async (file: File) => {
        forgetView();
        await keeper.openText(await file.text(), file.name);
      },
      dismiss: keeper.dismiss,
    }),
    [demos, keeper, store],
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
