import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { NOTICES, thirdPartyNotices } from './third-party.mjs';

/** `npm run notices`: writes what goes with the program and was made by others, after every change of the lock file. */
const root = join(import.meta.dirname, '..', '..');
writeFileSync(join(root, NOTICES), thirdPartyNotices(root));
process.stderr.write(`shoulderline: ${NOTICES} is written\n`);
