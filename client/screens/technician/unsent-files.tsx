import { streamText } from '../../../grammar/visit/envelope.ts';
import type { SentSoFar } from '../../record/send-unsent.ts';
import { KEPT } from '../../words/pages/start-words.ts';
import type { Device, DeviceVisit } from '../session/device.ts';

interface UnsentFilesProps {
  readonly device: Device;
  readonly visits: readonly DeviceVisit[];
  readonly unsent: readonly SentSoFar[];
}

/** What was not sent yet, to be saved as record files: of a device that was revoked, a keeper hands them over. */
export function UnsentFiles({ device, visits, unsent }: UnsentFilesProps) {
  if (unsent.length === 0) return null;
  return (
    <details>
      <summary>{KEPT.notSent}</summary>
      <p className="quiet">{KEPT.handOver}</p>
      <ul className="unsent-files">
        {unsent.map(({ stream }) => {
          const visit = visits.find((one) => one.stream.visit === stream.visit);
          return (
            <li key={streamText(stream)}>
              <button type="button" className="key" onClick={() => void device.fileOf(stream).then(saveAs)}>
                {KEPT.save(visit?.folded.site ?? stream.visit)}
              </button>
            </li>
          );
        })}
      </ul>
    </details>
  );
}

/** Hands a file to the browser, which puts it where its user keeps such. */
function saveAs(file: File): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = file.name;
  link.click();
  URL.revokeObjectURL(address);
}
