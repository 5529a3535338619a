export const demoWords = {
  load: 'Show the invented wearer',
  onSheet: 'Invented wearer: Tobin Quillfeather, Lantern Yard practice.',
  rendered: 'A rendered picture, and readings with two slips in them.',
  kept: {
    picture: 'Your own readings are kept; the picture measured before is not.',
    sweep: 'Your own readings are kept; the sweep measured before is not.',
  },
  leave: 'Back to my own sheet',
  pictureName: 'Invented wearer (rendered picture)',
};
