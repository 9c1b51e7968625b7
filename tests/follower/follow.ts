/**
 * Follows a printed checklist as a person would who has the tissue and the sheet and nothing else: traces a size, marks the
 * side seam from a printed line, draws darts and puts points where they are told from where they are printed, and draws the
 * lines between them as they were traced. Amounts are taken as printed. What it does not know how to do it says.
 */
import type { PieceName } from "../../src/core/pattern/piece";
import { LENGTH, lengthOf } from "./lengths";
import type { Job, PieceOfSheet } from "./sheet";
import type { Line, Paper, Place, Tissue } from "./tissue";

/** Pieces by what the sheet calls them. */
export const PIECES: Readonly<Record<string, PieceName>> = {
  FRONT: "front",
  "CENTRE FRONT": "centreFront",
  "SIDE FRONT": "sideFront",
  CUP: "cup",
  "FRONT MIDRIFF BAND": "frontBand",
  BACK: "back",
  "BACK MIDRIFF BAND": "backBand",
  "FRONT BASQUE": "frontBasque",
  "BACK BASQUE": "backBasque",
  STRAP: "strap",
  COLLAR: "other1",
};

/** Points of a tissue by what the sheet calls them; "#" is the centre front or back. */
const POINTS: Readonly<Record<string, string>> = {
  "# at the neck": "centreNeck",
  "neck end of the shoulder": "sideNeck",
  "armhole end of the shoulder": "shoulderTip",
  "hollow of the armhole": "armholeTouch",
  "neck end of the strap’s seam": "strapInner",
  "armhole end of the strap’s seam": "strapOuter",
  "top of the princess seam": "princessTop",
  underarm: "underarm",
  "side at the bust line": "sideBust",
  "side at the under-bust": "sideUnderBust",
  "side at the waist": "sideWaist",
  "side at the hip line": "sideHip",
  "side at the hem": "sideHem",
  "# at the hem": "centreHem",
  "# at the hip line": "centreHip",
  "# at the waist": "centreWaist",
  "# at the under-bust": "underBustCentre",
  "# at the bust line": "centreBust",
  "bust mark of the princess seam": "princessBust",
  "foot of the princess seam": "princessWaist",
  "front end, inner edge": "strapFrontInner",
  "front end, outer edge": "strapFrontOuter",
  "back end, inner edge": "strapBackInner",
  "back end, outer edge": "strapBackOuter",
  "pattern’s bust point": "bustPoint",
  "corner of the neckline": "neckCorner",
};

const HOMES: Readonly<Record<string, string>> = {
  "side dart": "sideDart",
  "French dart": "frenchDart",
  "waist dart": "waistDart",
  "under-bust dart": "underBustDart",
  "shoulder dart": "shoulderDart",
  "armhole dart": "armholeDart",
  "neck dart": "neckDart",
  "centre-front dart": "centreDart",
};

export class NotCovered extends Error {}
/** The sheet does not say enough, or says what cannot be done. */
export class SheetAtFault extends Error {}

function dartNamed(words: string): string {
  const [, number = "", home = ""] = /^(second |third )?(.+)$/.exec(words) ?? [];
  const name = HOMES[home];
  if (name === undefined) throw new NotCovered(`a dart called ${words}`);
  return `${name}${{ "second ": "2", "third ": "3" }[number] ?? ""}`;
}

/** A point by its printed words; ends of gathers by their dart's. */
function pointNamed(words: string): string {
  const plain = words.toLowerCase().replace(/^centre (?:front|back)/, "#");
  const point = POINTS[plain];
  if (point !== undefined) return point;
  const corner = /^corner (\d+)$/.exec(plain)?.[1];
  if (corner !== undefined) return `corner${String(Number(corner) - 1).padStart(2, "0")}`;
  const end = /^mouth of the (.+ dart), (upper|inner|lower|outer) end$/.exec(plain);
  if (end === null) throw new SheetAtFault(`no tissue has a “${words}”`);
  const isFirst = end[2] === "upper" || end[2] === "inner";
  return `${dartNamed((end[1] ?? "").replace("french", "French"))}${isFirst ? "Inner" : "Outer"}`;
}

