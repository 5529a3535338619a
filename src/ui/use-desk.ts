import { startTransition, useCallback, useEffect, useRef, useState } from 'react';
import type { SessionRecord } from '../core/record/session-record.js';
import type { TypedSheet } from '../core/record/typed-sheet.js';
import { isoDay } from '../session/iso-day.js';
import { asOpenedAt, deskAfter, NEW_DESK, newSession } from '../session/new-session.js';
import type { Desk, StoreFailure } from '../session/session-store.js';
import { useEquipment } from './equipment.js';
import { useFault } from './use-fault.js';
import { nowText } from './now-text.js';

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
  /** what another window did with the open session since it was read; null where nothing */
  readonly elsewhere: 'changed' | 'removed' | null;
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
  /** Back to the session that was open before list or demo, as it stood. */
  readonly back: () => void;
  /** Shows the open session as it stands in the store, in place of what stands on the sheet. */
  readonly showStored: () => void;
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
  const [elsewhere, setElsewhere] = useState<DeskInHand['elsewhere']>(null);
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

  const showSheet = useCallback((kind: 'sheet' | 'demo', record: SessionRecord) => {
    const opening = (openings.current += 1);
    const show = (): void => {
      setPlace({ kind, record, opening });
    };
    // The first is drawn in slices. From another one nothing more must be typed into: it goes at once.
    if (opening === 1) startTransition(show);
    else show();
  }, []);

  const show = useCallback(
    (record: SessionRecord, revision: number | null) => {
      const opened = asOpenedAt(desk.current, record);
      keeper.open({ record: opened, revision });
      remember({ ...desk.current, openSessionId: record.id });
      setElsewhere(null);
      setLeavingFor(null);
      showSheet('sheet', opened);
    },
    [keeper, remember, showSheet],
  );
  const showNew = useCallback(() => {
    show(newSession(crypto.randomUUID(), nowText(), desk.current), null);
  }, [show]);

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
        showSheet('sheet', unkept);
        keeper.tryAgain();
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
      showNew();
    };
    start().catch(onFault);
  }, [database, keeper, onFault, show, showNew, showSheet]);
  useEffect(open, [open]);

  const leave = useCallback(
    (where: () => void) => {
      const go = (): void => {
        if (keeper.keeping().kind === 'not-kept') setLeavingFor(() => where);
        else where();
      };
      // What is still on its way to the disk may yet be refused. Otherwise at once: the next key belongs to what comes.
      if (keeper.keeping().kind === 'keeping') keeper.settled().then(go).catch(onFault);
      else go();
    },
    [keeper, onFault],
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
      const isKept = keeping.kind === 'kept' && keeping.revision !== null;
      setBeforeId(isKept ? (keeper.record()?.id ?? null) : null);
      setFailure(null);
      showNew();
    });
  }, [keeper, leave, showNew]);
  const showList = useCallback(() => {
    leave(() => {
      setBeforeId(null);
      setPlace({ kind: 'list' });
    });
  }, [leave]);
  const back = useCallback(() => {
    const record = keeper.record();
    if (record === null) showNew();
    else showSheet('sheet', record);
  }, [keeper, showSheet, showNew]);
  const showStored = useCallback(() => {
    const start = async (): Promise<void> => {
      const record = keeper.record();
      if (record === null || !(await load(record.id))) showNew();
    };
    start().catch(onFault);
  }, [keeper, load, onFault, showNew]);
  const showDemo = useCallback(() => {
    showSheet('demo', { ...newSession(crypto.randomUUID(), nowText(), desk.current), sheet: demo.sheet });
  }, [demo, showSheet]);

  const take = useCallback(
    (record: SessionRecord) => {
      const before = keeper.record();
      keeper.take(record);
      // An old session that is opened brings its own settings; only what is changed now becomes the desk's.
      if (before === null || !isSameDesk(before.sheet, record.sheet)) remember(deskAfter(record.sheet, record.id));
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
            else setElsewhere('removed');
          } else if (now.kind === 'kept' && now.revision !== null && stored.value.revision > now.revision) {
            setElsewhere('changed');
          }
        });
      }),
    [database, keeper],
  );

  return {
    place,
    beforeId,
    failure,
    elsewhere,
    leavingFor,
    open,
    openSession,
    openAsNew,
    begin,
    showList,
    showDemo,
    back,
    showStored,
    forgetBefore: useCallback(() => {
      setBeforeId(null);
    }, []),
    stay: useCallback(() => {
      setLeavingFor(null);
    }, []),
    take,
  };
}

/** Whether two sheets were written at the same desk: each change of the settings makes new ones. */
function isSameDesk(one: TypedSheet, other: TypedSheet): boolean {
  return (
    one.settings === other.settings &&
    one.readers.first.reader === other.readers.first.reader &&
    one.readers.second.reader === other.readers.second.reader
  );
}
