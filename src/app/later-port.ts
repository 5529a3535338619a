/** A port all of whose functions answer later anyway. */
type Answering<Port> = { readonly [Name in keyof Port]: (...words: never[]) => Promise<unknown> };

/** Stands for a port whose code is loaded when the first of its functions is called. Where that fails, the call rejects. */
export function laterPort<Port extends Answering<Port>>(load: () => Promise<Port>): Port {
  return new Proxy({} as Port, {
    get:
      (_target, name) =>
      async (...words: never[]) =>
        (await load())[name as keyof Port](...words),
  });
}
