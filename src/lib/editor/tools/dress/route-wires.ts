// Routes as edits: given by a hand, taken away, or planned by themselves.
import { doMany, setWireFields } from '#document/edits.ts';
import type { Edit, Wire } from '#document/index.ts';
import { planRoutes, type PlannedRoute } from '#study/plan-routes.ts';
import { wireName } from '../../core/words.ts';
import type { Scene } from '../scene.ts';
import type { Spot, ToolWorld } from '../tool.ts';

const far = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);

const lengthOf = (spots: readonly Spot[]): number =>
  spots.reduce((sum, spot, n) => sum + far(spots[n - 1] ?? spot, spot), 0);

/** Where a wire's ends lie on the sheet; null for one that is not drawn. */
export const endsOf = (
  { terminalByKey }: Scene,
  { from, to }: Wire
): readonly [Spot | null, Spot | null] => {
  const spotOf = ({ at }: Wire['from']): Spot | null =>
    at === undefined ? null : (terminalByKey.get(`${at.part}/${at.terminal}`)?.at ?? null);
  return [spotOf(from), spotOf(to)];
};

const spotsOf = ({ geometry }: Scene, supports: readonly string[]): readonly Spot[] =>
  supports.flatMap((id) => geometry.places.supports.get(id)?.at ?? []);

const present = (...spots: readonly (Spot | null)[]): readonly Spot[] =>
  spots.flatMap((spot) => (spot ? [spot] : []));

/** The supports in the order that suits the wire: along its shorter way. */
export const oriented = (
  scene: Scene,
  wire: Wire,
  supports: readonly string[]
): readonly string[] => {
  const [from, to] = endsOf(scene, wire);
  const there = lengthOf([...present(from), ...spotsOf(scene, supports), ...present(to)]);
  const reversed = supports.toReversed();
  const back = lengthOf([...present(from), ...spotsOf(scene, reversed), ...present(to)]);
  return back < there ? reversed : supports;
};

/** The route with one more support, where it makes the way the least longer. */
export const withSupport = (scene: Scene, wire: Wire, support: string): readonly string[] => {
  const own = wire.route?.supports ?? [];
  const [from, to] = endsOf(scene, wire);
  let best: { readonly supports: readonly string[]; readonly mm: number } | null = null;
  for (let n = 0; n <= own.length; n += 1) {
    const supports = own.toSpliced(n, 0, support);
    const mm = lengthOf([...present(from), ...spotsOf(scene, supports), ...present(to)]);
    if (best === null || mm < best.mm) best = { supports, mm };
  }
  return best?.supports ?? [support];
};

const byHand = (wire: Wire, supports: readonly string[]): Edit =>
  setWireFields(wire.id, {
    route: supports.length === 0 ? null : { supports: [...supports], by: 'hand' }
  });

/** The other conductors of its cable: under one jacket they go one way. */
export const matesOf = ({ study }: ToolWorld, wire: Wire): readonly Wire[] =>
  wire.cable === undefined
    ? []
    : study.index.wires.filter(({ id, cable }) => cable === wire.cable && id !== wire.id);

const nameOf = (wires: readonly Wire[]): string => {
  const [first] = wires;
  return wires.length === 1 && first ? wireName(first) : `${wires.length} wires`;
};

/** Leads wires through supports, each from whichever end it comes. */
export const dressEdit = (
  { scene }: ToolWorld,
  wires: readonly Wire[],
  supports: readonly string[]
): Edit => {
  const verb = supports.length === 0 ? 'free' : 'dress';
  const edits = wires.map((wire) => byHand(wire, oriented(scene, wire, supports)));
  return doMany(`${verb} ${nameOf(wires)}`, edits);
};

/** Routes for the wires that may have one, as one step; null where none would change.
 *  @param only the wires that may change; all of them where left out */
export const autoRoutesEdit = (
  { study }: Pick<ToolWorld, 'study'>,
  only?: ReadonlySet<string>
): { readonly edit: Edit; readonly routes: readonly PlannedRoute[] } | null => {
  const routes = planRoutes(study, only);
  if (routes.length === 0) return null;
  const edits = routes.map(({ wire, supports }) =>
    setWireFields(wire, {
      route: supports.length === 0 ? null : { supports: [...supports], by: 'layout' }
    })
  );
  const count = routes.length === 1 ? '1 wire' : `${routes.length} wires`;
  return { edit: doMany(`route ${count}`, edits), routes };
};
