import type { ReactNode } from 'react';
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import type { MeasurementId } from '../core/catalogue/measurement.js';
import type { ComparedPair, Grouping } from '../session/agreement-over-sessions.js';
import type { SessionStore } from '../session/session-store.js';
import { AgreementOverview } from './agreement-overview.js';
import type { PlotScales } from './agreement-plots.js';
import { AgreementPlots } from './agreement-plots.js';
import { AgreementTable } from './agreement-table.js';
import { differenceScale } from './difference-scale.js';
import { useEquipment } from './equipment.js';
import { FailureNote } from './failure-note.js';
import { KeyEntry, Mark, SHAPES } from './lane-parts.js';
import { words } from './language.js';
import { formatNumber } from './numbers.js';
import { groupName, groupSentences } from './over-sessions-sentences.js';
import { valueAxis } from './plot-axes.js';
import { RadioChoice } from './radio-choice.js';
import { storeFailureSaying } from './store-sentences.js';
import type { ComparableSessions, ComparedGroup, SessionsComparison } from './use-over-sessions.js';
import { useComparableSessions, useComparison } from './use-over-sessions.js';

const GROUPINGS = ['gauge', 'reader'] as const satisfies readonly Grouping[];

const CAMERAS = ['any', 'picture', 'sweep'] as const;

/** What is compared first, where it was measured at all: nothing is read more often, or matters more. */
const FIRST_MEASUREMENT: MeasurementId = 'binocularPd';

/** Hand against camera over all kept sessions, by gauge or by reader. */
export function OverSessionsScreen(props: {
  readonly store: SessionStore;
  /** the session on the sheet; null where there is none */
  readonly openId: string | null;
  readonly onOpen: (sessionId: string) => void;
  readonly onBack: () => void;
  readonly footer?: ReactNode;
}) {
  const { store, openId, onOpen, onBack } = props;
  const { catalogue } = useEquipment();
  const heading = useRef<HTMLHeadingElement>(null);
  const read = useComparableSessions(store, catalogue);
  const [chosen, setChosen] = useState<MeasurementId | null>(null);
  const [by, setBy] = useState<Grouping>('gauge');
  const [camera, setCamera] = useState<ComparedPair['camera'] | null>(null);
  const [countsFarOff, setCountsFarOff] = useState(false);
  const sessions = read?.ok === true ? read.value : null;
  const first = sessions?.counts.find(({ id }) => id === FIRST_MEASUREMENT) ?? sessions?.counts[0];
  const id = chosen ?? first?.id ?? null;
  const comparison = useComparison(sessions, id === null ? null : { id, by, camera, countsFarOff }, catalogue, openId);
  useEffect(() => {
    heading.current?.focus();
    window.scrollTo(0, 0);
  }, []);
  return (
    <>
      <header className="top">
        <div className="top-name">
          <h1>{words.header.name}</h1>
          <p>{words.header.whatItIs}</p>
        </div>
        <nav className="top-actions" aria-label={words.overSessions.actions}>
          <button type="button" className="quiet" onClick={onBack}>
            {words.overSessions.back}
          </button>
          <button
            type="button"
            className="quiet"
            onClick={() => {
              window.print();
            }}
          >
            {words.overSessions.print}
          </button>
        </nav>
      </header>
      <main className="sessions over-sessions">
        <h2 tabIndex={-1} ref={heading}>
          {words.overSessions.heading}
        </h2>
        <p className="note">
          {words.overSessions.intro} {words.overSessions.caution}
        </p>
        {read?.ok === false && <FailureNote saying={storeFailureSaying(read.failure)} />}
        {sessions !== null && id !== null && (
          <div className="sessions-tools">
            <MeasurementChoice sessions={sessions} chosen={id} onChoose={setChosen} />
            <CameraChoice chosen={camera} onChoose={setCamera} />
            <RadioChoice
              legend={words.overSessions.by}
              values={GROUPINGS}
              chosen={by}
              wordsOf={(one) => words.overSessions.bys[one]}
              onChoose={setBy}
            />
            <label className="check over-sessions-far-off">
              <input
                type="checkbox"
                checked={countsFarOff}
                onChange={(event) => {
                  setCountsFarOff(event.currentTarget.checked);
                }}
              />
              {words.overSessions.countFarOff}
            </label>
          </div>
        )}
        <p role="status" className="over-sessions-said">
          {statusWords(read === null, sessions, comparison)}
        </p>
        {comparison !== null && <Compared comparison={comparison} onOpen={onOpen} />}
      </main>
      {props.footer !== undefined && <footer className="bottom">{props.footer}</footer>}
    </>
  );
}

