/** Finds tolerances: how near two things must be to count as one. All of them belong in one file, each with its reason. */
import { posix } from "node:path";
import { isNode, parse, walk, type Node } from "./source";

export const TOLERANCES = "src/core/tolerance.ts";

/**
 * Comparisons that look like a tolerance's and are none: they ask how much there is of something, not whether two things are
 * as good as one. By the name of their file, in whatever folder it stands; each must still be there.
 */
export const NO_TOLERANCES: readonly {
  readonly file: string;
  readonly texts: readonly string[];
  readonly because: string;
}[] = [
  {
    file: "drawingBuilder.ts",
    texts: ["Math.abs(value) <= LIMITS.fileCoordinate"],
    because: "how far out a file may draw",
  },
  {
    file: "dxfShapes.ts",
    texts: ["Math.abs(n.x) < near", "Math.abs(n.y) < near"],
    because: "the format's own rule for which way a plane lies",
  },
  { file: "buttons.ts", texts: ["Math.abs(at - seam) >= BUTTON_FROM_SEAM"], because: "room for a buttonhole" },
  { file: "room.ts", texts: ["to - from > 4 * GRAIN_END"], because: "how long a grain line is worth drawing" },
  {
    file: "alongLine.ts",
    texts: ["from < FROM_END", "bent > MOST_BENT"],
    because: "room for words along a line, and how bent a line words still go along",
  },
  { file: "notches.ts", texts: ["Math.abs(at - along) >= CLEAR"], because: "room for a notch" },
  {
    file: "ringParts.ts",
    texts: ["part.to - part.from < STUB", "last.to - last.from < STUB"],
    because: "how long a strip is worth having",
  },
  { file: "titlePlace.ts", texts: ["Math.max(width, height) >= TITLED_LENGTH"], because: "room for a title" },
  {
    file: "overlayOf.ts",
    texts: ["near.distance <= BESIDE"],
    because: "how far off a printed line is taken on a strip",
  },
  {
    file: "overlayInk.ts",
    texts: [
      "off < LEADER_FROM",
      "Math.abs(x) < box.width / 2 + CLEAR",
      "Math.abs(y) < box.height / 2 + CLEAR",
      "v > half + CLEAR",
      "v < -half - CLEAR",
      "distance(a, b) <= 1",
    ],
    because: "room for words, and how densely a line is looked at to find it",
  },
  {
    file: "pieceInk.ts",
    texts: ["distance(...fold) < FOLD_NAMED"],
    because: "how long a line must be to have words along it",
  },
  { file: "binWork.ts", texts: ["now() - binned > BIN_TIME"], because: "how long a work lies in the bin" },
  {
    file: "copies.ts",
    texts: ["now() - since < MONTH"],
    because: "from when on a copy is reminded of",
  },
  {
    file: "keepHere.ts",
    texts: ["Date.now() - last < NOW_AND_THEN"],
    because: "how often an open page asks for a newer version",
  },
  {
    file: "useSheetHand.ts",
    texts: ["at - tap.at < TWO_TAPS", "event.timeStamp - askedAt < 2 * HOLD", "event.timeStamp - from.at < HOLD"],
    because: "how long a finger takes for two taps, and how long it is held",
  },
  { file: "readChart.ts", texts: ["step > LARGE_STEP"], because: "the largest step that a chart has without a word" },
  { file: "checks.ts", texts: ["Math.abs(value) > LONG"], because: "from where on a figure is told as a length" },
  {
    file: "jobText.ts",
    texts: ["Math.abs(value) < LONG", "Math.max(Math.abs(a), Math.abs(b)) >= LONG"],
    because: "from where on an amount is told as a length",
  },
  { file: "length.ts", texts: ["Math.abs(mm) >= EIGHTHS_FROM"], because: "from where on a figure is told in eighths" },
  { file: "tape.ts", texts: ["most - least < WIDE"], because: "from where on a range is told in larger steps" },
  {
    file: "chartFit.ts",
    texts: ["moved(waist) <= 0.5", "moved(hip) <= 0.5", "Math.max(moved(waist), moved(hip)) <= 0.5"],
    because: "within half a size, which is what is counted and told",
  },
  {
    file: "alternatives.ts",
    texts: ["Math.abs(index - planners.index) <= SIZES_OFF"],
    because: "how many sizes up and down are looked at",
  },
  {
    file: "ruleRegions.ts",
    texts: ["one.cell.to - one.cell.from > NARROWEST_CELL"],
    because: "how finely a stretch of girths is looked through",
  },
  { file: "chartPlot.ts", texts: ["(most - least) / each <= MOST_TICKS"], because: "how many marks an axis has" },
  { file: "chest.ts", texts: ["reach < WITHIN"], because: "how far in the body begins" },
  { file: "lineMarks.ts", texts: ["size > MOST_MARK"], because: "how large a mark is" },
  { file: "strokes.ts", texts: ["Math.abs(at) < FURTHEST"], because: "how far away a line may lie and be drawn" },

  {
    file: "takenInside.ts",
    texts: [
      "distance(from, p) >= SEEN_FROM",
      'distance(first, invariant(line[1], "point")) > 2 * SEEN_FROM',
      "Math.abs(bend) < LEAST_BEND",
      "Math.abs(bend) > MOST_BEND",
    ],
    because: "over how far the bend of a line is seen, and what a seam bends at the most",
  },
  {
    file: "bustPoints.ts",
    texts: [
      "distance(apex, met) < FURTHEST_STOP",
      "distance(end, at) > AT_END",
      "u > 0.2",
      "u < 0.75",
      "v > 0.3",
      "v < 0.85",
    ],
    because: "where on a front a bust point may lie",
  },
  {
    file: "findCorners.ts",
    texts: [
      "Math.abs(joint.turn) < SHARP",
      "by < BEND",
      "Math.abs(turn) < 30",
      "Math.abs(place.s - at) < FIXED_AT",
      "Math.abs(place.s - s) >= FIXED_AT",
      "Math.abs(s - here) < FIXED_AT",
    ],
    because: "how much a line turns to be proposed as a corner, and steps along it",
  },
  { file: "findDarts.ts", texts: ["distance(a, b) > SHORTEST"], because: "how long the leg of a dart is" },
  {
    file: "tracePiece.ts",
    texts: [
      "length < LONG",
      "Math.abs(one.lean - lean) < SAME_LEAN",
      "Math.abs(lean) > SAME_LEAN",
      "Math.abs(turnAt(last, edge)) < STILL_STRAIGHT",
      "distance(place.at, at) < GUESS_CLEAR",
      "Math.abs(place.turn) > OTHER_CORNER",
      "Math.abs(one.share - other.share) < LIKE_SHARE",
      "Math.abs(way) > 90",
    ],
    because: "what is proposed of a line's form: which way it stands, what turns as a corner, which dart is which",
  },
  {
    file: "tracedRing.ts",
    texts: ["chord <= LONGEST_STEP"],
    because: "how long a stretch may be that stands for a curve",
  },
  { file: "normalQuantile.ts", texts: ["Math.abs(off) <= 0.425"], because: "where a published formula is parted" },
];

