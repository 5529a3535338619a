import type { WorkerLike } from '../../src/devices/worker-client.js';

/** What a worker was sent. */
interface SentMessage {
  readonly id: number;
  readonly kind: string;
}

type Listener = (event: never) => void;

/** Stands for a worker in Node: keeps what it is sent, and says what a test makes it say. */
export class FakeWorker implements WorkerLike {
  readonly sent: SentMessage[] = [];
  isTerminated = false;
  readonly #listeners = new Map<string, Listener[]>();
  readonly #onMessage: (message: SentMessage, worker: FakeWorker) => void;

  /** `onMessage` is called, in a later turn, for each message that is sent to the worker. */
  constructor(onMessage: (message: SentMessage, worker: FakeWorker) => void = () => undefined) {
    this.#onMessage = onMessage;
  }

  postMessage(message: unknown): void {
    const sent = message as SentMessage;
    this.sent.push(sent);
    queueMicrotask(() => {
      if (!this.isTerminated) this.#onMessage(sent, this);
    });
  }

  addEventListener(type: string, listener: Listener): void {
    this.#listeners.set(type, [...(this.#listeners.get(type) ?? []), listener]);
  }

  terminate(): void {
    this.isTerminated = true;
  }

  /** Answers the message of that number (0 is the first that was sent) with a body in its envelope. */
  reply(number: number, body: object): void {
    const message = this.sent[number];
    if (message === undefined) throw new Error(`Only ${this.sent.length} messages were sent`);
    this.answer(message, body);
  }

  answer(message: SentMessage, body: object): void {
    this.#emit('message', { data: { v: 1, id: message.id, ...body } });
  }

  crash(): void {
    this.#emit('error', {});
  }

  #emit(type: string, event: object): void {
    for (const listener of this.#listeners.get(type) ?? []) listener(event as never);
  }
}
