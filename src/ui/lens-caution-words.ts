import { listInEnglish } from './list-in-english.js';

/** What to mind with lenses of this prescription. */
export const lensCautionWords = {
  strong: (power: string, prismOfMm: string): string =>
    `Strong lenses (${power}): one millimetre is ${prismOfMm}. Order by the PD of each eye, heights and vertex distance.`,
  progressive:
    'Progressive lenses: heights and the PD of each eye only with the chosen frame fitted and adjusted on the face.',
  multifocal: 'Bifocal and trifocal lenses: heights only with the chosen frame fitted and adjusted on the face.',
  missing: (places: readonly string[]): string => `Still missing: ${listInEnglish(places)}.`,
};
