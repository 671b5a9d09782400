// As much of a window as Konva asks for before it paints, so that its tree can be built in Node: elements
// that keep nothing and canvases that paint nothing.
const nothing = (): undefined => undefined;

/** What Konva reads back once, to see whether colours come back as they were painted. */
const getImageData = (): object => ({
  data: Array.from({ length: 100 }, () => [40, 40, 40, 255]).flat()
});

const context = (): object =>
  new Proxy({ getImageData } as Record<string | symbol, unknown>, {
    get: (held, name) => (name in held ? held[name] : nothing),
    set: (held, name, value) => {
      held[name] = value;
      return true;
    }
  });

/** An element that swallows whatever is done to it. */
export const paperElement = (): HTMLDivElement => {
  const own: Record<string, unknown> = {
    style: {},
    children: [],
    innerHTML: '',
    ownerDocument: { defaultView: globalThis, createElement: paperElement },
    parentElement: null,
    parentNode: null,
    getContext: context
  };
  return new Proxy(own, {
    get: (held, name) => (name in held ? held[String(name)] : nothing)
  }) as unknown as HTMLDivElement;
};

/** Puts the window up; call it before Konva is imported. */
export const putUpWindow = (): void => {
  const query = { addEventListener: nothing, removeEventListener: nothing };
  Object.assign(globalThis, {
    window: globalThis,
    document: { createElement: paperElement, addEventListener: nothing },
    matchMedia: () => query,
    devicePixelRatio: 1,
    requestAnimationFrame: nothing,
    addEventListener: nothing,
    removeEventListener: nothing
  });
};
