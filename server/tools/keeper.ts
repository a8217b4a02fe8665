import { join } from 'node:path';
import { LOCAL_COMPANY, NAME_PATTERN } from '../../grammar/visit/envelope.ts';
import { readDatabaseUrl } from '../configuration.ts';
import { openPeopleInDatabase } from '../database/people-in-database.ts';
import { ServerError } from '../errors.ts';
import { makeFolder } from '../heads/make-folder.ts';
import { isCalled } from '../people/called.ts';
import { People } from '../people/people.ts';
import type { PeopleStore } from '../people/people-store.ts';
import { openSqlitePeopleStore, PEOPLE_FILE } from '../people/sqlite-people-store.ts';
import { type GivenToTool, runServerTool } from './run-server-tool.ts';

const TOOL = {
  name: 'keeper',
  options: ['data', 'company', 'name', 'url'],
  help: `keeper: adds a keeper, who manages a company's people and devices, and prints a link to come in by.

Usage: npm run -s keeper -- [--data FOLDER] [--company COMPANY] [--name NAME] [--url URL] LOGIN

Options:
  --data FOLDER      the server's data folder (./data, or the database that DATABASE_URL names); the server may run
  --company COMPANY  whose keeper; begun where there is none of that name (local)
  --name NAME        how the keeper is called (LOGIN)
  --url URL          the address that the link begins with (http://127.0.0.1:8470)
  --help             prints this
  --version          prints the version of Readback

LOGIN is what the keeper signs in by: 2 to 64 small letters, digits and . @ _ -. The link is good once, for a day. For a
keeper who is there already it prints another link: whoever reads the data folder may let themselves in.

Examples:
  npm run -s keeper -- robin
  npm run -s keeper -- --data /srv/readback --url https://readback.example --company north robin

Exits 0 when the link is printed; 2 when used wrongly.
`,
} as const;

const LOGIN = /^[a-z0-9][a-z0-9.@_-]{1,63}$/;

async function main({ options, words }: GivenToTool): Promise<number> {
  const [login, ...more] = words;
  if (login === undefined || more.length > 0) {
    throw new ServerError('tool-wrong', 'Give one name to sign in by: see "npm run -s keeper -- --help".');
  }
  if (!LOGIN.test(login)) {
    throw new ServerError('tool-wrong', `"${login}" is none to sign in by: 2 to 64 small letters, digits and . @ _ -`);
  }
  const company = options['company'] ?? LOCAL_COMPANY;
  if (!new RegExp(NAME_PATTERN).test(company)) {
    throw new ServerError('tool-wrong', `--company ${company} must be small letters, digits and hyphens.`);
  }
  const name = options['name'] ?? login;
  if (!isCalled(name)) throw new ServerError('tool-wrong', '--name must be one line of up to 100 characters.');
  const url = options['url'] ?? 'http://127.0.0.1:8470';
  if (!URL.canParse('/sign-in', url)) {
    throw new ServerError('tool-wrong', `--url ${url} must be an address such as https://readback.example.`);
  }
  const store = await openPeople(options['data']);
  const people = new People({ store, clock: Date.now, loopback: false });
  try {
    const code = await codeFor(people, company, login, name);
    const link = new URL(`/sign-in#${code}`, url);
    process.stdout.write(`${login} is a keeper of ${company}. Good once, within a day: ${link}\n`);
    return 0;
  } finally {
    await people.close();
  }
}

/** Of the folder that is named, else of the database, else of the folder that a server would take. */
async function openPeople(named: string | undefined): Promise<PeopleStore> {
  const { databaseUrl } = readDatabaseUrl(process.env);
  if (named === undefined && databaseUrl !== undefined) return openPeopleInDatabase(databaseUrl);
  const folder = named ?? process.env['DATA_DIR'] ?? 'data';
  makeFolder(folder);
  return openSqlitePeopleStore(join(folder, PEOPLE_FILE));
}

/** @throws {ServerError} tool-wrong, where somebody who is no keeper of the company signs in by that name. */
async function codeFor(people: People, company: string, login: string, name: string): Promise<string> {
  const by = { company, person: 'npm run keeper' };
  const known = await people.store.personByLogin(login);
  if (known === undefined) return (await people.addPerson(by, { login, name, role: 'keeper' })).code;
  if (known.company === company && known.role === 'keeper') return people.makeLink(by, known);
  throw new ServerError('tool-wrong', `Somebody else signs in by "${login}": choose another name.`);
}

await runServerTool(TOOL, main);
