import { useCallback, useEffect, useRef, useState } from 'react';
import type { SessionRecord } from '../core/record/session-record.js';
import { isoDay } from '../session/kept-picture.js';
import { asOpenedAt, deskAfter, NEW_DESK, newSession } from '../session/new-session.js';
import type { Desk, StoreFailure } from '../session/session-store.js';
import { useEquipment } from './equipment.js';
import { useFault } from './use-fault.js';
import { nowText } from './use-session-record.js';

/** What the desk shows. */
export type DeskPlace =
  | { readonly kind: 'opening' }
  | { readonly kind: 'locked' }
  /** `opening` counts how often a sheet was opened, so that each is drawn afresh */
  | { readonly kind: 'sheet'; readonly record: SessionRecord; readonly opening: number }
  | { readonly kind: 'demo'; readonly record: SessionRecord; readonly opening: number }
  | { readonly kind: 'list' };

export interface DeskInHand {
  readonly place: DeskPlace;
  /** the session that was open before this one and is kept; null where there is none */
  readonly beforeId: string | null;
  /** what could not be opened, until something else was */
  readonly failure: StoreFailure | null;
  /** the open session was changed by another window since */
  readonly isBehind: boolean;
  /** what somebody wants to leave an unkept session for; null where nobody does */
  readonly leavingFor: (() => void) | null;
  /** Starts anew from what is kept, as after unlocking. */
  readonly open: () => void;
  readonly openSession: (id: string) => void;
  /** Opens this very session, as one that is kept nowhere yet. */
  readonly openAsNew: (record: SessionRecord) => void;
  readonly begin: () => void;
  readonly showList: () => void;
  readonly showDemo: () => void;
  /** Back to the session that was open before list or demo. */
  readonly back: () => void;
  readonly forgetBefore: () => void;
  readonly stay: () => void;
  /** Takes the session as it stands on the sheet now. */
  readonly take: (record: SessionRecord) => void;
}

