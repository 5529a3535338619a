import { describe, expect, it } from 'vitest';
import { chromiumExecutable } from './chromium-executable.js';

describe('chromiumExecutable', () => {
  it('takes the one that CHROMIUM names', () => {
    expect(chromiumExecutable({ CHROMIUM: '/opt/mine' }, () => true)).toBe('/opt/mine');
  });

  it('does not fall back silently where the named one is missing', () => {
    expect(chromiumExecutable({ CHROMIUM: '/opt/mine' }, (path) => path !== '/opt/mine')).toBeNull();
  });

  it('finds the one of the distribution', () => {
    expect(chromiumExecutable({}, (path) => path === '/usr/bin/chromium-browser')).toBe('/usr/bin/chromium-browser');
  });

  it('gives nothing where there is none', () => {
    expect(chromiumExecutable({}, () => false)).toBeNull();
  });
});
