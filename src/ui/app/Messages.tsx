import { useWorks } from "../works/useWorks";

/** What passes: a work that was deleted and can come back, a file that could not be opened. */
export function Messages() {
  const { messages, dismiss } = useWorks();
  return (
    <div className="messages-said" role="status">
      {messages.map((message) => (
        <div key={message.id} className="message">
          <p>{message.text}</p>
          {message.action !== undefined && (
            <button type="button" className="button small" onClick={message.action.run}>
              {message.action.label}
            </button>
          )}
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
