/** From causes to the alterations that answer them: as they will stand, counted from what the toile was sewn with. */
import { fitOf } from "../alterations/fit/index";
import {
  HALVES,
  isMadeOn,
  onHalves,
  type Alteration,
  type DartEndAlteration,
  type DartMouthAlteration,
  type DartPlaceAlteration,
  type DartRedraw,
  type FitAlteration,
  type Half,
} from "../decisions/alteration";
import { WHOLE_FITS, type FitName } from "../decisions/fitNames";
import { redrawsOf } from "../decisions/seenAtDart";
import type { Decided, Picks } from "../decisions/decided";
import { apexOffset } from "../dart/dartFrame";
import { piecePoint } from "../geometry/point";
import { isSameDart, type DartRef } from "../pattern/piece";
import { setOf } from "../pattern/pieceSet";
import { alterationId } from "../plan/dartEdit";
import type { Plan, PlannedDart } from "../plan/plan";
import { idOnHalf } from "../plan/putAlteration";
import { isSame } from "../same";
import { CLOTH_WORTH_ALTERING } from "../tolerance";
import type { Mm } from "../units";
import type { ReadLine } from "./recordLines";
import type { Change, Rule } from "./rules";
import { isShownBy, type Supposed } from "./score";

/** A cause with its amount, on the halves where it is to be altered. */
export interface ToAlter extends Supposed {
  readonly amount: Mm;
}

export interface Altered {
  readonly alterations: readonly Alteration[];
  /** Whole; null: not changed. */
  readonly bustAlteration: Mm | null;
  /** Cup versions for one half alone; null: not changed. */
  readonly halfCups: NonNullable<Picks["halfCups"]> | null;
}

interface Toile {
  readonly sewn: Decided;
  readonly plan: Plan;
  readonly lines: readonly ReadLine[];
}

/** Whole millimetres: a finer amount cannot be pinned, and none is ever minus nothing. */
const whole = (amount: Mm): Mm => Math.round(amount) + 0;

/** Whether a garment has what a row is made on. */
export function canBeMade({ changes }: Rule, plan: Plan): boolean {
  const pieces = setOf(plan.left.fitted);
  return changes.every((change) => {
    if (change.of === "fit") return fitFor(change, plan) !== null;
    if (change.of === "bust") return true;
    if (change.of === "offCentre") return waistDart(plan) !== null && pieces.front !== undefined;
    return bustDarts(plan, "left").length > 0 || change.of === "bustPoint";
  });
}

/** The fit of a change that the garment has what it is made on for; null: none of them. */
function fitFor({ fits }: Extract<Change, { readonly of: "fit" }>, plan: Plan): FitName | null {
  const pieces = setOf(plan.left.fitted);
  return fits.find((name) => fitOf(name).applies(pieces)) ?? null;
}

const bustDarts = (plan: Plan, half: Half): readonly PlannedDart[] =>
  plan[half].darts.filter(({ wanted, drawn }) => wanted !== null && drawn.intake > 0);

const waistDart = (plan: Plan): PlannedDart | null =>
  bustDarts(plan, "left").find(({ ref }) => ref.piece === "front" && ref.dart === "waistDart") ?? null;

/** Everything that a set of causes changes. */
export function alterationsFor(causes: readonly ToAlter[], toile: Toile): Altered {
  const fits = new Map<FitName, Record<Half, Mm>>();
  const addFit = (name: FitName, halves: readonly Half[], amount: Mm): void => {
    const sums = fits.get(name) ?? { left: 0, right: 0 };
    for (const half of halves) sums[half] += amount;
    fits.set(name, sums);
  };
  const darts: DartRedraw[] = [];
  const cups: Partial<Record<Half, string>> = {};
  let bust = 0;
  for (const cause of causes)
    for (const change of cause.rule.changes)
      switch (change.of) {
        case "fit": {
          const name = fitFor(change, toile.plan);
          if (name !== null) addFit(name, cause.halves, change.by * cause.amount);
          break;
        }
        case "bust":
          if (cause.halves.length === HALVES.length) bust += 2 * change.by * cause.amount;
          else for (const half of cause.halves) cups[half] = cupFor(toile, half, 2 * change.by * cause.amount);
          break;
        case "bustPoint":
          for (const half of cause.halves) {
            const mark = markOf(cause, half, toile.lines);
            if (mark === null) continue;
            const down = mark.down - movedBy(causes, half);
            if (canLevel(toile.plan) && Math.abs(down) >= CLOTH_WORTH_ALTERING) addFit("bustPointLevel", [half], down);
            if (Math.abs(mark.out) >= CLOTH_WORTH_ALTERING)
              darts.push(
                ...bustDarts(toile.plan, half).map((dart) => endMoved(toile, dart, half, { out: mark.out, down: 0 })),
              );
          }
          break;
        case "dartEnd":
          for (const half of cause.halves)
            for (const { line, mark } of marksOf(cause, half, toile.lines))
              darts.push(...dartsOf(line, toile.plan, half).map((dart) => endMoved(toile, dart, half, mark)));
          break;
        case "dartMouth":
          for (const half of cause.halves) {
            const dart = dartMeant(cause, toile, half);
            if (dart !== null) darts.push(mouthChanged(toile, dart, half, change.by * cause.amount));
          }
          break;
        case "offCentre":
          for (const half of cause.halves) darts.push(offCentre(toile, half, cause.amount));
          break;
      }
  return {
    alterations: [...[...fits].flatMap(([name, sums]) => fitAltered(toile.sewn, name, sums)), ...asOne(darts)],
    bustAlteration: bust === 0 ? null : whole(toile.plan.sizing.bust.alteration + bust),
    halfCups: Object.keys(cups).length === 0 ? null : { ...toile.sewn.picks.halfCups, ...cups },
  };
}

