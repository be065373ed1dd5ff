import { z } from 'zod';
import {
  dryRun,
  jobChanged,
  jobFileAnswer,
  jobSaved,
  jobsAnswer,
  jobUpdate,
  measuredAnswer,
  measuredUpdate,
} from './jobs-api.ts';
import { binAnswer, binRestored } from './bin-api.ts';
import {
  movedAnswer,
  movedArrival,
  movedChallenge,
  movedLeave,
  movedProof,
  movedToken,
} from './moved-api.ts';
import {
  networkAnswer,
  networkUpdate,
  offerAnswer,
  pairedAnswer,
  pairingAnswer,
  pairingRequest,
} from './network-api.ts';
import { doorAnswer, doorsAnswer, planAnswer } from './plan-api.ts';
import { boardAnswer, jobProgress, markAnswer, markRequest, partAnswer } from './marks-api.ts';
import {
  backupMade,
  backupsAnswer,
  elsewhereAnswer,
  elsewhereUpdate,
  healthAnswer,
  leftAnswer,
  nothing,
  pinUpdate,
  restoredAnswer,
  sessionAnswer,
  sessionRequest,
  troublesKnown,
} from './office-api.ts';
import {
  printedAnswer,
  printedReport,
  printersAnswer,
  printRequest,
  printState,
  printTaken,
  toPrintAnswer,
} from './prints-api.ts';
import { goBack, revisionsAnswer } from './revisions-api.ts';
import { shopAnswer, shopUpdate } from './shop-api.ts';
import { screenShows, screenTold, stationsAnswer } from './stations-api.ts';
import { stocksAnswer } from './stocks-api.ts';

/** Characters of codes that an address may name at most: some ten thousand of them. */
export const MOST_CODES_TEXT = 120_000;

/**
 * Who may call an address: anyone who reaches the hub; a device, which is whoever is at the hub's own machine or was paired
 * with it over the shop's network; or the office, which is a device at which the PIN was given, where the shop has one.
 */
export type Who = 'anyone' | 'device' | 'office';

/** One address of the hub: what it does, who may call it, what it takes and gives. */
export interface Endpoint {
  readonly does: string;
  /** Who may call it. */
  readonly who: Who;
  /** Only at the hub's own machine, never over the shop's network. */
  readonly here?: true;
  /** Also for the page of a paired device that was got at another address of the hub, by its token in a header. */
  readonly elsewhere?: true;
  readonly query?: z.ZodType<Readonly<Record<string, string | undefined>>>;
  readonly takes?: z.ZodType;
  /** A schema of its JSON, or the media type of what else it gives; null for nothing. */
  readonly gives: z.ZodType | 'application/pdf' | 'text/event-stream' | 'application/json' | null;
  readonly status?: 201 | 202 | 204;
  /** Bytes of a body, where that is not a job file. */
  readonly most?: number;
}

const short = z.string().max(200).optional();
const SMALL = 16 * 1024;

