// What a tube's pins do: a closed list of roles, and the short notation that the table of tube
// types is written in ("8:k+su" is pin 8, cathode joined to the suppressor).

export const pinRoles = [
  'heater',
  'heater tap',
  'filament',
  'cathode',
  'control grid',
  'oscillator grid',
  'signal grid',
  'quadrature grid',
  'screen grid',
  'suppressor',
  'oscillator plate',
  'plate',
  'diode plate',
  'target',
  'focus',
  'second anode',
  'internal shield',
  'shell',
  'no connection',
  'internal connection'
] as const;
export type PinRole = (typeof pinRoles)[number];

export interface PinFunction {
  readonly pin: string;
  readonly role: PinRole;
  /** Other electrodes that are joined to the same pin inside the tube. */
  readonly also: readonly PinRole[];
  /** Which section of a tube with several: "1", "2", "triode", "pentode"; null where there is one. */
  readonly section: string | null;
}

const codes: Readonly<Record<string, PinRole>> = {
  h: 'heater',
  ht: 'heater tap',
  f: 'filament',
  k: 'cathode',
  g: 'control grid',
  og: 'oscillator grid',
  sg: 'signal grid',
  qg: 'quadrature grid',
  s: 'screen grid',
  su: 'suppressor',
  op: 'oscillator plate',
  p: 'plate',
  d: 'diode plate',
  t: 'target',
  fo: 'focus',
  a2: 'second anode',
  is: 'internal shield',
  sh: 'shell',
  nc: 'no connection',
  ic: 'internal connection'
};

const sections: Readonly<Record<string, string>> = { T: 'triode', P: 'pentode', D: 'diode' };

const roleOf = (code: string): PinRole => {
  const role = codes[code];
  if (!role) throw new RangeError(`no pin role is written ${JSON.stringify(code)}`);
  return role;
};

/** Reads the table's notation: pins parted by spaces, `pin:roles`, roles joined by `+`, and
 *  `/section` at the end. Pins that are left out are pins of which nothing is said. */
export const readPinNotation = (notation: string): readonly PinFunction[] =>
  notation
    .split(' ')
    .filter((entry) => entry !== '')
    .map((entry) => {
      const [pin = '', rest = ''] = entry.split(':');
      const [roles = '', section] = rest.split('/');
      const [role = '', ...also] = roles.split('+');
      return {
        pin,
        role: roleOf(role),
        also: also.map(roleOf),
        section: section === undefined ? null : (sections[section] ?? section)
      };
    });

/** A pin's function in words: "plate 1", "pentode cathode + suppressor", "heater". */
export const formatPinFunction = ({ role, also, section }: PinFunction): string => {
  const joined = [role, ...also].join(' + ');
  if (section === null) return joined;
  return /^\d+$/.test(section)
    ? [`${role} ${section}`, ...also].join(' + ')
    : `${section} ${joined}`;
};
