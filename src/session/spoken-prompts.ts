/** Reads sentences aloud with voices of this device; what is read is sent to nobody. */
export interface SpokenPrompts {
  /** Whether the device has a voice of its own for this language (BCP 47). */
  canSpeak(tag: string): boolean;
  /** Reads this, and lets go of whatever is being read. */
  say(text: string, tag: string): void;
  stop(): void;
  /**
   * Calls the listener when other voices are there; browsers load them after the page.
   *
   * @returns stops listening
   */
  readonly onVoices: (listener: () => void) => () => void;
}
