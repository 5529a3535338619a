import { useEffect, useMemo, useRef } from 'react';
import type { SessionRecord } from '../core/record/session-record.js';
import type { Result } from '../core/result.js';
import type { SheetMeasurement } from '../session/camera-record.js';
import { cameraRecordOf } from '../session/camera-record.js';
import { findingCounts } from '../session/finding-counts.js';
import type { Misfit } from '../session/misfits.js';
import type { SheetRow } from '../session/rows.js';
import type { SheetState } from '../session/sheet.js';
import { typedSheet } from '../session/sheet.js';
import { nowText } from './now-text.js';

/**
 * Hands on the session as it stands whenever something of it changed, as soon as that is on the screen.
 *
 * @param from.record the session as it was opened
 */
export function useSessionRecord(
  from: {
    readonly record: SessionRecord;
    readonly state: SheetState;
    readonly measurement: Result<SheetMeasurement, unknown> | null;
    readonly rows: readonly SheetRow[];
    /** null while nothing can be said of them yet: what was found before stands until then */
    readonly misfits: readonly Misfit[] | null;
  },
  onChanged: (record: SessionRecord) => void,
): void {
  const { record, measurement, misfits, rows } = from;
  const { readers, reader, notes, prescription, confirmations, settings, picture, takenAt } = from.state;
  const sheet = useMemo(
    () => typedSheet({ readers, reader, notes, prescription, confirmations, settings }),
    [readers, reader, notes, prescription, confirmations, settings],
  );
  const found = useMemo(() => (misfits === null ? null : findingCounts(rows, misfits)), [rows, misfits]);
  const latest = useRef(record);
  useEffect(() => {
    const before = latest.current;
    const camera =
      measurement?.ok === true
        ? cameraRecordOf(measurement.value, picture, takenAt ?? before.changedAt)
        : picture.kind === 'none'
          ? null
          : before.camera;
    const findings = found ?? before.findings;
    const isChanged = !isSame({ sheet, camera }, { sheet: before.sheet, camera: before.camera });
    // What is counted anew of an old session does not make it a new one.
    if (!isChanged && isSame(findings, before.findings)) return;
    latest.current = { ...before, sheet, camera, findings, changedAt: isChanged ? nowText() : before.changedAt };
    onChanged(latest.current);
  }, [sheet, measurement, picture, takenAt, found, onChanged]);
}

/** Both are plain data, made from the same fields in the same order. */
function isSame(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
