/** A library that always answers: where the one beneath it keeps silent, with a failure that says so. */
import { fail, type Result } from "../core/result";
import type { Library, StorageFailure } from "./library";

type Answer<T> = Promise<Result<T, StorageFailure>>;

/** ms. One that has kept silent once is not waited for so long again, until it answers. */
const SHORT = 500;

/**
 * @param patience ms. What comes later is not heard, but may have happened all the same: a save that is given up can still
 * reach the database.
 */
export function withPatience(library: Library, patience: number): Library {
  let isSilent = false;
  const soon = <T>(answer: Answer<T>): Answer<T> => {
    let timer: ReturnType<typeof setTimeout>;
    const late = new Promise<Result<T, StorageFailure>>((resolve) => {
      timer = setTimeout(
        () => {
          isSilent = true;
          resolve(fail({ code: "storage/silent" }));
        },
        isSilent ? Math.min(SHORT, patience) : patience,
      );
    });
    const heard = answer.then((result) => {
      isSilent = false;
      return result;
    });
    return Promise.race([heard, late]).finally(() => clearTimeout(timer));
  };
  return {
    list: () => soon(library.list()),
    entry: (id) => soon(library.entry(id)),
    load: (id) => soon(library.load(id)),
    peek: (id) => soon(library.peek(id)),
    raw: (id) => soon(library.raw(id)),
    save: (request) => soon(library.save(request)),
    bin: (id, time) => soon(library.bin(id, time)),
    remove: (id) => soon(library.remove(id)),
    pageValue: (name) => soon(library.pageValue(name)),
    setPageValue: (name, value) => soon(library.setPageValue(name, value)),
    changePageValue: (name, change) => soon(library.changePageValue(name, change)),
    close: library.close,
  };
}
