export type HazardId = string;
