/** One low tick: a settled value was written, for eyes on the puppy. Silent where there is no sound. */
let sound: AudioContext | null = null;

const HERTZ = 150;
const SECONDS = 0.07;

export function tick(): void {
  try {
    sound ??= new AudioContext();
    const from = sound.currentTime;
    const gain = sound.createGain();
    gain.gain.setValueAtTime(0.3, from);
    gain.gain.exponentialRampToValueAtTime(0.001, from + SECONDS);
    const tone = sound.createOscillator();
    tone.frequency.value = HERTZ;
    tone.connect(gain).connect(sound.destination);
    tone.start(from);
    tone.stop(from + SECONDS);
  } catch {
    // The weight is written all the same.
  }
}
