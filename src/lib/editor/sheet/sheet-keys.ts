// The keys of the sheet, as what they ask for.

export type SheetCommand =
  | { readonly kind: 'zoom'; readonly factor: number }
  | { readonly kind: 'fit' }
  | { readonly kind: 'closer' }
  | { readonly kind: 'pan'; readonly dx: number; readonly dy: number }
  | { readonly kind: 'next-wire'; readonly by: 1 | -1 }
  | { readonly kind: 'let-go' };

const stepPx = 60;
const zoomStep = 1.3;

/** What a key asks of the sheet, or null where it is none of its keys. Shift makes longer steps. */
export const sheetCommandOf = (key: string, shift = false): SheetCommand | null => {
  const step = shift ? stepPx * 4 : stepPx;
  switch (key) {
    case '+':
    case '=':
      return { kind: 'zoom', factor: zoomStep };
    case '-':
    case '_':
      return { kind: 'zoom', factor: 1 / zoomStep };
    case '0':
      return { kind: 'fit' };
    case 'Enter':
      return { kind: 'closer' };
    case 'ArrowLeft':
      return { kind: 'pan', dx: step, dy: 0 };
    case 'ArrowRight':
      return { kind: 'pan', dx: -step, dy: 0 };
    case 'ArrowUp':
      return { kind: 'pan', dx: 0, dy: step };
    case 'ArrowDown':
      return { kind: 'pan', dx: 0, dy: -step };
    case '.':
      return { kind: 'next-wire', by: 1 };
    case ',':
      return { kind: 'next-wire', by: -1 };
    case 'Escape':
      return { kind: 'let-go' };
    default:
      return null;
  }
};
