/**
 * From this probability on that something is wrong, it is said. Chosen so that of sheets without any slip fewer than one in a
 * hundred is questioned.
 */
export const SUSPECTED = 0.4;