/** The cup version of a half that is so much fuller than its own, as a whole difference: the nearest there is. */
function cupFor({ sewn, plan }: Toile, half: Half, fuller: Mm): string {
  const { cups } = sewn.pattern.chart;
  const now = sewn.picks.halfCups?.[half] ?? plan.sizing.cup.label;
  const from = cups.find(({ label }) => label === now)?.difference ?? plan.sizing.cup.drafted;
  const [nearest] = cups.toSorted(
    (a, b) => Math.abs(a.difference - from - fuller) - Math.abs(b.difference - from - fuller),
  );
  return nearest?.label ?? now ?? "";
}

/** Whether a row can be altered on one half alone: a bust only by another cup version. */
export const canBeOnOneHalf = ({ changes }: Rule, { pattern }: Decided): boolean =>
  pattern.own?.inUse !== true && pattern.chart.cups.length > 1 ? true : changes.every(({ of }) => of !== "bust");

/** How far down other causes, once altered, bring the bust point that is drawn. */
const movedBy = (causes: readonly ToAlter[], half: Half): Mm =>
  causes
    .filter(({ halves }) => halves.includes(half))
    .reduce((sum, { rule, amount }) => {
      const way = rule.shows.find(({ place, sign }) => place === "bust" && sign === "bustPoint")?.marked;
      return sum + (way === undefined ? 0 : way === "down" ? amount : -amount);
    }, 0);

const canLevel = (plan: Plan): boolean => fitOf("bustPointLevel").applies(setOf(plan.left.fitted));

/** What a half has of a fit as it was sewn: of an amount all round that half's own share. */
const sewnFit = ({ alterations }: Decided, name: FitName, half: Half): Mm =>
  alterations
    .filter((one): one is FitAlteration => one.kind === "fit" && one.fit === name && isMadeOn(one, half))
    .reduce((sum, one) => {
      const own = one.half === undefined ? onHalves(one, half) : one;
      return sum + (own.kind === "fit" ? own.amount : 0);
    }, 0);

/** A fit with what is added on each half, within what is ever sensible: one for both where they come out alike. */
function fitAltered(sewn: Decided, name: FitName, added: Readonly<Record<Half, Mm>>): readonly FitAlteration[] {
  const { least, most } = fitOf(name).range;
  const share = WHOLE_FITS.has(name) ? 2 : 1;
  const amountOn = (half: Half): Mm =>
    whole(Math.min(Math.max(sewnFit(sewn, name, half) + added[half], least / share), most / share));
  const stands = sewn.alterations.find((one) => one.kind === "fit" && one.fit === name)?.id ?? `fit-${name}`;
  const [left, right] = [amountOn("left"), amountOn("right")];
  if (added.left !== 0 && added.right !== 0 && left === right)
    return [{ kind: "fit", id: idOnHalf(stands, undefined), fit: name, amount: whole(share * left) }];
  return HALVES.filter((half) => added[half] !== 0).map((half) => ({
    kind: "fit",
    id: idOnHalf(stands, half),
    fit: name,
    amount: half === "left" ? left : right,
    half,
  }));
}

/** Lines that a cause would show, those on a half first: tried on the other half, a cause goes by what was seen on its own. */
const linesOf = ({ rule }: Supposed, half: Half, lines: readonly ReadLine[]): readonly ReadLine[] =>
  lines
    .filter((line) => isShownBy({ rule, halves: HALVES }, line) !== null)
    .toSorted((a, b) => Number(b.halves.includes(half)) - Number(a.halves.includes(half)));

/** Where the mark that a cause goes by lies, on one half. */
const markOf = (cause: Supposed, half: Half, lines: readonly ReadLine[]): ReadLine["mark"] =>
  linesOf(cause, half, lines).find(({ mark }) => mark !== null)?.mark ?? null;

