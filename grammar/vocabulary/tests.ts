export type TestId = string;
