import {
  HostError,
  type HostAnswer,
  type HostClient,
  type HostFault,
  type HostMethod,
  type HostRequest,
} from '../../shared/host/host-api.ts';

/** What the preload puts on the window: one named method a call. */
export type Bridge = {
  readonly [M in HostMethod]: (
    request: HostRequest<M>,
  ) => Promise<{ readonly answer: HostAnswer<M> } | { readonly fault: HostFault }>;
};

declare global {
  interface Window {
    readonly droplight?: Bridge;
  }
}

/** The machine side over Electron's IPC. */
export function ipcHost(bridge: Bridge): HostClient {
  return {
    async call<M extends HostMethod>(method: M, request: HostRequest<M>): Promise<HostAnswer<M>> {
      const result = await bridge[method](request);
      if ('fault' in result) throw new HostError(result.fault);
      return result.answer;
    },
  };
}
