export const readerWords = {
  legend: 'Who reads',
  first: 'First reader',
  second: 'Second reader',
  name: { first: 'Name of the first reader', second: 'Name of the second reader' },
  namePlaceholder: 'name',
  coveredFrom: {
    first: 'The second reader’s sheet is covered; each row of it shows as soon as yours is in.',
    second: 'The first reader’s sheet is covered; each row of it shows as soon as yours is in.',
  },
};
