// From a reference designation ("V7", "TS2", "SW1") or a plain name ("tuner", "yoke") to the kind
// of part it stands for. Letters as North American service data use them: common practice, no source.

/** The words are those of the document's part kinds. */
export type ReferredKind =
  | 'tube'
  | 'picture tube'
  | 'transformer'
  | 'coil'
  | 'yoke'
  | 'resistor'
  | 'control'
  | 'capacitor'
  | 'terminal strip'
  | 'plug'
  | 'jack'
  | 'switch'
  | 'fuse'
  | 'lamp'
  | 'speaker'
  | 'antenna'
  | 'rectifier'
  | 'ground lug'
  | 'splice'
  | 'board'
  | 'clip'
  | 'crystal'
  | 'other';

export interface ReferenceLetter {
  readonly letters: string;
  readonly kind: ReferredKind;
  readonly note?: string;
}

const row = (kind: ReferredKind, letters: string): readonly ReferenceLetter[] =>
  letters.split(' ').map((each) => ({ letters: each, kind }));

const socketOrCrystal: ReferenceLetter = {
  letters: 'X',
  kind: 'other',
  note: 'a socket in one set of data, a crystal in another'
};

export const referenceLetters: readonly ReferenceLetter[] = [
  ...row('tube', 'V XV'),
  ...row('picture tube', 'CRT'),
  ...row('transformer', 'T PT OT FBT HOT VOT IFT IF'),
  ...row('coil', 'L CH RFC'),
  ...row('yoke', 'DY'),
  ...row('resistor', 'R RT GLOBAR'),
  ...row('control', 'VR POT VC'),
  ...row('capacitor', 'C CT CV EC'),
  ...row('terminal strip', 'TS E TB TP'),
  ...row('plug', 'P PL'),
  ...row('jack', 'J SO'),
  ...row('switch', 'S SW K'),
  ...row('fuse', 'F FU FL'),
  ...row('lamp', 'I LP DS'),
  ...row('speaker', 'LS SP SPK'),
  ...row('antenna', 'ANT LA'),
  ...row('rectifier', 'CR D SR SE'),
  ...row('ground lug', 'GND GL G'),
  ...row('splice', 'SPL'),
  ...row('board', 'PB PCB BD'),
  ...row('crystal', 'Y XTAL'),
  socketOrCrystal,
  ...row('other', 'M W Z A B BT')
];

const byLetters: ReadonlyMap<string, ReferenceLetter> = new Map(
  referenceLetters.map((each) => [each.letters, each])
);

// Names that people write in place of a reference. The last noun of a name says what the part is: a
// "yoke plug" is a plug. A picture tube is one whatever else its name holds.
const pictureTube = /\b(picture tube|crt|kinescope|kine|pix tube)\b/i;
const names: readonly (readonly [RegExp, ReferredKind])[] = [
  [/\b(tube|damper)\b/i, 'tube'],
  [/\byoke\b/i, 'yoke'],
  [/\b(speaker|spkr|loudspeaker)\b/i, 'speaker'],
  [/\b(antenna|ant|loop)\b/i, 'antenna'],
  [/\b(flyback|transformer|xfmr|trans)\b/i, 'transformer'],
  [/\b(choke|coil|peaking)\b/i, 'coil'],
  [/\b(dial|pilot|panel) (lamp|light)\b|\blamp\b/i, 'lamp'],
  [/\b(fuse|fusible)\b/i, 'fuse'],
  [/\b(switch)\b/i, 'switch'],
  [/\b(control|pot|potentiometer|volume|contrast|brightness|hold)\b/i, 'control'],
  [/\b(line cord|power cord|plug|interlock)\b/i, 'plug'],
  [/\b(jack|socket|receptacle)\b/i, 'jack'],
  [/\b(terminal strip|tie strip|tie point|term strip|lug strip)\b/i, 'terminal strip'],
  [/\b(electrolytic|capacitor|condenser|filter can|cap can)\b/i, 'capacitor'],
  [/\b(resistor|globar|ballast)\b/i, 'resistor'],
  [/\b(rectifier|selenium|diode)\b/i, 'rectifier'],
  [/\bsplice\b/i, 'splice'],
  [/\b(board|pcb)\b/i, 'board'],
  [/\b(ground lug|ground)\b/i, 'ground lug']
];

/** The row for a reference such as "TS2" or "V10A": letters, then a number. The longest letters
 *  win, so that "TS2" is a terminal strip and no transformer. Null where nothing fits. */
export const findReferenceLetter = (reference: string): ReferenceLetter | null => {
  const letters = /^([A-Z]{1,6})[\s\-.]?\d{1,5}[A-Z]{0,2}$/.exec(
    reference.trim().toUpperCase().slice(0, 40)
  )?.[1];
  return letters === undefined ? null : (byLetters.get(letters) ?? null);
};

/** The kind of part that a reference or a plain name stands for; "other" where nothing tells. */
export const partKindOf = (reference: string): ReferredKind => {
  const byReference = findReferenceLetter(reference);
  if (byReference) return byReference.kind;
  const bare = byLetters.get(reference.trim().toUpperCase());
  if (bare && bare.letters.length > 1) return bare.kind;
  const text = reference.slice(0, 200);
  if (pictureTube.test(text)) return 'picture tube';
  let kind: ReferredKind = 'other';
  let end = 0;
  for (const [pattern, own] of names) {
    const match = pattern.exec(text);
    const reaches = match ? match.index + match[0].length : 0;
    if (reaches > end) {
      kind = own;
      end = reaches;
    }
  }
  return kind;
};
