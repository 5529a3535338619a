import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import type { KeepingFailure, OfflinePort, OfflineStatus } from '../session/offline.js';
import { NewerBar } from './newer-bar.js';
import { OfflineLine } from './offline-line.js';

function port(status: OfflineStatus): OfflinePort {
  return { status: () => status, subscribe: () => () => undefined, goOn: () => undefined, takeNewer: () => undefined };
}

/** What stands on the screen, without marks. */
const line = (files: OfflineStatus['files']): string =>
  renderToStaticMarkup(<OfflineLine offline={port({ files, newer: 'none' })} />).replace(/<[^>]+>/g, '');

describe('OfflineLine', () => {
  it('says nothing where nobody can tell', () => {
    expect(line({ kind: 'unknown' })).toBe('');
  });

  it('counts megabytes, and never calls the last one there before it is', () => {
    expect(line({ kind: 'fetching', keptBytes: 12_400_000, allBytes: 30_200_000 })).toContain('12 of 31 MB');
    expect(line({ kind: 'fetching', keptBytes: 30_199_999, allBytes: 30_200_000 })).toContain('30 of 31 MB');
    expect(line({ kind: 'complete', allBytes: 30_200_000 })).toBe('Ready for use without a network.');
  });

  it('shows the share of the bytes', () => {
    const files = { kind: 'fetching', keptBytes: 25, allBytes: 100 } as const;
    const html = renderToStaticMarkup(<OfflineLine offline={port({ files, newer: 'none' })} />);
    expect(html).toMatch(/<progress [^>]*max="1" value="0.25"/);
  });

  it.each<[KeepingFailure, RegExp, boolean]>([
    ['network', /line broke off/, true],
    ['storage', /Make room/, true],
    ['other-build', /newer version/, false],
  ])('says why files are missing, and what can be done: %s', (why, sentence, canGoOn) => {
    const text = line({ kind: 'incomplete', keptBytes: 2_000_000, allBytes: 26_000_000, why });
    expect(text).toContain('2 of 26 MB are here');
    expect(text).toMatch(sentence);
    expect(text.includes('Go on now')).toBe(canGoOn);
  });
});

describe('NewerBar', () => {
  it('says nothing without a newer version, and what goes with taking one', () => {
    const bar = (newer: OfflineStatus['newer']): string =>
      renderToStaticMarkup(<NewerBar offline={port({ files: { kind: 'unknown' }, newer })} />).replace(/<[^>]+>/g, ' ');
    expect(bar('none').trim()).toBe('');
    expect(bar('waiting')).toMatch(/newer Glabella is here.*what is typed stays.*Take it now/);
    expect(bar('taken')).toMatch(/another window.*Take it now/);
  });
});
