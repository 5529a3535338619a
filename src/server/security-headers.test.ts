import { describe, expect, it } from 'vitest';
import { cacheControl, contentSecurityPolicy, isCardWorker, securityHeaders } from './security-headers.js';

const CARD_WORKER = '/assets/card.worker-B1x_9-Ab.js';
const LANDMARKS_WORKER = '/assets/landmarks.worker-B1x_9-Ab.js';
const SWEEP_WORKER = '/assets/sweep.worker-B1x_9-Ab.js';

/** The policy as a map, read by the rules of the W3C's Content Security Policy Level 3, 2.2.1. */
function directives(policy: string): Map<string, string[]> {
  return new Map(
    policy.split(';').map((part) => {
      const [name = '', ...sources] = part.trim().split(/\s+/);
      return [name, sources];
    }),
  );
}

describe('contentSecurityPolicy', () => {
  it('forbids all that is not named', () => {
    expect(directives(contentSecurityPolicy('/')).get('default-src')).toEqual(["'none'"]);
  });

  it.each(['/', '/index.html', LANDMARKS_WORKER, SWEEP_WORKER, CARD_WORKER, '/models/face-landmarks.task'])(
    'lets %s fetch from its own origin only',
    (pathname) => {
      const policy = directives(contentSecurityPolicy(pathname));
      expect(policy.get('connect-src')).toEqual(["'self'"]);
      expect(policy.get('worker-src')).toEqual(["'self'"]);
      expect([...policy.values()].flat().filter((source) => /^(https?:|wss?:|\*)/.test(source))).toEqual([]);
    },
  );

  it('lets nobody but the card worker build functions from strings', () => {
    expect(directives(contentSecurityPolicy(CARD_WORKER)).get('script-src')).toEqual([
      "'self'",
      "'wasm-unsafe-eval'",
      "'unsafe-eval'",
    ]);
    for (const pathname of [
      '/',
      '/index.html',
      LANDMARKS_WORKER,
      SWEEP_WORKER,
      '/assets/index-B1x_9-Ab.js',
      '/assets/card-B1x_9-Ab.js',
    ]) {
      expect(directives(contentSecurityPolicy(pathname)).get('script-src')).toEqual(["'self'", "'wasm-unsafe-eval'"]);
    }
  });

  it('lets files that the reader chose be shown and played, and nothing else', () => {
    const policy = directives(contentSecurityPolicy('/'));
    expect(policy.get('media-src')).toEqual(["'self'", 'blob:']);
    expect(policy.get('img-src')).toEqual(["'self'", 'blob:', 'data:']);
  });

  it('allows inline scripts and styles nowhere', () => {
    for (const pathname of ['/', CARD_WORKER]) expect(contentSecurityPolicy(pathname)).not.toContain('unsafe-inline');
  });

  it('does not loosen for names that only resemble the card worker', () => {
    for (const pathname of [
      '/card.worker-a.js',
      '/assets/card.worker-a.js.html',
      '/assets/xcard.worker-a.js',
      '/assets/card.worker-a.js/x',
    ]) {
      expect(isCardWorker(pathname), pathname).toBe(false);
    }
    expect(isCardWorker(`/below/a/path${CARD_WORKER}`)).toBe(true);
  });
});

describe('securityHeaders', () => {
  it('keeps the camera and gives up the microphone', () => {
    const permissions = securityHeaders('/')['Permissions-Policy'];
    expect(permissions).toContain('camera=(self)');
    expect(permissions).toContain('microphone=()');
  });

  it('tells no other site where the reader came from', () => {
    expect(securityHeaders('/')['Referrer-Policy']).toBe('no-referrer');
  });
});

describe('cacheControl', () => {
  it('keeps files whose name changes with their contents', () => {
    expect(cacheControl(CARD_WORKER)).toBe('public, max-age=31536000, immutable');
  });

  it.each(['/', '/index.html', '/models/face-landmarks.task', '/vision/vision_wasm_internal.wasm'])(
    'asks again for %s',
    (pathname) => {
      expect(cacheControl(pathname)).toBe('no-cache');
    },
  );
});
