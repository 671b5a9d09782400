// The table behind the tube types, one row a type. `pins` is written as pin-functions.ts reads it.
// A row without `pinSource` has its pins from memory, one without `heaterSource` its heater; rows
// that give the heater's pins alone say nothing of the others.
import type { BaseId } from './tube-bases.ts';

export interface TubeRow {
  readonly name: string;
  readonly what: string;
  readonly base: BaseId;
  readonly code?: string;
  readonly codeVerified?: boolean;
  /** Volts, amperes. */
  readonly heater: readonly [number, number] | null;
  readonly heaterPins: string;
  readonly heaterTap?: readonly [string, number];
  readonly isFilament?: boolean;
  readonly heaterSource?: string;
  readonly pins: string;
  readonly cap?: string;
  readonly pinSource?: string;
  readonly heaterCathodeV?: number;
  readonly aliases?: readonly string[];
}

export const tubeRows: readonly TubeRow[] = [
  {
    name: '6CG7',
    what: 'twin triode',
    base: 'noval',
    code: '9AJ',
    heater: [6.3, 0.6],
    heaterPins: '4 5',
    heaterSource: '6CG7 data sheet',
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:is',
    pinSource: '6CG7 data sheet',
    heaterCathodeV: 200,
    aliases: ['6FQ7']
  },
  {
    name: '8CG7',
    what: 'twin triode, 450 mA string',
    base: 'noval',
    code: '9AJ',
    heater: [8.4, 0.45],
    heaterPins: '4 5',
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:is',
    aliases: ['8FQ7']
  },
  {
    name: '6SN7GTB',
    what: 'twin triode',
    base: 'octal',
    code: '8BD',
    heater: [6.3, 0.6],
    heaterPins: '7 8',
    heaterSource: '6SN7GTB data sheet',
    pins: '1:g/2 2:p/2 3:k/2 4:g/1 5:p/1 6:k/1 7:h 8:h',
    pinSource: '6SN7GTB data sheet'
  },
  {
    name: '12SN7GT',
    what: 'twin triode',
    base: 'octal',
    code: '8BD',
    heater: [12.6, 0.3],
    heaterPins: '7 8',
    pins: '1:g/2 2:p/2 3:k/2 4:g/1 5:p/1 6:k/1 7:h 8:h'
  },
  {
    name: '6SL7GT',
    what: 'twin triode, high mu',
    base: 'octal',
    code: '8BD',
    heater: [6.3, 0.3],
    heaterPins: '7 8',
    pins: '1:g/2 2:p/2 3:k/2 4:g/1 5:p/1 6:k/1 7:h 8:h'
  },
  {
    name: '6BL7GT',
    what: 'twin triode, vertical output',
    base: 'octal',
    code: '8BD',
    heater: [6.3, 1.5],
    heaterPins: '7 8',
    pins: '1:g/2 2:p/2 3:k/2 4:g/1 5:p/1 6:k/1 7:h 8:h'
  },
  {
    name: '6BX7GT',
    what: 'twin triode, vertical output',
    base: 'octal',
    code: '8BD',
    heater: [6.3, 1.5],
    heaterPins: '7 8',
    pins: '1:g/2 2:p/2 3:k/2 4:g/1 5:p/1 6:k/1 7:h 8:h'
  },
  {
    name: '12AX7A',
    what: 'twin triode, high mu',
    base: 'noval',
    code: '9A',
    heater: [12.6, 0.15],
    heaterPins: '4 5',
    heaterTap: ['9', 6.3],
    heaterSource: '12AX7 data sheet',
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:ht',
    pinSource: '12AX7 data sheet',
    heaterCathodeV: 180,
    aliases: ['ECC83', '7025']
  },
  {
    name: '12AU7A',
    what: 'twin triode, medium mu',
    base: 'noval',
    code: '9A',
    heater: [12.6, 0.15],
    heaterPins: '4 5',
    heaterTap: ['9', 6.3],
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:ht',
    pinSource: 'published list of tube connections, as ECC82',
    heaterCathodeV: 180,
    aliases: ['ECC82']
  },
  {
    name: '12AT7',
    what: 'twin triode, high frequency',
    base: 'noval',
    code: '9A',
    heater: [12.6, 0.15],
    heaterPins: '4 5',
    heaterTap: ['9', 6.3],
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:ht',
    pinSource: 'published list of tube connections, as ECC81',
    heaterCathodeV: 90,
    aliases: ['ECC81']
  },
  {
    name: '12BH7A',
    what: 'twin triode',
    base: 'noval',
    code: '9A',
    heater: [12.6, 0.3],
    heaterPins: '4 5',
    heaterTap: ['9', 6.3],
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:ht'
  },
  {
    name: '6BQ7A',
    what: 'twin triode, tuner',
    base: 'noval',
    code: '9AJ',
    heater: [6.3, 0.4],
    heaterPins: '4 5',
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:is'
  },
  {
    name: '6BK7A',
    what: 'twin triode, tuner',
    base: 'noval',
    code: '9AJ',
    heater: [6.3, 0.45],
    heaterPins: '4 5',
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:is'
  },
  {
    name: '6BZ7',
    what: 'twin triode, tuner',
    base: 'noval',
    code: '9AJ',
    heater: [6.3, 0.4],
    heaterPins: '4 5',
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:is'
  },
  {
    name: '6BC8',
    what: 'twin triode, tuner',
    base: 'noval',
    code: '9AJ',
    heater: [6.3, 0.4],
    heaterPins: '4 5',
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:is'
  },
  {
    name: '4BQ7A',
    what: 'twin triode, tuner, 600 mA string',
    base: 'noval',
    code: '9AJ',
    heater: [4.2, 0.6],
    heaterPins: '4 5',
    pins: '1:p/2 2:g/2 3:k/2 4:h 5:h 6:p/1 7:g/1 8:k/1 9:is'
  },
  {
    name: '6J6',
    what: 'twin triode, common cathode',
    base: '7-pin miniature',
    code: '7BF',
    heater: [6.3, 0.45],
    heaterPins: '3 4',
    pins: '1:p/2 2:p/1 3:h 4:h 5:g/1 6:g/2 7:k',
    aliases: ['ECC91']
  },
  {
    name: '5J6',
    what: 'twin triode, 600 mA string',
    base: '7-pin miniature',
    code: '7BF',
    heater: [4.7, 0.6],
    heaterPins: '3 4',
    pins: '1:p/2 2:p/1 3:h 4:h 5:g/1 6:g/2 7:k'
  },
  {
    name: '6C4',
    what: 'triode',
    base: '7-pin miniature',
    code: '6BG',
    heater: [6.3, 0.15],
    heaterPins: '3 4',
    pins: '1:p 2:ic 3:h 4:h 5:p 6:g 7:k',
    aliases: ['EC90']
  },
  {
    name: '6CB6A',
    what: 'pentode, IF',
    base: '7-pin miniature',
    code: '7CM',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:k 3:h 4:h 5:p 6:s 7:su+is'
  },
  {
    name: '6BZ6',
    what: 'pentode, IF',
    base: '7-pin miniature',
    code: '7CM',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:k 3:h 4:h 5:p 6:s 7:su+is'
  },
  {
    name: '6DK6',
    what: 'pentode, IF',
    base: '7-pin miniature',
    code: '7CM',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:k 3:h 4:h 5:p 6:s 7:su+is'
  },
  {
    name: '6CF6',
    what: 'pentode, IF',
    base: '7-pin miniature',
    code: '7CM',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:k 3:h 4:h 5:p 6:s 7:su+is'
  },
  {
    name: '6DE6',
    what: 'pentode, IF',
    base: '7-pin miniature',
    code: '7CM',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:k 3:h 4:h 5:p 6:s 7:su+is'
  },
  {
    name: '6BH6',
    what: 'pentode, IF',
    base: '7-pin miniature',
    code: '7CM',
    heater: [6.3, 0.15],
    heaterPins: '3 4',
    pins: '1:g 2:k 3:h 4:h 5:p 6:s 7:su+is'
  },
  {
    name: '3CB6',
    what: 'pentode, IF, 600 mA string',
    base: '7-pin miniature',
    code: '7CM',
    heater: [3.15, 0.6],
    heaterPins: '3 4',
    pins: '1:g 2:k 3:h 4:h 5:p 6:s 7:su+is'
  },
  {
    name: '3BZ6',
    what: 'pentode, IF, 600 mA string',
    base: '7-pin miniature',
    code: '7CM',
    heater: [3.15, 0.6],
    heaterPins: '3 4',
    pins: '1:g 2:k 3:h 4:h 5:p 6:s 7:su+is'
  },
  {
    name: '6AU6A',
    what: 'pentode',
    base: '7-pin miniature',
    code: '7BK',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:su+is 3:h 4:h 5:p 6:s 7:k',
    aliases: ['EF94']
  },
  {
    name: '3AU6',
    what: 'pentode, 600 mA string',
    base: '7-pin miniature',
    code: '7BK',
    heater: [3.15, 0.6],
    heaterPins: '3 4',
    pins: '1:g 2:su+is 3:h 4:h 5:p 6:s 7:k'
  },
  {
    name: '6BA6',
    what: 'pentode, remote cut-off',
    base: '7-pin miniature',
    code: '7BK',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:su+is 3:h 4:h 5:p 6:s 7:k',
    aliases: ['EF93']
  },
  {
    name: '6AH6',
    what: 'pentode, video',
    base: '7-pin miniature',
    code: '7BK',
    heater: [6.3, 0.45],
    heaterPins: '3 4',
    pins: '1:g 2:su+is 3:h 4:h 5:p 6:s 7:k'
  },
  {
    name: '6AG5',
    what: 'pentode, high frequency',
    base: '7-pin miniature',
    code: '7BD',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:k+su 3:h 4:h 5:p 6:s 7:k+su'
  },
  {
    name: '6BC5',
    what: 'pentode, high frequency',
    base: '7-pin miniature',
    code: '7BD',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:k+su 3:h 4:h 5:p 6:s 7:k+su'
  },
  {
    name: '6AK5',
    what: 'pentode, high frequency',
    base: '7-pin miniature',
    code: '7BD',
    heater: [6.3, 0.175],
    heaterPins: '3 4',
    pins: '1:g 2:k+su 3:h 4:h 5:p 6:s 7:k+su',
    aliases: ['EF95']
  },
  {
    name: '6DT6',
    what: 'pentode, FM detector',
    base: '7-pin miniature',
    code: '7EN',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:k 3:h 4:h 5:p 6:s 7:qg'
  },
  {
    name: '6BN6',
    what: 'gated-beam tube',
    base: '7-pin miniature',
    code: '7DF',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:k+is 2:g 3:h 4:h 5:s 6:qg 7:p'
  },
  {
    name: '6BY6',
    what: 'pentagrid, sync separator',
    base: '7-pin miniature',
    code: '7CH',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g 2:k+su 3:h 4:h 5:p 6:s 7:sg'
  },
  {
    name: '6AL5',
    what: 'twin diode',
    base: '7-pin miniature',
    code: '6BT',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:k/1 2:d/2 3:h 4:h 5:k/2 6:is 7:d/1',
    pinSource: 'published list of tube connections, as EB91',
    aliases: ['EB91', 'EAA91']
  },
  {
    name: '3AL5',
    what: 'twin diode, 600 mA string',
    base: '7-pin miniature',
    code: '6BT',
    heater: [3.15, 0.6],
    heaterPins: '3 4',
    pins: '1:k/1 2:d/2 3:h 4:h 5:k/2 6:is 7:d/1'
  },
  {
    name: '12AL5',
    what: 'twin diode',
    base: '7-pin miniature',
    code: '6BT',
    heater: [12.6, 0.15],
    heaterPins: '3 4',
    pins: '1:k/1 2:d/2 3:h 4:h 5:k/2 6:is 7:d/1'
  },
  {
    name: '6AQ5A',
    what: 'beam power tube',
    base: '7-pin miniature',
    code: '7BZ',
    heater: [6.3, 0.45],
    heaterPins: '3 4',
    pins: '1:g 2:k+su 3:h 4:h 5:p 6:s 7:g',
    aliases: ['EL90']
  },
  {
    name: '5AQ5',
    what: 'beam power tube, 600 mA string',
    base: '7-pin miniature',
    code: '7BZ',
    heater: [4.7, 0.6],
    heaterPins: '3 4',
    pins: '1:g 2:k+su 3:h 4:h 5:p 6:s 7:g'
  },
  {
    name: '12AQ5',
    what: 'beam power tube',
    base: '7-pin miniature',
    code: '7BZ',
    heater: [12.6, 0.225],
    heaterPins: '3 4',
    pins: '1:g 2:k+su 3:h 4:h 5:p 6:s 7:g'
  },
  {
    name: '6U8A',
    what: 'triode-pentode',
    base: 'noval',
    code: '9AE',
    heater: [6.3, 0.45],
    heaterPins: '4 5',
    pins: '1:p/T 2:g/P 3:s/P 4:h 5:h 6:p/P 7:k+su/P 8:k/T 9:g/T',
    aliases: ['ECF82']
  },
  {
    name: '5U8',
    what: 'triode-pentode, 600 mA string',
    base: 'noval',
    code: '9AE',
    heater: [4.7, 0.6],
    heaterPins: '4 5',
    pins: '1:p/T 2:g/P 3:s/P 4:h 5:h 6:p/P 7:k+su/P 8:k/T 9:g/T'
  },
  {
    name: '6EA8',
    what: 'triode-pentode',
    base: 'noval',
    code: '9AE',
    heater: [6.3, 0.45],
    heaterPins: '4 5',
    pins: '1:p/T 2:g/P 3:s/P 4:h 5:h 6:p/P 7:k+su/P 8:k/T 9:g/T'
  },
  {
    name: '6AW8A',
    what: 'triode-pentode, video',
    base: 'noval',
    code: '9DX',
    heater: [6.3, 0.6],
    heaterPins: '4 5',
    pins: '1:k/T 2:g/T 3:p/T 4:h 5:h 6:k+su+is/P 7:g/P 8:s/P 9:p/P'
  },
  {
    name: '8AW8A',
    what: 'triode-pentode, video, 450 mA string',
    base: 'noval',
    code: '9DX',
    heater: [8.4, 0.45],
    heaterPins: '4 5',
    pins: '1:k/T 2:g/T 3:p/T 4:h 5:h 6:k+su+is/P 7:g/P 8:s/P 9:p/P'
  },
  {
    name: '6AN8A',
    what: 'triode-pentode',
    base: 'noval',
    code: '9DA',
    heater: [6.3, 0.45],
    heaterPins: '4 5',
    pins: '1:p/T 2:g/T 3:k/T 4:h 5:h 6:p/P 7:s/P 8:g/P 9:k+su+is/P'
  },
  {
    name: '6BM8',
    what: 'triode-pentode, audio or vertical',
    base: 'noval',
    code: '9EX',
    heater: [6.3, 0.78],
    heaterPins: '4 5',
    pins: '1:g/T 2:k/P 3:g/P 4:h 5:h 6:p/P 7:s/P 8:k/T 9:p/T',
    pinSource: '6BM8 data sheet',
    aliases: ['ECL82']
  },
  {
    name: '6BQ5',
    what: 'power pentode',
    base: 'noval',
    code: '9CV',
    heater: [6.3, 0.76],
    heaterPins: '4 5',
    pins: '2:g 3:k+su 4:h 5:h 7:p 9:s',
    aliases: ['EL84']
  },
  {
    name: '12BY7A',
    what: 'pentode, video output',
    base: 'noval',
    code: '9BF',
    heater: [12.6, 0.3],
    heaterPins: '4 5',
    heaterTap: ['6', 6.3],
    pins: '1:k 2:g 3:su+is 4:h 5:h 6:ht 7:p 8:s 9:su+is'
  },
  {
    name: '6CG8A',
    what: 'triode-pentode, mixer',
    base: 'noval',
    code: '9GF',
    heater: [6.3, 0.45],
    heaterPins: '4 5',
    pins: '4:h 5:h'
  },
  {
    name: '6X8',
    what: 'triode-pentode, mixer',
    base: 'noval',
    code: '9AK',
    heater: [6.3, 0.45],
    heaterPins: '4 5',
    pins: '4:h 5:h'
  },
  {
    name: '6T8',
    what: 'triple diode-triode',
    base: 'noval',
    code: '9E',
    heater: [6.3, 0.45],
    heaterPins: '4 5',
    pins: '4:h 5:h'
  },
  {
    name: '6CM7',
    what: 'twin triode, vertical',
    base: 'noval',
    code: '9ES',
    heater: [6.3, 0.6],
    heaterPins: '4 5',
    pins: '4:h 5:h'
  },
  {
    name: '6DR7',
    what: 'twin triode, vertical',
    base: 'noval',
    code: '9HF',
    heater: [6.3, 0.9],
    heaterPins: '4 5',
    pins: '4:h 5:h'
  },
  {
    name: '6EM5',
    what: 'beam power tube, vertical',
    base: 'noval',
    code: '9HN',
    heater: [6.3, 0.8],
    heaterPins: '4 5',
    pins: '4:h 5:h'
  },
  {
    name: '6S4A',
    what: 'triode, vertical output',
    base: 'noval',
    code: '9AC',
    heater: [6.3, 0.6],
    heaterPins: '4 5',
    pins: '4:h 5:h'
  },
  {
    name: '6AC7',
    what: 'pentode, video',
    base: 'octal',
    code: '8N',
    heater: [6.3, 0.45],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:su 4:g 5:k 6:s 7:h 8:p'
  },
  {
    name: '6BQ6GTB',
    what: 'beam power tube, horizontal output',
    base: 'octal',
    code: '6AM',
    heater: [6.3, 1.2],
    heaterPins: '2 7',
    heaterSource: 'published description of the 6BQ6GTB',
    pins: '2:h 4:s 5:g 7:h 8:k+su',
    cap: 'p'
  },
  {
    name: '12BQ6GTB',
    what: 'beam power tube, horizontal output',
    base: 'octal',
    code: '6AM',
    heater: [12.6, 0.6],
    heaterPins: '2 7',
    pins: '2:h 4:s 5:g 7:h 8:k+su',
    cap: 'p'
  },
  {
    name: '25BQ6GTB',
    what: 'beam power tube, horizontal output',
    base: 'octal',
    code: '6AM',
    heater: [25, 0.3],
    heaterPins: '2 7',
    pins: '2:h 4:s 5:g 7:h 8:k+su',
    cap: 'p'
  },
  {
    name: '6DQ6B',
    what: 'beam power tube, horizontal output',
    base: 'octal',
    code: '6AM',
    heater: [6.3, 1.2],
    heaterPins: '2 7',
    pins: '2:h 4:s 5:g 7:h 8:k+su',
    cap: 'p'
  },
  {
    name: '12DQ6B',
    what: 'beam power tube, horizontal output',
    base: 'octal',
    code: '6AM',
    heater: [12.6, 0.6],
    heaterPins: '2 7',
    pins: '2:h 4:s 5:g 7:h 8:k+su',
    cap: 'p'
  },
  {
    name: '6CD6GA',
    what: 'beam power tube, horizontal output',
    base: 'octal',
    code: '5BT',
    heater: [6.3, 2.5],
    heaterPins: '2 7',
    pins: '2:h 3:k+su 5:g 7:h 8:s',
    cap: 'p'
  },
  {
    name: '6BG6G',
    what: 'beam power tube, horizontal output',
    base: 'octal',
    code: '5BT',
    heater: [6.3, 0.9],
    heaterPins: '2 7',
    pins: '2:h 3:k+su 5:g 7:h 8:s',
    cap: 'p'
  },
  {
    name: '6W6GT',
    what: 'beam power tube, vertical output',
    base: 'octal',
    code: '7AC',
    heater: [6.3, 1.2],
    heaterPins: '2 7',
    pins: '2:h 3:p 4:s 5:g 7:h 8:k+su'
  },
  {
    name: '12W6GT',
    what: 'beam power tube, vertical output',
    base: 'octal',
    code: '7AC',
    heater: [12.6, 0.6],
    heaterPins: '2 7',
    pins: '2:h 3:p 4:s 5:g 7:h 8:k+su'
  },
  {
    name: '6AX4GT',
    what: 'damper diode',
    base: 'octal',
    code: '4CG',
    heater: [6.3, 1.2],
    heaterPins: '7 8',
    heaterSource: 'published description of the 6AU4 and its kin',
    pins: '3:k 5:p 7:h 8:h'
  },
  {
    name: '12AX4GTB',
    what: 'damper diode',
    base: 'octal',
    code: '4CG',
    heater: [12.6, 0.6],
    heaterPins: '7 8',
    pins: '3:k 5:p 7:h 8:h'
  },
  {
    name: '6AU4GTA',
    what: 'damper diode',
    base: 'octal',
    code: '4CG',
    heater: [6.3, 1.8],
    heaterPins: '7 8',
    heaterSource: 'published description of the 6AU4 and its kin',
    pins: '3:k 5:p 7:h 8:h'
  },
  {
    name: '6DE4',
    what: 'damper diode',
    base: 'octal',
    code: '4CG',
    heater: [6.3, 1.6],
    heaterPins: '7 8',
    pins: '3:k 5:p 7:h 8:h'
  },
  {
    name: '6DA4A',
    what: 'damper diode',
    base: 'octal',
    code: '4CG',
    heater: [6.3, 1.2],
    heaterPins: '7 8',
    pins: '3:k 5:p 7:h 8:h'
  },
  {
    name: '6W4GT',
    what: 'damper diode',
    base: 'octal',
    code: '4CG',
    heater: [6.3, 1.2],
    heaterPins: '7 8',
    pins: '3:k 5:p 7:h 8:h'
  },
  {
    name: '6BE3',
    what: 'damper diode',
    base: 'duodecar',
    code: '12BL',
    codeVerified: true,
    heater: [6.3, 1.2],
    heaterPins: '1 12',
    pins: '1:h 4:p 7:k 10:p 12:h',
    pinSource: 'published data on the 6BE3',
    heaterCathodeV: 900
  },
  {
    name: '1B3GT',
    what: 'high-voltage rectifier',
    base: 'octal',
    code: '3C',
    heater: [1.25, 0.2],
    heaterPins: '2 7',
    isFilament: true,
    pins: '2:f 7:f',
    cap: 'p'
  },
  {
    name: '1G3GT',
    what: 'high-voltage rectifier',
    base: 'octal',
    code: '3C',
    heater: [1.25, 0.2],
    heaterPins: '2 7',
    isFilament: true,
    pins: '2:f 7:f',
    cap: 'p'
  },
  {
    name: '1K3',
    what: 'high-voltage rectifier',
    base: 'octal',
    code: '3C',
    heater: [1.25, 0.2],
    heaterPins: '2 7',
    isFilament: true,
    pins: '2:f 7:f',
    cap: 'p'
  },
  {
    name: '5U4GB',
    what: 'rectifier, full wave',
    base: 'octal',
    code: '5T',
    heater: [5, 3],
    heaterPins: '2 8',
    isFilament: true,
    pins: '2:f 4:p/1 6:p/2 8:f'
  },
  {
    name: '5Y3GT',
    what: 'rectifier, full wave',
    base: 'octal',
    code: '5T',
    heater: [5, 2],
    heaterPins: '2 8',
    isFilament: true,
    pins: '2:f 4:p/1 6:p/2 8:f'
  },
  {
    name: '5V4G',
    what: 'rectifier, full wave',
    base: 'octal',
    code: '5L',
    heater: [5, 2],
    heaterPins: '2 8',
    pins: '2:h 4:p/1 6:p/2 8:h+k'
  },
  {
    name: '6X4',
    what: 'rectifier, full wave',
    base: '7-pin miniature',
    code: '5BS',
    heater: [6.3, 0.6],
    heaterPins: '3 4',
    pins: '1:p/1 2:nc 3:h 4:h 5:nc 6:p/2 7:k',
    aliases: ['EZ90']
  },
  {
    name: '6X5GT',
    what: 'rectifier, full wave',
    base: 'octal',
    code: '6S',
    heater: [6.3, 0.6],
    heaterPins: '2 7',
    pins: '2:h 3:p/1 5:p/2 7:h 8:k'
  },
  {
    name: '6V6GT',
    what: 'beam power tube',
    base: 'octal',
    code: '7AC',
    heater: [6.3, 0.45],
    heaterPins: '2 7',
    heaterSource: '6V6GT data sheet',
    pins: '2:h 3:p 4:s 5:g 7:h 8:k+su',
    pinSource: '6V6GT data sheet',
    heaterCathodeV: 180
  },
  {
    name: '6L6',
    what: 'beam power tube',
    base: 'octal',
    code: '7AC',
    heater: [6.3, 0.9],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:p 4:s 5:g 7:h 8:k+su'
  },
  {
    name: '6K6GT',
    what: 'power pentode',
    base: 'octal',
    code: '7S',
    heater: [6.3, 0.4],
    heaterPins: '2 7',
    pins: '2:h 3:p 4:s 5:g 7:h 8:k+su'
  },
  {
    name: '6Y6G',
    what: 'beam power tube',
    base: 'octal',
    code: '7AC',
    heater: [6.3, 1.25],
    heaterPins: '2 7',
    pins: '2:h 3:p 4:s 5:g 7:h 8:k+su'
  },
  {
    name: '12BE6',
    what: 'pentagrid converter',
    base: '7-pin miniature',
    code: '7CH',
    heater: [12.6, 0.15],
    heaterPins: '3 4',
    pins: '1:og 2:k+su 3:h 4:h 5:p 6:s 7:sg',
    aliases: ['HK90']
  },
  {
    name: '6BE6',
    what: 'pentagrid converter',
    base: '7-pin miniature',
    code: '7CH',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:og 2:k+su 3:h 4:h 5:p 6:s 7:sg',
    aliases: ['EK90']
  },
  {
    name: '12BA6',
    what: 'pentode, IF',
    base: '7-pin miniature',
    code: '7BK',
    heater: [12.6, 0.15],
    heaterPins: '3 4',
    pins: '1:g 2:su+is 3:h 4:h 5:p 6:s 7:k',
    aliases: ['HF93']
  },
  {
    name: '12AV6',
    what: 'twin diode-triode',
    base: '7-pin miniature',
    code: '7BT',
    heater: [12.6, 0.15],
    heaterPins: '3 4',
    pins: '1:g/T 2:k 3:h 4:h 5:d/2 6:d/1 7:p/T',
    aliases: ['HBC91']
  },
  {
    name: '6AV6',
    what: 'twin diode-triode',
    base: '7-pin miniature',
    code: '7BT',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g/T 2:k 3:h 4:h 5:d/2 6:d/1 7:p/T',
    aliases: ['EBC91']
  },
  {
    name: '6AT6',
    what: 'twin diode-triode',
    base: '7-pin miniature',
    code: '7BT',
    heater: [6.3, 0.3],
    heaterPins: '3 4',
    pins: '1:g/T 2:k 3:h 4:h 5:d/2 6:d/1 7:p/T',
    aliases: ['EBC90']
  },
  {
    name: '12AT6',
    what: 'twin diode-triode',
    base: '7-pin miniature',
    code: '7BT',
    heater: [12.6, 0.15],
    heaterPins: '3 4',
    pins: '1:g/T 2:k 3:h 4:h 5:d/2 6:d/1 7:p/T'
  },
  {
    name: '50C5',
    what: 'beam power tube',
    base: '7-pin miniature',
    code: '7CV',
    heater: [50, 0.15],
    heaterPins: '3 4',
    pins: '1:k+su 2:g 3:h 4:h 5:g 6:s 7:p',
    aliases: ['HL92']
  },
  {
    name: '35C5',
    what: 'beam power tube',
    base: '7-pin miniature',
    code: '7CV',
    heater: [35, 0.15],
    heaterPins: '3 4',
    pins: '1:k+su 2:g 3:h 4:h 5:g 6:s 7:p'
  },
  {
    name: '50B5',
    what: 'beam power tube',
    base: '7-pin miniature',
    code: '7BZ',
    heater: [50, 0.15],
    heaterPins: '3 4',
    pins: '1:g 2:k+su 3:h 4:h 5:p 6:s 7:g'
  },
  {
    name: '35W4',
    what: 'rectifier, tapped heater for the dial lamp',
    base: '7-pin miniature',
    code: '5BQ',
    heater: [35, 0.15],
    heaterPins: '4 3',
    heaterTap: ['6', 7.5],
    pins: '3:h 4:h 5:p 6:ht 7:k',
    aliases: ['HY90']
  },
  {
    name: '12SA7',
    what: 'pentagrid converter',
    base: 'octal',
    code: '8R',
    heater: [12.6, 0.15],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:p 4:s 5:og 6:k 7:h 8:sg'
  },
  {
    name: '6SA7',
    what: 'pentagrid converter',
    base: 'octal',
    code: '8R',
    heater: [6.3, 0.3],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:p 4:s 5:og 6:k 7:h 8:sg'
  },
  {
    name: '12SK7',
    what: 'pentode, remote cut-off',
    base: 'octal',
    code: '8N',
    heater: [12.6, 0.15],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:su 4:g 5:k 6:s 7:h 8:p'
  },
  {
    name: '6SK7',
    what: 'pentode, remote cut-off',
    base: 'octal',
    code: '8N',
    heater: [6.3, 0.3],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:su 4:g 5:k 6:s 7:h 8:p'
  },
  {
    name: '12SJ7',
    what: 'pentode, sharp cut-off',
    base: 'octal',
    code: '8N',
    heater: [12.6, 0.15],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:su 4:g 5:k 6:s 7:h 8:p'
  },
  {
    name: '6SJ7',
    what: 'pentode, sharp cut-off',
    base: 'octal',
    code: '8N',
    heater: [6.3, 0.3],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:su 4:g 5:k 6:s 7:h 8:p',
    heaterCathodeV: 90
  },
  {
    name: '12SQ7',
    what: 'twin diode-triode',
    base: 'octal',
    code: '8Q',
    heater: [12.6, 0.15],
    heaterPins: '7 8',
    pins: '1:sh 2:g/T 3:k 4:d/2 5:d/1 6:p/T 7:h 8:h'
  },
  {
    name: '6SQ7',
    what: 'twin diode-triode',
    base: 'octal',
    code: '8Q',
    heater: [6.3, 0.3],
    heaterPins: '7 8',
    pins: '1:sh 2:g/T 3:k 4:d/2 5:d/1 6:p/T 7:h 8:h'
  },
  {
    name: '50L6GT',
    what: 'beam power tube',
    base: 'octal',
    code: '7AC',
    heater: [50, 0.15],
    heaterPins: '2 7',
    pins: '2:h 3:p 4:s 5:g 7:h 8:k+su'
  },
  {
    name: '35L6GT',
    what: 'beam power tube',
    base: 'octal',
    code: '7AC',
    heater: [35, 0.15],
    heaterPins: '2 7',
    pins: '2:h 3:p 4:s 5:g 7:h 8:k+su'
  },
  {
    name: '25L6GT',
    what: 'beam power tube',
    base: 'octal',
    code: '7AC',
    heater: [25, 0.3],
    heaterPins: '2 7',
    pins: '2:h 3:p 4:s 5:g 7:h 8:k+su'
  },
  {
    name: '35Z5GT',
    what: 'rectifier, tapped heater for the dial lamp',
    base: 'octal',
    code: '6AD',
    heater: [35, 0.15],
    heaterPins: '2 7',
    heaterTap: ['3', 7.5],
    pins: '2:h 3:ht 5:p 7:h 8:k'
  },
  {
    name: '25Z6GT',
    what: 'twin rectifier',
    base: 'octal',
    code: '7Q',
    heater: [25, 0.3],
    heaterPins: '2 7',
    pins: '2:h 3:p/2 4:k/2 5:p/1 7:h 8:k/1'
  },
  {
    name: '6A8',
    what: 'pentagrid converter',
    base: 'octal',
    code: '8A',
    heater: [6.3, 0.3],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:p 4:s 5:og 6:op 7:h 8:k',
    cap: 'sg'
  },
  {
    name: '6K7',
    what: 'pentode, remote cut-off',
    base: 'octal',
    code: '7R',
    heater: [6.3, 0.3],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:p 4:s 5:su 7:h 8:k',
    cap: 'g'
  },
  {
    name: '6Q7',
    what: 'twin diode-triode',
    base: 'octal',
    code: '7V',
    heater: [6.3, 0.3],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:p/T 4:d/2 5:d/1 7:h 8:k',
    cap: 'g'
  },
  {
    name: '6F6',
    what: 'power pentode',
    base: 'octal',
    code: '7S',
    heater: [6.3, 0.7],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:p 4:s 5:g 7:h 8:k+su'
  },
  {
    name: '6H6',
    what: 'twin diode',
    base: 'octal',
    code: '7Q',
    heater: [6.3, 0.3],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:d/2 4:k/2 5:d/1 7:h 8:k/1'
  },
  {
    name: '6J5',
    what: 'triode',
    base: 'octal',
    code: '6Q',
    heater: [6.3, 0.3],
    heaterPins: '2 7',
    pins: '1:sh 2:h 3:p 5:g 7:h 8:k'
  },
  {
    name: '0D3',
    what: 'gas regulator, 150 V',
    base: 'octal',
    code: '4AJ',
    heater: null,
    heaterPins: '',
    pins: '2:k 3:ic 5:p 7:ic',
    aliases: ['OD3', 'VR150']
  },
  {
    name: '0C3',
    what: 'gas regulator, 105 V',
    base: 'octal',
    code: '4AJ',
    heater: null,
    heaterPins: '',
    pins: '2:k 3:ic 5:p 7:ic',
    aliases: ['OC3', 'VR105']
  },
  {
    name: '0A2',
    what: 'gas regulator, 150 V',
    base: '7-pin miniature',
    code: '5BO',
    heater: null,
    heaterPins: '',
    pins: '1:p 2:k 3:ic 4:k 5:p 6:ic 7:k',
    aliases: ['OA2']
  },
  {
    name: '0B2',
    what: 'gas regulator, 108 V',
    base: '7-pin miniature',
    code: '5BO',
    heater: null,
    heaterPins: '',
    pins: '1:p 2:k 3:ic 4:k 5:p 6:ic 7:k',
    aliases: ['OB2']
  },
  {
    name: '1R5',
    what: 'pentagrid converter, battery',
    base: '7-pin miniature',
    code: '7AT',
    heater: [1.4, 0.05],
    heaterPins: '1 7',
    isFilament: true,
    pins: '1:f+su 2:p 3:s 4:og 5:f+su 6:sg 7:f',
    aliases: ['DK91']
  },
  {
    name: '1T4',
    what: 'pentode, battery',
    base: '7-pin miniature',
    code: '6AR',
    heater: [1.4, 0.05],
    heaterPins: '1 7',
    isFilament: true,
    pins: '1:f+su 2:p 3:s 4:nc 5:f+su 6:g 7:f',
    aliases: ['DF91']
  },
  {
    name: '1S5',
    what: 'diode-pentode, battery',
    base: '7-pin miniature',
    code: '6AU',
    heater: [1.4, 0.05],
    heaterPins: '1 7',
    isFilament: true,
    pins: '1:f 2:nc 3:d 4:s 5:p 6:g 7:f',
    aliases: ['DAF91']
  },
  {
    name: '80',
    what: 'rectifier, full wave',
    base: '4-pin',
    code: '4C',
    heater: [5, 2],
    heaterPins: '1 4',
    isFilament: true,
    pins: '1:f 2:p/2 3:p/1 4:f'
  },
  {
    name: '45',
    what: 'power triode',
    base: '4-pin',
    code: '4D',
    heater: [2.5, 1.5],
    heaterPins: '1 4',
    isFilament: true,
    pins: '1:f 2:p 3:g 4:f'
  },
  {
    name: '2A3',
    what: 'power triode',
    base: '4-pin',
    code: '4D',
    heater: [2.5, 2.5],
    heaterPins: '1 4',
    isFilament: true,
    pins: '1:f 2:p 3:g 4:f'
  },
  {
    name: '27',
    what: 'triode',
    base: '5-pin',
    code: '5A',
    heater: [2.5, 1.75],
    heaterPins: '1 5',
    pins: '1:h 2:p 3:g 4:k 5:h'
  },
  {
    name: '24A',
    what: 'screen-grid tube',
    base: '5-pin',
    code: '5E',
    heater: [2.5, 1.75],
    heaterPins: '1 5',
    pins: '1:h 2:p 3:s 4:k 5:h',
    cap: 'g',
    aliases: ['24']
  },
  {
    name: '47',
    what: 'power pentode',
    base: '5-pin',
    code: '5B',
    heater: [2.5, 1.75],
    heaterPins: '1 5',
    isFilament: true,
    pins: '1:f 2:p 3:g 4:s 5:f'
  },
  {
    name: '42',
    what: 'power pentode',
    base: '6-pin',
    code: '6B',
    heater: [6.3, 0.7],
    heaterPins: '1 6',
    pins: '1:h 2:p 3:s 4:g 5:k+su 6:h'
  },
  {
    name: '75',
    what: 'twin diode-triode',
    base: '6-pin',
    code: '6G',
    heater: [6.3, 0.3],
    heaterPins: '1 6',
    pins: '1:h 2:p/T 3:d 4:d 5:k 6:h',
    cap: 'g'
  },
  {
    name: '78',
    what: 'pentode, remote cut-off',
    base: '6-pin',
    code: '6F',
    heater: [6.3, 0.3],
    heaterPins: '1 6',
    pins: '1:h 2:p 3:s 4:su 5:k 6:h',
    cap: 'g'
  },
  {
    name: '6D6',
    what: 'pentode, remote cut-off',
    base: '6-pin',
    code: '6F',
    heater: [6.3, 0.3],
    heaterPins: '1 6',
    pins: '1:h 2:p 3:s 4:su 5:k 6:h',
    cap: 'g'
  },
  {
    name: '58',
    what: 'pentode, remote cut-off',
    base: '6-pin',
    code: '6F',
    heater: [2.5, 1],
    heaterPins: '1 6',
    pins: '1:h 2:p 3:s 4:su 5:k 6:h',
    cap: 'g'
  },
  {
    name: '6E5',
    what: 'tuning indicator',
    base: '6-pin',
    code: '6R',
    heater: [6.3, 0.3],
    heaterPins: '1 6',
    pins: '1:h 2:p 3:g 4:t 5:k 6:h'
  },
  {
    name: '6A7',
    what: 'pentagrid converter',
    base: '7-pin',
    code: '7C',
    heater: [6.3, 0.3],
    heaterPins: '1 7',
    pins: '1:h 2:p 3:s 4:op 5:og 6:k 7:h',
    cap: 'sg'
  },
  {
    name: '7C5',
    what: 'beam power tube',
    base: 'loctal',
    code: '6AA',
    heater: [6.3, 0.45],
    heaterPins: '1 8',
    pins: '1:h 2:p 3:s 6:g 7:k+su 8:h'
  },
  {
    name: '7Y4',
    what: 'rectifier, full wave',
    base: 'loctal',
    code: '5AB',
    heater: [6.3, 0.5],
    heaterPins: '1 8',
    pins: '1:h 3:p/2 6:p/1 7:k 8:h'
  },
  {
    name: '21ALP4',
    what: 'picture tube, 21 in, electrostatic focus',
    base: 'duodecal',
    code: '12L',
    heater: [6.3, 0.6],
    heaterPins: '1 12',
    pins: '1:h 2:g 6:fo 10:s 11:k 12:h',
    cap: 'a2'
  },
  {
    name: '21YP4',
    what: 'picture tube, 21 in, electrostatic focus',
    base: 'duodecal',
    code: '12L',
    heater: [6.3, 0.6],
    heaterPins: '1 12',
    pins: '1:h 2:g 6:fo 10:s 11:k 12:h',
    cap: 'a2'
  },
  {
    name: '17BP4',
    what: 'picture tube, 17 in, magnetic focus',
    base: 'duodecal',
    code: '12D',
    heater: [6.3, 0.6],
    heaterPins: '1 12',
    pins: '1:h 2:g 10:s 11:k 12:h',
    cap: 'a2'
  },
  {
    name: '10BP4',
    what: 'picture tube, 10 in, magnetic focus',
    base: 'duodecal',
    code: '12D',
    heater: [6.3, 0.6],
    heaterPins: '1 12',
    pins: '1:h 2:g 10:s 11:k 12:h',
    cap: 'a2'
  }
];
