import type { Measurement, MeasurementUnit } from '../core/catalogue/measurement.js';
import type { ConfidenceInterval } from '../core/statistics/agreement.js';
import type { GroupAgreement, Grouping } from '../session/agreement-over-sessions.js';
import { LEAST_DRIFT_DAYS, LEAST_FOR_DRIFT, LEAST_FOR_LIMITS } from '../session/agreement-over-sessions.js';
import type { ComparedGroup } from './use-over-sessions.js';
import { words } from './language.js';
import { formatNumber, plainNumber, withUnit } from './numbers.js';
import type { DeviationFacts } from './over-sessions-words.js';

/** What a group is called; a plain scale and a missing name have names here as well. */
export function groupName({ group: { key, name } }: GroupAgreement, by: Grouping): string {
  if (key !== '') return name;
  return by === 'gauge' ? words.overSessions.plainScale : words.overSessions.noName;
}

/** A number with its sign, to so many decimals; nothing has none. */
export function signed(value: number, decimals: number): string {
  const text = formatNumber(value, decimals);
  return value > 0 && /[1-9]/.test(text) ? `+${text}` : text;
}

/** As many decimals as an interval is worth: a second one where a tenth would hide it. */
export function decimalsOf({ low, high }: ConfidenceInterval): number {
  return high - low < 0.4 ? 2 : 1;
}

function deviation(value: number, interval: ConfidenceInterval, unit: MeasurementUnit): DeviationFacts {
  const decimals = decimalsOf(interval);
  const { low, high } = interval;
  if (low <= 0 && high >= 0) {
    return {
      way: 'none',
      amount: withUnit(signed(value, decimals), unit),
      low: signed(low, decimals),
      high: signed(high, decimals),
    };
  }
  const isMore = value > 0;
  return {
    way: isMore ? 'more' : 'less',
    amount: withUnit(formatNumber(Math.abs(value), decimals), unit),
    low: formatNumber(isMore ? low : -high, decimals),
    high: formatNumber(isMore ? high : -low, decimals),
  };
}

/** What a group of at least some visits says, in sentences; the most important first. */
export function groupSentences(
  { agreement, others }: ComparedGroup,
  groups: readonly ComparedGroup[],
  by: Grouping,
  { unit, tolerance }: Measurement,
): readonly string[] {
  const said = words.overSessions;
  const { bias, limits, drift, scatter, counted, farOff, visits } = agreement;
  if (bias === null || scatter === null) return [];
  const sentences = [said.bias(by, visits, deviation(bias.value, bias.interval, unit))];
  if (others !== null) {
    const [other, another] = groups.filter((group) => group.agreement !== agreement && group.agreement.visits > 0);
    const only = other !== undefined && another === undefined ? groupName(other.agreement, by) : null;
    sentences.push(said.others(by, only, deviation(others.value, others.interval, unit)));
  }
  if (limits === null) sentences.push(said.tooFewForLimits(LEAST_FOR_LIMITS));
  else {
    const { lowerLimit, upperLimit } = limits;
    const decimals = decimalsOf(upperLimit.interval);
    sentences.push(
      said.limits(
        signed(lowerLimit.value, decimals),
        withUnit(signed(upperLimit.value, decimals), unit),
        formatNumber((upperLimit.interval.high - upperLimit.interval.low) / 2, decimals),
      ),
    );
  }
  const beyond = counted.filter(({ difference }) => Math.abs(difference) > tolerance.value).length;
  sentences.push(said.beyond(beyond, counted.length, withUnit(plainNumber(tolerance.value), unit)));
  if (drift === null) sentences.push(said.tooFewForDrift(LEAST_FOR_DRIFT, LEAST_DRIFT_DAYS));
  else sentences.push(said.drift(deviation(drift.per30Days, drift, unit), Math.round(drift.days)));
  const decimals = scatter.seen < 1 ? 2 : 1;
  sentences.push(
    said.scatter(withUnit(formatNumber(scatter.seen, decimals), unit), formatNumber(scatter.expected, decimals)),
  );
  if (farOff.length > 0) sentences.push(said.farOff(farOff.length));
  if ((others !== null && leavesOutZero(others.interval)) || (drift !== null && leavesOutZero(drift))) {
    sentences.push(said.check[by]);
  }
  return sentences;
}

function leavesOutZero({ low, high }: ConfidenceInterval): boolean {
  return low > 0 || high < 0;
}
