// The registry: which sums there are, what they take and give, and the shape of an answer.
import { describe, expect, test } from 'vitest';
import { aboutInput, findSum, runSum, runSumOn, SumError, sums } from '#physics/index.ts';

const carried = { dc: ['V', '0V'], ac: ['V', '0V'], pulse: ['V', '0V'] };
type Inputs = Record<string, readonly [unit: string, fallback?: string]>;

/** Inputs with their unit and, where they may be left out, what is then taken; results with units. */
const expectedSums: Record<string, { inputs: Inputs; results: Record<string, string> }> = {
  'wire-size': {
    inputs: { awg: ['AWG'] },
    results: { diameter: 'mm', area: 'mm2', circular_mils: 'cmil' }
  },
  'wire-resistance': {
    inputs: { awg: ['AWG'], length: ['m'], temperature: ['C', '20'], plating: ['', 'bare'] },
    results: { resistance: 'ohm', per_metre: 'ohm/m' }
  },
  'voltage-drop': {
    inputs: {
      awg: ['AWG'],
      length: ['m'],
      amps: ['A'],
      volts: ['V'],
      returns: ['', '2'],
      temperature: ['C', '20']
    },
    results: { drop: 'V', percent: '%', at_load: 'V' }
  },
  stress: { inputs: carried as unknown as Inputs, results: { stress: 'V' } },
  'insulation-class': {
    inputs: {
      ...(carried as unknown as Inputs),
      margin: ['', '1.25'],
      preferred: ['', '1.5']
    },
    results: { stress: 'V', required: 'V', preferred: 'V' }
  },
  ampacity: {
    inputs: {
      awg: ['AWG'],
      wires: ['', '1'],
      rating: ['C'],
      ambient: ['C'],
      basis: ['', 'cabinet']
    },
    results: { single: 'A', allowed: 'A' }
  },
  'bundle-share': { inputs: { wires: [''], loaded: ['', '100'] }, results: { share: '' } },
  bundle: {
    inputs: { diameters: ['mm'] },
    results: {
      packed: 'mm',
      estimate: 'mm',
      clamp_mm: 'mm',
      clamp_sixteenths: 'sixteenths of an inch',
      sleeve_mm: 'mm'
    }
  },
  'coax-line': {
    inputs: { outer: ['mm'], inner: ['mm'], er: [''] },
    results: { impedance: 'ohm', capacitance: 'pF/m', velocity: '' }
  },
  'twin-line': {
    inputs: { spacing: ['mm'], conductor: ['mm'], er: [''] },
    results: { impedance: 'ohm', capacitance: 'pF/m', velocity: '' }
  },
  mismatch: {
    inputs: { z1: ['ohm'], z2: ['ohm'] },
    results: { reflection: '', vswr: '', return_loss: 'dB', mismatch_loss: 'dB' }
  },
  'air-gap': {
    inputs: { peak: ['V'], field: [''], altitude: ['m', '0'], pollution: [''] },
    results: { clearance: 'mm', advice: 'mm' }
  },
  creepage: {
    inputs: { rms: ['V'], pollution: [''], group: [''] },
    results: { creepage: 'mm' }
  },
  'board-spacing': {
    inputs: { peak: ['V'], coating: ['', 'bare'] },
    results: { spacing: 'mm', advice: 'mm' }
  },
  discharge: {
    inputs: { capacitance: ['F'], resistance: ['ohm'], from: ['V'], to: ['V'] },
    results: { time: 's', energy: 'J', charge: 'C' }
  },
  'anode-resistor': {
    inputs: { supply: ['V'], resistance: ['ohm'], beam: ['A'] },
    results: { drop: 'V', fault_current: 'A', fault_power: 'W' }
  },
  'treble-corner': {
    inputs: { resistance: ['ohm'], capacitance: ['F'] },
    results: { corner: 'Hz' }
  },
  coupling: {
    inputs: {
      spacing: ['mm'],
      diameter: ['mm'],
      length: ['m'],
      er: ['', '1'],
      volts: ['V'],
      frequency: ['Hz'],
      impedance: ['ohm']
    },
    results: { capacitance: 'pF', pickup: 'V' }
  },
  fusing: {
    inputs: { awg: ['AWG'], seconds: ['s'], ambient: ['C', '25'] },
    results: { onderdonk: 'A', preece: 'A' }
  },
  'post-wrap': { inputs: { awg: ['AWG'], post: ['mm'] }, results: { turns: '', strip: 'mm' } },
  'bend-radius': {
    inputs: { diameter: ['mm'], kind: ['', 'wire'] },
    results: { minimum: 'mm', preferred: 'mm' }
  }
};

