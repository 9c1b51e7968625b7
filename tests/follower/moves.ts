/**
 * The moves of an alteration followed one by one, with no help from the places told afterwards: cut, hinge, slide, swing until
 * a gap stands as wide as told. Corners alone are followed; what is drawn smooth between them is not. Kinds of which the moves
 * cannot be followed yet are said to be.
 */
import { NotCovered, SheetAtFault } from "./follow";
import { LENGTH, lengthOf } from "./lengths";
import type { Job } from "./sheet";
import type { Line, Paper, Place } from "./tissue";

type Places = Map<string, Place>;
type Moved = (place: Place) => Place;

const shifted =
  (x: number, y: number): Moved =>
  (place) => ({ x: place.x + x, y: place.y + y });

const turned =
  (about: Place, angle: number): Moved =>
  ({ x, y }) => ({
    x: about.x + Math.cos(angle) * (x - about.x) - Math.sin(angle) * (y - about.y),
    y: about.y + Math.sin(angle) * (x - about.x) + Math.cos(angle) * (y - about.y),
  });

const apart = (a: Place, b: Place): number => Math.hypot(b.x - a.x, b.y - a.y);
const towards = (from: Place, to: Place, by: number): Place => {
  const whole = apart(from, to);
  return { x: from.x + ((to.x - from.x) * by) / whole, y: from.y + ((to.y - from.y) * by) / whole };
};

/** A length in the text, by the words round it. */
function told(text: string, before: string, after: string): number {
  const found = new RegExp(`${before}(${LENGTH})${after}`).exec(text);
  if (found === null) throw new SheetAtFault(`nothing says “${before}…${after}”: ${text}`);
  return lengthOf(found[1] ?? "");
}

class OnTable {
  readonly places: Places;
  constructor(readonly paper: Paper) {
    this.places = new Map(paper.places);
  }
  at(name: string): Place {
    const place = this.places.get(name);
    if (place === undefined) throw new SheetAtFault(`no ${name} here`);
    return place;
  }
  has(name: string): boolean {
    return this.places.has(name);
  }
  move(names: readonly string[], moved: Moved): void {
    for (const name of names) if (this.has(name)) this.places.set(name, moved(this.at(name)));
  }
  /** Every point that lies where is asked. */
  where(test: (place: Place, name: string) => boolean): readonly string[] {
    return [...this.places].filter(([name, place]) => test(place, name)).map(([name]) => name);
  }
  seam(seam: string): readonly Place[] {
    return this.paper.lines.filter((line) => line.seam === seam).flatMap(({ along }) => along);
  }
}

/** Where a line of many short stretches first passes a test, between two of its points. */
function crossing(along: readonly Place[], value: (place: Place) => number): Place {
  for (let i = 1; i < along.length; i += 1) {
    const [a, b] = [along[i - 1], along[i]];
    if (a === undefined || b === undefined) continue;
    const [va, vb] = [value(a), value(b)];
    if (va === vb || va * vb > 0) continue;
    const t = va / (va - vb);
    return { x: a.x + t * (b.x - a.x), y: a.y + t * (b.y - a.y) };
  }
  throw new SheetAtFault("a line meets nothing");
}

/** The point of a seam so far from one of its ends, measured along it. */
function alongFrom(lines: readonly Line[], seam: string, corner: string, by: number): Place {
  const line = lines.find((one) => one.seam === seam && (one.from === corner || one.to === corner));
  if (line === undefined) throw new SheetAtFault(`no ${seam} at ${corner}`);
  const along = line.from === corner ? line.along : line.along.toReversed();
  let left = by;
  for (let i = 1; i < along.length; i += 1) {
    const [a, b] = [along[i - 1], along[i]];
    if (a === undefined || b === undefined) continue;
    const step = apart(a, b);
    if (left <= step) return towards(a, b, left);
    left -= step;
  }
  return along.at(-1) ?? { x: Number.NaN, y: Number.NaN };
}

/** The angle that swings a place about a hinge until it has gone so far, in the way a test prefers. */
const swing = (hinge: Place, place: Place, gap: number): number => 2 * Math.asin(gap / 2 / apart(hinge, place));

interface Kind {
  readonly title: RegExp;
  readonly follow: (piece: OnTable, text: string, moves: string) => void;
}

const amountIn = (text: string): number => told(text, "", "");

