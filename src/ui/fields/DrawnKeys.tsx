import type { RefObject } from "react";
import { Fractions } from "./Fractions";
import { EIGHTHS, partOf, withOtherSign, withPart } from "./fractionText";
import * as say from "../../words/page";

/** What a screen's own number keys lack: the parts of an inch, and the sign of what makes smaller. */
export interface Lacking {
  readonly parts: boolean;
  readonly sign: boolean;
}

interface DrawnKeysProps extends Lacking {
  readonly input: RefObject<HTMLInputElement | null>;
  readonly text: string;
  readonly type: (text: string) => void;
}

/** Keys of our own over the screen's, for the field that is typed in. They leave it the focus. */
export function DrawnKeys({ input, text, type, parts, sign }: DrawnKeysProps) {
  const press = (next: string): void => {
    type(next);
    input.current?.focus();
  };
  const now = partOf(text);
  return (
    <div className="drawn-keys" role="group" aria-label={say.keysOfField}>
      {sign && (
        <Key name={say.otherSign} onPress={() => press(withOtherSign(text))}>
          ±
        </Key>
      )}
      {parts &&
        EIGHTHS.map((part) => (
          <Key key={part} isPressed={part === now} onPress={() => press(withPart(text, part))}>
            <Fractions text={part} />
          </Key>
        ))}
    </div>
  );
}

interface KeyProps {
  readonly name?: string;
  readonly isPressed?: boolean;
  readonly onPress: () => void;
  readonly children: React.ReactNode;
}

/** No stop for the Tab key: whoever has one has the other keys too. */
const Key = ({ name, isPressed, onPress, children }: KeyProps) => (
  <button
    type="button"
    tabIndex={-1}
    aria-label={name}
    aria-pressed={isPressed}
    onMouseDown={(event) => event.preventDefault()}
    onClick={onPress}
  >
    {children}
  </button>
);
