import { useEffect, useState } from "react";
import type { FoundWork } from "../../core/standing/keptGarments";
import type { WorkEntry } from "../../store/library";
import { useWorks } from "./useWorks";

/** Reads kept works one after the other, those that cannot be read left out; null until all were looked at. */
export function useFoundWorks(entries: readonly WorkEntry[]): readonly FoundWork[] | null {
  const { peek } = useWorks();
  const [found, setFound] = useState<{ readonly key: string; readonly works: readonly FoundWork[] } | null>(null);
  const key = entries.map(({ id, stamp }) => `${id} ${stamp}`).join("\n");
  useEffect(() => {
    let isOver = false;
    const look = async (): Promise<void> => {
      const works: FoundWork[] = [];
      for (const { id } of entries) {
        const work = await peek(id);
        if (isOver) return;
        if (work !== null) works.push({ id, work });
      }
      setFound({ key, works });
    };
    void look();
    return () => {
      isOver = true;
    };
    // The entries are told apart by their ids and stamps.
    // oxlint-disable-next-line react-hooks/exhaustive-deps
  }, [key, peek]);
  return found === null ? null : found.works;
}
