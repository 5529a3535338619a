/** Said on paper only. */
export const paperWords = {
  printed: (when: string): string => `Printed ${when}.`,
  wearer: (wearer: string): string => `Wearer: ${wearer}.`,
  readBy: (reader: string): string => `Read by ${reader}.`,
  alsoReadBy: (reader: string): string => `Read a second time by ${reader}.`,
  squint: 'Squint: rows that it concerns were to be measured with the other eye covered.',
  light: (light: string): string => `Pupils read in ${light}.`,
  lights: { bright: 'bright light', room: 'room light', dim: 'dim light' },
  remark: (remark: string): string => `Remark: ${remark}`,
  looked: (where: string): string => `The wearer looked ${where}.`,
  bought: 'Card: a bought card of size ID-1.',
  markerCard: (length: string): string => `Card: the printed marker card, its 150 mm line measured as ${length} mm.`,
  sweep: (used: number, all: number): string => `Camera values from a sweep, ${used} of ${all} frames used.`,
  markerCardUnmeasured: 'Card: the printed marker card, its 150 mm line not measured.',
};
