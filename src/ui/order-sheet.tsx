import type {
  OrderDocument,
  OrderGroup,
  OrderPrescription,
  OrderSection,
  OrderTable,
} from '../sheets/order-document.js';

/** The order as the workshop gets it, on the screen and on the print page. */
export function OrderSheet({ order }: { readonly order: OrderDocument }) {
  return (
    <article className="order-sheet" lang={order.language}>
      <header className="order-head">
        <h4>{order.title}</h4>
        {order.notice !== null && (
          <p>
            <strong>{order.notice}</strong>
          </p>
        )}
        <dl>
          {order.facts.map(({ label, values }) => (
            <div key={label}>
              <dt>{label}</dt>
              {values.map((value) => (
                <dd key={value}>{value}</dd>
              ))}
            </div>
          ))}
        </dl>
      </header>
      <Prescription prescription={order.prescription} />
      {order.missing.length > 0 && (
        <section>
          {order.missing.map((sentence, index) => (
            <p key={sentence}>{index === 0 ? <strong>{sentence}</strong> : sentence}</p>
          ))}
        </section>
      )}
      {order.tables.length > 0 && (
        <div className="order-parts">
          {order.tables.map((table) => (
            <Table key={table.caption} table={table} />
          ))}
        </div>
      )}
      {order.sections.map((section) => (
        <section key={section.heading}>
          <h5>{section.heading}</h5>
          <Sentences section={section} />
        </section>
      ))}
      <p className="order-signature">
        <span>{order.signature}</span>
      </p>
      <footer className="order-cautions">
        <h5>{order.cautions.heading}</h5>
        <Sentences section={order.cautions} />
      </footer>
    </article>
  );
}

function Sentences({ section: { sentences, isList } }: { readonly section: OrderSection }) {
  if (!isList) return sentences.map((sentence) => <p key={sentence}>{sentence}</p>);
  return (
    <ul>
      {sentences.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}

function Prescription({ prescription: { heading, eyes, notes } }: { readonly prescription: OrderPrescription }) {
  if (eyes.length === 0) {
    return (
      <section>
        <h5>{heading}</h5>
        {notes.map((note) => (
          <p key={note}>{note}</p>
        ))}
      </section>
    );
  }
  return (
    <section>
      <table className="order-prescription">
        <caption>{heading}</caption>
        <tbody>
          {eyes.map(({ side, sideName, notation }) => (
            <tr key={side}>
              <th scope="row">
                {side} <span className="visually-hidden">{sideName}</span>
              </th>
              <td>{notation}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="order-small">{notes.join(' ')}</p>
    </section>
  );
}

function Table({ table: { caption, head, groups, notes } }: { readonly table: OrderTable }) {
  const isWorkedOut = head.doubt === null;
  return (
    <div className={isWorkedOut ? 'order-worked-out' : undefined}>
      <table>
        <caption>{caption}</caption>
        <thead className="visually-hidden">
          <tr>
            {[head.measurement, head.side, head.value, head.doubt, head.confirmed]
              .filter((name) => name !== null)
              .map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
          </tr>
        </thead>
        {groups.map((group) => (
          <Group key={group.heading} group={group} isMarked={head.confirmed !== null} isWorkedOut={isWorkedOut} />
        ))}
      </table>
      {notes.length > 0 && <p className="order-small">{notes.join(' ')}</p>}
    </div>
  );
}

/** What stands beside one heading, R above L. */
function Group(props: { readonly group: OrderGroup; readonly isMarked: boolean; readonly isWorkedOut: boolean }) {
  const { heading, rows } = props.group;
  return (
    <tbody>
      {rows.map(({ side, value, doubt, confirmed }, index) => (
        <tr key={side}>
          {index === 0 && (
            <th scope="rowgroup" rowSpan={rows.length}>
              {heading}
            </th>
          )}
          <td className="order-side">{side}</td>
          <td className="order-value">{value}</td>
          {!props.isWorkedOut && <td className="order-own-doubt">{doubt}</td>}
          {props.isMarked && <td className="order-mark">{confirmed}</td>}
        </tr>
      ))}
    </tbody>
  );
}
