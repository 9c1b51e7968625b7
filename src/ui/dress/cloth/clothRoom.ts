/**
 * Where parts are laid on cloth: one worker, started when it is first asked, for the lays of a dress and for questions that take
 * several. A question put anew takes the place of the same one before it; what comes too late for that is dropped.
 */
import { createStore, type StoreApi } from "zustand/vanilla";
import type { ClothName } from "../../../core/decisions/dress";
import type { ClothLay, LayFailure } from "../../../core/cloth/cutting";
import { prepareLay, type ClothAsked } from "../../../core/cloth/layCloth";
import type { Prepared } from "../../../core/cloth/layPrepared";
import { clothTableOf } from "../../../core/dress/dressCloth";
import type { ClothAtWidth, LaySearch, LayWanted } from "../../../core/cloth/laySearch";
import type { DressDecided } from "../../../core/dress/dressOf";
import { remnantOf, type RemnantAnswer } from "../../../core/dress/remnant";
import { fail, ok, type Result } from "../../../core/result";
import { isSame } from "../../../core/same";
import type { ClothAnswer, ClothBreak, ClothWorker, OpenClothWorker } from "./clothMessages";

/** What became of a question. `last`: its answer before this one, while that is sought; shares from 0 to 1. */
export type ClothState<T> =
  | { readonly kind: "none" }
  | { readonly kind: "laying"; readonly share: number; readonly last: T | null }
  | { readonly kind: "answered"; readonly answer: T }
  | { readonly kind: "broke"; readonly why: ClothBreak };

type ByCloth<T> = Readonly<Partial<Record<ClothName, ClothState<T>>>>;

export interface ClothRoomState {
  readonly lays: ByCloth<Result<ClothLay, LayFailure>>;
  readonly tables: ByCloth<readonly ClothAtWidth[]>;
  readonly remnants: ByCloth<RemnantAnswer | null>;
}

export interface ClothRoom {
  readonly state: StoreApi<ClothRoomState>;
  /** Lays each cloth; those whose parts and width are as they were keep their lay. Cloths not named are forgotten. */
  readonly lay: (asked: readonly ClothAsked[]) => void;
  readonly compareWidths: (work: DressDecided, name: ClothName) => void;
  readonly tryRemnant: (work: DressDecided, name: ClothName) => void;
  /** Answers to these are of a dress that is no more. */
  readonly forgetQuestions: () => void;
  readonly end: () => void;
}

type Question = keyof ClothRoomState;

/** A question being answered, one lay after another. */
interface Job {
  readonly id: number;
  readonly key: string;
  readonly wanted: LayWanted;
  readonly laid: (lay: ClothLay) => void;
  readonly share: (share: number) => void;
  readonly broke: (why: ClothBreak) => void;
}