/** All marks that a cause goes by on one half: a record may mark the ends of several darts. */
function marksOf(
  cause: Supposed,
  half: Half,
  lines: readonly ReadLine[],
): readonly { readonly line: ReadLine; readonly mark: NonNullable<ReadLine["mark"]> }[] {
  const marked = linesOf(cause, half, lines).flatMap((line) => (line.mark === null ? [] : [{ line, mark: line.mark }]));
  const own = marked.filter(({ line }) => line.halves.includes(half));
  return own.length > 0 ? own : marked;
}

/**
 * The darts that a line is about: the one it names; of a mark that names none the one along whose own line it lies, since a dart is
 * mostly made shorter or longer; else the fullest of the bust.
 */
function dartsOf({ dart, mark }: ReadLine, plan: Plan, half: Half): readonly PlannedDart[] {
  const all = bustDarts(plan, half);
  const named = all.filter(({ ref }) => dart !== null && isSameDart(ref, dart));
  const beside = ({ drawn }: PlannedDart): Mm =>
    mark === null
      ? 0
      : Math.abs(apexOffset(drawn, piecePoint(drawn.apex.x + mark.out, drawn.apex.y + mark.down)).across);
  const likeliest = all.toSorted((a, b) => beside(a) - beside(b) || b.drawn.intake - a.drawn.intake)[0];
  return named.length > 0 ? named : likeliest === undefined ? [] : [likeliest];
}

/** The dart that a cause is about: one that a line names, else the fullest of the bust. */
function dartMeant(cause: Supposed, { plan, lines }: Toile, half: Half): PlannedDart | null {
  const own = linesOf(cause, half, lines);
  const line = own.find(({ dart }) => dart !== null) ?? own[0];
  return (line === undefined ? bustDarts(plan, half)[0] : dartsOf(line, plan, half)[0]) ?? null;
}

/** A redraw that the toile was sewn with, on a half; null: none of that kind. */
function sewnRedraw<K extends DartRedraw["kind"]>(
  { alterations }: Decided,
  kind: K,
  dart: DartRef,
  half: Half,
): Extract<DartRedraw, { kind: K }> | null {
  const isOne = (one: DartRedraw): one is Extract<DartRedraw, { kind: K }> => one.kind === kind && isMadeOn(one, half);
  return redrawsOf(alterations, dart).find(isOne) ?? null;
}

const sharesOf = ({ alterations }: Decided, dart: DartRef, half: Half): DartRedraw["giveBack"] =>
  redrawsOf(alterations, dart).find((one) => isMadeOn(one, half) && Object.keys(one.giveBack).length > 0)?.giveBack ??
  {};

function endMoved(
  { sewn }: Toile,
  { ref, drawn }: PlannedDart,
  half: Half,
  { out, down }: { readonly out: Mm; readonly down: Mm },
): DartEndAlteration {
  const { shorten, across } = apexOffset(drawn, piecePoint(drawn.apex.x + out, drawn.apex.y + down));
  const before = sewnRedraw(sewn, "dartEnd", ref, half);
  return {
    kind: "dartEnd",
    id: alterationId("dartEnd", ref, half),
    dart: ref,
    shorten: whole((before?.shorten ?? 0) + shorten),
    across: whole((before?.across ?? 0) + across),
    hold: before?.hold ?? "fullness",
    giveBack: before?.giveBack ?? sharesOf(sewn, ref, half),
    half,
  };
}

function mouthChanged({ sewn }: Toile, { ref }: PlannedDart, half: Half, wider: Mm): DartMouthAlteration {
  const before = sewnRedraw(sewn, "dartMouth", ref, half);
  return {
    kind: "dartMouth",
    id: alterationId("dartMouth", ref, half),
    dart: ref,
    inner: whole((before?.inner ?? 0) + wider / 2),
    outer: whole((before?.outer ?? 0) + wider / 2),
    giveBack: before?.giveBack ?? sharesOf(sewn, ref, half),
    half,
  };
}

function offCentre({ sewn, plan }: Toile, half: Half, by: Mm): DartPlaceAlteration {
  const ref = waistDart(plan)?.ref ?? { piece: "front", dart: "waistDart" };
  const before = sewnRedraw(sewn, "dartPlace", ref, half);
  return {
    kind: "dartPlace",
    id: alterationId("dartPlace", ref, half),
    dart: ref,
    by: whole((before?.by ?? 0) + by),
    how: "offCentreSeam",
    giveBack: before?.giveBack ?? sharesOf(sewn, ref, half),
    half,
  };
}

/** What comes out alike on both halves is one for both. */
function asOne(darts: readonly DartRedraw[]): readonly DartRedraw[] {
  return darts.flatMap((one) => {
    const twin = darts.find(
      (other) => other.kind === one.kind && other.half !== one.half && isSameDart(other.dart, one.dart),
    );
    const both = onHalves(one, undefined);
    const isAlike = twin !== undefined && isSame({ ...both, id: "" }, { ...onHalves(twin, undefined), id: "" });
    if (!isAlike) return [one];
    return one.half === "left" ? [{ ...both, id: idOnHalf(one.id, undefined) }] : [];
  });
}
