import { beforeAll, describe, expect, it } from 'vitest';
import { appInBrowser } from '../support/app-in-browser.js';
import { fixturePicture, fixturePixels } from '../support/fixture-pictures.js';
import {
  blankImage,
  blurred,
  darkened,
  drawnInto,
  ellipse,
  fartherAway,
  insideOf,
  moved,
  paintedOver,
  sideBySide,
  turnedHead,
} from '../support/painted-picture.js';
import type { RgbaImage } from '../../src/core/camera/pixel-plane.js';
import type { FourCorners } from '../../src/core/camera/features.js';
import type { ImagePoint } from '../../src/core/geometry/vector.js';
import type { PictureFile } from '../support/picture-file.js';
import { heicFile, hugePng, pngFile, truncated } from '../support/picture-file.js';
import { SheetPage } from '../support/sheet-page.js';

// Each picture that cannot be measured is refused with a sentence and a way out, and what was typed stays.

const app = appInBrowser();
let sheet: SheetPage;

const light = fixturePicture('light-card-forehead');
const lightPixels = fixturePixels('light-card-forehead');
const marker = fixturePicture('marker-card-forehead');
const markerPixels = fixturePixels('marker-card-forehead');

beforeAll(async () => {
  const { page } = await app.keepOpen();
  sheet = new SheetPage(page);
  await sheet.enter('pdFar', '63.5');
  await sheet.enter('monoPdR', '31.5');
});

/** What is said of a picture; that it was measured, where it was. */
async function refusalOf(file: PictureFile): Promise<string> {
  await sheet.choosePicture(file);
  return (await sheet.failure.count()) === 0 ? 'measured' : sheet.failure.innerText();
}

async function expectReadingsUntouched(): Promise<void> {
  expect(await sheet.field('pdFar').inputValue()).toBe('63.5');
  expect(await sheet.field('monoPdR').inputValue()).toBe('31.5');
  expect(await sheet.camera('pdFar').count(), 'no estimate from a refused picture').toBe(0);
}

/** A point between two others, `share` of the way from the first. */
function between(from: ImagePoint, to: ImagePoint, share: number): ImagePoint {
  return { xPx: from.xPx + (to.xPx - from.xPx) * share, yPx: from.yPx + (to.yPx - from.yPx) * share };
}

/** The card (and the shadow that it throws) painted over. */
const lightBare = (): RgbaImage => paintedOver(lightPixels, insideOf(light.cardCornersPx, 14));
const markerBare = (): RgbaImage => paintedOver(markerPixels, insideOf(marker.cardCornersPx, 8));

/** The marker card as it would be seen if its corners stood there. */
function markerCardAt(corners: FourCorners<ImagePoint>): RgbaImage {
  return drawnInto(markerBare(), corners, markerPixels, marker.cardCornersPx);
}

/** The marker card leaning back, its height foreshortened to `share`. */
function leaning(share: number): FourCorners<ImagePoint> {
  const [topLeft, topRight, bottomRight, bottomLeft] = marker.cardCornersPx;
  const inset = (1 - share) / 2;
  return [
    between(topLeft, bottomLeft, inset),
    between(topRight, bottomRight, inset),
    between(topRight, bottomRight, 1 - inset),
    between(topLeft, bottomLeft, 1 - inset),
  ];
}

/** The marker card narrower at its top although it is as high as ever: no flat card at this distance looks so. */
function bent(): FourCorners<ImagePoint> {
  const [topLeft, topRight, bottomRight, bottomLeft] = marker.cardCornersPx;
  return [between(topLeft, topRight, 0.08), between(topLeft, topRight, 0.92), bottomRight, bottomLeft];
}

/** Both eyes shut: each eye painted over, and drawn again with a seventh of its height. */
function shutEyes(): RgbaImage {
  const [halfWidth, halfHeight] = [36, 26];
  return (['R', 'L'] as const).reduce((image, side) => {
    const { xPx, yPx } = light.pupilPx[side];
    const corners: FourCorners<ImagePoint> = [
      { xPx: xPx - 0.8 * halfWidth, yPx: yPx - 0.75 * halfHeight },
      { xPx: xPx + 0.8 * halfWidth, yPx: yPx - 0.75 * halfHeight },
      { xPx: xPx + 0.8 * halfWidth, yPx: yPx + 0.75 * halfHeight },
      { xPx: xPx - 0.8 * halfWidth, yPx: yPx + 0.75 * halfHeight },
    ];
    const shut = moved(corners, (corner) => ({
      xPx: corner.xPx,
      yPx: yPx + 0.3 * halfHeight + 0.15 * (corner.yPx - yPx),
    }));
    const bare = paintedOver(image, ellipse({ xPx, yPx }, halfWidth, halfHeight));
    return drawnInto(bare, shut, lightPixels, corners);
  }, lightPixels);
}

/** Eyes of which neither iris nor lids are seen, as behind reflecting lenses: each painted over with what is around it. */
function hiddenIrises(): RgbaImage {
  return (['R', 'L'] as const).reduce(
    (image, side) => paintedOver(image, ellipse(light.pupilPx[side], 18, 18)),
    lightPixels,
  );
}

