import { useEffect, useState } from 'react';
import type { StreamId } from '../../../grammar/visit/envelope.ts';
import { openTabNews } from '../../record/browser/tab-news.ts';
import { START } from '../../words/pages/start-words.ts';
import type { Device, DeviceVisit } from '../session/device.ts';
import { EnergyBand } from '../show/energy-band.tsx';
import { ReadingTable } from '../show/reading-table.tsx';

interface OtherTabProps {
  readonly device: Device;
  readonly stream: StreamId;
}

/** A visit that another tab writes: shown here as it grows, and taken up here when that tab closes. */
export function OtherTab({ device, stream }: OtherTabProps) {
  const [folded, setFolded] = useState<DeviceVisit['folded']>();
  useEffect(() => {
    const read = () => void device.read(stream).then((visit) => setFolded(visit.folded));
    read();
    const news = openTabNews(stream.visit, read);
    return () => news.close();
  }, [device, stream]);
  return (
    <main className="start" data-other-tab>
      <h1>{folded?.site ?? START.visit}</h1>
      <p className="notice" role="status">
        {START.otherTab}
      </p>
      {folded === undefined ? null : (
        <>
          <EnergyBand energy={folded.energy} />
          <p className="asked-words">{folded.said.at(-1)?.text}</p>
          <ReadingTable readings={folded.readings} />
        </>
      )}
    </main>
  );
}
