/** Response headers by their name. */
export type Headers = Readonly<Record<string, string>>;

type Directives = Readonly<Record<string, readonly string[]>>;

/** The content security policy of every response but one. */
const DIRECTIVES: Directives = {
  'default-src': ["'none'"],
  'script-src': ["'self'", "'wasm-unsafe-eval'"],
  'connect-src': ["'self'"],
  'worker-src': ["'self'"],
  'style-src': ["'self'"],
  'img-src': ["'self'", 'blob:', 'data:'],
  'media-src': ["'self'", 'blob:'],
  'font-src': ["'self'"],
  'manifest-src': ["'self'"],
  'base-uri': ["'none'"],
  'form-action': ["'none'"],
  'frame-ancestors': ["'none'"],
};

/** Features of the browser that the page may use or gives up. */
const PERMISSIONS: Readonly<Record<string, string>> = {
  camera: '(self)',
  microphone: '()',
  geolocation: '()',
  payment: '()',
  usb: '()',
  'display-capture': '()',
};

const CARD_WORKER = /^\/(?:.*\/)?assets\/card\.worker-[\w-]+\.js$/;

/**
 * Whether the address is the script of the card worker. Its OpenCV bindings build functions from strings, so that this
 * one response, and with it this one worker, may use `eval`; a worker obeys the policy that came with its own script.
 */
export function isCardWorker(pathname: string): boolean {
  return CARD_WORKER.test(pathname);
}

/** The content security policy for an address of the app, as the header's value. */
export function contentSecurityPolicy(pathname: string): string {
  return Object.entries(DIRECTIVES)
    .map(([name, sources]) => {
      const all = name === 'script-src' && isCardWorker(pathname) ? [...sources, "'unsafe-eval'"] : sources;
      return `${name} ${all.join(' ')}`;
    })
    .join('; ');
}

/** All security headers for an address of the app; `pathname` begins with a slash and has no query. */
export function securityHeaders(pathname: string): Headers {
  return {
    'Content-Security-Policy': contentSecurityPolicy(pathname),
    'Permissions-Policy': Object.entries(PERMISSIONS)
      .map(([feature, allowed]) => `${feature}=${allowed}`)
      .join(', '),
    'Referrer-Policy': 'no-referrer',
    'X-Content-Type-Options': 'nosniff',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Embedder-Policy': 'require-corp',
    'Cross-Origin-Resource-Policy': 'same-origin',
  };
}

/**
 * How long an address may be kept: names with a hash of their contents for ever, all else is asked for again (and
 * answered with "not modified" where nothing changed).
 */
export function cacheControl(pathname: string): string {
  return /\/assets\/[^/]+-[\w-]{8,}\.\w+$/.test(pathname) ? 'public, max-age=31536000, immutable' : 'no-cache';
}
