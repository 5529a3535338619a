export const demoWords = {
  load: 'Show the invented wearer',
  onSheet: 'Invented wearer: Tobin Quillfeather, Lantern Yard practice.',
  rendered: 'A rendered picture, and readings with two slips in them.',
  kept: 'Your own session is kept as it stands.',
  leave: 'Back to my own session',
  pictureName: 'Invented wearer (rendered picture)',
};
