import Type from 'typebox';
import { HASH_PATTERN, NAME_PATTERN } from './envelope.ts';

/** Nothing that is not named is let through. */
const closed = { additionalProperties: false };
export const NameSchema = Type.String({ pattern: NAME_PATTERN });
export const HashSchema = Type.String({ pattern: HASH_PATTERN });
const WholeFromOne = Type.Integer({ minimum: 1, maximum: Number.MAX_SAFE_INTEGER });
const WholeFromZero = Type.Integer({ minimum: 0, maximum: Number.MAX_SAFE_INTEGER });

export const HeadSchema = Type.Object({ seq: WholeFromZero, hash: HashSchema }, closed);
const StreamIdSchema = Type.Object(
  { company: NameSchema, visit: NameSchema, device: NameSchema, epoch: WholeFromOne },
  closed,
);

const BASE64URL = '^[A-Za-z0-9_-]+$';
export const SignatureSchema = Type.String({ pattern: BASE64URL, minLength: 86, maxLength: 86 });
const admission = {
  ticket: Type.Optional(Type.String({ pattern: BASE64URL, maxLength: 64 })),
  signature: Type.Optional(SignatureSchema),
};

const HelloSchema = Type.Object(
  {
    kind: Type.Literal('hello'),
    ...admission,
    protocol: WholeFromOne,
    stream: StreamIdSchema,
    clock: Type.Optional(Type.Integer()),
    head: Type.Optional(HeadSchema),
    follows: Type.Optional(Type.Object({ epoch: WholeFromOne, head: HeadSchema }, closed)),
  },
  closed,
);

const AppendSchema = Type.Object(
  { kind: Type.Literal('append'), seq: WholeFromOne, hash: HashSchema, body: Type.String() },
  closed,
);

const WatchSchema = Type.Object(
  {
    kind: Type.Literal('watch'),
    ...admission,
    protocol: WholeFromOne,
    company: NameSchema,
    visit: NameSchema,
    from: Type.Array(Type.Object({ device: NameSchema, epoch: WholeFromOne, seq: WholeFromZero }, closed), {
      maxItems: 256,
    }),
  },
  closed,
);

/** The client's messages as JSON Schema, for the side that must not trust them. */
export const ClientMessageSchema = Type.Union([HelloSchema, AppendSchema, WatchSchema]);
