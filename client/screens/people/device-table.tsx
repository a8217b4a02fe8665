import { PEOPLE } from '../../words/pages/people-words.ts';
import { showMoment } from '../show/show-moment.ts';

export interface PairedDevice {
  readonly device: string;
  readonly person: string;
  /** Milliseconds since 1970. */
  readonly pairedAt: number;
  readonly revokedAt?: number;
}

interface DeviceTableProps {
  readonly devices: readonly PairedDevice[];
  readonly nameOf: (person: string) => string;
  readonly onRevoke: (device: string) => void;
  /** What a revoked device had not sent, as its page saved it. */
  readonly onFile: (device: string, file: File) => void;
}

/** The devices of the company, revoked ones too. */
export function DeviceTable({ devices, nameOf, onRevoke, onFile }: DeviceTableProps) {
  return (
    <section>
      <h2>{PEOPLE.devices}</h2>
      {devices.length === 0 ? (
        <p className="quiet">{PEOPLE.noDevices}</p>
      ) : (
        <div className="wide-table">
          <table>
            <thead>
              <tr>
                <th scope="col">{PEOPLE.device}</th>
                <th scope="col">{PEOPLE.whose}</th>
                <th scope="col">{PEOPLE.pairedAt}</th>
                <th scope="col">{PEOPLE.state}</th>
              </tr>
            </thead>
            <tbody>
              {devices.map(({ device, person, pairedAt, revokedAt }) => (
                <tr key={device} data-device={device}>
                  <th scope="row">{device}</th>
                  <td>{nameOf(person)}</td>
                  <td>{showTime(pairedAt)}</td>
                  <td>
                    {revokedAt === undefined ? (
                      <>
                        {PEOPLE.inUse}{' '}
                        <button
                          type="button"
                          className="control"
                          aria-label={PEOPLE.revokeOne(device)}
                          onClick={() => {
                            if (confirm(PEOPLE.sureRevoke(device))) onRevoke(device);
                          }}
                        >
                          {PEOPLE.revoke}
                        </button>
                      </>
                    ) : (
                      <>
                        {PEOPLE.revokedAt(showTime(revokedAt))}
                        <label className="hand-over">
                          {PEOPLE.handOver}
                          <input
                            type="file"
                            className="control"
                            accept=".jsonl"
                            aria-label={PEOPLE.handOverOf(device)}
                            onChange={({ target }) => {
                              const file = target.files?.[0];
                              if (file !== undefined) onFile(device, file);
                              target.value = '';
                            }}
                          />
                        </label>
                      </>
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

/** In the reader's own time zone, to the minute. */
export function showTime(at: number): string {
  return showMoment(at);
}
