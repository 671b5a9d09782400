// A drawing as PNG, painted on a canvas as the sheet is.
import type { DisplayList } from '#drawing/display-list.ts';
import { styleOf, type PaperTheme } from '#drawing/styles.ts';
import { paint, type PictureSource } from '../sheet/paint-shape.ts';

/** Browsers refuse canvases beyond these: a side, and pixels in all. Common practice, no source. */
export const pngLimits = { side: 12_000, pixels: 64_000_000 } as const;
const mmPerInch = 25.4;

export interface PngSize {
  readonly width: number;
  readonly height: number;
  readonly dotsPerInch: number;
  /** The limits allow no more than this, less than was asked for. */
  readonly isLimited: boolean;
}

/** How large the picture comes out. */
export const pngSize = ({ bounds }: Pick<DisplayList, 'bounds'>, dotsPerInch: number): PngSize => {
  const [width, height] = [bounds.width / mmPerInch, bounds.height / mmPerInch];
  const most = Math.min(
    pngLimits.side / Math.max(width, height),
    Math.sqrt(pngLimits.pixels / (width * height))
  );
  const dots = Math.min(dotsPerInch, most);
  return {
    width: Math.max(1, Math.floor(width * dots)),
    height: Math.max(1, Math.floor(height * dots)),
    dotsPerInch: Math.floor(dots),
    isLimited: dots < dotsPerInch
  };
};

/** The PNG; null where the browser gives no canvas of that size. */
export const writePng = async (
  list: DisplayList,
  dotsPerInch: number,
  theme: PaperTheme,
  pictures: PictureSource
): Promise<Uint8Array | null> => {
  // The faces must be there before anything is written with them.
  await document.fonts.ready;
  const { width, height } = pngSize(list, dotsPerInch);
  const canvas = new OffscreenCanvas(width, height);
  const raw = canvas.getContext('2d');
  if (raw === null) return null;
  const scale = width / list.bounds.width;
  raw.scale(scale, scale);
  raw.translate(-list.bounds.x, -list.bounds.y);
  for (const { shape, style } of list.items)
    // Both kinds of canvas have the same calls.
    paint(raw as unknown as CanvasRenderingContext2D, shape, styleOf(style, theme), {
      theme,
      scale,
      pictures
    });
  const blob = await canvas.convertToBlob({ type: 'image/png' }).catch(() => null);
  return blob === null ? null : new Uint8Array(await blob.arrayBuffer());
};
