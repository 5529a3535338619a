import type { OpenCv } from '../../src/workers/card/open-cv.js';

/** OpenCV with a count of all that it made on its heap, and of what was not deleted: matrices, vectors, their elements, detectors. */
export interface CountedOpenCv {
  readonly cv: OpenCv;
  readonly alive: () => number;
  readonly made: () => number;
}

/** Wraps OpenCV so that it counts. Plain data, which need not be deleted, does not count. */
export function countedOpenCv(cv: OpenCv): CountedOpenCv {
  let alive = 0;
  let made = 0;
  const count = <Made extends object>(thing: Made): Made => {
    const target = thing as Made & { delete?: () => void; get?: (index: number) => object };
    if (typeof target.delete !== 'function') return thing;
    alive += 1;
    made += 1;
    const original = target.delete.bind(target);
    target.delete = () => {
      alive -= 1;
      original();
    };
    if (typeof target.get === 'function') {
      const elementOf = target.get.bind(target);
      target.get = (index) => count(elementOf(index));
    }
    return thing;
  };
  const proxy = new Proxy(cv, {
    get(target, name) {
      const member: unknown = Reflect.get(target, name);
      if (name === 'getPredefinedDictionary') {
        return (dictionary: number) => count(target.getPredefinedDictionary(dictionary) as object);
      }
      if (typeof member !== 'function' || name === 'getBuildInformation') return member;
      return new Proxy(member as new (...values: unknown[]) => object, {
        construct: (constructor, values) => count(new constructor(...(values as unknown[]))),
      });
    },
  });
  return { cv: proxy, alive: () => alive, made: () => made };
}
