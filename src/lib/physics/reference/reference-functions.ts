// Functions that reference rows call where no bench sum shows the figure of the source by itself:
// a factor inside a sum, a table in other units, a yes or no.
import type { Dimension } from '#quantity/index.ts';
import { ampacity } from '../ampacity.ts';
import { bundleShare } from '../bundle-derating.ts';
import { sleeveOver } from '../bundle.ts';
import { ohmPerMetre, temperatureFactor, tinnedFactor, wireDiameterMm } from '../conductor.ts';
import { touchLimit } from '../discharge.ts';
import { onderdonkAmpsOf, preeceAmpsOf } from '../fusing.ts';
import { coaxLine } from '../line.ts';
import { solveNetwork } from '../network/index.ts';

export interface ReferenceFunction {
  /** What it shows, for people. */
  readonly title: string;
  /** The bench sum that it is a part of. */
  readonly sum: string;
  /** Of the figure; empty where there is none. */
  readonly unit: string;
  readonly inputs: Readonly<Record<string, Dimension>>;
  /** The figure, from inputs in the base units of their kinds. Errors: those of the sum. */
  readonly run: (input: (name: string) => number) => number;
}

const mmPerMil = 0.0254;
const metresPer1000Ft = 304.8;
const metresPerFt = 0.3048;

export const referenceFunctions: Readonly<Record<string, ReferenceFunction>> = {
  diameterMil: {
    title: 'Diameter in mils',
    sum: 'wire-size',
    unit: 'mil',
    inputs: { awg: 'gauge' },
    run: (input) => wireDiameterMm(input('awg')) / mmPerMil
  },
  temperatureFactor: {
    title: 'Resistance over that at 20 C',
    sum: 'wire-resistance',
    unit: '',
    inputs: { temperature: 'temperature' },
    run: (input) => temperatureFactor(input('temperature'))
  },
  tinnedFactor: {
    title: 'Resistance of tinned over bare copper',
    sum: 'wire-resistance',
    unit: '',
    inputs: { diameter: 'length' },
    run: (input) => tinnedFactor(input('diameter'))
  },
  strandedOhmPer1000Ft: {
    title: 'Resistance of stranded wire',
    sum: 'wire-resistance',
    unit: 'ohm/1000 ft',
    inputs: { strands: 'number', strand: 'gauge' },
    run: (input) => {
      const stranding = { strands: input('strands'), strandAwg: input('strand') };
      return ohmPerMetre({ awg: stranding.strandAwg, stranding }) * metresPer1000Ft;
    }
  },
  coaxPfPerFt: {
    title: 'Capacitance of coax',
    sum: 'coax-line',
    unit: 'pF/ft',
    inputs: { outer: 'length', inner: 'length', er: 'number' },
    run: (input) => {
      const sizes = { outerMm: input('outer'), innerMm: input('inner'), er: input('er') };
      return coaxLine(sizes).capacitancePfPerM * metresPerFt;
    }
  },
  stringVolts: {
    title: 'Volts along a string of four resistances',
    sum: 'voltage-drop',
    unit: 'V',
    inputs: {
      supply: 'voltage',
      r1: 'resistance',
      r2: 'resistance',
      r3: 'resistance',
      r4: 'resistance',
      after: 'number'
    },
    run: (input) => {
      const nodes = ['line', 'n1', 'n2', 'n3', 'chassis'];
      const ohms = ['r1', 'r2', 'r3', 'r4'].map(input);
      const solution = solveNetwork({
        reference: ['chassis'],
        branches: [
          { id: 'E', kind: 'source', from: 'chassis', to: 'line', volts: input('supply'), ohms: 0 },
          ...ohms.map((each, n) => ({
            id: `R${n + 1}`,
            kind: 'resistance' as const,
            from: nodes[n] ?? '',
            to: nodes[n + 1] ?? '',
            ohms: each
          }))
        ]
      });
      return solution.volts.get(nodes[input('after')] ?? '') ?? NaN;
    }
  },
  preeceAmpsOf: {
    title: 'Melting current after Preece, by diameter',
    sum: 'fusing',
    unit: 'A',
    inputs: { diameter: 'length' },
    run: (input) => preeceAmpsOf(input('diameter'))
  },
  onderdonkAmpsOf: {
    title: 'Melting current after Onderdonk, by area',
    sum: 'fusing',
    unit: 'A',
    inputs: { circular_mils: 'number', seconds: 'time' },
    run: (input) =>
      onderdonkAmpsOf({ circularMils: input('circular_mils'), seconds: input('seconds') })
  },
  bundleShare: {
    title: 'Share that is left in a bundle',
    sum: 'ampacity',
    unit: '',
    inputs: { wires: 'number' },
    run: (input) => bundleShare(input('wires'))
  },
  bundledTableAmps: {
    title: "The table's own bundled figure, which the sum undoes",
    sum: 'ampacity',
    unit: 'A',
    inputs: { awg: 'gauge', rating: 'temperature', ambient: 'temperature' },
    run: (input) => {
      const { singleA } = ampacity({
        awg: input('awg'),
        ratingC: input('rating'),
        ambientC: input('ambient')
      });
      return singleA * 0.615;
    }
  },
  sleeveOver: {
    title: 'Sleeve over a bundle, supplied size',
    sum: 'bundle',
    unit: 'mm',
    inputs: { outside: 'length' },
    run: (input) => sleeveOver(input('outside')) ?? 0
  },
  isOverTouchLimit: {
    title: 'Over the limit for parts that may be touched: 1 for yes, 0 for no',
    sum: 'discharge',
    unit: '',
    inputs: { capacitance: 'capacitance', volts: 'voltage' },
    run: (input) => (touchLimit(input('capacitance'), input('volts')).isOver ? 1 : 0)
  }
};
