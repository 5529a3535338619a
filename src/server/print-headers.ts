import { cacheControl, securityHeaders } from './security-headers.js';

// Prints, for who sets up a static host, which headers it has to send: `npx tsx src/server/print-headers.ts`.

const cases = [
  { title: 'Every file', pathname: '/index.html' },
  { title: 'Only assets/card.worker-*.js', pathname: '/assets/card.worker-00000000.js' },
];

for (const { title, pathname } of cases) {
  console.log(`# ${title}`);
  for (const [name, value] of Object.entries(securityHeaders(pathname))) console.log(`${name}: ${value}`);
  console.log('');
}
console.log('# Caching');
console.log(`assets/*: Cache-Control: ${cacheControl('/assets/index-00000000.js')}`);
console.log(`all else: Cache-Control: ${cacheControl('/index.html')}`);
