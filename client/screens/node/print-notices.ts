import { thirdPartyNotices } from './third-party-notices.ts';

/** Prints the third-party notices as the pages serve them: `npm run -s notices`. npm starts it in the project's folder. */
process.stdout.on('error', () => process.exit(0));
process.stdout.write(thirdPartyNotices(process.cwd()));
