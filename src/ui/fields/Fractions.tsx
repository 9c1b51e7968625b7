import { Fragment } from "react";

/** Text with its fractions drawn as fractions: the font has no sign for eighths and sixteenths, but can draw them. */
export function Fractions({ text }: { readonly text: string }) {
  const parts = text.split(/(\b\d+\/(?:2|4|8|16)\b)/);
  return parts.map((part, index) =>
    index % 2 === 1 ? (
      <span key={index} className="fraction">
        {part}
      </span>
    ) : (
      <Fragment key={index}>{part}</Fragment>
    ),
  );
}
