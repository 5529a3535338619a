import { describe, expect, it } from 'vitest';
import { ageExecutable } from './age-executable.js';

describe('ageExecutable', () => {
  it('takes the one that AGE names, and no other where that is missing', () => {
    expect(ageExecutable({ AGE: '/opt/mine' }, () => true)).toBe('/opt/mine');
    expect(ageExecutable({ AGE: '/opt/mine' }, (path) => path !== '/opt/mine')).toBeNull();
  });

  it('finds the one of the system, or none', () => {
    expect(ageExecutable({}, (path) => path === '/usr/local/bin/age')).toBe('/usr/local/bin/age');
    expect(ageExecutable({}, () => false)).toBeNull();
  });
});
