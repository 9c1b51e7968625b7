/** Jobs shared out among processes. One that goes quiet, or ends, is replaced, and its job has no answer. */
import { fork, type ChildProcess } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { Answer, Job } from "./protocol";

const script = fileURLToPath(new URL("worker.ts", import.meta.url));

export interface Work {
  readonly job: Job;
  /** ms after which the process is given up. */
  readonly patience: number;
  readonly done: (answer: Answer | null) => void;
}

/** A process that says it listens: what is said to it before is lost. */
function start(): Promise<ChildProcess> {
  const child = fork(script, [], {
    execArgv: ["--import", "tsx", "--max-old-space-size=3000"],
    serialization: "advanced",
  });
  return new Promise((resolve, reject) => {
    child.once("message", () => resolve(child));
    child.once("error", reject);
    child.once("exit", () => reject(new Error("a process ended before it began")));
  });
}

/** Does all jobs, `workers` at a time, each answer told as it comes. */
export async function doAll(all: Iterable<Work>, workers: number): Promise<void> {
  // One row for all processes: each takes the next.
  const left = (function* each() {
    yield* all;
  })();
  const one = async (): Promise<void> => {
    let child: ChildProcess | null = null;
    for (const work of left) {
      // One after another in this process; the others go on beside it.
      // oxlint-disable-next-line no-await-in-loop
      child ??= await start();
      // oxlint-disable-next-line no-await-in-loop
      const answer = await answerOf(child, work);
      if (answer === null) {
        child.kill("SIGKILL");
        child = null;
      }
      work.done(answer);
    }
    child?.kill();
  };
  await Promise.all(Array.from({ length: workers }, one));
}

function answerOf(child: ChildProcess, { job, patience }: Work): Promise<Answer | null> {
  return new Promise((resolve) => {
    const finish = (answer: Answer | null): void => {
      clearTimeout(timer);
      child.off("message", onMessage);
      child.off("exit", onExit);
      resolve(answer);
    };
    const onMessage = (answer: Answer): void => finish(answer);
    const onExit = (): void => finish(null);
    const timer = setTimeout(() => finish(null), patience);
    child.on("message", onMessage);
    child.on("exit", onExit);
    child.send(job);
  });
}
