/** An XML file as a tree. Nothing is fetched, no entity is put in place of its name, nothing runs. */
import { SaxesParser } from "saxes";
import { refuse } from "./readingFailure";

export interface XmlElement {
  /** Without its prefix. */
  readonly name: string;
  /** "" where it has none. */
  readonly prefix: string;
  /** By their whole names. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly (XmlElement | string)[];
}

const MOST_ELEMENTS = 400_000;
/** Of one element. */
const MOST_ATTRIBUTES = 2000;
export const MOST_DEPTH = 500;

/** Names of entities left as they stand; a file with more of them is no drawing. */
const MOST_ENTITIES = 10_000;

/** Letters read at once. */
const CHUNK = 65_536;

interface Growing extends XmlElement {
  readonly children: (XmlElement | string)[];
}

/** @returns the root; refuses what is not well-formed, as browsers do */
export function readXml(text: string): XmlElement {
  const parser = new SaxesParser();
  const open: Growing[] = [];
  let root: XmlElement | null = null;
  let count = 0;
  let entities = 0;

  let attributes = 0;
  parser.on("opentagstart", () => {
    attributes = 0;
  });
  parser.on("attribute", () => {
    attributes += 1;
    if (attributes > MOST_ATTRIBUTES)
      refuse({ code: "reading/too-many", of: "objects", count: attributes, most: MOST_ATTRIBUTES });
  });
  parser.on("opentag", ({ name, attributes: said }) => {
    count += 1;
    if (count > MOST_ELEMENTS) refuse({ code: "reading/too-many", of: "objects", count, most: MOST_ELEMENTS });
    if (open.length >= MOST_DEPTH) refuse({ code: "reading/too-deep", most: MOST_DEPTH });
    const colon = name.indexOf(":");
    const element: Growing = {
      name: name.slice(colon + 1),
      prefix: name.slice(0, Math.max(0, colon)),
      attributes: new Map(Object.entries(said)),
      children: [],
    };
    open.at(-1)?.children.push(element);
    root ??= element;
    open.push(element);
  });
  parser.on("closetag", () => void open.pop());
  parser.on("text", (said) => void open.at(-1)?.children.push(said));
  parser.on("cdata", (said) => void open.at(-1)?.children.push(said));
  parser.on("error", ({ message }) => {
    if (/unclosed tag|unexpected end/u.test(message)) refuse({ code: "reading/cut-short" });
    if (message.includes("undefined entity")) {
      entities += 1;
      if (entities <= MOST_ENTITIES) return;
    }
    refuse({ code: "reading/damaged", line: parser.line });
  });

  for (let at = 0; at < text.length; at += CHUNK) parser.write(text.slice(at, at + CHUNK));
  parser.close();
  return root ?? refuse({ code: "reading/empty" });
}

/** All writing in it, that of elements inside too. */
export function textIn({ children }: XmlElement): string {
  const parts: string[] = [];
  const look = (all: XmlElement["children"]): void => {
    for (const child of all) {
      if (typeof child === "string") parts.push(child);
      else look(child.children);
    }
  };
  look(children);
  return parts.join("");
}
