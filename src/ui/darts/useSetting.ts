import { useEffect, useMemo, useState } from "react";
import type { Half } from "../../core/decisions/alteration";
import type { Work } from "../../core/decisions/work";
import type { DartRef } from "../../core/pattern/piece";
import { seekSetting, settingOf, type DartSetting } from "../../core/plan/setDart";

/** Alterations above which a plan takes so long that a dozen of them, one after the other, would hold up the page. */
const MANY = 40;

interface Found {
  readonly work: Work;
  readonly dart: DartRef;
  readonly half: Half;
  readonly alone: boolean;
  readonly setting: DartSetting | null;
}

/** What the dart that is chosen can be set to; of a long ledger it is sought a plan at a time, and there a moment later. */
export function useSetting(work: Work, dart: DartRef, half: Half, alone: boolean): DartSetting | null {
  const isLong = work.alterations.length > MANY;
  const atOnce = useMemo(() => (isLong ? null : settingOf(work, dart, half, alone)), [isLong, work, dart, half, alone]);
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    if (!isLong) return undefined;
    const seeking = seekSetting(work, dart, half, alone);
    const goOn = (): void => {
      const step = seeking.next();
      if (step.done === true) setFound({ work, dart, half, alone, setting: step.value });
      else next = window.setTimeout(goOn);
    };
    let next = window.setTimeout(goOn);
    return () => window.clearTimeout(next);
  }, [isLong, work, dart, half, alone]);
  if (!isLong) return atOnce;
  const isOfThis = found?.work === work && found.dart === dart && found.half === half && found.alone === alone;
  return isOfThis ? found.setting : null;
}
