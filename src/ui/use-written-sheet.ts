import { useMemo } from 'react';
import { joinedReadings, writtenReadings } from '../session/misfits.js';
import { useEquipment } from './equipment.js';
import type { WrittenSheet } from './slip-sentences.js';
import type { SheetInHand } from './use-sheet.js';

/** What the sentences about slips draw on, as it stands on the sheet. */
export function useWrittenSheet({ rows, state }: Pick<SheetInHand, 'rows' | 'state'>): Required<WrittenSheet> {
  const { catalogue } = useEquipment();
  const { gauges } = state.settings.practice;
  return useMemo(
    () => ({ readings: writtenReadings(rows, catalogue), joined: joinedReadings(rows), catalogue, gauges }),
    [rows, catalogue, gauges],
  );
}
