export const holdingWords = {
  heading: 'How to hold the card',
  steps: [
    'Any card of bank-card size, or the printed one. Flat against the forehead; if hair is in the way, above or under the mouth.',
    'Long edge level, all four edges free: hold it by one short end with two fingertips.',
    'Camera at eye height, about 40 to 60 cm away, face straight to it, light from the front.',
  ],
  cautions: [
    'The edges of a card are sharp: keep them off the eyes, and hand the card over flat.',
    'The wearer must not look into lamps or into the sun.',
  ],
};
