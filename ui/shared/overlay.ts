import type { Attachment } from 'svelte/attachments';

/** How a sheet over the screen is closed from a keyboard. */
export interface Overlaid {
  /** Escape; nothing where a person has to decide. */
  readonly escape?: () => void;
  /** Enter while no button or field has the focus. */
  readonly enter?: () => void;
}

interface Open {
  readonly node: HTMLElement;
  readonly before: Element | null;
}

const open: Open[] = [];
let still: Element[] = [];
const watcher = new MutationObserver(refresh);

/**
 * Makes an element a sheet that lies over the screen: what is behind it neither takes the focus nor a tap while it is
 * there; the focus goes into it, to what carries `data-first` or else to its strong button, and back when it is gone.
 */
export function overlay({ escape, enter }: Overlaid): Attachment<HTMLElement> {
  return (node) => {
    const own = { node, before: document.activeElement };
    open.push(own);
    refresh();
    if (open.length === 1) watcher.observe(document.body, { childList: true });
    (
      node.querySelector<HTMLElement>('[data-first]') ??
      node.querySelector<HTMLElement>('.strong') ??
      node
    ).focus();
    const onKey = (event: KeyboardEvent) => {
      if (uppermost() !== node || event.defaultPrevented) return;
      const inside = event.target instanceof Element && event.target.matches('button, input, select, a');
      const act = event.key === 'Escape' ? escape : event.key === 'Enter' && !inside ? enter : undefined;
      if (act === undefined) return;
      event.preventDefault();
      act();
    };
    window.addEventListener('keydown', onKey);
    return () => {
      window.removeEventListener('keydown', onKey);
      open.splice(open.indexOf(own), 1);
      if (open.length === 0) watcher.disconnect();
      refresh();
      if (own.before instanceof HTMLElement && own.before.isConnected) own.before.focus();
    };
  };
}

/** The sheet that a person sees: the one highest up, and of those the last one to come. */
function uppermost(): HTMLElement | undefined {
  const level = (node: HTMLElement) => Number(getComputedStyle(node).zIndex) || 0;
  return open.reduce<HTMLElement | undefined>(
    (top, { node }) => (top === undefined || level(node) >= level(top) ? node : top),
    undefined,
  );
}

const DIALOG = '[role="dialog"], [role="alertdialog"], [data-screen-keys]';

/** Everything beside the uppermost sheet stands still, except the keys on the screen and dialogs that keep their own order. */
function refresh(): void {
  for (const each of still) each.removeAttribute('inert');
  still = [];
  for (let at = uppermost(); at !== undefined && at !== document.body; at = at.parentElement ?? undefined)
    for (const beside of at.parentElement?.children ?? []) {
      if (beside === at || beside.hasAttribute('inert')) continue;
      if (beside.matches(DIALOG) && !open.some(({ node }) => node === beside)) continue;
      beside.setAttribute('inert', '');
      still.push(beside);
    }
}
