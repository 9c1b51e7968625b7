import { useId, useRef, type ReactNode } from "react";
import type { OwnReading } from "../../core/ownPieces/ownReading";
import { missingWords, sectionSummary } from "../../words/ownPattern";
import { useSettledWork } from "../session/useWork";
import { useOwnView, type Section } from "./ownView";
import { Fractions } from "../fields/Fractions";

export interface OwnSectionProps {
  readonly section: Section;
  readonly title: string;
  readonly reading: OwnReading;
  readonly isInUse: boolean;
  readonly children: ReactNode;
}

/** One part of what is to be said: open where the first thing is missing, or as she leaves it. */
export function OwnSection({ section, title, reading, isInUse, children }: OwnSectionProps) {
  const id = useId();
  const place = useRef<HTMLDetailsElement>(null);
  const unit = useSettledWork((work) => work.unit);
  const said = useOwnView((view) => view.opened[section]);
  const open = useOwnView((view) => view.open);
  const [first] = reading.missing;
  const isFirst = first !== undefined && sectionOf(missingWords(first, unit).where) === section;
  // What only lies where a size would is for her to look at before it is gone by.
  const isGuessed =
    section === "sizes" &&
    !isInUse &&
    reading.outlines.lines.some(({ meaning, saidBy }) => meaning.of === "size" && saidBy === "order");
  const isDoubted = section === "scale" && !isInUse && reading.outlines.scale.disagree;
  const isOpen = said ?? (isFirst || isGuessed || isDoubted);
  return (
    <details
      ref={place}
      className="own-section"
      data-section={section}
      open={isOpen}
      aria-labelledby={`${id}-title`}
      // What she is busy with stays open, whatever else is missing next.
      onFocusCapture={({ target }) => {
        if (said === undefined && isOpen && target.tagName !== "SUMMARY") open(section, true);
      }}
    >
      <summary
        onClick={(event) => {
          event.preventDefault();
          open(section, !isOpen);
        }}
      >
        <h4 id={`${id}-title`}>{title}</h4>{" "}
        <span className="aside">
          <Fractions text={sectionSummary(section, reading, unit)} />
        </span>
      </summary>
      {isOpen && <div className="own-inside">{children}</div>}
    </details>
  );
}

/** Corners and marks are put right at their piece. */
export const sectionOf = (where: ReturnType<typeof missingWords>["where"]): Section | null =>
  where === "piece" ? "pieces" : where === "chart" ? null : where === "cup" ? "sizes" : where;
