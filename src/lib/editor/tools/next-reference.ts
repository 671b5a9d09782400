// "V7" after V6: the next number that no reference with the same letters has.
import type { ChassisDocument } from '#document/index.ts';

/** The letters with the number after the highest that is in use; letters by themselves count as none. */
export const nextReference = (
  { parts }: Pick<ChassisDocument, 'parts'>,
  letters: string
): string => {
  let highest = 0;
  const start = letters.toLowerCase();
  for (const { reference } of Object.values(parts)) {
    const match = /^(\D*)(\d{1,6})/.exec(reference.toLowerCase());
    if (match?.[1] === start) highest = Math.max(highest, Number(match[2]));
  }
  return `${letters}${highest + 1}`;
};
