// Which part of the drawing the sheet shows, as plain numbers: screen = mm x scale + offset.
// Everything that pans or zooms goes through these functions, so it can be tested without a screen.

/** `scale` is pixels per millimetre; `x` and `y` are where the drawing's origin lies on screen, px. */
export interface Viewport {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Pixels per millimetre: from a whole 1,000-wire sheet on a phone to one pin filling the screen. */
export const scaleLimits = { least: 0.05, most: 40 } as const;

const limited = (scale: number): number =>
  Math.min(scaleLimits.most, Math.max(scaleLimits.least, scale));

/** The viewport that shows all of `box` in the middle of `view`, with `marginPx` kept free. */
export const fitBox = (box: Box, view: Size, marginPx = 16): Viewport => {
  const width = Math.max(1, view.width - 2 * marginPx);
  const height = Math.max(1, view.height - 2 * marginPx);
  const scale = limited(
    Math.min(width / Math.max(box.width, 1e-6), height / Math.max(box.height, 1e-6))
  );
  return {
    scale,
    x: (view.width - box.width * scale) / 2 - box.x * scale,
    y: (view.height - box.height * scale) / 2 - box.y * scale
  };
};

/** Zooms by `factor` so that the point of the drawing under `at` (screen px) stays there. */
export const zoomAt = (viewport: Viewport, factor: number, at: Place): Viewport => {
  const scale = limited(viewport.scale * factor);
  const real = scale / viewport.scale;
  return { scale, x: at.x - (at.x - viewport.x) * real, y: at.y - (at.y - viewport.y) * real };
};

/** Moves the paper by screen pixels. */
export const panBy = (viewport: Viewport, dx: number, dy: number): Viewport => ({
  ...viewport,
  x: viewport.x + dx,
  y: viewport.y + dy
});

/** A place on screen (px) as a place on the drawing (mm). */
export const toDrawing = (viewport: Viewport, at: Place): Place => ({
  x: (at.x - viewport.x) / viewport.scale,
  y: (at.y - viewport.y) / viewport.scale
});

/** A place on the drawing (mm) as a place on screen (px). */
export const toScreen = (viewport: Viewport, at: Place): Place => ({
  x: at.x * viewport.scale + viewport.x,
  y: at.y * viewport.scale + viewport.y
});

/** The part of the drawing that `view` shows, mm. */
export const seenBox = (viewport: Viewport, view: Size): Box => ({
  x: -viewport.x / viewport.scale,
  y: -viewport.y / viewport.scale,
  width: view.width / viewport.scale,
  height: view.height / viewport.scale
});

/** Moves the paper just enough that `box` lies inside the view, `marginPx` from its edges; zooms out
 *  only if it could not fit otherwise. A box that is in view already moves nothing. */
export const bringIntoView = (
  viewport: Viewport,
  box: Box,
  view: Size,
  marginPx = 48
): Viewport => {
  const margin = Math.min(marginPx, view.width / 4, view.height / 4);
  const fits =
    box.width * viewport.scale <= view.width - 2 * margin &&
    box.height * viewport.scale <= view.height - 2 * margin;
  if (!fits) {
    const fitted = fitBox(box, view, margin);
    const scale = Math.min(viewport.scale, fitted.scale);
    return scale === fitted.scale ? fitted : viewport;
  }
  const left = box.x * viewport.scale + viewport.x;
  const top = box.y * viewport.scale + viewport.y;
  const right = left + box.width * viewport.scale;
  const bottom = top + box.height * viewport.scale;
  const push = (low: number, high: number, limit: number): number =>
    low < margin ? margin - low : high > limit - margin ? limit - margin - high : 0;
  return panBy(viewport, push(left, right, view.width), push(top, bottom, view.height));
};

/** Keeps a strip of the drawing on screen, so that it cannot be pushed out of sight. */
export const keepInSight = (viewport: Viewport, bounds: Box, view: Size): Viewport => {
  const strip = Math.min(80, view.width / 3, view.height / 3);
  const clamp = (offset: number, start: number, length: number, limit: number): number => {
    const low = strip - (start + length) * viewport.scale;
    const high = limit - strip - start * viewport.scale;
    return Math.min(high, Math.max(low, offset));
  };
  return {
    ...viewport,
    x: clamp(viewport.x, bounds.x, bounds.width, view.width),
    y: clamp(viewport.y, bounds.y, bounds.height, view.height)
  };
};
