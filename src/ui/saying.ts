/** What happened and what to do next, as two sentences. */
export interface Saying {
  readonly what: string;
  readonly next: string;
}
