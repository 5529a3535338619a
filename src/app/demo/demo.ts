import { EXAMPLE_GAUGES } from '../../../calibration/tables.js';
import type { Practice } from '../../core/record/practice.js';
import { DEFAULT_PRACTICE } from '../../core/record/practice.js';
import { NO_READINGS } from '../../core/record/reader-sheet.js';
import { NO_PRESCRIPTION } from '../../core/record/typed-prescription.js';
import type { TypedSheet } from '../../core/record/typed-sheet.js';
import { DEFAULT_SHEET_SETTINGS, EMPTY_TYPED_SHEET } from '../../core/record/typed-sheet.js';
import { NO_NOTES } from '../../core/record/wearer-notes.js';
import type { Demo } from '../../ui/equipment.js';
import pictureAddress from './invented-wearer.jpg?url';

/** Projection and crest heights are read from the end of a rule, head and temples with calipers: the sheet does both sums. */
const practice: Practice = {
  ...DEFAULT_PRACTICE,
  gauges: EXAMPLE_GAUGES.map((gauge) => ({ ...gauge, checkedOn: '2026-09-01' })),
  gaugeInUse: {
    headWidth: 'head-calipers',
    templeWidth: 'head-calipers',
    crestHeight: 'end-rule',
    bridgeProjection: 'end-rule',
  },
};

/**
 * An invented wearer: the picture is a rendering of a head whose true measures are known, looking into the camera. The
 * readings of what the picture shows are those truths to the step of the gauge (PD 71.0, eyes 35.8 and 35.2, lids 10.2 and 10.5,
 * head 164.0, temples 120.2); nose, sides, frame and prescription are invented to go with them. There are two slips: the PD is
 * read at the wrong ten of the rule, and the 4 mm that the sheet adds to a crest height were already added for the left eye.
 */
const sheet: TypedSheet = {
  ...EMPTY_TYPED_SHEET,
  readers: {
    ...EMPTY_TYPED_SHEET.readers,
    first: {
      reader: 'Q. D.',
      history: [],
      readings: {
        ...NO_READINGS,
        pdFar: '61',
        monoPdR: '36 35.5 36',
        monoPdL: '35',
        pdNear: '66.5',
        monoNearR: '33.5',
        monoNearL: '33',
        apertureR: '10',
        apertureL: '10.5',
        pupilDiameterR: '4',
        pupilDiameterL: '4',
        irisDiameter: '12',
        // on the calipers' scale, which starts at 10 mm
        headWidth: '154 153 154',
        templeWidth: '110',
        apicalRadius: '9 loose 8 fits 7 tight',
        distanceBetweenRims10: '19',
        distanceBetweenRims15: '23',
        frontalAngleR: '22',
        frontalAngleL: '23',
        splayAngleR: '28',
        splayAngleL: '27',
        // on the rule's scale, which starts 4 mm behind its end
        crestHeightR: '1.5 2 1.5',
        crestHeightL: '6',
        bridgeProjection: '-2.5',
        lengthToBendR: '103',
        lengthToBendL: '104',
        lengthToTangentR: '98',
        lengthToTangentL: '99',
        lengthOfDropR: '42',
        lengthOfDropL: '41',
        angleOfSideR: '8',
        angleOfSideL: '8',
        downwardAngleOfDropR: '46',
        downwardAngleOfDropL: '47',
        inwardAngleOfDropR: '11',
        inwardAngleOfDropL: '10',
        earPointDifference: '0.5',
        boxLensWidth: '54',
        boxLensHeight: '40',
        distanceBetweenLenses: '18',
        overallSideLength: '145',
        fittingHeightR: '22 22.5 22',
        fittingHeightL: '22.5',
        backVertexDistanceR: '13',
        backVertexDistanceL: '13.5',
        pantoscopicAngle: '8',
        faceFormAngle: '4',
      },
    },
  },
  notes: { ...NO_NOTES, wearer: 'Tobin Quillfeather', light: 'room' },
  prescription: {
    ...NO_PRESCRIPTION,
    R: { ...NO_PRESCRIPTION.R, sphere: '-4.25', cylinder: '-0.75', axis: '10' },
    L: { ...NO_PRESCRIPTION.L, sphere: '-3.75' },
    vertexDistance: '12',
    effectiveDiameter: '57',
  },
  settings: { ...DEFAULT_SHEET_SETTINGS, gaze: 'camera', card: 'bought', practice },
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
