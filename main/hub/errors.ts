import type { FastifyError, FastifyInstance } from 'fastify';
import { say } from '#core/words/say.ts';
import { codeOf } from '../store/file-port.ts';
import { Problem } from './problem.ts';

/** Turns everything thrown into the API's form. Never a 5xx for what a client sent, never a stack. */
export function answerErrors(app: FastifyInstance, bodyLimit: number): void {
  app.setErrorHandler(async (error: FastifyError, request, reply) => {
    if (error instanceof Problem) return reply.code(error.status).send(error.body);
    if (error.code === 'FST_ERR_CTP_BODY_TOO_LARGE')
      return reply.code(413).send({ code: 'too-large', message: say('api.too-large', { limit: bodyLimit }) });
    if (error.code === 'FST_ERR_CTP_INVALID_MEDIA_TYPE')
      return reply.code(415).send({ code: 'media-type', message: say('api.media-type') });
    if (error.statusCode !== undefined && error.statusCode >= 400 && error.statusCode < 500)
      return reply
        .code(error.statusCode)
        .send({ code: 'malformed', message: say('api.not-json', { reason: error.message.slice(0, 200) }) });
    if (isDiskTrouble(error)) {
      request.log.error({ err: error }, 'could not be written down');
      return reply.code(507).send({
        code: 'store',
        message: say('api.store', { reason: codeOf(error) ?? error.message.slice(0, 120) }),
      });
    }
    request.log.error({ err: error }, 'request failed');
    return reply.code(500).send({ code: 'internal', message: say('api.internal') });
  });
  app.setNotFoundHandler(async (_request, reply) =>
    reply.code(404).send({ code: 'not-found', message: say('api.not-found') }),
  );
}

const DISK = new Set([
  'ENOSPC',
  'EROFS',
  'EACCES',
  'EPERM',
  'ENOENT',
  'EIO',
  'EDQUOT',
  'EMFILE',
  'ENFILE',
  'EBADF',
]);

function isDiskTrouble(error: unknown): boolean {
  return (
    DISK.has(codeOf(error) ?? '') ||
    (error instanceof Error && /^(the log is shorter|nothing could be written)/.test(error.message))
  );
}
