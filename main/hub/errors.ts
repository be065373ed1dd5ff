import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { ENDPOINTS } from '#core/api/endpoints.ts';
import { codeOf, StoreBusy, StoreTrouble, wordsOf } from '../store/files/file-port.ts';
import { FolderLost } from '../store/files/held-folder.ts';
import { ArchiveFault } from '../store/archive/read-archive.ts';
import { NotWanted } from '../work/lane.ts';
import { askedLanguage } from './asked-language.ts';
import { HEADERS } from './guard-requests.ts';
import { Problem, problem } from './problem.ts';

/** Turns everything thrown into the API's form. Never a 5xx for what a client sent, never a stack. */
export function answerErrors(app: FastifyInstance): void {
  app.setErrorHandler(answerError);
  app.setNotFoundHandler(async (request, reply) => {
    const allowed = methodsAt(request.url);
    if (allowed.length === 0) return tell(request, reply, problem(404, 'api.not-found'));
    return tell(
      request,
      reply.header('allow', allowed.join(', ')),
      problem(405, 'api.method', { allowed: allowed.join(', ') }),
    );
  });
}

/** For what fails before any route is found, such as an address that cannot be decoded. */
export function answerError(error: FastifyError, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  // Nobody is there to be answered.
  if (error instanceof NotWanted) return reply.code(408).send();
  const known = problemOf(error, request);
  if (known !== null) {
    if (known.status >= 500) request.log.error({ err: error }, 'could not be written down');
    return tell(request, reply, known);
  }
  request.log.error({ err: error }, 'request failed');
  return tell(request, reply, problem(500, 'api.internal'));
}

function tell(request: FastifyRequest, reply: FastifyReply, { status, bodyIn }: Problem): FastifyReply {
  return reply
    .headers(HEADERS)
    .code(status)
    .send(bodyIn(askedLanguage(request)));
}

function problemOf(error: FastifyError, request: FastifyRequest): Problem | null {
  if (error instanceof Problem) return error;
  if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE')
    return problem(413, 'api.too-large', { limit: request.routeOptions.bodyLimit });
  if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE') return problem(415, 'api.media-type');
  if (error instanceof ArchiveFault) return problem(400, 'api.archive', { reason: error.message });
  if (error.statusCode !== undefined && error.statusCode >= 400 && error.statusCode < 500)
    return problem(
      error.statusCode,
      'api.not-json',
      { reason: error.message.slice(0, 200) },
      { code: 'malformed' },
    );
  if (error instanceof StoreBusy) return problem(503, 'api.busy', { reason: error.message });
  if (error instanceof FolderLost) return lostProblem(error);
  if (error instanceof StoreTrouble || DISK.has(codeOf(error) ?? ''))
    return problem(507, 'api.store', { reason: codeOf(error) ?? wordsOf(error).slice(0, 160) });
  return null;
}

/** Who has the folder now is told as far as it is known. */
function lostProblem({ holder }: FolderLost): Problem {
  return holder === null
    ? problem(507, 'api.lock-gone')
    : problem(507, 'api.taken-over', { pid: holder.pid, host: holder.host === '' ? '?' : holder.host });
}

/** What a disk answers that is full, gone, or not to be written on. */
const DISK = new Set(
  'ENOSPC EROFS EACCES EPERM ENOENT ENOTDIR EIO EDQUOT EMFILE ENFILE EBADF ESTALE EFBIG'.split(' '),
);

const PATTERNS = Object.keys(ENDPOINTS).map((key) => {
  const [method = '', path = ''] = key.split(' ');
  const escaped = path.replace(/\./g, '\\.').replace(/:\w+/g, '[^/]+');
  return { method, pattern: new RegExp(`^/api${escaped}$`) };
});

function methodsAt(url: string): string[] {
  const path = url.split('?', 1)[0] ?? '';
  return PATTERNS.filter(({ pattern }) => pattern.test(path)).map(({ method }) => method);
}
