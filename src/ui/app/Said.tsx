import { useSaid } from "../session/useSaid";

/** What was done, for who does not see it. */
export function Said() {
  const text = useSaid((said) => said.text);
  const times = useSaid((said) => said.times);
  return (
    <p role="status" className="visually-hidden" data-said>
      <span key={times}>{text}</span>
    </p>
  );
}
