import type { MeasureFace } from '../core/estimate/face-estimates.js';
import type { SealingPort } from '../session/sealing.js';
import type { SpokenPrompts } from '../session/spoken-prompts.js';
import type { MeasuringEquipment } from './equipment.js';

/** What the page of a distant wearer works with, handed in by the app. Nothing of it keeps anything. */
export interface WearerEquipment {
  readonly measuring: MeasuringEquipment;
  /** loads what measures a single picture; rejects where it cannot be fetched */
  readonly loadMeasureFace: () => Promise<MeasureFace>;
  readonly sealing: SealingPort;
  readonly prompts: SpokenPrompts;
  readonly appVersion: string;
  /** what this browser lacks, or the line that the page came over */
  readonly support: 'supported' | 'insecure' | 'unsupported';
}
