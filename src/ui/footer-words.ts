export const footerWords = {
  heading: 'Before you rely on it',
  cautions: [
    'A second reading, not a clinical measurement: it does not replace the measurements that a fitting requires.',
    'Local rules come first, and whoever is licensed to dispense decides.',
    'Children: measure them as your local rules and training say; do not decide by a picture.',
    'Squint: both eyes never fixate together. Measure each eye with the other covered.',
    'Strong and progressive lenses need the fitting measurements of their maker, whatever the picture says.',
  ],
  privacy: 'Nothing leaves this device by itself: no account, and no server that receives anything.',
  privacyMore:
    'What you type is kept in this browser until you delete its session; a picture only if the wearer agrees, and camera profiles until you delete them.',
};
