export const handleWords = {
  cardCorners: [
    'Card corner, top left',
    'Card corner, top right',
    'Card corner, bottom right',
    'Card corner, bottom left',
  ] satisfies [string, string, string, string],
  irisCentre: { R: 'Iris centre, right eye', L: 'Iris centre, left eye' },
  irisEdge: { R: 'Iris edge, right eye', L: 'Iris edge, left eye' },
  lidUpper: { R: 'Upper lid margin, right eye', L: 'Upper lid margin, left eye' },
  lidLower: { R: 'Lower lid margin, right eye', L: 'Lower lid margin, left eye' },
  midline: 'Midline of the bridge',
  position: (x: string, y: string): string => `${x} pixels across, ${y} pixels down`,
};
