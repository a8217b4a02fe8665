import { parseArgs } from 'node:util';
import { ServerError } from './errors.ts';

const HELP = `start: serves the pages, takes the records of devices and reads them back.

Usage: npm run -s start [-- --help | --version]

Options:
  --help      prints this
  --version   prints the version of Readback

Settings, from the environment:
  PORT                  where it listens; 0 takes a free port (8470)
  HOST                  at which address; any but loopback wants TLS or a proxy (127.0.0.1)
  DATA_DIR              folder of the records, made where there is none (./data)
  DATABASE_URL          keeps all in this PostgreSQL database instead, which several servers may share
  TLS_CERT              certificate in PEM form, with
  TLS_KEY               its private key
  PROXY_ORIGIN          address of a proxy that speaks TLS in front of it, such as https://readback.example
  DATA_LIMIT_MB         record, sounds and photos stop growing at this size together (no limit)
  RETAIN_SOUND_DAYS     sounds are deleted so many days after they came (90)
  RETAIN_PERSONAL_DAYS  what is personal of a visit is erased so many days after it last grew (never)
  ACCEPT_LOSS           yes: starts though the record lacks what was signed for; what is lost was named before
  LOG                   yes: a line of JSON for each answer, without secrets or speech
  METRICS_TOKEN         by which a program without a session may read /api/metrics

Examples:
  npm start
  PORT=8471 DATA_DIR=/srv/readback npm start
  HOST=0.0.0.0 TLS_CERT=cert.pem TLS_KEY=key.pem npm start

Exits 0 when it is ended (SIGINT, SIGTERM); 1 when it cannot start; 2 when used wrongly.
`;

/**
 * What the command line asks to have printed instead of a start; undefined where it asks for nothing.
 * @throws {ServerError} argument-unknown.
 */
export function answerTo(args: readonly string[], version: string): string | undefined {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: { help: { type: 'boolean' }, version: { type: 'boolean' } },
    });
    if (values.help === true) return HELP;
    return values.version === true ? `${version}\n` : undefined;
  } catch (error) {
    throw new ServerError(
      'argument-unknown',
      args.find((arg) => arg !== '--help' && arg !== '--version'),
      error,
    );
  }
}
