import { describe, expect, it } from 'vitest';
import { DEFINITIONS } from '../../core/catalogue/definitions.js';
import type { MeasurementId } from '../../core/catalogue/measurement.js';
import { BEARING, HALF_PD } from './face-front.js';
import { PROFILE } from './face-profile.js';
import type { Bounds, Point } from './figure.js';
import { boundsOf, distance, sampled } from './figure.js';
import type { AngleMark, DistanceMark, Mark, MarkSizes } from './marks.js';
import { dimensionEnds, layAngle, layDistance, markSizes, pointsOfMark, spannedDegrees, textBounds } from './marks.js';
import { MEASUREMENT_DRAWINGS } from './measurement-drawings.js';
import { BOX, LENS } from './spectacles.js';

const ALL = DEFINITIONS.map(({ id, fields, unit }) => ({ id, fields, unit, drawing: MEASUREMENT_DRAWINGS[id] }));

function marksOf<Kind extends Mark['kind']>(id: MeasurementId, kind: Kind): readonly Extract<Mark, { kind: Kind }>[] {
  return MEASUREMENT_DRAWINGS[id].marks.filter((mark): mark is Extract<Mark, { kind: Kind }> => mark.kind === kind);
}

/** Length of the first dimension line, mm. */
function drawnLength(id: MeasurementId, place = 0): number {
  return distance(...dimensionEnds(marksOf(id, 'distance')[place] as DistanceMark));
}

const inside = ([x, y]: Point, { left, right, top, bottom }: Bounds): boolean =>
  x >= left && x <= right && y >= top && y <= bottom;

/** Points along everything that is drawn of a mark but its text. */
function inkOf(mark: Mark, sizes: MarkSizes): readonly Point[] {
  switch (mark.kind) {
    case 'distance': {
      const { line, extensions } = layDistance(mark, sizes);
      return [line, ...extensions].flatMap(along);
    }
    case 'angle': {
      const { start, end, tails } = layAngle(mark, sizes);
      return along([start, ...(tails ?? []), end]);
    }
    case 'radius':
      return along([mark.centre, mark.to]);
    case 'reference':
    case 'bold':
      return along(mark.through);
    case 'point':
      return [mark.at];
    case 'label':
      return [];
  }
}

function along(through: readonly Point[]): readonly Point[] {
  return through.slice(1).flatMap((end, i) => {
    const start = through[i]!;
    return Array.from({ length: 200 }, (_, step): Point => {
      const t = step / 199;
      return [start[0] + t * (end[0] - start[0]), start[1] + t * (end[1] - start[1])];
    });
  });
}

describe('the drawings', () => {
  it.each(ALL)(
    'show $id with what is measured, inside of the picture',
    ({ drawing: { frame, figure, marks }, unit }) => {
      const view = { left: frame.x, right: frame.x + frame.width, top: frame.y, bottom: frame.y + frame.height };
      expect(figure.length).toBeGreaterThan(0);
      const measured = marks.filter(
        ({ kind }) => kind === (unit === 'deg' ? 'angle' : 'distance') || kind === 'radius',
      );
      expect(measured.length).toBeGreaterThan(0);
      const outside = marks.filter(
        (mark) => !pointsOfMark(mark, markSizes(frame)).every((point) => inside(point, view)),
      );
      expect(outside).toEqual([]);
    },
  );

  it.each(ALL)(
    'keep the letters of $id clear of every line and of each other',
    ({ drawing: { frame, figure, marks } }) => {
      const sizes = markSizes(frame);
      const texts = marks.flatMap((mark): readonly Bounds[] => {
        if (mark.kind === 'label') return [textBounds(mark.at, mark.text, sizes.letter)];
        if (mark.kind !== 'distance' || mark.text === null) return [];
        return [textBounds(layDistance(mark, sizes).textAt, mark.text, sizes.letter)];
      });
      const figureInk = figure.flatMap((part) => {
        if (part.kind === 'round') return [];
        return part.isStraight ? along(part.through) : sampled(part.through, part.isClosed);
      });
      const ink = [...marks.flatMap((mark) => inkOf(mark, sizes)), ...figureInk];
      for (const [i, text] of texts.entries()) {
        expect(ink.filter((point) => inside(point, text)).length).toBe(0);
        for (const other of texts.slice(i + 1)) {
          const isApart =
            text.right < other.left || other.right < text.left || text.bottom < other.top || other.bottom < text.top;
          expect(isApart).toBe(true);
        }
      }
    },
  );

  it.each(ALL.filter(({ unit }) => unit === 'deg'))('let each arc of $id span the angle it stands for', ({ id }) => {
    for (const mark of marksOf(id, 'angle')) {
      expect(spannedDegrees(mark)).toBeCloseTo(mark.degrees, 6);
      // What is drawn: from the law of cosines of the chord between both ends of the arc.
      const { start, end } = layAngle(mark, markSizes(MEASUREMENT_DRAWINGS[id].frame));
      const chord = distance(start, end);
      const drawn = (2 * Math.asin(chord / (2 * mark.radius)) * 180) / Math.PI;
      expect(drawn).toBeCloseTo(mark.degrees, 6);
    }
  });

  it('put R at the left where the wearer is seen from the front or from above, and at the right from behind', () => {
    for (const { id, drawing } of ALL) {
      const labels = marksOf(id, 'label');
      const right = labels.find(({ text }) => text === 'R');
      const left = labels.find(({ text }) => text === 'L');
      if (right === undefined || left === undefined) {
        // A view of one side is one of the wearer's right.
        expect(left).toBeUndefined();
        continue;
      }
      expect(right.at[0] < left.at[0]).toBe(drawing.view !== 'behind');
    }
  });

  it('draw both sides alike', () => {
    for (const { id, fields, drawing } of ALL) {
      if (fields.length === 1 || !marksOf(id, 'label').some(({ text }) => text === 'L')) continue;
      const kind = drawing.marks.some((mark) => mark.kind === 'angle') ? 'angle' : 'distance';
      const [one, other] = marksOf(id, kind);
      const lengthOf = (mark: DistanceMark | AngleMark | undefined): number =>
        mark === undefined ? NaN : mark.kind === 'angle' ? mark.degrees : distance(...dimensionEnds(mark));
      expect(lengthOf(one)).toBeCloseTo(lengthOf(other), 6);
    }
  });
});

