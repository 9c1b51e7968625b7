import { useMemo } from "react";
import type { OutlineGroup } from "../../core/outlines/outlineReading";
import { saidOfPiece } from "../../core/plan/ownEdit";
import { OWN_WORDS } from "../../words/ownPattern";
import { OwnPieceCard } from "./OwnPieceCard";
import type { OwnAndReading } from "./useOwn";

/** Every piece in small, with its name; what is nothing of the pattern stands at the end. */
export function OwnPieces({ own, reading }: OwnAndReading) {
  const { groups } = reading.outlines;
  const ordered = useMemo(() => {
    const isOut = (group: OutlineGroup): boolean => group.isSquare || saidOfPiece(own, group.id).leftOut === true;
    return groups.toSorted((a, b) => Number(isOut(a)) - Number(isOut(b)));
  }, [groups, own]);
  if (groups.length === 0) return <p>{OWN_WORDS.noPieces}</p>;
  return (
    <ol className="own-pieces">
      {ordered.map((group, at) => (
        <OwnPieceCard
          key={group.id}
          at={at}
          group={group}
          piece={reading.pieces.find(({ id }) => id === group.id) ?? null}
          own={own}
          reading={reading}
        />
      ))}
    </ol>
  );
}
