import type { Catalogue } from '../../src/core/catalogue/catalogue.js';
import { reconcile } from '../../src/core/crosscheck/reconcile.js';
import type { Reconciliation } from '../../src/core/crosscheck/reconciliation.js';
import { sheetEvidence } from '../../src/session/evidence.js';
import { workingDistanceOf } from '../../src/session/measuring-settings.js';
import type { SheetRow } from '../../src/session/rows.js';
import { sheetRows } from '../../src/session/rows.js';
import type { SheetState } from '../../src/session/sheet.js';

/** The rows of a sheet without a picture, and what all that is written there says together. */
export function reconciledSheet(
  state: SheetState,
  catalogue: Catalogue,
): { readonly rows: readonly SheetRow[]; readonly reconciliation: Reconciliation } {
  const { settings } = state;
  const rows = sheetRows(state, null, catalogue);
  const evidence = sheetEvidence(rows, catalogue, {
    hasPicture: false,
    workingDistanceMm: workingDistanceOf(settings),
    practice: settings.practice,
  });
  return { rows, reconciliation: reconcile({ ...evidence, catalogue }) };
}
