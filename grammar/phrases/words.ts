/** Stands in the network for a number typed in digits ("118.5"): the matcher carries its value beside it. */
export const NUMERAL = '#';
