import { READING_NAMES } from '../core/catalogue/measurement.js';
import { exampleTable } from '../session/example-table.js';
import { columnOfReading, RECORD_COLUMN, SUFFIXES, WORKING_DISTANCE_COLUMN } from '../session/record-columns.js';
import { downloadFile } from './download-file.js';
import { useEquipment } from './equipment.js';
import { words } from './language.js';
import { placeWords, upperFirst } from './slip-places.js';

/** What a table of records has to look like, with an example to begin from. */
export function AuditFormat(props: { readonly exampleName: string; readonly onTry: () => void }) {
  const { catalogue } = useEquipment();
  const said = words.audit.format;
  const pd = columnOfReading('pdFar', catalogue);
  const columns = [
    [pd, said.reading],
    [RECORD_COLUMN, said.record],
    [`${pd}${SUFFIXES.offset}`, said.offset],
    [`${pd}${SUFFIXES.camera}`, said.camera],
    [`${pd}${SUFFIXES['camera-uncertainty']}`, said.cameraUncertainty],
    [WORKING_DISTANCE_COLUMN, said.workingDistance],
  ] as const;
  return (
    <details className="audit-format">
      <summary>{said.open}</summary>
      <p>{said.rules}</p>
      <table className="audit-columns">
        <caption className="visually-hidden">{said.table}</caption>
        <thead>
          <tr>
            <th scope="col">{said.column}</th>
            <th scope="col">{said.holds}</th>
          </tr>
        </thead>
        <tbody>
          {columns.map(([column, holds]) => (
            <tr key={column}>
              <th scope="row">
                <code>{column}</code>
              </th>
              <td>{holds}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <details>
        <summary>{said.allReadings}</summary>
        <dl className="audit-readings">
          {READING_NAMES.map((name) => (
            <div key={name}>
              <dt>
                <code>{columnOfReading(name, catalogue)}</code>
              </dt>
              <dd>{upperFirst(placeWords(name, catalogue))}</dd>
            </div>
          ))}
        </dl>
      </details>
      <p className="note">{said.example}</p>
      <div className="actions">
        <button
          type="button"
          onClick={() => {
            downloadFile(exampleTable(catalogue), props.exampleName, 'text/csv');
          }}
        >
          {said.saveExample}
        </button>
        <button type="button" onClick={props.onTry}>
          {said.tryExample}
        </button>
      </div>
    </details>
  );
}
