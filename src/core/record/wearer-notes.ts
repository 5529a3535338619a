/** The light in which a pupil's diameter was read. */
export type LightLevel = 'bright' | 'room' | 'dim';

/** What is noted of the wearer beside the readings. */
export interface WearerNotes {
  /** the wearer as the practice calls them: a name or a number, as typed */
  readonly wearer: string;
  /** both eyes never fixate together: the rows that this concerns are measured with the other eye covered */
  readonly squint: boolean;
  /** null where nobody noted it */
  readonly light: LightLevel | null;
  /** anything else that changes how a measurement was taken, as typed */
  readonly remark: string;
}

export const NO_NOTES: WearerNotes = { wearer: '', squint: false, light: null, remark: '' };
