import { describe, expect, it } from 'vitest';
import { filledSheet } from '../../tests/support/filled-sheet.js';
import type { ReadingName } from '../core/catalogue/measurement.js';
import type { Correction } from '../core/record/reading-history.js';
import { correctionsOf } from '../core/record/reading-history.js';
import type { Gauge } from '../core/reading/gauge.js';
import { scaleText, standingConfirmation } from './entries.js';
import { DEFAULT_PRACTICE } from '../core/record/practice.js';
import type { SheetEvent, SheetState } from './sheet.js';
import { openReader, openSheet, typedSheet, sheetReducer } from './sheet.js';

const AT = '2026-11-25T10:00:00.000Z';
const LATER = '2026-11-25T10:05:00.000Z';

const endRule: Gauge = {
  id: 'end',
  name: 'End rule',
  serves: ['crestHeight'],
  resolution: 0.5,
  zeroOffset: 4,
  bias: 0.5,
  checkedOn: null,
};

function after(events: readonly SheetEvent[], from: SheetState = openSheet(null)): SheetState {
  return events.reduce(sheetReducer, from);
}

/** Typed and gone on from. */
function entered(field: ReadingName, text: string, at = AT): readonly SheetEvent[] {
  return [
    { kind: 'reading-typed', field, text },
    { kind: 'reading-entered', field, at },
  ];
}

describe('readings', () => {
  it('are kept as typed, and count once they are entered', () => {
    const typed = after([{ kind: 'reading-typed', field: 'pdFar', text: '63,5 ' }]);
    expect(openReader(typed).readings.pdFar).toBe('63,5 ');
    expect(openReader(typed).entered.pdFar).toBe('');
    expect(openReader(after([{ kind: 'reading-entered', field: 'pdFar', at: AT }], typed)).entered.pdFar).toBe('63,5 ');
  });

  it('are cut off where no hand would have typed on', () => {
    const long = after([{ kind: 'reading-typed', field: 'pdFar', text: '6'.repeat(500) }]);
    expect(openReader(long).readings.pdFar).toHaveLength(200);
  });
});

const correctionsIn = (state: SheetState): readonly Correction[] => correctionsOf(openReader(state).history);

describe('corrections', () => {
  const corrected = (first: string, second: string, field: ReadingName = 'pdFar') =>
    correctionsIn(
      after([
        { kind: 'reader-named', reader: 'first', name: 'A' },
        ...entered(field, first),
        ...entered(field, second, LATER),
      ]),
    );

  it('keep what was entered before, with who and when', () => {
    expect(corrected('61', '71')).toEqual([{ name: 'pdFar', earlier: '61', by: 'A', at: LATER }]);
  });

  it.each([
    ['nothing had been entered', '', '63'],
    ['the same comes again', '63', '63'],
    ['only space was typed', '63', ' 63 '],
    ['repeats are added behind', '63', '63 63.5'],
    ['a separator changes', '63 63.5', '63; 63.5'],
  ])('are not made where %s', (_what, first, second) => {
    expect(corrected(first, second)).toEqual([]);
  });

  it.each([
    ['the number goes', '63', ''],
    ['a repeat goes', '63 64', '63'],
    ['a repeat comes before', '63', '64 63'],
    ['a digit follows', '6', '63'],
  ])('are made where %s', (_what, first, second) => {
    expect(corrected(first, second)).toMatchObject([{ earlier: first }]);
  });

  it('are not made for trials that are added behind', () => {
    expect(corrected('10 loose', '10 loose 9 fits', 'apicalRadius')).toEqual([]);
    expect(corrected('10 loose', '10 fits', 'apicalRadius')).toHaveLength(1);
  });

  it('are not made while a number is still being typed', () => {
    const typing = after([
      ...entered('pdFar', '63'),
      { kind: 'reading-typed', field: 'pdFar', text: '6' },
      { kind: 'reading-typed', field: 'pdFar', text: '64' },
      { kind: 'reading-typed', field: 'pdFar', text: '63' },
      { kind: 'reading-entered', field: 'pdFar', at: LATER },
    ]);
    expect(correctionsIn(typing)).toEqual([]);
  });

  it('pile up, the oldest first', () => {
    const twice = after([...entered('pdFar', '61'), ...entered('pdFar', '17'), ...entered('pdFar', '71')]);
    expect(correctionsIn(twice).map(({ earlier }) => earlier)).toEqual(['61', '17']);
  });
});

describe('two readers', () => {
  it('each write on their own sheet', () => {
    const both = after([
      { kind: 'reader-named', reader: 'second', name: 'B' },
      ...entered('pdFar', '63'),
      { kind: 'reader-chosen', reader: 'second' },
      ...entered('pdFar', '64'),
      ...entered('pdFar', '65'),
    ]);
    expect(both.readers.first.entered.pdFar).toBe('63');
    expect(correctionsOf(both.readers.first.history)).toEqual([]);
    expect(correctionsOf(both.readers.second.history)).toMatchObject([{ earlier: '64', by: 'B' }]);
    expect(openReader(both).reader).toBe('B');
  });

  it('do not see what was uncovered for the one before', () => {
    const shown = after([{ kind: 'estimates-shown-alone', shown: true }]);
    expect(after([{ kind: 'reader-chosen', reader: 'first' }], shown).alone).toBe(true);
    expect(after([{ kind: 'reader-chosen', reader: 'second' }], shown).alone).toBe(false);
  });
});

