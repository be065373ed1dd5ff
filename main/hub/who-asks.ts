import type { FastifyRequest } from 'fastify';
import type { Who } from '#core/api/endpoints.ts';
import type { Device } from '../network/device-store.ts';

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Who may call this over the network; where nothing is said, a paired device. */
    who?: Who;
    /** May a page ask for it that a paired device got at another address of the hub? */
    elsewhere?: boolean;
  }
}

/** The devices that requests came from, for as long as those are answered. */
const devices = new WeakMap<FastifyRequest, Device>();

/** Notes that a request came from this device. */
export function cameFrom(request: FastifyRequest, device: Device): void {
  devices.set(request, device);
}

/** The device that a request came from; null at the hub's own machine, and where it was let in without one. */
export function deviceOf(request: FastifyRequest): Device | null {
  return devices.get(request) ?? null;
}

/** Requests of pages that were got at another address of the hub. */
const elsewhere = new WeakSet<FastifyRequest>();

/** Notes that the page that asks was got at another address. Its token alone tells whose it is, and nobody is at the office there. */
export function cameFromElsewhere(request: FastifyRequest): void {
  elsewhere.add(request);
}

export function isFromElsewhere(request: FastifyRequest): boolean {
  return elsewhere.has(request);
}

/** Did it come over the shop's network, which is encrypted always, and the hub's own machine never? */
export function isOverNetwork({ protocol }: Pick<FastifyRequest, 'protocol'>): boolean {
  return protocol === 'https';
}
