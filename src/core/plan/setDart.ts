/**
 * A dart set as it should be in one step, by ordinary redraws: its end where it is usual short of the bust point, or the whole
 * dart as the wearer's cup asks. Each is made and read before it is offered.
 */
import type { DartEndAlteration, Half, Hold } from "../decisions/alteration";
import { answeredOf, redrawsOf, redrawsOn } from "../decisions/seenAtDart";
import type { Work } from "../decisions/work";
import { drawnStop } from "../dart/dartEnd";
import { endsAsUsual } from "../dart/dartEndReading";
import { apexAfter, apexOffset } from "../dart/dartFrame";
import { directionOf, distance, midpoint, polar } from "../geometry/point";
import { isSameDart, type DartRef } from "../pattern/piece";
import { SET_TO_DEGREES, SET_TO_FULLNESS, SHORTEST_DART } from "../tolerance";
import { degreesFrom } from "../units";
import { applyCommand, type Command } from "./commands";
import { dartBefore, endOf, putOrRemove, snapToStep, USUAL_HOLD } from "./dartEdit";
import { newlyFailing } from "./newlyFailing";
import type { PlannedDart } from "./plan";
import { planOf } from "./planOf";
import { redrawsForCup } from "./pointedDartOf";

/** Rounds in which the end settles: truing the legs moves the mouth, and the dart's own axes with it, by a little. */
const ROUNDS = 4;

export type DartSetting =
  /** Its end alone is moved. */
  | { readonly what: "end"; readonly command: Command }
  /** It is as full as the cup asks, and ends as usual. */
  | { readonly what: "cup"; readonly command: Command };

/** Which half is looked at, and whether the dart is set on that half alone; else on both. */
interface Looked {
  readonly half: Half;
  readonly alone?: boolean;
}

const onOf = ({ half, alone = false }: Looked): Half | undefined => (alone ? half : undefined);

/** An answer sought by making plans, which may each take long: before each it can be put by for a while. */
type Seeking<T> = Generator<undefined, T, undefined>;

/**
 * What a dart can be set to in one step on the half that is looked at, on that half alone or on both; null where it is as it should be, where it stands as she
 * answered what she saw of it, and where no such setting comes out.
 */
export function settingOf(work: Work, dart: DartRef, half: Half, alone = false): DartSetting | null {
  const seeking = seekSetting(work, dart, half, alone);
  for (;;) {
    const step = seeking.next();
    if (step.done === true) return step.value;
  }
}

/** The same, a plan at a time. */
export function* seekSetting(work: Work, dart: DartRef, half: Half, alone = false): Seeking<DartSetting | null> {
  const looked: Looked = { half, alone };
  const now = dartIn(work, dart, half);
  if (now === null || now.endJudged === null || answeredOf(work, dart, half) !== null) return null;
  if (now.verdict !== "asWanted") {
    const command = yield* asCupAsks(work, dart, looked);
    if (command !== null) return { what: "cup", command };
  }
  if (endsAsUsual(now.endJudged)) return null;
  const command = yield* usualEnd(work, dart, looked);
  return command === null ? null : { what: "end", command };
}

/** The command that moves a dart's end to where it is usual, short of her bust point where that is known; null where none can. */
function* usualEnd(work: Work, dart: DartRef, looked: Looked): Seeking<Command | null> {
  const { half } = looked;
  const { hold } = endOf(work, dart, USUAL_HOLD, onOf(looked));
  const made: Command[] = [];
  for (const way of hold === "mouth" ? (["mouth", "fullness"] as const) : (["fullness", "mouth"] as const)) {
    const command = yield* endMoved(work, dart, looked, way);
    if (command !== null && (yield* isSound(work, command, dart, half))) made.push(command);
  }
  // The verdict is not to change by moving the end alone, where that can be.
  return (
    made.find((command) => dartIn(applyCommand(work, command), dart, half)?.verdict === "asWanted") ?? made[0] ?? null
  );
}

