import { openingText } from '../../grammar/visit/device-texts.ts';
import type { Hello, Admission as Shown, Watch } from '../../grammar/visit/messages.ts';

/** What lets one connection in: the server's ticket, and the device's signature where it is paired. */
export interface Admission {
  readonly ticket: string;
  /** 64 bytes (r, s) in base64url over the text's UTF-8. */
  readonly sign?: (text: string) => Promise<string>;
}

/** The server lets nobody in as we are: someone must act on the sentence. */
export class NotAdmitted extends Error {
  override readonly name = 'NotAdmitted';
  readonly code: string;

  constructor(code: string, sentence: string) {
    super(sentence);
    this.code = code;
  }
}

/**
 * Asks for what lets the next connection in; undefined where nobody needs to sign in.
 * Rejects with `NotAdmitted` where someone must act first, and with anything else where it is worth trying again.
 */
export type Admit = () => Promise<Admission | undefined>;

/** The first message with what lets it in. */
export async function withAdmission<Message extends Hello | Watch>(
  message: Message,
  { ticket, sign }: Admission,
): Promise<Message> {
  const shown: Shown = { ticket };
  const ticketed = { ...message, ...shown };
  return sign === undefined ? ticketed : { ...ticketed, signature: await sign(openingText(ticketed)) };
}
