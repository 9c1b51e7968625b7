import { dressOf } from "../../core/dress/dressOf";
import { CLOTH_NAMES } from "../../core/decisions/dress";
import { PrintedDress, type PrintedDressProps } from "../../print/PrintedDress";
import { DRESS_SHEET } from "../../words/dressSheet";
import { planFailureWords } from "../../words/plan";
import type { ClothRoomState } from "../dress/cloth/clothRoom";
import { useCloth } from "../dress/cloth/useCloth";
import { Laying } from "../dress/ClothLaid";
import { FailureNote } from "../session/FailureNote";
import { useSettledWork } from "../session/useWork";
import { PrintRow } from "./PrintRow";
import { SheetPreview } from "./SheetPreview";

/** The sheets of the dress, or why there are none yet. Lays come to them as they are made. */
export function DressPaper() {
  const work = useSettledWork((current) => current);
  const result = useSettledWork(dressOf);
  const { lays } = useCloth(work);
  if (!result.ok)
    return <FailureNote words={planFailureWords(result.failure, work.unit, work.pattern.chart.sizes.length)} />;
  const shares = Object.values(lays).flatMap((lay) => (lay.kind === "laying" ? [lay.share] : []));
  return (
    <>
      <PrintRow label={DRESS_SHEET.print} paper={work.paper} />
      {shares.length > 0 && <Laying share={Math.min(...shares)} />}
      <SheetPreview>
        <PrintedDress work={work} dress={result.value} lays={answeredOf(lays)} broken={brokenOf(lays)} />
      </SheetPreview>
    </>
  );
}

const brokenOf = (lays: ClothRoomState["lays"]): NonNullable<PrintedDressProps["broken"]> =>
  CLOTH_NAMES.filter((name) => lays[name]?.kind === "broke");

/** Only what is laid of the dress as it is: a lay from before would be cut by. */
const answeredOf = (lays: ClothRoomState["lays"]): PrintedDressProps["lays"] =>
  Object.fromEntries(
    CLOTH_NAMES.flatMap((name) => {
      const lay = lays[name];
      return lay?.kind === "answered" ? [[name, lay.answer]] : [];
    }),
  );
