export type FaultId = string;