const AWAY = new RegExp(`^(?:(${LENGTH}) (outwards|inwards))?(?: and )?(?:(${LENGTH}) (down|up))?$`);

/** "13 mm outwards and 5 mm up", in mm; null where the words are none of the kind. */
function awayOf(words: string): Place | null {
  const found = AWAY.exec(words);
  if (found === null || words === "") return null;
  const [, across, side, along, way] = found;
  return {
    x: across === undefined ? 0 : lengthOf(across) * (side === "outwards" ? 1 : -1),
    y: along === undefined ? 0 : lengthOf(along) * (way === "down" ? 1 : -1),
  };
}

/** A piece on the table: where its points lie now, what its lines are traced from, and which points were told. */
interface OnTable {
  readonly name: PieceName;
  readonly tissue: Tissue;
  readonly traced: Paper;
  /** The cup version that it is traced from, where one is named. */
  readonly cup: string | null;
  readonly places: Map<string, Place>;
  readonly told: Set<string>;
  /** Lines that are to measure what is told. */
  readonly lengths: { readonly from: string; readonly to: string; readonly length: number }[];
  /** Darts that were closed on the way. */
  readonly closed: Set<string>;
  /** Moves that draw a new neckline on the piece when all else is done; none: it keeps its own. */
  readonly neckline: string[];
}

export interface Followed {
  readonly name: PieceName;
  readonly places: ReadonlyMap<string, Place>;
  readonly lines: readonly Line[];
  /** Points that were put by an amount of the sheet. */
  readonly told: ReadonlySet<string>;
}

/** Steps that say what is to be done on the way; where their points end up is told from the tissue afterwards. */
export interface Following {
  readonly followed: Followed;
  /** Titles of the alterations whose points were placed by what the sheet tells of the tissue. */
  readonly onTheWay: readonly string[];
}

/** Works through the jobs of one piece. */
export function follow(group: PieceOfSheet, jobs: readonly Job[], tissue: Tissue): Following {
  const name = PIECES[group.title];
  if (name === undefined) throw new SheetAtFault(`no pattern has a piece “${group.title}”`);
  let piece: OnTable | null = null;
  const onTheWay: string[] = [];
  for (const job of jobs) {
    if (job.text.startsWith("Trace")) piece = trace(name, job.text, tissue);
    else if (piece === null) throw new SheetAtFault(`${group.title}: work before anything is traced`);
    else if (!doneOn(piece, job)) {
      onTheWay.push(job.text);
      close(piece, job);
    }
  }
  if (piece === null) throw new SheetAtFault(`${group.title}: nothing is traced`);
  return { followed: drawn(piece), onTheWay };
}

function trace(name: PieceName, text: string, tissue: Tissue): OnTable {
  const size = /^Trace the (.+) line of the /.exec(text)?.[1];
  const cup = /^Trace the .+? line of the .+?, cup version (\S+?),? with /.exec(text)?.[1] ?? null;
  const traced = size === undefined ? null : tissue.paper(name, size, cup);
  if (traced === null) throw new SheetAtFault(`nothing to trace: ${text}`);
  return {
    name,
    tissue,
    traced,
    cup,
    places: new Map(traced.places),
    told: new Set(),
    lengths: [],
    closed: new Set(),
    neckline: [],
  };
}

/** False for a job whose moves lead to places that are told later. */
function doneOn(piece: OnTable, job: Job): boolean {
  if (/^(?:Level with the side of|At the (?:waist|hip) the side seam stays)/.test(job.text))
    return blend(piece, job.text);
  const dart = /(?:Draw|Check) the ((?:second |third )?\S+ dart), all the above included: mouth/.exec(job.text)?.[1];
  if (dart !== undefined) return drawDart(piece, dartNamed(dart), job.moves);
  if (job.text.startsWith("Lay the piece on the tissue")) {
    const isCounted = /Check its points, all the above included: they lie so far from where each is printed/.test(
      job.text,
    );
    if (!isCounted && !/Draw the lines between its points/.test(job.text))
      throw new SheetAtFault(`nothing says what places are counted from: ${job.text}`);
    return putPoints(piece, job);
  }
  if (job.text.startsWith("Draw the new neckline on the finished piece")) {
    if (!/each point from where it lies now/.test(job.text))
      throw new SheetAtFault(`nothing says what a neckline is counted from: ${job.text}`);
    piece.neckline.push(...job.moves);
    return true;
  }
  if (/^(?:Fold the .+ dart closed|Draw the .+ smooth|Redraw the end of the )/.test(job.text)) return true;
  return false;
}

