// Sheets of paper by name, upright, in millimetres.

/** ISO 216 (A series) and ANSI/ASME Y14.1 (letter and B to D, whole inches). */
export const paperSizesMm = {
  A4: [210, 297],
  A3: [297, 420],
  A2: [420, 594],
  A1: [594, 841],
  letter: [215.9, 279.4],
  'ansi-b': [279.4, 431.8],
  'ansi-c': [431.8, 558.8],
  'ansi-d': [558.8, 863.6]
} as const;
export type PaperName = keyof typeof paperSizesMm;
export const paperNames = Object.keys(paperSizesMm) as readonly PaperName[];
