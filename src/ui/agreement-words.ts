export const agreementWords = {
  heading: 'How the two readers agree',
  places: {
    mm: (count: number): string => `${count} lengths`,
    deg: (count: number): string => `${count} angles`,
  },
  differences: (
    places: string,
    who: string,
    mean: string,
    interval: { readonly low: string; readonly high: string },
    limits: { readonly low: string; readonly high: string },
  ): string =>
    `${places}, ${who}: ${mean} on average (95 %: ${interval.low} to ${interval.high}); 19 of 20 differences lie between ${limits.low} and ${limits.high}.`,
  biased: 'One of them reads more than the other throughout: compare how both hold the gauge.',
  repeats: (name: string, coefficient: string, count: number): string =>
    `${name} read ${count === 1 ? '1 place' : `${count} places`} twice: two readings lie within ${coefficient} of each other in 19 of 20.`,
  note: 'Of one wearer and one sheet: it proves nothing of the readers.',
};
