import { createHash } from 'node:crypto';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { type Language, tableOf } from '#core/words/languages.ts';
import { say } from '#core/words/say.ts';
import { derOf, fingerprintOf } from './certificates.ts';
import { appleProfile } from './apple-profile.ts';
import { inLines } from './fingerprint-lines.ts';
import { DEVICE_KINDS, type DeviceKind, stepDrawing } from './trust-drawings.ts';

export const CERTIFICATE_NAME = 'shoulderline.crt';
export const PROFILE_NAME = 'shoulderline.mobileconfig';

const STYLE = `
:root { color: #111; background: #fff; font: 20px/1.4 sans-serif; }
body { max-width: 44em; margin: 0 auto; padding: 16px; overflow-wrap: anywhere; }
:lang(de) span { hyphens: auto; }
h1, h2, h3 { line-height: 1.15; }
code { display: block; font: 700 min(22px, 5.5vw)/1.5 monospace; border-left: 8px solid #111; padding-left: 12px; }
a { display: block; border: 3px solid #111; padding: 18px; margin: 12px 0; font-weight: 700; color: inherit; }
ol { list-style: none; margin: 0; padding: 0; }
li { display: flex; gap: 16px; align-items: center; margin: 12px 0; }
svg { flex: none; fill: none; stroke: #111; stroke-width: 2.5; stroke-linejoin: round; stroke-linecap: round; }
.full { fill: #111; }
section, details { border-top: 1px solid #8a8a8a; }
summary { padding: 14px 0; }
summary h3 { display: inline; }
`;
const HEADERS = {
  'content-security-policy': `default-src 'none'; img-src data:; style-src 'sha256-${createHash('sha256').update(STYLE).digest('base64')}'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`,
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cache-control': 'no-store',
  connection: 'close',
};

/**
 * The one page that is served without encryption: the certificate of the shop's authority, its fingerprint, and how a device
 * is made to trust it. Nothing else is served here, and nothing is taken. What is given is made once, however often and by
 * whomever it is asked for.
 */
export function trustPages(
  authority: string,
): (request: IncomingMessage, answer: ServerResponse, language: Language) => void {
  const certificate = derOf(authority);
  const profile = Buffer.from(appleProfile(authority));
  const pages = new Map<string, Buffer>();
  const pageFor = (language: Language, likely: readonly DeviceKind[]) => {
    const which = `${language} ${likely.join()}`;
    const made = pages.get(which) ?? Buffer.from(pageOf(authority, language, likely));
    pages.set(which, made);
    return made;
  };
  return (request, answer, language) => {
    const give = (status: number, type: string, body: string | Buffer, more: Record<string, string> = {}) => {
      answer.writeHead(status, { ...HEADERS, 'content-type': type, ...more });
      answer.end(request.method === 'HEAD' ? undefined : body);
    };
    const saved = (name: string) => ({ 'content-disposition': `attachment; filename="${name}"` });
    if (request.method !== 'GET' && request.method !== 'HEAD')
      return give(405, 'text/plain; charset=utf-8', '', { allow: 'GET, HEAD' });
    switch ((request.url ?? '').replace(/\?.*$/s, '')) {
      case '/':
        return give(
          200,
          'text/html; charset=utf-8',
          pageFor(language, likelyKinds(request.headers['user-agent'] ?? '')),
        );
      case `/${CERTIFICATE_NAME}`:
        return give(200, 'application/x-x509-ca-cert', certificate, saved(CERTIFICATE_NAME));
      case `/${PROFILE_NAME}`:
        return give(200, 'application/x-apple-aspen-config', profile, saved(PROFILE_NAME));
      default:
        return give(404, 'text/plain; charset=utf-8', '');
    }
  };
}

/**
 * What kinds of device a browser may run on, by what it says of itself, the likeliest first; none where it does not tell. An
 * iPad says that it is a Mac, and a browser on Android names Linux too (common practice of browsers, from memory).
 */
function likelyKinds(userAgent: string): readonly DeviceKind[] {
  if (userAgent.includes('Android')) return ['android'];
  if (/iPhone|iPad|iPod/.test(userAgent)) return ['ios'];
  if (userAgent.includes('Windows')) return ['windows'];
  if (userAgent.includes('Macintosh')) return ['mac', 'ios'];
  return /Linux|X11/.test(userAgent) ? ['linux'] : [];
}

/** The page: the steps of a `likely` device stand open, and what comes then below them; those of others can be opened. */
function pageOf(authority: string, language: Language, likely: readonly DeviceKind[]): string {
  const words = (key: Parameters<typeof say>[0]) => escaped(say(key, {}, language));
  const steps = (kind: DeviceKind) =>
    ([1, 2, 3] as const)
      .map((step) => `<li>${stepDrawing(kind, step - 1)}<span>${words(`trust.${kind}.${step}`)}</span></li>`)
      .join('\n');
  const ofKind = (kind: DeviceKind) =>
    `<details${shown.includes(kind) ? ' open' : ''}><summary><h3>${words(`trust.${kind}`)}</h3></summary>
<p>${words(kind === 'linux' ? 'trust.tried' : 'trust.not-tried')}</p>
<ol>
${steps(kind)}
</ol></details>`;
  const shown = likely.length === 0 ? DEVICE_KINDS : likely;
  const others = DEVICE_KINDS.filter((kind) => !shown.includes(kind));
  return `<!doctype html>
<html lang="${tableOf(language).locale}">
<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="icon" href="data:,"><title>${words('trust.title')}</title><style>${STYLE}</style></head>
<body><main>
<h1>${words('trust.title')}</h1>
<p>${words('trust.what')}</p>
<h2>${words('trust.compare')}</h2>
<p>${words('trust.compare.how')}</p>
<code>${inLines(fingerprintOf(authority))}</code>
<h2>${words('trust.save')}</h2>
<a href="/${CERTIFICATE_NAME}">${words('trust.save.crt')}</a>
<a href="/${PROFILE_NAME}">${words('trust.save.profile')}</a>
<h2>${words('trust.steps')}</h2>
${shown.map(ofKind).join('\n')}
<section><h2>${words('trust.then')}</h2>
<p>${words('trust.then.what')}</p>
<p>${words('trust.remove')}</p></section>
${others.length === 0 ? '' : `<h2>${words('trust.others')}</h2>`}
${others.map(ofKind).join('\n')}
</main></body></html>
`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}
