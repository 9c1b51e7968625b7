import type { GiveBack, Half } from "../../core/decisions/alteration";
import type { DartRef } from "../../core/pattern/piece";
import { memo, useId } from "react";
import type { Command } from "../../core/plan/commands";
import type { PlannedDart } from "../../core/plan/plan";
import type { Work } from "../../core/decisions/work";
import { sharesOf } from "../../core/plan/dartEdit";
import { sharesWith, wholeShares } from "../../core/plan/giveBackShares";
import { isSame } from "../../core/same";
import { placeWords } from "../../words/terms/darts";
import { Slider } from "../fields/Slider";
import { useEntry } from "../fields/useEntry";
import { useSettledWork, useWork } from "../session/useWork";
import { useDartNow } from "./useDartNow";
import * as say from "../../words/dartsStep";

export interface GiveBackSharesProps {
  readonly dart: PlannedDart;
  /** The half that they are for; undefined: both. */
  readonly on: Half | undefined;
}

const PERCENT_STEP = 5;

/** One and the same, so that it is not taken for another answer. */
const NONE: GiveBack = {};

/** Where what a dart sets free goes: shares that always make a whole. One slide, or one visit to a number, is one step of undo. */
export function GiveBackShares({ dart, on }: GiveBackSharesProps) {
  const { giveBackPlaces } = useDartNow(dart, true);
  return <Shares dart={dart.ref} places={giveBackPlaces} on={on} />;
}

interface SharesProps {
  readonly dart: DartRef;
  readonly places: PlannedDart["giveBackPlaces"];
  readonly on: Half | undefined;
}

/** The places are named anew by every plan; they seldom are other ones. */
const Shares = memo(({ dart, places, on }: SharesProps) => {
  const shares = (work: Work): GiveBack => {
    const said = sharesOf(work, dart, on);
    return Object.keys(said).length === 0 ? NONE : said;
  };
  const now = useWork(shares);
  // The others keep their proportion as it was before the slide, also where it goes past a place that leaves them none.
  const before = useSettledWork(shares);
  const percents = wholeShares(places, now);
  const [only, ...others] = places;
  if (only === undefined) return null;
  if (others.length === 0) return <p className="field-hint">{say.setFreeAt(placeWords(only, dart.piece))}</p>;
  return (
    <fieldset className="shares">
      <legend className="field-label">{say.setFreeTakenAt}</legend>
      {places.map((place) => (
        <Share
          key={`${place}-${on ?? "both"}`}
          field={`dart.${dart.piece}.${dart.dart}${on === undefined ? "" : `-${on}`}.share.${place}`}
          name={placeWords(place, dart.piece)}
          percent={percents[place] ?? 0}
          // Shares belong to every alteration of the dart, so that its seam is given back in one way.
          set={(percent) => [
            {
              kind: "setGiveBack",
              dart,
              ...(on === undefined ? {} : { half: on }),
              giveBack: sharesWith(places, before, place, percent),
            },
          ]}
        />
      ))}
    </fieldset>
  );
}, isSame);

interface ShareProps {
  readonly field: string;
  readonly name: string;
  readonly percent: number;
  readonly set: (percent: number) => readonly Command[];
}

function Share({ field, name, percent, set }: ShareProps) {
  const id = useId();
  const { input, reason } = useEntry({
    field,
    settled: String(percent),
    read: (text) => {
      const read = readPercent(text);
      return read === null ? { reason: say.writeAShare } : { commands: set(read) };
    },
    step: (direction, isLarge, from) => {
      const next = Math.min(100, Math.max(0, (readPercent(from) ?? percent) + direction * (isLarge ? 10 : 1)));
      return { commands: set(next), text: String(next) };
    },
  });
  return (
    <div className="share">
      <label htmlFor={`${id}-slide`}>{name}</label>
      <Slider
        id={`${id}-slide`}
        min={0}
        max={100}
        step={PERCENT_STEP}
        value={percent}
        valueText={`${percent} %`}
        set={(next) => [{ kind: "clearUnread", field }, ...set(next)]}
      />
      <span className="share-entry">
        <input
          type="text"
          inputMode="numeric"
          autoComplete="off"
          className="field-input"
          aria-label={say.inPerCent(name)}
          aria-invalid={reason !== null}
          aria-describedby={reason === null ? undefined : `${id}-refused`}
          {...input}
        />
        <span aria-hidden="true">%</span>
      </span>
      {reason !== null && (
        <p id={`${id}-refused`} className="field-error" role="alert">
          {reason}
        </p>
      )}
    </div>
  );
}

/** A whole per cent from 0 to 100, with or without its sign; else null. */
function readPercent(text: string): number | null {
  const found = /^\s*(\d{1,3})(?:[.,]0*)?\s*%?\s*$/.exec(text);
  const percent = found === null ? NaN : Number(found[1]);
  return percent <= 100 ? percent : null;
}
