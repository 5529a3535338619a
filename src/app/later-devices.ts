import type { AuditPort } from '../session/audit.js';
import type { MeasuringEquipment } from '../ui/equipment.js';
import { laterPort } from './later-port.js';

const devices = () => import('./devices.js');

/** What looks at a wearer, loaded when it is first used. */
export const laterDevices: MeasuringEquipment = {
  vision: laterPort(async () => (await devices()).vision),
  sweep: laterPort(async () => (await devices()).sweep),
  pictures: laterPort(async () => (await devices()).pictures),
  cameras: laterPort(async () => (await devices()).cameras),
  live: laterPort(async () => (await devices()).live),
};

/** What looks many records through, loaded when it is first used. */
export const laterAudit: AuditPort = laterPort(async () => (await devices()).audit);
