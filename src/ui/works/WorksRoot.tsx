import { useMemo, type ReactNode } from "react";
import { useStore } from "zustand";
import { blankPattern, blankWork } from "../../document/blank";
import { demoWorks } from "../../document/demo";
import type { Keeper } from "../../store/keeper";
import type { WorkStore } from "../../store/workStore";
import { WorkStoreProvider } from "../app/useWork";
import { WorksProvider, type Works } from "./useWorks";

/** Gives the page the open work and everything that can be done with whole works. */
export function WorksRoot({ store, keeper, children }: { readonly store: WorkStore; readonly keeper: Keeper; readonly children: ReactNode }) {
  const { entries, openId, storage, messages } = useStore(keeper.state);
  const fixed = useMemo(
    () => ({
      demos: demoWorks(),
      blankPattern: blankPattern(),
      open: (id: string) => void keeper.open(id),
      startBlank: () => void keeper.create(blankWork(store.getState().work.unit)),
      startDemo: (demo: Works["demos"][number]) => void keeper.create(demo),
      copy: (id: string) => void keeper.copy(id),
      remove: (id: string) => void keeper.remove(id),
      download: () => download(keeper.file()),
      openFile: async (file: File) => keeper.openText(await file.text(), file.name),
      dismiss: keeper.dismiss,
    }),
    [keeper, store],
  );
  const works = useMemo<Works>(() => ({ ...fixed, entries, openId, storage, messages }), [fixed, entries, openId, storage, messages]);
  return (
    <WorkStoreProvider value={store}>
      <WorksProvider value={works}>{children}</WorksProvider>
    </WorkStoreProvider>
  );
}

function download({ name, text }: { readonly name: string; readonly text: string }): void {
  const url = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  URL.revokeObjectURL(url);
}
