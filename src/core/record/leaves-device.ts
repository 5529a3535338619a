import type { Confirmation } from './confirmation.js';
import type { SessionRecord } from './session-record.js';

/** What leaves this device, and how. */
export type Destination =
  /** one file for other machines; whoever has it reads everything */
  | 'session-file'
  /** the same, sealed with a passphrase */
  | 'backup'
  /** a table of all sessions */
  | 'spreadsheet'
  /** the order on paper, as PDF and as a file: for the workshop */
  | 'order'
  /** the link to a distant wearer */
  | 'distant-invitation';

export const DESTINATIONS: readonly Destination[] = [
  'session-file',
  'backup',
  'spreadsheet',
  'order',
  'distant-invitation',
];

/** Where one field goes. */
export type FieldRule = readonly Destination[];

/** Fields that are ruled as they are, with all that is in them. */
type Whole =
  'readings' | 'estimates' | 'advice' | 'lidsByHand' | 'hidden' | 'tolerances' | 'gaugeInUse' | 'groupOrder' | 'serves';

type KeysOf<Value> = Value extends unknown ? keyof Value : never;
type At<Value, Key> = Value extends unknown ? (Key extends keyof Value ? Value[Key] : never) : never;

/** A rule for every field of a value; of lists, for every field of what is in them. */
export type FieldRules<Value> = [NonNullable<Value>] extends [string | number | boolean]
  ? FieldRule
  : [NonNullable<Value>] extends [readonly (infer One)[]]
    ? FieldRules<One>
    : {
        readonly [Key in KeysOf<NonNullable<Value>>]-?: Key extends Whole
          ? FieldRule
          : Key extends 'confirmations'
            ? FieldRules<Confirmation>
            : FieldRules<At<NonNullable<Value>, Key>>;
      };

/** All that this app gives back to itself. */
const OWN = ['session-file', 'backup'] as const satisfies FieldRule;
const OWN_AND_TABLE = [...OWN, 'spreadsheet'] as const satisfies FieldRule;
const OWN_AND_ORDER = [...OWN, 'order'] as const satisfies FieldRule;
const OWN_TABLE_AND_ORDER = [...OWN, 'spreadsheet', 'order'] as const satisfies FieldRule;

const READER = {
  // on the order beside what that reader confirmed
  reader: OWN_TABLE_AND_ORDER,
  // on the order only what was confirmed
  readings: OWN_TABLE_AND_ORDER,
  history: { name: OWN, text: OWN, by: OWN, at: OWN },
} as const;

const EYE = {
  sphere: OWN_AND_ORDER,
  cylinder: OWN_AND_ORDER,
  axis: OWN_AND_ORDER,
  prismHorizontal: OWN_AND_ORDER,
  baseHorizontal: OWN_AND_ORDER,
  prismVertical: OWN_AND_ORDER,
  baseVertical: OWN_AND_ORDER,
  add: OWN_AND_ORDER,
} as const;

/**
 * To where each field of a session may go. There is no other list: a field without an entry does not compile, and tests hold
 * what is written to it. Nothing of any session goes into an invitation, and pictures are no part of a session.
 */
export const LEAVES_DEVICE: FieldRules<SessionRecord> = {
  id: OWN_AND_TABLE,
  begunAt: OWN_AND_TABLE,
  changedAt: OWN_AND_TABLE,
  origin: { kind: OWN_AND_TABLE, invitationId: OWN, answerId: OWN, receivedAt: OWN },
  sheet: {
    readers: { first: READER, second: READER },
    reader: OWN,
    notes: {
      wearer: OWN_TABLE_AND_ORDER,
      squint: OWN_TABLE_AND_ORDER,
      light: OWN_TABLE_AND_ORDER,
      remark: OWN_TABLE_AND_ORDER,
    },
    prescription: {
      R: EYE,
      L: EYE,
      vertexDistance: OWN_AND_ORDER,
      lensKind: OWN_AND_ORDER,
      effectiveDiameter: OWN_AND_ORDER,
    },
    confirmations: { text: OWN_AND_ORDER, by: OWN_AND_ORDER, at: OWN_AND_ORDER },
    settings: {
      gaze: OWN,
      workingDistanceText: OWN_TABLE_AND_ORDER,
      covered: OWN,
      card: OWN,
      checkLengthText: OWN,
      cameraId: OWN,
      profileId: OWN,
      practice: {
        hidden: OWN,
        // what the numbers depend on goes along; on the order where it says more than the number
        tolerances: OWN_AND_ORDER,
        gauges: {
          id: OWN,
          name: OWN_AND_ORDER,
          serves: OWN,
          resolution: OWN_AND_ORDER,
          zeroOffset: OWN_TABLE_AND_ORDER,
          bias: OWN_TABLE_AND_ORDER,
          checkedOn: OWN_AND_ORDER,
        },
        gaugeInUse: OWN,
        groupOrder: OWN_AND_ORDER,
        standard: OWN_AND_ORDER,
      },
    },
  },
  camera: {
    kind: OWN_TABLE_AND_ORDER,
    takenAt: OWN_AND_TABLE,
    supervision: OWN_TABLE_AND_ORDER,
    // on the order where they speak against a number, or stand behind its doubt
    estimates: OWN_TABLE_AND_ORDER,
    pixelsPerMm: OWN,
    lidsByHand: OWN,
    advice: OWN,
    framesUsed: OWN,
    framesTaken: OWN,
  },
  findings: {
    written: OWN_AND_TABLE,
    confirmed: OWN_AND_TABLE,
    agrees: OWN_AND_TABLE,
    disagrees: OWN_AND_TABLE,
    cannotTell: OWN_AND_TABLE,
    misfits: OWN_AND_TABLE,
  },
};

/** A session with only what may go there; what may not is missing. */
export function fieldsFor(destination: Destination, record: SessionRecord): unknown {
  return fieldsOf(record, LEAVES_DEVICE, destination);
}

type AnyRules = FieldRule | { readonly [Name: string]: AnyRules };

function fieldsOf(value: unknown, rules: AnyRules, destination: Destination): unknown {
  // mostly all of it: a file of a thousand sessions has two million fields
  if (goesWhole(rules, destination)) return value;
  if (isRule(rules)) return undefined;
  if (Array.isArray(value)) return value.map((one) => fieldsOf(one, rules, destination));
  // what is not there has nothing in it that could be held back
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value).flatMap(([name, own]): readonly (readonly [string, unknown])[] => {
    const rule = rules[name];
    if (rule === undefined) return [];
    // by place: there is one rule for all of them
    const kept = name === 'confirmations' ? eachOf(own, rule, destination) : fieldsOf(own, rule, destination);
    return kept === undefined ? [] : [[name, kept]];
  });
  return Object.fromEntries(fields);
}

function eachOf(value: unknown, rules: AnyRules, destination: Destination): unknown {
  const entries = Object.entries(value as object).map(
    ([name, one]) => [name, fieldsOf(one, rules, destination)] as const,
  );
  return Object.fromEntries(entries);
}

const whole = new Map<Destination, WeakMap<object, boolean>>();

/** Whether all that these rules are about may go there. */
function goesWhole(rules: AnyRules, destination: Destination): boolean {
  if (isRule(rules)) return rules.includes(destination);
  const known = whole.get(destination) ?? new WeakMap<object, boolean>();
  whole.set(destination, known);
  const answer = known.get(rules) ?? Object.values(rules).every((one) => goesWhole(one, destination));
  known.set(rules, answer);
  return answer;
}

function isRule(rules: AnyRules): rules is FieldRule {
  return Array.isArray(rules);
}