describe('a confirmation', () => {
  const read = openSheet(filledSheet({ pdFar: '63', headWidth: ' ' }));
  const confirmed = after([{ kind: 'readings-confirmed', names: ['pdFar', 'headWidth'], at: AT }], read);

  it('stands for what was entered, by whom and when; where nothing was, there is none', () => {
    expect(confirmed.confirmations).toEqual({ pdFar: { text: '63', by: 'A', at: AT } });
    expect(standingConfirmation(confirmed, 'pdFar')).toEqual({ text: '63', by: 'A', at: AT });
    expect(standingConfirmation(confirmed, 'headWidth')).toBeNull();
  });

  it('counts until something else is entered', () => {
    const typing = after([{ kind: 'reading-typed', field: 'pdFar', text: '64' }], confirmed);
    expect(standingConfirmation(typing, 'pdFar')).not.toBeNull();
    const other = after([{ kind: 'reading-entered', field: 'pdFar', at: LATER }], typing);
    expect(standingConfirmation(other, 'pdFar')).toBeNull();
    expect(standingConfirmation(after(entered('pdFar', '63'), other), 'pdFar')).not.toBeNull();
  });

  it('counts no more once the other reader read the same, and stands for both when it is given again', () => {
    const second = after([{ kind: 'reader-chosen', reader: 'second' }], confirmed);
    // the second reader read nothing yet
    expect(standingConfirmation(second, 'pdFar')).toBeNull();
    const both = after([...entered('pdFar', '63.5'), { kind: 'reader-chosen', reader: 'first' }], second);
    expect(standingConfirmation(both, 'pdFar')).toBeNull();
    const again = after([{ kind: 'readings-confirmed', names: ['pdFar'], at: LATER }], both);
    expect(standingConfirmation(again, 'pdFar')).toEqual({ text: '63 | 63.5', by: 'A', at: LATER });
  });

  it('can be withdrawn', () => {
    expect(after([{ kind: 'confirmation-withdrawn', names: ['pdFar'] }], confirmed).confirmations).toEqual({});
  });

  it('goes where another gauge makes another value of the same number, and stays where it does not', () => {
    const crest = after(
      [{ kind: 'readings-confirmed', names: ['crestHeightR', 'pdFar'], at: AT }],
      openSheet(filledSheet({ crestHeightR: '2', pdFar: '63' })),
    );
    const listed = after([{ kind: 'practice-changed', change: { gauges: [endRule] } }], crest);
    expect(Object.keys(listed.confirmations)).toEqual(['crestHeightR', 'pdFar']);
    const used = after([{ kind: 'practice-changed', change: { gaugeInUse: { crestHeight: 'end' } } }], listed);
    expect(Object.keys(used.confirmations)).toEqual(['pdFar']);
  });
});

describe('a restoration', () => {
  const practice = { gauges: [endRule], gaugeInUse: { crestHeight: 'end' } };

  it('is entered as if typed, and the earlier entry stays as a correction', () => {
    const from = openSheet(filledSheet({ pdFar: '36.5' }));
    const taken = after(
      [{ kind: 'restoration-taken', restorations: [{ name: 'pdFar', written: 36.5, restored: 63.5 }], at: AT }],
      from,
    );
    expect(openReader(taken).readings.pdFar).toBe('63.5');
    expect(openReader(taken).entered.pdFar).toBe('63.5');
    expect(correctionsIn(taken)).toEqual([{ name: 'pdFar', earlier: '36.5', by: 'A', at: AT }]);
  });

  it('changes both places where two numbers had changed places', () => {
    const restorations = [
      { name: 'monoPdR', written: 33, restored: 31 },
      { name: 'monoPdL', written: 31, restored: 33 },
    ] as const;
    const taken = after(
      [{ kind: 'restoration-taken', restorations, at: AT }],
      openSheet(filledSheet({ monoPdR: '33', monoPdL: '31' })),
    );
    expect(openReader(taken).entered).toMatchObject({ monoPdR: '31', monoPdL: '33' });
    expect(correctionsIn(taken)).toHaveLength(2);
  });

  it('is written as the scale of the gauge in use shows it', () => {
    const restorations = [{ name: 'crestHeightL', written: 9.5, restored: 5.5 }] as const;
    const taken = after(
      [{ kind: 'restoration-taken', restorations, at: AT }],
      openSheet(filledSheet({ crestHeightL: '6' }, { practice })),
    );
    // 2 + 4 - 0.5 = 5.5
    expect(openReader(taken).entered.crestHeightL).toBe('2');
  });

  it('is written to a tenth, or to the step of a finer scale', () => {
    expect(scaleText(63, 'pdFar', DEFAULT_PRACTICE)).toBe('63');
    expect(scaleText(27.1666, 'headWidth', DEFAULT_PRACTICE)).toBe('27.2');
    const fine = { ...DEFAULT_PRACTICE, ...practice, gauges: [{ ...endRule, resolution: 0.05 }] };
    expect(scaleText(5.55, 'crestHeightR', fine)).toBe('2.05');
    expect(scaleText(5.55, 'crestHeightR', fine, ',')).toBe('2,05');
  });
});

describe('what is kept', () => {
  it('are both sheets with their corrections, and what was confirmed', () => {
    const state = after([
      { kind: 'reader-named', reader: 'first', name: 'A' },
      ...entered('pdFar', '61'),
      ...entered('pdFar', '71'),
      { kind: 'readings-confirmed', names: ['pdFar'], at: AT },
      { kind: 'reader-chosen', reader: 'second' },
      ...entered('pdFar', '70'),
    ]);
    const again = openSheet(typedSheet(state));
    expect(again.readers).toEqual(state.readers);
    expect(again.confirmations).toEqual(state.confirmations);
    expect(again.reader).toBe('second');
  });
});