/** The command that makes a dart as full as the cup asks and ends it as usual; null where no way comes out. */
function* asCupAsks(work: Work, dart: DartRef, looked: Looked): Seeking<Command | null> {
  const { half } = looked;
  const on = onOf(looked);
  const only = on === undefined ? {} : { half: on };
  const bare = applyCommand(work, { kind: "replaceRedraws", dart, ...only, alterations: [] });
  const withoutEnd = applyCommand(work, {
    kind: "removeAlteration",
    id: endOf(work, dart, USUAL_HOLD, on).id,
    ...only,
  });
  function* isAsked(command: Command): Seeking<boolean> {
    return (yield* isSound(work, command, dart, half)) && isAsAsked(dartIn(applyCommand(work, command), dart, half));
  }
  for (const from of [withoutEnd, bare]) {
    const moved = yield* endMoved(from, dart, looked, "mouth");
    if (moved === null) continue;
    const command = asOne(applyCommand(from, moved), dart, on);
    if (yield* isAsked(command)) return command;
  }
  yield;
  for (const alterations of redrawsForCup(work, dart, half)) {
    const command: Command = { kind: "replaceRedraws", dart, ...only, alterations };
    if (yield* isAsked(command)) return command;
  }
  return null;
}

/** As full and as wide as asked, not merely near enough not to be noticed: the button says so. */
const isAsAsked = (set: PlannedDart | null): boolean =>
  set !== null &&
  set.wanted !== null &&
  Math.abs(set.drawn.fullness - set.wanted.fullness) <= SET_TO_FULLNESS &&
  Math.abs(degreesFrom(set.drawn.angle) - degreesFrom(set.wanted.angle)) <= SET_TO_DEGREES;

/** All redraws that a work has of a dart, on a half or on both, in place of those of another. */
const asOne = ({ alterations }: Work, dart: DartRef, on: Half | undefined): Command => ({
  kind: "replaceRedraws",
  dart,
  ...(on === undefined ? {} : { half: on }),
  alterations: on === undefined ? redrawsOf(alterations, dart) : redrawsOn(alterations, dart, on),
});

function* isSound(work: Work, command: Command, dart: DartRef, half: Half): Seeking<boolean> {
  yield;
  const after = applyCommand(work, command);
  const judged = dartIn(after, dart, half)?.endJudged ?? null;
  return judged !== null && endsAsUsual(judged) && newlyFailing(work, after).length === 0;
}

/** The end on the line from the middle of the mouth to the bust point, the usual way short of it. */
function* endMoved(work: Work, dart: DartRef, looked: Looked, hold: Hold): Seeking<Command | null> {
  const { half } = looked;
  yield;
  const plan = planOf(work);
  const before = dartBefore(work, dart, "apex", half);
  if (!plan.ok || before === null || before.end === null) return null;
  const { sizing, bustPoint } = plan.value[half];
  const stop = drawnStop(dart.dart, sizing.cup.drafted + sizing.bust.alteration);
  const aim = bustPoint.own ?? bustPoint.printed;
  const middle = midpoint(before.inner, before.outer);
  const length = Math.max(SHORTEST_DART, distance(middle, aim) - stop);
  let { shorten, across } = apexOffset(before, polar(middle, directionOf(middle, aim), length));
  const alteration = (): DartEndAlteration => ({
    ...endOf(work, dart, hold, onOf(looked)),
    hold,
    shorten: snapToStep(shorten, work.unit),
    across: snapToStep(across, work.unit),
  });
  for (let round = 0; round < ROUNDS; round += 1) {
    yield;
    const drawn = dartIn(applyCommand(work, putOrRemove(alteration())), dart, half)?.drawn;
    if (drawn === undefined || drawn.end === null) return null;
    // Where it should end as the dart is now, against where it does.
    const should = apexAfter(drawn, {
      shorten: stop - drawn.end.along,
      across:
        drawn.end.across * (1 - stop / Math.max(SHORTEST_DART, distance(midpoint(drawn.inner, drawn.outer), aim))),
    });
    ({ shorten, across } = apexOffset(before, should));
  }
  return putOrRemove(alteration());
}

function dartIn(work: Work, dart: DartRef, half: Half): PlannedDart | null {
  const plan = planOf(work);
  return plan.ok ? (plan.value[half].darts.find(({ ref }) => isSameDart(ref, dart)) ?? null) : null;
}