/** The examples of a sum's inputs, as somebody would type them. */
const exampleTexts = (id: string): Record<string, string> => {
  const { inputs } = findSum(id)!;
  return Object.fromEntries(
    Object.keys(inputs.shape).map((name) => [name, aboutInput(inputs, name).example])
  );
};

test('the registry holds these sums', () => {
  expect(sums.map((sum) => sum.id).sort()).toEqual(Object.keys(expectedSums).sort());
});

describe.each(Object.entries(expectedSums))('%s', (id, expected) => {
  const sum = findSum(id)!;

  test('takes its inputs, with their units', () => {
    expect(Object.keys(sum.inputs.shape).sort()).toEqual(Object.keys(expected.inputs).sort());
    for (const [name, [unit]] of Object.entries(expected.inputs)) {
      expect(aboutInput(sum.inputs, name).unit, name).toBe(unit);
    }
  });

  test('gives its results, with their units', () => {
    expect(sum.results).toEqual(expected.results);
    const { results } = runSum(id, exampleTexts(id));
    const units = Object.fromEntries(
      Object.entries(results).map(([name, { unit }]) => [name, unit])
    );
    expect(units).toEqual(expected.results);
  });

  test('fills in what may be left out, and asks for the rest', () => {
    const whole = exampleTexts(id);
    for (const [name, [, fallback]] of Object.entries(expected.inputs)) {
      const without = Object.fromEntries(Object.entries(whole).filter(([other]) => other !== name));
      if (fallback === undefined) {
        expect(() => runSum(id, without), name).toThrow(SumError);
        expect(() => runSum(id, without), name).toThrow(new RegExp(`^${name}: missing`));
      } else {
        expect(runSum(id, without)).toEqual(runSum(id, { ...without, [name]: fallback }));
      }
    }
  });

  test('says how it reckons, on what basis and by which source', () => {
    const answer = runSum(id, exampleTexts(id));
    expect(Object.keys(answer)).toEqual(['id', 'inputs', 'results', 'formula', 'basis', 'source']);
    for (const text of [answer.formula, answer.basis, answer.source]) {
      expect(text.length).toBeGreaterThan(5);
    }
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    expect(runSumOn(id, answer.inputs)).toEqual(answer);
  });
});

