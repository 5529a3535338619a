import { createContext, useContext } from 'react';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { Gauge } from '../core/reading/gauge.js';
import { invariant } from '../core/result.js';
import type { AuditPort } from '../session/audit.js';
import type {
  CameraPort,
  Paper,
  PicturePort,
  PrintPort,
  ProfileStore,
  ShutterStore,
  SingleKeyStore,
  SweepPort,
  VisionPort,
} from '../session/ports.js';
import type { LivePort } from '../session/live.js';
import type { SealingPort } from '../session/sealing.js';
import type { SessionDatabase } from '../session/session-database.js';
import type { SessionKeeper } from '../session/session-keeper.js';
import type { StoreFailure } from '../session/session-store.js';
import type { OrderDocument } from '../sheets/order-document.js';
import type { TypedSheet } from '../core/record/typed-sheet.js';
import type { Later } from './later.js';
import type { Reasoning } from '../session/reasoning.js';

/** The demo's invented wearer. */
export interface Demo {
  readonly sheet: TypedSheet;
  /** null where the picture could not be loaded */
  readonly picture: () => Promise<Blob | null>;
}

/** What looks at a wearer. */
export interface MeasuringEquipment {
  readonly vision: VisionPort;
  readonly sweep: SweepPort;
  readonly pictures: PicturePort;
  readonly cameras: CameraPort;
  /** null where running pictures are not looked at */
  readonly live: LivePort | null;
}

/** All that the screen works with, handed in by the app. */
export interface Equipment extends MeasuringEquipment {
  /** looks many records through */
  readonly audit: AuditPort;
  readonly print: PrintPort;
  /** the order as a PDF; rejects where the code or the fonts for it do not come */
  readonly orderPdf: (order: OrderDocument, paper: Paper) => Promise<Uint8Array<ArrayBuffer>>;
  readonly database: SessionDatabase;
  /** why the database keeps nothing beyond this page; null where it does */
  readonly outage: StoreFailure | null;
  readonly sealing: SealingPort;
  /** keeps the open session */
  readonly keeper: SessionKeeper;
  readonly profiles: ProfileStore;
  readonly shutter: ShutterStore;
  readonly singleKeys: SingleKeyStore;
  /** makes estimates of features and findings of readings */
  readonly reasoning: Later<Reasoning>;
  readonly catalogue: Catalogue;
  /** invented gauges that a practice can begin its own list with */
  readonly exampleGauges: readonly Gauge[];
  readonly demo: Demo;
}

export const EquipmentContext = createContext<Equipment | null>(null);

/** On the page of a distant wearer, who measures and keeps nothing. */
export const MeasuringContext = createContext<MeasuringEquipment | null>(null);

/** What the screen around this component looks at a wearer with, at the desk or at a distance. */
export function useMeasuringEquipment(): MeasuringEquipment {
  const atTheDesk = useContext(EquipmentContext);
  const equipment = useContext(MeasuringContext) ?? atTheDesk;
  invariant(equipment !== null, 'the screen stands inside an EquipmentContext or a MeasuringContext');
  return equipment;
}

/** The equipment of the screen around this component. */
export function useEquipment(): Equipment {
  const equipment = useContext(EquipmentContext);
  invariant(equipment !== null, 'the screen stands inside an EquipmentContext');
  return equipment;
}
