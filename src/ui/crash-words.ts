export const crashWords = {
  heading: 'Glabella stopped',
  what: 'Something went wrong that should not have. Your readings are still here and are kept in this browser.',
  readings: 'Your readings',
  copy: 'Copy the readings',
  copied: 'Copied.',
  copyFailed: 'The browser did not allow copying: select the text above and copy it.',
  again: 'Open the sheet again',
};
