import * as z from 'zod/mini';

/** What other windows are told. */
export type ChangeNews =
  /** these sessions were written or removed; null where it may have been any */
  | { readonly kind: 'sessions'; readonly ids: readonly string[] | null }
  /** a lock was set, changed or removed: all contents are other ones */
  | { readonly kind: 'lock' };

const newsSchema: z.ZodMiniType<ChangeNews> = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('sessions'), ids: z.nullable(z.array(z.string())) }),
  z.object({ kind: z.literal('lock') }),
]);

/** Between all windows that have the same store open. */
export interface ChangesChannel {
  tell(news: ChangeNews): void;
  /** Listens to what the others tell; never to this window's own news. */
  listen(listener: (news: ChangeNews) => void): () => void;
  close(): void;
}

const CHANNEL_NAME = 'glabella-store';

/** A channel to the other windows; where the browser has none they learn of a change when they write. */
export function openChangesChannel(): ChangesChannel {
  if ((globalThis.BroadcastChannel as typeof BroadcastChannel | undefined) === undefined) return quietChannel();
  const channel = new BroadcastChannel(CHANNEL_NAME);
  const listeners = new Set<(news: ChangeNews) => void>();
  channel.addEventListener('message', (event: MessageEvent<unknown>) => {
    const parsed = newsSchema.safeParse(event.data);
    if (parsed.success) for (const listener of listeners) listener(parsed.data);
  });
  return {
    tell: (news) => channel.postMessage(news),
    listen: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: () => channel.close(),
  };
}

/** Nobody else has the same store open. */
export function quietChannel(): ChangesChannel {
  return { tell: () => undefined, listen: () => () => undefined, close: () => undefined };
}