/** Gives the text of a file of src, or nothing where there is no such file. */
export type ReadFile = (file: string) => string | undefined;

/** What a name stands for where it is seen. */
interface Meaning {
  readonly value: Node | null;
  readonly scope: Scope;
  readonly isConst: boolean;
}

interface Scope {
  readonly file: string;
  readonly names: Map<string, Meaning>;
  readonly outer: Scope | null;
}

const FUNCTIONS = new Set(["ArrowFunctionExpression", "FunctionExpression", "FunctionDeclaration"]);
/** What stands round an expression and changes nothing of its value. */
const WRAPPERS = new Set([
  "ChainExpression",
  "ParenthesizedExpression",
  "TSAsExpression",
  "TSNonNullExpression",
  "TSSatisfiesExpression",
]);
const COMPARISONS = new Set(["<", "<=", ">", ">="]);

const DISTANCES = new Set(["distance", "lineDistance", "Math.hypot"]);
/** What gives back one of its arguments, or something as small. */
const KEEPERS = new Set(["Math.max", "Math.min", "Math.sqrt", "radians", "degrees", "degreesFrom", "invariant"]);
/** Names of members that hold how far things are apart. */
const APART = new Set(["distance", "gap", "off"]);
/** Names of counts and of places in a row. */
const COUNTS = new Set(["count", "index", "length", "size"]);
const UNIT_MAKERS = new Set(["radians", "radiansFromDegrees"]);
/** Functions that are given a tolerance, and as which argument. */
const GIVEN_AS: Readonly<Record<string, number>> = {
  areBoundsNear: 2,
  cubicFlatten: 1,
  edgeFlatten: 1,
  isWithinBounds: 2,
};

const PAGE_PLACE = /^(?:client|movement|offset|page|screen)[XY]$/;

