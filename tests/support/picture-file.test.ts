import jpeg from 'jpeg-js';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { readPictureHeader } from '../../src/devices/picture-header.js';
import { fixturePicture, fixturePixels } from './fixture-pictures.js';
import { blankImage } from './painted-picture.js';
import { hugePng, jpegFile, motionJpeg, pngFile, truncated, withOrientation } from './picture-file.js';

describe('pngFile and jpegFile', () => {
  it('hold what was drawn', () => {
    const image = blankImage(16, 8, 77);
    const png = PNG.sync.read(pngFile('a.png', image).buffer);
    expect([png.width, png.height, png.data[0]]).toEqual([16, 8, 77]);
    const decoded = jpeg.decode(jpegFile('a.jpg', image).buffer);
    expect([decoded.width, decoded.height]).toEqual([16, 8]);
    expect(Math.abs((decoded.data[0] ?? NaN) - 77)).toBeLessThanOrEqual(2);
  });
});

describe('withOrientation', () => {
  it('puts an EXIF segment with the orientation behind the start marker', () => {
    const plain = jpegFile('a.jpg', blankImage(16, 8, 77)).buffer;
    const { buffer } = withOrientation(jpegFile('a.jpg', blankImage(16, 8, 77)), 6);
    // APP1, its length with the two bytes of the length itself, "Exif", TIFF of big-endian kind, one entry 0x0112: 6
    expect(buffer.subarray(0, 40).toString('hex')).toBe(
      'ffd8' +
        'ffe1' +
        '0022' +
        '457869660000' +
        '4d4d002a00000008' +
        '0001' +
        '0112000300000001' +
        '00060000' +
        '00000000' +
        'ffe0',
    );
    expect(buffer.subarray(38).equals(plain.subarray(2))).toBe(true);
  });
});

describe('hugePng', () => {
  it('says its size in its header', () => {
    const { buffer } = hugePng('a.png', 9000, 6000);
    expect(readPictureHeader(new Uint8Array(buffer))).toMatchObject({
      ok: true,
      value: { widthPx: 9000, heightPx: 6000 },
    });
  });
});

describe('truncated and motionJpeg', () => {
  it('cut and repeat bytes', () => {
    const file = { name: 'a', mimeType: '', buffer: Buffer.from([1, 2, 3, 4]) };
    expect([...truncated(file, 0.5).buffer]).toEqual([1, 2]);
    expect([...motionJpeg(file, 2)]).toEqual([1, 2, 3, 4, 1, 2, 3, 4]);
  });
});

describe('the rendered pictures', () => {
  it.each(['light-card-forehead', 'marker-card-forehead', 'dark-card-forehead', 'light-card-chin'] as const)(
    '%s has a truth that fits it: dark pupils, R at the left of the picture, sides that add up',
    (name) => {
      const { widthPx, data } = fixturePixels(name);
      const { pupilPx, pdFarMm, monoPdMm } = fixturePicture(name);
      const redAt = (xPx: number, yPx: number): number =>
        data[(Math.floor(yPx) * widthPx + Math.floor(xPx)) * 4] ?? NaN;
      for (const side of ['R', 'L'] as const) {
        const { xPx, yPx } = pupilPx[side];
        // the white of the eye lies a good iris radius aside
        const white = Math.max(redAt(xPx - 14, yPx), redAt(xPx + 14, yPx));
        expect(redAt(xPx, yPx)).toBeLessThan(white / 2);
      }
      expect(pupilPx.R.xPx).toBeLessThan(pupilPx.L.xPx);
      // each is rounded to a hundredth
      expect(Math.abs(monoPdMm.R + monoPdMm.L - pdFarMm)).toBeLessThan(0.02);
    },
  );
});
