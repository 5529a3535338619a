import { listInEnglish } from './list-in-english.js';

/** What is asked about a prescription that can be read. Powers carry their sign. */
export const prescriptionQuestionWords = {
  signLost: (right: string, left: string): string => `R ${right} and L ${left}: was a sign lost?`,
  eyesDiffer: (dioptres: string): string =>
    `The eyes differ by ${dioptres} dioptres along one direction. Is each in its own row?`,
  cylinderSigns: 'One cylinder is written with plus, the other with minus. Were both copied from one prescription?',
  cylinderLarge: {
    R: (power: string): string => `The right cylinder of ${power} is unusually large.`,
    L: (power: string): string => `The left cylinder of ${power} is unusually large.`,
  },
  additionsDiffer: (right: string, left: string): string => `The additions differ: R ${right}, L ${left}.`,
  prismLarge: {
    R: (amount: string): string => `The right prism of ${amount} is unusually large.`,
    L: (amount: string): string => `The left prism of ${amount} is unusually large.`,
  },
  verticalCancel: 'Both bases point the same way, up or down: the prisms cancel between the eyes.',
  horizontalCancel: 'One base in, the other out: the prisms cancel between the eyes.',
  vertexMissing: (power: string): string => `At ${power} the distance at which it was tested counts: ask for it.`,
  eighths: (places: readonly string[]): string =>
    `Eighths of a dioptre are seldom prescribed: ${listInEnglish(places)}.`,
};
