/** Behind the name of a standard. */
export const standardWords = {
  all: 'values from memory',
  progressive: 'for progressive lenses from memory',
};