const KINDS: Readonly<Record<string, Kind>> = {
  bust: {
    title: /^(?:Full|Small) bust adjustment: (?:open|lap) the front/,
    follow: (piece, text, moves) => {
      const isFull = text.startsWith("Full");
      const spread = told(text, "the front by ", " at the bust point") * (isFull ? 1 : -1);
      const drop = told(moves, isFull ? "now hangs " : "now sits ", isFull ? " lower" : " higher") * (isFull ? 1 : -1);
      const away = told(moves, "on to the armhole, ", " from the underarm");
      const [underarm, bust] = [piece.at("underarm"), piece.at("bustPoint")];
      const armhole = piece.seam("armhole");
      const hinge = crossing(armhole, (place) => apart(place, underarm) - away);
      // Swung until the gap stands so wide across.
      const [radius, start] = [apart(hinge, bust), Math.atan2(bust.y - hinge.y, bust.x - hinge.x)];
      const ends = [1, -1].map((way) => way * Math.acos(Math.cos(start) + spread / radius));
      const angle = ends
        .map((end) => Math.atan2(Math.sin(end - start), Math.cos(end - start)))
        .toSorted((a, b) => Math.abs(a) - Math.abs(b))[0];
      if (angle === undefined) throw new SheetAtFault("no swing opens so far");
      const hung = turned(hinge, angle)(bust).y - bust.y;
      piece.move(["underarm", "sideBust", "sideDartInner"], turned(hinge, angle));
      piece.move(["sideDartOuter", "sideWaist", "waistDartOuter"], shifted(spread, hung));
      piece.move(["waistDartInner", "centreWaist", "centreBust"], shifted(0, drop));
      piece.move(["bustPoint"], shifted(spread / 2, drop / 2));
    },
  },
  lengthBelowBust: {
    title: /^(?:Lengthen|Shorten) the bodice below the bust/,
    follow: (piece, text, moves) => {
      const by = told(text, "bust by ", "") * (text.startsWith("Len") ? 1 : -1);
      const line = piece.at("centreWaist").y - told(moves, "grain, ", " above the waist");
      piece.move(
        piece.where(({ y }) => y > line),
        shifted(0, by),
      );
    },
  },
  lengthAboveBust: {
    title: /^(?:Lengthen|Shorten) the bodice above the bust/,
    follow: (piece, text, moves) => {
      const by = told(text, "bust by ", "") * (text.startsWith("Len") ? 1 : -1);
      const line = piece.at("shoulderTip").y + told(moves, "grain, ", " straight below");
      piece.move(
        piece.where(({ y }) => y > line),
        shifted(0, by),
      );
    },
  },
  shoulderWidth: {
    title: /^Make the shoulder .+ (?:longer|shorter)/,
    follow: (piece, text) => {
      const by = amountIn(text) * (/longer/.test(text) ? 1 : -1);
      const [neck, tip] = [piece.at("sideNeck"), piece.at("shoulderTip")];
      piece.places.set("shoulderTip", towards(neck, tip, apart(neck, tip) + by));
    },
  },
  forwardShoulder: {
    title: /^Move the end of the shoulder seam/,
    follow: (piece, _text, moves) => {
      const tip = piece.at("shoulderTip");
      const isDown = /down the armhole from the end of the shoulder/.test(moves);
      const by = isDown ? told(moves, "Mark ", " down the armhole") : told(moves, "armhole on ", " beyond the end");
      const first = alongFrom(piece.paper.lines, "armhole", "shoulderTip", by);
      const mark = isDown ? first : { x: 2 * tip.x - first.x, y: 2 * tip.y - first.y };
      rule(piece, mark);
    },
  },
  shoulderSlope: {
    title: /^(?:Raise|Lower) the end of the shoulder and the armhole/,
    follow: (piece, text, moves) => {
      const by = told(moves, "level across, ", " (?:above|below) the end") * (text.startsWith("Raise") ? -1 : 1);
      const [neck, tip] = [piece.at("sideNeck"), piece.at("shoulderTip")];
      const y = tip.y + by;
      piece.places.set("shoulderTip", { x: neck.x + Math.sqrt(apart(neck, tip) ** 2 - (y - neck.y) ** 2), y });
      const [arm, next] = [piece.at("underarm"), piece.at("sideBust")];
      piece.places.set(
        "underarm",
        by < 0 ? towards(arm, next, by) : alongFrom(piece.paper.lines, "side", "underarm", by),
      );
      // Traced again between two ends that do not move alike: where its hollow then lies, moves do not say.
      piece.places.delete("armholeTouch");
    },
  },
  armholeDepth: {
    title: /^(?:Raise|Lower) the underarm by/,
    follow: (piece, text) => {
      const by = amountIn(text);
      const [arm, next] = [piece.at("underarm"), piece.at("sideBust")];
      const down = text.startsWith("Lower")
        ? alongFrom(piece.paper.lines, "side", "underarm", by)
        : towards(arm, next, -by);
      piece.places.set("underarm", down);
    },
  },
  sideSeamBust: {
    title: /^(?:Let|Take) the side seams (?:out|in) at the bust/,
    follow: (piece, text, moves) => {
      const by = told(moves, "Mark ", " (?:out|in) from the side seam") * (text.startsWith("Let") ? 1 : -1);
      piece.move(["underarm", "sideBust"], shifted(by, 0));
      // Drawn on along its legs to a seam that is drawn smooth: where that is, moves do not say.
      for (const name of ["sideDartInner", "sideDartOuter"]) piece.places.delete(name);
    },
  },
  sideSeamUnderBust: {
    title: /^(?:Let|Take) the side seams (?:out|in) at the under-bust/,
    follow: (piece, text, moves) => {
      const isOut = text.startsWith("Let");
      const by = isOut ? told(moves, "seam on by ", " beyond") : told(moves, "Mark ", " in from the side");
      const side = piece.at("sideUnderBust");
      const inward = alongFrom(piece.paper.lines, "underBust", "sideUnderBust", by);
      piece.places.set("sideUnderBust", isOut ? { x: 2 * side.x - inward.x, y: 2 * side.y - inward.y } : inward);
    },
  },
  sideSeamWaist: {
    title: /^(?:Let|Take) the side seams (?:out|in) at the waist/,
    follow: (piece, text, moves) => {
      const isOut = text.startsWith("Let");
      const by = isOut ? told(moves, "seam on by ", " beyond") : told(moves, "Mark ", " in from the side");
      const side = piece.at("sideWaist");
      const inward = alongFrom(piece.paper.lines, "waist", "sideWaist", by);
      piece.places.set("sideWaist", isOut ? { x: 2 * side.x - inward.x, y: 2 * side.y - inward.y } : inward);
    },
  },
  sideSeamHip: {
    title: /^(?:Let|Take) the side seams (?:out|in) at the hip/,
    follow: (piece, text, moves) => {
      const isOut = text.startsWith("Let");
      const by = isOut ? told(moves, "line on by ", " beyond") : -told(moves, "Mark ", " in from the side");
      piece.move(["sideHip", "sideHem"], shifted(by, 0));
    },
  },
  lengthBasque: {
    title: /^(?:Lengthen|Shorten) the basque/,
    follow: (piece, text) => {
      const by = told(text, " by ", "") * (text.startsWith("Len") ? 1 : -1);
      piece.move(["sideHip", "centreHip", "sideHem", "centreHem"], shifted(0, by));
    },
  },
  bandDepth: {
    title: /^Make the midriff band .+ (?:deeper|shallower)/,
    follow: (piece, text) => {
      const by = amountIn(text) * (/deeper/.test(text) ? 1 : -1);
      piece.move(["sideWaist", "centreWaist"], shifted(0, by));
    },
  },
  backWidth: {
    title: /^(?:Widen|Narrow) across the back/,
    follow: (piece, text, moves) => slideArmhole(piece, text, moves),
  },
  chestWidth: {
    title: /^(?:Widen|Narrow) across the chest/,
    follow: (piece, text, moves) => slideArmhole(piece, text, moves),
  },
  backNeckGape: {
    title: /out of the back neck at the centre back/,
    follow: (piece, _text, moves) => {
      const by = told(moves, "Mark ", " in from the centre back");
      piece.places.set("centreNeck", alongFrom(piece.paper.lines, "neck", "centreNeck", by));
    },
  },
  roundBack: {
    title: /across the shoulder blades/,
    follow: (piece, text, moves) => {
      const by = amountIn(text) * (text.startsWith("Let") ? 1 : -1);
      const y = piece.at("centreNeck").y + told(moves, "centre back, ", " below the neck");
      const hinge = crossing(piece.seam("armhole"), (place) => place.y - y);
      const angle = swing(hinge, { x: piece.at("centreBust").x, y }, by);
      piece.move(
        piece.where((place) => place.y < y),
        turned(hinge, angle),
      );
    },
  },
  swayBack: {
    title: /across the back waist/,
    follow: (piece, text, moves) =>
      tilt(piece, moves, told(text, "(?:Take|Let) ", " (?:out|in)"), text.startsWith("Take")),
  },
  waistDropFront: {
    title: /the waist seam by .+ at the centre front/,
    follow: (piece, text, moves) => tilt(piece, moves, told(text, "seam by ", " at the centre"), /laps/.test(moves)),
  },
  waistDropBack: {
    title: /the waist seam by .+ at the centre back/,
    follow: (piece, text, moves) => tilt(piece, moves, told(text, "seam by ", " at the centre"), /laps/.test(moves)),
  },
  strapWidth: {
    title: /^Make the straps .+ (?:wider|narrower)/,
    follow: (piece, text, moves) => {
      const way = /wider/.test(text) ? 1 : -1;
      if (piece.has("strapFrontInner")) {
        const by = told(moves, "long edge ", " further") * way;
        for (const end of ["strapFront", "strapBack"] as const) {
          const [inner, outer] = [piece.at(`${end}Inner`), piece.at(`${end}Outer`)];
          piece.places.set(`${end}Outer`, towards(inner, outer, apart(inner, outer) + by));
        }
        return;
      }
      const by = told(moves, "(?:apart|together) by ", " each") * way;
      const [inner, outer] = [piece.at("strapInner"), piece.at("strapOuter")];
      piece.places.set("strapInner", towards(outer, inner, apart(inner, outer) + by));
      piece.places.set("strapOuter", towards(inner, outer, apart(inner, outer) + by));
    },
  },
  strapPlace: {
    title: /^Move the straps/,
    follow: (piece, text, moves) => {
      const by = told(moves, "strap’s? seam |strap's seam ", " nearer") * (/nearer the neck/.test(text) ? 1 : -1);
      const [inner, outer] = [piece.at("strapInner"), piece.at("strapOuter")];
      const wide = apart(inner, outer);
      piece.move(
        ["strapInner", "strapOuter"],
        shifted(((inner.x - outer.x) / wide) * by, ((inner.y - outer.y) / wide) * by),
      );
    },
  },
  strapLength: {
    title: /^(?:Lengthen|Shorten) the straps/,
    follow: (piece, text) => {
      const by = told(text, " by ", "") * (text.startsWith("Len") ? 1 : -1);
      const [a, b] = [piece.at("strapBackInner"), piece.at("strapFrontInner")];
      const [x, y] = [((b.x - a.x) / apart(a, b)) * by, ((b.y - a.y) / apart(a, b)) * by];
      piece.move(["strapFrontInner", "strapFrontOuter"], shifted(x, y));
    },
  },
};

