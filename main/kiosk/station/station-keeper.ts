import type { Language } from '#core/words/languages.ts';
import { wordsOf } from '../../store/files/file-port.ts';
import { type ServedPage, servePage } from '../page-server.ts';
import type { AskedStation } from './asked-station.ts';
import type { KeptTrust } from './kept-trust.ts';
import { type Answers, type ShownAuthority, shownAuthority, whoAnswers } from './shown-certificate.ts';
import { stationPage, type StationTells } from './station-page.ts';

/** The window in which a station stands. */
export interface StationWindow {
  /** Shows a page; nothing happens where it is shown already. */
  show(url: string): void;
  /** Does it show that its page could not be loaded? */
  isBroken(): Promise<boolean>;
}

export interface Stationed {
  readonly asked: AskedStation;
  readonly kept: KeptTrust;
  readonly window: StationWindow;
  /** Lets the window reach whoever this authority vouches for, and nobody else. */
  readonly trusted: (authority: string) => void;
  /** Says a line to whoever started the program. */
  readonly say: (line: string) => void;
  readonly language: Language;
}

/** How often it is looked who answers, while that is waited for, and whether the screens still stand. */
const LOOK_MS = 2000;

/**
 * Shows another machine's screens in a window, once somebody has compared its key, and as long as it is that key which
 * answers; else a page that says why not. It runs no hub, and knows nothing of jobs.
 */
export class StationKeeper {
  readonly #with: Stationed;
  /** Whoever is trusted now: as kept, or as compared just now. */
  #authority: string | null;
  /** What is shown: the screens, or a page of ours by what it tells. */
  #shows = '';
  #page: ServedPage | null = null;
  #looking: Promise<void> | null = null;
  /** Nothing is looked at until somebody has tapped. */
  #held = false;
  #timer: ReturnType<typeof setInterval> | null = null;

  constructor(stationed: Stationed) {
    const { asked, kept } = stationed;
    this.#with = stationed;
    const other = asked.fingerprint !== null && asked.fingerprint !== kept.fingerprint;
    this.#authority = other ? null : kept.authority;
    if (this.#authority !== null) stationed.trusted(this.#authority);
  }

  /** Looks who answers, now and from then on; settles when something is shown. */
  async start(lookMs = LOOK_MS): Promise<void> {
    await this.look();
    this.#timer = setInterval(() => void this.#lookAgain(), lookMs);
  }

  end(): void {
    if (this.#timer !== null) clearInterval(this.#timer);
    this.#held = true;
    this.#page?.close();
  }

  /** Somebody else answers, or nobody: it is looked into where that makes a difference. */
  failed(why: Exclude<Answers, 'hub'>): void {
    // A hub that is away is waited for by its screens themselves.
    if (why !== 'away' && !this.#held) void this.look();
  }

  /** The page died too often; it is not loaded until somebody asks for another try. */
  failing(times: number, again: () => void): void {
    void this.#tell(
      { tells: 'failing', times },
      {
        again: () => {
          again();
          void this.look();
        },
      },
    );
    this.#held = true;
  }

  /** Looks who answers and shows what follows from it. One look at a time; never rejects. */
  look(): Promise<void> {
    this.#held = false;
    this.#looking ??= this.#look()
      .catch((error: unknown) => this.#with.say(`the station could not be shown: ${wordsOf(error)}`))
      .finally(() => (this.#looking = null));
    return this.#looking;
  }

  async #lookAgain(): Promise<void> {
    if (this.#held) return;
    if (this.#shows !== SCREENS) return this.look();
    if (!(await this.#with.window.isBroken())) return;
    // The browser has kept no screens of this address: they are shown once the hub answers.
    await this.#tell({ tells: 'away' });
    await this.look();
  }

  async #look(): Promise<void> {
    const { asked, kept } = this.#with;
    const answers = this.#authority === null ? 'other' : await whoAnswers(asked.url, this.#authority);
    if (answers === 'other') return this.#meet(await shownAuthority(asked.url));
    // Somebody may have tapped meanwhile.
    if (this.#held) return;
    // At a start the browser may have kept the screens, with marks that are to be sent.
    const keptThere = this.#shows === '' && kept.wasShown(asked.url);
    if (answers === 'hub' || (answers === 'away' && keptThere)) await this.#screens();
    else if (answers !== 'away' || this.#shows !== SCREENS) await this.#tell({ tells: answers });
  }

  /** Somebody answers who is not trusted yet, or not any more. */
  async #meet(shown: ShownAuthority | 'stranger' | 'away'): Promise<void> {
    if (this.#held) return;
    const { asked, kept, say } = this.#with;
    if (shown === 'away' || shown === 'stranger') return void (await this.#tell({ tells: shown }));
    const { fingerprint } = shown;
    if (fingerprint === asked.fingerprint) {
      await this.#trust(shown);
      return this.#look();
    }
    if (asked.fingerprint !== null) {
      const told = await this.#tell({ tells: 'given', fingerprint });
      if (told)
        say(
          `what answers at ${asked.url} has the fingerprint ${fingerprint}, and is not trusted: --fingerprint named ${asked.fingerprint}`,
        );
      return;
    }
    const told = await this.#tell(
      { tells: kept.authority === null ? 'first' : 'changed', fingerprint },
      {
        trust: () => void this.#trust(shown).then(() => this.look()),
        differs: () => void this.#warn(),
      },
    );
    if (told)
      say(
        `what answers at ${asked.url} has the fingerprint ${fingerprint}: compare it with the one in the office, under Network, and answer on the screen`,
      );
  }

  /** Trusts this one from now on, at the next start too; never rejects. */
  async #trust({ certificate }: ShownAuthority): Promise<void> {
    const { kept, say, trusted } = this.#with;
    await kept
      .trust(certificate)
      .catch((error: unknown) =>
        say(`what is trusted could not be kept for the next start: ${wordsOf(error)}`),
      );
    this.#authority = certificate;
    trusted(certificate);
  }

  async #warn(): Promise<void> {
    this.#held = true;
    await this.#tell({ tells: 'warned' }, { again: () => void this.look() });
  }

  async #screens(): Promise<void> {
    const { asked, kept, window } = this.#with;
    if (this.#shows === SCREENS) return;
    this.#shows = SCREENS;
    window.show(asked.url);
    this.#page?.close();
    this.#page = null;
    await kept.showing(asked.url).catch(() => undefined);
  }

  /** Shows a page of ours; false where it is shown already. */
  async #tell(told: StationTells, acts: Readonly<Record<string, () => void>> = {}): Promise<boolean> {
    const shows = JSON.stringify(told);
    if (this.#shows === shows) return false;
    this.#shows = shows;
    const { asked, language, window } = this.#with;
    const today = new Date().toLocaleDateString('sv');
    const before = this.#page;
    this.#page = await servePage(stationPage(told, asked.url, language, today), acts);
    window.show(this.#page.url);
    before?.close();
    return true;
  }
}

const SCREENS = 'screens';
