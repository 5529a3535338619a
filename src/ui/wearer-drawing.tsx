import type { ReactNode } from 'react';
import type { PreparingStep } from '../session/wearer-visit.js';

/** What a step is about, drawn; all of it is said in words beside it. */
export function WearerDrawing({ step }: { readonly step: PreparingStep }) {
  return (
    <svg className="wearer-drawing" viewBox="0 0 200 130" aria-hidden="true" focusable="false">
      {DRAWINGS[step]}
    </svg>
  );
}

/** A head from the front, with its eyes at y = 62. */
const HEAD = (
  <>
    <path className="w-line" d="M66 56c0-34 68-34 68 0 0 36-14 62-34 62S66 92 66 56Z" />
    <path className="w-line" d="M78 62q9-7 18 0q-9 7-18 0ZM104 62q9-7 18 0q-9 7-18 0Z" />
    <circle className="w-fill" cx="87" cy="62" r="2.6" />
    <circle className="w-fill" cx="113" cy="62" r="2.6" />
    <path className="w-line" d="M100 66q-5 14-4 18q4 3 8 0M90 98q10 6 20 0" />
  </>
);

/** A head from the side that looks to the right, and its shoulder. */
const SIDE_HEAD = (
  <path
    className="w-line"
    d="M26 130c0-16 10-22 18-24l0-10c-12-8-18-20-16-34c3-22 38-26 46-4l1 8 6 12-6 3 0 9c0 6-6 7-13 6l0 10c10 4 16 12 17 24"
  />
);

/** A phone that stands leaned, from the side. */
const SIDE_PHONE = (
  <>
    <path className="w-strong" d="M158 96l8-48" />
    <path className="w-line" d="M150 97h44M172 97l-4-28" />
  </>
);

const CARD_ON_FOREHEAD = (
  <>
    <rect className="w-card" x="71" y="30" width="58" height="24" rx="3" />
    <path className="w-line" d="M150 72c-10-4-16-14-19-24M146 62c-8-2-13-8-16-16" />
  </>
);

const DRAWINGS: Readonly<Record<PreparingStep, ReactNode>> = {
  card: (
    <>
      <rect className="w-card" x="46" y="34" width="108" height="68" rx="6" />
      <rect className="w-band" x="46" y="46" width="108" height="14" />
      <path className="w-line" d="M58 76h40M58 86h26" />
    </>
  ),
  face: (
    <>
      {HEAD}
      <path
        className="w-line"
        d="M150 96a10 10 0 1 0 .1 0M176 96a10 10 0 1 0 .1 0M160 106h6M140 106l-4-12M186 106l4-12"
      />
      <path className="w-arrow" d="M134 70q14 4 22 18M150 84l7 5 1-9" />
    </>
  ),
  light: (
    <>
      <path className="w-line" d="M150 16h38v72h-38ZM169 16v72M150 52h38" />
      <path className="w-arrow" d="M142 34l-40 12M142 52l-40 8M142 70l-40 4" />
      <g transform="translate(-8 10) scale(0.9)">{SIDE_HEAD}</g>
    </>
  ),
  distance: (
    <>
      {SIDE_HEAD}
      {SIDE_PHONE}
      <path className="w-arrow" d="M90 68h66M97 63l-7 5 7 5M149 63l7 5-7 5" />
    </>
  ),
  hold: (
    <>
      {HEAD}
      {CARD_ON_FOREHEAD}
    </>
  ),
  gaze: (
    <>
      {SIDE_HEAD}
      {SIDE_PHONE}
      <path className="w-strong" d="M70 40l3 18" />
      <path className="w-gaze" d="M76 66L163 54" />
      <circle className="w-target" cx="165" cy="53" r="5" />
    </>
  ),
};
