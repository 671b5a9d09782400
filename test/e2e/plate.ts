// A photo whose true scale is known, as a camera would take it, and the hands that bring it in.
import { expect, type Page } from '@playwright/test';

/** A plate of 300 by 200 mm with dark dots every 50 mm, photographed at an angle. */
const plate = { widthMm: 300, heightMm: 200, width: 1280, height: 860 } as const;
const corners = [
  [210, 150],
  [1010, 95],
  [1130, 760],
  [120, 690]
] as const;

/** The photo as a camera writes it: a JPEG with EXIF that says where it was taken. In base64. */
export const buildPhoto = (page: Page): Promise<string> =>
  page.evaluate(
    ({ corners: quad, plate: size }) => {
      const canvas = document.createElement('canvas');
      canvas.width = size.width;
      canvas.height = size.height;
      const context = canvas.getContext('2d')!;
      context.fillStyle = '#6d5a44';
      context.fillRect(0, 0, canvas.width, canvas.height);
      // The unit square onto the corners, in closed form.
      const [p, q, r, s] = quad;
      const [sx, sy] = [p[0] - q[0] + r[0] - s[0], p[1] - q[1] + r[1] - s[1]];
      const [ux, uy, vx, vy] = [q[0] - r[0], q[1] - r[1], s[0] - r[0], s[1] - r[1]];
      const area = ux * vy - uy * vx;
      const g = (sx * vy - sy * vx) / area;
      const h = (ux * sy - uy * sx) / area;
      const at = (u: number, v: number): [number, number] => {
        const depth = g * u + h * v + 1;
        const x = (q[0] - p[0] + g * q[0]) * u + (s[0] - p[0] + h * s[0]) * v + p[0];
        const y = (q[1] - p[1] + g * q[1]) * u + (s[1] - p[1] + h * s[1]) * v + p[1];
        return [x / depth, y / depth];
      };
      const fill = (points: [number, number][], colour: string): void => {
        context.fillStyle = colour;
        context.beginPath();
        for (const [x, y] of points) context.lineTo(x, y);
        context.fill();
      };
      fill([at(0, 0), at(1, 0), at(1, 1), at(0, 1)], '#c9cdd0');
      for (let x = 50; x < size.widthMm; x += 50) {
        for (let y = 50; y < size.heightMm; y += 50) {
          const ring = Array.from({ length: 24 }, (_, index): [number, number] => {
            const turn = (index / 24) * 2 * Math.PI;
            return at(
              (x + 4 * Math.cos(turn)) / size.widthMm,
              (y + 4 * Math.sin(turn)) / size.heightMm
            );
          });
          fill(ring, '#1d2126');
        }
      }
      const plain = atob(canvas.toDataURL('image/jpeg', 0.95).split(',')[1]!);
      const about = `Exif\0\0MM\0*\0\0\0\x08\0\x01\x88\x25\0\x04\0\0\0\x01\0\0\0\x1a\0\0\0\0GPS 51.5074 north`;
      const length = String.fromCharCode((about.length + 2) >> 8, (about.length + 2) & 255);
      return btoa(`${plain.slice(0, 2)}\xff\xe1${length}${about}${plain.slice(2)}`);
    },
    { corners, plate }
  );

/** Drops a picture on the page. */
export const drop = async (
  page: Page,
  name: string,
  type: string,
  base64: string
): Promise<void> => {
  await page.evaluate(
    ({ name: fileName, type: fileType, base64: text }) => {
      const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
      const transfer = new DataTransfer();
      transfer.items.add(new File([bytes], fileName, { type: fileType }));
      for (const kind of ['dragenter', 'dragover', 'drop']) {
        document.body.dispatchEvent(
          new DragEvent(kind, { dataTransfer: transfer, bubbles: true, cancelable: true })
        );
      }
    },
    { name, type, base64 }
  );
};

/** Drags the handles of the scale dialog onto the plate's corners, by mouse. */
export const setCorners = async (page: Page): Promise<void> => {
  for (const [index, [x, y]] of corners.entries()) {
    const handle = page.getByTestId(`handle-${index}`);
    await handle.scrollIntoViewIfNeeded();
    const frame = (await handle.locator('..').boundingBox())!;
    const box = (await handle.boundingBox())!;
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(
      frame.x + (x / plate.width) * frame.width,
      frame.y + (y / plate.height) * frame.height,
      { steps: 4 }
    );
    await page.mouse.up();
  }
};

/** Where on screen the plate's dark dots are painted, row by row. Asked until the photo is there. */
export const findDots = async (page: Page): Promise<readonly { x: number; y: number }[]> => {
  let dots: { x: number; y: number }[] = [];
  await expect.poll(async () => (dots = await dotsNow(page)).length, { timeout: 20_000 }).toBe(15);
  return dots;
};

const dotsNow = (page: Page): Promise<{ x: number; y: number }[]> =>
  page.evaluate(() => {
    const canvas = document.querySelector<HTMLCanvasElement>('[data-testid=sheet] canvas')!;
    const box = canvas.getBoundingClientRect();
    const { width, height } = canvas;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, width, height);
    const level = (x: number, y: number): number => data[(y * width + x) * 4] ?? 255;
    // Dark as the dots are against the plate, on light paper and on dark.
    const isDark = (x: number, y: number): boolean => level(x, y) < 100;
    const seen = new Uint8Array(width * height);
    const found: { x: number; y: number; size: number; wide: number; high: number }[] = [];
    for (let y = 1; y < height - 1; y++) {
      for (let x = 1; x < width - 1; x++) {
        if (seen[y * width + x] === 1 || !isDark(x, y)) continue;
        const stack = [[x, y] as const];
        seen[y * width + x] = 1;
        let [sumX, sumY, size, left, right, top, bottom] = [0, 0, 0, x, x, y, y];
        while (stack.length > 0) {
          const [px, py] = stack.pop()!;
          [sumX, sumY, size] = [sumX + px, sumY + py, size + 1];
          [left, right] = [Math.min(left, px), Math.max(right, px)];
          [top, bottom] = [Math.min(top, py), Math.max(bottom, py)];
          for (const [nx, ny] of [
            [px + 1, py],
            [px - 1, py],
            [px, py + 1],
            [px, py - 1]
          ] as const) {
            const at = ny * width + nx;
            if (nx < 0 || ny < 0 || nx >= width || ny >= height) continue;
            if (seen[at] === 1 || !isDark(nx, ny)) continue;
            seen[at] = 1;
            stack.push([nx, ny]);
          }
        }
        const [wide, high] = [right - left + 1, bottom - top + 1];
        found.push({ x: sumX / size, y: sumY / size, size, wide, high });
      }
    }
    const ratio = width / box.width;
    return found
      .filter(({ size, wide, high }) => size > 20 && Math.max(wide, high) < 30)
      .filter(({ size, wide, high }) => size > 0.6 * wide * high)
      .map(({ x, y }) => ({
        x: box.left + (x + 0.5) / ratio,
        y: box.top + (y + 0.5) / ratio
      }))
      .sort((a, b) => (Math.abs(a.y - b.y) > 8 ? a.y - b.y : a.x - b.x));
  });
