// Hook-up and hook-up-like wire by UL AWM style: what is printed on it tells volts and degrees.
import { fromMemory, verified, type Sourced } from './source.ts';

export interface WireStyle extends Sourced {
  /** The style number, "1015". */
  readonly style: string;
  /** As people write it: "UL 1015". */
  readonly name: string;
  /** Rated volts; null where the style gives none of its own. */
  readonly volts: number | null;
  /** Rated conductor temperature, degrees C; the lower of two where the style has two. */
  readonly celsius: number | null;
  readonly insulation: string;
  /** Insulation wall, average, mm. */
  readonly wallMm: number | null;
  readonly note?: string;
}

const mil = (thousandths: number): number => Math.round(thousandths * 25.4) / 1000;
const stylePage = (style: string) => verified(`UL AWM style page ${style}`);
const guide = verified('published guide to hook-up wire UL 1007, 1015 and 1061');

const row = (
  style: string,
  volts: number | null,
  celsius: number | null,
  insulation: string,
  wallMils: number | null,
  sourced: Sourced,
  note?: string
): WireStyle => ({
  style,
  name: `UL ${style}`,
  volts,
  celsius,
  insulation,
  wallMm: wallMils === null ? null : mil(wallMils),
  ...sourced,
  ...(note === undefined ? {} : { note })
});

export const wireStyles: readonly WireStyle[] = [
  row('1001', 300, 80, 'semi-rigid PVC', 9, stylePage('1001')),
  row('1007', 300, 80, 'PVC', 16, guide, 'many spools are rated 105 C as well: read the print'),
  row('1015', 600, 105, 'PVC', 30, guide),
  row('1061', 300, 80, 'semi-rigid PVC', 9, guide, 'the wall is from memory'),
  row('1180', 300, 200, 'PTFE', 15, fromMemory),
  row('1199', 600, 200, 'PTFE', 20, fromMemory),
  row('1213', null, 105, 'PTFE', 10, fromMemory, 'no volts on the style; commonly sold as 600 V'),
  row('1331', 600, 150, 'FEP', 20, stylePage('1331')),
  row(
    '1380',
    300,
    60,
    'polyethylene, shield, PVC jacket',
    20,
    stylePage('1380'),
    'low capacitance, for television sets'
  ),
  row('1382', 300, 80, 'polyethylene, tube, PVC jacket', 45, stylePage('1382')),
  row('1430', 300, 105, 'irradiated PVC', 16, fromMemory),
  row('1555', 300, 80, 'polyethylene, tube, PVC jacket', 15, stylePage('1555')),
  row(
    '1556',
    300,
    60,
    'polyethylene, shield, PVC jacket',
    25,
    stylePage('1556'),
    'internal wiring of television sets; 300 V at most on the jacket'
  ),
  row('1569', 300, 105, 'PVC', 16, fromMemory),
  row('1638', 300, 90, 'not stated here', 15, stylePage('1638')),
  row('2464', 300, 80, 'PVC, jacketed multi-conductor', null, fromMemory),
  row('2468', 300, 80, 'PVC, parallel flat', null, fromMemory),
  row('3135', 600, 200, 'silicone rubber', 30, fromMemory),
  row(
    '3239',
    null,
    150,
    'silicone rubber',
    null,
    fromMemory,
    'made in several ratings, commonly 3 to 50 kV dc: enter the volts that are printed on the lead'
  ),
  row('10127', 300, 60, 'PVC', 18, stylePage('10127')),
  row('10203', 1000, 150, 'FEP', 20, stylePage('10203')),
  row('10236', 300, 105, 'PVC', 15, stylePage('10236')),
  row('10314', 150, 125, 'ETFE', null, stylePage('10314')),
  row('10686', 1000, 90, 'PVC jacket', 30, stylePage('10686')),
  row('12019', 1000, 300, 'PTFE tape', null, stylePage('12019'))
];

const byStyle: ReadonlyMap<string, WireStyle> = new Map(wireStyles.map((row) => [row.style, row]));

/** The style that a text such as "UL 1015", "UL1015", "AWM 1015" or "1015" names, or null.
 *  A longer print ("AWM STYLE 1015 VW-1 105C 600V") is searched for a number after UL or style. */
export const findWireStyle = (text: string): WireStyle | null => {
  const plain = text.trim().slice(0, 200);
  const number =
    /^#?(\d{4,5})$/.exec(plain)?.[1] ?? /\b(?:ul|awm|style)[\s\-#.]*(\d{4,5})\b/i.exec(plain)?.[1];
  return number === undefined ? null : (byStyle.get(number) ?? null);
};
