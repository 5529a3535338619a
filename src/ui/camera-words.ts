export const cameraWords = {
  heading: 'Take a picture',
  device: 'Camera',
  unnamed: (index: number): string => `Camera ${index}`,
  opening: 'Opening the camera. The browser may ask for permission.',
  mirrored: 'The preview is mirrored, like a looking glass; the picture is not.',
  gaze: {
    camera: 'Ask the wearer to look into the camera lens.',
    far: 'Ask the wearer to look past the camera at something far away.',
  },
  start: 'Take the picture in 3 seconds',
  stop: 'Stop the countdown',
  inSeconds: (seconds: number): string => `${seconds}`,
  hold: 'Hold still.',
  taken: 'Picture taken.',
  again: 'Try the camera again',
  close: 'Close',
};
