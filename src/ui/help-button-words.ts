/** The question mark at a row that opens the help. */
export const helpButtonWords = {
  openFor: (name: string): string => `Help for ${name}: how and where it is taken`,
  button: 'Help',
  /** the small button at a measurement */
  sign: '?',
};