/** A literal no larger than this is closer than any length, share or angle is chosen. */
const SMALL = 1e-3;
/** A share of something no larger than this is a slack that grows with it; a larger one is a part of it. */
const SLACK_SHARE = 0.1;

const held = (node: Node, field: string): Node | null => {
  const value = node[field];
  return isNode(value) ? value : null;
};

const heldAll = (node: Node, field: string): readonly Node[] => {
  const value = node[field];
  return Array.isArray(value) ? value.filter(isNode) : [];
};

const nameOf = (node: Node | null): string | null =>
  node?.type === "Identifier" && typeof node["name"] === "string" ? node["name"] : null;

/** "Math.abs" of what is so called; null of anything but names and their members. */
function pathOf(node: Node | null): string | null {
  if (node?.type !== "MemberExpression" || node["computed"] === true) return nameOf(node);
  const object = pathOf(held(node, "object"));
  const property = nameOf(held(node, "property"));
  return object === null || property === null ? null : `${object}.${property}`;
}

function meaningOf(name: string, scope: Scope | null): Meaning | null {
  if (scope === null) return null;
  return scope.names.get(name) ?? meaningOf(name, scope.outer);
}

/** Every name of a pattern with what it is taken from, as far as that can be told. */
function namesIn(pattern: Node | null, value: Node | null): readonly (readonly [string, Node | null])[] {
  if (pattern === null) return [];
  switch (pattern.type) {
    case "Identifier":
      return [[String(pattern["name"]), value]];
    case "AssignmentPattern":
      return namesIn(held(pattern, "left"), value);
    case "ArrayPattern": {
      const { elements } = pattern;
      const from = value?.type === "ArrayExpression" ? value["elements"] : null;
      return (Array.isArray(elements) ? elements : []).flatMap((element: unknown, at) => {
        const given: unknown = Array.isArray(from) ? from[at] : null;
        return isNode(element) ? namesIn(element, isNode(given) ? given : null) : [];
      });
    }
    case "ObjectPattern":
      return heldAll(pattern, "properties").flatMap((property) =>
        namesIn(held(property, "value"), {
          type: "MemberExpression",
          object: value,
          property: held(property, "key"),
          computed: false,
        }),
      );
    default:
      return [];
  }
}

/** The scope that a node opens, with the names that stand in it; the one it lies in where it opens none. */
function scopeWithin(node: Node, outer: Scope): Scope {
  const isFunction = FUNCTIONS.has(node.type);
  const statements =
    node.type === "Program" || node.type === "BlockStatement"
      ? heldAll(node, "body")
      : node.type.startsWith("For")
        ? [held(node, "init") ?? held(node, "left")].filter((one) => one !== null)
        : [];
  if (!isFunction && statements.length === 0) return outer;
  const scope: Scope = { file: outer.file, names: new Map(), outer };
  for (const parameter of isFunction ? heldAll(node, "params") : [])
    for (const [name, value] of namesIn(parameter, null)) scope.names.set(name, { value, scope, isConst: false });
  for (const statement of statements) {
    const declared = statement.type === "ExportNamedDeclaration" ? held(statement, "declaration") : statement;
    if (declared?.type !== "VariableDeclaration") continue;
    const isConst = declared["kind"] === "const";
    for (const declarator of heldAll(declared, "declarations"))
      for (const [name, value] of namesIn(held(declarator, "id"), held(declarator, "init")))
        scope.names.set(name, { value, scope, isConst });
  }
  return scope;
}

const emptyScope = (file: string): Scope => ({ file, names: new Map(), outer: null });

/** What a module imports from files of src, and what that stands for where it is declared. */
function importedScope(file: string, program: Node, read: ReadFile): Scope {
  const scope = emptyScope(file);
  for (const statement of heldAll(program, "body")) {
    const from = held(statement, "source")?.["value"];
    if (statement.type !== "ImportDeclaration" || typeof from !== "string" || !from.startsWith(".")) continue;
    const path = posix.join(posix.dirname(file), from);
    const found = [path, `${path}.ts`, `${path}.tsx`].find((candidate) => read(candidate) !== undefined);
    if (found === undefined) continue;
    const there = moduleScope(found, read);
    for (const specifier of heldAll(statement, "specifiers")) {
      const local = nameOf(held(specifier, "local"));
      const imported = nameOf(held(specifier, "imported"));
      const meaning = imported === null ? undefined : there.names.get(imported);
      if (local !== null && meaning !== undefined) scope.names.set(local, meaning);
    }
  }
  return scope;
}

const remembered = new WeakMap<ReadFile, Map<string, Scope>>();