function statusWords(
  isReading: boolean,
  sessions: ComparableSessions | null,
  comparison: SessionsComparison | null,
): string {
  if (isReading) return words.overSessions.reading;
  if (sessions === null) return '';
  if (sessions.counts.length === 0) return words.overSessions.none;
  if (comparison === null) return words.overSessions.workingOut;
  const { query, pairs, sessions: compared, covered } = comparison;
  const name = words.measurements[query.id].shortName;
  return [
    words.overSessions.summary(name, words.overSessions.cameras[query.camera ?? 'any'], pairs, compared),
    ...(covered > 0 ? [words.overSessions.covered(covered)] : []),
  ].join(' ');
}

function MeasurementChoice(props: {
  readonly sessions: ComparableSessions;
  readonly chosen: MeasurementId;
  readonly onChoose: (id: MeasurementId) => void;
}) {
  const fieldId = useId();
  const { counts } = props.sessions;
  return (
    <div className="sessions-search">
      <label htmlFor={fieldId}>{words.overSessions.measurement}</label>
      <select
        id={fieldId}
        value={props.chosen}
        onChange={(event) => {
          const found = counts.find(({ id }) => id === event.currentTarget.value);
          if (found !== undefined) props.onChoose(found.id);
        }}
      >
        {counts.map(({ id, sessions }) => (
          <option key={id} value={id}>
            {words.overSessions.option(words.measurements[id].shortName, sessions)}
          </option>
        ))}
      </select>
    </div>
  );
}

function CameraChoice(props: {
  readonly chosen: ComparedPair['camera'] | null;
  readonly onChoose: (camera: ComparedPair['camera'] | null) => void;
}) {
  const fieldId = useId();
  return (
    <div className="sessions-search">
      <label htmlFor={fieldId}>{words.overSessions.camera}</label>
      <select
        id={fieldId}
        value={props.chosen ?? 'any'}
        onChange={(event) => {
          const { value } = event.currentTarget;
          props.onChoose(value === 'picture' || value === 'sweep' ? value : null);
        }}
      >
        {CAMERAS.map((camera) => (
          <option key={camera} value={camera}>
            {words.overSessions.cameras[camera]}
          </option>
        ))}
      </select>
    </div>
  );
}

function Compared(props: { readonly comparison: SessionsComparison; readonly onOpen: (sessionId: string) => void }) {
  const { comparison, onOpen } = props;
  const { query, measurement, groups } = comparison;
  const { unit, tolerance } = measurement;
  const told = useMemo(() => groups.filter(({ agreement }) => agreement.bias !== null), [groups]);
  const scales = useMemo(() => sharedScales(told, tolerance.value), [told, tolerance.value]);
  const drawn = useOneAfterAnother(told.length, comparison);
  const untold = groups.filter(({ agreement }) => agreement.bias === null);
  return (
    <>
      {told.length > 0 && (
        <section className="chart" aria-label={words.overSessions.overview[query.by]}>
          <h3>{words.overSessions.overview[query.by]}</h3>
          <p className="note">{words.overSessions.overview.note}</p>
          <AgreementOverview
            groups={told}
            by={query.by}
            unit={unit}
            tolerance={tolerance.value}
            scale={scales.difference}
          />
        </section>
      )}
      {untold.length > 0 && (
        <p>
          {words.overSessions.overview.tooFew(
            untold.map(({ agreement }) =>
              words.overSessions.overview.nameAndVisits(groupName(agreement, query.by), agreement.visits),
            ),
          )}
        </p>
      )}
      {told.length > 0 && <PlotKey hasSides={measurement.fields.length > 1} />}
      {told.slice(0, drawn).map((group) => {
        const name = groupName(group.agreement, query.by);
        const [first, ...further] = groupSentences(group, groups, query.by, measurement);
        return (
          <section key={group.agreement.group.key} className="agreement-panel" aria-label={name}>
            <h3>{name}</h3>
            <p className="agreement-first">{first}</p>
            <AgreementPlots
              // another choice begins without a reading that is looked at
              key={`${query.id} ${String(query.camera)}`}
              agreement={group.agreement}
              name={name}
              unit={unit}
              tolerance={tolerance.value}
              scales={scales}
              onOpen={onOpen}
            />
            <div className="agreement-sentences">
              {further.map((sentence) => (
                <p key={sentence}>{sentence}</p>
              ))}
            </div>
          </section>
        );
      })}
      {groups.length > 0 && (
        <details className="as-table">
          <summary>{words.overSessions.table}</summary>
          <div className="as-table-room" tabIndex={0} role="group" aria-label={words.overSessions.table}>
            <AgreementTable groups={groups} by={query.by} unit={unit} />
          </div>
        </details>
      )}
      {told.length > 0 && <p className="note">{words.overSessions.method}</p>}
    </>
  );
}

