import { useRef, useState } from 'react';
import type { MeasurementGroup } from '../core/catalogue/measurement.js';
import type { Practice } from '../session/practice.js';
import { withGroupMoved } from '../session/practice.js';
import { practiceWords as words } from './practice-words.js';

/** The order in which the practice measures, block by block. */
export function PracticeBlockOrder(props: {
  readonly practice: Practice;
  readonly onChange: (change: Partial<Practice>) => void;
}) {
  const { groupOrder } = props.practice;
  const [moved, setMoved] = useState<MeasurementGroup | null>(null);
  const list = useRef<HTMLOListElement>(null);
  const move = (group: MeasurementGroup, by: 1 | -1): void => {
    const from = groupOrder.indexOf(group);
    props.onChange(withGroupMoved(props.practice, group, by));
    setMoved(group);
    // The button that was pressed may have no further to go: then the other one of the same block has the focus.
    const isAtEnd = from + by === 0 || from + by === groupOrder.length - 1;
    if (isAtEnd) {
      requestAnimationFrame(() => {
        list.current?.querySelector<HTMLButtonElement>(`[data-group='${group}'] button:not(:disabled)`)?.focus();
      });
    }
  };
  return (
    <section>
      <h3>{words.order}</h3>
      <p className="note">{words.orderNote}</p>
      <ol className="practice-order" ref={list}>
        {groupOrder.map((group, index) => {
          const block = words.blocks[group];
          return (
            <li key={group} data-group={group}>
              <span className="practice-order-name">{block}</span>
              <button
                type="button"
                aria-label={words.up(block)}
                disabled={index === 0}
                onClick={() => {
                  move(group, -1);
                }}
              >
                <Arrow isUp />
              </button>
              <button
                type="button"
                aria-label={words.down(block)}
                disabled={index === groupOrder.length - 1}
                onClick={() => {
                  move(group, 1);
                }}
              >
                <Arrow isUp={false} />
              </button>
            </li>
          );
        })}
      </ol>
      <p role="status" className="note">
        {moved !== null && words.moved(words.blocks[moved], groupOrder.indexOf(moved) + 1, groupOrder.length)}
      </p>
    </section>
  );
}

function Arrow({ isUp }: { readonly isUp: boolean }) {
  return (
    <svg viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
      <path
        d={isUp ? 'M6 10V2M2.5 5.5 6 2l3.5 3.5' : 'M6 2v8M2.5 6.5 6 10l3.5-3.5'}
        fill="none"
        stroke="currentColor"
        strokeWidth="1.5"
      />
    </svg>
  );
}
