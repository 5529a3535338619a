import { chromium } from 'playwright-core';
import type { Browser } from 'playwright-core';
import { chromiumExecutable } from './chromium-executable.js';

/**
 * What camera the browser has: none at all; one whose use is refused; or one that plays a video (Y4M or MJPEG) over and
 * over and is allowed without a question.
 */
export type CameraOfBrowser = 'none' | 'refused' | { readonly videoPath: string };

export interface ChromiumOptions {
  readonly camera?: CameraOfBrowser;
  /** further command line switches */
  readonly switches?: readonly string[];
}

/**
 * Parts of Chromium that nothing here needs. Each window prepared a page of the browser's own for its address bar, unseen, which cost
 * more than a second of computing for every context that was opened. The others are those that Playwright switches off:
 * where the switch is given twice, the last one counts alone.
 */
const UNWANTED_FEATURES = [
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'AimEnabled',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsFirstBalancedModeAutoEnable',
  'HttpsUpgrades',
  'LensOverlay',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationHints',
  'PaintHolding',
  'PreconnectToSearch',
  'ThirdPartyStoragePartitioning',
];

/** Without a window, and without anything that a fresh browser does by itself. */
export const PLAIN_SWITCHES: readonly string[] = [
  '--headless=new',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  `--disable-features=${UNWANTED_FEATURES.join(',')}`,
];

const SWITCHES = [
  ...PLAIN_SWITCHES,
  // WebGL in software: the same on every machine.
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
];

function cameraSwitches(camera: CameraOfBrowser): readonly string[] {
  if (camera === 'none') return [];
  if (camera === 'refused') return ['--use-fake-device-for-media-stream', '--deny-permission-prompts'];
  return [
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-video-capture=${camera.videoPath}`,
  ];
}

/** Starts Chromium without a window. Throws where there is none; the caller closes it. */
export async function launchChromium({ camera = 'none', switches = [] }: ChromiumOptions = {}): Promise<Browser> {
  const executablePath = chromiumExecutable();
  if (executablePath === null) throw new Error('No Chromium found; name its executable with CHROMIUM=…');
  return chromium.launch({ executablePath, args: [...SWITCHES, ...cameraSwitches(camera), ...switches] });
}
