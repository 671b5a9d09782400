// What the files of a chassis are called.

/** The ending of a document's file. */
export const documentEnding = '.chassis.json';

/** The ending of a file that holds a chassis with its pictures. */
export const zipEnding = '.chassis.zip';

/** Names that Windows keeps for devices, whatever their ending.
 *  Source: Microsoft, "Naming Files, Paths, and Namespaces". */
const reservedNames = /^(?:con|prn|aux|nul|com\d|lpt\d)$/;
const stemLength = 60;

/** A name for a file: the title's letters and figures, of any script, and the ending with its dot. */
export const fileNameOf = (title: string, ending: string): string => {
  const letters = [
    ...title
      .normalize('NFC')
      .toLowerCase()
      .replaceAll(/[^\p{L}\p{M}\p{N}]+/gu, '-')
  ];
  const stem =
    letters
      .slice(0, stemLength)
      .join('')
      .replaceAll(/^-+|-+$/g, '') || 'chassis';
  return `${stem}${reservedNames.test(stem) ? '-chassis' : ''}${ending}`;
};
