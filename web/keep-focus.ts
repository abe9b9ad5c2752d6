// Keeps the place of who goes by keys: what had the focus may go with its own act (an answered check, a removed row, a closed note), and the
// browser would then start again at the top of the document. Changes of the whole page are not kept here: the heading of the new page takes those.

const actable = 'a[href], button, summary, input[type="checkbox"]';

/** Where an element stood: each element around it, innermost first, with the child that led to it. */
type Trail = readonly { readonly around: Element; readonly index: number }[];

interface Held {
  readonly element: HTMLElement;
  readonly trail: Trail;
}

let held: Held | undefined;
/** The last one inside the page itself, for when the focus was in a note beside it. */
let heldInMain: Held | undefined;

function trailOf(element: Element): Trail {
  const trail: { around: Element; index: number }[] = [];
  for (let child = element; child.parentElement !== null && child.tagName !== 'MAIN'; child = child.parentElement)
    trail.push({ around: child.parentElement, index: [...child.parentElement.children].indexOf(child) });
  return trail;
}

function isShown(element: Element): element is HTMLElement {
  return element instanceof HTMLElement && element.checkVisibility();
}

function actableIn(element: Element): HTMLElement[] {
  return [...(element.matches(actable) ? [element] : []), ...element.querySelectorAll(actable)].filter(isShown);
}

/** What stands where the lost one stood: what took its place or comes after it, else what comes before, in the nearest surroundings that are left. */
function successorOf({ trail }: Held): HTMLElement | undefined {
  for (const { around, index } of trail) {
    if (!around.isConnected) continue;
    const children = [...around.children];
    const after = children.slice(index).flatMap(actableIn)[0];
    const found = after ?? children.slice(0, index).flatMap(actableIn).at(-1);
    if (found !== undefined) return found;
  }
  return undefined;
}

function isInPage({ trail }: Held): boolean {
  return trail.at(-1)?.around.tagName === 'MAIN';
}

function isPageGone({ trail }: Held): boolean {
  return trail.at(-1)?.around.isConnected !== true;
}

function putBack(): void {
  if (held === undefined || document.activeElement !== document.body) return;
  // A field that is still there was left on purpose, as when the keyboard of a phone is put away.
  if (held.element.isConnected && !held.element.matches(actable)) return;
  const lost = isInPage(held) ? held : heldInMain;
  if (lost !== undefined && isPageGone(lost)) return;
  const isThere = lost?.element.isConnected === true && isShown(lost.element);
  const next = isThere ? lost.element : ((lost && successorOf(lost)) ?? document.querySelector('h1'));
  // Nothing scrolls: who goes by touch must not be moved by it.
  next?.focus({ preventScroll: true });
}

function hold(event: FocusEvent): void {
  if (!(event.target instanceof HTMLElement)) return;
  held = { element: event.target, trail: trailOf(event.target) };
  if (isInPage(held)) heldInMain = held;
}

/** Who presses beside everything lets go of the focus on purpose. */
function letGo({ target }: PointerEvent): void {
  if (target instanceof Element && target.closest(`${actable}, input, select, textarea, [tabindex]`) === null)
    held = undefined;
}

/** Starts keeping, for as long as the page stands. */
export function keepFocus(): void {
  document.addEventListener('focusin', hold);
  document.addEventListener('pointerdown', letGo);
  new MutationObserver(putBack).observe(document.body, { childList: true, subtree: true });
}