/** The shoulder ruled from the neck end to a mark, as long as it was. */
function rule(piece: OnTable, mark: Place): void {
  const [neck, tip] = [piece.at("sideNeck"), piece.at("shoulderTip")];
  piece.places.set("shoulderTip", towards(neck, mark, apart(neck, tip)));
}

/** The part with the waist turned about a point of the side seam; the centre is then drawn straight again. */
function tilt(piece: OnTable, moves: string, by: number, isLapped: boolean): void {
  const isBasque = piece.has("sideHem");
  const way = isBasque ? -1 : 1;
  const at = (words: string): number => told(moves, words, isBasque ? " below the waist" : " above the waist");
  const hinge = alongFrom(piece.paper.lines, "side", "sideWaist", at("to the side seam, "));
  const centre = piece.at("centreWaist");
  const cut = { x: centre.x, y: centre.y - way * at("from the centre (?:front|back), ") };
  const beyond = piece.where((place, name) => {
    if (!/Waist|waistDart(?:Inner|Outer)/.test(name)) return false;
    return way * (place.y - cut.y) > 0;
  });
  // Lapped, the part with the waist comes nearer to the rest at the centre.
  const angle = swing(hinge, cut, by) * (isLapped ? 1 : -1) * way;
  piece.move(beyond, turned(hinge, angle));
  const waist = piece.at("centreWaist");
  piece.places.set("centreWaist", { x: centre.x, y: waist.y });
}

function slideArmhole(piece: OnTable, text: string, moves: string): void {
  const by = text.startsWith("Widen") ? told(moves, "gap down the line is ", "") : -told(moves, "laps ", " over");
  piece.move(["armholeTouch"], shifted(by, 0));
}

/** Alterations whose moves are followed. */
export const FOLLOWED_BY_MOVES: readonly string[] = Object.keys(KINDS);

/** Where the points of a traced piece lie after the moves of one alteration; the amounts told in it. */
export function followMoves(paper: Paper, { text, moves }: Job): { readonly places: Places; readonly told: number } {
  const kind = Object.values(KINDS).find(({ title }) => title.test(text));
  if (kind === undefined) throw new NotCovered(text);
  const piece = new OnTable(paper);
  const all = moves.join(" ");
  kind.follow(piece, text, all);
  return { places: piece.places, told: [...`${text} ${all}`.matchAll(new RegExp(LENGTH, "g"))].length };
}
