// What is said of a photo in its row and on the sheet.
import type { Photo } from '#document/index.ts';
import { lengthText } from '../core/words.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';

/** "True to 330 mm by 254 mm", or that nothing can be measured on it. */
export const scaleWords = ({ scale }: Photo, unit: LengthUnit): string => {
  if (scale === undefined) return 'No scale: nothing can be measured on it.';
  return scale.by === 'rectangle'
    ? `Straightened by a rectangle of ${lengthText(scale.widthMm, unit)} by ${lengthText(scale.heightMm, unit)}.`
    : `Scaled by two places ${lengthText(scale.mm, unit)} apart.`;
};

export const faceWords = { below: 'From below', above: 'From above' } as const;
