import type { Result } from '../core/result.js';
import type { Side } from '../core/units/side.js';
import { SIDES } from '../core/units/side.js';
import type { Order, OrderLine } from '../session/order.js';
import type { PrescriptionEntry, PrescriptionFailure } from '../session/prescription-entry.js';
import type { WearerNotes } from '../core/record/wearer-notes.js';
import { ORDER_PARTS, PART_OF, type OrderPart } from './order-parts.js';
import { dateText, words } from './language.js';
import { formatNumber, plainNumber, withUnit } from './numbers.js';
import { orderedFrame } from './order-frame.js';
import type { OrderedFrame, OrderedLens } from './order-frame.js';
import { eyeNotation } from './order-notation.js';

/** All that stands on the order. */
export interface OrderContent {
  readonly order: Order;
  /** the open points, a sentence each */
  readonly doubts: readonly string[];
  readonly prescription: Result<PrescriptionEntry, PrescriptionFailure>;
  /** null where nobody typed a usable one */
  readonly effectiveDiameterMm: number | null;
  readonly notes: WearerNotes;
  /** the names of those who read and confirmed what is ordered */
  readonly readers: readonly string[];
  /** whose readings are joined with the confirmed ones; null where nobody else read them, empty where no name was typed */
  readonly secondReader: string | null;
  readonly when: Date;
  /** the demo's wearer */
  readonly isInvented: boolean;
}

// The month as a word: 3/4 is April here and March there.
const DAY = { dateStyle: 'long' } as const;

