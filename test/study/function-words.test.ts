// What people write as a wire's function, and what it says. Common practice, no source.
import { readRoles } from '#study/function-words.ts';
import { describe, expect, it } from 'vitest';

describe('the roles that words speak of', () => {
  it.each([
    ['B+ 285 V', 'supply'],
    ['boosted B+ to height control', 'supply'],
    ['rectifier filament, B+', 'heater'],
    ['heaters 6.3 V', 'heater'],
    ['fil.', 'heater'],
    ['ac line', 'line'],
    ['line', 'line'],
    ['power transformer primary', 'line'],
    ['B-', 'minus supply'],
    ['horizontal yoke', 'sweep'],
    ['H.O.T. primary', 'sweep'],
    ['horiz. output plate cap', 'sweep'],
    ['damper cathode', 'sweep'],
    ['second anode', 'second anode'],
    ['HV rectifier plate cap', 'second anode'],
    ['ground', 'ground'],
    ['AGC', 'signal'],
    ['2nd IF plate', 'plate'],
    ['voice coil', 'audio'],
    ['screen grid', 'screen'],
    ['G1', 'grid']
  ] as const)('%s: %s', (text, role) => {
    expect([...readRoles(text)]).toContain(role);
  });

  it.each([
    ['delay line', 'line'],
    ['twin line from antenna', 'line'],
    ['heater supply', 'supply'],
    ['bass boost', 'supply'],
    ['AC supply', 'supply'],
    ['bias supply', 'supply'],
    ['horizontal hold', 'sweep'],
    ['ultralinear tap', 'second anode'],
    ['left', 'supply']
  ] as const)('%s: not %s', (text, role) => {
    expect([...readRoles(text)]).not.toContain(role);
  });
});
