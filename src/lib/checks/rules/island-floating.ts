// Circuits that hang in the air: a supply with no path to the chassis, and tubes that draw from nothing.
import { formatAmps, formatVolts } from '#quantity/index.ts';
import type { FloatingIsland, PlacedElement, StarvedLoads, Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { inPieces, wholeChassis } from '../pieces.ts';
import { elementNames, elementPlaces } from '../element-places.ts';
import { isLineSource } from '../line-terminals.ts';
import { capitalised } from '../words.ts';

const source = "Kirchhoff's current law: what flows out has to flow back";

export const islandFloating: Rule = {
  id: 'island-floating',
  severity: 'caution',
  title: 'Supplies without a path to the chassis, tubes without a supply',
  source,
  explain:
    'Volts are counted from the chassis. A dc supply that no wire, lug, resistor, winding or heater joins to it floats, as the B- of some sets does: its volts are then known to one of its own nets and to nothing else, and no wire of it is judged by them. That is a caution. A winding of which neither side stands anywhere is a note; the power line floats by nature and is left out. A current that a part is said to draw, and that nothing recorded feeds, is a note; one that what stands between lets through only in part is a caution. It passes when what ties the circuit to the chassis, or what feeds it, is recorded, or when its volts are declared.',
  ...inPieces(
    wholeChassis(
      (study) => [
        ...study.network.floating.flatMap((island) => checkIsland(study, island)),
        ...study.network.starved.map(starvedFinding)
      ],
      ({ network, nets }) => [network, nets]
    )
  )
};

function checkIsland(study: Study, island: FloatingIsland): Finding[] {
  const sources = island.sources.filter((element) => !isLineSource(study, element));
  const [first] = sources;
  if (!first) return [];
  const isDc = island.kind === 'dc';
  const from = study.nets.get(island.countedFrom)?.name ?? 'one of its own nets';
  const what = `${isDc ? 'supply' : 'winding'} of ${elementNames(sources)} (${voltsWords(sources)})`;
  const tail = isDc
    ? `Its volts are counted from ${from}, and none of them from the chassis.`
    : 'Either side may end up grounded, so its whole volts count on both.';
  return [
    {
      rule: 'island-floating',
      severity: isDc ? 'caution' : 'note',
      at: elementPlaces(sources),
      message: `The ${what} has no path to the chassis that is recorded. ${tail}`,
      source,
      fix: {
        words: isDc
          ? 'Record what ties it to the chassis, a resistor of a few hundred kilohms as a rule, or declare the volts of its rails.'
          : 'Record which side of it is grounded, or by what.'
      }
    }
  ];
}

const voltsWords = (sources: readonly PlacedElement[]): string => {
  const all = sources.flatMap(({ values }) =>
    values.kind === 'source' ? [`${formatVolts(Math.abs(values.volts))} ${values.current}`] : []
  );
  return [...new Set(all)].slice(0, 3).join(', ');
};

function starvedFinding({ loads, isFed, fedBy }: StarvedLoads): Finding {
  const amps = loads.reduce(
    (sum, { values }) => sum + (values.kind === 'load' ? values.amps : 0),
    0
  );
  const who = `${capitalised(elementNames(loads))} ${elementPlaces(loads).length === 1 ? 'is' : 'are'} said to draw ${formatAmps(amps)}`;
  return {
    rule: 'island-floating',
    severity: isFed ? 'caution' : 'note',
    at: elementPlaces(loads),
    message: isFed
      ? `${who}, but what stands between ${fedBy} and there lets less through: at that current the point would fall below where the current returns.`
      : `${who}, but no supply that is recorded feeds it.`,
    source,
    fix: {
      words: isFed
        ? 'Look at the resistor in between, and at the current.'
        : 'Record what it is fed from, or declare the volts there.'
    }
  };
}