/** A dart that is closed whole on the way to another place is no more. */
function close(piece: OnTable, { text, moves }: Job): void {
  if (text.startsWith("Join the ")) throw new NotCovered(text);
  for (const move of moves) {
    const shut = /^Close the (.+ dart): swing that part/.exec(move)?.[1];
    if (shut !== undefined) piece.closed.add(dartNamed(shut));
  }
}

const placeOn = (paper: Paper | null, point: string): Place => {
  const place = paper?.places.get(point);
  if (place === undefined) throw new SheetAtFault(`the tissue has no ${point}`);
  return place;
};

function put(piece: OnTable, point: string, place: Place): void {
  piece.places.set(point, place);
  piece.told.add(point);
}

/** The side seam marked level with the traced corner, so far outside or inside where a printed line ends. */
function blend(piece: OnTable, text: string): true {
  if (/nothing to mark/.test(text)) return true;
  const level = /^Level with the side of the traced (waist|hip) line, mark the side seam /.exec(text);
  const rest = text.slice(level?.[0].length ?? 0);
  const point = level?.[1] === "hip" ? "sideHip" : "sideWaist";
  const on = /^on the (\S.*?) line[ .(]/.exec(rest)?.[1];
  const off = new RegExp(`^(${LENGTH}) (outside|inside) the (?:waist|hip) end of the (.+?) line`).exec(rest);
  const size = on ?? off?.[3];
  if (level === null || size === undefined) throw new SheetAtFault(`no mark: ${text}`);
  const away = off === null ? 0 : lengthOf(off[1] ?? "") * (off[2] === "outside" ? 1 : -1);
  const old = placeOn(piece.traced, point);
  const x = placeOn(piece.tissue.paper(piece.name, size, piece.cup), point).x + away;
  put(piece, point, { x, y: old.y });
  if (/on to the hem as far from the traced line as here/.test(text)) {
    const hem = placeOn(piece.traced, "sideHem");
    put(piece, "sideHem", { x: hem.x + x - old.x, y: hem.y });
  }
  return true;
}

/** "5 mm outwards and 22 mm down", "where it is printed", "12 mm inwards from the printed underarm". */
function toldPlace(piece: OnTable, point: string, words: string): Place {
  const from = /^(.*?) ?(?:from|at) the printed (.+)$/.exec(words);
  const known = placeOn(piece.traced, from === null ? point : pointNamed(from[2] ?? ""));
  const away = from === null ? words : (from[1] ?? "");
  if (away === "" || away === "where it is printed") return known;
  const by = awayOf(away);
  if (by === null) throw new SheetAtFault(`no place: ${words}`);
  return { x: known.x + by.x, y: known.y + by.y };
}

function drawDart(piece: OnTable, dart: string, moves: readonly string[]): true {
  const [mouth, end] = ["mouth", "end"].map((part) => {
    const said = moves
      .map((move) => new RegExp(`^Its ${part}(, from where it is printed)?: (.+)\\.$`).exec(move))
      .find((found) => found !== null);
    // An amount that stands alone would be taken for one more move.
    const [, counted, words = ""] = said ?? [];
    const isAway = new RegExp(`${LENGTH} \\w+(?! (?:and|from))(?:;|$)`).test(words);
    if (isAway && counted === undefined) throw new SheetAtFault(`nothing says what is counted from: ${said?.[0]}`);
    return said?.[2];
  });
  if (mouth === undefined || end === undefined) throw new SheetAtFault(`nothing says where the ${dart} lies`);
  const both = /^both ends (.+)$/.exec(mouth)?.[1] ?? (/end .*;/.test(mouth) ? undefined : mouth);
  const two = /^(?:upper|inner) end (.+); (?:lower|outer) end (.+)$/.exec(mouth);
  const [inner, outer] = both === undefined ? [two?.[1], two?.[2]] : [both, both];
  if (inner === undefined || outer === undefined) throw new SheetAtFault(`no mouth: ${mouth}`);
  put(piece, `${dart}Inner`, toldPlace(piece, `${dart}Inner`, inner));
  put(piece, `${dart}Outer`, toldPlace(piece, `${dart}Outer`, outer));
  put(piece, `${dart}Apex`, toldPlace(piece, `${dart}Apex`, end));
  return true;
}

function putPoints(piece: OnTable, { moves }: Job): true {
  for (const move of moves) {
    const line = new RegExp(`^Draw the .+ from the (.+) to the (.+) in a smooth line (${LENGTH}) long\\.$`).exec(move);
    if (line !== null) {
      piece.lengths.push({
        from: pointNamed(line[1] ?? ""),
        to: pointNamed(line[2] ?? ""),
        length: lengthOf(line[3] ?? ""),
      });
      continue;
    }
    const found = /^([^:]+): (.+)\.$/.exec(move);
    if (found === null) throw new SheetAtFault(`no place: ${move}`);
    const point = pointNamed(found[1] ?? "");
    const level = new RegExp(`^(${LENGTH}) straight (below|above) its mark$`).exec(found[2] ?? "");
    if (level !== null) {
      const mark = placeOn({ ...piece.traced, places: piece.places }, point);
      put(piece, point, { x: mark.x, y: mark.y + lengthOf(level[1] ?? "") * (level[2] === "below" ? 1 : -1) });
      continue;
    }
    put(piece, point, toldPlace(piece, point, found[2] ?? ""));
  }
  return true;
}

const apart = (a: Place, b: Place): number => Math.hypot(b.x - a.x, b.y - a.y);

/** A traced line laid between two new ends: turned to lie in them, and drawn that much longer or shorter. */
function carried(along: readonly Place[], from: Place, to: Place): readonly Place[] {
  const [first, last] = [along[0], along.at(-1)];
  if (first === undefined || last === undefined) return along;
  const [ux, uy, vx, vy] = [last.x - first.x, last.y - first.y, to.x - from.x, to.y - from.y];
  const size = ux * ux + uy * uy;
  const [cos, sin] = [(ux * vx + uy * vy) / size, (ux * vy - uy * vx) / size];
  return along.map(({ x, y }) => {
    const [dx, dy] = [x - first.x, y - first.y];
    return { x: from.x + cos * dx - sin * dy, y: from.y + sin * dx + cos * dy };
  });
}

/** A line drawn fuller or flatter between its ends until it measures what is told. */
function toLength(traced: readonly Place[], wanted: number): readonly Place[] {
  const [a, b] = [traced[0], traced.at(-1)];
  if (a === undefined || b === undefined) return traced;
  const chord = apart(a, b);
  // A line ruled straight has no hollow to draw fuller: it is given one.
  const along = lengthAlong(traced) - chord > STRAIGHT ? traced : bowed(a, b);
  const [ux, uy] = [(b.x - a.x) / chord, (b.y - a.y) / chord];
  const fuller = (by: number): readonly Place[] =>
    along.map(({ x, y }) => {
      const off = (x - a.x) * -uy + (y - a.y) * ux;
      return { x: x - uy * off * (by - 1), y: y + ux * off * (by - 1) };
    });
  let [least, most] = [0, 4];
  for (let round = 0; round < 40; round += 1) {
    const middle = (least + most) / 2;
    if (lengthAlong(fuller(middle)) < wanted) least = middle;
    else most = middle;
  }
  const done = fuller(least);
  // A line without any hollow of its own can be drawn no longer than straight but by a little bow: the ruler's own doubt.
  return Math.abs(lengthAlong(done) - wanted) < Math.abs(lengthAlong(along) - wanted) ? done : along;
}

/** mm. A line that much longer than its ends are apart is as good as ruled. */
const STRAIGHT = 0.01;

/** A line with a little even hollow between two places. */
function bowed(a: Place, b: Place): readonly Place[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  return Array.from({ length: 25 }, (_, i) => {
    const t = i / 24;
    const bow = 0.1 * t * (1 - t);
    return { x: a.x + t * dx - bow * dy, y: a.y + t * dy + bow * dx };
  });
}

const lengthAlong = (along: readonly Place[]): number =>
  along.reduce((sum, place, i) => sum + (i === 0 ? 0 : apart(along[i - 1] ?? place, place)), 0);

/** Stretches of one seam between two corners of the piece, with the mouths of darts among them. */
interface Stretch {
  readonly seam: string;
  readonly lines: readonly Line[];
}

const isOfDart = (name: string): boolean => /Dart\d?(?:Inner|Outer)$/.test(name);

function stretchesOf(lines: readonly Line[]): readonly Stretch[] {
  const stretches: { seam: string; lines: Line[] }[] = [];
  for (const line of lines) {
    const last = stretches.at(-1);
    if (last !== undefined && last.seam === line.seam && isOfDart(line.from)) last.lines.push(line);
    else stretches.push({ seam: line.seam, lines: [line] });
  }
  return stretches;
}

/** The seam that a dart opens on, by its name. */
const SEAM_OF: Readonly<Record<string, string>> = {
  side: "side",
  french: "side",
  waist: "waist",
  underBust: "underBust",
  shoulder: "shoulder",
  armhole: "armhole",
  neck: "neck",
  centre: "centre",
};

const at = (piece: OnTable, name: string): Place => {
  const place = piece.places.get(name);
  if (place === undefined) throw new SheetAtFault(`${name} is nowhere`);
  return place;
};

/** All lines between the points as they lie now. */
function drawn(piece: OnTable): Followed {
  const printed = new Set(piece.traced.darts.map(({ name }) => name));
  const made = [...piece.told]
    .flatMap((name) => /^(.+Dart\d?)Inner$/.exec(name)?.[1] ?? [])
    .filter((name) => !printed.has(name));
  const stretches = stretchesOf(piece.traced.lines);
  const lines = stretches.flatMap((stretch): readonly Line[] => {
    const added = made.filter((dart) => opensOn(piece, dart, stretch, stretches));
    const hasClosed = stretch.lines.some(({ from, isMouth }) => isMouth && piece.closed.has(dartOfEnd(from)));
    if (added.length > 0 || hasClosed) return redivided(piece, stretch, added);
    return stretch.lines.map((line) => ({
      ...line,
      along: carried(line.along, at(piece, line.from), at(piece, line.to)),
    }));
  });
  const done = lines.map((line): Line => {
    const told = piece.lengths.find(({ from, to }) => from === line.from && to === line.to);
    return told === undefined ? line : { ...line, along: toLength(line.along, told.length) };
  });
  return withNeckline({ name: piece.name, places: piece.places, lines: done, told: piece.told }, piece.neckline);
}

/** The neckline cut anew on the finished piece: its corners counted from where they lie, old lines cut off at its ends. */
function withNeckline(piece: Followed, moves: readonly string[]): Followed {
  if (moves.length === 0) return piece;
  const [places, told] = [new Map(piece.places), new Set(piece.told)];
  const neck: Line[] = [];
  const placeOf = (of: ReadonlyMap<string, Place>, point: string): Place => {
    const place = of.get(point);
    if (place === undefined) throw new SheetAtFault(`a neckline by a ${point} that is nowhere`);
    return place;
  };
  for (const move of moves) {
    const line = /^Draw the neckline from the (.+?) to the (.+?) in a (straight|smooth) line(.*)\.$/.exec(move);
    if (line !== null) {
      const [from, to] = [pointNamed(line[1] ?? ""), pointNamed(line[2] ?? "")];
      const ends = [placeOf(places, from), placeOf(places, to)] as const;
      const long = new RegExp(`^ (${LENGTH}) long`).exec(line[4] ?? "");
      if ((line[3] === "smooth") !== (long !== null)) throw new SheetAtFault(`no line: ${move}`);
      const along = long === null ? ends : toLength(bowed(...ends), lengthOf(long[1] ?? ""));
      neck.push({ seam: "neck", from, to, along, isMouth: false });
      continue;
    }
    const found = /^([^:]+): (.*?)(?: ?from the old (.+?)|at the old (.+?))?(?: \(.+ along the shoulder\))?\.$/.exec(
      move,
    );
    const point = pointNamed(found?.[1] ?? "");
    const away = found?.[2] ?? "";
    const old = placeOf(
      piece.places,
      found?.[3] === undefined && found?.[4] === undefined ? point : pointNamed(found[3] ?? found[4] ?? ""),
    );
    const by = away === "" ? { x: 0, y: 0 } : awayOf(away.trim());
    if (found === null || by === null) throw new SheetAtFault(`no place: ${move}`);
    places.set(point, { x: old.x + by.x, y: old.y + by.y });
    told.add(point);
  }
  return { ...piece, places, told, lines: relined(piece.lines, neck, places) };
}

/** The lines of a piece with what the new neckline cuts off left out, and those that it ends at cut to its ends. */
function relined(lines: readonly Line[], neck: readonly Line[], places: ReadonlyMap<string, Place>): readonly Line[] {
  const [first, last] = [neck[0]?.from, neck.at(-1)?.to];
  const start = lines.findIndex(({ from }) => from === first);
  const ring = [...lines.slice(start), ...lines.slice(0, start)];
  const end = ring.findIndex(({ to }) => to === last);
  // A side front keeps all its lines: the shoulder begins where the neckline comes to it.
  const kept =
    end < 0 ? ring.map((line, index) => (index === 0 ? { ...line, from: last ?? "" } : line)) : ring.slice(end + 1);
  return [
    ...neck,
    ...kept.map((line) =>
      line.from === last ? cutTo(line, "from", places) : line.to === first ? cutTo(line, "to", places) : line,
    ),
  ];
}

/** A line with what lies beyond the new neckline cut off, or drawn on to it. */
function cutTo(line: Line, which: "from" | "to", places: ReadonlyMap<string, Place>): Line {
  const isFrom = which === "from";
  const end = places.get(line[which]);
  if (end === undefined) return line;
  const along = isFrom ? line.along : line.along.toReversed();
  const nearest = along.slice(1).reduce(
    (best, place, i) => {
      const off = fromStep(end, along[i] ?? place, place);
      return off < best.off - 1e-9 ? { off, at: i + 1 } : best;
    },
    { off: Infinity, at: 1 },
  );
  const cut = [end, ...along.slice(nearest.at)];
  return { ...line, along: isFrom ? cut : cut.toReversed() };
}

const dartOfEnd = (name: string): string => name.replace(/(?:Inner|Outer)$/, "");

/** How far a place lies from the straight step between two others. */
function fromStep(place: Place, a: Place, b: Place): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const share = ((place.x - a.x) * dx + (place.y - a.y) * dy) / (dx * dx + dy * dy || 1);
  const t = Math.min(1, Math.max(0, share));
  return apart(place, { x: a.x + t * dx, y: a.y + t * dy });
}

