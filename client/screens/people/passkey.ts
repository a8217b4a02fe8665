import {
  type PublicKeyCredentialCreationOptionsJSON,
  type PublicKeyCredentialRequestOptionsJSON,
  startAuthentication,
  startRegistration,
} from '@simplewebauthn/browser';
import { SIGN_IN } from '../../words/pages/people-words.ts';
import { askServer, type ServerAnswer } from '../session/server-answer.ts';

/** Has the browser make a passkey for whoever is signed in, and the server keep its public half. */
export async function makePasskey(): Promise<ServerAnswer<unknown>> {
  const options = await askServer<PublicKeyCredentialCreationOptionsJSON>('POST', '/api/me/passkey/options');
  if (!options.ok) return options;
  return answered(async () =>
    askServer('POST', '/api/me/passkey', await startRegistration({ optionsJSON: options.body })),
  );
}

/** Signs in by a passkey that the browser, or what is plugged into it, holds. */
export async function signInByPasskey(): Promise<ServerAnswer<unknown>> {
  const options = await askServer<PublicKeyCredentialRequestOptionsJSON>('POST', '/api/sign-in/passkey/options');
  if (!options.ok) return options;
  return answered(async () =>
    askServer('POST', '/api/sign-in/passkey', await startAuthentication({ optionsJSON: options.body })),
  );
}

/** A person may turn the browser's question down, and it may find no passkey: that is a sentence, not a fault. */
async function answered(ask: () => Promise<ServerAnswer<unknown>>): Promise<ServerAnswer<unknown>> {
  try {
    return await ask();
  } catch {
    return { ok: false, status: 0, sentence: SIGN_IN.passkeyFailed };
  }
}
