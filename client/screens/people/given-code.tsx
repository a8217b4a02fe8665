import { useEffect, useRef } from 'react';
import { encode } from 'uqr';
import { PEOPLE } from '../../words/pages/people-words.ts';
import { showClock } from '../show/show-moment.ts';

/** A code that the server gave once: it stands here and nowhere else. */
export interface GivenSecret {
  readonly kind: 'link' | 'pairing';
  /** For whom. */
  readonly name: string;
  readonly code: string;
  /** Milliseconds since 1970. */
  readonly expiresAt?: number;
}

interface GivenCodeProps {
  readonly secret: GivenSecret;
  readonly onClose: () => void;
}

/** A code as an address to open, to scan or to type. It stands behind `#`, which no browser sends to a server. */
export function GivenCode({ secret, onClose }: GivenCodeProps) {
  const { kind, name, code, expiresAt } = secret;
  const address = `${location.origin}${kind === 'link' ? '/sign-in' : '/pair'}#${code}`;
  const place = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whenever another code is given
  useEffect(() => place.current?.focus(), [code]);
  return (
    <section className="given" ref={place} tabIndex={-1} data-given={kind}>
      <p>
        {kind === 'link' ? PEOPLE.link(name) : PEOPLE.code(name)}{' '}
        {expiresAt === undefined ? null : <time dateTime={new Date(expiresAt).toISOString()}>{timeOf(expiresAt)}</time>}
      </p>
      <QrCode text={address} />
      <p>
        <a href={address}>{address}</a>
      </p>
      <p>
        {PEOPLE.codeAlone} <code>{code}</code>
      </p>
      <button type="button" className="control" onClick={onClose}>
        {PEOPLE.close}
      </button>
    </section>
  );
}

/** Four modules of quiet around it (ISO/IEC 18004, from memory); dark on light in every light. */
function QrCode({ text }: { readonly text: string }) {
  const { data, size } = encode(text, { ecc: 'M', border: 4 });
  const path = data.flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : ''))).join('');
  return (
    <svg className="qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={PEOPLE.qr} shapeRendering="crispEdges">
      <rect width={size} height={size} fill="#ffffff" />
      <path d={path} fill="#000000" />
    </svg>
  );
}

function timeOf(at: number): string {
  return showClock(at);
}
