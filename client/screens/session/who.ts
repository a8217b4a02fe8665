import { LOCAL_COMPANY } from '../../../grammar/visit/envelope.ts';
import type { Role } from '../../../grammar/visit/roles.ts';
import { askServer } from './server-answer.ts';

/** Whom this browser speaks for, as the server tells. */
export interface Who {
  /** Nobody needs to sign in here. */
  readonly open: boolean;
  readonly company?: string;
  readonly person?: { readonly person: string; readonly name: string; readonly login: string; readonly role: Role };
  readonly hasPassword?: boolean;
}

const COMPANY_KEY = 'readback.company';

/** Asks the server whom this browser speaks for; undefined while it does not answer. */
export async function askWho(): Promise<Who | undefined> {
  const answer = await askServer<Who>('GET', '/api/who');
  if (!answer.ok) return undefined;
  if (answer.body.company !== undefined) localStorage.setItem(COMPANY_KEY, answer.body.company);
  return answer.body;
}

/** Whose visits are read here: as the server tells, or told last. */
export async function readingCompany(): Promise<string> {
  return (await askWho())?.company ?? localStorage.getItem(COMPANY_KEY) ?? LOCAL_COMPANY;
}
