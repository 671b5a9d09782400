// A source whose two sides are connected, or two sources that cannot both be right.
import { formatVolts } from '#quantity/index.ts';
import { findWireWay } from '#study/wire-way.ts';
import type { PlacedElement, Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { elementPlaces } from '../element-places.ts';
import { wirePlace } from '../places.ts';
import { plainInput } from '../amount-input.ts';
import { wiresInWords } from '../words.ts';

const source = "Kirchhoff's voltage law";

export const supplyShorted: Rule = {
  id: 'supply-shorted',
  severity: 'fault',
  title: 'Sources whose two sides are connected',
  source,
  explain:
    'Volts cannot stand between two connected points. A source, a winding among them, whose two terminals are joined by wires, plugs, closed switches or the metal is shorted, and so are two sources without series resistance that put different volts (by more than a tenth) between the same two nets. The message names the shortest way. Nothing is reckoned for the circuit that hangs on such a source. It passes when an end is moved, a wire is taken away, or the volts of the sources agree.',
  check: (study) =>
    study.network.shorted.map(({ element, against }) =>
      against ? contradiction(study, element, against) : shorted(study, element)
    )
};

const voltsOf = ({ values }: PlacedElement): string =>
  values.kind === 'source' ? `${formatVolts(Math.abs(values.volts))} ${values.current}` : '';

function shorted(study: Study, element: PlacedElement): Finding {
  const way = findWireWay(study, element.fromPoint, element.toPoint) ?? [];
  const by =
    way.length === 0
      ? 'without any wire between: by a plug, a closed switch, a common lug or the metal'
      : `by ${wiresInWords(study, way)}`;
  const what = element.part.reference || element.part.kind;
  return {
    rule: 'supply-shorted',
    severity: 'fault',
    at: [...elementPlaces([element]), ...way.map((wire) => wirePlace(study, wire))],
    message: `${what} gives ${voltsOf(element)}, but its two sides are connected ${by}.`,
    source,
    fix: {
      words: 'Look for an end at the wrong terminal, or for a switch drawn in the wrong position.'
    },
    why: {
      sum: null,
      inputs: [plainInput('Source', voltsOf(element), `element of ${what}`)],
      outcome: `Both of its terminals are on one net: ${voltsOf(element)} would stand between connected points.`,
      passes: 'when its two terminals are on different nets.'
    }
  };
}

function contradiction(study: Study, element: PlacedElement, against: PlacedElement): Finding {
  const nets = [element.from, element.to].map((net) => study.nets.get(net.id)?.name ?? net.id);
  const name = ({ part }: PlacedElement) => part.reference || part.kind;
  return {
    rule: 'supply-shorted',
    severity: 'fault',
    at: elementPlaces([element, against]),
    message: `${capital(name(against))} gives ${voltsOf(against)} and ${name(element)} ${voltsOf(element)} between the same two nets, ${nets.join(' and ')}: one of them is wrong, or something is joined that should not be.`,
    source,
    fix: {
      words:
        'Put the volts right, give a series resistance, or look for an end at the wrong terminal.'
    },
    why: {
      sum: null,
      inputs: [against, element].map((each) =>
        plainInput(name(each), voltsOf(each), 'element of the part')
      ),
      outcome:
        'Two sources without series resistance share both of their nets and differ by more than a tenth.',
      passes: 'when they agree, or when one of them has a series resistance.'
    }
  };
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
