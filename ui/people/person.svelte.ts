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
    localStorage.setItem(BEFORE, this.before.join(' '));
  }

  signOff(): void {
    this.badge = null;
    sessionStorage.removeItem(NOW);
  }
}

function readBefore(): string[] {
  return (localStorage.getItem(BEFORE) ?? '').split(' ').filter((each) => /^P-[A-Z0-9]{1,20}$/.test(each));
}

/** A badge as people read it: without its letter. */
export function badgeName(badge: string): string {
  return badge.slice(2);
}

/** Who a mark says did it: a badge's name. */
export function shopName(by: string): string {
  return by.startsWith('P-') ? badgeName(by) : by;
}

export const person = new Person();
