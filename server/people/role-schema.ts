import Type from 'typebox';
import { ROLES, type Role } from '../../grammar/visit/roles.ts';

export const RoleSchema = Type.Unsafe<Role>({ type: 'string', enum: [...ROLES] });
