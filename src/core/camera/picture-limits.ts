/**
 * What the measuring of a picture refuses, and what it takes with an advice: in one place, so that whoever leads a wearer before the
 * picture is taken asks for what the measuring wants.
 */

/** Below this share of the iris diameter the opening between the lids is a blink. */
export const CLOSED_SHARE = 0.33;

/** The brightest part of the eyes (the white) is darker than this in a picture that is too dark, levels of 255. Chosen. */
export const DARKEST_WHITE = 38;

/**
 * Softest iris edge that is measured, px, or as a share of the radius where that is more. Rendered eyes in focus rise within 3.5 px at most;
 * blurred by three pixels they take six to eight, and the centres begin to wander. Chosen between.
 */
const SOFTEST_IRIS_PX = 5.5;
const SOFTEST_IRIS_SHARE = 0.4;

/** Widest rise over the edge that an iris of this radius may show, px. */
export function softestIrisPx(radiusPx: number): number {
  return Math.max(SOFTEST_IRIS_PX, SOFTEST_IRIS_SHARE * radiusPx);
}

/** Mean visible iris diameter of adults (Ruefer, Schroeder and Erb 2005: 11.71 mm), here only to tell near from far. */
export const TYPICAL_IRIS_MM = 11.71;

/** Fewest pixels per millimetre that are measured at all; under NEAR_ENOUGH_PIXELS_PER_MM the advice is to come nearer. */
export const LEAST_PIXELS_PER_MM = 0.8;

/** A face turned further than this, beyond the doubt of the angle itself, is refused. */
export const TURN_LIMIT_DEG = 15;
/** Beyond this it is measured with the advice to turn to the camera. */
export const TURN_ADVICE_DEG = 8;

/** A face that nods further than this, up or down, is refused. */
export const NOD_LIMIT_DEG = 22;

/** A card that is turned in its plane further than this against the line between the eyes is measured with the advice to level it. */
export const SLANT_ADVICE_DEG = 8;

/** An edge of the card, or of an iris, of which less than this share was seen is worth a word. */
export const SEEN_SHARE_ADVICE = 0.6;
