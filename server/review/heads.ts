import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox';
import Type from 'typebox';
import { HashSchema } from '../../grammar/visit/message-schemas.ts';
import type { SignedHead } from '../../grammar/visit/signed-head.ts';

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

/** The heads that the server signed: keep a copy elsewhere, and nothing in the record can change unseen. */
export const headRoutes: FastifyPluginAsyncTypebox<{ readonly heads: () => readonly SignedHead[] }> = async (
  app,
  { heads },
) => {
  app.get(
    '/api/heads',
    {
      schema: {
        summary: 'the heads that the server signed',
        response: { 200: Type.Object({ heads: Type.Array(SignedHeadSchema) }) },
      },
    },
    async () => ({ heads: heads().map((head) => ({ ...head, streams: [...head.streams] })) }),
  );
};
