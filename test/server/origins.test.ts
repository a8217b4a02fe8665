import { describe, expect, test } from 'vitest';
import { readConfiguration } from '../../server/configuration.ts';
import { allowedHost, allowedOrigin, originRule, ownAddress } from '../../server/origins.ts';

describe('which pages may connect', () => {
  test('on this machine: any of its own names, at the very port, over plain http', () => {
    const rule = originRule(readConfiguration({}));
    for (const host of ['127.0.0.1:8470', 'localhost:8470', '[::1]:8470', '127.8.9.1:8470']) {
      expect(allowedOrigin(rule, `http://${host}`, host)).toBe(true);
    }
    expect(allowedOrigin(rule, 'http://localhost:8470', '127.0.0.1:8470')).toBe(false);
    expect(allowedOrigin(rule, 'https://localhost:8470', 'localhost:8470')).toBe(false);
    expect(allowedOrigin(rule, 'http://rebound.example:8470', 'rebound.example:8470')).toBe(false);
    for (const host of ['127.0.0.1.example', 'localhost.example:8470', '1270.0.0.1', '', undefined]) {
      expect(allowedHost(rule, host)).toBe(false);
    }
  });

  test('with our own certificate: the name asked for, over https', () => {
    const rule = { kind: 'tls' } as const;
    expect(allowedOrigin(rule, 'https://readback.example:8470', 'readback.example:8470')).toBe(true);
    expect(allowedOrigin(rule, 'http://readback.example:8470', 'readback.example:8470')).toBe(false);
    expect(allowedOrigin(rule, 'https://other.example', 'readback.example:8470')).toBe(false);
  });

  test('behind a proxy: the address it was declared with, whatever name it asks by', () => {
    const rule = originRule(readConfiguration({ HOST: '0.0.0.0', PROXY_ORIGIN: 'https://readback.example/' }));
    expect(allowedOrigin(rule, 'https://readback.example', '10.0.0.5:8470')).toBe(true);
    expect(allowedOrigin(rule, 'https://other.example', 'readback.example')).toBe(false);
    expect(ownAddress(rule, '10.0.0.5:8470')).toBe('https://readback.example');
  });

  test('without an origin: none', () => {
    expect(allowedOrigin({ kind: 'loopback' }, undefined, 'localhost:8470')).toBe(false);
    expect(allowedOrigin({ kind: 'tls' }, undefined, 'readback.example')).toBe(false);
  });
});
