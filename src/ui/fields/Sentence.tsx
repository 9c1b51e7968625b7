import { createElement, Fragment, type ReactNode } from "react";

/** The names in braces of a text. */
type Named<Text extends string> = Text extends `${string}{${infer Name}}${infer Rest}` ? Name | Named<Rest> : never;

/** A sentence of src/words with what is marked up put in at its names: "Your bust is {amount} larger." */
export function Sentence<const Text extends string>(props: {
  readonly text: Text;
  readonly parts: Readonly<Record<Named<Text>, ReactNode>>;
}) {
  const parts: Readonly<Record<string, ReactNode>> = props.parts;
  return createElement(
    Fragment,
    null,
    ...props.text.split(/\{(\w+)\}/).map((piece, at) => (at % 2 === 0 ? piece : parts[piece])),
  );
}
