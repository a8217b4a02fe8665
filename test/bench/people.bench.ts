import { hash, verify } from '@node-rs/argon2';
import type { StreamId } from '../../grammar/visit/envelope.ts';
import { Guest, withKeepers } from '../server/guest.ts';
import { RawClient, runApp, streamOf } from '../server/running-app.ts';
import { type Bench, type Figure, median } from './figures.ts';

const PASSWORD = 'eleven quiet condensers';

/** Coming in: options tries=10000 rounds=40. */
export const bench: Bench = async (options, progress) => {
  const number = (name: string, standard: number) => Number(options.get(name) ?? standard);
  const [tries, rounds] = [number('tries', 10_000), number('rounds', 40)];
  const { store, codes } = await withKeepers(['north']);
  const server = await runApp({ peopleStore: store });
  const keeper = await new Guest(server).comeIn(codes[0] as string);
  await keeper.ask('POST', '/api/me/password', { password: PASSWORD });
  await keeper.pair(keeper, 'phone');
  const signIn = (guest: Guest, password: string) =>
    guest.ask('POST', '/api/sign-in', { login: 'north-keeper', password });

  progress('signing in');
  const alone = await hash(PASSWORD, { memoryCost: 19_456, timeCost: 2, parallelism: 1 });
  const bare = await timesOf(rounds, () => verify(alone, PASSWORD));
  const known = new Guest(server);
  const right = await timesOf(rounds, () => signIn(known, PASSWORD));
  progress(`${tries} wrong passwords at one name`);
  const [began, before] = [performance.now(), process.cpuUsage()];
  let looked = 0;
  for (let n = 0; n < tries; n += 1) if ((await signIn(new Guest(server), `guess ${n}`)).status === 401) looked += 1;
  const cpu = process.cpuUsage(before);
  const guessed = (performance.now() - began) / 1_000;

  progress('opening connections');
  let visits = 0;
  const stream = (): StreamId => {
    visits += 1;
    return { company: 'north', visit: `bench-${visits}`, device: 'phone', epoch: 1 };
  };
  const paired = await timesOf(rounds, async () => (await keeper.hello(stream())).client.socket.terminate());
  await server.stop();
  const open = await runApp();
  const unpaired = await timesOf(rounds, async () => {
    visits += 1;
    const client = await RawClient.open(open.url);
    await client.hello(streamOf(`bench-${visits}`));
    client.socket.terminate();
  });
  await open.stop();
  const figures: Figure[] = [
    { name: 'argon2id alone (19 MiB, two passes)', value: median(bare), unit: 'ms' },
    { name: 'a sign-in by password', value: median(right), unit: 'ms', against: 'argon2id alone, above' },
    { name: `${tries} wrong passwords at one name`, value: guessed, unit: 's' },
    { name: 'of these looked at', value: looked, unit: '', against: 'must be 10' },
    { name: 'a wrong password, processor time', value: (cpu.user + cpu.system) / 1_000 / tries, unit: 'ms' },
    { name: 'a connection opened where nobody signs in', value: median(unpaired), unit: 'ms' },
    { name: 'a connection opened by a paired device', value: median(paired), unit: 'ms', against: 'the one above' },
  ];
  return figures;
};

/** Milliseconds of each of so many rounds, one after another. */
async function timesOf(rounds: number, work: () => Promise<unknown>): Promise<readonly number[]> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const began = performance.now();
    await work();
    times.push(performance.now() - began);
  }
  return times;
}
