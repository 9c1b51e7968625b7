import { useWorks } from "../works/useWorks";

/** What passes: a work that was deleted and can come back, a file that could not be opened. */
export function Messages() {
  const { messages, dismiss } = useWorks();
  return (
    <div className="messages-said" role="status">
      {messages.map((message) => (
        <div key={message.id} className="message">
          <p>{message.text}</p>
          {message.actions.map(({ label, run }) => (
            <button key={label} type="button" className="button small" onClick={run}>
              {label}
            </button>
          ))}
          <button
            type="button"
            className="button small"
            aria-label={`Dismiss: ${message.text}`}
            onClick={() => dismiss(message.id)}
          >
            Dismiss
          </button>
        </div>
      ))}
    </div>
  );
}
