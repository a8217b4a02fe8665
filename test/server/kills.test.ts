import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { tries } from '../how-much.ts';
import { killServer } from '../load/kill-server.ts';
import { tellFigure } from '../promises/tell-figure.ts';
import { buildServer, scratchFolder } from './built-server.ts';

const scratch = scratchFolder();
afterAll(() => scratch.remove());

test('a server that is killed (SIGKILL) while devices write loses nothing that it acknowledged', async () => {
  const kills = tries(3, 200);
  const { lost, acknowledged } = await killServer(buildServer(), join(scratch.path, 'data'), kills);
  tellFigure('kills of the server', kills);
  tellFigure('events acknowledged before a kill', acknowledged);
  tellFigure('of these lost', lost);
  expect(acknowledged).toBeGreaterThan(kills);
  expect(lost).toBe(0);
}, 1_800_000);