export function createClothRoom(open: OpenClothWorker): ClothRoom {
  const state = createStore<ClothRoomState>()(() => ({ lays: {}, tables: {}, remnants: {} }));
  const bench = createBench(open);
  const known = new Map<ClothName, Prepared>();

  const show = <Q extends Question>(question: Q, name: ClothName, found: ClothRoomState[Q][ClothName]): void =>
    state.setState((before) => ({ ...before, [question]: { ...before[question], [name]: found } }));

  const lay = (asked: readonly ClothAsked[]): void => {
    const names = asked.map(({ name }) => name);
    for (const name of [...known.keys()].filter((one) => !names.includes(one))) known.delete(name);
    const { lays } = state.getState();
    const kept = Object.fromEntries(Object.entries(lays).filter(([name]) => names.some((one) => one === name)));
    state.setState((before) => ({ ...before, lays: kept }));
    bench.keepOnly((key) => !key.startsWith("lays ") || names.some((name) => key === `lays ${name}`));
    for (const one of asked) {
      const prepared = prepareLay(one);
      if (!prepared.ok) {
        known.delete(one.name);
        bench.drop(`lays ${one.name}`);
        show("lays", one.name, { kind: "answered", answer: fail(prepared.failure) });
      } else if (!isSame(known.get(one.name), prepared.value)) {
        known.set(one.name, prepared.value);
        layOne(one.name, prepared.value);
      }
    }
  };

  const layOne = (name: ClothName, prepared: Prepared): void => {
    const last = answerOf(state.getState().lays[name]);
    show("lays", name, { kind: "laying", share: 0, last });
    bench.ask(
      `lays ${name}`,
      { prepared, effort: 1, goal: 0 },
      {
        share: (share) => show("lays", name, { kind: "laying", share, last }),
        laid: (made) => show("lays", name, { kind: "answered", answer: ok(made) }),
        broke: (why) => {
          known.delete(name);
          show("lays", name, { kind: "broke", why });
        },
      },
    );
  };

  /** One lay after another until the question is answered. */
  const seek = <T>(key: string, search: LaySearch<T>, say: (found: ClothState<T>) => void, last: T | null): void => {
    let laid = 0;
    const go = (step: IteratorResult<LayWanted, T>): void => {
      if (step.done === true) return say({ kind: "answered", answer: step.value });
      bench.ask(key, step.value, {
        share: (share) => say({ kind: "laying", share: towards(laid + share), last }),
        laid: (made) => {
          laid += 1;
          say({ kind: "laying", share: towards(laid), last });
          go(search.next(made));
        },
        broke: (why) => say({ kind: "broke", why }),
      });
    };
    say({ kind: "laying", share: 0, last });
    bench.drop(key);
    go(search.next());
  };

  const compareWidths = (work: DressDecided, name: ClothName): void =>
    seek(
      `tables ${name}`,
      clothTableOf(work, name),
      (found) => show("tables", name, found),
      answerOf(state.getState().tables[name]),
    );

  const tryRemnant = (work: DressDecided, name: ClothName): void =>
    seek(
      `remnants ${name}`,
      remnantOf(work, name),
      (found) => show("remnants", name, found),
      answerOf(state.getState().remnants[name]),
    );

  const forgetQuestions = (): void => {
    bench.keepOnly((key) => key.startsWith("lays "));
    const { tables, remnants } = state.getState();
    if (Object.keys(tables).length + Object.keys(remnants).length > 0)
      state.setState((before) => ({ ...before, tables: {}, remnants: {} }));
  };

  const end = (): void => {
    known.clear();
    bench.close();
  };
  return { state, lay, compareWidths, tryRemnant, forgetQuestions, end };
}

const answerOf = <T>(found: ClothState<T> | undefined): T | null => {
  if (found?.kind === "answered") return found.answer;
  return found?.kind === "laying" ? found.last : null;
};

/** How many lays a question takes is not known before: the share only ever grows, and never to the whole. */
const towards = (laid: number): number => laid / (laid + USUAL_LAYS);
const USUAL_LAYS = 6;

interface Bench {
  /** Puts a lay in the queue, in place of one of the same key. */
  readonly ask: (key: string, wanted: LayWanted, hear: Pick<Job, "share" | "laid" | "broke">) => void;
  readonly drop: (key: string) => void;
  readonly keepOnly: (isKept: (key: string) => boolean) => void;
  readonly close: () => void;
}

/** One worker and its queue. A lay that nobody waits for any longer is broken off, since it would only hold up the next. */
function createBench(open: OpenClothWorker): Bench {
  let worker: ClothWorker | null = null;
  let queue: readonly Job[] = [];
  let count = 0;
  let running: number | null = null;

  const next = (): void => {
    const [job] = queue;
    if (job === undefined || running !== null) return;
    running = job.id;
    try {
      worker ??= start();
      worker.ask({ id: job.id, wanted: job.wanted });
    } catch {
      broken("fault");
    }
  };

  const start = (): ClothWorker => {
    const opened: ClothWorker = open((answer) => {
      if (worker === opened) heard(answer);
    });
    return opened;
  };

  const heard = (answer: ClothAnswer): void => {
    if (answer.kind === "broke") return broken(answer.why);
    const job = queue.find(({ id }) => id === running);
    if (job === undefined || answer.id !== job.id) return;
    if (answer.kind === "progress") return job.share(answer.share);
    running = null;
    queue = queue.filter((one) => one !== job);
    job.laid(answer.lay);
    next();
  };

  const stop = (): void => {
    worker?.close();
    worker = null;
    running = null;
  };

  const broken = (why: ClothBreak): void => {
    stop();
    const all = queue;
    queue = [];
    for (const { broke } of all) broke(why);
  };

  const keepOnly = (isKept: (key: string) => boolean): void => {
    queue = queue.filter(({ key }) => isKept(key));
    if (running === null || queue.some(({ id }) => id === running)) return;
    stop();
    next();
  };

  const ask: Bench["ask"] = (key, wanted, hear) => {
    keepOnly((one) => one !== key);
    count += 1;
    queue = [...queue, { id: count, key, wanted, ...hear }];
    next();
  };

  return {
    ask,
    drop: (key) => keepOnly((one) => one !== key),
    keepOnly,
    close: () => {
      queue = [];
      stop();
    },
  };
}