/** The head turned by 30 degrees to the wearer's right; the card stays as it was held. */
function turnedAway(): RgbaImage {
  const head = { centre: { xPx: 688, yPx: 370 }, halfWidthPx: 160, halfHeightPx: 250 };
  const turned = turnedHead(lightBare(), head, (-30 / 180) * Math.PI);
  return drawnInto(turned, light.cardCornersPx, lightPixels, light.cardCornersPx);
}

/** A second card beside the first one: a copy, that far away. */
function secondCard(pixels: RgbaImage, corners: FourCorners<ImagePoint>, acrossPx: number, downPx: number): RgbaImage {
  const copy = moved(corners, ({ xPx, yPx }) => ({ xPx: xPx + acrossPx, yPx: yPx + downPx }));
  return drawnInto(pixels, copy, pixels, corners);
}

describe('a picture that cannot be measured', () => {
  it.each<[string, () => RgbaImage, RegExp, RegExp]>([
    ['without anything on it', () => blankImage(1280, 720, 150), /No face was found/, /take another/],
    [
      'of a body without a face',
      () => paintedOver(lightPixels, ellipse({ xPx: 688, yPx: 350 }, 170, 250)),
      /No face was found/,
      /take another/,
    ],
    ['of two wearers', () => sideBySide(lightPixels, markerPixels), /There are 2 faces/, /alone/],
    ['without a card (hair and forehead free)', lightBare, /no card/, /marker card/],
    ['without a card (another head)', markerBare, /no card/, /marker card/],
    [
      'with two marker cards',
      () => secondCard(markerPixels, marker.cardCornersPx, 0, 270),
      /More than one card/,
      /Put all but one away/,
    ],
    [
      'with two bought cards',
      () => secondCard(lightPixels, light.cardCornersPx, 5, 330),
      /More than one card/,
      /Put all but one away/,
    ],
    [
      'with a card that leans back',
      // arccos 0.7 is 46 degrees; up to 25 are measured
      () => markerCardAt(leaning(0.7)),
      /The card leans \d+° from the camera/,
      /flat on the skin/,
    ],
    ['with a card that is not flat', () => markerCardAt(bent()), /does not fit a flat card/, /not bent/],
    ['of a turned head', turnedAway, /The face is turned by \d+°; up to 15°/, /Turn the nose to the camera/],
    ['of shut eyes', shutEyes, /A lid covers the iris of both eyes/, /open/],
    ['of irises that cannot be seen', hiddenIrises, /iris edge of both eyes could not be made out/, /spectacles off/],
    ['that is blurred, with a marker card', () => blurred(markerPixels, 4), /not sharp/, /hold still/],
    ['that is blurred, with a bought card', () => blurred(lightPixels, 4), /not sharp/, /hold still/],
    ['that is dark', () => darkened(lightPixels, 0.1), /too dark/, /light .* from the front/],
    [
      'from far away',
      // 1.94 px/mm before, 0.58 after
      () => fartherAway(lightPixels, 0.3),
      /too small in the picture: 0\.[5-7] pixels per millimetre/,
      /Come nearer/,
    ],
  ])('%s', async (_, paint, what, wayOut) => {
    const sentence = await refusalOf(pngFile('painted.png', paint()));
    expect(sentence).toMatch(what);
    expect(sentence).toMatch(wayOut);
    await expectReadingsUntouched();
  });
});

describe('a file that cannot be opened', () => {
  it.each<[string, PictureFile, RegExp, RegExp]>([
    ['a JPEG that breaks off', truncated(light.file, 0.6), /damaged or incomplete/, /Copy it again/],
    ['a PNG that breaks off', truncated(pngFile('half.png', markerPixels), 0.5), /damaged or incomplete/, /Copy it/],
    [
      'a text with the name of a picture',
      { name: 'readings.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('PD 63.5, R 31.5, L 32\n'.repeat(40)) },
      /no picture that can be opened/,
      /Copy it again/,
    ],
    [
      'an empty file',
      { name: 'empty.png', mimeType: 'image/png', buffer: Buffer.alloc(0) },
      /cannot be opened here|no picture that can be opened|damaged or incomplete/,
      /JPEG, PNG or WebP|Copy it again/,
    ],
    ['a HEIC picture', heicFile('phone.heic'), /type image\/heic cannot be opened/, /share a picture as JPEG/],
    // 9000 times 6000 is 54 million
    ['a picture of 54 megapixels', hugePng('wall.png', 9000, 6000), /has 54 megapixels; up to 50/, /Save it smaller/],
  ])('%s', async (_, file, what, wayOut) => {
    const sentence = await refusalOf(file);
    expect(sentence).toMatch(what);
    expect(sentence).toMatch(wayOut);
    await expectReadingsUntouched();
  });
});

describe('after a refusal', () => {
  it('the sentence is told to screen readers', async () => {
    await sheet.choosePicture(heicFile('phone.heic'));
    const told = sheet.page.getByRole('status').filter({ hasText: 'cannot be opened here' });
    await told.waitFor({ state: 'attached' });
    expect(await told.innerText()).toBe(await sheet.failure.innerText());
  });

  it('the next picture is measured', async () => {
    await sheet.choosePicture(light.file);
    expect(await sheet.failure.count()).toBe(0);
    await sheet.camera('pdFar').waitFor();
  });
});
