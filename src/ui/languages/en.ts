/**
 * All words of the screen in English, part by part. What it consists of is what every other language must have as well: the
 * compiler names what is missing there.
 */
export const english = {};
