import { useEffect, useRef, useState } from 'react';
import type { Catalogue } from '../core/catalogue/catalogue.js';
import type { Finding } from '../core/crosscheck/finding.js';
import { framesMissing } from '../session/sweep-frames.js';
import { useEquipment } from './equipment.js';
import { findingsSpoken } from './row-findings.js';
import { readingWords } from './sentences.js';
import { rowMark } from './slip-marks.js';
import { words } from './language.js';
import type { Saying } from './saying.js';
import { failureSaying, progressSentence } from './picture-sentences.js';
import { sweepFailureSaying } from './sweep-sentences.js';
import { noticeSentence } from './sheet-notice.js';
import { sweepHeadline } from './sweep-headline.js';
import type { SheetInHand } from './use-sheet.js';

/** A drag changes findings many times a second; they are told once it rests. */
const REST_MS = 700;

/** More rows than this at once (a new picture, a moved corner) are told as a count. */
const MANY = 2;

/** What a screen reader is told, in two live regions. */
export interface Announcements {
  /** the work on a picture, and how it ended */
  readonly picture: string;
  /** findings that changed */
  readonly findings: string;
}

export function useAnnouncements(sheet: SheetInHand): Announcements {
  const { state, measurement, rows, misfits } = sheet;
  const { catalogue } = useEquipment();
  const [findings, setFindings] = useState('');
  const told = useRef<ReadonlyMap<string, string>>(new Map());
  const toldMisfits = useRef<ReadonlySet<string>>(new Set());

  useEffect(() => {
    const timer = setTimeout(() => {
      const spoken = new Map(rows.map((row) => [row.measurement.id, findingsSpoken(row)]));
      const news = [...spoken].filter(([id, words]) => words !== '' && words !== told.current.get(id));
      told.current = spoken;
      const said = misfitsSpoken(misfits, catalogue);
      const newMisfits = said.filter((words) => !toldMisfits.current.has(words));
      toldMisfits.current = new Set(said);
      const all = [
        ...(news.length > MANY ? [summary(rows)] : news.map(([, words]) => words)),
        ...(newMisfits.length > MANY ? [`${words.strip.misfits(said.length)}.`] : newMisfits),
      ];
      if (all.length > 0) setFindings(all.join(' '));
    }, REST_MS);
    return () => {
      clearTimeout(timer);
    };
  }, [rows, misfits, catalogue]);

  return { picture: sweepNews(state) ?? noticeSentence(state.notice) ?? pictureNews(state, measurement), findings };
}

/** What does not fit, as far as no finding says it. */
function misfitsSpoken(misfits: SheetInHand['misfits'], catalogue: Catalogue): readonly string[] {
  return misfits.flatMap(({ names }) => {
    const [name] = names;
    const mark = name === undefined ? null : rowMark(name, { misfits });
    return name === undefined || mark === null ? [] : [words.news.misfit(readingWords(name, catalogue), mark)];
  });
}

/** The stages of a sweep, not each of its frames; null without one, and while the camera's dialog speaks for itself. */
function sweepNews({ sweep }: SheetInHand['state']): string | null {
  if (sweep === null) return null;
  switch (sweep.stage.kind) {
    case 'collecting':
      return sweep.origin === 'camera' ? null : words.sweep.lookingAt;
    case 'measuring':
      return `${words.sweep.measuring}.`;
    case 'failed':
      return spoken(sweepFailureSaying(sweep.stage.failure, framesMissing(sweep.frames)));
  }
}

function pictureNews({ picture }: SheetInHand['state'], measurement: SheetInHand['measurement']): string {
  switch (picture.kind) {
    case 'none':
    case 'recorded':
      return '';
    case 'working':
      return `${progressSentence(picture.progress)}.`;
    case 'failed':
      return spoken(failureSaying(picture.failure));
    case 'placing':
      return words.picture.placing;
    case 'measured':
      return measurement?.ok === false && measurement.failure.kind === 'picture'
        ? spoken(failureSaying(measurement.failure.failure))
        : words.picture.found;
    case 'swept':
      if (measurement?.ok === true && measurement.value.kind === 'sweep') {
        return words.sweep.found(sweepHeadline(measurement.value, picture.frames, picture.outcome));
      }
      return measurement?.ok === false && measurement.failure.kind === 'sweep'
        ? spoken(sweepFailureSaying(measurement.failure.failure, framesMissing(picture.frames)))
        : '';
  }
}

function summary(rows: SheetInHand['rows']): string {
  const kinds = rows.flatMap(({ fields }) => fields.flatMap(({ finding }) => (finding === null ? [] : [finding.kind])));
  const count = (kind: Finding['kind']): number => kinds.filter((one) => one === kind).length;
  return words.sheet.findingsCount(count('agrees'), count('disagrees'), count('cannot-tell'));
}

function spoken({ what, next }: Saying): string {
  return `${what} ${next}`;
}
