/**
 * Loaded before a program: tells on its standard error of every connection that it makes, every name that it looks up
 * and every datagram. Run as `node --import watch-network.ts PROGRAM`.
 */
import dgram from 'node:dgram';
import dns from 'node:dns';
import { writeSync } from 'node:fs';
import net from 'node:net';

function tell(what: string, args: readonly unknown[]): void {
  writeSync(2, `NETWORK ${what} ${JSON.stringify(args.filter((arg) => typeof arg !== 'function'))}\n`);
}

function watch(owner: object, name: string): void {
  const original: unknown = Reflect.get(owner, name);
  if (typeof original !== 'function') throw new Error(`nothing to watch: ${name}`);
  Reflect.set(owner, name, function (this: unknown, ...args: unknown[]): unknown {
    tell(name, args);
    return Reflect.apply(original, this, args);
  });
}

watch(net.Socket.prototype, 'connect');
watch(dgram.Socket.prototype, 'send');
watch(dgram.Socket.prototype, 'bind');
for (const name of ['lookup', 'resolve', 'resolve4', 'resolve6', 'reverse']) watch(dns, name);
for (const name of ['lookup', 'resolve', 'resolve4', 'resolve6', 'reverse']) watch(dns.promises, name);
