import { useEffect, useRef, useState } from 'react';
import type { Finding } from '../core/crosscheck/finding.js';
import type { MeasuringFailure } from '../session/ports.js';
import type { PictureState } from '../session/sheet.js';
import { findingsSpoken } from './readings-sheet.js';
import { failureSaying, progressSentence } from './sentences.js';
import type { SheetInHand } from './use-sheet.js';
import { pictureWords, sheetWords } from './words.js';

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

  return { picture: pictureNews(state.picture, measurement), findings };
}

function pictureNews(picture: PictureState, measurement: SheetInHand['measurement']): string {
  switch (picture.kind) {
    case 'none':
      return '';
    case 'working':
      return `${progressSentence(picture.progress)}.`;
    case 'failed':
      return failureWords(picture.failure);
    case 'placing':
      return pictureWords.placing;
    case 'measured':
      return measurement?.ok === false ? failureWords(measurement.failure) : pictureWords.found;
  }
}

function summary(rows: SheetInHand['rows']): string {
  const kinds = rows.flatMap(({ fields }) => fields.flatMap(({ finding }) => (finding === null ? [] : [finding.kind])));
  const count = (kind: Finding['kind']): number => kinds.filter((one) => one === kind).length;
  return sheetWords.findingsCount(count('agrees'), count('disagrees'), count('cannot-tell'));
}

function failureWords(failure: MeasuringFailure): string {
  const { what, next } = failureSaying(failure);
  return `${what} ${next}`;
}
