import type { MeasurementUnit } from '../core/catalogue/measurement.js';
import type { SampledNumber } from '../core/statistics/agreement.js';
import type { Grouping } from '../session/agreement-over-sessions.js';
import type { DifferenceScale } from './difference-scale.js';
import { IntervalBar, LaneAxis, LaneBand, LaneGrid, LaneSvg, Mark, SHAPES, along } from './lane-parts.js';
import { words } from './language.js';
import { withUnit } from './numbers.js';
import { decimalsOf, groupName, signed } from './over-sessions-sentences.js';
import type { ComparedGroup } from './use-over-sessions.js';

const HEIGHT = 44;
const MIDDLE = HEIGHT / 2;

/** All groups below one another: where the mean of each lies, and its limits of agreement. */
export function AgreementOverview(props: {
  readonly groups: readonly ComparedGroup[];
  readonly by: Grouping;
  readonly unit: MeasurementUnit;
  readonly tolerance: number;
  readonly scale: DifferenceScale;
}) {
  const { groups, by, unit, tolerance, scale } = props;
  return (
    <div className="lanes">
      <LaneAxis scale={scale} title={words.overSessions.difference(unit === 'mm' ? 'mm' : '°')} />
      <ul>
        {groups.map(({ agreement }) => {
          const { bias, limits, group, visits } = agreement;
          if (bias === null) return null;
          const name = groupName(agreement, by);
          const mean = withInterval(bias, unit);
          return (
            <li key={group.key} className="lane-row">
              <p className="lane-name">{name}</p>
              <div className="lane-plot">
                <LaneSvg
                  height={HEIGHT}
                  label={words.overSessions.overview.lane(
                    name,
                    mean,
                    limits === null
                      ? null
                      : words.overSessions.fromTo(
                          signed(limits.lowerLimit.value, 1),
                          signed(limits.upperLimit.value, 1),
                        ),
                  )}
                >
                  <LaneBand scale={scale} tolerance={tolerance} height={HEIGHT} />
                  <LaneGrid scale={scale} height={HEIGHT} />
                  {limits !== null && (
                    <IntervalBar
                      scale={scale}
                      low={limits.lowerLimit.value}
                      high={limits.upperLimit.value}
                      y={MIDDLE}
                      className="lane-limits"
                    />
                  )}
                  <line
                    className="lane-mean"
                    x1={along(scale, bias.interval.low)}
                    x2={along(scale, bias.interval.high)}
                    y1={MIDDLE}
                    y2={MIDDLE}
                  />
                  <Mark x={along(scale, bias.value)} y={MIDDLE} d={SHAPES.diamond} className="lane-hand-mark" />
                </LaneSvg>
              </div>
              <p className="lane-said">
                {mean} <small>{words.overSessions.overview.count(visits)}</small>
              </p>
            </li>
          );
        })}
      </ul>
      <LaneAxis scale={scale} foot />
    </div>
  );
}

/** Such as `+0.4 mm (+0.1 to +0.7)`. */
export function withInterval(
  { value, interval }: Pick<SampledNumber, 'value' | 'interval'>,
  unit: MeasurementUnit,
): string {
  const decimals = decimalsOf(interval);
  return words.overSessions.withInterval(
    withUnit(signed(value, decimals), unit),
    signed(interval.low, decimals),
    signed(interval.high, decimals),
  );
}