/** What another module declares; its own imports are not followed. */
function moduleScope(file: string, read: ReadFile): Scope {
  const known = remembered.get(read) ?? new Map<string, Scope>();
  remembered.set(read, known);
  const scope = known.get(file) ?? scopeWithin(parse(file, read(file) ?? "").program, emptyScope(file));
  known.set(file, scope);
  return scope;
}

/** What an expression of numbers comes to, and whether a tolerance from the file of them is in it. */
interface Figure {
  readonly value: number;
  readonly isKept: boolean;
  /** Written where it stands, not named. */
  readonly isBare: boolean;
}

function figureOf(node: Node | null, scope: Scope, depth = 0): Figure | null {
  if (node === null || depth > 20) return null;
  const within = (one: Node | null): Figure | null => figureOf(one, scope, depth + 1);
  if (WRAPPERS.has(node.type)) return within(held(node, "expression"));
  switch (node.type) {
    case "Literal":
      return typeof node["value"] === "number"
        ? { value: node["value"], isKept: scope.file === TOLERANCES, isBare: true }
        : null;
    case "UnaryExpression": {
      const figure = node["operator"] === "-" ? within(held(node, "argument")) : null;
      return figure === null ? null : { ...figure, value: -figure.value };
    }
    case "BinaryExpression": {
      const [left, right] = [within(held(node, "left")), within(held(node, "right"))];
      if (left === null || right === null) return null;
      const value = reckoned(node["operator"], left.value, right.value);
      return { value, isKept: left.isKept || right.isKept, isBare: left.isBare && right.isBare };
    }
    case "CallExpression": {
      const maker = nameOf(held(node, "callee"));
      return maker !== null && UNIT_MAKERS.has(maker) ? within(heldAll(node, "arguments")[0] ?? null) : null;
    }
    case "Identifier":
    case "MemberExpression": {
      const meant = valueOf(node, scope, depth);
      const figure = meant === null ? null : figureOf(meant.value, meant.scope, depth + 1);
      return figure === null ? null : { ...figure, isBare: false };
    }
    default:
      return null;
  }
}

function reckoned(operator: unknown, left: number, right: number): number {
  switch (operator) {
    case "+":
      return left + right;
    case "-":
      return left - right;
    case "*":
      return left * right;
    case "/":
      return left / right;
    case "**":
      return left ** right;
    default:
      return Number.NaN;
  }
}

/** What a constant, or a member of a constant object, was given. */
function valueOf(node: Node, scope: Scope, depth: number): Meaning | null {
  if (depth > 20) return null;
  if (WRAPPERS.has(node.type)) {
    const inner = held(node, "expression");
    return inner === null ? null : valueOf(inner, scope, depth + 1);
  }
  if (node.type === "Identifier") {
    const meaning = meaningOf(String(node["name"]), scope);
    return meaning?.isConst === true ? meaning : null;
  }
  if (node.type !== "MemberExpression" || node["computed"] === true) return null;
  const object = held(node, "object");
  const whole = object === null ? null : valueOf(object, scope, depth + 1);
  let given = whole?.value ?? null;
  while (given !== null && WRAPPERS.has(given.type)) given = held(given, "expression");
  if (whole === null || given?.type !== "ObjectExpression") return null;
  const wanted = nameOf(held(node, "property"));
  const property = heldAll(given, "properties").find((one) => nameOf(held(one, "key")) === wanted);
  return property === undefined ? null : { value: held(property, "value"), scope: whole.scope, isConst: true };
}

/**
 * How an expression tells how far things are apart: as a distance or the size of a difference, as a bare difference, as a
 * size of which it is not seen whether it is one, or as a quotient of such; null where it does not.
 */
type Apart = "distance" | "difference" | "size" | "quotient" | null;

const firstOf = (all: readonly Apart[]): Apart =>
  (["distance", "difference", "size", "quotient"] as const).find((one) => all.includes(one)) ?? null;

