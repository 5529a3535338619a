/** Decimal numbers such as 63.1 - 62.1 miss their value in the last binary digit; this is far above that and below any resolution. */
export const ROUNDING_SLACK = 1e-9;
