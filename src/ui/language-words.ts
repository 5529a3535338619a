export const languageWords = {
  choose: 'Language',
  failed: (name: string): string => `${name} could not be loaded. Go online once, and choose it again.`,
};
