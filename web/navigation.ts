// The page that is shown now and how to go to another: the browser's history and clicks on links inside the site.
import { signal } from '@preact/signals';
import { matchRoute, movedPath, type Route } from './router.ts';

let goFully = () => false;

/** Sets when another page is fetched from the service instead of being drawn by this one. */
export function fetchPagesWhen(isWanted: () => boolean): void {
  goFully = isWanted;
}

function routeHere(): Route {
  const moved = movedPath(location.pathname, location.hash);
  if (moved !== null) history.replaceState(null, '', moved);
  return matchRoute(location.pathname, location.search);
}

export const route = signal<Route>(routeHere());

function readAddress(): void {
  route.value = routeHere();
}

/** Shows another page of the site and puts the reader at its top. */
export function goTo(path: string): void {
  if (path === location.pathname + location.search) return;
  if (goFully()) {
    location.assign(path);
    return;
  }
  history.pushState(null, '', path);
  readAddress();
  scrollTo(0, 0);
}

function innerLink(event: MouseEvent): string | null {
  const isPlain = event.button === 0 && !event.metaKey && !event.ctrlKey && !event.shiftKey && !event.altKey;
  if (!isPlain || event.defaultPrevented || !(event.target instanceof Element)) return null;
  const link = event.target.closest('a');
  if (link === null || link.origin !== location.origin || link.hasAttribute('download') || link.target !== '')
    return null;
  const isOnThisPage = link.hash !== '' && link.pathname === location.pathname;
  return link.pathname.startsWith('/api/') || isOnThisPage ? null : link.pathname + link.search + link.hash;
}

/** Starts listening to the back button and to clicks on links. */
export function startNavigation(): void {
  addEventListener('popstate', readAddress);
  document.addEventListener('click', (event) => {
    const path = innerLink(event);
    if (path === null) return;
    event.preventDefault();
    goTo(path);
  });
}