/** Of the stretches of the dart's own seam, the one its mouth lies nearest. */
function opensOn(piece: OnTable, dart: string, stretch: Stretch, all: readonly Stretch[]): boolean {
  const seam = SEAM_OF[dart.replace(/Dart\d?$/, "")];
  const mouth = at(piece, `${dart}Inner`);
  const own = all.filter((one) => one.seam === seam);
  const off = ({ lines }: Stretch): number =>
    Math.min(
      ...lines.map((line) => {
        const laid = carried(line.along, at(piece, line.from), at(piece, line.to));
        return Math.min(...laid.slice(1).map((place, i) => fromStep(mouth, laid[i] ?? place, place)));
      }),
    );
  const [first] = own.toSorted((a, b) => off(a) - off(b));
  return first === stretch;
}

/** A stretch with other mouths than traced: its line, old darts shut that are gone, cut anew at the mouths that are told. */
function redivided(piece: OnTable, { seam, lines }: Stretch, added: readonly string[]): readonly Line[] {
  const [first, last] = [lines[0], lines.at(-1)];
  if (first === undefined || last === undefined) return [];
  const start = at(piece, first.from);
  const kept = lines.flatMap(({ from, isMouth }) =>
    isMouth && !piece.closed.has(dartOfEnd(from)) ? [dartOfEnd(from)] : [],
  );
  const whole = joined(lines.filter(({ isMouth }) => !isMouth).map(({ along }) => along));
  const ends = (dart: string): readonly [string, string] => {
    const [inner, outer] = [`${dart}Inner`, `${dart}Outer`];
    return apart(start, at(piece, inner)) <= apart(start, at(piece, outer)) ? [inner, outer] : [outer, inner];
  };
  const mouths = [...kept, ...added]
    .map(ends)
    .toSorted(([a], [b]) => apart(start, at(piece, a)) - apart(start, at(piece, b)));
  const points = [first.from, ...mouths.flat(), last.to];
  // Sewn stretches stand between the 1st and 2nd of the points, the 3rd and 4th, and so on.
  const chords = mouths
    .concat([["", ""]])
    .map((_, i) => apart(at(piece, points[2 * i] ?? ""), at(piece, points[2 * i + 1] ?? "")));
  const all = chords.reduce((sum, one) => sum + one, 0);
  let gone = 0;
  return chords.flatMap((chord, i): readonly Line[] => {
    const [from, to, next] = [points[2 * i] ?? "", points[2 * i + 1] ?? "", points[2 * i + 2]];
    const part = between(whole, gone / all, (gone + chord) / all);
    gone += chord;
    const sewn: Line = { seam, from, to, along: carried(part, at(piece, from), at(piece, to)), isMouth: false };
    if (next === undefined) return [sewn];
    return [sewn, { seam, from: to, to: next, along: [at(piece, to), at(piece, next)], isMouth: true }];
  });
}

