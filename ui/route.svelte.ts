import { isStation, type StationId } from '#core/stages/stations.ts';
import { screenMemory } from './screen-memory.ts';

/** Which screen an address is. */
export type Route =
  | { readonly screen: 'choose' }
  | { readonly screen: 'station'; readonly station: StationId }
  | { readonly screen: 'board' }
  | { readonly screen: 'office' };

const REMEMBERED = 'shoulderline.station';

/** Reads an address; "/" is the station that this screen remembers. */
export function readRoute(path: string, remembered: string | null): Route {
  const [, first = '', second = ''] = path.split('/');
  if (first === 'board' || first === 'office') return { screen: first };
  if (first === 'station' && isStation(second)) return { screen: 'station', station: second };
  if (first === '' && remembered !== null && isStation(remembered))
    return { screen: 'station', station: remembered };
  return { screen: 'choose' };
}

const state = $state({ route: readRoute(location.pathname, screenMemory.getItem(REMEMBERED)) });

/** The station that this screen was last at. */
export function rememberedStation(): StationId | null {
  const kept = screenMemory.getItem(REMEMBERED);
  return kept !== null && isStation(kept) ? kept : null;
}

/** The screen shown now; reading it in a component follows it. */
export function route(): Route {
  return state.route;
}

/** Goes to an address of ours without loading the page anew. A station that is gone to is remembered. */
export function go(path: string): void {
  history.pushState(null, '', path);
  follow();
}

function follow(): void {
  state.route = readRoute(location.pathname, screenMemory.getItem(REMEMBERED));
  if (state.route.screen === 'station') screenMemory.setItem(REMEMBERED, state.route.station);
}

addEventListener('popstate', follow);
follow();
