import { useEffect, useRef, useState } from 'react';
import type { Finding } from '../core/crosscheck/finding.js';
import { framesMissing } from '../session/sweep-frames.js';
import { findingsSpoken } from './row-findings.js';
import type { Saying } from './picture-sentences.js';
import { failureSaying, progressSentence } from './picture-sentences.js';
import { sweepFailureSaying } from './sweep-sentences.js';
import { noticeSentence } from './sheet-notice.js';
import { sweepHeadline } from './sweep-headline.js';
import type { SheetInHand } from './use-sheet.js';
import { pictureWords, sheetWords, sweepWords } from './words.js';

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

export function useAnnouncements({ state, measurement, rows }: SheetInHand): Announcements {
  const [findings, setFindings] = useState('');
  const told = useRef<ReadonlyMap<string, string>>(new Map());

  useEffect(() => {
    const timer = setTimeout(() => {
      const spoken = new Map(rows.map((row) => [row.measurement.id, findingsSpoken(row)]));
      const news = [...spoken].filter(([id, words]) => words !== '' && words !== told.current.get(id));
      told.current = spoken;
      if (news.length > MANY) setFindings(summary(rows));
      else if (news.length > 0) setFindings(news.map(([, words]) => words).join(' '));
    }, REST_MS);
    return () => {
      clearTimeout(timer);
    };
  }, [rows]);

  return { picture: sweepNews(state) ?? noticeSentence(state.notice) ?? pictureNews(state, measurement), findings };
}

/** The stages of a sweep, not each of its frames; null without one, and while the camera's dialog speaks for itself. */
function sweepNews({ sweep }: SheetInHand['state']): string | null {
  if (sweep === null) return null;
  switch (sweep.stage.kind) {
    case 'collecting':
      return sweep.origin === 'camera' ? null : sweepWords.lookingAt;
    case 'measuring':
      return `${sweepWords.measuring}.`;
    case 'failed':
      return spoken(sweepFailureSaying(sweep.stage.failure, framesMissing(sweep.frames)));
  }
}

function pictureNews({ picture }: SheetInHand['state'], measurement: SheetInHand['measurement']): string {
  switch (picture.kind) {
    case 'none':
      return '';
    case 'working':
      return `${progressSentence(picture.progress)}.`;
    case 'failed':
      return spoken(failureSaying(picture.failure));
    case 'placing':
      return pictureWords.placing;
    case 'measured':
      return measurement?.ok === false && measurement.failure.kind === 'picture'
        ? spoken(failureSaying(measurement.failure.failure))
        : pictureWords.found;
    case 'swept':
      if (measurement?.ok === true && measurement.value.kind === 'sweep') {
        return sweepWords.found(sweepHeadline(measurement.value, picture.frames, picture.outcome));
      }
      return measurement?.ok === false && measurement.failure.kind === 'sweep'
        ? spoken(sweepFailureSaying(measurement.failure.failure, framesMissing(picture.frames)))
        : '';
  }
}

function summary(rows: SheetInHand['rows']): string {
  const kinds = rows.flatMap(({ fields }) => fields.flatMap(({ finding }) => (finding === null ? [] : [finding.kind])));
  const count = (kind: Finding['kind']): number => kinds.filter((one) => one === kind).length;
  return sheetWords.findingsCount(count('agrees'), count('disagrees'), count('cannot-tell'));
}

function spoken({ what, next }: Saying): string {
  return `${what} ${next}`;
}
