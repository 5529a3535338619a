import type { BrowserContext, Page } from 'playwright-core';

/** Lines of the vision runtimes that they write as errors although nothing is wrong. */
const HARMLESS = [
  // TensorFlow Lite tells which delegate it uses.
  /^INFO: Created TensorFlow Lite XNNPACK delegate for CPU\. \(/,
];

interface Offence {
  readonly kind: 'foreign request' | 'console' | 'exception';
  readonly text: string;
}

/**
 * Watches a browser context: requests to any other origin (of the page and of its workers), errors on the console
 * (refusals of the content security policy among them) and exceptions that nobody caught.
 */
export class PageGuard {
  readonly #offences: Offence[] = [];
  readonly #allowed: RegExp[] = [...HARMLESS];
  readonly #requests: string[] = [];

  private constructor(private readonly origin: string) {}

  /** Begins to watch; to be called before the first page of the context is opened. `address` is that of the app. */
  static watch(context: BrowserContext, address: string): PageGuard {
    const guard = new PageGuard(new URL(address).origin);
    context.on('request', (request) => guard.#sawRequest(request.url()));
    context.on('console', (message) => {
      if (message.type() === 'error') guard.#note('console', `${message.text()} (${message.location().url})`);
    });
    context.on('weberror', (error) => guard.#note('exception', error.error().stack ?? error.error().message));
    context.on('page', (page) => guard.#watchPage(page));
    for (const page of context.pages()) guard.#watchPage(page);
    return guard;
  }

  /** Lets errors pass that a test brings about on purpose; foreign requests never pass. */
  allow(...patterns: RegExp[]): void {
    this.#allowed.push(...patterns);
  }

  /** The addresses of all requests so far, own ones included. */
  get requests(): readonly string[] {
    return this.#requests;
  }

  /** What was seen and is not allowed, one sentence each. */
  offences(): readonly string[] {
    return this.#offences
      .filter(({ kind, text }) => kind === 'foreign request' || !this.#allowed.some((pattern) => pattern.test(text)))
      .map(({ kind, text }) => `${kind}: ${text}`);
  }

  #watchPage(page: Page): void {
    page.on('websocket', (socket) => this.#sawRequest(socket.url()));
    page.on('crash', () => this.#note('exception', 'the page crashed'));
  }

  #sawRequest(url: string): void {
    this.#requests.push(url);
    const { origin, protocol } = new URL(url);
    // blob: and data: addresses never leave the browser; the origin of a blob: address is that of its maker.
    if (protocol === 'data:' || protocol === 'blob:') return;
    if (origin !== this.origin) this.#note('foreign request', url);
  }

  #note(kind: Offence['kind'], text: string): void {
    this.#offences.push({ kind, text });
  }
}
