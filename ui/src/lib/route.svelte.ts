// Where in the notebook we are. The place lies in the address, so that the phone's back gesture turns a page back, and
// is also kept with the drafts, so that the app opens where it was after the phone died.
import { askFor } from './backend';

/** A page. */
export type Place =
  | { page: 'home' }
  | { page: 'me' }
  | { page: 'settings' }
  | { page: 'lawn'; id: string }
  | { page: 'products' }
  | { page: 'product'; id: string }
  | { page: 'label-versions'; id: string }
  | { page: 'label'; id: string }
  | { page: 'kits' }
  | { page: 'kit'; id: string }
  | { page: 'calibrate'; id: string }
  | { page: 'trial'; id: string }
  | { page: 'clean'; id: string }
  | { page: 'ask'; id: string }
  | { page: 'shelf' }
  | { page: 'container'; id: string }
  | { page: 'count'; id: string }
  | { page: 'visit'; id: string }
  | { page: 'record'; id: string };

/** Key of the draft that holds the place. */
export const PLACE_KEY = 'place';

/** The address of a page. */
export function address(place: Place): string {
  return 'id' in place ? `#/${place.page}/${place.id}` : `#/${place.page}`;
}

/** The page of an address; anything unknown is the first one. */
export function placeOf(hash: string): Place {
  const [page, id] = hash.replace(/^#\//, '').split('/');
  switch (page) {
    case 'me':
    case 'settings':
    case 'products':
    case 'kits':
    case 'shelf':
      return { page };
    case 'lawn':
    case 'product':
    case 'label-versions':
    case 'label':
    case 'kit':
    case 'calibrate':
    case 'trial':
    case 'clean':
    case 'ask':
    case 'container':
    case 'count':
    case 'visit':
    case 'record':
      return id === undefined || id === '' ? { page: 'home' } : { page, id };
    default:
      return { page: 'home' };
  }
}

/** The address in a kept place, if it is one. */
export function keptHash(body: string | null): string | null {
  if (body === null) return null;
  try {
    const hash: unknown = JSON.parse(body);
    return typeof hash === 'string' && hash.startsWith('#/') ? hash : null;
  } catch {
    return null;
  }
}

class Route {
  place = $state<Place>({ page: 'home' });

  /** Reads the address, or where we were last time, and follows the address from now on. */
  async begin(): Promise<void> {
    window.addEventListener('hashchange', () => this.#follow());
    if (location.hash === '') {
      const kept = await askFor('draft', { ask: 'draft', key: PLACE_KEY });
      const hash = keptHash(kept);
      if (hash !== null) history.replaceState(null, '', hash);
    }
    this.#follow();
  }

  #follow(): void {
    this.place = placeOf(location.hash);
    // Losing this only opens the first page next time; it must not stand in anyone's way.
    askFor('done', { ask: 'put_draft', key: PLACE_KEY, body: JSON.stringify(address(this.place)) }).catch(
      () => undefined,
    );
  }
}

/** The one route of the app. */
export const route = new Route();

/** Turns to a page. */
export function turnTo(place: Place): void {
  location.hash = address(place);
}
