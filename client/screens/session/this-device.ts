import { Device } from './device.ts';

/** The records of the device that the page is on: one for all that the page shows. */
export const THIS_DEVICE = new Device();
