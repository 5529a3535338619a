import type { CancelMessage, FaultCode, Message } from '../protocol/message.js';
import { PROTOCOL_VERSION, readableId } from '../protocol/message.js';

/** A request's handler throws it to answer with a fault of its own code. */
export class Fault extends Error {
  readonly code: FaultCode;

  constructor(code: FaultCode, detail: string) {
    super(detail);
    this.code = code;
  }
}

/** Thrown by `checkCancelled`; the loop answers with `cancelled`. */
class Cancelled extends Error {}

/** What a handler can do while it works on a request. */
export interface Work {
  /** Tells the page how far the request has come, 0 to 1. */
  readonly progress: (share: number) => void;
  /** Lets waiting messages in, and ends the work where one of them cancels it. */
  readonly checkCancelled: () => Promise<void>;
}

/** A reply without what the loop adds to it. */
type BodyOf<Reply> = Reply extends Message ? Omit<Reply, keyof Message> : never;

/**
 * Answers each message that arrives: exactly one reply per request, whatever happens. It is the one place in a worker that
 * catches exceptions. Requests are worked on one after the other.
 */
export function answerMessages<Request extends Message & { readonly kind: string }, Reply extends Message>(
  parse: (value: unknown) => Request | CancelMessage | null,
  answer: (request: Request, work: Work) => Promise<BodyOf<Reply>>,
): void {
  const waiting = new Set<number>();
  const cancelled = new Set<number>();
  let last: Promise<void> = Promise.resolve();

  const post = (id: number, body: object, transfer: Transferable[] = []) =>
    self.postMessage({ v: PROTOCOL_VERSION, id, ...body }, { transfer });

  const work = async (request: Request): Promise<void> => {
    const { id } = request;
    const throwIfCancelled = () => {
      if (cancelled.has(id)) throw new Cancelled();
    };
    try {
      throwIfCancelled();
      const body = await answer(request, {
        progress: (share) => post(id, { kind: 'progress', share: Math.min(1, Math.max(0, share)) }),
        checkCancelled: async () => {
          await nextTurn();
          throwIfCancelled();
        },
      });
      post(id, body, transferredIn(body));
    } catch (error) {
      if (error instanceof Cancelled) post(id, { kind: 'cancelled' });
      else if (error instanceof Fault) post(id, { kind: 'fault', code: error.code, detail: error.message });
      else post(id, { kind: 'fault', code: 'failed', detail: String(error) });
    } finally {
      if ('bitmap' in request && request.bitmap instanceof ImageBitmap) request.bitmap.close();
      waiting.delete(id);
      cancelled.delete(id);
    }
  };

  self.addEventListener('message', (event: MessageEvent<unknown>) => {
    const message = parse(event.data);
    if (message === null) {
      post(readableId(event.data), {
        kind: 'fault',
        code: 'not-understood',
        detail: 'unknown kind or version, or a part missing',
      });
    } else if (isCancel(message)) {
      if (waiting.has(message.id)) cancelled.add(message.id);
    } else {
      waiting.add(message.id);
      last = last.then(() => work(message));
    }
  });
}

/** A bitmap goes back to the page with the reply that has it. */
function transferredIn(body: object): Transferable[] {
  return 'bitmap' in body && body.bitmap instanceof ImageBitmap ? [body.bitmap] : [];
}

function isCancel(message: { readonly kind: string }): message is CancelMessage {
  return message.kind === 'cancel';
}

/** Resolves after the messages that wait now were handed out. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    setTimeout(resolve, 0);
  });
}
