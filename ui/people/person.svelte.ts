import { shop } from '../hub/shop.svelte.ts';
import { screenMemory } from '../screen-memory.ts';

const NOW = 'shoulderline.person';
const BEFORE = 'shoulderline.people';
const MOST = 24;

/** Who works at this screen. A badge says who, never what is allowed. */
class Person {
  badge = $state<string | null>(sessionStorage.getItem(NOW));
  before = $state.raw<readonly string[]>(readBefore());

  /** From now on marks carry this badge. */
  signOn(badge: string): void {
    this.badge = badge;
    this.before = [badge, ...this.before.filter((each) => each !== badge)].slice(0, MOST);
    sessionStorage.setItem(NOW, badge);
    screenMemory.setItem(BEFORE, this.before.join(' '));
  }

  /** Is it a badge that this shop has on its list, or that was taken here before? Where the shop has no list, every badge is. */
  knows(badge: string): boolean {
    return (
      shop.people.length === 0 ||
      shop.people.some((each) => each.badge === badge) ||
      this.before.includes(badge)
    );
  }

  signOff(): void {
    this.badge = null;
    sessionStorage.removeItem(NOW);
  }
}

function readBefore(): string[] {
  return (screenMemory.getItem(BEFORE) ?? '').split(' ').filter((each) => /^P-[A-Z0-9]{1,20}$/.test(each));
}

/** Whose badge it is, by the shop's list; the badge itself without its letter when nobody there has it. */
export function badgeName(badge: string): string {
  return shop.people.find((each) => each.badge === badge)?.name ?? badge.replace(/^P-/, '');
}

export const person = new Person();
