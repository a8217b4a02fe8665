import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { HashSchema } from '../../grammar/visit/message-schemas.ts';
import type { SignedHead } from '../../grammar/visit/signed-head.ts';
import { ServerError } from '../errors.ts';
import type { PeopleStore } from '../people/people-store.ts';
import { ErrorSchema } from './visits.ts';

const Whole = Type.Integer({ minimum: 0 });

const SignedHeadSchema = Type.Object({
  number: Whole,
  time: Type.Integer({ description: 'milliseconds since 1970, by the server’s clock' }),
  previous: HashSchema,
  anew: Type.Boolean({ description: 'lists every stream, and forgets the heads before' }),
  streams: Type.Array(
    Type.Object({
      stream: Type.String({ description: 'company/visit/device/epoch' }),
      seq: Whole,
      hash: HashSchema,
      received: Type.String({ description: 'SHA-256 over the times of receipt of its events, one a line' }),
      forks: Whole,
      follows: Type.String({ description: 'the older stream that it carries on: epoch, number, hash; or empty' }),
    }),
  ),
  key: HashSchema,
  signature: Type.String({ description: 'Ed25519 in base64url over the text of the head' }),
});

export interface HeadOptions {
  readonly heads: () => readonly SignedHead[];
  readonly people: Pick<PeopleStore, 'countCompanies'>;
}

/**
 * The heads that the server signed: keep a copy elsewhere, and nothing in the record can change unseen. They name the
 * streams of every company in one text: where there are several, only whoever has the folder reads them.
 */
export const headRoutes: FastifyPluginAsyncTypebox<HeadOptions> = async (app, { heads, people }) => {
  app.get(
    '/api/heads',
    {
      config: { needs: 'read-heads' },
      schema: {
        summary: 'the heads that the server signed',
        response: { 200: Type.Object({ heads: Type.Array(SignedHeadSchema) }), 403: ErrorSchema },
      },
    },
    async () => {
      if ((await people.countCompanies()) > 1) throw new ServerError('heads-of-all');
      return { heads: heads().map((head) => ({ ...head, streams: [...head.streams] })) };
    },
  );
};