/** Lines laid end to end, each turned so that it goes on the way that the one before ends. */
function joined(all: readonly (readonly Place[])[]): readonly Place[] {
  return all.reduce<readonly Place[]>((sum, along) => {
    const [p, q, a, b] = [sum.at(-2), sum.at(-1), along[0], along[1]];
    if (p === undefined || q === undefined || a === undefined || b === undefined) return along;
    const turn = Math.atan2(q.y - p.y, q.x - p.x) - Math.atan2(b.y - a.y, b.x - a.x);
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const laid = along.map(({ x, y }) => ({
      x: q.x + cos * (x - a.x) - sin * (y - a.y),
      y: q.y + sin * (x - a.x) + cos * (y - a.y),
    }));
    return [...sum, ...laid.slice(1)];
  }, []);
}

/** The part of a line between two shares of its length. */
function between(along: readonly Place[], from: number, to: number): readonly Place[] {
  const whole = lengthAlong(along);
  const on = (share: number): Place => {
    let left = share * whole;
    for (let i = 1; i < along.length; i += 1) {
      const [a, b] = [along[i - 1], along[i]];
      if (a === undefined || b === undefined) continue;
      const step = apart(a, b);
      if (left <= step || i === along.length - 1)
        return { x: a.x + (b.x - a.x) * (left / step), y: a.y + (b.y - a.y) * (left / step) };
      left -= step;
    }
    return along[0] ?? { x: 0, y: 0 };
  };
  const count = Math.max(along.length, 12);
  return Array.from({ length: count + 1 }, (_, i) => on(from + ((to - from) * i) / count));
}

/** Length of the sewn line of a seam on a piece. */
export const sewnLength = ({ lines }: Pick<Paper, "lines">, seam: string): number =>
  lines.filter((line) => line.seam === seam && !line.isMouth).reduce((sum, { along }) => sum + lengthAlong(along), 0);