describe('inputs as people write them', () => {
  test('units are read and turned into those of the sum', () => {
    const answer = runSum('wire-resistance', { awg: '22awg', length: '10ft', plating: 'Tinned' });
    expect(answer.inputs).toEqual({ awg: 22, length: 3.048, temperature: 20, plating: 'tinned' });
    expect(
      runSum('discharge', { capacitance: '100uF', resistance: '100k', from: '350V', to: '60' })
        .inputs
    ).toEqual({ capacitance: 1e-4, resistance: 1e5, from: 350, to: 60 });
    expect(runSum('bundle', { diameters: '3/16in, 2x1.6mm' }).inputs).toEqual({
      diameters: [4.7625, 1.6, 1.6]
    });
    expect(runSum('bundle', { diameters: '1,6; 2,4' }).inputs).toEqual({ diameters: [1.6, 2.4] });
    expect(runSum('bundle', { diameters: '1.6, 2.4 in' }).inputs).toEqual({
      diameters: [40.64, 60.96]
    });
    expect(runSum('post-wrap', { awg: '30', post: '.025in' }).inputs).toEqual({
      awg: 30,
      post: [0.635, 0.635]
    });
  });

  test.each([
    ['nope', {}, /unknown sum.*wire-size/],
    ['wire-size', { awg: '22', x: '1' }, /x: unknown input/],
    ['wire-size', { awg: '22', constructor: '1' }, /constructor: unknown input/],
    ['wire-size', { awg: ' ' }, /awg: missing/],
    ['wire-size', { awg: '55' }, /awg: unreadable.*-3 to 50 AWG/],
    ['wire-size', { awg: '22 V' }, /awg: unreadable/],
    ['wire-resistance', { awg: '22', length: '5 V' }, /length: unreadable.*no unit of length/],
    ['wire-resistance', { awg: '22', length: '-1' }, /length: out of range.*-1 m.*0 to 100000 m/],
    ['wire-resistance', { awg: '45', length: '1', plating: 'tinned' }, /outside the table/],
    ['wire-resistance', { awg: '22', length: '1', plating: 'gold' }, /bare, tinned/],
    ['stress', { dc: '6.3VAC' }, /dc: unreadable.*says ac/],
    ['insulation-class', { dc: '35kV' }, /43\.75 kV.*to 40 kV/],
    ['voltage-drop', { awg: '30', length: '1km', amps: '5', volts: '6.3' }, /amps: out of range/],
    ['ampacity', { awg: '22', rating: '80', ambient: '80' }, /rating: out of range/],
    ['ampacity', { awg: '26', rating: '80', ambient: '50' }, /700 cmil/],
    ['coax-line', { outer: '1', inner: '2', er: '1' }, /outer: out of range/],
    ['twin-line', { spacing: '1', conductor: '1', er: '1' }, /spacing: out of range/],
    ['air-gap', { peak: '101kV', field: 'homogeneous', pollution: '2' }, /peak: out of range/],
    ['air-gap', { peak: '1kV', field: 'homogeneous', pollution: '4' }, /pollution: out of range/],
    ['creepage', { rms: '3kV', pollution: '3', group: 'I' }, /outside the table.*2000 V/],
    ['discharge', { capacitance: '1uF', resistance: '0', from: '9', to: '1' }, /as charged/],
    [
      'discharge',
      { capacitance: '1uF', resistance: '1k', from: '9', to: '10' },
      /to: out of range/
    ],
    ['anode-resistor', { supply: '1kV', resistance: '1MEG', beam: '2mA' }, /beam: out of range/],
    ['fusing', { awg: '22', seconds: '11' }, /seconds: out of range/],
    ['post-wrap', { awg: '21', post: '1x1' }, /awg: outside the table/],
    ['post-wrap', { awg: '22', post: '1x1x1' }, /post: out of range/],
    ['bundle', { diameters: '1,,2' }, /diameters: unreadable/],
    ['bundle', { diameters: '0x2' }, /diameters: out of range/]
  ] as const)('%s %j is refused', (id, texts, message) => {
    expect(() => runSum(id, texts)).toThrow(SumError);
    expect(() => runSum(id, texts)).toThrow(message);
  });
});

describe('what has no value is left out, and the basis says why', () => {
  test('nothing comes back from a match', () => {
    const { results, basis } = runSum('mismatch', { z1: '75', z2: '75' });
    expect(results).not.toHaveProperty('return_loss');
    expect(basis).toMatch(/nothing comes back/);
  });
  test('no class is preferred beyond the ladder', () => {
    const { results, basis } = runSum('insulation-class', { dc: '30kV' });
    expect(results.required).toEqual({ value: 40_000, unit: 'V' });
    expect(results).not.toHaveProperty('preferred');
    expect(basis).toMatch(/45 kV is beyond/);
  });
  test('no sleeve', () => {
    const { results, basis } = runSum('bundle', { diameters: '0.3' });
    expect(results).not.toHaveProperty('sleeve_mm');
    expect(basis).toMatch(/No listed sleeve/);
  });
});

describe('no false safety', () => {
  test('above 1.5 kV a gap is advice and never a pass', () => {
    const { results, basis } = runSum('air-gap', {
      peak: '18kV',
      field: 'inhomogeneous',
      pollution: '2'
    });
    expect(results.advice!.value).toBeGreaterThan(results.clearance!.value);
    expect(basis).toMatch(/never a pass/);
  });
  test('no basis or title calls anything safe', () => {
    for (const sum of sums) {
      const { basis, formula } = runSum(sum.id, exampleTexts(sum.id));
      expect(`${sum.title} ${basis} ${formula}`).not.toMatch(/\bsafe\b/i);
    }
  });
});
