/** One job after the other, so that no save lands on a work that is just being put away. */
export type Queue = (job: () => Promise<void>) => Promise<void>;

export function createQueue(): Queue {
  let last: Promise<void> = Promise.resolve();
  return (job) => {
    // A job that broke does not hold up the next.
    last = last.then(job, job);
    return last;
  };
}
