import type { OrderDocument, OrderGroup, OrderTable } from '../../src/sheets/order-document.js';

function group(heading: string, ...rows: readonly (readonly [side: 'R' | 'L' | null, value: string, doubt: string])[]) {
  return {
    heading,
    rows: rows.map(([side, value, doubt]) => ({
      side,
      sideName: side === null ? null : side === 'R' ? 'right' : 'left',
      value,
      doubt,
      confirmed: null,
    })),
  } satisfies OrderGroup;
}

function table(caption: string, ...groups: readonly OrderGroup[]): OrderTable {
  const head = { measurement: 'Measurement', side: 'Side', value: 'Value', doubt: '95 %', confirmed: null };
  return { caption, head, groups, notes: [] };
}

/** An invented order such as a workshop gets, every number of it another one. */
export const EXAMPLE_ORDER: OrderDocument = {
  language: 'en',
  title: 'Order sheet',
  notice: null,
  facts: [
    { label: 'Wearer', values: ['Ottilie Marsh'] },
    { label: 'Date', values: ['25 November 2026'] },
    { label: 'Confirmed by', values: ['Tobin Quill, 25 November 2026, 14:03 to 14:20'] },
  ],
  prescription: {
    heading: 'Prescription, progressive',
    eyes: [
      {
        side: 'R',
        sideName: 'right',
        notation: '+2.25\u00a0/\u00a0−1.00\u00a0×\u00a090   2\u00a0Δ\u00a0base\u00a0in   Add\u00a0+2.00',
      },
      { side: 'L', sideName: 'left', notation: '−3.75   Add\u00a0+2.00' },
    ],
    notes: ['Found at a vertex distance of 12 mm. Notation after BS 2738-3, from memory.'],
  },
  tables: [
    table(
      'Centration',
      group('PD, distance', [null, '63.5 mm', '± 0.8 mm']),
      group('PD of each eye', ['R', '31.5 mm', '± 0.5 mm'], ['L', '32.1 mm', '± 0.6 mm']),
      group('Fitting height', ['R', '22.2 mm', '± 0.9 mm'], ['L', '22.6 mm', '± 1.1 mm']),
      group('Pantoscopic', [null, '8°', '± 2.1°']),
    ),
    table(
      'Frame',
      group('Box width', [null, '54.0 mm', '± 0.4 mm']),
      group('DBL', [null, '18.0 mm', '± 0.3 mm']),
      group('Side, overall', [null, '145 mm', '± 1.3 mm']),
    ),
    table('Bridge', group('Projection', [null, '−1.5 mm', '± 1.2 mm'])),
    {
      caption: 'Worked out from these numbers',
      head: { measurement: 'Measurement', side: 'Side', value: 'Value', doubt: null, confirmed: null },
      groups: [
        {
          heading: 'Decentration',
          rows: [
            { side: 'R', sideName: 'right', value: '0.2 mm in, 2.3 mm up', doubt: null, confirmed: null },
            { side: 'L', sideName: 'left', value: '1.0 mm out, 2.4 mm down', doubt: null, confirmed: null },
          ],
        },
      ],
      notes: ['Common practice; not measured.'],
    },
  ],
  missing: [],
  sections: [
    { heading: 'Notes', sentences: ['Squint: both eyes never fixate together.'], isList: false },
    {
      heading: 'Open',
      sentences: [
        'R 35.8 and L 35 make 70.8 mm; 61 is written for both eyes.',
        'The camera could neither confirm nor contradict: PD of each eye R, L; Head width.',
      ],
      isList: true,
    },
  ],
  signature: 'Signature',
  cautions: {
    heading: 'Before this is made',
    sentences: [
      'Values by hand and camera are no clinical measurement; whoever signs has looked at each of them.',
      'A second reading: it is no substitute for clinical measurement.',
      'Strong and progressive lenses need the fitting measurements of their maker, whatever the picture says.',
    ],
    isList: true,
  },
  footer: (page, pages) => `Order sheet, Ottilie Marsh, page ${page} of ${pages}`,
  continued: (caption) => `${caption}, continued`,
  lettersMissing: (mark) => `${mark} stands for a letter that this file cannot show; the print page shows it.`,
};