/** Which session is open at this desk, and what is shown instead. */
export function useDesk(): DeskInHand {
  const { database, demo, keeper } = useEquipment();
  const [place, setPlace] = useState<DeskPlace>({ kind: 'opening' });
  const [beforeId, setBeforeId] = useState<string | null>(null);
  const [failure, setFailure] = useState<StoreFailure | null>(null);
  const [isBehind, setIsBehind] = useState(false);
  const [leavingFor, setLeavingFor] = useState<(() => void) | null>(null);
  const desk = useRef<Desk>(NEW_DESK);
  const openings = useRef(0);
  const onFault = useFault();

  const remember = useCallback(
    (now: Desk) => {
      desk.current = now;
      // A desk that cannot be kept begins with less the next time; what is typed is kept, and told, elsewhere.
      void database.desk.save(now);
    },
    [database],
  );

  const show = useCallback(
    (record: SessionRecord, revision: number | null) => {
      const opened = asOpenedAt(desk.current, record);
      keeper.open({ record: opened, revision });
      remember({ ...desk.current, openSessionId: record.id });
      setIsBehind(false);
      setLeavingFor(null);
      openings.current += 1;
      setPlace({ kind: 'sheet', record: opened, opening: openings.current });
    },
    [keeper, remember],
  );

  const load = useCallback(
    async (id: string): Promise<boolean> => {
      await keeper.settled();
      const loaded = await database.sessions.load(id);
      if (loaded.ok) {
        setFailure(null);
        show(loaded.value.record, loaded.value.revision);
        return true;
      }
      if (loaded.failure.kind === 'storage-locked') setPlace({ kind: 'locked' });
      setFailure(loaded.failure);
      return false;
    },
    [database, keeper, show],
  );

  const open = useCallback(() => {
    const start = async (): Promise<void> => {
      const lock = await database.lock.state();
      if (lock.ok && lock.value === 'locked') {
        setPlace({ kind: 'locked' });
        return;
      }
      // pictures are kept no longer than was agreed
      void database.pictures.removeExpired(isoDay(new Date()));
      const kept = await database.desk.load();
      if (kept.ok && kept.value !== null) desk.current = kept.value;
      const unkept = keeper.record();
      if (unkept !== null && keeper.keeping().kind !== 'kept') {
        // what was typed while the lock fell stands only here
        const stored = await database.sessions.load(unkept.id);
        show(unkept, stored.ok ? stored.value.revision : null);
        keeper.take({ ...unkept });
        return;
      }
      const { openSessionId } = desk.current;
      if (openSessionId !== null) {
        const loaded = await database.sessions.load(openSessionId);
        if (loaded.ok) {
          show(loaded.value.record, loaded.value.revision);
          return;
        }
        // a session that was blank was never kept
        if (loaded.failure.kind !== 'session-missing') setFailure(loaded.failure);
      }
      show(newSession(crypto.randomUUID(), nowText(), desk.current), null);
    };
    start().catch(onFault);
  }, [database, keeper, onFault, show]);
  useEffect(open, [open]);

  const leave = useCallback(
    (where: () => void) => {
      const { kind } = keeper.keeping();
      if (kind === 'not-kept') setLeavingFor(() => where);
      else where();
    },
    [keeper],
  );
  const openSession = useCallback(
    (id: string) => {
      leave(() => {
        setBeforeId(null);
        load(id).catch(onFault);
      });
    },
    [leave, load, onFault],
  );
  const openAsNew = useCallback(
    (record: SessionRecord) => {
      show(record, null);
      keeper.take({ ...record });
    },
    [keeper, show],
  );
  const begin = useCallback(() => {
    leave(() => {
      const keeping = keeper.keeping();
      // a blank session is not kept: there is nothing to go back to
      const isKept = keeping.kind === 'keeping' || (keeping.kind === 'kept' && keeping.revision !== null);
      setBeforeId(isKept ? (keeper.record()?.id ?? null) : null);
      setFailure(null);
      show(newSession(crypto.randomUUID(), nowText(), desk.current), null);
    });
  }, [keeper, leave, show]);
  const showList = useCallback(() => {
    leave(() => {
      setBeforeId(null);
      void keeper.settled().then(() => {
        setPlace({ kind: 'list' });
      });
    });
  }, [keeper, leave]);
  const back = useCallback(() => {
    const start = async (): Promise<void> => {
      await keeper.settled();
      const keeping = keeper.keeping();
      const record = keeper.record();
      // one that is still blank was never kept, and stands only here
      const isBlank = keeping.kind === 'kept' && keeping.revision === null;
      if (record !== null && isBlank) show(record, null);
      else if (record === null || !(await load(record.id)))
        show(newSession(crypto.randomUUID(), nowText(), desk.current), null);
    };
    start().catch(onFault);
  }, [keeper, load, onFault, show]);
  const showDemo = useCallback(() => {
    openings.current += 1;
    const record = { ...newSession(crypto.randomUUID(), nowText(), desk.current), sheet: demo.sheet };
    setPlace({ kind: 'demo', record, opening: openings.current });
  }, [demo]);

  const take = useCallback(
    (record: SessionRecord) => {
      const before = keeper.record();
      keeper.take(record);
      const now = deskAfter(record.sheet, record.id);
      const known = before === null ? null : deskAfter(before.sheet, before.id);
      // An old session that is opened brings its own settings; only what is changed now becomes the desk's.
      if (JSON.stringify(now) !== JSON.stringify(known)) remember(now);
    },
    [keeper, remember],
  );

  useEffect(
    () =>
      database.sessions.onChangedElsewhere((ids) => {
        const record = keeper.record();
        const keeping = keeper.keeping();
        if (record === null || keeping.kind !== 'kept' || keeping.revision === null) return;
        if (ids !== null && !ids.includes(record.id)) return;
        void database.sessions.load(record.id).then((stored) => {
          if (keeper.record()?.id !== record.id) return;
          const now = keeper.keeping();
          if (!stored.ok) {
            if (stored.failure.kind === 'storage-locked') setPlace({ kind: 'locked' });
            else setIsBehind(true);
          } else if (now.kind === 'kept' && now.revision !== null && stored.value.revision > now.revision) {
            setIsBehind(true);
          }
        });
      }),
    [database, keeper],
  );

  return {
    place,
    beforeId,
    failure,
    isBehind,
    leavingFor,
    open,
    openSession,
    openAsNew,
    begin,
    showList,
    showDemo,
    back,
    forgetBefore: useCallback(() => {
      setBeforeId(null);
    }, []),
    stay: useCallback(() => {
      setLeavingFor(null);
    }, []),
    take,
  };
}
