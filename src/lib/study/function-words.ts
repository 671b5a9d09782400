// What people call a wire's function, read for what it says of the volts on it. Several roles may
// hold at once: "B+ to horizontal output" is a supply. Words decide only where nothing better does.

export type FunctionRole =
  | 'ground'
  | 'heater'
  | 'line'
  | 'supply'
  | 'minus supply'
  | 'screen'
  | 'cathode'
  | 'grid'
  | 'plate'
  | 'second anode'
  | 'sweep'
  | 'audio'
  | 'signal'
  | 'control';

/** A supply in the narrow sense; what only sounds like one is taken out again below. */
const supplyWords =
  /\bb\s?\+|\bb plus\b|\bh\.?t\.?(?![a-z])|\bboost(?:ed)?\b|\bsuppl(?:y|ies)\b|\brails?\b|^\+\s?\d/;
const notASupply =
  /\b(?:bass|treble|tone)\b|\bbias\b|\bagc\b|\bavc\b|\bac supply\b|\bac line\b|\bmains\b/;

const words: readonly (readonly [role: FunctionRole, pattern: RegExp])[] = [
  ['ground', /\bgrounds?\b|\bgrounded\b|\bgnd\b|\bchassis\b|\bearth\b|\bcommon return\b/],
  ['heater', /\bheaters?\b|\bhtrs?\b|\bfil(?:ament)?s?\b/],
  [
    'line',
    /\bmains\b|\bac line\b|\bline (?:ac|cord|switch|side|fuse|filter|voltage|plug)\b|^line\b|\bpower (?:line|cord)\b|\bpower(?: transformer)? primary\b|\b(?:hot|neutral) side\b/
  ],
  ['minus supply', /\bb\s?-(?![a-z0-9])|\bb minus\b/],
  ['screen', /\bscreens?\b|\bg2\b/],
  ['cathode', /\bcathodes?\b/],
  ['grid', /\bgrids?\b|\bg1\b/],
  ['plate', /\bplates?\b|\banodes?\b/],
  [
    'second anode',
    /\b(?:second|2nd) anode\b|\bultor\b|\bhv (?:lead|anode|cage|rectifier|filament|out|dc)\b|\be\.?h\.?t\b|\banode lead\b/
  ],
  [
    'sweep',
    /\byokes?\b|\bdeflection\b|\bflyback\b|\bdampers?\b|\bsweep\b|\bretrace\b|\bhor(?:iz(?:ontal)?)?\.? out(?:put)?\b|\bh\.?\s?o\.?\s?t\b|\bvert(?:ical)?\.? out(?:put)?\b|\bplate caps?\b|\bkeying\b|\bpulses?\b/
  ],
  [
    'audio',
    /\baudio\b|\bvolume\b|\bphono\b|\btone\b|\bspeakers?\b|\bvoice coil\b|\ba\.?f\.?(?![a-z])/
  ],
  ['control', /\bhold\b|\bheight\b|\bbrightness\b|\bcontrast\b|\bvertical (?:size|linearity)\b/],
  [
    'signal',
    /\bvideo\b|\bi\.?f\.?(?![a-z])|\br\.?f\.?(?![a-z])|\bantenna\b|\baerial\b|\bsync\b|\bsignal\b|\bagc\b|\bavc\b|\bosc(?:illator)?\b|\bdetector\b/
  ]
];

/** The roles that a function's text speaks of; none where the text says nothing that is known. */
export function readRoles(text: string): ReadonlySet<FunctionRole> {
  const plain = text.toLowerCase();
  const roles = new Set<FunctionRole>();
  for (const [role, pattern] of words) if (pattern.test(plain)) roles.add(role);
  if (supplyWords.test(plain) && !notASupply.test(plain) && !roles.has('heater')) {
    roles.add('supply');
  }
  return roles;
}

const none: ReadonlySet<FunctionRole> = new Set();

export type RoleReader = (text: string | undefined) => ReadonlySet<FunctionRole>;

/** A reader that remembers: a chassis has hundreds of wires and a few dozen functions. */
export function makeRoleReader(): RoleReader {
  const known = new Map<string, ReadonlySet<FunctionRole>>();
  return (text) => {
    if (text === undefined || text === '') return none;
    const before = known.get(text);
    if (before) return before;
    const roles = readRoles(text);
    known.set(text, roles);
    return roles;
  };
}