function apartOf(node: Node | null, scope: Scope, depth = 0): Apart {
  if (node === null || depth > 20) return null;
  const within = (one: Node | null): Apart => apartOf(one, scope, depth + 1);
  if (WRAPPERS.has(node.type)) return within(held(node, "expression"));
  switch (node.type) {
    case "CallExpression":
      return apartOfCall(node, scope, depth);
    case "BinaryExpression": {
      const [left, right] = [held(node, "left"), held(node, "right")];
      const [one, other] = [within(left), within(right)];
      const isShift = (...terms: readonly (Node | null)[]): boolean =>
        terms.some((term) => figureOf(term, scope) !== null);
      switch (node["operator"]) {
        case "-": {
          if (isCount(left) || isCount(right)) return null;
          return isShift(left, right) ? ofShifted(one, other) : (firstOf([one, other]) ?? "difference");
        }
        case "/":
          return one === null || figureOf(right, scope) !== null ? one : "quotient";
        case "+":
          return isShift(left, right) ? ofShifted(one, other) : firstOf([one, other]);
        case "*":
        case "**":
          return firstOf([one, other]);
        default:
          return null;
      }
    }
    case "UnaryExpression":
      return node["operator"] === "-" ? within(held(node, "argument")) : null;
    case "ConditionalExpression":
      return firstOf([within(held(node, "consequent")), within(held(node, "alternate"))]);
    case "LogicalExpression":
      return node["operator"] === "??" ? within(held(node, "left")) : null;
    case "SpreadElement":
      return within(held(node, "argument"));
    case "MemberExpression": {
      const property = nameOf(held(node, "property"));
      return node["computed"] !== true && property !== null && APART.has(property) ? "distance" : null;
    }
    case "Identifier": {
      const meaning = meaningOf(String(node["name"]), scope);
      return meaning === null ? null : apartOf(meaning.value, meaning.scope, depth + 1);
    }
    default:
      return null;
  }
}

/** What is left of a difference when some of it is taken away is an amount; a distance stays one. */
function ofShifted(one: Apart, other: Apart): Apart {
  const apart = firstOf([one, other]);
  return apart === "difference" ? null : apart;
}

function apartOfCall(node: Node, scope: Scope, depth: number): Apart {
  const callee = held(node, "callee");
  const path = pathOf(callee);
  const given = heldAll(node, "arguments");
  const within = (one: Node | null, where = scope): Apart => apartOf(one, where, depth + 1);
  if (path !== null && DISTANCES.has(path)) return "distance";
  if (path === "Math.abs") {
    const inner = within(given[0] ?? null);
    return inner === null || inner === "quotient" ? "size" : "distance";
  }
  if (path !== null && KEEPERS.has(path)) return firstOf(given.map((one) => within(one)));
  const resultOf = (made: Node | null, where: Scope): Apart =>
    made?.type === "ArrowFunctionExpression" ? within(held(made, "body"), scopeWithin(made, where)) : null;
  if (callee?.type === "MemberExpression" && nameOf(held(callee, "property")) === "map")
    return resultOf(given[0] ?? null, scope);
  const called = nameOf(callee);
  const meaning = called === null ? null : meaningOf(called, scope);
  return meaning === null ? null : resultOf(meaning.value, meaning.scope);
}

const isCount = (node: Node | null): boolean => {
  const name = node?.type === "MemberExpression" ? nameOf(held(node, "property")) : nameOf(node);
  return name !== null && COUNTS.has(name);
};

/** Whether a figure is one that nothing may be measured against but in the file of tolerances. */
const isOwn = (figure: Figure | null): figure is Figure => figure !== null && !figure.isKept && figure.value !== 0;

/** Whether a bound holds a figure of its own: by itself, or as a small share of something. */
function boundOf(node: Node, scope: Scope): Figure | null {
  const figure = figureOf(node, scope);
  if (figure !== null) return isOwn(figure) ? figure : null;
  if (node.type !== "BinaryExpression" || node["operator"] !== "*") return null;
  const factor = figureOf(held(node, "left"), scope) ?? figureOf(held(node, "right"), scope);
  return isOwn(factor) && Math.abs(factor.value) <= SLACK_SHARE ? factor : null;
}

/** Whether something is shifted by less than 1 of its unit before it is compared: as good as comparing a difference. */
function isShifted(node: Node, scope: Scope): boolean {
  if (node.type !== "BinaryExpression" || (node["operator"] !== "+" && node["operator"] !== "-")) return false;
  const figures = [figureOf(held(node, "left"), scope), figureOf(held(node, "right"), scope)];
  const [figure, ...more] = figures.filter((one) => one !== null);
  return figure !== undefined && more.length === 0 && isOwn(figure) && Math.abs(figure.value) < 1;
}

/** Whether an expression reads where something is on the page, in pixels, by itself or by what it names. */
function isOfPage(node: Node, scope: Scope, depth = 0): boolean {
  let found = false;
  walk(node, (inner) => {
    if (found || depth > 20) return;
    const name = nameOf(inner);
    const meaning = name === null ? null : meaningOf(name, scope);
    found =
      (name !== null && PAGE_PLACE.test(name)) ||
      (meaning !== null && meaning.value !== null && isOfPage(meaning.value, meaning.scope, depth + 1));
  });
  return found;
}

