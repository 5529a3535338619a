import { useMemo, useState } from 'react';
import { otherReader } from '../session/entries.js';
import { orderOf, valuesOfOrder } from '../session/order.js';
import { parseEffectiveDiameter, parsePrescription } from '../session/prescription-entry.js';
import { fitsBox, lensCautions } from '../session/prescription-frame.js';
import { words } from './language.js';
import { cautionSentence } from './lens-sentences.js';
import type { OrderContent } from './order-document.js';
import { orderDoubtSentences } from './order-doubts.js';
import type { WrittenSheet } from './slip-sentences.js';
import type { SheetInHand } from './use-sheet.js';

/** What is ordered now. The day is that on which the order was opened. */
export function useOrderContent(sheet: SheetInHand, written: Required<WrittenSheet>): OrderContent {
  const { isInvented, rows, reconciliation, state } = sheet;
  const { notes, prescription, readers, reader } = state;
  const [when] = useState(() => new Date());
  const order = useMemo(
    () => orderOf(rows, reconciliation, { notes, prescription }),
    [rows, reconciliation, notes, prescription],
  );
  const otherName = readers[otherReader(reader)].reader;
  const doubts = orderDoubtSentences(order.doubts, written, otherName);
  const values = order.lines.flatMap((line) => line.values);
  const parsed = parsePrescription(prescription);
  const valueOfName = valuesOfOrder(order);
  const lensDoubts = !parsed.ok
    ? []
    : lensCautions(valueOfName, parsed.value.prescription)
        // What a progressive lens lacks is among the doubts of the order.
        .filter(({ kind, missing }) => kind !== 'progressive' && missing.length > 0)
        .map((caution) => cautionSentence(caution, written.catalogue));
  const effectiveDiameter = parseEffectiveDiameter(prescription.effectiveDiameter);
  const isDiameterUsed = effectiveDiameter?.ok === true && fitsBox(effectiveDiameter.value, valueOfName);
  return {
    order,
    doubts: [
      ...doubts,
      ...(values.length > 0 ? lensDoubts : []),
      ...(values.some(({ by }) => by.trim() === '') ? [words.orderDoubt.nameless] : []),
    ],
    prescription: parsed,
    effectiveDiameterMm: isDiameterUsed ? effectiveDiameter.value : null,
    notes,
    secondReader: values.some(({ name }) => written.joined.has(name)) ? otherName.trim() : null,
    when,
    isInvented,
    isUnsupervised: state.picture.kind === 'recorded' && state.picture.camera.supervision === 'none',
  };
}