/** Every address of the hub, by method and path under /api. Screens, hub, tests and the description served all read this. */
export const ENDPOINTS = {
  'GET /health': { does: 'Is the hub well? More is told to the office.', who: 'device', gives: healthAnswer },
  'GET /openapi.json': { does: 'This description.', who: 'device', gives: 'application/json' },
  'GET /jobs': { does: 'The jobs, in the order in which they were added.', who: 'device', gives: jobsAnswer },
  'POST /jobs': {
    does: 'Saves a job file.',
    who: 'office',
    takes: z.unknown(),
    gives: jobSaved,
    status: 201,
  },
  'GET /jobs/:id': {
    does: 'The plan of a job, with the codes of live parts; with why=1, up to 50 doors, the reasons of every setting and by how much it may be off.',
    who: 'device',
    query: z.object({ why: short }),
    gives: planAnswer,
  },
  'GET /jobs/:id/doors': {
    does: 'The doors of a plan by name, each with the codes of its live parts; those of one tag are alike but for name and codes, so that one of them tells of all.',
    who: 'device',
    gives: doorsAnswer,
  },
  'GET /jobs/:id/doors/:door': {
    does: 'One door of a plan; with why=1 the reasons of every setting and by how much it may be off.',
    who: 'device',
    query: z.object({ why: short }),
    gives: doorAnswer,
  },
  'PUT /jobs/:id': {
    does: 'Saves a changed job file over the revision seen; lists what was cut already and no longer agrees, which doors of it are finished, which stickers were printed with other sizes, and what has marks and is in the job no more. With dry=1 nothing is saved.',
    who: 'office',
    query: dryRun,
    takes: jobUpdate,
    gives: jobChanged,
  },
  'DELETE /jobs/:id': {
    does: 'Puts a job into the bin, with its codes and marks.',
    who: 'office',
    gives: null,
    status: 204,
  },
  'GET /bin': {
    does: 'The jobs in the bin, what was put there last first.',
    who: 'device',
    gives: binAnswer,
  },
  'POST /bin/:id/restore': {
    does: 'Takes a job out of the bin, with its id, codes and marks.',
    who: 'office',
    takes: nothing,
    gives: binRestored,
    most: SMALL,
  },
  'DELETE /bin/:id': {
    does: 'Takes a job in the bin away for good.',
    who: 'office',
    gives: null,
    status: 204,
  },
  'GET /jobs/:id/file': {
    does: 'The job file as saved, its revision, sizes as they came out, and settings that something was marked by and that are others since.',
    who: 'device',
    gives: jobFileAnswer,
  },
  'PUT /jobs/:id/measured': {
    does: 'Plans a job anew by sizes as they came out; lists what was cut already and no longer agrees, which doors of it are finished, and which stickers were printed with other sizes. With dry=1 nothing is saved.',
    who: 'office',
    query: dryRun,
    takes: measuredUpdate,
    gives: measuredAnswer,
    most: 1024 * 1024,
  },
  'GET /jobs/:id/revisions': {
    does: 'The last saves of a job, the newest first, each with what it changed, and which of them can be gone back to.',
    who: 'device',
    gives: revisionsAnswer,
  },
  'POST /jobs/:id/revisions/:revision/restore': {
    does: 'Saves a job as it was at an earlier revision, over the revision seen; answers as a save of a changed file does. With dry=1 nothing is saved.',
    who: 'office',
    query: dryRun,
    takes: goBack,
    gives: jobChanged,
    most: SMALL,
  },
  'GET /jobs/:id/progress': {
    does: 'What has happened to a job’s parts and doors.',
    who: 'device',
    gives: jobProgress,
  },
  'GET /jobs/:id/stickers.pdf': {
    does: 'The stickers of a job, or of some of its parts.',
    who: 'device',
    query: z.object({
      stock: short,
      codes: z.string().max(MOST_CODES_TEXT).optional(),
      from: short,
      symbol: short,
    }),
    gives: 'application/pdf',
  },
  'GET /jobs/:id/printed': { does: 'When each sticker was printed.', who: 'device', gives: printedAnswer },
  'POST /jobs/:id/printed': {
    does: 'Notes stickers that were printed in the browser’s own dialog.',
    who: 'device',
    takes: printedReport,
    gives: printedAnswer,
    most: 4 * 1024 * 1024,
  },
  'GET /jobs/:id/papers.pdf': {
    does: 'Setup cards, templates, rods or the sheet of a job, or of some of its doors.',
    who: 'device',
    query: z.object({ kind: short, paper: short, doors: z.string().max(400_000).optional() }),
    gives: 'application/pdf',
  },
  'GET /stickers': {
    does: 'How many stickers of each current job are to be printed: those never printed, and those printed before the sizes on them changed.',
    who: 'device',
    gives: toPrintAnswer,
  },
  'GET /stocks': {
    does: 'The stocks of stickers that the shop has, by their sizes.',
    who: 'device',
    gives: stocksAnswer,
  },
  'GET /stocks/:stock/calibration.pdf': {
    does: 'A page to hold against a stock, to see how the printer moves and stretches it.',
    who: 'device',
    gives: 'application/pdf',
  },
  'GET /printers': {
    does: 'The printers of the hub’s machine, and which of them printed stickers last.',
    who: 'device',
    gives: printersAnswer,
  },
  'POST /prints': {
    does: 'Makes a paper and prints it; tells its number at once.',
    who: 'device',
    takes: printRequest,
    gives: printTaken,
    status: 202,
    most: 4 * 1024 * 1024,
  },
  'GET /prints/:id': {
    does: 'How far a print has come, or why it failed.',
    who: 'device',
    gives: printState,
  },
  'DELETE /prints/:id': { does: 'Takes a print back.', who: 'device', gives: printState },
  'GET /parts/:code': {
    does: 'A part, its stages, and its setup at a station.',
    who: 'device',
    query: z.object({ station: short }),
    gives: partAnswer,
  },
  'POST /marks': {
    does: 'Says what was done to a part. On disk before it is answered.',
    who: 'device',
    elsewhere: true,
    takes: markRequest,
    gives: markAnswer,
    most: SMALL,
  },
  'GET /board': { does: 'How far every door has come.', who: 'device', gives: boardAnswer },
  'GET /events': {
    does: 'Marks as they come (event: mark), changed jobs (job), printed stickers (print), a changed shop (shop), news of the stations (stations), and a beat every second. With the number and the id of the last mark known, marks come from there on, where that is still so and not too long ago: the first beat tells it. A page that names itself (screen) is away once its last stream has ended.',
    who: 'device',
    query: z.object({ after: short, mark: short, screen: short }),
    gives: 'text/event-stream',
  },
  'GET /stations': {
    does: 'Every station that a screen shows or showed: who is there, what is shown, or since when it is away.',
    who: 'device',
    gives: stationsAnswer,
  },
  'PUT /screens': {
    does: 'Says what a page shows, when that changes and every quarter of a minute. Nothing of it is kept on disk.',
    who: 'device',
    takes: screenShows,
    gives: screenTold,
    most: SMALL,
  },
  'GET /shop': { does: 'The shop: people, tools, screens.', who: 'device', gives: shopAnswer },
  'PUT /shop': {
    does: 'Saves the shop over the revision seen.',
    who: 'office',
    takes: shopUpdate,
    gives: shopAnswer,
    most: 256 * 1024,
  },
  'GET /session': { does: 'Is there a PIN, and was it given here?', who: 'device', gives: sessionAnswer },
  'POST /session': {
    does: 'Gives the PIN.',
    who: 'device',
    takes: sessionRequest,
    gives: sessionAnswer,
    most: SMALL,
  },
  'DELETE /session': { does: 'Ends the session.', who: 'device', gives: sessionAnswer },
  'PUT /pin': {
    does: 'Sets the PIN, or takes it away.',
    who: 'office',
    takes: pinUpdate,
    gives: sessionAnswer,
    most: SMALL,
  },
  'GET /pairing': {
    does: 'Is this device paired with the shop? With what its page is to prove that the browser trusts the shop.',
    who: 'anyone',
    gives: pairingAnswer,
  },
  'POST /pairing': {
    does: 'Pairs this device, by what the office shows once: it is told by a cookie from then on.',
    who: 'anyone',
    takes: pairingRequest,
    gives: pairedAnswer,
    status: 201,
    most: SMALL,
  },
  'GET /moved': {
    does: 'Where else the hub is got, and whether the page that asks could send there.',
    who: 'device',
    gives: movedAnswer,
  },
  'POST /moved/token': {
    does: 'Gives the page that asks a token, by which it sends the marks that it kept to another address of the hub once this one is gone. The one before it is over.',
    who: 'device',
    takes: nothing,
    gives: movedToken,
    status: 201,
    most: SMALL,
  },
  'POST /moved/proof': {
    does: 'Proves to a page from another address that this hub knows its token, before it is sent here.',
    who: 'anyone',
    elsewhere: true,
    takes: movedChallenge,
    gives: movedProof,
    most: SMALL,
  },
  'POST /moved/leave': {
    does: 'Gives a page from another address, by its token, what it is let in by here: once, within two minutes.',
    who: 'device',
    elsewhere: true,
    takes: nothing,
    gives: movedLeave,
    status: 201,
    most: SMALL,
  },
  'POST /moved/arrive': {
    does: 'Lets a paired device in at this address, by what its page was given before it left another: it is told by a cookie here too.',
    who: 'anyone',
    takes: movedArrival,
    gives: pairedAnswer,
    status: 201,
    most: SMALL,
  },
  'GET /network': {
    does: 'How it stands with the shop’s network: its addresses and name, the fingerprint of its certificate, the paired devices.',
    who: 'office',
    gives: networkAnswer,
  },
  'PUT /network': {
    does: 'Switches the shop’s network on or off.',
    who: 'office',
    takes: networkUpdate,
    gives: networkAnswer,
    most: SMALL,
  },
  'POST /network/offers': {
    does: 'Offers one pairing for ten minutes: a picture to scan and a code to type. The offer before it is over.',
    who: 'office',
    takes: nothing,
    gives: offerAnswer,
    status: 201,
    most: SMALL,
  },
  'DELETE /network/devices/:id': {
    does: 'Revokes a device: it is paired no more, and its stream ends at once.',
    who: 'office',
    gives: networkAnswer,
  },
  'POST /kiosk/leave': {
    does: 'Leaves full screen.',
    who: 'office',
    here: true,
    takes: nothing,
    gives: leftAnswer,
    most: SMALL,
  },
  'POST /troubles/known': {
    does: 'Takes what was told of as lost or damaged as known, so that it is told no more.',
    who: 'office',
    takes: nothing,
    gives: troublesKnown,
    most: SMALL,
  },
  'GET /backups': { does: 'The backups, the newest first.', who: 'office', gives: backupsAnswer },
  'POST /backups': {
    does: 'Makes a backup now and reads it back.',
    who: 'office',
    takes: nothing,
    gives: backupMade,
    status: 201,
    most: SMALL,
  },
  'POST /backups/:name/restore': {
    does: 'Puts a backup in place of what is there, of which a backup is made first.',
    who: 'office',
    takes: nothing,
    gives: restoredAnswer,
    most: SMALL,
  },
  'GET /backups/elsewhere': {
    does: 'The folder off this machine that every backup is copied to, and the backups there, the newest first.',
    who: 'office',
    gives: elsewhereAnswer,
  },
  'PUT /backups/elsewhere': {
    does: 'Names the folder off this machine that every backup is copied to, or none.',
    who: 'office',
    takes: elsewhereUpdate,
    gives: elsewhereAnswer,
    most: SMALL,
  },
  'POST /backups/elsewhere/:name/restore': {
    does: 'Puts a backup that lies off this machine in place of what is here, of which a backup is made first.',
    who: 'office',
    takes: nothing,
    gives: restoredAnswer,
    most: SMALL,
  },
  'GET /export': {
    does: 'Everything in one file, without PIN, sessions and the network’s keys.',
    who: 'office',
    gives: 'application/json',
  },
  'GET /export/with-network-keys': {
    does: 'The same with the keys of the shop’s network and the devices that were paired: whoever has it can pretend to be this hub.',
    who: 'office',
    here: true,
    gives: 'application/json',
  },
  'POST /import': {
    does: 'Puts an exported file in place of what is there, of which a backup is made first. One that holds the network’s keys is taken only at the hub’s own machine.',
    who: 'office',
    takes: z.unknown(),
    gives: restoredAnswer,
  },
} as const satisfies Readonly<Record<`${'GET' | 'POST' | 'PUT' | 'DELETE'} /${string}`, Endpoint>>;

/** The name of an endpoint in the table above. */
export type EndpointKey = keyof typeof ENDPOINTS;
