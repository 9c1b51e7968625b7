/** Faults in the browser's own database, planted until all mocks are restored. */
import { IDBObjectStore, IDBRequest } from "fake-indexeddb";
import { vi } from "vitest";

export const noRoom = (): Error => new DOMException("no room", "QuotaExceededError");

/** Every such question is asked as ever, and then something happens. */
export function plantAfter(question: "put" | "get", then: (table: IDBObjectStore) => void): void {
  const asked: unknown = Reflect.get(IDBObjectStore.prototype, question);
  vi.spyOn(IDBObjectStore.prototype, question).mockImplementation(function askAndFail(
    this: IDBObjectStore,
    ...about: readonly unknown[]
  ) {
    const request: unknown = typeof asked === "function" ? Reflect.apply(asked, this, about) : null;
    if (!(request instanceof IDBRequest)) throw new Error(`no ${question}`);
    then(this);
    return request;
  });
}

/** The room runs out when everything is put, at the end of the transaction. */
export const plantNoRoomAtTheEnd = (): void =>
  plantAfter("put", ({ transaction }) => {
    Object.defineProperty(transaction, "error", { value: noRoom() });
    transaction.abort();
  });