/** The order as the workshop gets it, on the screen and on paper. */
export function OrderSheet({ content }: { readonly content: OrderContent }) {
  const { order, doubts, notes, readers, when } = content;
  return (
    <article className="order-sheet">
      <header className="order-head">
        <h4>{words.order.title}</h4>
        {content.isInvented && (
          <p>
            <strong>{words.order.invented}</strong>
          </p>
        )}
        <dl>
          <div>
            <dt>{words.order.wearer}</dt>
            <dd>{notes.wearer.trim() === '' ? '–' : notes.wearer}</dd>
          </div>
          <div>
            <dt>{words.order.date}</dt>
            <dd>{dateText(when, DAY)}</dd>
          </div>
          <div>
            <dt>{words.order.readers}</dt>
            <dd>
              {readers.length === 0 ? words.order.nobody : readers.join(', ')}
              {content.secondReader !== null && `; ${words.order.secondReading(content.secondReader)}`}
            </dd>
          </div>
        </dl>
      </header>
      <PrescriptionPart content={content} />
      {order.lines.length === 0 ? (
        <Missing order={order} />
      ) : (
        <div className="order-parts">
          {ORDER_PARTS.map((part) => (
            <Part
              key={part}
              part={part}
              lines={order.lines.filter(({ measurement }) => PART_OF[measurement.id] === part)}
            />
          ))}
          <WorkedOut frame={orderedFrame(order, content.effectiveDiameterMm)} />
        </div>
      )}
      <NotesPart
        notes={notes}
        isLightOfUse={order.lines.some(({ measurement }) => measurement.id === 'pupilDiameter')}
      />
      <section className="order-open">
        <h5>{words.order.doubts}</h5>
        {doubts.length === 0 ? (
          <p>{words.order.noDoubts}</p>
        ) : (
          <ul>
            {doubts.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        )}
      </section>
      <p className="order-signature">
        <span>{words.order.signature}</span>
      </p>
      <footer className="order-cautions">
        <h5>{words.order.cautions}</h5>
        <ul>
          {[...words.order.ownCautions, ...words.footer.cautions].map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </footer>
    </article>
  );
}

function PrescriptionPart({ content: { prescription } }: { readonly content: OrderContent }) {
  if (!prescription.ok) {
    return (
      <section>
        <h5>{words.order.prescription}</h5>
        <p>{prescription.failure.isEmpty ? words.order.noPrescription : words.order.badPrescription}</p>
      </section>
    );
  }
  const { prescription: eyes } = prescription.value;
  return (
    <section>
      <table className="order-prescription">
        <caption>
          {words.order.prescription}, {words.prescription.kinds[eyes.lensKind]}
        </caption>
        <tbody>
          {SIDES.map((side) => (
            <tr key={side}>
              <th scope="row">
                {words.order.sides[side]} <span className="visually-hidden">{words.order.sideNames[side]}</span>
              </th>
              <td>{eyeNotation(eyes[side])}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="order-small">
        {eyes.vertexDistanceMm === null
          ? words.order.noVertex
          : words.order.prescribedAt(plainNumber(eyes.vertexDistanceMm))}{' '}
        {words.order.prescriptionNote}
      </p>
    </section>
  );
}

function Part({ part, lines }: { readonly part: OrderPart; readonly lines: readonly OrderLine[] }) {
  if (lines.length === 0) return null;
  return (
    <table>
      <caption>{words.order.parts[part]}</caption>
      <thead className="visually-hidden">
        <tr>
          <th scope="col">{words.order.measurement}</th>
          <th scope="col">{words.order.side}</th>
          <th scope="col">{words.order.value}</th>
        </tr>
      </thead>
      {lines.map(({ measurement, values }) => (
        <Rows
          key={measurement.id}
          heading={words.measurements[measurement.id].shortName}
          rows={values.map(({ side, text }) => ({ side, text: withUnit(text, measurement.unit) }))}
        />
      ))}
    </table>
  );
}

/** What stands under one heading, R above L; nothing where there is nothing. */
function Rows(props: {
  readonly heading: string;
  readonly rows: readonly { readonly side: Side | null; readonly text: string }[];
}) {
  const { heading, rows } = props;
  if (rows.length === 0) return null;
  return (
    <tbody>
      {rows.map(({ side, text }, index) => (
        <tr key={side}>
          {index === 0 && (
            <th scope="rowgroup" rowSpan={rows.length}>
              {heading}
            </th>
          )}
          <td className="order-side">{side === null ? '' : words.order.sides[side]}</td>
          <td className="order-value">{text}</td>
        </tr>
      ))}
    </tbody>
  );
}

/** What follows from the frame and the eyes' places; nothing where the numbers for it are not in the order. */
function WorkedOut({ frame }: { readonly frame: OrderedFrame }) {
  const { boxedCentreDistanceMm, lenses, blankFrom } = frame;
  const sides = SIDES.filter((side) => lenses[side].inwardMm !== null || lenses[side].upMm !== null);
  const blanks = SIDES.flatMap((side) => {
    const mm = lenses[side].blankMm;
    return mm === null ? [] : [{ side, mm }];
  });
  if (boxedCentreDistanceMm === null && sides.length === 0) return null;
  return (
    <div className="order-worked-out">
      <table>
        <caption>{words.order.workedOut}</caption>
        {boxedCentreDistanceMm !== null && (
          <Rows
            heading={words.order.boxedCentreDistance}
            rows={[{ side: null, text: `${formatNumber(boxedCentreDistanceMm, 1)} mm` }]}
          />
        )}
        <Rows
          heading={words.order.decentration}
          rows={sides.map((side) => ({ side, text: decentrationWords(lenses[side]) }))}
        />
        <Rows
          heading={words.order.blank}
          rows={blanks.map(({ side, mm }) => ({
            side,
            text: words.order.blankOf[blankFrom](String(Math.ceil(mm - 1e-6))),
          }))}
        />
      </table>
      <p className="order-small">
        {words.order.workedOutNote} {blanks.length > 0 && words.order.blankNote(words.order.blankFrom[blankFrom])}
      </p>
    </div>
  );
}

function decentrationWords({ inwardMm, upMm }: OrderedLens): string {
  const parts = [
    directed(inwardMm, words.order.inward, words.order.outward),
    directed(upMm, words.order.up, words.order.down),
  ].filter((part) => part !== '');
  if (parts.length > 0) return parts.join(', ');
  return inwardMm === null ? words.order.level : words.order.centred;
}

function directed(mm: number | null, positive: (mm: string) => string, negative: (mm: string) => string): string {
  const text = formatNumber(Math.abs(mm ?? 0), 1);
  if (mm === null || Number(text) === 0) return '';
  return mm > 0 ? positive(text) : negative(text);
}

function NotesPart({ notes, isLightOfUse }: { readonly notes: WearerNotes; readonly isLightOfUse: boolean }) {
  const said = [
    ...(notes.squint ? [words.order.squint] : []),
    ...(notes.light !== null && isLightOfUse ? [words.order.light(words.notes.lights[notes.light])] : []),
    ...(notes.remark.trim() === '' ? [] : [notes.remark.trim()]),
  ];
  if (said.length === 0) return null;
  return (
    <section>
      <h5>{words.order.notes}</h5>
      {said.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </section>
  );
}

/** An order without a measurement says so, and why. */
function Missing({ order }: { readonly order: Order }) {
  return (
    <section>
      <p>
        <strong>{words.order.nothingOrdered}</strong>
      </p>
      {order.unconfirmed.length === 0 && <p>{words.order.noReadings}</p>}
    </section>
  );
}
