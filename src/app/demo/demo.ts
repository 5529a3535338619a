import type { TypedSheet } from '../../session/typed-sheet.js';
import { DEFAULT_SHEET_SETTINGS } from '../../session/typed-sheet.js';
import type { Demo } from '../../ui/equipment.js';
import pictureAddress from './invented-wearer.jpg?url';

/**
 * An invented wearer: the picture is a rendering of a head whose true measures are known, looking into the camera. The
 * readings are those truths to half a millimetre (PD 71.0, eyes 35.8 and 35.2, lids 10.2 and 10.5, head 164.0, temples
 * 120.2), with one slip: the PD is read at the wrong ten of the rule.
 */
const sheet: TypedSheet = {
  readings: {
    pdFar: '61',
    monoPdR: '36',
    monoPdL: '35',
    apertureR: '10',
    apertureL: '10.5',
    headWidth: '164',
    templeWidth: '120',
  },
  settings: { ...DEFAULT_SHEET_SETTINGS, gaze: 'camera', card: 'bought' },
};

export const demo: Demo = {
  sheet,
  picture: async () => {
    try {
      const response = await fetch(pictureAddress);
      return response.ok ? await response.blob() : null;
    } catch {
      // The page was opened and the server is gone since: the screen says so.
      return null;
    }
  },
};
