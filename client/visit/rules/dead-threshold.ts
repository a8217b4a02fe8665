/** Below this, in volts a.c. or d.c., a conductor reads dead (common practice). */
export const DEAD_BELOW_VOLTS = 3;