function isTolerant(comparison: Node, scope: Scope): boolean {
  const sides = [held(comparison, "left"), held(comparison, "right")];
  return sides.some((side, at) => {
    const other = sides[1 - at] ?? null;
    if (side === null || other === null) return false;
    if (isShifted(side, scope)) return true;
    const bound = boundOf(side, scope);
    const apart = bound === null ? null : apartOf(other, scope);
    if (bound === null || apart === null) return false;
    // A threshold of a pointer.
    if (scope.file.startsWith("src/ui/") && Number.isInteger(bound.value) && isOfPage(other, scope)) return false;
    // A cosine, a parameter or a share within its whole.
    const isWhole = bound.isBare && Math.abs(bound.value) === 1 && (apart === "size" || apart === "quotient");
    return !isWhole;
  });
}

/** Whether a node is a number too small for anything but a tolerance. Small decimals that stand in a table are figures of a model. */
function isSmall(node: Node, parent: Node | null): boolean {
  if (node.type !== "Literal")
    return node.type === "MemberExpression" && /^Number\.(?:EPSILON|MIN_VALUE)$/.test(pathOf(node) ?? "");
  const { value, raw } = node;
  if (typeof value !== "number" || value === 0) return false;
  if (/^[\d._]*e-/i.test(String(raw))) return true;
  return value <= SMALL && parent?.type !== "ArrayExpression" && parent?.type !== "Property";
}

/** Whether a call gives a tolerance as a figure of its own. */
function isGiven(node: Node, scope: Scope): boolean {
  const called = node.type === "CallExpression" ? nameOf(held(node, "callee")) : null;
  const at = called === null ? undefined : GIVEN_AS[called];
  return at !== undefined && isOwn(figureOf(heldAll(node, "arguments")[at] ?? null, scope));
}

/** Every tolerance that stands in a source file, as its text; none in the file that holds them. */
export function tolerancesIn(file: string, source: string, read: ReadFile): readonly string[] {
  if (file === TOLERANCES) return [];
  const { program } = parse(file, source);
  const found: string[] = [];
  const visit = (node: Node, outer: Scope, parent: Node | null): void => {
    const scope = scopeWithin(node, outer);
    const isComparison = node.type === "BinaryExpression" && COMPARISONS.has(String(node["operator"]));
    if (isSmall(node, parent) || isGiven(node, scope) || (isComparison && isTolerant(node, scope)))
      found.push(source.slice(Number(node["start"]), Number(node["end"])).replaceAll(/\s+/g, " "));
    for (const value of Object.values(node))
      for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) visit(child, scope, node);
  };
  visit(program, importedScope(file, program, read), null);
  return found;
}

/** The names that a source file declares, also by importing something under another name. */
export function namesDeclared(file: string, source: string): readonly string[] {
  const names: string[] = [];
  walk(parse(file, source).program, (node) => {
    if (node.type === "VariableDeclarator") names.push(...namesIn(held(node, "id"), null).map(([name]) => name));
    if (node.type !== "ImportSpecifier") return;
    const [imported, local] = [nameOf(held(node, "imported")), nameOf(held(node, "local"))];
    if (imported !== local) names.push(...[imported, local].filter((name) => name !== null));
  });
  return names;
}

const UNIT =
  /^(?:mm\b|Degrees|Radians|Pages|Rounds|Sizes|Probability|(?:Curve parameter|Determinant|Marks|Share|Sine)\b[^.]*\(no unit\))[^.]*\. /;

/** What is wrong with the file of tolerances: statements that are none, and tolerances without their unit and their reason. */
export function toleranceFaults(source: string): readonly string[] {
  let end = 0;
  return heldAll(parse(TOLERANCES, source).program, "body").flatMap((statement) => {
    const before = source.slice(end, Number(statement["start"]));
    end = Number(statement["end"]);
    const told = /\/\*\*((?:(?!\*\/)[^])*)\*\/\n$/.exec(before)?.[1] ?? "";
    const [name, ...more] = namesDeclared(TOLERANCES, source.slice(Number(statement["start"]), end));
    if (statement.type !== "ExportNamedDeclaration" || name === undefined || more.length > 0) return [statement.type];
    return UNIT.test(told.replaceAll(/\s*\n\s*\*\s*/g, " ").trim()) ? [] : [name];
  });
}
