import { BROKEN, bad, lines, link, open, trip } from './trouble.ts';
import type { Design } from './yard.ts';

const twoPoles = (d: Design) => d.poles === 2;
const fused = (d: Design) => d.fused;

export const POWER = lines('power', [
  [
    'mains-sag',
    'supply-low',
    (y, d) => {
      y.legs = [y.legs[0] * (0.87 - 0.2 * d), y.legs[1] * (0.87 - 0.2 * d)];
    },
    (d) => d.volts === 240,
  ],
  [
    'leg-1-gone',
    'lost-utility-leg',
    (y) => {
      y.legOhms = [BROKEN, y.legOhms[1]];
    },
  ],
  [
    'leg-2-gone',
    'lost-utility-leg',
    (y) => {
      y.legOhms = [y.legOhms[0], BROKEN];
    },
  ],
  ['breaker-out', 'breaker-tripped', (y) => trip(y), undefined, 2],
  ['breaker-pole-1-dead', 'breaker-pole-1-open', link('breaker1', 20)],
  ['breaker-pole-2-dead', 'breaker-pole-2-open', link('breaker2', 20)],
  [
    'switch-left-out',
    'disconnect-open',
    (y) => {
      y.disconnectOut = true;
      y.ohms.blade1 = BROKEN;
      y.ohms.blade2 = BROKEN;
    },
  ],
  ['jaw-1-scorched', 'disconnect-blade-1-burnt', link('blade1', 3)],
  ['jaw-2-scorched', 'disconnect-blade-2-burnt', link('blade2', 3)],
  ['fuse-1-aged', 'line-fuse-1-open', open('fuse1'), fused, 2],
  ['fuse-2-aged', 'line-fuse-2-open', open('fuse2'), fused, 2],
  ['terminal-1-loose', 'loose-lug-1', link('whip1', 2)],
  ['terminal-2-loose', 'loose-lug-2', link('whip2', 2)],
  [
    'handler-breaker-out',
    'air-handler-no-power',
    (y) => {
      y.handlerFed = false;
    },
  ],
  [
    'contact-1-pitted',
    'contactor-pole-1-burnt',
    (y, d) => {
      y.contact[0] = bad(d, 2);
    },
    undefined,
    2,
  ],
  [
    'contact-2-pitted',
    'contactor-pole-2-burnt',
    (y, d) => {
      y.contact[1] = bad(d, 2);
    },
    twoPoles,
    2,
  ],
  [
    'contact-1-welded',
    ['contactor-pole-1-stuck-closed', 'contactor-stuck-closed'],
    (y) => {
      y.welded[0] = true;
    },
  ],
  [
    'contact-2-welded',
    'contactor-pole-2-stuck-closed',
    (y) => {
      y.welded[1] = true;
    },
    twoPoles,
  ],
  [
    'both-welded',
    'contactor-stuck-closed',
    (y) => {
      y.welded = [true, true];
    },
    twoPoles,
  ],
  [
    'insects-under-armature',
    'contactor-jammed-open',
    (y) => {
      y.jammed = true;
    },
  ],
  [
    'contactor-coil-burnt-through',
    'contactor-coil-open',
    (y) => {
      y.coilOhms = BROKEN;
    },
  ],
]);
