import { allow } from './de/allow.ts';
import { board } from './de/board.ts';
import { cautions } from './de/cautions.ts';
import { device } from './de/device.ts';
import { drawings } from './de/drawings.ts';
import { findings } from './de/findings.ts';
import { fitting } from './de/fitting.ts';
import { kiosk } from './de/kiosk.ts';
import { messages } from './de/messages.ts';
import { moved } from './de/moved.ts';
import { names } from './de/names.ts';
import { network } from './de/network.ts';
import { office } from './de/office.ts';
import { printed } from './de/printed.ts';
import { reasons } from './de/reasons.ts';
import { seen } from './de/seen.ts';
import { settings } from './de/settings.ts';
import { station } from './de/station.ts';
import { steps } from './de/steps.ts';
import type { LanguageTable } from './language.ts';

/** German as joiners speak it: stations, stickers, cautions, the board, and the office’s pages of network, PIN and backups; its jobs, the shop’s page and the papers are still told in English. */
export const de: LanguageTable = {
  name: 'Deutsch',
  locale: 'de-DE',
  firstDay: 1,
  words: {
    ...allow,
    ...board,
    ...cautions,
    ...device,
    ...drawings,
    ...findings,
    ...fitting,
    ...kiosk,
    ...messages,
    ...moved,
    ...names,
    ...network,
    ...office,
    ...printed,
    ...reasons,
    ...seen,
    ...settings,
    ...station,
    ...steps,
  },
};
