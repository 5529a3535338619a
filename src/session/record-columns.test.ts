import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OUTSIDE_TABLES } from '../../calibration/tables.js';
import { assembleCatalogue } from '../core/catalogue/catalogue.js';
import { READING_NAMES } from '../core/catalogue/measurement.js';
import { columnOfReading, editSteps, nearestName, recordColumns } from './record-columns.js';

const catalogue = assembleCatalogue(OUTSIDE_TABLES);

describe('columns of a table of records', () => {
  it.each([
    ['pdFar', 'pd_far_mm'],
    ['monoPdR', 'mono_pd_r_mm'],
    ['distanceBetweenRims10', 'distance_between_rims_10_mm'],
    ['frontalAngleL', 'frontal_angle_l_deg'],
    ['backVertexDistanceR', 'back_vertex_distance_r_mm'],
  ] as const)('calls %s %s', (name, column) => {
    expect(columnOfReading(name, catalogue)).toBe(column);
  });

  it('has four columns for each reading and two for the fitting, no name twice, all readings described for those who write such tables', () => {
    const columns = [...recordColumns(catalogue).keys()];
    expect(columns).toHaveLength(2 + 4 * READING_NAMES.length);
    expect(columns.every((column) => /^[a-z\d]+(_[a-z\d]+)*$/.test(column))).toBe(true);
    const described = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8').split(/[\s`]+/);
    expect(READING_NAMES.filter((name) => !described.includes(columnOfReading(name, catalogue)))).toEqual([]);
    expect(recordColumns(catalogue).get('pd_near_mm_camera_u')).toEqual({ kind: 'camera-uncertainty', name: 'pdNear' });
  });
});

describe('nearestName', () => {
  const known = recordColumns(catalogue);
  it.each([
    ['pd_far', 'pd_far_mm'],
    ['pdFar', 'pd_far_mm'],
    ['PD far (mm)', 'pd_far_mm'],
    ['mono_pd_right_mm', 'mono_pd_r_mm'],
    ['frontal_angel_r_deg', 'frontal_angle_r_deg'],
    ['working-distance', 'working_distance_mm'],
  ])('takes %j for %s', (name, nearest) => {
    expect(nearestName(name, known.keys())).toBe(nearest);
  });

  it.each(['colour of the frame', '', 'x', '12345'])('finds none for %j', (name) => {
    expect(nearestName(name, known.keys())).toBeNull();
  });
});

describe('editSteps', () => {
  it.each([
    // kitten/sitting is the common example of Levenshtein's distance, ca/abc that of the restricted transposition: 3 each
    ['kitten', 'sitting', 3],
    ['ca', 'abc', 3],
    ['angel', 'angle', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('from %j to %j are %d', (from, to, steps) => {
    expect(editSteps(from, to)).toBe(steps);
  });

  it('counts the same both ways', () => {
    fc.assert(fc.property(fc.string(), fc.string(), (a, b) => editSteps(a, b) === editSteps(b, a)));
  });
});
