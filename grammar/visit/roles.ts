/** What a person is to a company. A keeper manages its people and devices. */
export const ROLES = ['trainee', 'technician', 'supervisor', 'keeper'] as const;
export type Role = (typeof ROLES)[number];
