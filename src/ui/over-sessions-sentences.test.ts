import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { driftingSessions } from '../../tests/support/drifting-sessions.js';
import { assembleCatalogue, measurementById } from '../core/catalogue/catalogue.js';
import type { ComparedPair, Grouping } from '../session/agreement-over-sessions.js';
import { againstOthers, agreementOfGroup, groupPairs, pairsOfSession } from '../session/agreement-over-sessions.js';
import { groupName, groupSentences, signed } from './over-sessions-sentences.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);
const measurement = measurementById(catalogue, 'binocularPd');
const [like] = pairsOfSession(driftingSessions(1)[0]!, measurement, catalogue, null).pairs;

/** Visits of one gauge, a day apart, with these differences. */
function visits(gauge: string, differences: readonly number[], days = 10): readonly ComparedPair[] {
  return differences.map((difference, place) => ({
    ...like!,
    sessionId: `${gauge} ${place}`,
    atMs: place * days * 86_400_000,
    gauge: { id: gauge, name: gauge },
    standardUncertainty: 0.5,
    difference,
  }));
}

function sentencesOf(pairs: readonly ComparedPair[], by: Grouping, name: string): readonly string[] {
  const agreements = groupPairs(pairs, by).map((group) => agreementOfGroup(group, 2, false));
  const groups = agreements.map((agreement) => ({ agreement, others: againstOthers(agreement, agreements) }));
  const own = groups.find(({ agreement }) => groupName(agreement, by) === name)!;
  // plain spaces, which are easier to read here
  return groupSentences(own, groups, by, measurement).map((sentence) => sentence.replaceAll('\u00a0', ' '));
}

/** Sixteen differences with mean `centre` and standard deviation √(16/15): half of them one above, half one below. */
const around = (centre: number): readonly number[] =>
  Array.from({ length: 16 }, (_, i) => centre + (i % 4 < 2 ? 1 : -1));

describe('what a gauge does, in sentences', () => {
  it('is said against the camera, against the others, and with limits', () => {
    const said = sentencesOf(
      [...visits('Steel rule', around(1)), ...visits('Long rule', around(-0.5))],
      'gauge',
      'Steel rule',
    );
    // t with 15 degrees of freedom is 2.131 (JCGM 100:2008, table G.2): 1 ± 2.131 x 1.0328/4
    expect(said[0]).toBe('Over 16 visits this gauge reads 1.0 mm more than the camera (95 %: 0.4 to 1.6).');
    // t with 30 is 2.042: 1.5 ± 2.042 x 1.0328 x √(2/16)
    expect(said[1]).toBe(
      'It reads 1.5 mm more than Long rule (95 %: 0.8 to 2.2). What the camera does alike for all does not explain that.',
    );
    // 1 ± 1.96 x 1.0328; the error of a limit: 2.131 x 1.0328 x √(1/16 + 1.96²/30)
    expect(said[2]).toBe('19 of 20 differences lie between −1.0 and +3.0 mm; each end is known to ± 1.0.');
    expect(said[3]).toBe('None of 16 lies beyond the tolerance of ± 2 mm.');
    expect(said[4]).toMatch(/^No drift shows over 150 days: 0.0 mm in 30 days \(95 %: −0\.\d to /);
    expect(said[5]).toBe(
      'Differences scatter by 1.0 mm (one standard deviation); the doubts of hand and camera account for 0.5.',
    );
    expect(said[6]).toBe('Hold it against something of known size before you change anything.');
  });

  it('says what there is too little of', () => {
    const said = sentencesOf(visits('Steel rule', [0.1, -0.1, 0.2, -0.2, 0], 1), 'gauge', 'Steel rule');
    expect(said).toContain('Limits of agreement take 15 visits.');
    expect(said).toContain('Drift takes 10 visits, over at least 30 days.');
    expect(said[0]).toMatch(/^Over 5 visits this gauge reads as the camera does: 0.00 mm on average/);
  });

  it('tells a drift and what stands far off', () => {
    // 0.05 mm with each ten days, and a wrong ten
    const drifting = Array.from({ length: 30 }, (_, i) => (i === 7 ? 10 : 0.05 * i + (i % 2 === 0 ? 0.02 : -0.02)));
    const said = sentencesOf(visits('Steel rule', drifting), 'gauge', 'Steel rule');
    expect(said.find((sentence) => sentence.startsWith('It drifts'))).toMatch(
      /^It drifts: 0.15 mm more with every 30 days \(95 %: 0.15 to 0.15\), over 290 days.$/,
    );
    expect(said).toContain('1 reading stands far off, as slips do, and is not counted.');
  });
});

it('calls what has no name by what it is', () => {
  const [plain] = groupPairs([{ ...like!, gauge: null, reader: '' }], 'gauge');
  const agreement = agreementOfGroup(plain!, 2, false);
  expect([groupName(agreement, 'gauge'), groupName(agreement, 'reader')]).toEqual(['Plain scale', 'No name typed']);
});

it('signs numbers, but not nothing', () => {
  expect([signed(0.04, 1), signed(0.06, 1), signed(-0.06, 1), signed(-0.04, 1)]).toEqual([
    '0.0',
    '+0.1',
    '−0.1',
    '0.0',
  ]);
});
