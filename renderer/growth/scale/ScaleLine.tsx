import { useId, useState } from 'react';
import { SCALE_WAYS, type ScaleWay } from '../../../core/growth/scale/value.ts';
import type { House } from '../../../core/people/house.ts';
import { MASS_UNITS } from '../../../core/units/mass.ts';
import { changeHouse } from '../../facts/change-house.ts';
import { words } from '../../state/words.ts';
import { connectScale, disconnectScale, USUAL_BAUD, useScaleStore } from './scale-store.ts';
import './scale.css';

const BAUD_RATES = [1200, 2400, 4800, 9600, 19_200, 38_400, 57_600, 115_200] as const;

/** The scale, in one line under the weigh-in's title: connect it, what it is, that it is gone. */
export function ScaleLine({ house, isNow }: { house: House; isNow: boolean }) {
  const status = useScaleStore((s) => s.status);
  const way = useScaleStore((s) => s.way);
  const name = useScaleStore((s) => s.name);
  const trouble = useScaleStore((s) => s.trouble);
  const numberless = useScaleStore((s) => s.capture.fault === 'no-unit');
  const [asking, setAsking] = useState(false);
  const done = () => {
    setAsking(false);
    // The puppy is in her hand: the number goes on from where it was.
    document.querySelector<HTMLInputElement>('.weight-field')?.focus();
  };
  const connect = async (chosen: ScaleWay, baudRate: number) => {
    const found = await connectScale(chosen, baudRate);
    if (found === null) return;
    const remembered = {
      way: chosen,
      name: found.slice(0, 200),
      baudRate,
      unit: house.scale?.way === chosen ? house.scale.unit : null,
    };
    if (JSON.stringify(remembered) !== JSON.stringify(house.scale)) await changeHouse({ scale: remembered });
    done();
  };
  if (status === 'on' && way !== null) {
    return (
      <p className="scale-line">
        <span role="status">
          {words.scale.on(name, way)} {!isNow && words.scale.otherTime}
        </span>{' '}
        {way === 'serial' && (numberless || house.scale?.unit != null) && <UnitChoice house={house} />}
        <button
          type="button"
          className="link note"
          onClick={() => {
            void disconnectScale();
            void changeHouse({ scale: null }).then(done);
          }}
        >
          {words.scale.disconnect}
        </button>
      </p>
    );
  }
  return (
    <div className="scale-line">
      <p>
        <span role="status">
          {status === 'opening'
            ? words.scale.connecting
            : status === 'lost'
              ? words.scale.lost
              : trouble === null
                ? ''
                : words.scale.troubles[trouble]}
        </span>{' '}
        {!asking && status !== 'opening' && (
          <button type="button" className="link note" onClick={() => setAsking(true)}>
            {status === 'lost' ? words.scale.again : words.scale.connect}
          </button>
        )}
      </p>
      {asking && <HowChoice house={house} connect={connect} cancel={done} />}
    </div>
  );
}

function HowChoice({
  house,
  connect,
  cancel,
}: {
  house: House;
  connect: (way: ScaleWay, baudRate: number) => Promise<void>;
  cancel: () => void;
}) {
  const [baudRate, setBaudRate] = useState(house.scale?.baudRate ?? USUAL_BAUD);
  const id = useId();
  return (
    <p className="scale-how">
      <span>{words.scale.choose}</span>
      {SCALE_WAYS.map((way) => (
        <button key={way} type="button" className="button" onClick={() => void connect(way, baudRate)}>
          {words.scale.ways[way]}
        </button>
      ))}
      <label htmlFor={id} className="note">
        {words.scale.baud}
      </label>
      <select id={id} className="written" value={baudRate} onChange={(event) => setBaudRate(Number(event.target.value))}>
        {BAUD_RATES.map((b) => (
          <option key={b} value={b}>
            {b}
          </option>
        ))}
      </select>
      <button type="button" className="link" onClick={cancel}>
        {words.scale.cancel}
      </button>
    </p>
  );
}

function UnitChoice({ house }: { house: House }) {
  const id = useId();
  const { scale } = house;
  if (scale === null) return null;
  return (
    <span className="scale-unit">
      <label htmlFor={id}>{words.scale.unit}</label>
      <select
        id={id}
        className="written"
        value={scale.unit ?? ''}
        onChange={(event) =>
          void changeHouse({ scale: { ...scale, unit: MASS_UNITS.find((u) => u === event.target.value) ?? null } })
        }
      >
        <option value="">{words.scale.unitUnknown}</option>
        {MASS_UNITS.map((u) => (
          <option key={u} value={u}>
            {words.unitShort[u]}
          </option>
        ))}
      </select>
    </span>
  );
}