/** How many of `all` are drawn yet: one at once, and one more whenever the page is at hand again. */
function useOneAfterAnother(all: number, of: unknown): number {
  const [state, setState] = useState({ of, drawn: 1 });
  const drawn = state.of === of ? state.drawn : 1;
  useEffect(() => {
    if (drawn >= all) return;
    const timer = setTimeout(() => {
      setState({ of, drawn: drawn + 1 });
    }, 0);
    return () => {
      clearTimeout(timer);
    };
  }, [all, drawn, of]);
  return drawn;
}

/** Chosen: as many numbers as stand beside one another under a plot on a phone. */
const MOST_SPACES = 4;

const DAY_MS = 86_400_000;

function sharedScales(groups: readonly ComparedGroup[], tolerance: number): PlotScales {
  let reach = 1.1 * tolerance;
  let [low, high, first, last] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { agreement } of groups) {
    const { counted, farOff, limits } = agreement;
    if (limits !== null) {
      reach = Math.max(reach, Math.abs(limits.lowerLimit.interval.low), Math.abs(limits.upperLimit.interval.high));
    }
    for (const pair of counted) reach = Math.max(reach, Math.abs(pair.difference));
    for (const list of [counted, farOff]) {
      for (const { mean, atMs } of list) {
        low = Math.min(low, mean);
        high = Math.max(high, mean);
        first = Math.min(first, atMs);
        last = Math.max(last, atMs);
      }
    }
  }
  const room = Math.max(DAY_MS, 0.02 * (last - first));
  return {
    difference: differenceScale(reach),
    mean: valueAxis(low, high, MOST_SPACES, formatNumber),
    time: { low: first - room, high: last + room },
  };
}

/** What the signs of the plots mean. */
function PlotKey({ hasSides }: { readonly hasSides: boolean }) {
  const { key } = words.overSessions;
  return (
    <ul className="lane-key" aria-label={key.heading}>
      {hasSides ? (
        <>
          <KeyEntry words={key.right}>
            <path className="plot-dots" d="M17 8h0" />
          </KeyEntry>
          <KeyEntry words={key.left}>
            <path className="plot-dots plot-left" d="M17 8h0" />
            <path className="plot-hollow" d="M17 8h0" />
          </KeyEntry>
        </>
      ) : (
        <KeyEntry words={key.reading}>
          <path className="plot-dots" d="M17 8h0" />
        </KeyEntry>
      )}
      <KeyEntry words={key.farOff}>
        <Mark x="10" y={8} d={SHAPES.smallDiamond} className="plot-far-off" />
        <Mark x="25" y={1} d={SHAPES.upwards} className="plot-far-off" />
      </KeyEntry>
      <KeyEntry words={key.mean}>
        <rect className="plot-interval" width="34" height="16" />
        <path className="plot-mean" d="M0 8H34" />
      </KeyEntry>
      <KeyEntry words={key.limits}>
        <rect className="plot-interval" width="34" height="16" />
        <path className="plot-limit" d="M0 8H34" />
      </KeyEntry>
      <KeyEntry words={key.drift}>
        <path className="plot-interval" d="M0 0L34 10V16L0 6Z" />
        <path className="plot-drift" d="M0 3L34 13" />
      </KeyEntry>
      <KeyEntry words={key.tolerance}>
        <rect className="lane-band" y="2" width="34" height="12" />
        <path className="plot-tolerance" d="M0 2H34M0 14H34" />
      </KeyEntry>
    </ul>
  );
}
