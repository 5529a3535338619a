/** The strip that stays in view above the sheet. */
export const stripWords = {
  gauge: (name: string): string => `read with ${name}`,
  step: (resolution: string): string => `to ${resolution}`,
  misfits: (count: number): string => (count === 1 ? '1 thing does not fit' : `${count} things do not fit`),
  show: 'Show',
  showMisfits: 'Show what does not fit',
};
