import { useEffect, useId, useRef, useState } from 'react';
import { createPortal } from 'react-dom';
import type { Measurement, MeasurementId } from '../core/catalogue/measurement.js';
import { MEASUREMENT_GROUPS } from '../core/catalogue/measurement.js';
import { useEquipment } from './equipment.js';
import { MeasurementPage } from './help-measurement-page.js';
import type { GeneralTopic, HelpTopic } from './help-topics.js';
import { GENERAL_TOPICS, isGeneralTopic, matchingMeasurements } from './help-topics.js';
import { words } from './language.js';
import { useInPlaceOfSheet } from './use-in-place-of-sheet.js';

/** All pages of the help with their contents; on a narrow screen either the contents or one page are seen. */
export function HelpPages({ first }: { readonly first: MeasurementId | null }) {
  const { catalogue } = useEquipment();
  const [topic, setTopic] = useState<HelpTopic | null>(first);
  const heading = useRef<HTMLHeadingElement>(null);
  const contents = useRef<HTMLInputElement>(null);
  const isMoved = useRef(false);
  useEffect(() => {
    // Only where the reader went on: the dialog itself looks after where the focus is first.
    if (!isMoved.current) return;
    if (topic === null) contents.current?.focus();
    else {
      heading.current?.closest('dialog')?.scrollTo(0, 0);
      heading.current?.focus();
    }
  }, [topic]);
  useInPlaceOfSheet('help');
  const goTo = (next: HelpTopic | null): void => {
    isMoved.current = true;
    setTopic(next);
  };
  // On a wide screen a page stands beside the contents at once.
  const shown = topic ?? 'about';
  return (
    <div className={topic === null ? 'help' : 'help is-page'}>
      <Contents searchField={contents} catalogue={catalogue} topic={topic} onTopic={goTo} />
      <article className="help-page">
        <button
          type="button"
          className="quiet help-back"
          onClick={() => {
            goTo(null);
          }}
        >
          {words.help.backToContents}
        </button>
        <Page topic={shown} catalogue={catalogue} heading={heading} />
        {!isGeneralTopic(shown) && <Neighbours of={shown} catalogue={catalogue} onTopic={goTo} />}
        <p className="help-print">
          <button
            type="button"
            onClick={() => {
              window.print();
            }}
          >
            {words.help.print}
          </button>
        </p>
      </article>
      {createPortal(
        <article className="help-paper" aria-hidden="true">
          <Page topic={shown} catalogue={catalogue} heading={null} />
        </article>,
        document.body,
      )}
    </div>
  );
}

/** One page with its heading. */
export function Page(props: {
  readonly topic: HelpTopic;
  readonly catalogue: readonly Measurement[];
  readonly heading: React.RefObject<HTMLHeadingElement | null> | null;
}) {
  const { topic, catalogue, heading } = props;
  const measurement = catalogue.find(({ id }) => id === topic);
  return (
    <>
      <h3 ref={heading} tabIndex={-1}>
        {isGeneralTopic(topic) ? words.help.general[topic].heading : words.measurements[topic].name}
      </h3>
      {isGeneralTopic(topic) && <GeneralPage topic={topic} />}
      {measurement !== undefined && <MeasurementPage measurement={measurement} />}
    </>
  );
}

function GeneralPage({ topic }: { readonly topic: GeneralTopic }) {
  const { text, cautions } = words.help.general[topic];
  return (
    <>
      {text.map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      <section className="help-caution">
        <h4 className="caution">{words.help.caution}</h4>
        {cautions.map((caution) => (
          <p key={caution}>{caution}</p>
        ))}
      </section>
    </>
  );
}

function Contents(props: {
  readonly searchField: React.RefObject<HTMLInputElement | null>;
  readonly catalogue: readonly Measurement[];
  readonly topic: HelpTopic | null;
  readonly onTopic: (topic: HelpTopic) => void;
}) {
  const { searchField, catalogue, topic, onTopic } = props;
  const id = useId();
  const [typed, setTyped] = useState('');
  const found = matchingMeasurements(typed, catalogue);
  const isSought = typed.trim() !== '';
  return (
    <nav className="help-contents" aria-label={words.help.contents}>
      <search>
        <label htmlFor={id}>{words.help.search}</label>
        <input
          ref={searchField}
          id={id}
          type="search"
          autoComplete="off"
          spellCheck={false}
          maxLength={40}
          enterKeyHint="go"
          value={typed}
          onChange={(event) => {
            setTyped(event.currentTarget.value);
          }}
          onKeyDown={(event) => {
            const [best] = found;
            if (event.key !== 'Enter' || event.nativeEvent.isComposing || !isSought || best === undefined) return;
            event.preventDefault();
            onTopic(best.id);
          }}
        />
        <p className="note" role="status">
          {isSought && (found.length === 0 ? words.help.none : words.search.count(found.length))}
        </p>
      </search>
      {isSought ? (
        <TopicList topics={found.map((measurement) => measurement.id)} at={topic} onTopic={onTopic} />
      ) : (
        <>
          <div>
            <h3>{words.help.topics}</h3>
            <TopicList topics={GENERAL_TOPICS} at={topic} onTopic={onTopic} />
          </div>
          {MEASUREMENT_GROUPS.map((group) => (
            <div key={group}>
              <h3>{words.sheet.groups[group]}</h3>
              <TopicList
                topics={catalogue.filter((one) => one.group === group).map((measurement) => measurement.id)}
                at={topic}
                onTopic={onTopic}
              />
            </div>
          ))}
        </>
      )}
    </nav>
  );
}

function TopicList(props: {
  readonly topics: readonly HelpTopic[];
  readonly at: HelpTopic | null;
  readonly onTopic: (topic: HelpTopic) => void;
}) {
  return (
    <ul>
      {props.topics.map((topic) => (
        <li key={topic}>
          <button
            type="button"
            className="quiet"
            aria-current={topic === props.at ? 'page' : undefined}
            onClick={() => {
              props.onTopic(topic);
            }}
          >
            {isGeneralTopic(topic) ? words.help.general[topic].heading : words.measurements[topic].name}
          </button>
        </li>
      ))}
    </ul>
  );
}

function Neighbours(props: {
  readonly of: MeasurementId;
  readonly catalogue: readonly Measurement[];
  readonly onTopic: (topic: HelpTopic) => void;
}) {
  const { catalogue, onTopic } = props;
  const at = catalogue.findIndex(({ id }) => id === props.of);
  const [before, after] = [catalogue[at - 1], catalogue[at + 1]];
  return (
    <nav className="help-neighbours" aria-label={words.help.neighbours}>
      {before !== undefined && (
        <button
          type="button"
          onClick={() => {
            onTopic(before.id);
          }}
        >
          {words.help.previous(words.measurements[before.id].shortName)}
        </button>
      )}
      {after !== undefined && (
        <button
          type="button"
          onClick={() => {
            onTopic(after.id);
          }}
        >
          {words.help.next(words.measurements[after.id].shortName)}
        </button>
      )}
    </nav>
  );
}
