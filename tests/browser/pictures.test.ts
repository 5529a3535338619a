import { beforeAll, describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import type { FixtureName } from '../support/fixture-pictures.js';
import { fixturePicture, fixturePixels } from '../support/fixture-pictures.js';
import type { PictureFile } from '../support/picture-file.js';
import { jpegFile, withOrientation } from '../support/picture-file.js';
import { quarterTurned } from '../support/painted-picture.js';
import { SheetPage } from '../support/sheet-page.js';

// A picture comes in as a file, by drop or by paste, in three formats and lying on its side, and is measured the same.

const app = appInBrowser();
let sheet: SheetPage;

/** Asked by the project's goals of 95 % of the pictures; those here are rendered, so that the truth is known. */
const PD_LIMIT_MM = 1.6;

/** The midline adds its own doubt (about 0.75 mm from landmarks) to half of the PD's: 1.7 mm at 95 %, and a reserve. */
const MONO_PD_LIMIT_MM = 2.2;

/** Three times the median error that the project's goals allow: a gross mistake, or another head, would show. */
const APERTURE_LIMIT_MM = 2.1;
const HEAD_WIDTH_LIMIT_MM = 12;

/** What compression of a turned picture may change: its blocks lie elsewhere. */
const SAME_PD_MM = 0.3;

beforeAll(async () => {
  const { page } = await app.keepOpen();
  sheet = new SheetPage(page);
  await sheet.uncoverAll();
});

async function measuredPdMm(): Promise<number> {
  expect(await sheet.failure.allInnerTexts()).toEqual([]);
  return (await sheet.estimate('pdFar')).valueMm;
}

async function choseGaze(gaze: 'camera' | 'far'): Promise<void> {
  await sheet.page.getByRole('radio', { name: gaze === 'far' ? 'far away' : 'into the camera' }).check();
}

/** A picture written anew by the browser's own encoder. PNG loses nothing, and WebP of the quality 1 neither. */
async function encoded(file: PictureFile, mimeType: 'image/png' | 'image/webp', quality: number): Promise<PictureFile> {
  const base64 = await sheet.page.evaluate(
    async ({ jpegBase64, type, quality }) => {
      const bytes = Uint8Array.from(atob(jpegBase64), (letter) => letter.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([bytes]));
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      canvas.getContext('2d')?.drawImage(bitmap, 0, 0);
      const blob = await canvas.convertToBlob({ type, quality });
      if (blob.type !== type) throw new Error(`The browser wrote ${blob.type}.`);
      const written = new Uint8Array(await blob.arrayBuffer());
      return btoa(Array.from(written, (byte) => String.fromCharCode(byte)).join(''));
    },
    { jpegBase64: file.buffer.toString('base64'), type: mimeType, quality },
  );
  return { name: 'face', mimeType, buffer: Buffer.from(base64, 'base64') };
}

/** Lets a file fall on the page, or pastes it, as the browser reports it. */
async function handOver(file: PictureFile, how: 'drop' | 'paste'): Promise<void> {
  await sheet.page.evaluate(
    ({ base64, name, type, how }) => {
      const data = new DataTransfer();
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      data.items.add(new File([bytes], name, { type }));
      const options = { bubbles: true, cancelable: true };
      if (how === 'paste') {
        document.body.dispatchEvent(new ClipboardEvent('paste', { ...options, clipboardData: data }));
        return;
      }
      document.body.dispatchEvent(new DragEvent('dragover', { ...options, dataTransfer: data }));
      document.body.dispatchEvent(new DragEvent('drop', { ...options, dataTransfer: data }));
    },
    { base64: file.buffer.toString('base64'), name: file.name, type: file.mimeType, how },
  );
}

describe('a picture file', () => {
  it.each<FixtureName>(['light-card-forehead', 'marker-card-forehead', 'dark-card-forehead', 'light-card-chin'])(
    'is measured: %s',
    async (name) => {
      const truth = fixturePicture(name);
      await sheet.choosePicture(truth.file);
      await choseGaze(truth.gaze);
      expect(Math.abs((await measuredPdMm()) - truth.pdFarMm)).toBeLessThan(PD_LIMIT_MM);
      for (const side of ['R', 'L'] as const) {
        const { valueMm } = await sheet.estimate(`monoPd${side}`);
        expect(Math.abs(valueMm - truth.monoPdMm[side]), side).toBeLessThan(MONO_PD_LIMIT_MM);
      }
      await choseGaze('camera');
    },
  );

  it('gives apertures and head width', async () => {
    const truth = fixturePicture('light-card-forehead');
    await sheet.choosePicture(truth.file);
    for (const side of ['R', 'L'] as const) {
      const { valueMm } = await sheet.estimate(`aperture${side}`);
      expect(Math.abs(valueMm - truth.apertureMm[side]), side).toBeLessThan(APERTURE_LIMIT_MM);
    }
    const { valueMm } = await sheet.estimate('headWidth');
    expect(Math.abs(valueMm - truth.headWidthMm)).toBeLessThan(HEAD_WIDTH_LIMIT_MM);
  });

  it('shows what was found where it is, R at the wearer’s right', async () => {
    const truth = fixturePicture('light-card-forehead');
    await sheet.choosePicture(truth.file);
    for (const [side, name] of [
      ['R', 'right'],
      ['L', 'left'],
    ] as const) {
      const at = await sheet.positionOf(sheet.page.getByRole('slider', { name: `Iris centre, ${name} eye` }));
      // a twenty-third of the iris, half a millimetre; what is left of that in the PD is checked above
      expect(Math.hypot(at.xPx - truth.pupilPx[side].xPx, at.yPx - truth.pupilPx[side].yPx)).toBeLessThan(1);
    }
  });
});

describe('the same picture', () => {
  let pdMm: number;

  beforeAll(async () => {
    await sheet.choosePicture(fixturePicture('light-card-forehead').file);
    pdMm = await measuredPdMm();
  });

  it.each([
    ['PNG', 'image/png'],
    ['WebP', 'image/webp'],
  ] as const)('as %s', async (_, mimeType) => {
    await sheet.choosePicture(await encoded(fixturePicture('light-card-forehead').file, mimeType, 1));
    expect(await measuredPdMm(), 'pixel by pixel the same picture').toBe(pdMm);
  });

  it('as WebP with loss', async () => {
    const truth = fixturePicture('light-card-forehead');
    await sheet.choosePicture(await encoded(truth.file, 'image/webp', 0.95));
    expect(Math.abs((await measuredPdMm()) - truth.pdFarMm)).toBeLessThan(PD_LIMIT_MM);
  });

  it.each(['drop', 'paste'] as const)('by %s', async (how) => {
    await sheet.bringPicture(() => handOver(fixturePicture('light-card-forehead').file, how));
    expect(await measuredPdMm()).toBe(pdMm);
  });

  it('with a file name that says nothing of its format', async () => {
    const { buffer } = fixturePicture('light-card-forehead').file;
    await sheet.choosePicture({ name: 'face.dat', mimeType: '', buffer });
    expect(await measuredPdMm()).toBe(pdMm);
  });
});

describe('a picture that lies on its side', () => {
  let uprightPdMm: number;

  beforeAll(async () => {
    await sheet.choosePicture(jpegFile('upright.jpg', fixturePixels('light-card-forehead')));
    uprightPdMm = await measuredPdMm();
  });

  it.each([
    // EXIF 2.32, 4.6.4: 6 wants a quarter turn clockwise to be upright, 3 two of them, 8 three
    [6, 3],
    [3, 2],
    [8, 1],
  ] as const)('is measured upright, with the EXIF orientation %i', async (orientation, quarters) => {
    const lying = quarterTurned(fixturePixels('light-card-forehead'), quarters);
    await sheet.choosePicture(withOrientation(jpegFile('phone.jpg', lying), orientation));
    expect(Math.abs((await measuredPdMm()) - uprightPdMm)).toBeLessThan(SAME_PD_MM);
  });
});

describe('a picture that is still being measured', () => {
  it('can be stopped, and the next one is measured', async () => {
    await sheet.button('Put the picture away').click();
    await sheet.fileInput.setInputFiles(fixturePicture('light-card-chin').file);
    await sheet.button('Stop').click();
    await sheet.button('Take a picture').waitFor();
    expect(await sheet.camera('pdFar').count()).toBe(0);
    await sheet.choosePicture(fixturePicture('marker-card-forehead').file);
    const truth = fixturePicture('marker-card-forehead');
    expect(Math.abs((await measuredPdMm()) - truth.pdFarMm)).toBeLessThan(PD_LIMIT_MM);
  });

  it('gives way to another one that is dropped on it', async () => {
    await sheet.button('Put the picture away').click();
    await handOver(fixturePicture('light-card-chin').file, 'drop');
    await handOver(fixturePicture('marker-card-forehead').file, 'drop');
    await sheet.facts.waitFor();
    const truth = fixturePicture('marker-card-forehead');
    expect(Math.abs((await measuredPdMm()) - truth.pdFarMm)).toBeLessThan(PD_LIMIT_MM);
  });
});
