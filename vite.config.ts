import react from '@vitejs/plugin-react';
import { defineConfig } from 'vitest/config';
import { compressedFiles } from './src/server/compressed-files.js';
import { serviceWorkerFile } from './src/server/service-worker-file.js';
import { preloadedPart } from './src/server/preloaded-part.js';
import { visionFiles } from './src/server/vision-files.js';
import { webAppManifest } from './src/server/web-app-manifest.js';
import { withoutNode } from './src/server/without-node.js';

const UNIT_TESTS = {
  environment: 'node',
  // By itself Vitest leaves one core to the computer.
  maxWorkers: '100%',
  testTimeout: 30_000,
} as const;

/** What holds sentences in hand: begins with all words of the screen, as what is loaded when is a matter of the browser. */
const WITH_WORDS = ['src/ui/**/*.test.{ts,tsx}', 'tests/slips/**/*.test.ts'];

const BROWSER_TESTS = {
  environment: 'node',
  // A real browser on a machine that does other work misses a key or a frame now and then: each test may try twice.
  retry: 1,
  testTimeout: 120_000,
  hookTimeout: 180_000,
} as const;

/** What holds one clock against another, as a recorder's against the page's: one browser at a time, when the others are done. */
const ALONE = ['tests/browser/video-files.test.ts'];

/** What is true only of a computer that does nothing else: `npm run long-tasks`, no part of `npm test`. */
const QUIET = ['tests/browser/long-tasks.test.ts'];

/** What opens and checks what is kept: src/app/kept-here.ts, and all that nothing else of the first screen needs. */
const KEPT_PART = 'kept';
const KEPT_HERE =
  /src[\\/](app[\\/](kept-here|open-database|local-profile-store)|devices[\\/]session-database[\\/]|core[\\/]record[\\/](session-file|session-parts|session-schema|kept-sheet|measured-schema)|session[\\/](profile-file|invitation|invitation-list|practice-key)\.)|node_modules[\\/](zod|idb)[\\/]/;

export default defineConfig({
  // Relative addresses, so that the build also works below a path of a static host.
  base: './',
  plugins: [react(), visionFiles(), webAppManifest(), preloadedPart(KEPT_PART), serviceWorkerFile(), compressedFiles()],
  // Nothing is served that is not imported, listed in vision-files.ts, or index.html itself.
  publicDir: false,
  build: {
    outDir: 'dist',
    target: 'es2023',
    // An inlined asset would be a data: address, which the content security policy only allows for pictures.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The card worker carries OpenCV with its WebAssembly inside (about 11 MB); it is loaded lazily.
    chunkSizeWarningLimit: 12_000,
    reportCompressedSize: false,
    rolldownOptions: {
      checks: { pluginTimings: false },
      output: {
        codeSplitting: {
          groups: [
            // Three files instead of dozens: what the first screen needs, what is kept in the browser (in a file of its own, since to run
            // through both at once would hold up the page), and all other parts of it. Each language is one of its own.
            { name: 'first', tags: ['$initial'] },
            { name: KEPT_PART, test: KEPT_HERE },
            {
              name: 'parts',
              test: /src[\\/](app|core|devices|protocol|session|ui(?![\\/]languages))[\\/]|calibration[\\/]/,
            },
          ],
        },
      },
    },
  },
  worker: {
    format: 'es',
    plugins: () => [withoutNode('@techstark/opencv-js', ['fs', 'path', 'crypto'])],
    // security-headers.ts knows the card worker by this name.
    rolldownOptions: {
      output: { entryFileNames: 'assets/[name]-[hash].js', chunkFileNames: 'assets/[name]-[hash].js' },
    },
  },
  test: {
    projects: [
      {
        extends: true,
        test: {
          ...UNIT_TESTS,
          name: 'unit',
          include: [
            'src/**/*.test.{ts,tsx}',
            'models/**/*.test.ts',
            'calibration/**/*.test.ts',
            'tests/architecture/**/*.test.ts',
            'tests/accuracy/**/*.test.ts',
            'tests/simulation/**/*.test.ts',
            'tests/support/**/*.test.ts',
          ],
          exclude: WITH_WORDS,
        },
      },
      {
        extends: true,
        test: {
          ...UNIT_TESTS,
          name: 'unit-with-words',
          include: WITH_WORDS,
          setupFiles: ['tests/support/whole-english.ts'],
        },
      },
      {
        extends: true,
        test: {
          ...BROWSER_TESTS,
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          exclude: [...ALONE, ...QUIET],
          // A browser that is driven waits half of the time, for a countdown, a frame or a key: two fill the time of two cores.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true,
        test: {
          ...BROWSER_TESTS,
          name: 'browser-alone',
          include: ALONE,
          fileParallelism: false,
          sequence: { groupOrder: 2 },
        },
      },
      {
        extends: true,
        test: { ...BROWSER_TESTS, name: 'quiet', include: QUIET, fileParallelism: false, sequence: { groupOrder: 3 } },
      },
    ],
  },
});
