import {
  HostError,
  type HostAnswer,
  type HostClient,
  type HostFault,
  type HostMethod,
} from '../../shared/host/host-api.ts';

/** The machine side over loopback HTTP, for the browser window. */
export function httpHost(): HostClient {
  return {
    async call<M extends HostMethod>(method: M, request: unknown): Promise<HostAnswer<M>> {
      let response: Response;
      try {
        response = await fetch(`/api/${method}`, {
          method: 'POST',
          headers: { 'Content-Type': 'application/json' },
          body: JSON.stringify(request),
          credentials: 'same-origin',
        });
      } catch (problem) {
        if (!(problem instanceof TypeError)) throw problem;
        throw new HostError({
          code: 'no-machine-side',
          message:
            'The machine side does not answer. Nothing was written; what you typed is still here. Start Droplight again, then do it once more.',
        });
      }
      const body: unknown = await response.json();
      // Both ends are made from the same table; the machine side has checked what it sends.
      if (response.ok) return body as HostAnswer<M>;
      throw new HostError(body as HostFault);
    },
  };
}
