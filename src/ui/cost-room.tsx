import type { CentrationStandard } from '../core/lenses/centration-standards.js';
import { roomOfReading } from '../core/lenses/cost-of-difference.js';
import type { Prescription } from '../core/lenses/prescription.js';
import type { SheetRow } from '../session/rows.js';
import { roomText } from './cost-sentences.js';
import { words } from './language.js';

/** How far each reading that lenses are made by may be off before the standard is left: known before anything was measured. */
export function CostRoom(props: {
  readonly rows: readonly SheetRow[];
  readonly prescription: Prescription;
  readonly standard: CentrationStandard;
}) {
  const { prescription, standard } = props;
  const rooms = props.rows.flatMap(({ measurement }) => {
    const fields = measurement.fields.flatMap(({ name, side }) => {
      const room = roomOfReading(prescription, standard, name);
      return room === null ? [] : [{ name, side, text: roomText(room.mm), tighterEye: room.tighterEye }];
    });
    const tighterEye = fields.find((field) => field.tighterEye !== null)?.tighterEye ?? null;
    return fields.length === 0 ? [] : [{ measurement, fields, tighterEye }];
  });
  if (rooms.length === 0) return null;
  return (
    <div className="cost-room">
      <h3>{words.cost.room}</h3>
      <p className="note">{words.cost.roomCaption}</p>
      <dl>
        {rooms.map(({ measurement, fields, tighterEye }) => (
          <div key={measurement.id}>
            <dt>{words.measurements[measurement.id].shortName}</dt>
            <dd>
              {new Set(fields.map(({ text }) => text)).size === 1
                ? fields[0]?.text
                : fields.map(({ name, side, text }) => (
                    <span key={name}>
                      {side === null ? '' : `${words.sheet.side[side]} `}
                      {text}
                    </span>
                  ))}
              {tighterEye !== null && (
                <span className="note">{words.cost.eyesDiffer(words.sheet.side[tighterEye])}</span>
              )}
            </dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
