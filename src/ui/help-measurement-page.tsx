import type { Measurement } from '../core/catalogue/measurement.js';
import { MEASUREMENT_DRAWINGS } from './drawings/measurement-drawings.js';
import { MeasurementDrawing } from './drawings/measurement-drawing.js';
import type { MeasuredErrors } from './help-camera.js';
import { cameraSayOf, MEASURED_ERRORS } from './help-camera.js';
import { words } from './language.js';
import { formatNumber, plainNumber, withUnit } from './numbers.js';
import { statusWords } from './sentences.js';

/** What is to be known of one measurement: where and how it is taken, and what must not happen to the wearer. */
export function MeasurementPage({ measurement }: { readonly measurement: Measurement }) {
  const { fields, isSigned, resolution, takenBy, tolerance, unit } = measurement;
  const { alsoCalled, caution, definition, howTaken, name, withSquint } = words.measurements[measurement.id];
  return (
    <>
      <p className="help-definition">{definition}</p>
      {alsoCalled.length > 0 && <p className="note">{words.help.alsoCalled(alsoCalled.join(', '))}</p>}
      <figure className="help-figure">
        <MeasurementDrawing measurement={measurement.id} title={name} description={drawingWords(measurement)} />
        <figcaption className="note">
          {drawingWords(measurement)} {words.help.key}
        </figcaption>
      </figure>
      {caution !== null && (
        <section className="help-caution">
          <h4 className="caution">{words.help.caution}</h4>
          <p>{caution}</p>
        </section>
      )}
      <section>
        <h4>{words.help.howTaken}</h4>
        <p>{howTaken}</p>
        <ul>
          <li>{words.sheet.step(withUnit(plainNumber(resolution), unit))}</li>
          <li>{fields.length > 1 ? words.help.sides.each : words.help.sides.one}</li>
          {takenBy === 'trial' && <li>{words.help.byTrial}</li>}
          {isSigned && <li>{words.help.signed}</li>}
        </ul>
      </section>
      {withSquint !== null && (
        <section>
          <h4>{words.help.squint}</h4>
          <p>
            {withSquint} {cameraSayOf(measurement) !== 'nothing' && words.help.noSquintCamera}
          </p>
        </section>
      )}
      <section>
        <h4>{words.help.camera}</h4>
        <p>{cameraWords(measurement)}</p>
      </section>
      <section>
        <h4>{words.help.tolerance}</h4>
        <p>
          {words.help.toleranceIs(
            withUnit(plainNumber(tolerance.value), unit),
            statusWords(tolerance.status),
            words.source.cited(tolerance.source),
          )}
        </p>
        <p className="note">{words.help.toleranceNote}</p>
      </section>
    </>
  );
}

/** From where a drawing is seen, and that the other side is taken likewise where only one is drawn. */
function drawingWords({ id, fields }: Measurement): string {
  const { view, marks } = MEASUREMENT_DRAWINGS[id];
  const isLeftDrawn = marks.some((mark) => mark.kind === 'label' && mark.text === 'L');
  const seen = words.help.views[view];
  return fields.length > 1 && !isLeftDrawn ? `${seen} ${words.help.rightIsDrawn}` : seen;
}

function cameraWords(measurement: Measurement): string {
  switch (cameraSayOf(measurement)) {
    case 'nothing':
      return words.help.noCamera;
    case 'pupil':
      return words.help.cameraSometimes.pupilDiameter;
    case 'rims':
      return words.help.cameraSometimes.rims;
    case 'iris':
      return words.help.cameraOfIris;
    case 'always': {
      const errors = MEASURED_ERRORS[measurement.id];
      if (errors === undefined) return words.help.cameraAlways;
      const { picture, sweep } = errors;
      const said = words.help.cameraErrors({ picture: written(picture), sweep: written(sweep) });
      return `${words.help.cameraAlways} ${said}`;
    }
  }
}

/** Hundredths are no one's concern; a sweep is sometimes better than a tenth. */
function written({ half, most }: MeasuredErrors): { readonly half: string; readonly most: string } {
  return { half: formatNumber(half, 1), most: formatNumber(most, 1) };
}
