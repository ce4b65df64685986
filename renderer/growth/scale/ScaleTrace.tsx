import { figureOf, quantile, steadyBand } from '../../../core/growth/scale/steady.ts';
import { useScaleStore } from './scale-store.ts';

const WIDTH = 300;
const HEIGHT = 30;
const SECONDS = 3;

/** The last three seconds of the scale, about the middle and the band that is steady. A picture only: words stand beside it. */
export function ScaleTrace() {
  const samples = useScaleStore((s) => s.capture.samples);
  const taken = useScaleStore((s) => s.capture.taken);
  const step = useScaleStore((s) => s.capture.stepGrams);
  const last = samples.at(-1);
  if (last === undefined || taken) return <svg className="scale-trace" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true" />;
  const { grams } = figureOf(samples.map((s) => s.grams));
  const band = steadyBand(grams, step);
  // A puppy laid down, or a kick, may run off the picture: the band is what it is about.
  const reach = Math.max(
    1.5 * band,
    quantile(
      samples.map((s) => Math.abs(s.grams - grams)),
      0.8,
    ),
  );
  const x = (at: number) => WIDTH * (1 - (last.at - at) / (SECONDS * 1000));
  const y = (value: number) => HEIGHT / 2 - Math.max(-1, Math.min(1, (value - grams) / reach)) * (HEIGHT / 2 - 3);
  const points = samples.map((s) => `${x(s.at).toFixed(1)},${y(s.grams).toFixed(1)}`).join(' ');
  return (
    <svg className="scale-trace" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
      <rect x={0} width={WIDTH} y={y(grams + band / 2)} height={y(grams - band / 2) - y(grams + band / 2)} />
      <polyline points={points} vectorEffect="non-scaling-stroke" />
    </svg>
  );
}