describe('what is drawn follows the definitions', () => {
  it('pupil distances: both halves make the whole, and near is less than far', () => {
    expect(drawnLength('binocularPd')).toBe(2 * HALF_PD);
    expect(drawnLength('monocularPd', 0) + drawnLength('monocularPd', 1)).toBe(drawnLength('binocularPd'));
    expect(drawnLength('monocularNearPd', 0) + drawnLength('monocularNearPd', 1)).toBeCloseTo(drawnLength('nearPd'), 9);
    expect(drawnLength('nearPd')).toBeLessThan(drawnLength('binocularPd'));
  });

  it.each([10, 15] as const)('the width of the nose %s mm below the crest', (below) => {
    // A circle of the apical radius with tangents at the frontal angle: 2 (r + (h - r) sin a) / cos a. Own geometry.
    const { apicalRadius: r, frontalAngle } = BEARING;
    const a = (frontalAngle * Math.PI) / 180;
    const id = `distanceBetweenRims${below}` as const;
    expect(drawnLength(id)).toBeCloseTo((2 * (r + (below - r) * Math.sin(a))) / Math.cos(a), 9);
    const [, down] = marksOf(id, 'distance');
    expect(distance(...dimensionEnds(down!))).toBeCloseTo(below, 9);
    expect(down!.from).toEqual(BEARING.crest);
  });

  it('the crest above the lower lids, and before the lashes', () => {
    for (const mark of marksOf('crestHeight', 'distance')) {
      expect(mark.from[1]).toBe(BEARING.crest[1]);
      expect(mark.from[1]).toBeLessThan(mark.to[1]);
    }
    expect(PROFILE.crest[0]).toBeGreaterThan(PROFILE.lashTip[0]);
    // The same crest, seen from the side.
    expect(PROFILE.crest[1]).toBe(BEARING.crest[1]);
  });

  it('the temples 25 mm behind the back plane of the front, and narrower than the head', () => {
    expect(drawnLength('templeWidth', 1)).toBe(25);
    expect(drawnLength('templeWidth')).toBeLessThan(drawnLength('headWidth'));
  });

  it('the side: first touched before it bends', () => {
    expect(drawnLength('lengthToTangent')).toBeLessThan(drawnLength('lengthToBend'));
  });

  it('the higher right ear point', () => {
    const [right, left] = marksOf('earPointDifference', 'point');
    expect(right!.at[0]).toBeLessThan(0);
    expect(right!.at[1]).toBeLessThan(left!.at[1]);
  });

  it('the box that touches the lens on all four sides', () => {
    const { left, right, top, bottom } = boundsOf(sampled(LENS, true));
    expect(right - left).toBeCloseTo(BOX.width, 2);
    expect(bottom - top).toBeCloseTo(BOX.height, 2);
    expect(left).toBeCloseTo(BOX.between / 2, 2);
    expect(drawnLength('boxLensWidth')).toBe(BOX.width);
    expect(drawnLength('boxLensHeight')).toBe(BOX.height);
    expect(drawnLength('distanceBetweenLenses')).toBe(BOX.between);
  });
});
