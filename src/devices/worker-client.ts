import type { Result } from '../core/result.js';
import { fail, succeed } from '../core/result.js';
import type { CancelledReply, FaultReply, Message, ProgressMessage } from '../protocol/message.js';
import { PROTOCOL_VERSION } from '../protocol/message.js';

/** What the client needs of a `Worker`, so that tests can bring their own. */
export interface WorkerLike {
  postMessage(message: unknown, transfer: Transferable[]): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<unknown>) => void): void;
  addEventListener(type: 'error' | 'messageerror', listener: (event: Event) => void): void;
  terminate(): void;
}

/** Why there was no proper reply. After all of these but `fault` the worker is ended, and the next request starts another. */
export type WorkerFailure =
  | { readonly kind: 'fault'; readonly fault: FaultReply }
  /** the worker's script could not be run, or it died */
  | { readonly kind: 'crashed' }
  | { readonly kind: 'timed-out'; readonly limitMs: number }
  /** a message came that is none of the protocol */
  | { readonly kind: 'not-understood' }
  /** somebody ended the worker meanwhile */
  | { readonly kind: 'ended' };

/** How one request is made. */
export interface AskOptions {
  readonly transfer: Transferable[];
  readonly limitMs: number;
  readonly onProgress: (share: number) => void;
  /** null where nothing can cancel the request */
  readonly signal: AbortSignal | null;
}

export interface WorkerClientSettings<Reply extends Message> {
  readonly start: () => WorkerLike;
  readonly parse: (value: unknown) => Reply | ProgressMessage | null;
  /** how long a cancelled worker may go on before it is ended */
  readonly cancelGraceMs: number;
}

type ReplyKind = Message & { readonly kind: string };
type ProperReply<Reply extends ReplyKind> = Exclude<Reply, FaultReply | CancelledReply | ProgressMessage>;
type BodyOf<Request> = Request extends Message ? Omit<Request, keyof Message> : never;

export interface WorkerClient<Request extends Message, Reply extends ReplyKind> {
  /** Which of the workers that were started one after the other runs now; null where none does. */
  runningWorker(): number | null;
  /** Sends a request, starting the worker where none runs. An aborted signal rejects with the signal's reason. */
  ask(request: BodyOf<Request>, options: AskOptions): Promise<Result<ProperReply<Reply>, WorkerFailure>>;
  /** Ends the worker; what it was asked fails with `ended`. */
  end(): void;
}

interface Pending<Reply> {
  readonly settle: (outcome: Result<Reply, WorkerFailure>) => void;
  readonly onProgress: (share: number) => void;
  /** called with the worker's own `cancelled` */
  readonly onCancelled: () => void;
}

/** A worker behind typed requests: started when first needed, and again after it died. */
export function createWorkerClient<Request extends Message, Reply extends ReplyKind>(
  settings: WorkerClientSettings<Reply>,
): WorkerClient<Request, Reply> {
  type Proper = ProperReply<Reply>;
  let worker: WorkerLike | null = null;
  let startedCount = 0;
  let lastId = 0;
  const pending = new Map<number, Pending<Proper>>();

  const endWith = (failure: WorkerFailure) => {
    worker?.terminate();
    worker = null;
    const abandoned = [...pending.values()];
    pending.clear();
    for (const each of abandoned) each.settle(fail(failure));
  };

  const receive = (value: unknown) => {
    const message: ReplyKind | null = settings.parse(value);
    if (message === null) {
      endWith({ kind: 'not-understood' });
      return;
    }
    const asked = pending.get(message.id);
    if (isKind(message, 'progress')) {
      asked?.onProgress((message as ProgressMessage).share);
      return;
    }
    pending.delete(message.id);
    if (asked === undefined) return;
    if (isKind(message, 'cancelled')) asked.onCancelled();
    else if (isKind(message, 'fault')) asked.settle(fail({ kind: 'fault', fault: message as FaultReply }));
    else asked.settle(succeed(message as Proper));
  };

  const running = (): WorkerLike => {
    if (worker !== null) return worker;
    const started = settings.start();
    startedCount += 1;
    // a late event of a worker that was ended must not touch its successor
    const ifCurrent =
      <Event>(handle: (event: Event) => void) =>
      (event: Event) => {
        if (worker === started) handle(event);
      };
    started.addEventListener(
      'message',
      ifCurrent((event: MessageEvent<unknown>) => receive(event.data)),
    );
    started.addEventListener(
      'error',
      ifCurrent(() => endWith({ kind: 'crashed' })),
    );
    started.addEventListener(
      'messageerror',
      ifCurrent(() => endWith({ kind: 'not-understood' })),
    );
    worker = started;
    return started;
  };

  return {
    runningWorker: () => (worker === null ? null : startedCount),
    end: () => endWith({ kind: 'ended' }),
    ask: (request, { transfer, limitMs, onProgress, signal }) =>
      new Promise((resolve, reject) => {
        if (signal?.aborted === true) {
          reject(reasonOf(signal));
          return;
        }
        const target = running();
        const id = (lastId += 1);
        let graceTimer: ReturnType<typeof setTimeout> | undefined;
        const limitTimer = setTimeout(() => endWith({ kind: 'timed-out', limitMs }), limitMs);
        const abort = () => {
          if (signal === null) return;
          // the page need not wait for the worker: it only has to be free again soon
          reject(reasonOf(signal));
          clearTimeout(limitTimer);
          target.postMessage({ v: PROTOCOL_VERSION, id, kind: 'cancel' }, []);
          graceTimer = setTimeout(() => {
            if (worker === target && pending.has(id)) endWith({ kind: 'ended' });
          }, settings.cancelGraceMs);
        };
        const done = () => {
          clearTimeout(limitTimer);
          clearTimeout(graceTimer);
          signal?.removeEventListener('abort', abort);
        };
        signal?.addEventListener('abort', abort);
        pending.set(id, {
          settle: (outcome) => {
            done();
            resolve(outcome);
          },
          onProgress: (share) => {
            if (signal?.aborted !== true) onProgress(share);
          },
          onCancelled: () => {
            done();
            resolve(fail({ kind: 'ended' }));
          },
        });
        target.postMessage({ v: PROTOCOL_VERSION, id, ...request }, transfer);
      }),
  };
}

function isKind(message: ReplyKind, kind: string): boolean {
  return message.kind === kind;
}

function reasonOf(signal: AbortSignal): Error {
  const reason: unknown = signal.reason;
  return reason instanceof Error ? reason : new Error(String(reason));
}
