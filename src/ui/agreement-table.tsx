import type { Grouping } from '../session/agreement-over-sessions.js';
import type { MeasurementUnit } from '../core/catalogue/measurement.js';
import { withInterval } from './agreement-overview.js';
import { words } from './language.js';
import { groupName } from './over-sessions-sentences.js';
import type { ComparedGroup } from './use-over-sessions.js';

/** All numbers of all groups, those with few visits as well. */
export function AgreementTable(props: {
  readonly groups: readonly ComparedGroup[];
  readonly by: Grouping;
  readonly unit: MeasurementUnit;
}) {
  const { groups, by, unit } = props;
  const { columns } = words.overSessions;
  return (
    <table className="numbers">
      <thead>
        <tr>
          <th scope="col">{by === 'gauge' ? columns.gauge : columns.reader}</th>
          <th scope="col">{columns.visits}</th>
          <th scope="col">{columns.readings}</th>
          <th scope="col">{columns.mean}</th>
          <th scope="col">{columns.lower}</th>
          <th scope="col">{columns.upper}</th>
          <th scope="col">{columns.others}</th>
          <th scope="col">{columns.drift}</th>
          <th scope="col">{columns.farOff}</th>
        </tr>
      </thead>
      <tbody>
        {groups.map(({ agreement, others }) => {
          const { group, visits, counted, bias, limits, drift, farOff } = agreement;
          return (
            <tr key={group.key}>
              <th scope="row">{groupName(agreement, by)}</th>
              <td>{visits}</td>
              <td>{counted.length}</td>
              <td>{bias !== null && withInterval(bias, unit)}</td>
              <td>{limits !== null && withInterval(limits.lowerLimit, unit)}</td>
              <td>{limits !== null && withInterval(limits.upperLimit, unit)}</td>
              <td>{others !== null && withInterval(others, unit)}</td>
              <td>{drift !== null && withInterval({ value: drift.per30Days, interval: drift }, unit)}</td>
              <td>{farOff.length}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
