/**
 * Version of all messages between page and workers. Both sides come from one build, so another version means a page and
 * a worker of different builds: it is refused, not guessed at.
 */
export const PROTOCOL_VERSION = 1;

/** What every message carries. A reply, a progress message and a cancelling message have the id of their request. */
export interface Message {
  readonly v: typeof PROTOCOL_VERSION;
  readonly id: number;
}

/** Asks that the request with the same id be given up. It is no request of its own: the reply to that request is the only one. */
export interface CancelMessage extends Message {
  readonly kind: 'cancel';
}

/** How far a request has come; any number of them before its reply. */
export interface ProgressMessage extends Message {
  readonly kind: 'progress';
  /** 0 to 1 */
  readonly share: number;
}

/** The reply to a request that was given up. */
export interface CancelledReply extends Message {
  readonly kind: 'cancelled';
}

/** Why a request could not be answered; none of these is the picture's fault. */
export type FaultCode =
  /** the message is of an unknown kind, of another version, or misses a part */
  | 'not-understood'
  /** the request needs what was not loaded before */
  | 'not-loaded'
  /** the landmark bundle could not be fetched or is none */
  | 'model-not-loadable'
  /** the WebAssembly of the worker could not be fetched or started */
  | 'runtime-not-loadable'
  /** an exception: a bug, or out of memory */
  | 'failed';

/** The reply to a request that went wrong. */
export interface FaultReply extends Message {
  readonly kind: 'fault';
  readonly code: FaultCode;
  /** for developers; without anything of the wearer's */
  readonly detail: string;
}

/** Id of a fault that answers a message without a readable id. */
export const NO_ID = -1;

const FAULT_CODES: Readonly<Record<FaultCode, true>> = {
  'not-understood': true,
  'not-loaded': true,
  'model-not-loadable': true,
  'runtime-not-loadable': true,
  failed: true,
};

/** An object of unknown members. */
export type UnknownRecord = Readonly<Record<string, unknown>>;

export function isRecord(value: unknown): value is UnknownRecord {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function isFiniteNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

/** Whether the value is a message of this version with an id; its kind is still to be looked at. */
export function isMessage(value: unknown): value is UnknownRecord & Message {
  return isRecord(value) && value['v'] === PROTOCOL_VERSION && Number.isSafeInteger(value['id']);
}

/** The id to answer to, as far as it can be read. */
export function readableId(value: unknown): number {
  const id = isRecord(value) ? value['id'] : undefined;
  return typeof id === 'number' && Number.isSafeInteger(id) ? id : NO_ID;
}

/** The replies that both workers give, and the progress; null where the message is none of them or misses a part. */
export function parseCommonReply(
  message: UnknownRecord & Message,
): ProgressMessage | CancelledReply | FaultReply | null {
  const { v, id } = message;
  switch (message['kind']) {
    case 'progress': {
      const share = message['share'];
      return isFiniteNumber(share) && share >= 0 && share <= 1 ? { v, id, kind: 'progress', share } : null;
    }
    case 'cancelled':
      return { v, id, kind: 'cancelled' };
    case 'fault': {
      const { code, detail } = message as { code?: unknown; detail?: unknown };
      if (typeof code !== 'string' || !(code in FAULT_CODES) || typeof detail !== 'string') return null;
      return { v, id, kind: 'fault', code: code as FaultCode, detail };
    }
    default:
      return null;
  }
}
